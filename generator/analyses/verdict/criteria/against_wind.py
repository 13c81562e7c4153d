"""How is a speed held against a wind judged: by what is made good, or by the engine's pull?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.handling.yardstick import SPEEDS
from generator.analyses.motion.demand import Weather, shaft_demand
from generator.analyses.motion.plant import ceiling
from generator.analyses.motion.power import KNOT, at_points
from generator.analyses.percentiles import held_share, scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    HALF,
    SURE,
    Criterion,
    Judgement,
    by_chance,
)
from generator.arrays import Array, Flags, Numbers
from generator.case.register import usual_value
from generator.records import number, record

MOST_BEYOND = 0.1  # share of draws; more than that and the sea's formula gives no pass


@record
class AgainstWind:
    """Speed made good against a wind, and pull beside that of the engine that is in her.

    ``by`` is speed or pull: which of the two the outcome rests on. ``beyond_sea``: the sea is
    steeper than the wave formula covers, so that the speed is an upper bound and gives no pass.
    ``neither``: neither she nor her engine works off a shore in that wind.
    """

    SAID_BY: ClassVar[str] = "against_wind"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str  # go, conditional, no
    by: str
    at_peak: bool
    diesel: bool
    beyond_sea: bool
    yardstick: bool  # the engine's pull counts
    neither: bool
    power_by: str  # as in Wanted
    wind: float = number("wind", "wind")
    made: Array = number("speed", "speed made good against it", cautious="low")
    wanted: float = number("speed", "speed asked for")
    bad_wind: float = number("wind", "wind of a bad day")
    made_bad_day: Array = number("speed", "speed made good on a bad day", cautious="low")
    share: Array = number("share", "pull over that of the present engine", cautious="low")
    pull: Array = number("force", "pull that lasts", cautious="low")
    lasts: Array = number("minutes", "time for which the bank keeps that pull", cautious="low")
    engine: Array = number("speed", "speed made good by the present engine", cautious="low")
    height: float = number("length", "height of the sea that the wind raises")
    height_limit: float = number("length", "height up to which the wave formula holds")
    share_wanted: float | None = number("share", "pull over that of the engine which passes")
    power_wanted: float | None = number("power", "shaft power that would pass")
    power_there: float | None = number("power", "shaft power that is there, warm")
    absent: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Question:
    """What a criterion asks: a wind, the ladder on the rating that lasts, the place of the pull."""

    wind: float  # m/s
    ladder: Array
    at_peak: bool
    place: int  # among yardstick.SPEEDS


def judged(criterion: Criterion, found: Findings, asked: Question) -> Judgement:
    """Speed where the wave formula holds, or the pull of the engine, by the rule of chance."""
    made, bad = (read(asked.ladder, wind) for wind in (asked.wind, bad_day(found)))
    beyond = beyond_formula(found, asked.wind)
    fast, enough = criterion.reached(made / KNOT)
    if beyond:
        fast = np.zeros_like(fast)
    pulls, some = _pulls(criterion, found, asked, bad)
    works = held_share(enough) >= HALF
    result = by_chance(fast | pulls, enough | some)
    if result == GO and by_chance(fast, fast) != GO and not works:
        result = CONDITIONAL
    by = "speed" if by_chance(fast, enough) == result else "pull"
    facts = _facts(criterion, found, asked, (made, bad), (result, by, beyond, works))
    told = spread(made / KNOT, "low")
    return Judgement(
        criterion, scalar(told.middle), scalar(told.low), "kn", result, facts=facts,
        per_draw=made / KNOT,
    )  # fmt: skip


def _pulls(
    criterion: Criterion, found: Findings, asked: Question, bad: Array
) -> tuple[Flags, Flags]:
    """Draws in which the pull passes, and in which it passes with conditions."""
    share = found.holding.share[:, [asked.place]]
    none = np.zeros_like(share, dtype=bool)
    if not found.yard.counts or criterion.second is None:
        return none, none
    holds = held_share(bad / KNOT >= criterion.least) >= HALF
    return share >= criterion.second.go, share >= criterion.second.conditional if holds else none


def read(table: Array, wind: float) -> Array:
    """A ladder over WINDS at one wind [m/s], straight between its steps."""
    place = min(int(wind / KNOT + 1e-9), table.shape[1] - 2)
    low, high = table[:, [place]], table[:, [place + 1]]
    return np.asarray(low + min(wind / KNOT - place, 1.0) * (high - low))


def bad_day(found: Findings) -> float:
    """Wind of a bad day in such waters [m/s]."""
    return usual_value("legs.wind", (found.case.waters.exposure,))


def _limit(found: Findings) -> Numbers:
    return found.power.seas["calm"].limit


def beyond_formula(found: Findings, wind: float) -> bool:
    """Whether the sea is beyond the formula in more draws than a pass may leave out."""
    over = read(found.headwind.height, wind) > np.asarray(_limit(found))
    return bool(held_share(over) > MOST_BEYOND)


def _works(criterion: Criterion, found: Findings, wind: float) -> bool:
    """Whether the engine that is in her makes the conditional limit's speed in half the draws."""
    _, enough = criterion.reached(read(found.yard.made_good, wind) / KNOT)
    return held_share(enough) >= HALF


