"""What does the study say to each wish and reason of the owner's?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, scalar, spread
from generator.answer.names import called
from generator.arrays import Numbers
from generator.records import number, record
from generator.study import OptionStudy, Study


@record
class Subject:
    """One wish or reason, and the figure that speaks to it for the option advised.

    A figure that the study does not have is absent: then the words say what would assess it.
    """

    SAID_BY: ClassVar[str] = "subject"
    SAID_IN: ClassVar[str] = "advice"
    asked: str  # in the owner's words
    subject: str
    option: str
    electric: bool
    fuel_left: bool  # the option still burns fuel aboard
    suits: bool  # with or without conditions
    all_made: bool  # every passage of an ordinary year
    dearer: bool  # than keeping the diesel, over the horizon
    range: float | None = number("distance", "range to reserve in a calm")
    range_before: float | None = number("distance", "range of the present tank")
    cruise: float | None = number("speed", "planned cruising speed")
    passages: float | None = number("count", "passages a year")
    made: float | None = number("mean_count", "passages of an ordinary year inside range")
    fuel: float | None = number("fuel", "fuel that is no longer burnt in a year")
    volume: float | None = number("mass", "net change of mass")
    service: float | None = number("money", "yearly service that is saved")
    extra: float | None = number("money", "cost over keeping the diesel, over the horizon")
    payback: float | None = number("years", "time until it is paid back")
    absent: Mapping[str, str] = field(default_factory=dict)


OF = {
    "range": ("range", "range_before", "cruise", "passages", "made"),
    "smell": ("fuel",),
    "fuel-free": ("fuel",),
    "space": ("volume",),
    "ease": ("service",),
    "cost": ("extra", "payback"),
}
NUMBERS = tuple(dict.fromkeys(name for names in OF.values() for name in names))


def subjects(study: Study, option: OptionStudy | None) -> tuple[Subject, ...]:
    """Each wish, then each reason, in his order; none without an option to speak of."""
    if option is None:
        return ()
    wishes = option.findings.case.study.wishes
    return tuple(_one(text, subject, study, option) for text, subject in wishes)


def _one(text: str, subject: str, study: Study, option: OptionStudy) -> Subject:
    found = option.findings
    keep = next((e.findings for e in study.options if e.findings.option.kind == "keep"), None)
    supply = found.option.supply
    covered = found.use.coverage
    made = None if covered is None else scalar(spread(covered.legs, "low").middle)
    figures = _figures(found, keep)
    said = {name: figures[name] if name in OF.get(subject, ()) else None for name in NUMBERS}
    return Subject(
        asked=text,
        subject=subject,
        option=called(study, found),
        electric=found.option.bank is not None,
        fuel_left=found.option.diesel is not None or bool(supply and supply.genset),
        suits=all(row.result != "no" for row in option.verdict.judgements if row.decides),
        all_made=made is not None and made > ALL,
        dearer=(figures["extra"] or 0.0) > 0.0,
        **said,
        absent=dict.fromkeys(NUMBERS, "not_of_this_subject") | {"payback": "not_repaid"},
    )


ALL = 0.995  # share of passages that is told as all of them


def _figures(found: Findings, keep: Findings | None) -> dict[str, float | None]:
    """All that may speak to a subject, each by its name."""
    covered, worth = found.use.coverage, found.worth
    passages = None if covered is None else covered.passages
    made = None if covered is None else scalar(spread(covered.legs, "low").middle)
    return {
        "range": range_at_cruise(found),
        "range_before": None if keep is None else range_at_cruise(keep),
        "cruise": scalar(best(found.case.planning.cruise_speed)),
        "passages": passages,
        "made": None if passages is None or made is None else made * passages,
        "fuel": None if keep is None else _finite(keep.legs.yearly),
        "volume": _finite(found.weight.net),
        "service": _service(found, keep),
        "extra": None if worth is None or worth.extra is None else _whole(worth.extra),
        "payback": None if worth is None or worth.payback is None else _whole(worth.payback),
    }


def range_at_cruise(found: Findings) -> float | None:
    """At planned cruise in a calm, old bank or tank."""
    rows = [row for row in found.ranges if row.sea == "calm" and row.age in ("aged", "tank")]
    cruise = scalar(best(found.case.planning.cruise_speed))
    speed = found.power.speed
    if not rows or not speed[0] <= cruise <= speed[-1]:
        return None
    return float(np.interp(cruise, speed, spread(rows[0].distance, "low").middle))


def _service(found: Findings, keep: Findings | None) -> float | None:
    prices = found.case.prices
    if keep is None:
        return None
    return _finite(prices.diesel_service) - _finite(prices.electric_service)


def _finite(value: Numbers) -> float:
    return scalar(best(value))


def _whole(value: Numbers) -> float | None:
    """None where there is no number."""
    found = _finite(value)
    return found if np.isfinite(found) else None
