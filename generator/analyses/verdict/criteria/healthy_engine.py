"""Criterion 27: is the present engine healthy, so that keeping it is the reference?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    NOT_ASSESSED,
    TOLD,
    Criterion,
    Judgement,
)
from generator.arrays import Array, Numbers
from generator.records import number, record
from generator.tables.method import method

YOUNG = method("judging.young_engine")
FEW_HOURS = method("judging.few_hours")
PRICE = "prices.overhaul"  # path of the owner's own price
SOON = 0.5  # years, below which an overhaul is due now


@record
class PresentEngine:
    """The engine that is in her, and what keeping it asks for.

    ``outcome``: healthy (young, of few hours, good), good, worn, dying.
    """

    SAID_BY: ClassVar[str] = "present_engine"
    SAID_IN: ClassVar[str] = "criteria_papers"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    result: str
    kept: bool  # the option keeps it
    priced: bool  # the owner priced an overhaul
    due: bool  # an overhaul is due now
    age: float | None = number("years", "age of the engine")
    hours: Numbers | None = number("hours", "hours run", cautious="high")
    overhaul: Array | None = number("money", "price of an overhaul", cautious="high")
    left: Array | None = number("years", "years until an overhaul", cautious="low")
    absent: Mapping[str, str] = field(default_factory=dict)


ABSENT = {"age": "not_said", "hours": "not_said", "overhaul": "no_price", "left": "not_said"}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Of the engine that is kept its condition decides; beside another option it is told."""
    engine, date = found.case.engine, found.case.study.date
    kept = found.option.kind == "keep"
    known = engine.year is not None and engine.hours is not None
    age = None if engine.year is None else float(int(date[:4]) - engine.year)
    price = _price(found) if kept else None
    result = _result(found, price) if kept else TOLD if known else NOT_ASSESSED
    healthy = _healthy(found, age)
    left = found.cost.overhaul.years_left if kept and found.cost.overhaul else None
    facts = PresentEngine(
        outcome="healthy" if healthy else engine.condition,
        result=result,
        kept=kept,
        priced=price is not None,
        due=left is not None and not scalar(spread(left, "low").middle) > SOON,
        age=age,
        hours=engine.hours,
        overhaul=price,
        left=left,
        absent=ABSENT,
    )
    value = 1.0 if healthy else 0.0
    return Judgement(
        criterion, value, value, "-", result, facts=facts, role="decide" if kept else "tell"
    )  # fmt: skip


def _healthy(found: Findings, age: float | None) -> bool:
    engine = found.case.engine
    if age is None or engine.hours is None:
        return False
    return age < YOUNG and scalar(engine.hours) < FEW_HOURS and engine.condition == "good"


def _result(found: Findings, price: Array | None) -> str:
    """Good passes; worn wants an overhaul; one that is dying fails until that has a price."""
    condition = found.case.engine.condition
    if condition == "dying":
        return NO if price is None else CONDITIONAL
    return CONDITIONAL if condition == "worn" else GO


def _price(found: Findings) -> Array | None:
    """Of an overhaul: the lines of the ledger that pay for one, else the owner's own price."""
    lines = [row.amount for row in found.ledger.payments if row.part == "overhaul"]
    if lines:
        return np.asarray(sum(lines[1:], lines[0]))
    given = {item.path for item in found.case.assumptions if item.origin == "given"}
    return np.atleast_2d(found.case.prices.overhaul) if PRICE in given else None
