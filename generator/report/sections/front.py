"""Front page: what does the owner need to know, and nothing else?"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import zip_longest

from markupsafe import Markup

from generator.report.figures.front_bars import front_bars
from generator.report.page import Page, bare_text, joined
from generator.report.parts import Column, Figure, Row, Table, numbers, reasons, words
from generator.report.sections.criteria import CHIPS
from generator.report.sections.cruising_range import bars, row_at_cruise
from generator.report.sections.legs import must_make_row

MOST_CONDITIONS = 6
LOOKS = {"Go": "go", "Go with conditions": "conditional", "Don't, as specified": "no"}


@dataclass(frozen=True)
class Card:
    """The verdict on one motor in a few words."""

    name: Markup
    word: Markup
    look: str
    sentence: Markup
    reasons: tuple[Markup, ...]
    money: Markup


@dataclass(frozen=True)
class Condition:
    """What must be met, and for which motors."""

    motors: Markup
    text: Markup


@dataclass(frozen=True)
class Cell:
    """One criterion of the strip: a chip for each motor, or open."""

    name: Markup
    chips: tuple[Markup, ...]
    look: str


@dataclass(frozen=True)
class Front:
    """All that the front page shows."""

    about: tuple[Row, ...]
    cards: tuple[Card, ...]
    wishes: Markup
    table: Table
    figure: Figure | None
    strip: tuple[Cell, ...]
    strip_key: Markup
    conditions: tuple[Condition, ...]
    validity: Markup
    signatory: Markup


def front(page: Page) -> Front:
    """Verdicts, key figures, criteria strip, conditions and validity."""
    return Front(
        about(page),
        tuple(_card(page, motor) for motor in page.motors),
        _wishes(page),
        _table(page),
        bars(page, "range-front", lambda: front_bars(page)) if page.motors else None,
        tuple(_cell(page, key) for key in page.keys("criteria")),
        _strip_key(page),
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
        page.sentence(f"{own}.sentence"),
        tuple(page.sentence(key) for key in page.keys(f"{own}.reasons")),
        _money(page, motor),
    )


def _money(page: Page, motor: str) -> Markup:
    """The money in a sentence, and a plain warning where she costs more than comes back."""
    said = page.sentence(f"{motor}.cost.sentence")
    row = page.find(f"{motor}.verdict.criteria", id=OVER_WORTH)
    share = page.value(f"{row}.facts.spent_share") if row else None
    if share is None or share <= page.value(f"{row}.limit_conditional"):
        return said
    return said + page.text(
        f" The first cost is {{{row}.facts.spent_share|share}} of the "
        f"{{{row}.facts.worth_money|money}} she is worth."
    )


def _wishes(page: Page) -> Markup:
    """What speaks for it beside money, in the owner's own words."""
    said = [page.words(key) for key in page.keys("study.reasons")]
    if not said:
        return Markup("")
    lead = "Beside the money, in the owner's own words: "
    return (
        Markup.escape(lead) + Markup("\u201c") + joined(said, "\u201d; \u201c") + Markup("\u201d")
    )


OVER_WORTH = 26  # criterion
LINES = (
    ("Range to reserve, calm, bank new", "calm", "new", "range_nm"),
    ("at {years}", "calm", "aged", "range_nm"),
    ("kept as reserve then", "calm", "aged", "reserve_nm"),
    ("Range to reserve against {wind}, at {years}", "wind_20", "aged", "range_nm"),
    ("kept as reserve then", "wind_20", "aged", "reserve_nm"),
)
OTHERS = (
    ("Speed on continuous power, calm", "top_speed.continuous_kn", "speed"),
    ("First cost", "cost.first_money", "money"),
    ("Dearer than keeping, {years}", "cost.against_keep_money", "money:signed"),
    ("Net mass", "weight.net_kg", "mass:signed"),
)


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
    head = Markup("Must-make leg, energy in hand over need, pessimistic: ") + page.words(
        f"{must}.name"
    )
    return Row(head, tuple(_leg_cell(page, option) for option in _in_order(page)), "strong")


def _leg_cell(page: Page, option: str) -> Markup:
    key = must_make_row(page, option)
    if key is None:
        return Markup("–")
    word = "pass" if page.value(f"{key}.fits") else "fail"
    ratio = page.show(f"{key}.ratio_p10", "ratio")
    return Markup('<span class="{0}">{0}</span> {1}').format(word, ratio)


def _range_rows(page: Page) -> tuple[Row, ...]:
    wind = page.find("sea_states", id="wind_20")
    rows = []
    for label, sea, age, name in LINES:
        said = label.replace("{wind}", f"{{{wind}.wind_kn|wind}}")
        head = page.text(said.replace("{years}", "{planning.horizon_years|years}"))
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


def _cell(page: Page, key: str) -> Cell:
    number = page.value(key)["id"]
    name = page.show(f"{key}.id", "count") + Markup(" ") + page.words(f"{key}.name")
    found = [page.find(f"{motor}.verdict.criteria", id=number) for motor in page.motors]
    results = [page.value(each)["result"] if each else "not assessed" for each in found]
    if all(result == "not assessed" for result in results):
        return Cell(name, (Markup("not assessed"),), "open")
    chips = tuple(_short(result) for result in results)
    return Cell(name, chips, "")


def _short(result: str) -> Markup:
    look, word = CHIPS.get(result, ("open", result))
    short = {"conditional": "Cond.", "not applicable": "n/a", "not assessed": "open"}
    return Markup('<span class="chip {}">{}</span>').format(look, short.get(result, word))


def _strip_key(page: Page) -> Markup:
    names = joined((page.words(f"{motor}.name") for motor in page.motors), ", ")
    return Markup("Chips from left to right: ") + names + Markup(".")


def _conditions(page: Page) -> tuple[Condition, ...]:
    """Conditions of all motors, the same text once; motors that may go first, then in turn."""
    found: dict[str, tuple[list[str], Markup]] = {}
    for failed in (False, True):
        motors = [each for each in page.motors if (LOOKS.get(_word(page, each)) == "no") == failed]
        lists = [page.keys(f"{motor}.verdict.conditions") for motor in motors]
        for row in zip_longest(*lists):
            for motor, key in zip(motors, row, strict=True):
                if key is not None:
                    text = page.sentence(key)
                    found.setdefault(bare_text(text), ([], text))[0].append(motor)
    return tuple(
        Condition(_whom(page, motors), text)
        for motors, text in list(found.values())[:MOST_CONDITIONS]
    )


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
