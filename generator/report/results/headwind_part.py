"""What does results.json say of speed against the wind?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.handling.headwind import Ladder
from generator.analyses.motion.plant import LIMITS
from generator.analyses.percentiles import scalar, spread
from generator.arrays import Array, Numbers
from generator.case.register import usual_value
from generator.report.results.suffix import PER_SI

Row = dict[str, Any]
NOT_COVERED = "the sea is beyond what the wave formula covers"
DRIVEN = "driven back"
# What the analyses and the criteria take as enough: common practice, no source.
LIMITS_OF_PRACTICE = {
    "least_way_kn": 2.0,  # made good off a lee shore
    "stop_from_kn": 3.0,
    "stop_lengths": 1.0,
    "stop_from_more_kn": 5.0,
    "gate_go_kn": 1.5,
    "gate_tide_kn": 0.5,
    "least_through_kn": 2.5,
    "least_over_kn": 1.0,
}


def limits_part() -> Row:
    """Limits of practice that sentences name."""
    return dict(LIMITS_OF_PRACTICE)


def headwind_part(found: Findings) -> Row:
    """The ladder row by row, where it ends, and the thrust there and needed."""
    ladder = found.headwind
    return {
        "rows": [_row(found, place) for place in range(ladder.height.shape[1])],
        "limit_wind_kn": _middle(ladder.limit_wind, "kn"),
        "continuous": _end(ladder.continuous, ladder.limit_wind),
        "peak": _end(ladder.peak, ladder.limit_wind),
        "lee_shore": _lee_shore(found),
    }


def _middle(values: Numbers, suffix: str) -> float:
    return scalar(spread(values).middle) * PER_SI[suffix]


def _row(found: Findings, place: int) -> Row:
    ladder = found.headwind
    height = ladder.height[:, [min(place, ladder.height.shape[1] - 1)]]
    beyond = bool(ladder.beyond_limit[0, place])
    row: Row = {
        "wind_kn": float(place),
        "beaufort": float(ladder.force[place]),
        "wave_height_m": _middle(height, "m"),
        "beyond_limit": beyond,
        "need_n": None if beyond else float(ladder.need[place]),
    }
    for name, each in (("continuous", ladder.continuous), ("peak", ladder.peak)):
        row |= _speed(name, each, place, beyond)
    return row


def _speed(name: str, ladder: Ladder, place: int, beyond: bool) -> Row:
    told = spread(ladder.speed[:, [place]], "low")
    keys = (f"{name}_kn", f"{name}_low_kn", f"{name}_high_kn")
    if beyond:
        return dict.fromkeys(keys) | {f"{name}_limit": None, f"{name}_kn_why": NOT_COVERED}
    values = (told.middle, told.low, told.high)
    row: Row = {key: scalar(each) * PER_SI["kn"] for key, each in zip(keys, values, strict=True)}
    return row | {
        f"{name}_limit": LIMITS[int(ladder.binding[place])],
        f"{name}_kn_why": DRIVEN if scalar(told.middle) <= 0.0 else None,
    }


def _end(ladder: Ladder, limit: Array) -> Row:
    """Wind in which she stops making 2 kn, or in which the formula ends while she still does."""
    stops = np.minimum(ladder.stops, limit)
    told = spread(stops, "low")
    by_sea = float(np.mean(ladder.stops > limit)) > 0.5
    return {
        "stops_kn": scalar(told.middle) * PER_SI["kn"],
        "stops_low_kn": scalar(told.low) * PER_SI["kn"],
        "stops_high_kn": scalar(told.high) * PER_SI["kn"],
        "stops_by": "sea" if by_sea else LIMITS[_binding_at(ladder, scalar(told.middle))],
    }


def _binding_at(ladder: Ladder, wind: float) -> int:
    return int(ladder.binding[min(int(wind * PER_SI["kn"]), ladder.binding.size - 1)])


def _lee_shore(found: Findings) -> Row:
    """Thrust there and needed at 2 kn in the wind that criterion 4 names."""
    held = usual_value("planning.hold_wind", (found.case.waters.exposure,))
    wind = float(round(held * PER_SI["kn"]))
    place, ladder = int(wind), found.headwind
    beyond = bool(ladder.beyond_limit[0, place])
    why = {"made_kn_why": NOT_COVERED} if beyond else {}
    return {
        "wind_kn": wind,
        "wave_height_m": _middle(ladder.height[:, [place]], "m"),
        "open_sea_m": float(ladder.open_sea[place]),
        "beyond_limit": beyond,
        "need_n": None if beyond else float(ladder.need[place]),
        "continuous_kn": None if beyond else _middle(ladder.continuous.speed[:, [place]], "kn"),
        "peak_kn": None if beyond else _middle(ladder.peak.speed[:, [place]], "kn"),
        **why,
    }
