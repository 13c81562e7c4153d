"""On what does the power curve rest, and how well is it known?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.second_opinions import SecondOpinions
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import Judgement
from generator.arrays import Array, Numbers
from generator.records import number, record

EVIDENCE = 28  # id of the criterion


@record
class CurveEvidence:
    """The grade of the evidence, the trial's part in it, and what other hull forms say.

    ``curve`` is shaft power at planned cruise over its middle, less one.
    """

    grade: str
    level: float | None = number("count", "grade of the evidence")
    used_rows: int = number("count", "two-way runs that set the curve")
    given_rows: int = number("count", "rows of the trial as given")
    curve: Array | None = number("percent", "shaft power at cruise, about", cautious="high")
    prior: float = number("share", "one sigma without a trial")
    posterior: float | None = number("share", "one sigma with the trial")
    others_low: float | None = number("share", "lowest of the other forms")
    others_high: float | None = number("share", "highest of the other forms")
    absent: Mapping[str, str] = field(
        default_factory=lambda: {
            "level": "no_value",
            "curve": "cruise_beyond",
            "posterior": "no_trial",
            **dict.fromkeys(("others_low", "others_high"), "no_other_form"),
        }
    )


def curve_evidence(
    row: Judgement, own: Findings, first: Findings, opinions: SecondOpinions
) -> CurveEvidence:
    """As the criterion for it found; ``own`` is the boat as she is."""
    others = _others_at_cruise(first, opinions)
    trial = own.trial
    return CurveEvidence(
        grade=row.grade,
        level=row.value,
        used_rows=trial.used,
        given_rows=len(trial.points),
        curve=_about_middle(own.key.cruise_shaft_power),
        prior=sigma_share(first.case.factors.prior_sigma),
        posterior=None if trial.sigma is None else sigma_share(trial.sigma),
        others_low=min(others, default=None),
        others_high=max(others, default=None),
    )


def _about_middle(power: Array) -> Array | None:
    """Each draw as a share of the middle, less one; none where there is no middle."""
    middle = scalar(spread(power).middle)
    return power / middle - 1.0 if np.isfinite(middle) else None


def sigma_share(sigma: Numbers) -> float:
    """One sigma of a logarithm as a share, best estimate [-]."""
    return float(np.expm1(scalar(sigma)))


def _others_at_cruise(first: Findings, found: SecondOpinions) -> list[float]:
    """How far the other hull forms lie from the first at planned cruise, as shares."""
    return found.others_at(scalar(first.case.planning.cruise_speed))
