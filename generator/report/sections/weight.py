"""For the yard: what goes out, what comes in, each mass with its place, and how she floats then."""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, words
from generator.report.sections.aboard import moved_by, profiles


def part(page: Page) -> Part:
    """A profile and a ledger for every option that moves masses."""
    moved = [
        option for option in page.options if page.value(f"{option}.weight.ledger")
    ]  # fmt: skip
    drawn = [each for each in moved_by(page) if each.option.kind == "battery"]
    figures = profiles(page, drawn)
    text = page.text(
        "{boat.name|given} floats today at {boat.displacement_kg|mass}. x is measured forward of "
        "the {boat.datum|given}, y to starboard, z above the waterline; with doubts, moments and "
        "parts the same list is weight_ledger.csv, for the yard."
    )
    more = _left_out(page, moved)
    opening = (_summary(page, moved), _ledger(page, moved)) if moved else ()
    return Part("weight", "Weight and trim", (text, *more), figures, (), opening)


LACKS = {
    "filled": "Masses of the register, to be weighed, set where the heaviest item of their side "
    "stands: {0} ({1}).",
    "unplaced": "No place along her is given for {0} ({1}), so that her trim is not worked out.",
    "not_counted": "No mass is given for {0} ({1}), so none is counted.",
}


def _left_out(page: Page, moved: list[str]) -> tuple[Markup, ...]:
    """What the owner's ledgers lack: filled from the register, or not counted at all."""
    said: dict[tuple[str, str], list[str]] = {}
    for option in moved:
        for name in LACKS:
            if lacks := page.value(f"{option}.weight.{name}"):
                said.setdefault((name, str(lacks)), []).append(option)
    sentences = [
        page.text(LACKS[name].format(f"{{{options[0]}.weight.{name}|given}}", _named(options)))
        for (name, _), options in said.items()
    ]
    return tuple(sentences)


def _named(options: list[str]) -> str:
    return " and ".join(f"{{{option}.name|given}}" for option in options)


Lines = tuple[tuple[str, str, str], ...]
LINES = (
    ("net_kg", "mass:signed", "Net mass"),
    ("net_share_pct", "percent:signed", "Net, of lightship"),
    ("absolute_share_pct", "percent", "Out and in together, of lightship"),
    ("fore_mm", "length_small:signed", "Draught at the fore end of the waterline, deeper"),
    ("aft_mm", "length_small:signed", "Draught at the aft end, deeper"),
    ("trim_mm", "length_small:signed", "Trim, by the bow"),
    ("list_deg", "angle:signed", "List, to starboard"),
    ("gravity_forward_mm", "length_small:signed", "Centre of gravity, forward"),
    ("gravity_up_mm", "length_small:signed", "Centre of gravity, up"),
)
LIMITS = (
    ("drain_after_mm", "length_small", "Lowest drain above water"),
    ("freeboard_aft_after_m", "length", "Freeboard aft"),
    ("plate_left_kg", "mass:signed", "Left of the builder's plate when cruising"),
)  # fmt: skip


def _summary(page: Page, moved: list[str]) -> Table:
    """What moves, how far she follows, and what is left of the limits that were measured."""
    known = tuple(
        line
        for line in LIMITS
        if any(page.value(f"{key}.weight.{line[0]}") is not None for key in moved)
    )
    columns = [numbers(page.words(f"{key}.name"), 60 // len(moved)) for key in moved]
    rows = tuple(
        Row(
            Markup.escape(label),
            tuple(page.show(f"{key}.weight.{name}", form) for key in moved),
        )
        for name, form, label in LINES + known
    )
    keys = [f"{key}.weight.{name}" for key in moved for name, _, _ in LINES + known]
    caption = page.text("Masses of every option that moves some, and how {boat.name|given} follows")
    heads = (words("Quantity", 40), *columns)
    notes = reasons(page, keys) + _unchecked(page, known)
    return Table("weight-table", caption, heads, rows, notes)


def _unchecked(page: Page, known: Lines) -> tuple[Markup, ...]:
    """The limits that the case gives no figure for."""
    lacking = [label[0].lower() + label[1:] for *_, label in LIMITS if label not in
               {row[-1] for row in known}]  # fmt: skip
    if not lacking:
        return ()
    return (
        page.text(f"Not in the case of {{boat.name|given}}, so unchecked: {', '.join(lacking)}."),
    )


PLACE = ("way", "name", "x_m", "y_m", "z_m", "source")


def _ledger(page: Page, moved: list[str]) -> Table:
    """One row for each thing at its place, what leaves first; its mass in each option."""
    things: dict[tuple[str, ...], dict[str, str]] = {}
    for option in moved:
        for key in page.keys(f"{option}.weight.ledger"):
            place = tuple(str(page.value(f"{key}.{name}")) for name in PLACE)
            things.setdefault(place, {})[option] = key
    rows = [
        _thing(page, moved, keys)
        for way in ("out", "in")
        for place, keys in things.items()
        if place[0] == way
    ]
    caption = page.text("Masses that leave {boat.name|given} and that come aboard, with places")
    length, mass = page.unit("length"), page.unit("mass")
    columns = (
        words("Item", 30), words("Way", 5), numbers("x", 7, length), numbers("y", 7, length),
        numbers("z", 7, length), words("Source", 13),
        *(numbers(page.words(f"{key}.name"), 31 // len(moved), mass) for key in moved),
    )  # fmt: skip
    places = [
        f"{key}.{name}" for keys in things.values() for key in keys.values() for name in PLACE
    ]
    return Table("ledger", caption, columns, tuple(rows), reasons(page, places), "long")


def _thing(page: Page, moved: list[str], keys: dict[str, str]) -> Row:
    key = next(iter(keys.values()))
    cells = (
        page.words(f"{key}.way"),
        *(page.show(f"{key}.{name}", "length:bare") for name in ("x_m", "y_m", "z_m")),
        page.words(f"{key}.source"),
        *(page.at(keys.get(option), "mass_kg", "mass:bare,size") for option in moved),
    )
    return Row(page.words(f"{key}.name"), cells)
