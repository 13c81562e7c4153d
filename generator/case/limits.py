"""Is a number of the case file one that is met in practice, and can it be at all?

Every number has two ranges in one table: outside the usual one it is doubted, outside the
possible one refused. Where the register holds a range for its default, that is the usual one.
Limits are of magnitudes, so that a place abaft the datum has those of a place before it; only
temperatures have a sign. A zero says that there is none, and the schema knows whether it may.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from generator.case.check import Finding, amounts
from generator.case.leaf import Given
from generator.case.prices import part_by_name
from generator.case.said import Place
from generator.case.schema import CaseKeys, CostItemKeys, LedgerItemKeys
from generator.errors import TableError
from generator.tables.load import read_table
from generator.units.families import KINDS
from generator.units.grammar import from_si, to_si

Range = tuple[float, float]  # SI; of money in euro
SLACK = 1e-9  # of a limit, for numbers that went through another unit
LEAST_SHOWN, MOST_SHOWN = 1e-3, 1e6  # of a limit in a message
SIGNED = "temperature"


@dataclass(frozen=True)
class Limits:
    """What a number may be; no usual range where the register's is the usual one."""

    possible: Range
    usual: Range | None
    unit: str


@cache
def all_limits() -> dict[tuple[str, str], Limits]:
    """All rows by key and by what they hold for."""
    table = read_table("rules/limits")
    ends = ("possible_low", "usual_low", "usual_high", "possible_high")
    rows: dict[tuple[str, str], Limits] = {}
    for place, row in enumerate(zip(table.text("key"), table.text("when"), strict=True)):
        unit = table.text("unit")[place].replace("-", "")
        lowest, low, high, highest = (
            float(to_si(float(table.column(end)[place]), unit)) for end in ends
        )
        usual = (low, high) if table.text("usual_low")[place] else None
        if row in rows or not lowest <= highest:
            raise TableError(f"rules/limits: {row[0]} with when '{row[1]}'")
        if usual and not lowest <= low < high <= highest:
            raise TableError(f"rules/limits: {row[0]} has usual values that cannot be")
        rows[row] = Limits((lowest, highest), usual, unit)
    return rows


def limits_key(place: Place) -> str:
    """The key of the table for a place: an option's engine has the limits of the boat's."""
    return _row_of(tuple(part for part in place if isinstance(part, str)))


@cache
def _row_of(parts: tuple[str, ...]) -> str:
    key = ".".join(parts)
    for own in ("engine.", "propeller."):
        key = key.removeprefix("options.") if key.startswith(f"options.{own}") else key
    for ledger in ("removed", "added"):
        key = key.replace(f"options.{ledger}.", "options.ledger.")
    return key


def find_impossible(case: CaseKeys) -> Iterator[Finding]:
    """Numbers that no boat has, each with what is possible."""
    for place, given, limits in _limited(case):
        if _outside(given, limits.possible):
            problem = f"is {given.shown}, which can hardly be"
            yield Finding(place, problem, _hope(given, limits.possible, limits.unit))


def find_unusual(case: CaseKeys) -> Iterator[Finding]:
    """Numbers that can be, but are most often a slip of the pen or of the unit."""
    for place, given, limits in _limited(case):
        if limits.usual and _outside(given, limits.usual):
            yield Finding(place, f"is {given.shown}", _hope(given, limits.usual, limits.unit))


def _limited(case: CaseKeys) -> Iterator[tuple[Place, Given, Limits]]:
    """Every number with its limits; a kind of payment or of mass has its own."""
    for place, given in amounts(case):
        rows = all_limits()  # here: without a number nothing that reads units is loaded
        key = limits_key(place)
        if key not in {"options.ledger.mass", "options.costs.amount"}:
            yield place, given, rows[key, ""]
            continue
        words = _words(case, place)
        yield place, given, next(rows[key, word] for word in words if (key, word) in rows)


def _words(case: CaseKeys, place: Place) -> tuple[str, ...]:
    """What a line of a ledger or of the costs is for."""
    item: object = case
    for part in place[:-1]:
        item = getattr(item, part) if isinstance(part, str) else item[part]  # type: ignore[index]
    if isinstance(item, CostItemKeys):
        part = item.part or part_by_name(item.name or "")
        return ("yearly", "") if item.when == "yearly" else (part, "")
    assert isinstance(item, LedgerItemKeys)
    return (item.part or "", "")


def _outside(given: Given, limits: Range) -> bool:
    """Whether a number that is not none lies outside its limits."""
    if given.value == 0.0 and given.kind != SIGNED:
        return False
    value = given.value if given.kind == SIGNED else abs(given.value)
    value /= per_euro(given)
    slack = SLACK * max(abs(limits[0]), abs(limits[1]))
    return not limits[0] - slack <= value <= limits[1] + slack


def _hope(given: Given, limits: Range, unit: str) -> str:
    """The limits in the owner's own unit, or in that of the table where they are unreadable so."""
    spelled = given.unit
    if not KINDS[given.kind].money and not _readable(limits, spelled):
        spelled = unit
    low, high = (limit * per_euro(given) for limit in limits)
    sides = " to either side" if given.value < 0.0 and given.kind != SIGNED else ""
    return f"expected {spelled_range(low, high, spelled)}{sides}"


def spelled_range(low: float, high: float, unit: str) -> str:
    """Two ends [SI] in a unit that may be written, to four figures."""
    ends = (f"{float(f'{from_si(end, unit):.4g}'):.10g}" for end in (low, high))
    return f"{' to '.join(ends)} {unit}".rstrip()


def _readable(limits: Range, unit: str) -> bool:
    """Whether limits are no rows of noughts in a unit."""
    low, high = (float(from_si(limit, unit)) for limit in limits)
    return (low <= 0.0 or low >= LEAST_SHOWN) and high <= MOST_SHOWN


def per_euro(given: Given) -> float:
    """Of an amount: roughly how much of its currency one euro buys; else 1."""
    if not KINDS[given.kind].money:
        return 1.0
    table = read_table("rules/euro_worth")
    row = table.row_of("currency", given.unit.split("/", maxsplit=1)[0])
    return float(table.column("per_euro")[row])
