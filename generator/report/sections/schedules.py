"""Parts: which cables, fuses, switches and settings does each motor need, and who confirms what?"""

from __future__ import annotations

from markupsafe import Markup, escape

from generator.analyses.wiring.set_values import Settings
from generator.records import Number, key_of, numbers_of, records_of
from generator.report.page import Page, joined
from generator.report.parts import Column, Part, Row, Table, numbers, reasons, words


def wired(page: Page) -> list[str]:
    """Keys of the installations there are."""
    return [f"{motor}.installation" for motor in page.motors]


def overview(page: Page) -> Part:
    """The numbers a surveyor asks for first, one column for each motor."""
    rows = tuple(_line(page, *line) for line in LINES)
    width = 60 // max(len(page.motors), 1)
    columns = (
        words("Quantity", 40),
        *(numbers(page.words(f"{motor}.name"), width) for motor in page.motors),
    )
    caption = page.text("The installation of each motor in short; for the installer to confirm")
    table = Table("wiring-table", caption, columns, rows)
    return Part("wiring-short", "Voltage, fault and main circuit", _said(page), (), (table,))


LINES = (
    ("Label, cells in series, charge ceiling",
     ("voltages.nominal_v|voltage", "voltages.cells|count", "voltages.ceiling_v|voltage")),
    ("Strings, one fuse for each", ("strings|count",)),
    ("Short circuit at the main busbar, bank full: likely, at most",
     ("fault.bank_ka|short_circuit", "fault.bank_most_ka|short_circuit")),
    ("What one string may carry: continuous, in a peak",
     ("string.for_good_a|current", "string.for_peak_a|current")),
    ("Motor circuit: continuous, at peak; may carry",
     ("drive.continuous_a|current", "drive.peak_a|current", "drive.ampacity_a|current")),
    ("Its conductors in each pole, section, gauge",
     ("drive.conductors|count", "drive.area_mm2|section", "drive.gauge|given")),
    ("Voltage lost, continuous and at peak",
     ("drive.drop_pct|percent", "drive.drop_peak_pct|percent")),
    ("Area for {drive.drop_limit_pct|percent} lost: warm copper, metric, boat form",
     ("drive.physical_mm2|section", "drive.metric_form_mm2|section",
      "drive.boat_form_mm2|section")),
    ("Conductor after the peak, its insulation bears",
     ("drive.after_peak_degc|temperature", "drive.insulation_degc|temperature")),
    ("Its fuse", ("fuse.rating_a|current", "fuse.class|given")),
    ("which breaks, at", ("fuse.breaking_ka|short_circuit", "fuse.voltage_v|voltage")),
    ("House through the converter, most", ("house_w|watts",)),
    ("Pre-charge: resistor, time, heat each time",
     ("precharge.resistance_ohm|ohms", "precharge.time_s|seconds", "precharge.energy_j|joules")),
    ("Into a fault its resistor takes, until given up after",
     ("precharge.first_power_w|watts", "precharge.limit_s|seconds")),
)  # fmt: skip


def _line(page: Page, name: str, places: tuple[str, ...]) -> Row:
    drive = page.find(f"{wired(page)[0]}.circuits", kind="motor")
    return Row(
        page.text(name.replace("{drive.", f"{{{drive}.")),
        tuple(_cell(page, key, places) for key in wired(page)),
    )


def _cell(page: Page, key: str, places: tuple[str, ...]) -> Markup:
    drive = page.find(f"{key}.circuits", kind="motor")
    fuse = page.find(f"{key}.devices", id=page.value(f"{drive}.device"))
    shown = []
    for place in places:
        path, form = place.split("|")
        head, _, tail = path.partition(".")
        full = {"drive": f"{drive}.{tail}", "fuse": f"{fuse}.{tail}"}.get(head, f"{key}.{path}")
        shown.append(page.words(full) if form == "given" else page.show(full, form))
    return joined(shown, ", ")


def _said(page: Page) -> tuple[Markup, ...]:
    """The voltage rule in words, what was assumed, and everything that does not hold."""
    worst = max(wired(page), key=lambda key: page.value(f"{key}.fault.bank_most_ka"))
    found = [page.text(_rule(page, worst))]
    for motor, key in zip(page.motors, wired(page), strict=True):
        if page.value(f"{key}.assumed"):
            found.append(page.text(
                f"The case says nothing of cables for {{{motor}.name|given}}: runs are usual "
                f"ones, insulation is taken as {{{key}.temperature_class_degc|temperature}} in "
                f"{{{key}.space_temperature_degc|temperature}} of air."
            ))  # fmt: skip
        problems = [page.words(f"{item}.words") for item in page.keys(f"{key}.problems")]
        if problems:
            found.append(
                Markup("<b>") + page.words(f"{motor}.name") + Markup(" does not hold:</b> ")
                + joined(problems, "; ") + Markup(".")
            )  # fmt: skip
    return tuple(found)


