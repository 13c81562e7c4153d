"""What raises the need in service above a clean hull in a tank, part by part?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from generator.analyses.motion.demand import fouling_share
from generator.analyses.motion.key_figures import KeyFigures
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.records import number, record
from generator.tables.method import method

UNTOLD = "not told, from clean to slimed"
SINGLE = method("service.single")


@record
class ServicePart:
    """One named part, and whether it tells in a calm; all of them tell in wind and sea."""

    id: str
    name: str
    applies_to: str
    in_calm: bool
    value: Numbers = number("ratio", "in-service factor of a part", cautious="high")
    in_wind: bool = True


@record
class ServiceFactor:
    """The parts, and what they come to at planned cruise on shaft power."""

    parts: tuple[ServicePart, ...]
    at_cruise: Array = number("ratio", "shaft power over that of clean")
    single_factor: float = number("ratio", "single factor of common practice", default=SINGLE)
    absent: Mapping[str, str] = field(default_factory=lambda: {"at_cruise": "cruise_beyond"})


def service_factor(case: Case, key: KeyFigures) -> ServiceFactor:
    """The factor that is often taken as one number, taken apart so that nothing counts twice."""
    factors, bottom = case.factors, case.boat.bottom or UNTOLD
    resistance, raised = "calm resistance", fouling_share(factors, case.boat)
    parts = (
        ServicePart(
            "fouling",
            f"bottom: {bottom}",
            "friction",
            True,
            1.0 + raised,
        ),
        ServicePart(
            "propeller_condition", "propeller", "shaft torque", True, factors.propeller_condition
        ),
        ServicePart(
            "wind_and_chop", "light wind and chop", resistance, False, factors.wind_and_chop
        ),
        ServicePart(
            "steering_and_trim", "steering and trim", resistance, False, factors.steering_and_trim
        ),
    )
    return ServiceFactor(parts, key.service_share)
