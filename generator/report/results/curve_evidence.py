"""What does results.json say of how far the resistance curve is known?"""

from __future__ import annotations

from typing import Any

from generator.analyses.handling.low_speed import LowSpeed
from generator.analyses.motion.second_opinions import SecondOpinions
from generator.analyses.percentiles import scalar
from generator.report.results.suffix import PER_SI

Row = dict[str, Any]


def opinions_rows(found: SecondOpinions) -> list[Row]:
    """Total resistance by form and speed, each beside the primary form's."""
    first = found.opinions[0].total
    return [
        {
            "form": item.id,
            "name": item.name,
            "keel": item.keel,
            "speed_kn": speed * PER_SI["kn"],
            "total_n": item.total[place],
            "over_primary_share": item.total[place] / first[place] - 1.0,
            **({"total_n_why": item.why} if item.why else {}),
        }
        for item in found.opinions
        for place, speed in enumerate(found.speed)
    ]


def score_rows(found: SecondOpinions) -> list[Row]:
    """Errors of each form on measured hulls by Froude number."""
    return [
        {
            "froude_number": item.froude,
            **{f"{form}_rms_share": value for form, value in item.rms.items()},
            **{f"{form}_bias_share": value for form, value in item.bias.items()},
        }
        for item in found.scores
    ]


def band_row(found: SecondOpinions) -> Row:
    """How many measured hulls the band holds."""
    return {"family_inside_share": found.family_inside, "hull_inside_share": found.hull_inside}


def crawl_rows(found: LowSpeed) -> list[Row]:
    """Watts at low speed, with what two published efficiency curves would make of them."""
    return [
        {
            "speed_kn": row.speed * PER_SI["kn"],
            "shaft_w": row.shaft,
            "standing_w": row.standing,
            "battery_w": scalar(row.battery.middle),
            "battery_low_w": scalar(row.battery.low),
            "battery_high_w": scalar(row.battery.high),
            "best_curve_w": row.best,
            "worst_curve_w": row.worst,
        }
        for row in found.rows
    ]


def reading_rows(found: LowSpeed) -> list[Row]:
    """Readings of owners, and this boat at the same speeds."""
    return [
        {
            "boat": row.boat,
            "note": row.note,
            "speed_kn": row.speed * PER_SI["kn"],
            "read_w": row.power,
            "here_w": scalar(row.here.middle),
            "here_low_w": scalar(row.here.low),
            "here_high_w": scalar(row.here.high),
        }
        for row in found.readings
    ]
