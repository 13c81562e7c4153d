"""Which answers about her use leave the word open, or stand against it?"""

from __future__ import annotations

from collections.abc import Iterator

from generator.case.check import Finding, si
from generator.case.circumstances import waters_words
from generator.case.leaf import Given
from generator.case.register import find_default
from generator.case.said import Place
from generator.case.schema import CaseKeys, OptionKeys
from generator.case.usage import WishKeys
from generator.units.grammar import from_si

DAYS = 366  # of a year
FACTOR = 2.0  # by which a fetch may lie outside the range of its waters
RESERVE = (
    "manoeuvring_speed", "manoeuvring_time", "hold_speed", "hold_wind", "hold_time",
    "reserve_share",
)  # fmt: skip
POWER_PER_MASS = 8.0  # W/kg, above which a motor is no auxiliary


def find_use_doubts(case: CaseKeys) -> Iterator[Finding]:
    """What the owner has not said, and what he has said against himself."""
    yield from _legs(case)
    yield from _days(case)
    yield from _fetch(case)
    yield from _reserve(case)
    yield from _wishes(case.study.priorities, ("study", "priorities"))
    yield from _wishes(case.study.reasons, ("study", "reasons"))
    if case.papers.insurer == "refused":
        hope = "expected another one asked: until one accepts, no battery aboard is suitable"
        yield Finding(("papers", "insurer"), "is refused", hope)
    if case.papers.conversion == "refused":
        hope = "expected the body's agreement: until it has given it, no conversion is suitable"
        yield Finding(("papers", "conversion"), "is refused", hope)
    for number, option in enumerate(case.options):
        if option.kind == "battery":
            yield from _plant(case, option, ("options", number))


def _legs(case: CaseKeys) -> Iterator[Finding]:
    """No passage at all, one that nobody said must be made, or none that must."""
    if not case.legs and not case.legs_file:
        hope = "expected her passages: without them nothing says what she must be able to do"
        yield Finding(("legs",), "is missing", hope)
        return
    for number, leg in enumerate(case.legs):
        for name in ("refuge", "sailable"):
            if getattr(leg, name) is None and not (leg.refuge or leg.sailable):
                hope = "expected true or false: a leg with neither refuge nor sail must be made"
                yield Finding(("legs", number, name), "is missing", hope)
    if all(leg.refuge or leg.sailable for leg in case.legs):
        hope = "expected refuge: false and sailable: false on a leg that must be made under engine"
        yield Finding(("legs",), "have none that must be made", hope)


def _days(case: CaseKeys) -> Iterator[Finding]:
    """Two legs of one name, and more outings than a year has days."""
    names = [leg.name for leg in case.legs]
    for number, name in enumerate(names):
        if name and name in names[:number]:
            problem = f"is `{name}`, the name of an earlier leg"
            hope = "expected its own, or one leg made more often"
            yield Finding(("legs", number, "name"), problem, hope)
    outings = sum(si(leg.times_per_year) for leg in case.legs if not leg.follows)
    if outings > DAYS:
        problem = f"make {outings:.0f} outings a year"
        yield Finding(("legs",), problem, f"expected at most {DAYS}: legs of one outing follow")


def _fetch(case: CaseKeys) -> Iterator[Finding]:
    """Open water that does not fit the class of the waters."""
    row = find_default("waters.fetch", waters_words(case.waters))
    places: list[tuple[Place, Given | None]] = [(("waters", "fetch"), case.waters.fetch)]
    places += [(("legs", number, "fetch"), leg.fetch) for number, leg in enumerate(case.legs)]
    for place, given in places:
        if row is None or given is None:
            continue
        if row.low / FACTOR <= given.value <= row.high * FACTOR:
            continue
        hope = f"expected {row.shown_low} to {row.shown_high} on {case.waters.exposure} waters"
        yield Finding(place, f"is {given.shown}", hope)


def _reserve(case: CaseKeys) -> Iterator[Finding]:
    """Less kept back than the usual rule, without the owner's reason."""
    if case.planning.reserve_reason:
        return
    for name in RESERVE:
        given = getattr(case.planning, name)
        row = find_default(f"planning.{name}", waters_words(case.waters))
        if given and row and given.value < row.value - 1e-9:
            hope = f"expected the rule's {row.shown}, or planning.reserve_reason"
            yield Finding(("planning", name), f"is {given.shown}", hope)


def _wishes(wishes: tuple[WishKeys, ...], place: Place) -> Iterator[Finding]:
    """Words of the owner that no subject is named for, so that no figure can answer them."""
    bare = [number for number, wish in enumerate(wishes) if wish.subject is None]
    if bare:
        hope = "expected subject: beside text: quiet, smell, ease, cost, range, space, fuel-free..."
        yield Finding((*place, bare[0]), f"names no subject ({len(bare)} in all)", hope)


def _plant(case: CaseKeys, option: OptionKeys, place: Place) -> Iterator[Finding]:
    """A bank that nothing charges, or a motor that no boat of her mass has."""
    supply = option.supply
    charged = supply.panels or supply.genset.power or supply.wind.rotor_diameter
    if not case.berth.shore_power and not charged:
        hope = "expected a plug at the berth, panels, a genset or a wind generator"
        yield Finding((*place, "supply"), "has no way to charge the bank", hope)
    each = si(option.motor.continuous_power) / si(case.boat.hull.displacement)
    if option.motor.continuous_power and each > POWER_PER_MASS:
        most = from_si(POWER_PER_MASS * si(case.boat.hull.displacement), "kW")
        shown = option.motor.continuous_power.shown
        hope = f"expected at most {most:.0f} kW for a boat of her mass"
        yield Finding((*place, "motor", "continuous_power"), f"is {shown}", hope)
