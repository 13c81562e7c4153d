"""Front page: what does the owner need to know, and nothing else?"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import zip_longest

from markupsafe import Markup

from generator.analyses.verdict.verdict import WORD_CONDITIONS, WORD_GO, WORD_NO
from generator.report.figures.front_bars import front_bars
from generator.report.page import Page, bare_text, joined
from generator.report.parts import Column, Figure, Row, Table, numbers, reasons, words
from generator.report.sections.cruising_range import bars, row_at_cruise
from generator.report.sections.legs import must_make_row

LOOKS = {WORD_GO: "go", WORD_CONDITIONS: "conditional", WORD_NO: "no"}


@dataclass(frozen=True)
class Card:
    """The verdict on one motor in a few words."""

    name: Markup
    word: Markup
    look: str
    reasons: tuple[Markup, ...]
    money: Markup
    until: Markup
    mends: tuple[Markup, ...]  # sets of changes that would mend it, with the word they give


@dataclass(frozen=True)
class Lead:
    """What to do next, why, and what the study says of each of the owner's subjects."""

    advice: Markup
    why: Markup
    comparison: Markup
    subjects: tuple[Markup, ...]


@dataclass(frozen=True)
class Condition:
    """What must be met, and for which motors."""

    motors: Markup
    text: Markup


@dataclass(frozen=True)
class Front:
    """All that the front page shows."""

    about: tuple[Row, ...]
    lead: Lead
    cards: tuple[Card, ...]
    table: Table
    figure: Figure | None
    conditions: tuple[Condition, ...]
    validity: Markup
    signatory: Markup


def front(page: Page) -> Front:
    """What to do, the word on each motor, key figures, conditions and validity."""
    return Front(
        about(page),
        _lead(page),
        tuple(_card(page, motor) for motor in page.motors),
        _table(page),
        bars(page, "range-front", lambda: front_bars(page)) if page.motors else None,
        _conditions(page),
        _validity(page),
        signatory(page),
    )


def signatory(page: Page) -> Markup:
    """Who signs."""
    return page.words("case.prepared_by") if page.value("case.prepared_by") else Markup("Signatory")


def about(page: Page, evidence: bool = True) -> tuple[Row, ...]:
    """For whom, by whom, when."""
    named = (("For", "case.client"), ("Prepared by", "case.prepared_by"), ("Date", "case.date"),
             ("Reference", "case.reference"), ("Evidence", "evidence.grade"))  # fmt: skip
    return tuple(
        Row(Markup.escape(name), (page.words(key),))
        for name, key in named
        if page.value(key) and (evidence or name != "Evidence")
    )


def _card(page: Page, motor: str) -> Card:
    own = f"{motor}.verdict"
    return Card(
        page.words(f"{motor}.name"),
        page.words(f"{own}.word"),
        LOOKS.get(page.value(f"{own}.word"), "open"),
        tuple(page.sentence(key) for key in page.keys(f"{own}.reasons")),
        _money(page, motor),
        _sentence(page, f"{motor}.until.words"),
        tuple(page.whole_sentence(f"{key}.words") for key in page.keys(f"{motor}.remedies")),
    )


def _lead(page: Page) -> Lead:
    """The answer of the study, where it was asked for one."""
    return Lead(
        page.sentence("answer.advice.words"),
        _sentence(page, "answer.advice.words_rests"),
        page.sentence("answer.comparison.words") if page.value("answer.comparison") else Markup(""),
        tuple(page.sentence(f"{key}.words") for key in page.keys("answer.subjects")),
    )


def _money(page: Page, motor: str) -> Markup:
    """The second word, on money, and a plain warning where little of it comes back."""
    said = _sentence(page, f"{motor}.worth.words")
    warning = _sentence(page, f"{motor}.worth.words_warning")
    return said + Markup(" ") + warning if said and warning else said or warning


def _sentence(page: Page, key: str) -> Markup:
    """Words of a record as a sentence of their own; empty where they say nothing."""
    if page.value(key.rpartition(".")[0]) is None or not page.value(key):
        return Markup("")
    return page.whole_sentence(key)


LINES = (
    ("Range to reserve, calm, bank new", "calm", "new", "range_nm"),
    ("after {years}", "calm", "aged", "range_nm"),
    ("Range to reserve against {wind}, after {years}", "wind_20", "aged", "range_nm"),
)
OTHERS = (
    ("Speed on continuous power, calm", "top_speed.continuous_kn", "speed"),
    ("First cost", "cost.first_money", "money"),
    ("Dearer than keeping, {years}", "cost.against_keep_money", "money:signed"),
    ("Net mass", "weight.net_kg", "mass:signed"),
)


MUST = 1  # criterion: the leg that must be made
MADE = {"go": ("pass", "passes"), "conditional": ("pass", "cond."), "no": ("fail", "fails")}