def _rule(page: Page, key: str) -> str:
    same = page.value(f"{key}.voltages.band") == page.value(f"{key}.voltages.band_by_label")
    label = "" if same else (
        ", although its label alone would fall under the rule "
        f"{{{key}.voltages.band_by_label|given}}"
    )  # fmt: skip
    worst = " in the worst of these banks" if len(page.motors) > 1 else ""
    by = "as their maker says" if page.value(f"{key}.fault.by_maker") else (
        "until the maker of the cells says"
    )  # fmt: skip
    return (
        f"The bank reaches {{{key}.voltages.ceiling_v|voltage}} on charge, so its fuses go by the "
        f"rule {{{key}.voltages.band|given}}{label}: one for each string at the battery, none "
        "larger than its conductor carries or the next size sold above that, each of a class that "
        "breaks the fault at its place with the least resistance in the range of the cells: at the "
        f"busbar {{{key}.fault.bank_most_ka|short_circuit}}{worst}, {by}. The management systems "
        "do not count as fuses; they are set to act before a fuse opens."
        f"{_code(page)}"
    )


def _code(page: Page) -> str:
    """Where the rule comes from, and whom it binds."""
    every = page.keys("sources")
    key = next((each for each in every if page.value(f"{each}.key") == "cfr33_183"), None)
    return (
        f" Rule, allowable currents and distances are taken from {{{key}.text|given}}; local "
        "codes, surveyor and insurer may ask for more, nearer fuses among it."
        if key
        else ""
    )


def confirm(page: Page) -> Part | None:
    """Isolation, bonding and earthing, with the one who confirms each."""
    if not page.motors:
        return None
    rows = tuple(
        Row(
            page.words(f"{key}.title"), (page.sentence(f"{key}.text"), page.words(f"{key}.confirm"))
        )
        for key in page.keys(f"{wired(page)[0]}.confirm")
    )
    columns = (words("Subject", 17), words("What is to be confirmed aboard", 65), words("With", 18))
    caption = page.text(
        "Isolation, bonding and earthing of {boat.name|given}, by the bank of "
        f"{{{page.motors[0]}.name|given}}"
    )
    table = Table("earthing-table", caption, columns, rows, (), "long")
    return Part("earthing", "Isolation, bonding, earthing", (), (), (table,))


def parts(page: Page) -> tuple[Part, ...]:
    """Overview and what to confirm."""
    if not page.motors:
        return ()
    return tuple(part for part in (overview(page), confirm(page)) if part)


def lists(page: Page) -> tuple[Part, ...]:
    """The yard's lists: cables, fuses, settings; of labels and switches only their files."""
    if not page.motors:
        return ()
    text = page.text(
        "Every number is for the installer to confirm aboard {boat.name|given}. All columns, "
        "labels and switches are in the tables whose names begin with installation."
    )
    tables = tuple(
        table
        for motor, key in zip(page.motors, wired(page), strict=True)
        for table in (_cables(page, motor, key), _fuses(page, motor, key))
    )
    return (
        Part("schedules", "Cable and fuse lists", (text,), (), tables),
        Part("settings", "Settings", (), (), (_settings(page),)),
    )


def _cables(page: Page, motor: str, key: str) -> Table:
    columns = (
        words("Cable", 6), words("From, to", 28), numbers("Run", 6, page.unit("height")),
        numbers("Continuous", 9, "A"), numbers("Peak", 6, "A"), words("Each pole", 21),
        numbers("May carry", 8, "A"), numbers("Lost", 6, "%"),
        numbers("Warms to", 10, page.unit("temperature")),
    )  # fmt: skip
    rows = tuple(_cable(page, item) for item in page.keys(f"{key}.circuits"))
    caption = page.text(
        f"{{{motor}.name|given}}: cables, insulation {{{key}.temperature_class_degc|temperature}}, "
        f"air {{{key}.space_temperature_degc|temperature}}, {{{key}.bundled|count}} conductors in "
        "a bundle: several a pole lie in pairs apart; currents for nine draws in ten"
    )
    return Table(f"cables-{_tail(motor)}", caption, columns, rows)


def _cable(page: Page, key: str) -> Row:
    several = page.value(f"{key}.conductors") > 1
    count = page.show(f"{key}.conductors", "count") + Markup(" × ") if several else Markup("")
    size = (
        count + page.show(f"{key}.area_mm2", "section") + Markup(", ") + page.words(f"{key}.gauge")
    )
    cells = (
        page.words(f"{key}.name"),
        page.show(f"{key}.run_m", "height:bare"),
        page.show(f"{key}.continuous_a", "current:bare"),
        page.show(f"{key}.peak_a", "current:bare"),
        size,
        page.show(f"{key}.ampacity_a", "current:bare"),
        page.show(f"{key}.drop_pct", "percent:bare"),
        page.show(f"{key}.after_peak_degc", "temperature:bare"),
    )
    return Row(page.words(f"{key}.id"), cells, "refused" if page.value(f"{key}.problems") else "")