def _facts(
    criterion: Criterion,
    found: Findings,
    asked: Question,
    speeds: tuple[Array, Array],
    judged_so: tuple[str, str, bool, bool],
) -> AgainstWind:
    (made, bad), (result, by, beyond, works) = speeds, judged_so
    mend = Wanted("", None, None) if result == GO else shaft_power(criterion, found, asked, beyond)
    return AgainstWind(
        outcome=result,
        by=by,
        at_peak=asked.at_peak,
        diesel=found.option.motor is None,
        beyond_sea=beyond,
        yardstick=found.yard.counts,
        neither=not works and found.yard.counts and not _works(criterion, found, asked.wind),
        wind=asked.wind,
        made=made,
        wanted=criterion.go * KNOT,
        bad_wind=bad_day(found),
        made_bad_day=bad,
        share=found.holding.share[:, [asked.place]],
        pull=found.holding.pull[:, [asked.place]],
        lasts=found.holding.lasts,
        engine=read(found.yard.made_good, asked.wind),
        height=scalar(read(found.headwind.height, asked.wind)[:1]),
        height_limit=float(np.ravel(_limit(found))[0]),
        power_by=mend.by,
        share_wanted=None if criterion.second is None else criterion.second.go,
        power_wanted=mend.power,
        power_there=mend.there,
        absent=dict.fromkeys(("power_wanted", "power_there", "share_wanted"), "not_asked_for")
        | {"lasts": "no_end"},
    )


@dataclass(frozen=True)
class Wanted:
    """Shaft power that would pass [W], and what is there.

    ``by``: speed or pull (what it gives), gear (so much is there, and reduction or propeller keep
    it from the water), beyond (the sea has no formula), or empty where no power does it.
    """

    by: str
    power: float | None
    there: float | None


def shaft_power(criterion: Criterion, found: Findings, asked: Question, beyond: bool) -> Wanted:
    """The least power that would pass in nine draws of ten, by speed or by the engine's pull.

    Beyond the wave formula no power has a speed; the pull needs no sea.
    """
    ways = {} if beyond else {"speed": _for_speed(criterion, found, asked)}
    if found.yard.counts and criterion.second is not None:
        enough = found.holding.share[:, [asked.place]] >= criterion.second.go
        if held_share(enough) < SURE:  # else it is not the pull that is short
            ways["pull"] = _for_pull(criterion.second.go, found, asked)
    high = {by: scalar(spread(power).high) for by, power in ways.items()}
    known = {by: power for by, power in high.items() if np.isfinite(power)}
    if not known:
        return Wanted("beyond" if beyond else "", None, None)
    by = min(known, key=lambda name: known[name])
    top = ceiling(found.option, found.case.factors, asked.at_peak)
    given, set_to = top.power, found.power.as_set
    if set_to is not None:
        given = np.minimum(given, set_to.peak_power if asked.at_peak else set_to.continuous_power)
    there = scalar(spread(np.asarray((given - top.standing) * top.share), "low").low)
    # power enough: reduction or propeller keep it from the water
    return Wanted(by if known[by] > there else "gear", known[by], there)


def _for_speed(criterion: Criterion, found: Findings, asked: Question) -> Array:
    """Shaft power that makes the speed of the go-limit against the wind [W]."""
    speed = np.array([criterion.go * KNOT])
    weather = Weather(asked.wind, found.case.waters.fetch)
    curve = at_points(found.case, found.option, found.power, found.trial.scale, speed, weather)
    return np.atleast_2d(np.where(curve.demand.feasible, curve.demand.shaft_power, np.nan))


def _for_pull(share: float, found: Findings, asked: Question) -> Array:
    """Shaft power that pulls a share of what the engine pulls, on her own propeller [W]."""
    demand = shaft_demand(
        found.power.vessel,
        found.option.propeller,
        found.case.factors.propeller_condition,
        SPEEDS[[asked.place]],
        share * found.yard.pull[:, [asked.place]],
    )
    return np.atleast_2d(np.where(demand.feasible, demand.shaft_power, np.nan))
