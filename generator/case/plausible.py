"""Which values of a case file can be, but are seldom right?"""

from __future__ import annotations

from collections.abc import Iterator

from generator.case.boat_keys import BOTTOMS
from generator.case.check import Finding, amounts, si
from generator.case.check_bank import bank_doubts
from generator.case.circumstances import (
    boat_sizes,
    boat_words,
    motor_sizes,
    motor_words,
    propeller_words,
)
from generator.case.inherit import own_propeller
from generator.case.leaf import Given
from generator.case.limits import find_unusual
from generator.case.plant_keys import TrialRowKeys
from generator.case.plausible_masses import find_mass_doubts
from generator.case.plausible_use import find_use_doubts
from generator.case.prices import CREDITS, part_by_name, sources_without
from generator.case.proportions import find_odd_proportions
from generator.case.register import find_default, sized
from generator.case.said import Place
from generator.case.schema import CaseKeys, OptionKeys
from generator.units.grammar import from_si, to_si

# Limits of what is met in practice; they warn and change nothing.
SPEED_OF_HULL = 1.34  # kn per square root of waterline in feet: the rule of thumb of the trade
PITCH_RATIO = (0.5, 1.4)  # of the published series
POWER_PER_MASS = (0.8, 8.0)  # W/kg of an auxiliary
LAST_FROUDE, GRAVITY = 0.45, 9.81  # end of the hull form for hulls that are not light
TRIAL_WIND = 12.0  # kn, above which a trial is stopped
BANK_ENERGY = (1.0, 200.0)  # kWh


def find_doubts(case: CaseKeys) -> Iterator[Finding]:
    """All warnings; of the general limits only where nothing nearer is said of the number."""
    told: set[Place] = set()
    for find in (_nearer_doubts, find_odd_proportions, find_unusual):
        found = [finding for finding in find(case) if finding.place not in told]
        told |= {finding.place for finding in found}
        yield from found


def _nearer_doubts(case: CaseKeys) -> Iterator[Finding]:
    """What is doubted for this boat, this bank, these waters."""
    yield from _outside_register(case)
    yield from _boat(case)
    yield from _speeds(case)
    yield from _plant(case)
    yield from _trial(case)
    yield from _foreign_prices(case)
    yield from _conversion(case)
    yield from find_use_doubts(case)
    if not any(option.kind == "keep" for option in case.options):
        problem = "has no option of kind keep"
        yield Finding(("options",), problem, "expected one, for the others to be held against")
    for number, option in enumerate(case.options):
        yield from _option(case, option, ("options", number))


def default_prices(case: CaseKeys) -> list[str]:
    """Prices that the register must fill in euro for a case in another currency."""
    if case.study.currency == "EUR":
        return []
    names = (
        "diesel",
        "electricity",
        "diesel_service",
        "electric_service",
        "assessment",
        "overhaul",
    )
    return [name for name in names if getattr(case.prices, name) is None]


def _outside_register(case: CaseKeys) -> Iterator[Finding]:
    """A given value outside the range that its default has."""
    for place, given in amounts(case):
        if place[-1] == "fetch":
            continue  # judged by the class of the waters
        sizes = boat_sizes(case.boat)
        around = list(boat_words(case.boat)) + list(propeller_words(case, case.propeller))
        if place[0] == "options" and isinstance(place[1], int):
            option = case.options[place[1]]
            sizes = motor_sizes(option.motor)
            screw = propeller_words(case, own_propeller(case, option))
            around = [option.bank.chemistry or "", *screw, *motor_words(option.motor)]
            if "circuits" in place and isinstance(place[-2], int):
                around = [option.installation.circuits[place[-2]].name or ""]
        row = find_default(".".join(part for part in place if isinstance(part, str)), around)
        if row is None or row.low == row.high or row.unit.startswith("EUR"):
            continue
        row = sized(row, sizes)
        slack = 1e-9 * abs(row.high)
        if not row.low - slack <= given.value <= row.high + slack:
            hope = f"expected {row.shown_low} to {row.shown_high}"
            yield Finding(place, f"is {given.shown}", f"{hope}: {row.meaning}")


def _boat(case: CaseKeys) -> Iterator[Finding]:
    """A boat of another size than the study is made for."""
    hull = case.boat.hull
    if case.boat.bottom and case.boat.bottom_share:
        problem = f"is {case.boat.bottom_share.shown}, and not used beside bottom"
        yield Finding(("boat", "bottom_share"), problem, "expected one of the two")
    if case.boat.bottom is None and case.boat.bottom_share is None:
        hope = f"expected one of {', '.join(BOTTOMS)}"
        yield Finding(("boat", "bottom"), "is missing, so clean to slimed is drawn", hope)
    power = si(case.engine.rated_power) / si(hull.displacement)
    if case.engine.rated_power and (power < POWER_PER_MASS[0] or power > POWER_PER_MASS[1]):
        hope = f"expected {POWER_PER_MASS[0]:g} to {POWER_PER_MASS[1]:g} kW for each tonne of boat"
        yield Finding(("engine", "rated_power"), f"is {case.engine.rated_power.shown}", hope)