def _age(page: Page) -> str:
    """Age of the bank that the word is for: of the first motor, for they seldom differ."""
    return f"{page.motors[0]}.bank.ages.1.after_years" if page.motors else "planning.horizon_years"


def _in_order(page: Page) -> list[str]:
    """Motors first: they are what the owner asks about."""
    return [*page.motors, *(option for option in page.options if option not in page.motors)]


def _table(page: Page) -> Table:
    width = 58 // max(len(_in_order(page)), 1)
    columns: list[Column] = [words("Quantity", 42)]
    columns += [numbers(page.words(f"{option}.name"), width) for option in _in_order(page)]
    rows = (_leg_row(page), *_range_rows(page), *_other_rows(page))
    keys = [
        f"{row_at_cruise(page, option, sea, age)}.{name}"
        for option in _in_order(page) for _, sea, age, name in LINES
    ]  # fmt: skip
    if not page.value("case.redacted"):
        keys += [f"{option}.{tail}" for option in _in_order(page) for _, tail, _ in OTHERS]
    caption = page.text("{boat.name|given} in figures")
    return Table("key-figures", caption, tuple(columns), rows, reasons(page, keys))


def _leg_row(page: Page) -> Row:
    must = page.must_make
    if must is None:
        return Row(Markup("Must-make leg"), tuple(Markup("none") for _ in _in_order(page)))
    head = Markup("Leg that must be made: left over needed, nine times in ten at least")
    return Row(Markup(head), tuple(_leg_cell(page, option) for option in _in_order(page)), "strong")


def _leg_cell(page: Page, option: str) -> Markup:
    key = must_make_row(page, option)
    row = page.find(f"{option}.verdict.criteria", id=MUST)
    if key is None or row is None:
        return Markup("–")
    look, word = MADE.get(page.value(row)["result"], ("", ""))
    ratio = page.show(f"{key}.ratio_p10", "ratio")
    return Markup('<span class="{}">{}</span> {}').format(look, word, ratio)


def _range_rows(page: Page) -> tuple[Row, ...]:
    wind = page.find("sea_states", id="wind_20")
    rows = []
    for label, sea, age, name in LINES:
        said = label.replace("{wind}", f"{{{wind}.wind_kn|wind}}")
        head = page.text(said.replace("{years}", f"{{{_age(page)}|years}}"))
        cells = tuple(
            page.at(row_at_cruise(page, option, sea, age), name, "distance")
            for option in _in_order(page)
        )
        rows.append(Row(head, cells, "" if label.startswith("Range") else "inset"))
    return tuple(rows)


def _other_rows(page: Page) -> tuple[Row, ...]:
    rows = []
    for label, tail, form in OTHERS:
        if form.startswith("money") and page.value("case.redacted"):
            continue
        head = page.text(label.replace("{years}", "{planning.horizon_years|years}"))
        rows.append(
            Row(head, tuple(page.show(f"{option}.{tail}", form) for option in _in_order(page)))
        )
    return tuple(rows)


def _conditions(page: Page) -> tuple[Condition, ...]:
    """Conditions of the motors that may go, the same text once; where none may, what would mend.

    All conditions of a motor that fails stand with its rows in the section on the criteria.
    """
    able = [motor for motor in page.motors if LOOKS.get(_word(page, motor)) != "no"]
    motors = able or list(page.motors)
    found: dict[str, tuple[list[str], Markup]] = {}
    for row in zip_longest(*(_open(page, motor) for motor in motors)):
        for motor, key in zip(motors, row, strict=True):
            if key is not None:
                text = page.sentence(key)
                found.setdefault(bare_text(text), ([], text))[0].append(motor)
    return tuple(Condition(_whom(page, which), text) for which, text in found.values())


def _open(page: Page, motor: str) -> list[str]:
    """The conditions of a motor that may go; of one that fails what would mend those rows.

    Where sets of changes are told, they say so already.
    """
    every = page.keys(f"{motor}.verdict.conditions")
    rows = [page.value(key) for key in page.keys(f"{motor}.verdict.criteria")]
    failed = [row for row in rows if row["role"] == "decide" and row["result"] == "no"]
    if not failed:
        return every
    return [] if page.keys(f"{motor}.remedies") else every[: len(failed)]


def _word(page: Page, motor: str) -> str:
    return str(page.value(f"{motor}.verdict.word"))


def _whom(page: Page, motors: list[str]) -> Markup:
    if len(motors) == len(page.motors):
        return Markup("All motors") if len(motors) > 1 else Markup("")
    return joined((page.words(f"{motor}.name") for motor in motors), ", ")


def _validity(page: Page) -> Markup:
    if page.value("case.valid_until"):
        return page.text("Valid until {case.valid_until|given}, at the prices and in the state "
                         "of {boat.name|given} on {case.date|given}.")  # fmt: skip
    return page.text("Valid for the prices and the state of {boat.name|given} on "
                     "{case.date|given}.")  # fmt: skip
