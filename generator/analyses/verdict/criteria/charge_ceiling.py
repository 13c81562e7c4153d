"""Criterion 22: does the bank stay below the touch limit, and its cables within their rules?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

from generator.analyses.findings import Findings
from generator.analyses.verdict.criteria.apart import apart
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    NO,
    Criterion,
    Judgement,
)
from generator.analyses.wiring.installation import Problem
from generator.records import number, record


@record
class ChargeCeiling:
    """Voltage at the end of charge, and what the lists of cables and fuses say.

    ``outcome``: below (the touch limit), expert (above it, by a specialist with insulation
    monitor), above.
    """

    SAID_BY: ClassVar[str] = "charge_ceiling"
    SAID_IN: ClassVar[str] = "criteria_papers"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    by_maker: bool  # the maker has told the short circuit
    first: Problem | None  # of what the lists say does not hold
    more: bool
    cells: int = number("count", "cells in series")
    ceiling: float = number("voltage", "voltage at the end of charge")
    limit: float = number("voltage", "limit of voltage that may be touched")
    fault: float = number("short_circuit", "short circuit to be broken")
    problems: int = number("count", "what does not hold in the lists")
    absent: Mapping[str, str] = field(default_factory=dict)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """The voltage at the end of charge; then everything that the lists say does not hold."""
    made, wiring = found.installation, found.option.installation
    if made is None or wiring is None:
        return apart(criterion, "no_battery")
    ceiling, problems = made.voltages.ceiling, made.problems
    result, outcome = criterion.judge(ceiling), "below"
    if result == NO:
        expert = bool(wiring.specialist_design and wiring.insulation_monitor)
        result, outcome = (CONDITIONAL, "expert") if expert else (NO, "above")
    if problems and result != NO:
        result = CONDITIONAL
    facts = ChargeCeiling(
        outcome=outcome,
        by_maker=made.fault.by_maker,
        first=problems[0] if problems else None,
        more=len(problems) > 1,
        cells=made.voltages.cells,
        ceiling=ceiling,
        limit=criterion.go,
        fault=made.fault.bank_greatest,
        problems=len(problems),
    )
    return Judgement(criterion, ceiling, ceiling, "v", result, facts=facts)