def _speeds(case: CaseKeys) -> Iterator[Finding]:
    """Speeds that a displacement hull of this length does not reach, or that make no sense."""
    waterline = case.boat.hull.waterline_length
    limit = SPEED_OF_HULL * float(from_si(si(waterline), "ft")) ** 0.5
    cruise: tuple[Place, Given | None] = (("planning", "cruise_speed"), case.planning.cruise_speed)
    legs = [(("legs", number, "speed"), leg.speed) for number, leg in enumerate(case.legs)]
    for place, speed in (cruise, *legs):
        if speed and speed.value > float(to_si(limit, "kn")):
            yield Finding(
                place, f"is {speed.shown}", f"expected at most hull speed, {limit:.1f} kn"
            )
    for number, leg in enumerate(case.legs):
        if leg.foul_stream and si(leg.foul_stream) >= si(leg.speed):
            problem = f"is {leg.foul_stream.shown}, as fast as the boat"
            yield Finding(("legs", number, "foul_stream"), problem, "expected less than speed")
        if leg.exposed_speed and si(leg.exposed_speed) > si(leg.speed):
            problem = f"is {leg.exposed_speed.shown}, faster than in a calm"
            yield Finding(("legs", number, "exposed_speed"), problem, "expected at most speed")


def _plant(case: CaseKeys) -> Iterator[Finding]:
    """A propeller of unusual pitch, a plug of unknown power."""
    screw = case.propeller
    yield from _propeller(screw.diameter, screw.pitch, ("propeller",))
    if case.berth.shore_power and not case.berth.breaker:
        hope = "expected breaker and voltage, to know how fast she charges"
        yield Finding(("berth", "breaker"), "is missing where there is shore power", hope)


def _propeller(diameter: Given | None, pitch: Given | None, place: Place) -> Iterator[Finding]:
    ratio = si(pitch) / si(diameter)
    if pitch and (ratio < PITCH_RATIO[0] or ratio > PITCH_RATIO[1]):
        hope = (
            f"expected {PITCH_RATIO[0]} to {PITCH_RATIO[1]} of the diameter, where the published "
            "series holds"
        )
        yield Finding((*place, "pitch"), f"is {pitch.shown}", hope)


def _trial(case: CaseKeys) -> Iterator[Finding]:
    """Rows of the trial that say little."""
    rows = sorted(enumerate(case.trial.rows), key=lambda pair: si(pair[1].engine_speed))
    last = 0.0
    for number, row in rows:
        place: Place = ("trial", "rows", number)
        if row.wind and row.wind.value > float(to_si(TRIAL_WIND, "kn")):
            hope = f"expected at most {TRIAL_WIND:g} kn"
            yield Finding((*place, "wind"), f"is {row.wind.shown}", hope)
        if row.speed_out and "speed_back" not in row.model_fields_set:
            problem = "is missing, so stream and wind stay in the reading"
            yield Finding((*place, "speed_back"), problem, "expected a run on the opposite course")
        yield from _too_fast(case, row, place)
        both = [speed.value for speed in (row.speed_out, row.speed_back) if speed]
        mean = sum(both) / len(both) if both else last
        if row.speed_out and mean < last and not row.battery_power:
            problem = f"is {row.speed_out.shown}, slower than at less engine speed"
            yield Finding((*place, "speed_out"), problem, "expected speeds that rise")
        if not row.battery_power:  # turns of a motor are no measure for those of the engine
            last = max(last, mean)


def _too_fast(case: CaseKeys, row: TrialRowKeys, place: Place) -> Iterator[Finding]:
    """A speed above the end of the resistance curve: the study refuses such a row."""
    waterline = case.boat.hull.waterline_length
    slower = min((speed.value for speed in (row.speed_out, row.speed_back) if speed), default=0.0)
    if waterline and slower > LAST_FROUDE * (GRAVITY * waterline.value) ** 0.5:
        most = from_si(LAST_FROUDE * (GRAVITY * waterline.value) ** 0.5, "kn")
        shown = row.speed_out.shown if row.speed_out else ""
        hope = f"expected at most {most:.1f} kn, where the curve of the hull form ends"
        yield Finding((*place, "speed_out"), f"is {shown}", hope)


