"""What is told of the sea trial: its rows, their readings, and what they ask of the curve?"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import field
from typing import Any

import numpy as np

from generator.analyses.motion.trial import TrialPoint, TrialResult
from generator.analyses.percentiles import scalar, spread
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.trial import SeaTrial
from generator.records import number, numbers_of, record

EIGHT_TENTHS = 1.2816  # normal deviate of the 10 % and 90 % points
METHODS = {"propeller_law": "law_power", "fuel": "fuel_power", "battery": "read_power"}


@record
class TrialRowTold:
    """One row; readings by method, their mean with its doubt, the model and the curve there.

    ``why``: for what it does not count. ``remark``: what else is odd in it.
    """

    line: int
    used: bool
    why: str
    remark: str
    engine_speed: Numbers | None = number("rpm", "engine turns", expected=True)
    speed_out: Numbers | None = number("speed", "speed out", expected=True)
    speed_back: Numbers | None = number("speed", "speed back", expected=True)
    speed: Numbers | None = number("speed", "mean speed", expected=True)
    wind: Numbers | None = number("wind", "wind on the trial", expected=True)
    depth: Numbers | None = number("height", "depth of water", expected=True)
    fuel_rate: Numbers | None = number("fuel_rate", "fuel read", expected=True)
    law_power: Numbers | None = number("power", "by the propeller law", expected=True)
    fuel_power: Numbers | None = number("power", "by the fuel", expected=True)
    read_power: Numbers | None = number("power", "by the battery meter", expected=True)
    shaft_power: float | None = number("power", "shaft power read")
    shaft_power_low: float | None = number("power", "shaft power read, low end")
    shaft_power_high: float | None = number("power", "shaft power read, high end")
    model_power: Array | None = number("power", "by the hull model alone")
    curve_power: Array | None = number("power", "by the curve used")
    absent: Mapping[str, str] = field(default_factory=lambda: _lacking(TrialRowTold))


@record
class TrialTable:
    """The rows, and the factor on calm resistance that they ask for; per draw.

    ``replaces_model``: over the speeds from ``covered_from`` to ``covered_to`` the rows stand in
    the hull model's place. ``apart``: propeller law and fuel differ by far. ``turns_wrong``: so do
    turns and what the screw asks for.
    """

    rows: tuple[TrialRowTold, ...]
    replaces_model: bool
    with_option: str | None
    apart: bool
    turns_wrong: bool
    note: str
    resistance_scale: Array = number("ratio", "factor on calm resistance", cautious="high")
    reference: float | None = number("speed", "speed of that factor")
    growth: Array | None = number("ratio", "its growth with speed", cautious="high")
    covered_from: Numbers | None = number("speed", "slowest speed covered", expected=True)
    covered_to: Numbers | None = number("speed", "fastest speed covered", expected=True)
    full_throttle_speed: Numbers | None = number("rpm", "full-throttle turns", expected=True)
    used_rows: int = number("count", "rows that count")
    law_over_fuel: float | None = number("share", "propeller law over fuel")
    turns_over_model: float | None = number("share", "turns over those asked for")
    absent: Mapping[str, str] = field(
        default_factory=lambda: _lacking(TrialTable) | {"growth": "one_factor_for_all_speeds"}
    )

    @classmethod
    def of(cls, case: Case, found: TrialResult) -> TrialTable | None:
        """Nothing where no trial is given."""
        return None if case.trial is None else _table(case.trial, found)


def _table(trial: SeaTrial, found: TrialResult) -> TrialTable:
    scale, inside = found.scale, found.scale.inside
    growth = np.atleast_2d(np.asarray((inside or scale).growth, dtype=np.float64))
    return TrialTable(
        rows=_rows(found),
        replaces_model=found.replaces,
        with_option=trial.with_option,
        apart=found.apart,
        turns_wrong=found.turns_wrong,
        note=found.note,
        resistance_scale=np.atleast_2d(scale.at(np.array([scale.reference]))),
        reference=None if found.sigma is None else scale.reference,
        growth=growth if found.grows else None,
        covered_from=None if inside is None else inside.slowest,
        covered_to=None if inside is None else inside.fastest,
        full_throttle_speed=trial.full_throttle_speed,
        used_rows=found.used,
        law_over_fuel=_beyond_one(found.law_over_fuel),
        turns_over_model=_beyond_one(found.turns_over_model),
    )


def _beyond_one(ratio: float | None) -> float | None:
    return None if ratio is None else ratio - 1.0


def _rows(found: TrialResult) -> tuple[TrialRowTold, ...]:
    """Model and curve have a column for each row that counts."""
    rows, used = [], 0
    for point in found.points:
        beside: tuple[Array | None, Array | None] = (None, None)
        if point.used and found.model_power is not None and found.curve_power is not None:
            model, curve = (np.atleast_2d(each) for each in (found.model_power, found.curve_power))
            beside = (model[:, [used]], curve[:, [used]])
            used += 1
        rows.append(_row(point, *beside))
    return tuple(rows)


def _row(point: TrialPoint, model: Array | None, curve: Array | None) -> TrialRowTold:
    row, power = point.row, point.shaft_power
    middle = None if power is None else scalar(spread(power).middle)
    doubt = None if point.sigma is None else math.exp(EIGHT_TENTHS * point.sigma)
    read = {METHODS[item.method]: item.power for item in point.readings}
    return TrialRowTold(
        line=row.line,
        used=point.used,
        why=point.why,
        remark=point.remark,
        engine_speed=row.engine_speed,
        speed_out=row.speed_out,
        speed_back=row.speed_back,
        speed=point.speed,
        wind=row.wind,
        depth=row.depth,
        fuel_rate=row.fuel_rate,
        law_power=read.get("law_power"),
        fuel_power=read.get("fuel_power"),
        read_power=read.get("read_power"),
        shaft_power=middle,
        shaft_power_low=None if middle is None or doubt is None else middle / doubt,
        shaft_power_high=None if middle is None or doubt is None else middle * doubt,
        model_power=model,
        curve_power=curve,
    )


def _lacking(kind: Any) -> dict[str, str]:
    return dict.fromkeys(numbers_of(kind), "not_of_this_trial")
