"""What does results.json say of the sea trial: rows, readings, and what they ask of the curve?"""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from generator.analyses.motion.trial import TrialPoint, TrialResult
from generator.analyses.percentiles import scalar, spread
from generator.case.case import Case
from generator.report.results.suffix import put

Row = dict[str, Any]
EIGHT_TENTHS = 1.2816  # normal deviate of the 10 % and 90 % points
KILO = 1e3
METHODS = {"propeller_law": "law_power_kw", "fuel": "fuel_power_kw", "battery": "read_power_kw"}


def trial_part(case: Case, trial: TrialResult) -> Row | None:
    """The sea trial row by row, with the reason for every row that does not count."""
    if case.trial is None:
        return None
    rows, used = [], 0
    for point in trial.points:
        model = curve = None
        if point.used and trial.model_power is not None and trial.curve_power is not None:
            model, curve = (
                float(spread(power).middle[used]) / KILO
                for power in (trial.model_power, trial.curve_power)
            )
            used += 1
        rows.append(_row(point, model, curve))
    reference = np.array([trial.scale.reference])
    scale = spread(trial.scale.at(reference))
    inside = trial.scale.inside
    growth = spread(np.asarray((inside or trial.scale).growth))
    return {
        "rows": rows,
        "resistance_scale": scalar(scale.middle),
        "resistance_scale_low": scalar(scale.low),
        "resistance_scale_high": scalar(scale.high),
        "reference_kn": put(reference, "kn") if trial.sigma is not None else None,
        "growth": scalar(growth.middle) if trial.grows else None,
        "growth_low": scalar(growth.low) if trial.grows else None,
        "growth_high": scalar(growth.high) if trial.grows else None,
        "replaces_model": trial.replaces,
        "covered_from_kn": None if inside is None else put(inside.slowest, "kn"),
        "covered_to_kn": None if inside is None else put(inside.fastest, "kn"),
        "growth_why": None if trial.grows else "too few rows or too narrow a span of speeds",
        "full_throttle_speed_rpm": put(case.trial.full_throttle_speed, "rpm"),
        "with_option": case.trial.with_option,
        "used_rows": trial.used,
        "law_over_fuel": trial.law_over_fuel,
        "law_over_fuel_share": _share_of(trial.law_over_fuel),
        "turns_over_model_share": _share_of(trial.turns_over_model),
        "apart": trial.apart,
        "turns_wrong": trial.turns_wrong,
        "note": trial.note,
    }


def _share_of(ratio: float | None) -> float | None:
    return None if ratio is None else ratio - 1.0


def _row(point: TrialPoint, model: float | None, curve: float | None) -> Row:
    row, power = point.row, point.shaft_power
    middle = None if power is None else scalar(spread(power).middle) / KILO
    doubt = None if point.sigma is None else math.exp(EIGHT_TENTHS * point.sigma)
    shown: Row = dict.fromkeys(METHODS.values())
    for item in point.readings:
        shown[METHODS[item.method]] = put(item.power, "kw")
    return {
        "line": row.line,
        "engine_speed_rpm": put(row.engine_speed, "rpm"),
        "speed_out_kn": put(row.speed_out, "kn"),
        "speed_back_kn": put(row.speed_back, "kn"),
        "speed_kn": put(point.speed, "kn"),
        "wind_kn": put(row.wind, "kn"),
        "depth_m": put(row.depth, "m"),
        "fuel_rate_l_per_h": put(row.fuel_rate, "l_per_h"),
        **shown,
        "shaft_power_kw": middle,
        "shaft_power_low_kw": None if middle is None or doubt is None else middle / doubt,
        "shaft_power_high_kw": None if middle is None or doubt is None else middle * doubt,
        "model_power_kw": model,
        "curve_power_kw": curve,
        "used": point.used,
        "why": point.why,
        "remark": point.remark,
    }
