"""Section: each criterion with its value, its limit, its result and what would change it."""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Section, Table, numbers, words

EVIDENCE = 28  # the criterion whose value is a grade
CHIPS = {
    "go": ("go", "Go"), "conditional": ("conditional", "Conditional"), "no": ("no", "No"),
    "told": ("told", "Told"), "not applicable": ("open", "Not applicable"),
    "not assessed": ("open", "Not assessed"),
}  # fmt: skip


def section(page: Page) -> Section:
    """A table for every motor, then the criteria that are not assessed yet."""
    lead = page.text(
        "A “go” must hold at the pessimistic end: in nine of ten draws of {study.draws|count}. "
        "Rows that decide can change the word, rows that condition add a condition to the front "
        "page, rows that tell are printed only."
    )
    parts = tuple(_motor(page, motor) for motor in page.motors)
    return Section("criteria", "Criteria and verdict", (*parts, _open(page)), lead)


def chip(result: str) -> Markup:
    """A result as a coloured word."""
    look, word = CHIPS.get(result, ("open", result))
    return Markup('<span class="chip {}">{}</span>').format(look, word)


def is_open(page: Page, number: int) -> bool:
    """Is this criterion not assessed for any motor?"""
    found = [page.find(f"{motor}.verdict.criteria", id=number) for motor in page.motors]
    return all(key is None or page.value(key)["result"] == "not assessed" for key in found)


def _motor(page: Page, motor: str) -> Part:
    keys = [
        key for key in page.keys(f"{motor}.verdict.criteria")
        if page.value(key)["result"] != "not assessed"
    ]  # fmt: skip
    columns = (
        words("Criterion", 15), numbers("Middle", 7), numbers("Pessi\u00admistic", 8),
        words("Limits", 20), words("Result", 12), words("Why", 21),
        words("What would change it", 17),
    )  # fmt: skip
    table = Table(
        f"criteria-{page.value(motor)['id']}",
        page.text(f"Criteria for {{{motor}.name|given}}"),
        columns,
        tuple(_row(page, key) for key in keys),
        (),
        "long",
    )
    text = page.text(f"Verdict: {{{motor}.verdict.word|given}}. ") + page.sentence(
        f"{motor}.verdict.sentence"
    )
    return Part(
        f"verdict-{page.value(motor)['id']}", page.words(f"{motor}.name"),
        (text,), (), (table,),
    )  # fmt: skip


def _row(page: Page, key: str) -> Row:
    row = page.value(key)
    role = Markup('<br><span class="spread">{}</span>').format(row["role"] + "s")
    head = page.show(f"{key}.id", "count") + Markup(" ") + page.words(f"{key}.name") + role
    cells = (
        *_values(page, key, row["id"]), page.sentence(f"{key}.limit"), chip(row["result"]),
        page.sentence(f"{key}.why"), page.sentence(f"{key}.flip"),
    )  # fmt: skip
    return Row(head, cells)


def _values(page: Page, key: str, number: int) -> tuple[Markup, Markup]:
    """The middle and the pessimistic value; a grade of evidence is a word."""
    if number == EVIDENCE:
        return page.words("evidence.grade"), Markup("")
    return page.show(f"{key}.value", "ratio"), page.show(f"{key}.pessimistic", "ratio")


def _open(page: Page) -> Part:
    keys = [key for key in page.keys("criteria") if is_open(page, page.value(key)["id"])]
    rows = tuple(
        Row(
            page.show(f"{key}.id", "count") + Markup(" ") + page.words(f"{key}.name"),
            (page.words(f"{key}.role"), page.sentence(f"{key}.limit_text")),
        )
        for key in keys
    )
    table = Table(
        "criteria-open",
        page.text("Criteria that this study of {boat.name|given} does not assess"),
        (words("Criterion", 34), words("Role", 16), words("Limits", 50)),
        rows,
        (),
        "long",
    )
    text = page.text(
        "The signatory judges these by hand, or leaves them open; they do not change the word."
    )
    return Part("open", "Not assessed", (text,) if keys else (), (), (table,) if keys else ())
