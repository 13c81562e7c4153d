"""Section: each criterion with its value, its limit, its result and what would change it."""

from __future__ import annotations

from dataclasses import replace

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, without_empty, words
from generator.report.sections import staircase

EVIDENCE = 28  # the criterion whose value is a grade
# What the value of a criterion is, by its number; a ratio of two energies or powers has no unit.
FORMS = {
    2: "share", 4: "speed", 6: "speed", 7: "ratio", 8: "specific_power", 9: "speed", 10: "speed",
    11: "hours", 13: "share", 15: "temperature", 16: "share_small", 17: "share_small",
    18: "flag", 19: "flag", 20: "flag", 21: "flag", 22: "voltage", 23: "share", 24: "lengths",
    25: "years", 26: "share", 27: "flag",
}  # fmt: skip
CHIPS = {
    "go": ("go", "Passes"), "conditional": ("conditional", "Conditions"),
    "no": ("no", "Fails"),
    "told": ("told", "Told"), "not applicable": ("open", "n/a"),
    "not assessed": ("open", "Not assessed"),
}  # fmt: skip


def parts(page: Page) -> tuple[Part, ...]:
    """The map of motor and bank, what each motor does not simply pass, and what stays open."""
    found = [*staircase.parts(page), *(_motor(page, motor) for motor in page.motors)]
    if any(is_open(page, page.value(key)["id"]) for key in page.keys("criteria")):
        found.append(_open(page))
    return tuple(found)


def every(page: Page) -> Part:
    """All criteria, with how they are judged."""
    said = page.text(
        "A row passes where its limit holds in nine of ten of {study.draws|count} draws, and with "
        "conditions where it holds in half of them. Rows that decide make the word on "
        "{boat.name|given}; rows that tell are printed only."
    )
    return replace(_all(page), text=(said,))


def chip(result: str) -> Markup:
    """A result as a coloured word."""
    look, word = CHIPS.get(result, ("open", result))
    return Markup('<span class="chip {}">{}</span>').format(look, word)


def is_open(page: Page, number: int) -> bool:
    """Is this criterion not assessed for any motor?"""
    found = [page.find(f"{motor}.verdict.criteria", id=number) for motor in page.motors]
    return all(key is None or page.value(key)["result"] == "not assessed" for key in found)


def _all(page: Page) -> Part:
    """Every assessed criterion in one row for all motors: where it stands, and its result."""
    each = min(max(52 // max(len(page.motors), 1), 12), 22)
    columns = [words("Criterion", 17), words("Limits", 83 - each * max(len(page.motors), 1))]
    for motor in page.motors:
        columns.append(numbers(page.words(f"{motor}.name"), each // 2))
        columns.append(words("Result", each - each // 2))
    rows = tuple(
        _row(page, page.value(key)["id"])
        for key in page.keys("criteria")
        if not is_open(page, page.value(key)["id"])
    )
    caption = page.text(
        "Where {boat.name|given} stands: value in nine draws of ten, middle of the draws in grey "
        "(why each row passes: verdict_criteria.csv)"
    )
    table = Table("criteria-all", caption, tuple(columns), rows, (), "long")
    return Part("criteria-table", "All criteria", (), (), (table,) if page.motors else ())


def _row(page: Page, number: int) -> Row:
    found = [page.find(f"{motor}.verdict.criteria", id=number) for motor in page.motors]
    key = next(each for each in found if each is not None)
    role = Markup(' <span class="spread">{}</span>').format(page.value(key)["role"] + "s")
    head = _named(page, key) + role
    cells = [page.sentence(f"{key}.limit")]
    for each in found:
        if each is None:
            cells += [Markup(""), chip("not assessed")]
        else:
            cells += [_values(page, each, number), chip(page.value(each)["result"])]
    return Row(head, tuple(cells))


def _motor(page: Page, motor: str) -> Part:
    """Why the rows that are no plain go stand where they do, and what would change them."""
    keys = [
        key for key in page.keys(f"{motor}.verdict.criteria")
        if page.value(key)["result"] in ("conditional", "no")
    ]  # fmt: skip
    columns = (
        words("Criterion", 20), words("Result", 13), words("Why", 37),
        words("What would change it", 30),
    )  # fmt: skip
    rows = tuple(
        Row(
            _named(page, key),
            (chip(page.value(key)["result"]), page.sentence(f"{key}.why"),
             page.sentence(f"{key}.flip")),
        )
        for key in keys
    )  # fmt: skip
    name = page.value(motor)["id"]
    caption = page.text(f"What {{{motor}.name|given}} does not simply pass")
    table = Table(f"criteria-{name}", caption, columns, rows, (), "long")
    text = page.text(f"Verdict: {{{motor}.verdict.word|given}}. ") + page.sentence(
        f"{motor}.verdict.sentence"
    )
    tables = (without_empty(table),) if rows else ()
    return Part(f"verdict-{name}", page.words(f"{motor}.name"), (text,), (), tables)


def _named(page: Page, key: str) -> Markup:
    """Number and name of a criterion; no line ends after the number."""
    return page.show(f"{key}.id", "count") + Markup("\u00a0") + page.words(f"{key}.name")


def form_of(number: int) -> str:
    """How the value of a criterion is shown."""
    return FORMS.get(number, "ratio")


def _values(page: Page, key: str, number: int) -> Markup:
    """The pessimistic value, beside it the middle where it is another; a grade is a word."""
    if number == EVIDENCE:
        return page.words("evidence.grade")
    form = form_of(number)
    if page.plain(f"{key}.pessimistic", form) == page.plain(f"{key}.value", form):
        return page.show(f"{key}.pessimistic", form)
    middle = Markup(' <span class="spread">{}</span>').format(page.show(f"{key}.value", form))
    return page.show(f"{key}.pessimistic", form) + middle


def _open(page: Page) -> Part:
    keys = [key for key in page.keys("criteria") if is_open(page, page.value(key)["id"])]
    rows = tuple(
        Row(
            _named(page, key),
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
    return Part("open", "Not assessed", (text,), (), (table,))
