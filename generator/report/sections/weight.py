"""Part of the results: what goes out, what comes in, and how does she float after that?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.profile import profile
from generator.report.page import Page
from generator.report.parts import Figure, Part, Row, Table, numbers, reasons, words


def part(page: Page) -> Part:
    """A profile and a ledger for every option that moves masses."""
    moved = [
        option for option in page.options
        if page.value(f"{option}.weight.removed") or page.value(f"{option}.weight.added")
    ]  # fmt: skip
    figures = tuple(_figure(page, motor) for motor in page.motors if motor in moved)
    ledger = (_ledger(page, moved),) if moved else ()
    text = page.text(
        "The masses are those of the two ledgers; {boat.name|given} floats today at "
        "{boat.displacement_kg|mass}. x is measured forward of the {boat.datum|given}, z above the "
        "waterline."
    )
    return Part("weight", "Weight and trim", (text,), figures, ledger, (_summary(page),))


def _figure(page: Page, motor: str) -> Figure:
    own = f"{motor}.weight"
    finding = page.text(
        f"{{{motor}.name|given}}: {{{own}.removed_kg|mass}} out and {{{own}.added_kg|mass}} in, "
        f"net {{{own}.net_kg|mass:signed}}; she {_sinks(page, own)}{_trims(page, own)}."
    )
    note = page.text(
        "Outline drawn from the main dimensions, not from her lines. Discs by mass: hollow goes "
        "out, filled comes in. Dashed: the new waterline, much enlarged."
    )
    name = f"profile-{page.value(motor)['id']}"
    return Figure(name, finding, note, profile(page, motor, name))


def _sinks(page: Page, own: str) -> str:
    word = "sinks" if (page.value(f"{own}.sinkage_mm") or 0) >= 0 else "rises"
    return f"{word} {{{own}.sinkage_mm|length_small:size}}"


def _trims(page: Page, own: str) -> str:
    trim = page.value(f"{own}.trim_mm")
    if trim is None:
        return ", her trim is not worked out"
    end = "bow" if trim >= 0 else "stern"
    return f" and trims {{{own}.trim_mm|length_small:size}} by the {end}"


LINES = (
    ("removed_kg", "mass", "Out"), ("added_kg", "mass", "In"), ("net_kg", "mass:signed", "Net"),
    ("absolute_kg", "mass", "Sum of both"), ("displacement_after_kg", "mass", "Displacement after"),
    ("sinkage_mm", "length_small:signed", "Sinkage"),
    ("trim_mm", "length_small:signed", "Trim, by the bow"),
)  # fmt: skip


def _summary(page: Page) -> Table:
    keys = [f"{option}.weight.{name}" for option in page.options for name, _, _ in LINES]
    columns = [numbers(page.words(f"{option}.name"), 70 // len(page.options))
               for option in page.options]  # fmt: skip
    rows = tuple(
        Row(
            Markup.escape(label),
            tuple(page.show(f"{option}.weight.{name}", form) for option in page.options),
        )
        for name, form, label in LINES
    )
    caption = page.text("Weight, sinkage and trim of every option")
    return Table(
        "weight-table", caption, (words("Quantity", 30), *columns), rows, reasons(page, keys)
    )


def _ledger(page: Page, moved: list[str]) -> Table:
    rows = [
        _item(page, key, word)
        for option in moved
        for side, word in (("removed", "out"), ("added", "in"))
        for key in page.keys(f"{option}.weight.{side}")
    ]
    caption = page.text("Masses that leave {boat.name|given} and that come aboard, with places")
    length = page.unit("length")
    columns = (
        words("Item", 34), words("Option", 22), words("Way", 7),
        numbers("Mass", 11, page.unit("mass")), numbers("x", 8, length), numbers("z", 8, length),
        words("Source", 10),
    )  # fmt: skip
    return Table("ledger", caption, columns, tuple(rows), (), "long")


def _item(page: Page, key: str, word: str) -> Row:
    cells = (
        page.words(f"{key.split('.weight.')[0]}.name"),
        Markup(word),
        page.show(f"{key}.mass_kg", "mass:bare"),
        page.show(f"{key}.x_m", "length:bare"),
        page.show(f"{key}.z_m", "length:bare"),
        page.words(f"{key}.source"),
    )
    first = key.endswith(".removed.0")
    return Row(page.words(f"{key}.name"), cells, "group" if first else "")
