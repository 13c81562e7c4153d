"""What is told of speed made good against the wind, row by row, and where it ends?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.handling.headwind import WINDS, Headwind, Ladder
from generator.analyses.motion.plant import LIMITS
from generator.analyses.motion.power import KNOT
from generator.analyses.percentiles import held_share, scalar, spread
from generator.arrays import Array
from generator.case.register import usual_value
from generator.records import number, record

SOME_WAY = 0.05 * KNOT  # below which she is said to make none
BEYOND = "sea_beyond_formula"
NEEDED = ("need", "continuous", "peak")


@record
class HeadwindRows:
    """Against each of WINDS; nothing is told of a wind whose sea is beyond the wave formula.

    ``*_limit`` is what binds there, one of LIMITS.
    """

    ALONG: ClassVar[str] = "wind"
    beyond_limit: tuple[bool, ...]
    continuous_limit: tuple[str | None, ...]
    peak_limit: tuple[str | None, ...]
    wind: Array = number("wind", "true wind ahead")
    beaufort: Array = number("count", "wind force, Beaufort")
    wave_height: Array = number("length", "height of the sea", cautious="high")
    need: Array = number("force", "thrust that least way asks for")
    continuous: Array = number("speed", "speed made good, continuous rating", cautious="low")
    peak: Array = number("speed", "speed made good at peak", cautious="low")
    absent: Mapping[str, str] = field(default_factory=lambda: dict.fromkeys(NEEDED, BEYOND))


@record
class LadderEnd:
    """Where she stops making the least way, or where the formula ends while she still does.

    ``stops_by``: one of LIMITS, or sea.
    """

    stops_by: str
    stops: Array = number("wind", "wind in which she stops", cautious="low")


@record
class LeeShore:
    """The least way off a lee shore, in the wind that criterion 4 names for such waters."""

    beyond_limit: bool
    makes_way: bool  # at continuous power; nothing beyond the formula
    makes_way_at_peak: bool
    wind: float = number("wind", "true wind ahead")
    wave_height: Array = number("length", "height of the sea", cautious="high")
    open_sea: float = number("height", "height of the open sea")
    need: float | None = number("force", "thrust that least way asks for")
    continuous: Array | None = number("speed", "speed made good, continuous rating", cautious="low")
    peak: Array | None = number("speed", "speed made good at peak", cautious="low")
    absent: Mapping[str, str] = field(default_factory=lambda: dict.fromkeys(NEEDED, BEYOND))


@record
class HeadwindTable:
    """The ladder of one option, where it ends, and the lee shore."""

    rows: HeadwindRows
    continuous: LadderEnd
    peak: LadderEnd
    lee_shore: LeeShore
    limit_wind: Array = number("wind", "wind where the wave formula ends", cautious="low")

    @classmethod
    def of(cls, found: Findings) -> HeadwindTable:
        """As it is told of the headwind of one option."""
        own = found.headwind
        return cls(
            rows=_rows(own),
            continuous=_end(own.continuous, own.limit_wind),
            peak=_end(own.peak, own.limit_wind),
            lee_shore=_lee_shore(
                own, usual_value("planning.hold_wind", (found.case.waters.exposure,))
            ),
            limit_wind=own.limit_wind,
        )


def _rows(found: Headwind) -> HeadwindRows:
    beyond = found.beyond_limit[0]
    return HeadwindRows(
        beyond_limit=tuple(bool(each) for each in beyond),
        continuous_limit=_limits(found.continuous, found),
        peak_limit=_limits(found.peak, found),
        wind=WINDS,
        beaufort=found.force,
        wave_height=found.height,
        need=np.where(beyond, np.nan, found.need),
        continuous=np.where(beyond, np.nan, found.continuous.speed),
        peak=np.where(beyond, np.nan, found.peak.speed),
    )


def _limits(ladder: Ladder, found: Headwind) -> tuple[str | None, ...]:
    return tuple(
        None if beyond else LIMITS[int(place)]
        for place, beyond in zip(ladder.binding, found.beyond_limit[0], strict=True)
    )


def _end(ladder: Ladder, limit: Array) -> LadderEnd:
    stops = np.minimum(ladder.stops, limit)
    place = min(int(scalar(spread(stops, "low").middle) / KNOT), ladder.binding.size - 1)
    by_sea = held_share(ladder.stops > limit) > 0.5
    return LadderEnd("sea" if by_sea else LIMITS[int(ladder.binding[place])], stops)


def _lee_shore(found: Headwind, held: float) -> LeeShore:
    place = round(held / KNOT)
    beyond = bool(found.beyond_limit[0, place])
    return LeeShore(
        beyond_limit=beyond,
        makes_way=not beyond and _makes_way(found.continuous.speed[:, [place]]),
        makes_way_at_peak=not beyond and _makes_way(found.peak.speed[:, [place]]),
        wind=place * KNOT,
        wave_height=found.height[:, [place]],
        open_sea=float(found.open_sea[place]),
        need=None if beyond else float(found.need[place]),
        continuous=None if beyond else found.continuous.speed[:, [place]],
        peak=None if beyond else found.peak.speed[:, [place]],
    )


def _makes_way(speed: Array) -> bool:
    return scalar(spread(speed, "low").middle) >= SOME_WAY
