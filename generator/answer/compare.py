"""A or B: what does the larger motor buy, what does it cost, and which is to be quoted?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.power import KNOT
from generator.analyses.percentiles import best, held_share, scalar, spread
from generator.analyses.verdict.criteria.against_wind import beyond_formula, read
from generator.analyses.verdict.criteria.criterion import CONDITIONAL, GO, HALF, NO, SURE
from generator.answer.advice import least
from generator.answer.names import called
from generator.answer.subjects import range_at_cruise
from generator.arrays import Array, Numbers
from generator.records import number, record
from generator.study import OptionStudy, Study

SHARED = ("motor", "battery", "labour")  # parts whose share of the difference is told
MORE, LESS, SAME = "more", "less", "same"
# Less than these no page prints.
SPEED, DISTANCE, MASS, MONEY = 0.05 * KNOT, 926.0 / 10.0, 0.5, 0.5
JUDGED = (GO, CONDITIONAL, NO)


@record
class Row:
    """One criterion in which the two differ."""

    id: int
    name: str
    smaller: str
    larger: str


@record
class Comparison:
    """Two motors beside one another; of equal ones the larger bank, then the dearer, is the larger.

    Differences are sizes, and the facts beside them say which way they go. ``real``: in nine draws
    of ten the one that makes more way against the wind does so.

    ``quote`` is the one to have quoted where both are suitable or one alone is; else empty.
    """

    SAID_BY: ClassVar[str] = "comparison"
    SAID_IN: ClassVar[str] = "advice"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("rows",)
    smaller: str
    larger: str
    quote: str
    both: bool  # both suitable, with or without conditions
    neither: bool
    real: bool
    calm: str  # more, less, same: speed of the larger one in a calm beside the smaller
    windward: str  # against the wind
    reach: str  # in range; empty where it is not known
    weight: str
    price: str
    rows: tuple[Row, ...]
    faster: Array = number("speed", "difference of speed held in a calm", cautious="low")
    wind: Array = number("speed", "difference of speed against a wind", cautious="low")
    against: float = number("wind", "wind in which both are compared")
    farther: float | None = number("distance", "difference of range to reserve in a calm")
    heavier: float | None = number("mass", "difference of mass")
    dearer: float | None = number("money", "difference of first cost")
    of_motor: float | None = number("share", "share of that for the motor")
    of_bank: float | None = number("share", "share of that for the battery")
    of_labour: float | None = number("share", "share of that for labour")
    absent: Mapping[str, str] = field(default_factory=dict)


def compare(study: Study) -> Comparison | None:
    """The two battery options that differ in motor; none where there are not two."""
    options = [each for each in study.options if each.findings.option.motor is not None]
    if len(options) < 2:
        return None
    smaller, larger = sorted(options, key=lambda each: _size(each.findings))[:2]
    a, b = smaller.findings, larger.findings
    able = [each for each in (smaller, larger) if _able(each)]
    faster = np.asarray(b.power.top.continuous - a.power.top.continuous)
    against = _wind(a, b)
    wind = np.asarray(read(b.holding.ladder, against) - read(a.holding.ladder, against))
    dearer = _first_cost(b, a)
    shares = {part: _share(a, b, part, dearer) for part in SHARED}
    ranges = range_at_cruise(a), range_at_cruise(b)
    farther = None if None in ranges else (ranges[1] or 0.0) - (ranges[0] or 0.0)
    heavier = _first(b.weight.net) - _first(a.weight.net)
    calm, windward = (_way(scalar(spread(each).middle), SPEED) for each in (faster, wind))
    return Comparison(
        smaller=called(study, a),
        larger=called(study, b),
        quote=called(study, least(able).findings) if able else "",
        both=len(able) == 2,
        neither=not able,
        real=held_share(-wind > 0.0 if windward == LESS else wind > 0.0) >= SURE,
        calm=calm,
        windward=windward,
        reach=_way(farther, DISTANCE),
        weight=_way(heavier, MASS),
        price=_way(dearer, MONEY),
        rows=_rows(smaller, larger),
        faster=-faster if calm == LESS else faster,
        wind=-wind if windward == LESS else wind,
        against=against,
        farther=None if farther is None else abs(farther),
        heavier=abs(heavier),
        dearer=None if dearer is None else abs(dearer),
        of_motor=shares["motor"],
        of_bank=shares["battery"],
        of_labour=shares["labour"],
        absent={"farther": "no_range", "heavier": "not_weighed", "dearer": "price_missing"}
        | dict.fromkeys(("of_motor", "of_bank", "of_labour"), "no_such_line"),
    )


def _able(option: OptionStudy) -> bool:
    return all(row.result != NO for row in option.verdict.judgements if row.decides)


def _size(found: Findings) -> tuple[float, float, float]:
    """Motor, then bank, then price; where nothing is priced the order of the file."""
    assert found.option.motor is not None
    price = scalar(best(found.cost.first)) if found.ledger.priced else 0.0
    return _first(found.option.motor.continuous_power), _first(found.store.nominal), price


def _way(difference: float | None, least: float) -> str:
    """Which way a difference goes, where it is not too small to be told."""
    if difference is None or not np.isfinite(difference):
        return ""
    return SAME if abs(difference) < least else MORE if difference > 0.0 else LESS


def _wind(a: Findings, b: Findings) -> float:
    """The strongest wind of her holding-off that tells the two apart [m/s].

    Within the wave formula for both, and one in which one of them still makes way.
    """
    most = _first(a.case.planning.hold_wind)
    for wind in np.append(most, np.arange(np.ceil(most / KNOT) - 1.0, 0.0, -1.0) * KNOT):
        moves = any(held_share(read(each.holding.ladder, wind) > 0.0) >= HALF for each in (a, b))
        if moves and not any(beyond_formula(each, wind) for each in (a, b)):
            return float(wind)
    return 0.0


def _first_cost(larger: Findings, smaller: Findings) -> float | None:
    if not larger.ledger.priced or not smaller.ledger.priced:
        return None
    return scalar(best(larger.cost.first)) - scalar(best(smaller.cost.first))


def _share(smaller: Findings, larger: Findings, part: str, dearer: float | None) -> float | None:
    """How much of what the larger one costs more goes into a part of it."""
    if not dearer:
        return None
    more = _paid(larger, part) - _paid(smaller, part)
    return more / dearer if more else None


def _paid(found: Findings, part: str) -> float:
    lines = found.ledger.payments
    return sum(_first(row.amount) for row in lines if row.part == part and row.when == "first")


def _rows(smaller: OptionStudy, larger: OptionStudy) -> tuple[Row, ...]:
    pairs = zip(smaller.verdict.judgements, larger.verdict.judgements, strict=True)
    return tuple(
        Row(a.criterion.id, a.criterion.name, a.result, b.result)
        for a, b in pairs
        if a.result != b.result and a.result in JUDGED and b.result in JUDGED
    )


def _first(value: Numbers) -> float:
    return scalar(best(value))
