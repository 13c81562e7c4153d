"""What does the study say of each subject that the owner cares about?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, scalar, spread
from generator.arrays import Numbers
from generator.records import number, record
from generator.study import OptionStudy, Study

SAID_ELSEWHERE = ("cost", "which motor")


@record
class Subject:
    """One subject of the owner's, and the figure that speaks to it for the option advised.

    A figure that the study does not have is absent: then the words say what would assess it.
    """

    SAID_BY: ClassVar[str] = "subject"
    SAID_IN: ClassVar[str] = "advice"
    subject: str
    option: str
    fuel_left: bool  # the option still burns fuel aboard
    range: float | None = number("distance", "range to reserve in a calm")
    range_before: float | None = number("distance", "range of the present tank")
    fuel: float | None = number("fuel", "fuel that is no longer burnt in a year")
    volume: float | None = number("mass", "net change of mass")
    service: float | None = number("money", "yearly service that is saved")
    absent: Mapping[str, str] = field(default_factory=dict)


def subjects(study: Study, option: OptionStudy | None) -> tuple[Subject, ...]:
    """Each of the owner's subjects in his order; none without an option to speak of."""
    if option is None:
        return ()
    found = option.findings
    keep = next((e.findings for e in study.options if e.findings.option.kind == "keep"), None)
    return tuple(
        _one(subject, found, keep)
        for subject in found.case.study.subjects
        if subject not in SAID_ELSEWHERE
    )


def _one(subject: str, found: Findings, keep: Findings | None) -> Subject:
    supply = found.option.supply
    return Subject(
        subject=subject,
        option=found.option.name,
        fuel_left=found.option.diesel is not None or bool(supply and supply.genset),
        range=range_at_cruise(found) if subject == "range" else None,
        range_before=None if keep is None or subject != "range" else range_at_cruise(keep),
        fuel=_fuel(keep) if subject in ("smell", "fuel-free") else None,
        volume=_finite(found.weight.net) if subject == "space" else None,
        service=_service(found, keep) if subject == "ease" else None,
        absent=dict.fromkeys(
            ("range", "range_before", "fuel", "volume", "service"), "not_of_this_subject"
        ),
    )


def range_at_cruise(found: Findings) -> float | None:
    """At planned cruise in a calm, old bank or tank."""
    rows = [row for row in found.ranges if row.sea == "calm" and row.age in ("aged", "tank")]
    cruise = scalar(best(found.case.planning.cruise_speed))
    speed = found.power.speed
    if not rows or not speed[0] <= cruise <= speed[-1]:
        return None
    return float(np.interp(cruise, speed, spread(rows[0].distance, "low").middle))


def _fuel(keep: Findings | None) -> float | None:
    return None if keep is None else _finite(keep.legs.yearly)


def _service(found: Findings, keep: Findings | None) -> float | None:
    prices = found.case.prices
    if keep is None:
        return None
    return _finite(prices.diesel_service) - _finite(prices.electric_service)


def _finite(value: Numbers) -> float:
    return scalar(best(value))
