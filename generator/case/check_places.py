"""Which masses of a case file stand where no mass can stand?"""

from __future__ import annotations

from collections.abc import Iterator

from generator.case.boat import DATUMS
from generator.case.check import Finding, si
from generator.case.leaf import Given
from generator.case.said import Place
from generator.case.schema import CaseKeys, LedgerItemKeys

MASTHEAD = 1.6  # of length overall above the waterline: nothing aboard stands higher

Placed = tuple[Place, Given | None, Given | None, Given | None]


def find_misplaced(case: CaseKeys) -> Iterator[Finding]:
    """Positions off the boat or without a datum, spaces unknown or overfilled."""
    placed = list(_placed(case))
    yield from _datum(case, placed)
    for place, x, y, z in placed:
        yield from _off_the_boat(case, place, x, y, z)
    yield from _space_names(case)
    for place, item in _items(case):
        yield from _in_space(case, place, item)
    yield from _overfilled(case)
    yield from _displacements(case)


def _items(case: CaseKeys) -> Iterator[tuple[Place, LedgerItemKeys]]:
    """Every item of every ledger with its place in the file."""
    for number, option in enumerate(case.options):
        for name in ("removed", "added"):
            for row, item in enumerate(getattr(option, name)):
                yield ("options", number, name, row), item


def _placed(case: CaseKeys) -> Iterator[Placed]:
    """Everything that has a position."""
    for number, space in enumerate(case.boat.spaces):
        yield ("boat", "spaces", number), space.x, space.y, space.z
    for place, item in _items(case):
        yield place, item.x, item.y, item.z


def _datum(case: CaseKeys, placed: list[Placed]) -> Iterator[Finding]:
    """Positions along the boat mean nothing without a datum; told once."""
    measured = next((place for place, x, _, _ in placed if x), None)
    said = case.boat.model_fields_set
    if measured and said and "datum" not in said:
        hope = f"expected one of: {', '.join(DATUMS)}: positions x are measured from it"
        yield Finding(("boat", "datum"), "is missing", hope)


def _off_the_boat(
    case: CaseKeys, place: Place, x: Given | None, y: Given | None, z: Given | None
) -> Iterator[Finding]:
    """A position that is not inside hull or rig."""
    hull = case.boat.hull
    length, overall = si(hull.waterline_length), si(hull.length_overall)
    start = DATUMS.get(case.boat.datum or "", 0.0) * length
    overhang = overall - length
    limits = (
        ("x", x, -overhang - start, length + overhang - start, "the stern and the stem"),
        ("y", y, -si(hull.beam) / 2, si(hull.beam) / 2, "port and starboard side"),
        ("z", z, -si(hull.draught), MASTHEAD * overall, "the keel and the masthead"),
    )
    for axis, given, low, high, ends in limits:
        if given and (given.value < low or given.value > high):
            hope = f"expected a place between {ends}, {low:.2f} m to {high:.2f} m"
            yield Finding((*place, axis), f"is {given.shown}, outside the hull", hope)


def _space_names(case: CaseKeys) -> Iterator[Finding]:
    """Two spaces of one name."""
    names = [space.name for space in case.boat.spaces]
    for number, name in enumerate(names):
        if name and name in names[:number]:
            place = ("boat", "spaces", number, "name")
            yield Finding(place, f"is `{name}`, the name of an earlier space", "expected its own")


def _in_space(case: CaseKeys, place: Place, item: LedgerItemKeys) -> Iterator[Finding]:
    """An item in a space that is not there, or that cannot carry it."""
    if not item.space:
        return
    space = next((each for each in case.boat.spaces if each.name == item.space), None)
    if space is None:
        names = ", ".join(each.name for each in case.boat.spaces if each.name)
        hope = f"expected one of: {names}" if names else "expected a space listed in boat.spaces"
        yield Finding((*place, "space"), f"is `{item.space}`, no space of the boat", hope)
    elif (
        "added" in place and item.mass and space.max_mass and item.mass.value > space.max_mass.value
    ):
        problem = f"is {item.mass.shown}, more than {item.space} may carry"
        yield Finding((*place, "mass"), problem, f"expected at most {space.max_mass.shown}")


def _overfilled(case: CaseKeys) -> Iterator[Finding]:
    """Items that one by one fit into a space, but not together."""
    for number, option in enumerate(case.options):
        for space in case.boat.spaces:
            masses = [item.mass.value for item in option.added
                      if item.mass and item.space and item.space == space.name]  # fmt: skip
            limit = si(space.max_mass)
            if len(masses) > 1 and max(masses) <= limit < sum(masses):
                problem = f"puts {sum(masses):.0f} kg into {space.name}"
                hope = f"expected at most {limit:.0f} kg there"
                yield Finding(("options", number, "added"), problem, hope)


def _displacements(case: CaseKeys) -> Iterator[Finding]:
    """A light boat heavier than the same boat as she sails, and the like."""
    float_keys, whole = case.boat.floatation, case.boat.hull.displacement
    place: Place = ("boat", "floatation")
    if si(float_keys.light_displacement) > si(whole):
        shown = float_keys.light_displacement.shown if float_keys.light_displacement else ""
        hope = "expected at most boat.hull.displacement"
        yield Finding((*place, "light_displacement"), f"is {shown}", hope)
    if si(float_keys.cruising_displacement) < si(float_keys.light_displacement):
        shown = float_keys.cruising_displacement.shown if float_keys.cruising_displacement else ""
        hope = "expected at least light_displacement"
        yield Finding((*place, "cruising_displacement"), f"is {shown}", hope)
