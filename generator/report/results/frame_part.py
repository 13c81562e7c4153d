"""What does results.json say beside the options: service factor, seas, criteria, comparison?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.service_factor import ServiceFactor, ServicePart
from generator.analyses.percentiles import scalar, spread
from generator.arrays import Array, Numbers
from generator.report.results.suffix import CRUISE_BEYOND, PER_SI, excused, put
from generator.study import Study

Row = dict[str, Any]
EVIDENCE = 28  # id of the criterion
FEW_OUTSIDE = 0.05  # of the draws; fewer are the tails of a doubt, not the boat
SINGLE_FACTOR = 1.35  # the one in-service factor that the parts replace
LABELS = {
    "calm": "Calm",
    "wind_15": "15 kn on the nose",
    "wind_20": "20 kn on the nose",
    "wind_25": "25 kn on the nose",
}


def evidence_part(study: Study) -> Row:
    """On what the power curve rests, as the criterion for it found."""
    own = study.options[study.as_she_is]
    row = next(item for item in own.verdict.judgements if item.criterion.id == EVIDENCE)
    trial = study.trial
    others = _others_at_cruise(study)
    return {
        "grade": row.grade,
        "level": row.value,
        "used_rows": trial.used,
        **_band(own.findings.key.cruise_shaft_power),
        "given_rows": len(trial.points),
        "prior_share": sigma_share(study.options[0].findings.case.factors.prior_sigma),
        "posterior_share": None if trial.sigma is None else sigma_share(trial.sigma),
        "others_low_share": min(others, default=None),
        "others_high_share": max(others, default=None),
    }


def _band(power: Array) -> Row:
    """Both ends of the shaft power at planned cruise, as shares of its middle."""
    told = spread(power)
    middle = scalar(told.middle)
    ends = {"curve_low_pct": scalar(told.low), "curve_high_pct": scalar(told.high)}
    if not np.isfinite(middle):
        ends = dict.fromkeys(ends, np.nan)
    shares = {key: (end / middle - 1.0) * PER_SI["pct"] for key, end in ends.items()}
    return excused(shares, CRUISE_BEYOND)


def sigma_share(sigma: Numbers) -> float:
    """One sigma of a logarithm as a share, best estimate."""
    return float(np.expm1(np.asarray(sigma).flat[0]))


def _others_at_cruise(study: Study) -> list[float]:
    """How far the other hull forms lie from the first at planned cruise, as shares."""
    cruise = float(np.asarray(study.options[0].findings.case.planning.cruise_speed).flat[0])
    return study.opinions.others_at(cruise)


def service_part(service: ServiceFactor) -> Row:
    """The in-service factor by its named parts, and their product at planned cruise."""
    product = {"product_at_cruise": scalar(spread(service.at_cruise).middle)}
    return {
        "parts": [_service_row(part) for part in service.parts],
        **excused(product, CRUISE_BEYOND),
        "single_factor": SINGLE_FACTOR,
    }


def _service_row(part: ServicePart) -> Row:
    told = spread(part.value)
    return {
        "id": part.id,
        "name": part.name,
        "applies_to": part.applies_to,
        "value": scalar(told.middle),
        "low": scalar(told.low),
        "high": scalar(told.high),
        "in_calm": part.in_calm,
        "in_wind": True,
    }


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


def criteria_part(study: Study) -> list[Row]:
    """The 28 criteria and which are assessed."""
    rows = [item.criterion for item in study.options[0].verdict.judgements]
    return [
        {
            "id": item.id,
            "name": item.name,
            "role": item.role,
            "limit_text": item.limit,
            "built": item.assessed,
        }
        for item in rows
    ]


def range_warnings_part(options: tuple[Findings, ...]) -> list[Row]:
    """Where a formula is used outside what it was tested on."""
    rows: dict[str, Row] = {}
    for found in options:
        for item in found.range_cautions:
            if item.share_outside < FEW_OUTSIDE:
                continue
            rows.setdefault(
                item.quantity,
                {
                    "quantity": item.quantity,
                    "low": item.low,
                    "high": item.high,
                    "share_outside_pct": put(item.share_outside, "pct"),
                    "message": item.message,
                    "source": item.source,
                },
            )
    return list(rows.values())
