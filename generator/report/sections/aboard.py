"""What changes aboard: weight, trim and stability, the battery's place, the propeller?"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from generator.analyses.option import OptionAnswers
from generator.report.figures.profile import profile
from generator.report.page import Page, bare_text
from generator.report.parts import Figure, Part
from generator.report.template import pieces, start
from generator.report.view import Quantity, View

TEMPLATE = "sections/aboard.html"
TRIM = 17  # the criterion of trim and list
MOST = 9  # lines of the ledger on the page
LINES = (
    ("net", True), ("net_share", True), ("sinkage", True), ("trim", True), ("list", True),
    ("gravity_up", True),
)  # fmt: skip
LIMITS = (
    ("drain_after", "lowest drain"), ("freeboard_aft_after", "freeboard aft"),
    ("plate_left", "load on the builder’s plate"),
)  # fmt: skip
SHIFTS = (
    ("shift_forward", "forward"), ("shift_aft", "aft"),
    ("shift_starboard", "to starboard"), ("shift_port", "to port"),
)  # fmt: skip


@dataclass(frozen=True)
class Moved:
    """One option that moves masses, and how she floats with it."""

    option: View
    called: Markup
    weight: View
    placement: View | None
    gm: Markup
    battery_mass: Quantity | None
    battery_x: Quantity | None
    datum: Markup
    heavier: bool
    sinks: bool
    same_depth: bool
    same_trim: bool
    end: str
    passes: bool
    filled: tuple[View, ...]  # spaces with blocks in them
    shifts: tuple[tuple[Quantity, str], ...]  # what else must move a metre, and where to

    @property
    def start(self) -> Markup:
        """Its name at the beginning of a sentence."""
        head, mark, rest = str(self.called).partition(">")
        return Markup(f"{head}{mark}{start(rest)}" if mark else start(head))


@dataclass(frozen=True)
class Today:
    """On what her floating rests, and the limit of trim."""

    limit: Quantity
    per_cm: Quantity
    by: str
    stands_by: str
    gm: Markup
    same_gm: bool  # as printed, with every option that is told
    roll: Markup
    all_pass: bool


@dataclass(frozen=True)
class LedgerRow:
    """One item, with its mass in each option; none where the option leaves it alone."""

    name: str
    out: bool
    masses: tuple[Quantity | None, ...]


@dataclass(frozen=True)
class SpaceRow:
    """One space under one motor."""

    option: View
    space: View
    first: bool


def parts(page: Page) -> tuple[Part, ...]:
    """Weight, the drawings, the battery's place and the propeller."""
    moved = moved_by(page)
    if not moved:
        said = pieces(TEMPLATE, "nothing")(caller=lambda: page.words("boat.name"))
        return (Part("weight", pieces(TEMPLATE, "weight_title")(), body=said),)
    motors = [each for each in moved if each.option.kind == "battery"]
    if not motors:
        return (_weight(page, moved, motors),)
    return (_weight(page, moved, motors), _place(page, motors))


def moved_by(page: Page) -> list[Moved]:
    """The options that move masses."""
    return [_moved(page, key) for key in page.options if page.value(f"{key}.weight.ledger")]


def _moved(page: Page, key: str) -> Moved:
    option = page.view(key, OptionAnswers)
    assert option is not None
    it = option.weight
    battery = _battery(it) if option.kind == "battery" else None
    row = page.value(page.find(f"{key}.verdict.criteria", id=TRIM) or "none") or {}
    return Moved(
        option,
        page.text(page.called(key)),
        it,
        option.placement,
        gm=page.show(f"{key}.weight.after.metacentric_height_m", _height(it)),
        battery_mass=battery.mass if battery else None,
        battery_x=battery.x if battery and battery.x.there else None,
        datum=page.words("boat.datum"),
        heavier=_number(it.net) >= 0.0,
        sinks=_number(it.sinkage) >= 0.0,
        same_depth=_printed_as_nothing(page, f"{key}.weight.sinkage_mm"),
        same_trim=_printed_as_nothing(page, f"{key}.weight.trim_mm"),
        end="bow" if _number(it.trim) >= 0.0 else "stern",
        passes=row.get("result") == "go",
        filled=_filled(option.placement),
        shifts=_shifts(option.placement),
    )


def _filled(placement: View | None) -> tuple[View, ...]:
    spaces = () if placement is None else placement.spaces
    return tuple(space for space in spaces if _number(space.blocks))


def _shifts(placement: View | None) -> tuple[tuple[Quantity, str], ...]:
    if placement is None:
        return ()
    every = ((getattr(placement, name), way) for name, way in SHIFTS)
    return tuple((mass, way) for mass, way in every if _number(mass))


def _battery(weight: View) -> View | None:
    """The heaviest line of the battery, where the ledger names it."""
    lines = [line for line in weight.ledger if line.way == "in" and line.part == "battery"]
    return max(lines, key=lambda line: _number(line.mass), default=None)


def _number(it: Quantity) -> float:
    return it.value or 0.0


def _printed_as_nothing(page: Page, key: str) -> bool:
    if page.value(key) is None:
        return False
    return page.plain(key, "length_small:size,bare").strip("0.") == ""


