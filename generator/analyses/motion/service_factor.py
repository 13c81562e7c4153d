"""What raises the need in service above a clean hull in a tank, part by part?"""

from __future__ import annotations

from dataclasses import dataclass

from generator.analyses.motion.demand import fouling_share
from generator.analyses.motion.key_figures import KeyFigures
from generator.arrays import Array, Numbers
from generator.case.case import Case

UNTOLD = "not told, from clean to slimed"


@dataclass(frozen=True)
class ServicePart:
    """One named part, and whether it tells in a calm; all of them tell in wind and sea."""

    id: str
    name: str
    applies_to: str
    value: Numbers
    in_calm: bool


@dataclass(frozen=True)
class ServiceFactor:
    """The parts, and what they come to at planned cruise on shaft power."""

    parts: tuple[ServicePart, ...]
    at_cruise: Array


def service_factor(case: Case, key: KeyFigures) -> ServiceFactor:
    """The factor that is often taken as one number, taken apart so that nothing counts twice."""
    factors, bottom = case.factors, case.boat.bottom or UNTOLD
    resistance, raised = "calm resistance", fouling_share(factors, case.boat)
    parts = (
        ServicePart(
            "fouling",
            f"bottom: {bottom}",
            "friction",
            1.0 + raised,
            True,
        ),
        ServicePart(
            "propeller_condition", "propeller", "shaft torque", factors.propeller_condition, True
        ),
        ServicePart(
            "wind_and_chop", "light wind and chop", resistance, factors.wind_and_chop, False
        ),
        ServicePart(
            "steering_and_trim", "steering and trim", resistance, factors.steering_and_trim, False
        ),
    )
    return ServiceFactor(parts, key.service_share)
