"""Part of the results: which of the owner's legs fit, and what is left after each?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, words

FORMS = (
    ("hours_h", "hours:bare"), ("need_kwh", "energy:bare"), ("available_kwh", "energy:bare"),
    ("ratio", "ratio"), ("ratio_p10", "ratio"), ("feasible_share", "share"),
)  # fmt: skip


def part(page: Page) -> Part:
    """One row per leg and motor: need, what is there, their ratio at the pessimistic end."""
    keys = [key for motor in page.motors for key in page.keys(f"{motor}.legs")]
    used = [f"{key}.{name}" for key in keys for name, _ in FORMS]
    energy = page.unit("energy")
    table = Table(
        "legs-table",
        page.text("Each leg with the bank aged: energy needed and there, above the reserve"),
        (
            words("Leg and motor", 32), numbers("Time", 8, page.unit("hours")),
            numbers("Need", 9, energy), numbers("There", 9, energy), numbers("Ratio", 8),
            numbers("One in ten", 9), numbers("Can be held", 9), words("Fits", 16),
        ),
        tuple(_row(page, key) for key in keys),
        reasons(page, used),
    )  # fmt: skip
    text = tuple(_words(page, motor) for motor in page.motors if must_make_row(page, motor))
    text += tuple(
        _depth(page, key) for key in page.keys("legs") if page.value(f"{key}.depth_froude")
    )
    return Part("legs-part", "Legs", text, (), (table,) if keys else ())


def must_make_row(page: Page, option: str) -> str | None:
    """The key of the option's result on its worst must-make leg."""
    worst = page.value(f"{option}.worst_leg")
    rows = f"{option}.legs"
    return page.find(rows, must_make=True) if worst is None else f"{rows}.{worst}"


def _words(page: Page, motor: str) -> Markup:
    key = must_make_row(page, motor)
    return page.text(
        f"{{{motor}.name|given}} on “{{{key}.name|given}}”: the leg takes {{{key}.hours_h|hours}} "
        f"and {{{key}.need_kwh|energy}} (one in ten above {{{key}.need_high_kwh|energy}}); "
        f"{{{key}.available_kwh|energy}} is there above the reserve, {{{key}.ratio|ratio}} times "
        f"the need, and {{{key}.ratio_p10|ratio}} times at the pessimistic end."
    )


def _depth(page: Page, key: str) -> Markup:
    """What depth and width of a leg mean for the deep-water curve."""
    said = page.text(
        f"“{{{key}.name|given}}”: {{{key}.speed_kn|speed}} in {{{key}.depth_m|length}} of water is "
        f"a depth Froude number of {{{key}.depth_froude|ratio}}"
    )
    if page.value(f"{key}.blockage_pct") is not None:
        said += page.text(f", and she fills {{{key}.blockage_pct|percent}} of the channel")
    held = page.value(f"{key}.deep_enough") and page.value(f"{key}.wide_enough")
    end = "; the curve of deep water holds." if held else (
        "; the curve of deep water asks for too little there, and plain Go is barred."
    )  # fmt: skip
    return said + page.text(end)


def _row(page: Page, key: str) -> Row:
    motor = key.split(".legs.")[0]
    head = page.words(f"{key}.name") + Markup("<br>") + page.words(f"{motor}.name")
    cells = tuple(page.show(f"{key}.{name}", form) for name, form in FORMS)
    fits = page.value(f"{key}.fits")
    passed, failed = (
        Markup('<span class="{0}">{1}</span>').format(*pair)
        for pair in (("pass", "fits"), ("fail", "does not fit"))
    )
    word = passed if fits else failed + Markup("<br>") + page.sentence(f"{key}.why")
    return Row(head, (*cells, word))
