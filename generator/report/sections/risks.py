"""Section: what does each single fault leave, and what is carried against it?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page, joined
from generator.report.parts import Part, Row, Table, words


def lead(page: Page) -> Markup:
    """How many faults leave her without her drive."""
    motors = _motors(page)
    if not motors:
        return page.text("No option of {boat.name|given} has a propulsion battery to fail.")
    key = f"{motors[0]}.failure_count"
    return page.text(
        f"Of {{{key}.all|count}} single faults, {{{key}.sail|count}} leave {{boat.name|given}} "
        "without her drive; a diesel has such faults too, and they stand beside."
    )


def parts(page: Page) -> tuple[Part, ...]:
    """The table of faults and the list of spares; nothing without a battery option."""
    if not _motors(page):
        return ()
    return (Part("failures", "", (), (), (_table(page),)), _spares(page))


def _motors(page: Page) -> list[str]:
    return [motor for motor in page.motors if page.value(f"{motor}.failures")]


def _ids(page: Page, motors: list[str]) -> list[str]:
    """The faults of all motors, each once, in the order of the first that has it."""
    every = [row["id"] for motor in motors for row in page.value(f"{motor}.failures")]
    return list(dict.fromkeys(every))


def _table(page: Page) -> Table:
    motors = _motors(page)
    width = (38 if len(motors) > 1 else 26) // len(motors)
    used = width * len(motors)
    columns = (
        words("Fault", 16),
        words("What it does", 84 - used - 32 if len(motors) == 1 else 22),
        *(words(Markup("Left: ") + page.words(f"{motor}.name"), width) for motor in motors),
        words("Done then", 24),
    )
    rows = tuple(_row(page, motors, name) for name in _ids(page, motors))
    caption = page.text("Each single fault: what it does, what is left, what is done")
    diesel = joined(_diesel(page, motors), "; ")
    notes = (Markup("The diesel, in the same case: ") + diesel + Markup("."),)
    return Table("failures-table", caption, columns, rows, notes, "long")


def _row(page: Page, motors: list[str], name: str) -> Row:
    found = {motor: page.find(f"{motor}.failures", id=name) for motor in motors}
    key = next(each for each in found.values() if each)
    left = tuple(
        page.sentence(f"{each}.left") if each else Markup("see above") for each in found.values()
    )
    cells = (page.sentence(f"{key}.effect"), *left, page.sentence(f"{key}.action"))
    return Row(page.sentence(f"{key}.fault"), cells)


def _diesel(page: Page, motors: list[str]) -> tuple[Markup, ...]:
    """What the same fault leaves of a diesel, where it has such a part."""
    told = []
    for name in _ids(page, motors):
        key = next(each for motor in motors if (each := page.find(f"{motor}.failures", id=name)))
        if page.value(f"{key}.diesel"):
            told.append(page.sentence(f"{key}.fault") + Markup(": ")
                        + page.sentence(f"{key}.diesel"))  # fmt: skip
    return tuple(told)


def _spares(page: Page) -> Part:
    said = joined((page.words(f"{key}.item") for key in page.keys("spares")), "; ")
    text = page.text("Carried aboard {boat.name|given}: ") + said + Markup(".")
    return Part("spares", "Spares", (text,))
