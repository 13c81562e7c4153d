"""What does results.json say of how far the resistance curve is known?"""

from __future__ import annotations

from typing import Any

from generator.analyses.second_opinions import SecondOpinions
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
