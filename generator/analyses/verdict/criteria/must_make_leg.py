"""Criterion 1: does the worst leg that must be made under engine fit, on a bad day?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field, replace
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import lacking_share, scalar, spread
from generator.analyses.use.leg_energy import wanted_usable
from generator.analyses.use.legs import LegResult
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    HALF,
    NO,
    NOT_APPLICABLE,
    SURE,
    Criterion,
    Judgement,
)
from generator.arrays import Array
from generator.records import number, record


@record
class MustMakeLeg:
    """The leg with the least in hand of those without refuge or sail.

    ``outcome``: no_legs (none is written down), none (each has a refuge or can be sailed), makes
    (it can be made), at_times (some draws cannot make it at all), never (more than half cannot).
    """

    SAID_BY: ClassVar[str] = "must_make_leg"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    result: str
    kept_in: str
    enough: bool
    slack: bool  # without the stream against her, for the owner works the tide there
    waits: bool  # and with that stream the row would be worse
    as_if_marked: bool  # nobody said which leg must be made: this one is judged as if it must
    leg: LegResult | None
    slower_does: bool
    larger_does: bool
    calmer_does: bool
    tide_does: bool
    short: bool  # where the motor holds it, the store does not carry it
    not_at_all: bool  # not in one draw
    held_always: bool  # the motor holds it in every draw
    kept_always: bool  # and the reserve stays untouched
    made_always: bool  # or at least does it
    impossible: float | None = number("share", "chance that it cannot be made")
    powered: float | None = number("share", "chance that the motor holds it, whatever the bank")
    untouched: float | None = number("share", "chance that the reserve stays, where it holds it")
    with_reserve: float | None = number("share", "chance that the reserve does it, where it does")
    slow_speed: Array | None = number("speed", "speed in shelter that does it", cautious="low")
    slow_ratio: float | None = number("ratio", "left over needed at that speed")
    wanted: Array | None = number("stored", "nominal size that does it", cautious="high")
    wanted_held: Array | None = number(
        "stored", "nominal size that does it where the motor holds it", cautious="high"
    )
    wind: float | None = number("wind", "most wind on the nose")
    absent: Mapping[str, str] = field(default_factory=dict)


ORDER = (GO, CONDITIONAL, NO)
ALL = 0.995  # share of draws that is told as all of them
ABSENT = dict.fromkeys(
    ("slow_speed", "slow_ratio", "wanted", "wanted_held", "wind"), "does_not_help"
) | (dict.fromkeys(("impossible", "powered", "untouched", "with_reserve"), "no_such_leg"))


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Whether the worst leg without refuge or sail leaves the reserve alone, or uses it."""
    place = found.key.worst_leg
    if place is None:
        outcome = "none" if found.case.legs else "no_legs"
        result = NOT_APPLICABLE if found.case.legs else CONDITIONAL
        return Judgement(criterion, None, None, "-", result, facts=_without(found, outcome, result))
    worst = found.legs.results[place]
    ratio = spread(worst.ratio, "low")
    middle, low = scalar(ratio.middle), scalar(ratio.low)
    plain = _result(worst)
    waits = plain != NO and _worse(plain, worst.unworked)
    result = CONDITIONAL if waits else plain
    sure = low > 0.0 and bool(np.isfinite(scalar(spread(worst.need, "high").high)))
    outcome = "makes" if sure else "at_times" if middle > 0.0 else "never"
    facts = replace(
        _facts(found, worst, outcome, plain),
        result=result,
        slack=worst.slack,
        waits=waits,
    )
    return Judgement(criterion, middle, low, "-", result, per_draw=worst.ratio, facts=facts)


def _result(leg: LegResult) -> str:
    """Never conditional on a coin: then it is made in nine draws of ten with the reserve used.

    Draws in which the motor does not hold it are no shortage of the bank: they stand in the rows
    of power, and here only where they are so many that she is not to count on the leg.
    """
    if leg.powered < HALF:
        return NO
    of_store = _of_store(leg)
    if of_store != GO:
        return of_store
    plain = leg.powered >= SURE and not leg.as_if_marked and not leg.beyond_sea
    return GO if plain else CONDITIONAL