def _conversion(case: CaseKeys) -> Iterator[Finding]:
    """A dying engine that is kept without the price of its overhaul; a market without a date."""
    kinds = {option.kind for option in case.options}
    for number, option in enumerate(case.options):
        if option.kind == "keep" and case.engine.condition == "dying":
            yield from _overhaul(case, option, ("options", number, "costs"))
    bank = "battery" in kinds
    dated = case.boat.import_date or case.boat.year_on_market
    if bank and case.boat.market in ("EEA", "GB", "NI") and not dated:
        hope = "expected the year, or import_date: an assessment is presumed to be owed without"
        yield Finding(("boat", "year_on_market"), "is missing", hope)


def _overhaul(case: CaseKeys, option: OptionKeys, place: Place) -> Iterator[Finding]:
    """Money is held against keeping her with what she needs: it has to have a price."""
    parts = [cost.part or part_by_name(cost.name or "") for cost in option.costs]
    if "overhaul" not in parts and case.prices.overhaul is None:
        problem = "gives no price of the overhaul that a dying engine needs"
        hope = "expected a line of part overhaul, or prices.overhaul: nothing is held against it"
        yield Finding(place, problem, hope)


def _foreign_prices(case: CaseKeys) -> Iterator[Finding]:
    """Euro figures taken as they are for another currency."""
    names = default_prices(case)
    if names and case.study.currency:
        problem = f"lacks {', '.join(names)}: EUR figures are taken as {case.study.currency}"
        yield Finding(("prices",), problem, "expected your own prices")


def _option(case: CaseKeys, option: OptionKeys, place: Place) -> Iterator[Finding]:
    """A bank, a propeller or a mass of unusual size."""
    bank, screw = option.bank, own_propeller(case, option)
    yield from (Finding(*fault) for fault in bank_doubts(bank, (*place, "bank")))
    energy = float(from_si(si(bank.nominal_voltage) * si(bank.charge), "kWh"))
    if bank.charge and (energy < BANK_ENERGY[0] or energy > BANK_ENERGY[1]):
        hope = f"expected {BANK_ENERGY[0]:g} to {BANK_ENERGY[1]:g} kWh"
        yield Finding((*place, "bank", "charge"), f"makes a bank of {energy:.3g} kWh", hope)
    if "propeller" in option.model_fields_set:
        yield from _propeller(screw.diameter, screw.pitch, (*place, "propeller"))
    for name, ledger in (("removed", option.removed), ("added", option.added)):
        total = sum(item.mass.value for item in ledger if item.mass)
        if total > 0.3 * si(case.boat.hull.displacement):
            problem = f"sums to {total:.0f} kg, more than 30 % of her displacement"
            yield Finding((*place, name), problem, "expected less")
    yield from _sources(option, place)
    if option.kind == "battery" and option.motor.cooling is None and not option.motor.heat_share:
        hope = "expected air or water: by air all its losses warm the engine space, and cost power"
        yield Finding((*place, "motor", "cooling"), "is missing, so air is taken", hope)
    yield from find_mass_doubts(case, option, place)
    if option.kind != "keep" and not any(cost.when == "first" for cost in option.costs):
        problem = "gives no first price, so there is no word on its money"
        yield Finding((*place, "costs"), problem, "expected a line with when: first")
    for number, cost in enumerate(option.costs):
        named = cost.part is None and part_by_name(cost.name or "") in CREDITS
        if named and cost.amount and cost.amount.value > 0.0:
            problem = f"is {cost.amount.shown}, though `{cost.name}` reads like money that comes in"
            spot = (*place, "costs", number, "amount")
            yield Finding(spot, problem, f"expected -{cost.amount.shown}, or a `part`")
        horizon = si(case.prices.horizon)
        if cost.year and cost.year.value > (horizon if case.prices.horizon else 50.0):
            problem = f"is year {cost.year.shown}, after prices.horizon"
            yield Finding((*place, "costs", number, "year"), problem, "expected a year that counts")


def _sources(option: OptionKeys, place: Place) -> Iterator[Finding]:
    """Sources of energy that the year counts and no line of a ledger prices or weighs."""
    if option.kind != "battery":
        return
    keys = option.supply
    sources = ["panels"] if keys.panels else []
    sources += ["genset"] if "genset" in keys.model_fields_set else []
    sources += ["wind generator"] if "wind" in keys.model_fields_set else []
    ledgers = {
        "costs": [item.name or "" for item in option.costs],
        "added": [f"{item.name or ''} {item.part or ''}" for item in option.added],
    }
    without = {name: sources_without(sources, lines) for name, lines in ledgers.items() if lines}
    for source in sources:
        if lists := [name for name, lacks in without.items() if source in lacks]:
            problem = f"counts {source}, but no line of {' or '.join(lists)} names them"
            hope = "expected a line, unless they are aboard already"
            yield Finding((*place, "supply"), problem, hope)