def _height(weight: View) -> str:
    """GM to the centimetre where it is measured, to the decimetre where a height is assumed."""
    return "height" if weight.stands_by == "height of gravity" else "length"


def _weight(page: Page, moved: list[Moved], motors: list[Moved]) -> Part:
    shown, first = motors or moved, moved[0].weight
    gm = page.show(f"{first.before._key}.metacentric_height_m", _height(first))
    today = Today(
        first.trim_limit,
        first.before.per_cm,
        by=str(first.hydrostatics),
        stands_by=str(first.stands_by),
        gm=gm,
        same_gm={bare_text(each.gm) for each in shown} == {bare_text(gm)},
        roll=page.show("boat.roll_period_s", "seconds"),
        all_pass=all(each.passes for each in shown),
    )
    return Part(
        "weight",
        pieces(TEMPLATE, "weight_title")(),
        figures=profiles(page, motors),
        body=pieces(TEMPLATE, "weight")(shown, today)
        + _weight_table(page, moved)
        + _ledger(page, moved),
    )


def _weight_table(page: Page, moved: list[Moved]) -> Markup:
    """Weight, trim and stability of every option that moves masses."""
    known = [name for name, _ in LIMITS if any(getattr(m.weight, name).there for m in moved)]
    missing = [label for name, label in LIMITS if name not in known]
    lines = [*LINES, *((name, False) for name in known)]
    wind = page.show("planning.hold_wind_kn", "wind")
    made: Markup = pieces(TEMPLATE, "weight_table")(
        moved, lines, str(60 // len(moved)), missing, wind
    )
    return made


def _ledger(page: Page, moved: list[Moved]) -> Markup:
    rows = _rows(moved)
    heaviest = sorted(rows, key=_heaviest, reverse=True)[:MOST]
    kept = [row for row in rows if row in heaviest]
    made: Markup = pieces(TEMPLATE, "ledger")(
        moved, kept, str(44 // len(moved)), len(kept) < len(rows), page.unit("mass")
    )
    for kind in ("filled", "unplaced", "not_counted"):
        made += _lacking(kind, moved)
    return made


def _rows(moved: list[Moved]) -> list[LedgerRow]:
    """One row for each item, what leaves first; the heavier first in each half."""
    found: dict[tuple[bool, str, int], list[Quantity | None]] = {}
    for place, each in enumerate(moved):
        seen: Counter[tuple[bool, str]] = Counter()
        for line in each.weight.ledger:
            thing = (line.way == "out", str(line.name))
            seen[thing] += 1  # two lines of one name are two things
            found.setdefault((*thing, seen[thing]), [None] * len(moved))[place] = line.mass
    rows = [LedgerRow(name, out, tuple(masses)) for (out, name, _), masses in found.items()]
    return sorted(rows, key=lambda row: (not row.out, -_heaviest(row)))


def _heaviest(row: LedgerRow) -> float:
    return max(abs(_number(mass)) for mass in row.masses if mass is not None)


def _lacking(kind: str, moved: list[Moved]) -> Markup:
    """What the owner's lists lack, each text once with its options."""
    said: dict[str, list[Moved]] = {}
    for each in moved:
        if names := getattr(each.weight, kind):
            said.setdefault(str(names), []).append(each)
    macro = pieces(TEMPLATE, "lacking")
    return Markup("").join(
        macro(kind, getattr(each[0].weight, kind), Markup(", ").join(m.called for m in each))
        for each in said.values()
    )


def profiles(page: Page, motors: list[Moved]) -> tuple[Figure, ...]:
    """The drawing of each motor."""
    title, note = pieces(TEMPLATE, "profile_title"), pieces(TEMPLATE, "profile_note")
    return tuple(_figure(page, each, title(each), note(each, each is motors[0])) for each in motors)


def _figure(page: Page, each: Moved, title: Markup, note: Markup) -> Figure:
    name, key = f"profile-{each.option.id}", each.option._key
    return Figure(name, title, note, lambda: profile(page, key, name))


def _place(page: Page, motors: list[Moved]) -> Part:
    known = any(each.placement is not None for each in motors)
    places = {each.battery_x.text for each in motors if each.battery_x is not None}
    several = len(motors) > 1
    held: list[tuple[Any, Markup, Quantity]] = []
    upwards: list[tuple[Any, Markup, Quantity]] = []
    for each in motors:
        whom = each.called if several else Markup()
        for box in each.weight.restraints:
            held.append((box.name, whom, box.sideways))
            if box.upwards.there:
                upwards.append((box.name, whom, box.upwards))
    body = pieces(TEMPLATE, "place")(
        motors,
        len(places) == 1,
        known,
        page.show("boat.shock_allowance", "mean_count"),
        held,
        upwards,
    )
    body += pieces(TEMPLATE, "propeller")(motors)
    rows = [
        SpaceRow(each.option, space, place == 0)
        for each in motors
        if each.placement is not None
        for place, space in enumerate(each.placement.spaces)
    ]
    table = pieces(TEMPLATE, "space_table")(rows, several) if rows else Markup()
    return Part("placement", pieces(TEMPLATE, "place_title")(), body=body, closing=table)
