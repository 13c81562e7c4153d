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
        "{boat.displacement_kg|mass}. x is measured forward of the {boat.datum|given}, y to "
        "starboard, z above the waterline; a list with doubts and moments goes to the yard as a "
        "spreadsheet table."
    )
    more = tuple(_left_out(page, option) for option in moved if _lacks(page, option))
    return Part("weight", "Weight and trim", (text, *more), figures, ledger, (_summary(page),))


def _lacks(page: Page, option: str) -> bool:
    key = f"{option}.weight"
    return bool(page.value(f"{key}.filled") or page.value(f"{key}.not_counted"))


def _left_out(page: Page, option: str) -> Markup:
    """What the owner's ledger lacks: filled from the register, or not counted at all."""
    key = f"{option}.weight"
    said = []
    if page.value(f"{key}.filled"):
        said.append(
            "masses from the register, to be weighed, set where the heaviest item of their side "
            f"stands: {{{key}.filled|given}}"
        )
    if page.value(f"{key}.not_counted"):
        said.append(f"no mass is given for {{{key}.not_counted|given}}, so none is counted")
    return page.text(f"{{{option}.name|given}}: {'; '.join(said)}.")


def _figure(page: Page, motor: str) -> Figure:
    own = f"{motor}.weight"
    finding = page.text(
        f"{{{motor}.name|given}}: {{{own}.removed_kg|mass}} out and {{{own}.added_kg|mass}} in, "
        f"net {{{own}.net_kg|mass:signed}}; she {_sinks(page, own)}{_trims(page, own)}."
    )
    note = page.text(
        "Outline drawn from the main dimensions, not from her lines. Discs by mass: hollow goes "
        "out, filled comes in. Dashed: the new waterline, much enlarged; grey: the trim of "
        f"{{{own}.trim_limit_mm|length_small}} either way that still passes. Arrow: how her centre "
        "of gravity moves along, likewise enlarged."
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
    ("absolute_kg", "mass", "Sum of both"),
    ("net_share_pct", "percent:signed", "Net, of lightship"),
    ("absolute_share_pct", "percent", "Sum of both, of lightship"),
    ("displacement_after_kg", "mass", "Displacement after"),
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
    rows = [_item(page, key) for option in moved for key in page.keys(f"{option}.weight.ledger")]
    caption = page.text("Masses that leave {boat.name|given} and that come aboard, with places")
    length = page.unit("length")
    columns = (
        words("Item", 30), words("Option", 19), words("Way", 6),
        numbers("Mass", 10, page.unit("mass")), numbers("x", 8, length), numbers("y", 8, length),
        numbers("z", 8, length), words("Source", 11),
    )  # fmt: skip
    return Table("ledger", caption, columns, tuple(rows), (), "long")


def _item(page: Page, key: str) -> Row:
    cells = (
        page.words(f"{key.split('.weight.')[0]}.name"),
        page.words(f"{key}.way"),
        page.show(f"{key}.mass_kg", "mass:bare,size"),
        page.show(f"{key}.x_m", "length:bare"),
        page.show(f"{key}.y_m", "length:bare"),
        page.show(f"{key}.z_m", "length:bare"),
        page.words(f"{key}.source"),
    )
    first = key.endswith(".ledger.0")
    return Row(page.words(f"{key}.name"), cells, "group" if first else "")
