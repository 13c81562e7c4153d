"""What does results.json say beside the options: service factor, seas, criteria, comparison?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.cautions import CautionItem
from generator.analyses.criteria.catalogue import criteria
from generator.analyses.criteria.evidence import GRADES, grade
from generator.analyses.demand import fouling_share
from generator.analyses.findings import Findings
from generator.analyses.hull import hull_cautions
from generator.analyses.spread import scalar, spread
from generator.report.results.suffix import put

Row = dict[str, Any]
WIND_FREE = "light wind and chop"
SINGLE_FACTOR = 1.35  # the one in-service factor that the parts replace
LABELS = {
    "calm": "Calm",
    "wind_15": "15 kn on the nose",
    "wind_20": "20 kn on the nose",
    "wind_25": "25 kn on the nose",
}


def evidence_part(found: Findings) -> Row:
    """On what the power curve rests."""
    level = grade(found)
    return {"grade": GRADES[level], "level": level, "used_rows": found.trial.used}


def service_part(found: Findings) -> Row:
    """The in-service factor by its named parts, and their product at planned cruise."""
    factors, bottom = found.case.factors, found.case.boat.bottom
    parts = [
        ("fouling", f"bottom: {bottom}", "friction", 1.0 + fouling_share(factors, bottom), True),
        ("propeller_condition", "propeller", "shaft torque", factors.propeller_condition, True),
        ("wind_and_chop", WIND_FREE, "calm resistance", factors.wind_and_chop, False),
        (
            "steering_and_trim",
            "steering and trim",
            "calm resistance",
            factors.steering_and_trim,
            True,
        ),
    ]
    rows = []
    for name, label, applies, value, in_wind in parts:
        told = spread(value)
        rows.append(
            {
                "id": name,
                "name": label,
                "applies_to": applies,
                "value": scalar(told.middle),
                "low": scalar(told.low),
                "high": scalar(told.high),
                "in_calm": True,
                "in_wind": in_wind,
            }
        )
    return {"parts": rows, "product_at_cruise": _product(found), "single_factor": SINGLE_FACTOR}


def _product(found: Findings) -> float | None:
    """Shaft power in service over clean at planned cruise, middle of the draws."""
    cruise = float(np.asarray(found.case.planning.cruise_speed).flat[0])
    service = np.atleast_2d(found.power.curves["calm"].demand.shaft_power)
    clean = np.atleast_2d(found.power.clean.shaft_power)
    place = int(np.argmin(np.abs(found.power.speed - cruise)))
    ratio = scalar(spread((service / clean)[:, [place]]).middle)
    return ratio if np.isfinite(ratio) else None


def seas_part(found: Findings) -> list[Row]:
    """The seas of the study in these waters."""
    rows = []
    for name, sea in found.power.seas.items():
        wind = {"calm": 0.0, "wind_15": 15.0, "wind_20": 20.0, "wind_25": 25.0}[name]
        rows.append(
            {
                "id": name,
                "label": LABELS[name],
                "wind_kn": wind,
                "wave_height_m": put(sea.height, "m"),
                "wave_period_s": put(sea.period, "s") if wind else None,
                "beyond_limit": bool(np.atleast_2d(sea.beyond_limit)[0].any()) and wind > 0,
            }
        )
    return rows


def criteria_part() -> list[Row]:
    """The 28 criteria and which are assessed."""
    return [
        {
            "id": item.id,
            "name": item.name,
            "role": item.role,
            "limit_text": item.limit,
            "built": item.assessed,
        }
        for item in criteria()
    ]


def cautions_part(items: tuple[CautionItem, ...]) -> list[Row]:
    """Cautions with their own numbers."""
    return [
        {
            "id": item.id,
            "title": item.title,
            "text": item.text.replace("{here.", f"{{cautions.{place}."),
            "confirm": item.confirm,
            **item.numbers,
        }
        for place, item in enumerate(items)
    ]


def range_warnings_part(options: tuple[Findings, ...]) -> list[Row]:
    """Where a formula is used outside what it was tested on."""
    rows: dict[str, Row] = {}
    for found in options:
        for item in hull_cautions(found.power.vessel.form):
            rows.setdefault(
                item.quantity,
                {
                    "quantity": item.quantity,
                    "low": item.low,
                    "high": item.high,
                    "share_outside": item.share_outside,
                    "message": item.message,
                    "source": item.source,
                },
            )
    return list(rows.values())
