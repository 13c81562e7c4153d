"""What should the owner do next? One sentence, from the first rule that fits."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.money.cost_ledger import Payment
from generator.analyses.percentiles import best, scalar
from generator.analyses.verdict.criteria.criterion import CONDITIONAL, NO, Judgement
from generator.analyses.verdict.verdict import WORD_GO, WORD_NO
from generator.answer.names import called
from generator.answer.sets import RemedySet
from generator.records import number, record
from generator.study import OptionStudy, Study

REFUSALS = (20, 21)
PAPERS = (10, 19, 20, 21, 28)  # rows that a trial, a look or a letter answers
TRIAL_FIRST = (28, 20, 21, 19, 10)  # the order in which they are answered
NEAR, DEARER = 0.05, 1.10  # of a present value: no real difference; what a suitable one may cost


@record
class Advice:
    """``rule`` is the branch of the tree; what it does not speak of is empty or absent."""

    SAID_BY: ClassVar[str] = "advice"
    SAID_IN: ClassVar[str] = "advice"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("rests",)
    rule: str
    option: str  # the option that is named, or whose remedy is
    subject: str  # the owner's first subject that is neither cost nor which motor
    binding: str  # name of the row that fails, of the option that is named
    stopped: str  # the option that it stops, where another is named
    refused_by: int  # the row of a refusal; 0 where there is none
    worn: bool  # the present engine is not in good health
    overhaul: str  # when the ledger has one: now, later; empty where it has none
    overhaul_due: bool  # nor is an overhaul of it priced
    first: tuple[int, ...]  # rows to be answered first, in their order
    conditions: tuple[int, ...]  # rows that pass with conditions
    named: tuple[str, ...]  # their names
    remedies: RemedySet | None
    no_reason: bool  # the owner gave none
    over_half: bool
    beside_healthy: bool
    open: bool  # a price is no quote, or something is not answered
    unpriced: bool  # no price of fitting it at all
    estimates: tuple[str, ...]  # its first prices that are no quotes
    lacking: tuple[str, ...]  # usual parts of the work that no line names
    extra: float | None = number("money", "cost over keeping, present value")
    new_power: float | None = number("power", "rated power of the new diesel")
    overhaul_year: float | None = number("count", "year of the overhaul, from now")
    overhaul_price: float | None = number("money", "price of the overhaul, contingency included")
    absent: Mapping[str, str] = field(
        default_factory=lambda: dict.fromkeys(
            ("extra", "new_power", "overhaul_year", "overhaul_price"), "not_asked_for"
        )
    )


@dataclass(frozen=True)
class Choice:
    """What the tree stands on: the study, and the sets of each battery option by its place."""

    study: Study
    sets: Mapping[int, Sequence[RemedySet]]

    @property
    def every(self) -> tuple[OptionStudy, ...]:
        """All options."""
        return self.study.options

    @property
    def conversions(self) -> tuple[OptionStudy, ...]:
        """Options with a battery."""
        return tuple(each for each in self.every if each.findings.option.bank is not None)

    @property
    def able(self) -> tuple[OptionStudy, ...]:
        """Conversions that are suitable, with or without conditions."""
        return tuple(each for each in self.conversions if each.verdict.word != WORD_NO)

    def of_kind(self, kind: str) -> OptionStudy | None:
        """The first option of a kind that does not fail."""
        return next(
            (
                each
                for each in self.every
                if each.findings.option.kind == kind and each.verdict.word != WORD_NO
            ),
            None,
        )


def advice(choice: Choice) -> Advice:
    """The first line of the tree that fits."""
    found = choice.every[0].findings
    case = found.case
    if not case.legs:
        return _said("ASK", choice)
    if choice.conversions and all(_refused(each) for each in choice.conversions):
        return _said("STOP", choice)
    keep, engine = choice.of_kind("keep"), case.engine.condition
    subjects = case.study.subjects
    about_cost = bool(subjects) and set(subjects) == {"cost"}
    cheaper = any(_extra(each) is not None and (_extra(each) or 0.0) < 0.0 for each in choice.able)
    if keep and engine in ("good", "worn") and about_cost and not cheaper:
        return _said("KEEP", choice, keep)
    if not choice.able:
        return _without_any(choice, keep, engine)
    return _with_some(choice, keep, engine)


def _without_any(choice: Choice, keep: OptionStudy | None, engine: str) -> Advice:
    """No conversion is suitable as specified: a remedy, the diesel, or neither."""
    named = _least_set(choice)
    if named is not None:
        option, chosen = named
        rule = "KEEP_R" if keep and engine == "good" else "QUOTE_R"
        return _said(rule, choice, option, remedies=chosen, binding=_binding(option))
    if keep:
        return _said("KEEP_N", choice, keep, binding=_of_nearest(choice))
    new = choice.of_kind("new diesel")
    if new is not None:
        return _said("NEW", choice, new, binding=_of_nearest(choice))
    return _said("NONE", choice, binding=_of_nearest(choice))


def _with_some(choice: Choice, keep: OptionStudy | None, engine: str) -> Advice:
    """A conversion is suitable: whether it is worth it, and what comes before the order."""
    option = least(choice.able)
    extra, waiting = _extra(option), _open(option)
    if keep and engine == "good" and (extra is None or extra > 0.0):
        return _said("KEEP_OR", choice, option)
    if option.verdict.word == WORD_GO:
        return _said("PRICE" if waiting else "ORDER", choice, option)
    asked = [row.criterion.id for row in _rows(option, CONDITIONAL)]
    if set(asked) <= set(PAPERS):
        return _said("FIRST", choice, option)
    return _said("QUOTE", choice, option)


def _said(
    rule: str,
    choice: Choice,
    option: OptionStudy | None = None,
    remedies: RemedySet | None = None,
    binding: str = "",
) -> Advice:
    case = choice.every[0].findings.case
    study = case.study
    subject = next(
        (each for each in study.subjects if each not in ("cost", "which motor", "other")), ""
    )
    found = None if option is None else option.findings
    waiting = [] if option is None else _rows(option, CONDITIONAL)
    asked = [row.criterion.id for row in waiting]
    near, owed = _nearest(choice), _overhaul(choice)
    worth = None if found is None else found.worth
    diesel = None if found is None else found.option.diesel
    return Advice(
        rule=rule,
        option="" if found is None else called(choice.study, found),
        subject=subject,
        binding=binding,
        stopped="" if near is None else called(choice.study, near.findings),
        refused_by=_refused_by(choice) if rule == "STOP" else 0,
        worn=case.engine.condition != "good",
        overhaul="" if owed is None else "now" if owed.when == "first" else "later",
        overhaul_year=None if owed is None or owed.year is None else scalar(best(owed.year)),
        overhaul_price=None if owed is None else scalar(best(owed.amount + owed.contingency)),
        overhaul_due=case.engine.condition != "good" and owed is None,
        first=tuple(row for row in TRIAL_FIRST if row in asked),
        conditions=tuple(asked),
        named=tuple(row.criterion.name for row in waiting),
        remedies=remedies,
        no_reason=not study.subjects,
        over_half=bool(worth and worth.over_half),
        beside_healthy=bool(worth and worth.beside_healthy),
        open=option is not None and _open(option),
        unpriced=option is not None and not _firsts(option),
        estimates=() if option is None else tuple(row.name for row in _estimates(option)),
        lacking=() if option is None else option.findings.ledger.lacking,
        extra=None if option is None else _extra(option),
        new_power=None if diesel is None else scalar(best(diesel.rated_power)),
    )


def _nearest(choice: Choice) -> OptionStudy | None:
    """The conversion nearest to suitable: fewest rows that fail, then the least short of them."""
    return min(choice.conversions, key=_distance, default=None)


def _distance(option: OptionStudy) -> tuple[int, float]:
    failed = _rows(option, NO)
    return len(failed), sum(_short(row) for row in failed)


def _short(row: Judgement) -> float:
    """By what share of its conditional limit a row misses it; 1 where it has no measure."""
    limit = row.criterion.conditional
    if row.value is None or not np.isfinite(row.value) or not np.isfinite(limit):
        return 1.0
    return abs(row.value - limit) / max(abs(limit), 1e-9)


def _overhaul(choice: Choice) -> Payment | None:
    """The first overhaul in the ledger of the option that keeps the engine."""
    keeps = (each.findings for each in choice.every if each.findings.option.kind == "keep")
    lines = [
        row
        for found in keeps
        for row in found.ledger.payments
        if row.part == "overhaul" and row.when in ("first", "once")
    ]
    return min(lines, key=_due, default=None)


def _due(row: Payment) -> float:
    return 0.0 if row.year is None else scalar(best(row.year))


def least(options: Sequence[OptionStudy]) -> OptionStudy:
    """The cheapest by present value; of near or unpriced ones the smaller motor and bank.

    One that is suitable without conditions may cost a tenth more than the cheapest with them.
    """
    plain = [each for each in options if each.verdict.word == WORD_GO]
    cheapest = _cheapest(options)
    if cheapest in plain or not plain:
        return cheapest
    first = _cheapest(plain)
    costs = _cost(first.findings), _cost(cheapest.findings)
    if None in costs or (costs[0] or 0.0) <= DEARER * (costs[1] or 0.0):
        return first
    return cheapest


def _cheapest(options: Sequence[OptionStudy]) -> OptionStudy:
    costs = {id(each): _cost(each.findings) for each in options}
    known = [cost for cost in costs.values() if cost is not None]
    if len(known) < len(options):
        near = list(options)
    else:
        near = [each for each in options if (costs[id(each)] or 0.0) <= (1 + NEAR) * min(known)]
    return min(near, key=lambda each: _size(each.findings))


def _size(found: Findings) -> tuple[float, float]:
    motor, bank = found.option.motor, found.option.bank
    power = 0.0 if motor is None else scalar(best(motor.continuous_power))
    charge = 0.0 if bank is None else scalar(best(bank.charge)) * scalar(best(bank.nominal_voltage))
    return power, charge


def _cost(found: Findings) -> float | None:
    """Cost of ownership, present value; none without a price."""
    if found.worth is None or found.worth.ownership is None:
        return None
    return _finite(found.worth.ownership)


def _extra(option: OptionStudy) -> float | None:
    """What it costs over keeping the diesel, present value; none without a price."""
    held = option.findings.savings
    saving = None if held is None else held.keep
    if saving is None or option.findings.worth is None or option.findings.worth.extra is None:
        return None
    value = _finite(saving.present_value)
    return None if value is None else -value


def _finite(value: object) -> float | None:
    number_ = float(np.ravel(np.asarray(value, dtype=np.float64))[0])
    return number_ if np.isfinite(number_) else None


def _rows(option: OptionStudy, result: str) -> list[Judgement]:
    return [row for row in option.verdict.judgements if row.decides and row.result == result]


def _refused(option: OptionStudy) -> bool:
    return any(row.criterion.id in REFUSALS for row in _rows(option, NO))


def _refused_by(choice: Choice) -> int:
    rows = _rows(choice.conversions[0], NO)
    return next(row.criterion.id for row in rows if row.criterion.id in REFUSALS)


def _binding(option: OptionStudy) -> str:
    """The row that keeps it from being suitable: the first that fails."""
    places = option.verdict.reasons
    rows = [option.verdict.judgements[place] for place in places]
    return next((row.criterion.name for row in rows if row.result == NO), "")


def _of_nearest(choice: Choice) -> str:
    near = _nearest(choice)
    return "" if near is None else _binding(near)


def _open(option: OptionStudy) -> bool:
    """A first price that is no quote, or a usual part of the work that no line names."""
    lines = option.findings.ledger
    return not _firsts(option) or bool(lines.lacking) or bool(_estimates(option))


def _firsts(option: OptionStudy) -> list[Payment]:
    return [row for row in option.findings.ledger.payments if row.when == "first"]


def _estimates(option: OptionStudy) -> list[Payment]:
    return [row for row in _firsts(option) if row.source != "quote"]


def _least_set(choice: Choice) -> tuple[OptionStudy, RemedySet] | None:
    """Of all sets that make an option suitable the cheapest; unpriced, the least stage."""
    every = [(choice.every[place], each) for place, sets in choice.sets.items() for each in sets]
    if not every:
        return None
    return min(every, key=lambda pair: (_stage(pair[1]), *_priced(pair), *_size(pair[0].findings)))


def _stage(remedies: RemedySet) -> int:
    return max(each.stage for each in remedies.remedies)


def _priced(pair: tuple[OptionStudy, RemedySet]) -> tuple[float]:
    cost, more = _cost(pair[0].findings), pair[1].price
    return (np.inf if cost is None else cost + (more or 0.0),)