def _fuses(page: Page, motor: str, key: str) -> Table:
    columns = (
        words("Fuse", 6), words("Place", 23), numbers("Rating", 8, "A"), words("Class", 16),
        numbers("Voltage", 8, "V"), numbers("Breaks", 8, "kA"), numbers("Fault", 8, "kA"),
        numbers("Load, conductor allow", 13, "A"), words("Opens alone", 10),
    )  # fmt: skip
    items = page.keys(f"{key}.devices")
    rows = tuple(_fuse(page, item) for item in items)
    limit = f"{items[0]}.distance_limit_mm"
    caption = page.text(
        f"{{{motor}.name|given}}: fuses, each in the positive leg within {{{limit}|length_small}} "
        "of its source; one spare of each rating and class aboard; loads as for warm "
        "air; alone by the ratio of ratings; both to be held against the makers' curves"
    )
    absent = (*reasons(page, [f"{item}.class" for item in items]), *_house(page, items))
    return Table(f"fuses-{_tail(motor)}", caption, columns, rows, absent)


def _house(page: Page, items: list[str]) -> tuple[Markup, ...]:
    """What stands behind the fault at the house battery."""
    own = [item for item in items if page.value(f"{item}.place").startswith("house battery")]
    if not own:
        return ()
    named = joined((page.words(f"{item}.id") for item in own), ", ")
    said = page.text(
        f": of the house battery nothing is known; {{{own[0]}.fault_ka|short_circuit}} is what "
        "breakers on the largest usual one are asked to break, for its maker to confirm."
    )
    return (named + said,)


def _fuse(page: Page, key: str) -> Row:
    alone = page.value(f"{key}.selective")
    together = Markup("with ") + page.words(f"{key}.upstream")
    cells = (
        page.words(f"{key}.place"),
        page.show(f"{key}.rating_a", "current:bare"),
        page.words(f"{key}.class"),
        page.show(f"{key}.voltage_v", "voltage:bare"),
        page.show(f"{key}.breaking_ka", "short_circuit:bare"),
        page.show(f"{key}.fault_ka", "short_circuit:bare"),
        page.span(f"{key}.least_a", f"{key}.most_a", "current:bare"),
        _first(page, key) if alone is None else Markup("yes") if alone else together,
    )
    return Row(page.words(f"{key}.id"), cells, "refused" if page.value(f"{key}.problems") else "")


def _first(page: Page, key: str) -> Markup:
    """A fuse at its source: of strings side by side, a fault of one is fed through all."""
    made = key.rsplit(".devices", 1)[0]
    several = (page.value(f"{made}.strings") or 1) > 1
    string = page.find(f"{made}.circuits", id=page.value(f"{key}.circuit"), kind="string")
    return Markup("not alone") if several and string else Markup("first")


def _settings(page: Page) -> Table:
    width = 48 // len(page.motors)
    columns: tuple[Column, ...] = (
        words("Device", 18), words("Setting", 34),
        *(numbers(page.words(f"{motor}.name"), width) for motor in page.motors),
    )  # fmt: skip
    rows = tuple(_setting(page, *each) for each in _every_setting(page))
    caption = page.text("Settings to be made and handed over; the reason of each is in its file")
    notes = reasons(
        page, (_key(key, *each) for key in wired(page) for each in _every_setting(page))
    )
    return Table("settings-table", caption, columns, rows, notes, "long")


def _every_setting(page: Page) -> list[tuple[str, str, Number]]:
    """Device, name and declaration of every setting that any motor has, in their order."""
    return [
        (device, name, said)
        for device, (record,) in records_of(Settings).items()
        if any(page.value(f"{key}.settings.{device}") for key in wired(page))
        for name, said in numbers_of(record).items()
    ]


def _key(key: str, device: str, name: str, said: Number) -> str:
    return f"{key}.settings.{device}.{key_of(name, said.kind)}"


def _setting(page: Page, device: str, name: str, said: Number) -> Row:
    """One setting of all motors; a motor that has none of it shows nothing."""
    own = [key for key in wired(page) if page.value(f"{key}.settings.{device}")]
    values = (
        page.show(_key(key, device, name, said), said.kind) if key in own else Markup("")
        for key in wired(page)
    )
    label = escape(f"{said.label[0].upper()}{said.label[1:]}")
    return Row(page.words(f"{own[0]}.settings.{device}.device"), (label, *values))


def _tail(motor: str) -> str:
    return motor.rpartition(".")[2]
