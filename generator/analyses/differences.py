"""Where is a difference between two motors larger than its doubt?"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.verdict.criteria.against_wind import beyond_formula, read
from generator.arrays import Numbers
from generator.records import record


@dataclass(frozen=True)
class Judged:
    """A number of both motors, and whether more of it is better."""

    id: str
    sign: float  # +1 more, -1 less
    money: bool
    values: Callable[[Findings], Numbers | None]


def _range(sea: str, age: str) -> Callable[[Findings], Numbers | None]:
    """Range to the reserve in a sea, at the speed that it is told for."""
    return lambda found: next(
        (bar.range for bar in found.bars.at_cruise if (bar.sea, bar.bank_age) == (sea, age)), None
    )


def _against_wind(found: Findings) -> Numbers | None:
    """Speed made good against the wind of a lee shore; none beyond the wave formula."""
    wind = scalar(best(found.case.planning.hold_wind))
    return None if beyond_formula(found, wind) else read(found.holding.ladder, wind)


JUDGED = (
    Judged("continuous", 1.0, False, lambda found: found.key.continuous_shaft_power),
    Judged("top_continuous", 1.0, False, lambda found: found.power.top.continuous),
    Judged("top_peak", 1.0, False, lambda found: found.power.top.peak),
    Judged("made", 1.0, False, _against_wind),
    Judged("calm_range", 1.0, False, _range("calm", "new")),
    Judged("calm_aged", 1.0, False, _range("calm", "aged")),
    Judged("wind_aged", 1.0, False, _range("wind_20", "aged")),
    Judged(
        "peak_time", 1.0, False, lambda found: None if found.duty is None else found.duty.peak_warm
    ),
    Judged("usable", 1.0, False, lambda found: None if found.bank is None else found.bank.usable),
    Judged(
        "available",
        1.0,
        False,
        lambda found: None if found.bank is None else found.bank.available_aged,
    ),
    Judged("net", -1.0, False, lambda found: found.weight.net),
    Judged("first", -1.0, True, lambda found: found.cost.first),
    Judged("present", -1.0, True, lambda found: found.cost.present_value),
)


@record
class Difference:
    """One number of the first two motors, judged draw by draw, so that shared doubt cancels."""

    id: str
    money: bool
    better: int | None  # place of the option that is better in nine draws of ten
    even: bool  # neither is

    @classmethod
    def all(cls, options: tuple[Findings, ...]) -> tuple[Difference, ...]:
        """Those that can be judged; none with fewer than two motors."""
        motors = [found for found in options if found.option.motor is not None][:2]
        if len(motors) < 2:
            return ()
        rows = ((line, [line.values(motor) for motor in motors]) for line in JUDGED)
        places = (motors[0].place, motors[1].place)
        return tuple(
            _between(line, first, second, places)
            for line, (first, second) in rows
            if first is not None and second is not None
        )


def _between(line: Judged, first: Numbers, second: Numbers, places: tuple[int, int]) -> Difference:
    with np.errstate(invalid="ignore"):  # a draw in which one has no value speaks for neither
        gap = line.sign * (np.asarray(first) - np.asarray(second))
    better = None
    if scalar(spread(gap, "low").low) > 0:
        better = places[0]
    elif scalar(spread(gap, "high").high) < 0:
        better = places[1]
    return Difference(line.id, line.money, better, better is None)
