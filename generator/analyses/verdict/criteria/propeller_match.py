"""Criterion 23: does the motor reach its rated turns at full power on this propeller?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.bench import TIP_CLEARANCE, Screw
from generator.analyses.motion.match import BestScrew
from generator.analyses.percentiles import best, held_share, scalar, spread
from generator.analyses.verdict.criteria import (
    calm_speed,
    continuous_power,
    holding_off,
    hours_of_headwind,
)
from generator.analyses.verdict.criteria.catalogue import criteria
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    SURE,
    Criterion,
    Judgement,
    by_chance,
)
from generator.arrays import Array, Numbers
from generator.records import number, record

SERVED = {
    4: holding_off.judge,
    5: continuous_power.judge,
    6: hours_of_headwind.judge,
    7: calm_speed.judge,
}
SAME = 0.01  # of a reduction: nearer than that there is nothing to change
SHAPE = ("kind", "blades", "diameter", "pitch")


@record
class PropellerMatch:
    """Turns at full power against rated turns, and the reduction, pitch or propeller that mends.

    ``outcome``: fits, short (geared short on purpose, and the rows that this serves pass), off,
    tight (a new propeller too near the hull). ``pulls``: the larger propeller pulls harder.
    ``measured``: the aperture is known. ``priced``: the option has a price for propeller or shaft.
    """

    SAID_BY: ClassVar[str] = "propeller_match"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    diesel: bool
    new: bool
    near_hull: bool
    regear: bool
    reship: bool
    measured: bool
    priced: bool
    turns: Array = number("rpm", "turns that full power would take")
    rated: Numbers = number("rpm", "rated turns")
    off: Array = number("share", "turns off rated", cautious="high")
    clearance: float | None = number("share", "tip clearance over diameter")
    wanted_clearance: float = number("share", "tip clearance asked for")
    own_ratio: float = number("ratio", "reduction as specified")
    ratio: float | None = number("ratio", "reduction that serves best on this propeller")
    pitch: float | None = number("length_small", "pitch that matches, reduction kept")
    diameter: float | None = number("length_small", "diameter of the best propeller")
    best_pitch: float | None = number("length_small", "pitch of the best propeller")
    best_ratio: float | None = number("ratio", "reduction for the best propeller")
    room: float | None = number("length_small", "aperture that the best propeller needs")
    gain: float | None = number("share", "pull gained by the best propeller")
    largest: float | None = number("length_small", "largest diameter that clears the hull")
    absent: Mapping[str, str] = field(default_factory=dict)


ABSENT = dict.fromkeys(
    ("ratio", "pitch", "diameter", "best_pitch", "best_ratio", "room", "gain"), "not_asked_for"
) | dict.fromkeys(("clearance", "largest"), "no_aperture")


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Within a tenth of rated turns, or geared short where that serves; else conditional.

    Only a new propeller too near the hull fails: the old one has run there.
    """
    fit = found.match
    off = np.abs(fit.deviation)
    told = spread(off)
    within, _ = criterion.reached(off)
    outcome = _outcome(criterion, found, bool(held_share(within) >= SURE))
    result = {"tight": NO, "off": CONDITIONAL}.get(outcome, GO)
    return Judgement(
        criterion, scalar(told.middle), scalar(told.high), "-", result,
        facts=_facts(found, off, outcome),
    )  # fmt: skip


def _outcome(criterion: Criterion, found: Findings, within: bool) -> str:
    if is_new(found) and _near_hull(found):
        return "tight"
    if within:
        return "fits"
    short = np.atleast_2d(found.match.deviation) > -criterion.go
    if by_chance(short, short) == GO and _served(found):
        return "short"
    return "off"


def _served(found: Findings) -> bool:
    """Whether the rows that decide of pull and speed all pass as she is geared."""
    rows = [SERVED[row.id](row, found) for row in criteria() if row.id in SERVED]
    return all(row.result == GO for row in rows if row.decides)


def is_new(found: Findings) -> bool:
    """Whether the option has another propeller than the one that is in her."""
    own, hers = found.option.propeller, found.case.propeller
    return any(_first(getattr(own, name)) != _first(getattr(hers, name)) for name in SHAPE)


def _first(value: Numbers | str) -> float | str:
    return value if isinstance(value, str) else scalar(best(value))


def _near_hull(found: Findings) -> bool:
    clearance = found.match.clearance
    return clearance is not None and clearance < TIP_CLEARANCE


def _facts(found: Findings, off: Array, outcome: str) -> PropellerMatch:
    fit, plant = found.match, found.option.motor or found.option.diesel
    assert plant is not None
    room = found.option.propeller.aperture_height
    own = scalar(best(plant.gear_ratio))
    asked = outcome == "off"
    screw = fit.best if asked and _better(fit.own, fit.best) else None
    return PropellerMatch(
        outcome=outcome,
        diesel=found.option.motor is None,
        new=is_new(found),
        near_hull=_near_hull(found),
        regear=asked and abs(fit.advised / own - 1.0) > SAME,
        reship=screw is not None,
        measured=room is not None,
        priced=any(item.part == "propeller" for item in found.option.costs),
        turns=fit.turns,
        rated=best(plant.rated_speed),
        off=off,
        clearance=fit.clearance,
        wanted_clearance=TIP_CLEARANCE,
        own_ratio=own,
        ratio=fit.advised if asked else None,
        pitch=fit.pitch if asked else None,
        diameter=None if screw is None else screw.diameter,
        best_pitch=None if screw is None else screw.pitch,
        best_ratio=None if screw is None else screw.ratio,
        room=None if screw is None else screw.aperture_needed,
        gain=None if screw is None else screw.pull / max(fit.own.pull, 1e-9) - 1.0,
        largest=None if room is None else scalar(best(room)) / (1.0 + 2.0 * TIP_CLEARANCE),
        absent=ABSENT,
    )


def _better(own: Screw, other: BestScrew | None) -> bool:
    """Whether another propeller pulls harder and asks for less at cruise."""
    return other is not None and other.pull > own.pull and other.cruise < own.drain