def _of_store(leg: LegResult) -> str:
    """What bank or tank do in the draws in which the motor holds it."""
    if leg.untouched >= SURE:
        return GO
    return CONDITIONAL if leg.untouched >= HALF and leg.with_reserve >= SURE else NO


def _worse(plain: str, unworked: LegResult | None) -> bool:
    """Whether the row would be worse against the stream as stated, did nobody work the tide."""
    return unworked is not None and ORDER.index(_result(unworked)) > ORDER.index(plain)


def _without(found: Findings, outcome: str, result: str) -> MustMakeLeg:
    return MustMakeLeg(
        outcome=outcome,
        result=result,
        kept_in=found.reserve.kept_in,
        enough=True,
        slack=False,
        waits=False,
        as_if_marked=False,
        leg=None,
        slower_does=False,
        larger_does=False,
        calmer_does=False,
        tide_does=False,
        short=False,
        not_at_all=False,
        held_always=False,
        kept_always=False,
        made_always=False,
        impossible=None,
        powered=None,
        untouched=None,
        with_reserve=None,
        slow_speed=None,
        slow_ratio=None,
        wanted=None,
        wanted_held=None,
        wind=None,
        absent=ABSENT,
    )


def _wanted(found: Findings, worst: LegResult) -> Array:
    """Nominal size that carries the leg above the reserve; without end in a brief look."""
    if found.use.sizes is None:
        return np.full((1, 1), np.inf)
    share = found.case.planning.reserve_share
    need = wanted_usable(worst.need, 1.0, found.reserve.demand, share, worst.before)
    return found.use.sizes.nominal_for(need)


def _where_held(wanted: Array, worst: LegResult) -> Array | None:
    """The size wanted in the draws in which the leg is held; none where no size is found."""
    held = np.isfinite(wanted) & np.isfinite(worst.need)
    rows = held[:, 0] if len(held) > 1 else np.ravel(held)
    if not rows[1:].any():
        return None
    return np.vstack([np.median(wanted[1:][rows[1:]], keepdims=True), wanted[1:][rows[1:]]])


def _facts(found: Findings, worst: LegResult, outcome: str, result: str) -> MustMakeLeg:
    """What it takes, and what carries it, all else kept: slower, a larger bank, less wind."""
    enough, wanted = result == GO, _wanted(found, worst)
    mend = next((item for item in found.use.failing if item.leg == found.key.worst_leg), None)
    slower = not enough and mend is not None and mend.slower is not None
    short = not enough and worst.powered > 0.0 and _of_store(worst) != GO
    larger = short and bool(np.isfinite(scalar(spread(wanted, "high").high)))
    calmer = not enough and not slower and not larger and mend is not None
    wind = mend.wind if calmer and mend is not None else None
    ratio = np.nan if worst.slow is None else scalar(spread(worst.slow.ratio, "low").low)
    economical = slower or (not enough and ratio >= 1.0)
    return MustMakeLeg(
        outcome=outcome,
        result=result,
        kept_in=worst.kept_in,
        enough=enough,
        slack=False,
        waits=False,
        as_if_marked=worst.as_if_marked,
        leg=worst,
        slower_does=slower,
        larger_does=larger,
        calmer_does=wind is not None,
        tide_does=not enough and mend is not None and mend.stream is not None,
        short=short,
        not_at_all=worst.untouched <= 1.0 - ALL,
        held_always=worst.powered >= ALL,
        kept_always=worst.untouched >= ALL,
        made_always=worst.with_reserve >= ALL,
        impossible=lacking_share(np.where(worst.ratio > 0.0, worst.ratio, np.nan)),
        powered=worst.powered,
        untouched=worst.untouched,
        with_reserve=worst.with_reserve,
        slow_speed=None if not slower or mend is None else np.full((1, 1), mend.slower),
        slow_ratio=ratio if economical else None,
        wanted=wanted if larger else None,
        wanted_held=_where_held(wanted, worst) if short and not larger else None,
        wind=wind,
        absent=ABSENT,
    )
