"""Which values of a case file cannot hold together?

Each check is a plain function over whatever validated: a missing number is NaN here, and no
comparison with it is true.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.case.check_bank import bank_faults
from generator.case.key_kinds import Group
from generator.case.leaf import Given
from generator.case.plant_keys import PropellerKeys
from generator.case.prices import CREDITS
from generator.case.said import Place
from generator.case.schema import CaseKeys, OptionKeys
from generator.units.families import KINDS

NEXT_MODEL = 2  # years from a study until an engine that it offers is built


@dataclass(frozen=True)
class Finding:
    """Something wrong or doubtful at one place of the file."""

    place: Place
    problem: str
    expected: str


def find_contradictions(case: CaseKeys) -> Iterator[Finding]:
    """All faults between keys."""
    yield from _hull(case)
    yield from _year(case)
    yield from _dates(case)
    yield from _legs(case)
    yield from _berth(case)
    yield from _depths(case)
    yield from _propellers(case)
    yield from _currencies(case)
    yield from _option_ids(case)
    for number, option in enumerate(case.options):
        yield from _option(option, ("options", number))


def si(given: Given | None) -> float:
    """The SI value, NaN where there is none."""
    return given.value if given else float("nan")


def amounts(model: object, place: Place = ()) -> Iterator[tuple[Place, Given]]:
    """Every quantity of the file with its place."""
    if isinstance(model, Given):
        yield place, model
    elif isinstance(model, Group):
        for name in type(model).model_fields:
            if name in model.model_fields_set:
                yield from amounts(getattr(model, name), (*place, name))
    elif isinstance(model, tuple):
        for number, item in enumerate(model):
            yield from amounts(item, (*place, number))


def _hull(case: CaseKeys) -> Iterator[Finding]:
    """A part longer, wider or deeper than the whole."""
    hull, place = case.boat.hull, ("boat", "hull")
    for part, whole in (
        ("waterline_length", "length_overall"),
        ("beam", "length_overall"),
        ("waterline_beam", "beam"),
        ("canoe_draught", "draught"),
    ):
        if si(getattr(hull, part)) > si(getattr(hull, whole)):
            shown = f"{getattr(hull, part).shown}, more than {whole} {getattr(hull, whole).shown}"
            yield Finding((*place, part), f"is {shown}", f"expected at most {whole}")


def _year(case: CaseKeys) -> Iterator[Finding]:
    """The year is needed where the default of the centre of flotation hangs on it."""
    boat = case.boat
    hull_said = "hull" in boat.model_fields_set and boat.hull.model_fields_set
    if hull_said and "year_on_market" not in boat.model_fields_set and boat.hull.lcf is None:
        hope = "expected a year such as `1984`: the default of hull.lcf hangs on it"
        yield Finding(("boat", "year_on_market"), "is missing", hope)
    year = case.study.date[:4] if case.study.date else ""
    if year.isdigit() and boat.year_on_market and boat.year_on_market > int(year):
        problem = f"is {boat.year_on_market}, after the study's own date"
        yield Finding(("boat", "year_on_market"), problem, f"expected at most {year}")
    yield from _engine_years(case, year)


def _engine_years(case: CaseKeys, year: str) -> Iterator[Finding]:
    """An engine that is aboard, or for sale, before it was built."""
    engines: list[tuple[Place, int | None, int]] = [(("engine", "year"), case.engine.year, 0)]
    for number, option in enumerate(case.options):
        engines.append((("options", number, "engine", "year"), option.engine.year, NEXT_MODEL))
    for place, built, ahead in engines:
        if year.isdigit() and built and built > int(year) + ahead:
            hope = f"expected at most {int(year) + ahead}"
            yield Finding(place, f"is {built}, after the study's own date", hope)


def _dates(case: CaseKeys) -> Iterator[Finding]:
    """A price or an import later than the study itself."""
    day = case.study.date or ""
    if not day[:4].isdigit():
        return
    if case.boat.import_date and case.boat.import_date > day:
        problem = f"is {case.boat.import_date}, after the study's own date"
        yield Finding(("boat", "import_date"), problem, f"expected at most {day}")
    for number, option in enumerate(case.options):
        for row, cost in enumerate(option.costs):
            if cost.price_year and cost.price_year > int(day[:4]):
                place = ("options", number, "costs", row, "price_year")
                yield Finding(place, f"is {cost.price_year}", f"expected at most {day[:4]}")


def _legs(case: CaseKeys) -> Iterator[Finding]:
    """An exposed part longer than its leg."""
    for number, leg in enumerate(case.legs):
        if leg.exposed_distance and si(leg.exposed_distance) > si(leg.distance):
            problem = f"is {leg.exposed_distance.shown}, more than the whole leg"
            yield Finding(
                ("legs", number, "exposed_distance"), problem, "expected at most its distance"
            )
        if leg.fetch and leg.wind and si(leg.wind) == 0.0:
            problem = f"is {leg.fetch.shown} where the wind is {leg.wind.shown}"
            yield Finding(("legs", number, "fetch"), problem, "expected none, or a wind")
        if leg.spring_stream and leg.foul_stream and si(leg.spring_stream) < si(leg.foul_stream):
            problem = f"is {leg.spring_stream.shown}, less than foul_stream {leg.foul_stream.shown}"
            hope = "expected the greatest stream of the leg"
            yield Finding(("legs", number, "spring_stream"), problem, hope)
    yield from _outings(case)


def _outings(case: CaseKeys) -> Iterator[Finding]:
    """A leg that follows one that is not there, comes after it or is made less often."""
    for number, leg in enumerate(case.legs):
        if not leg.follows:
            continue
        place: Place = ("legs", number, "follows")
        names = [other.name for other in case.legs[:number]]
        if leg.follows not in names:
            hope = "expected the name of an earlier leg"
            shown = ", ".join(name for name in names if name)
            yield Finding(place, f"is `{leg.follows}`", f"{hope}: {shown}" if shown else hope)
            continue
        if names.count(leg.follows) > 1:
            hope = "expected a name that one earlier leg alone has"
            yield Finding(place, f"is `{leg.follows}`, the name of several legs", hope)
        first = case.legs[names.index(leg.follows)]
        if si(leg.times_per_year) > si(first.times_per_year):
            assert leg.times_per_year is not None
            assert first.times_per_year is not None
            problem = f"is made {leg.times_per_year.shown} times a year after that leg"
            hope = f"expected at most the {first.times_per_year.shown} of `{leg.follows}`"
            yield Finding(place, problem, hope)


def _berth(case: CaseKeys) -> Iterator[Finding]:
    """A breaker of which nobody knows the power."""
    berth = case.berth
    if berth.shore_power and berth.breaker and "voltage" not in berth.model_fields_set:
        hope = f"expected the voltage behind the breaker of {berth.breaker.shown}, such as `230 V`"
        yield Finding(("berth", "voltage"), "is missing", hope)


def _propellers(case: CaseKeys) -> Iterator[Finding]:
    """A propeller larger than the aperture it turns in."""
    yield from _aperture(case.propeller, case.propeller, ("propeller",))
    for number, option in enumerate(case.options):
        if "propeller" in option.model_fields_set:
            place = ("options", number, "propeller")
            yield from _aperture(option.propeller, case.propeller, place)


def _aperture(screw: PropellerKeys, boat: PropellerKeys, place: Place) -> Iterator[Finding]:
    diameter, room = screw.diameter, screw.aperture_height or boat.aperture_height
    if diameter and room and si(diameter) >= si(room):
        problem = f"is {diameter.shown}, no smaller than its aperture of {room.shown}"
        yield Finding((*place, "diameter"), problem, "expected less than aperture_height")


def _depths(case: CaseKeys) -> Iterator[Finding]:
    """A leg on which she is aground, or a channel whose depth nobody knows."""
    draught, beam = case.boat.hull.draught, case.boat.hull.beam
    for number, leg in enumerate(case.legs):
        place: Place = ("legs", number)
        if leg.depth and draught and si(leg.depth) <= si(draught):
            problem = f"is {leg.depth.shown}, and she draws {draught.shown}"
            yield Finding((*place, "depth"), problem, "expected more than boat.hull.draught")
        if leg.width and beam and si(leg.width) <= si(beam):
            problem = f"is {leg.width.shown}, and she is {beam.shown} wide"
            yield Finding((*place, "width"), problem, "expected more than boat.hull.beam")
        if leg.width and "depth" not in leg.model_fields_set:
            hope = "expected the depth that goes with the width"
            yield Finding((*place, "depth"), "is missing", hope)


def _currencies(case: CaseKeys) -> Iterator[Finding]:
    """An amount in another currency than that of the study."""
    if not case.study.currency:
        return
    for place, given in amounts(case):
        if KINDS[given.kind].money and given.unit.split("/")[0] != case.study.currency:
            hope = f"expected the study's currency, {case.study.currency}"
            yield Finding(place, f"is `{given.shown}`", hope)


def _option_ids(case: CaseKeys) -> Iterator[Finding]:
    """Two options of one id."""
    seen: dict[str, int] = {}
    for number, option in enumerate(case.options):
        if option.id and option.id in seen:
            problem = f"is `{option.id}`, the id of options[{seen[option.id]}]"
            yield Finding(("options", number, "id"), problem, "expected an id of its own")
        elif option.id:
            seen[option.id] = number


def _option(option: OptionKeys, place: Place) -> Iterator[Finding]:
    """What one option says against its own kind."""
    yield from _parts(option, place)
    if option.kind == "battery" and option.bank.model_fields_set:
        yield from (Finding(*fault) for fault in bank_faults(option.bank, (*place, "bank")))
    motor = option.motor
    if motor.peak_power and si(motor.peak_power) < si(motor.continuous_power):
        problem = f"is {motor.peak_power.shown}, below continuous_power"
        yield Finding((*place, "motor", "peak_power"), problem, "expected at least as much")
    for number, cost in enumerate(option.costs):
        spot = (*place, "costs", number)
        if cost.part in CREDITS and si(cost.amount) > 0.0 and cost.amount:
            hope = f"expected -{cost.amount.shown}: money that comes in is negative"
            problem = f"is {cost.amount.shown}, a {cost.part} without its sign"
            yield Finding((*spot, "amount"), problem, hope)
        if cost.when == "once" and "year" not in cost.model_fields_set:
            yield Finding((*spot, "year"), "is missing", "expected the year of a payment made once")
        if cost.when in ("first", "yearly") and cost.year:
            hope = "expected none, or `when: once`"
            yield Finding((*spot, "year"), f"is given for a payment made {cost.when}", hope)


def _parts(option: OptionKeys, place: Place) -> Iterator[Finding]:
    """Parts that a kind lacks, or has no use for."""
    said = option.model_fields_set
    wanted = {"battery": ("motor", "bank"), "new diesel": ("engine",)}.get(option.kind or "", ())
    for part in ("motor", "bank", "engine"):
        if part in wanted and part not in said:
            hope = f"expected a section {part} for an option of kind {option.kind}"
            yield Finding((*place, part), "is missing", hope)
        elif part in said and part not in wanted and option.kind:
            hope = f"expected none for an option of kind {option.kind}"
            yield Finding((*place, part), "is given", hope)
