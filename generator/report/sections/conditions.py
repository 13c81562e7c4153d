"""Section: what must be met, should be done or known before an order, and what would do instead?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from generator.analyses.verdict.verdict import VerdictTold
from generator.answer.staircase import Staircase
from generator.report.figures.staircase import staircase
from generator.report.page import Page, bare_text, joined
from generator.report.parts import Figure, Part
from generator.report.sections.criteria import chip
from generator.report.template import pieces
from generator.report.view import Quantity

TEMPLATE = "sections/conditions.html"
CLASSES = ("must", "should", "tell")
# Criteria of fit and comfort: with conditions they are agreed in the quote. The others are matters
# of safety, of permission or of evidence, and come before an order.
FIT = frozenset({2, 5, 7, 8, 11, 13, 14, 16, 17, 23, 24})
BESIDE = 3  # motors that have room side by side


@dataclass(frozen=True)
class Cell:
    """What is found of one motor; an empty chip where nothing is to be said of it."""

    motor: Markup
    chip: Markup
    why: Markup
    settle: Markup


@dataclass(frozen=True)
class Finding:
    """One criterion; ``same``: all motors have the same finding, and it stands once."""

    number: Markup
    name: Markup
    cells: tuple[Cell, ...]
    same: bool


@dataclass(frozen=True)
class Word:
    """The verdict on one motor."""

    name: Markup
    word: Markup
    judged: Quantity
    total: Quantity


@dataclass(frozen=True)
class Left:
    """A criterion that was left open, or that does not apply to any motor."""

    number: Markup
    name: Markup
    open: bool
    motor: Markup  # whose reason it is, where the motors have reasons of their own
    why: Markup


def parts(page: Page) -> tuple[Part, ...]:
    """The findings by class, the map of motor and battery, and what stays open."""
    words = _words(page)
    alike = len({(each.judged.value, each.total.value) for each in words}) == 1
    classes = {name: _class(page, name) for name in CLASSES}
    unsettled = classes["must"] is not None or classes["should"] is not None
    body = pieces(TEMPLATE, "verdicts")(words, alike, unsettled)
    every = (Part("verdicts", "", body=body), *classes.values(), _map(page), _left(page))
    return tuple(each for each in every if each is not None)


def _words(page: Page) -> list[Word]:
    said = []
    for motor in page.motors:
        view = page.view(f"{motor}.verdict", VerdictTold)
        assert view is not None
        word = Markup('<span class="chip {}">').format(_look(str(view.word)))
        word += page.words(f"{motor}.verdict.word") + Markup("</span>")
        name = page.words(f"{motor}.name")
        said.append(Word(name, word, view.judged, view.total))
    return said


def _look(word: str) -> str:
    """The colour of a verdict."""
    return "no" if word.startswith("Not") else "conditional" if "conditions" in word else "go"


def _class(page: Page, name: str) -> Part | None:
    """The findings of one class; none where it has none."""
    ids = [page.value(key)["id"] for key in page.keys("criteria")]
    rows = [_finding(page, number, name) for number in ids]
    shown = [row for row in rows if row is not None]
    if not shown:
        return None
    motors = [page.words(f"{motor}.name") for motor in page.motors]
    head, table = (pieces(TEMPLATE, each) for each in ("class_head", "findings"))
    body = table(name, shown, motors, len(motors) <= BESIDE)
    return Part(f"findings-{name}-part", Markup(str(head(name)).strip()), body=body)


def class_of(row: dict[str, Any]) -> str:
    """The class of a row of a verdict; empty where it simply passes or is none."""
    result, number = row["result"], row["id"]
    reached = (row["facts"] or {}).get("outcome") == "reached"  # of a rule that only informs
    if result in ("go", "not applicable", "not assessed") or (result == "told" and reached):
        return ""
    if row["role"] != "decide" or result == "told":
        return "tell"
    return "should" if result == "conditional" and number in FIT else "must"


def _finding(page: Page, number: int, name: str) -> Finding | None:
    """One criterion, if it is of that class for any motor; the others of them beside it."""
    keys = {motor: page.find(f"{motor}.verdict.criteria", id=number) for motor in page.motors}
    found = {motor: page.value(key) for motor, key in keys.items() if key is not None}
    classes = [class_of(row) for row in found.values()]
    worst = next((each for each in CLASSES if each in classes), "")
    if worst != name:
        return None
    first = next(key for key in keys.values() if key is not None)
    cells = tuple(_cell(page, motor, key, name) for motor, key in keys.items())
    texts = {tuple(map(bare_text, (each.chip, each.why, each.settle))) for each in cells}
    return Finding(
        page.show(f"{first}.id", "count"), page.words(f"{first}.name"), cells, len(texts) == 1
    )


def _cell(page: Page, motor: str, key: str | None, name: str) -> Cell:
    """What passes has no reason here, and what only informs has nothing to settle."""
    called = page.text(page.called(motor, True))
    if key is None:
        return Cell(called, Markup(), Markup(), Markup())
    result = page.value(key)["result"]
    why = Markup() if result == "go" else page.sentence(f"{key}.why")
    settle = Markup() if result == "go" or name == "tell" else page.sentence(f"{key}.flip")
    return Cell(called, chip(result), why, settle)


def _map(page: Page) -> Part | None:
    """The map of the option that the advice names; none where the study was not asked for it."""
    option = next((each for each in page.motors if page.value(f"{each}.map")), None)
    if option is None:
        return None
    view = page.view(f"{option}.map", Staircase)
    figure = Figure(
        "staircase",
        pieces(TEMPLATE, "map_title")(view),
        pieces(TEMPLATE, "map_note")(view, _numbers(page, option)),
        lambda: staircase(page, option),
    )
    return Part("staircase-part", pieces(TEMPLATE, "map_head")(), (), (figure,))


def _numbers(page: Page, option: str) -> Markup:
    """The criteria that the cells of a map name, each once, by their number."""
    found: dict[int, Markup] = {}
    for key in page.keys(f"{option}.map.cells"):
        number = page.value(key)["binding"]
        if number:
            name = page.show(f"{key}.binding", "count") + Markup("\u00a0")
            found.setdefault(number, name + page.words(f"{key}.row"))
    return joined((found[number] for number in sorted(found)), ", ")


def _left(page: Page) -> Part | None:
    """Criteria that no motor was judged by."""
    found = [_unjudged(page, key) for key in page.keys("criteria")]
    rows = [each for each in found if each is not None]
    if not rows or not page.motors:
        return None
    return Part("open", pieces(TEMPLATE, "open_head")(), body=pieces(TEMPLATE, "left")(rows))


def _unjudged(page: Page, listed: str) -> Left | None:
    """A criterion by which no motor was judged, with the first reason."""
    number = page.value(listed)["id"]
    rows = {motor: page.find(f"{motor}.verdict.criteria", id=number) for motor in page.motors}
    keys = {motor: key for motor, key in rows.items() if key is not None}
    results = {page.value(key)["result"] for key in keys.values()}
    if not results <= {"not applicable", "not assessed"}:
        return None
    reasons = {motor: page.sentence(f"{key}.why") for motor, key in keys.items()}
    motor = next(iter(reasons), None)
    own = len({bare_text(each) for each in reasons.values()}) > 1
    return Left(
        number=page.show(f"{listed}.id", "count"),
        name=page.words(f"{listed}.name"),
        open=results != {"not applicable"},
        motor=page.text(page.called(motor, True)) if motor and own else Markup(),
        why=reasons[motor] if motor else Markup(),
    )
