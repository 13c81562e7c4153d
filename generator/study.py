"""The whole study on one screen: for each option the same path, none special."""

from __future__ import annotations

from dataclasses import dataclass, replace

from generator.analyses.findings import Findings
from generator.analyses.handling.confined import confined_legs
from generator.analyses.handling.cruising_range import cruising_range
from generator.analyses.handling.docking import docking
from generator.analyses.handling.headwind import asked_winds, headwind
from generator.analyses.handling.holding import holding
from generator.analyses.handling.low_speed import low_speed
from generator.analyses.handling.stream import stream
from generator.analyses.handling.under_sail import UnderSail, under_sail
from generator.analyses.handling.yardstick import Yardstick, yardstick
from generator.analyses.money.cost import cost
from generator.analyses.money.cost_ledger import ledger
from generator.analyses.money.emissions import emissions
from generator.analyses.money.renewal import with_renewal
from generator.analyses.money.savings import fair_baseline, savings
from generator.analyses.money.worth import worth
from generator.analyses.motion.hull import hull_cautions, vessel
from generator.analyses.motion.key_figures import key_figures
from generator.analyses.motion.match import match
from generator.analyses.motion.plant import store
from generator.analyses.motion.power import WINDS, power
from generator.analyses.motion.rules_of_thumb import rules_of_thumb
from generator.analyses.motion.sea_trial.model import trial_option
from generator.analyses.motion.second_opinions import SecondOpinions, second_opinions
from generator.analyses.motion.service_factor import ServiceFactor, service_factor
from generator.analyses.motion.trial import TrialResult, read_trial
from generator.analyses.store.ageing import ageing
from generator.analyses.store.bank import bank_result
from generator.analyses.store.bank_size import by_size
from generator.analyses.store.chemistries import chemistries
from generator.analyses.store.cold_months import with_coldest
from generator.analyses.store.duty import duty
from generator.analyses.store.losses import losses
from generator.analyses.store.one_fault import one_fault
from generator.analyses.store.outfit import Outfit
from generator.analyses.store.reserve import reserve
from generator.analyses.use.berth import berthed
from generator.analyses.use.coverage import coverage
from generator.analyses.use.energy_walk import energy_walk
from generator.analyses.use.leg_energy import leg_strips
from generator.analyses.use.leg_help import leg_help
from generator.analyses.use.legs import Legs, passages, with_slow
from generator.analyses.use.ordinary_weather import with_ordinary_wind
from generator.analyses.use.outings import Outings, outings
from generator.analyses.use.sizing import Wanted, sizing
from generator.analyses.use.slow_legs import slow_legs
from generator.analyses.use.use import Use
from generator.analyses.verdict.cautions import CautionItem, cautions
from generator.analyses.verdict.criteria.catalogue import criteria
from generator.analyses.verdict.failures import Failure, failures
from generator.analyses.verdict.papers import Papers, papers
from generator.analyses.verdict.verdict import Verdict, verdict
from generator.analyses.weight.placement import place as placed
from generator.analyses.weight.weight import weigh
from generator.analyses.wiring.install import installation
from generator.analyses.year.house import HouseLoads, house
from generator.analyses.year.option_year import option_year
from generator.analyses.year.panel_yield import panel_yield
from generator.analyses.year.sun_carries import SunCarries, reference_panels, sun_carries
from generator.analyses.year.sun_only import sun_only
from generator.analyses.year.weather import Sky, weather
from generator.analyses.year.year import Year, years
from generator.case.case import Case
from generator.case.option import Option
from generator.draws import Draws, drawn
from generator.turning import break_even_of

HOUR = 3600.0
CALM = {"calm": 0.0}
DIESELS = ("keep", "new diesel")
MUST, COVERAGE, RECHARGE, MOORING = 1, 2, 11, 12  # ids of the criteria of use


@dataclass(frozen=True)
class OptionStudy:
    """What was found of one option, and the word on it."""

    findings: Findings
    verdict: Verdict
    failures: tuple[Failure, ...]


@dataclass(frozen=True)
class Study:
    """The answers for every option of a case."""

    draws: Draws
    trial: TrialResult
    options: tuple[OptionStudy, ...]
    cautions: tuple[CautionItem, ...]
    service: ServiceFactor
    opinions: SecondOpinions
    loads: HouseLoads
    sky: Sky | None  # none where the case tells no position
    times: Outings | None
    papers: Papers
    as_she_is: int  # place of the option whose figures stand for the boat herself


@dataclass(frozen=True)
class Ground:
    """What all options stand on: the drawn case, her trial, and the engine that is in her.

    ``age`` in years is that of the bank in place of the one that the word is for.
    """

    case: Case
    trial: TrialResult
    yard: Yardstick
    age: float | None = None


def stand(case: Case, draws: Draws) -> Ground:
    """Draw the case, read the trial and measure the engine that is in her."""
    moved = with_coldest(with_ordinary_wind(drawn(case, draws)))
    tried = trial_option(moved)
    aboard = 0.0 if tried is None else weigh(moved, tried).net
    screw = moved.propeller if tried is None else tried.propeller
    trial = read_trial(moved, vessel(moved.boat, moved.waters, aboard, screw))
    hull = vessel(moved.boat, moved.waters, 0.0, moved.propeller)
    return Ground(moved, trial, yardstick(moved, hull, trial.scale))


def run(case: Case, draws: Draws, year: bool = True) -> Study:
    """Weight, hull and power, bank, legs, money, verdict: for each option in turn.

    Without the ``year`` nothing is followed hour by hour; the position still tells wind and cold.
    """
    ground = stand(case, draws)
    moved, trial = ground.case, ground.trial
    alone = tuple(technical(ground, option, place) for place, option in enumerate(moved.options))
    loads, sky = house(moved), weather(moved) if year and moved.legs else None
    times = None if sky is None else outings(moved, sky)
    lived = alone if sky is None or times is None else _year(moved, alone, loads, sky, times)
    found = tuple(_against(case, moved, item, lived) for item in lived)
    options = tuple(OptionStudy(item, verdict(item), failures(item)) for item in found)
    own = _as_she_is(case)
    return Study(
        draws=draws,
        trial=trial,
        options=options,
        cautions=cautions(found, found[own]),
        service=service_factor(moved, found[own].key),
        opinions=second_opinions(case, vessel(case.boat, case.waters, 0.0, case.propeller)),
        loads=loads,
        sky=sky,
        times=times,
        papers=papers(found),
        as_she_is=own,
    )


def _as_she_is(case: Case) -> int:
    """The present diesel where it is an option, else a new one, else the first."""
    kinds = [option.kind for option in case.options]
    return next((kinds.index(kind) for kind in DIESELS if kind in kinds), 0)


def _year(
    case: Case, alone: tuple[Findings, ...], loads: HouseLoads, sky: Sky, times: Outings
) -> tuple[Findings, ...]:
    """All options through all years of weather at once."""
    panels = [panel_yield(item.option, sky) for item in alone]
    asked = [
        option_year(item.outfit, item.place, _sail(item), given, loads, sky, times)
        for item, given in zip(alone, panels, strict=True)
    ]
    ran = {year.place: year for year in years(tuple(one for one in asked if one), sky, times)}
    found = []
    for item, given, one in zip(alone, panels, asked, strict=True):
        year = ran.get(item.place)
        sun, carried = None, None
        if one is not None and year is not None:
            carried = _carried(item, year, one.efficiency, sky)
        if given is not None and given.rated and one is not None and year is not None:
            sun = sun_only(item.power, given, loads, year, one.efficiency)
        found.append(replace(item, year=year, sun=sun, panels=given, carried=carried))
    return tuple(found)


def lived(item: Findings, sky: Sky) -> Findings:
    """One option through the years of weather, by itself."""
    times = outings(item.case, sky)
    return item if times is None else _year(item.case, (item,), house(item.case), sky, times)[0]


def _sail(item: Findings) -> UnderSail:
    """What the screw gives and takes under sail; a brief look has left it out."""
    if item.sail is not None:
        return item.sail
    return under_sail(item.case, item.option, item.power, item.trial.scale)


def _carried(item: Findings, year: Year, efficiency: float, sky: Sky) -> SunCarries | None:
    """Her weeks of use by her own panels, or by reference ones where she has none."""
    go = next(row.go for row in criteria() if row.id == MOORING)
    given = panel_yield(reference_panels(item.option), sky)
    assert given is not None
    return sun_carries(item.option, year, given, efficiency, item.legs, go)


def technical(ground: Ground, option: Option, place: int, brief: bool = False) -> Findings:
    """All that is found of one option by itself, without the year and the other options.

    ``brief``: only what the rows of the verdict stand on, for a word that is asked many times.
    """
    case, trial, yard = ground.case, ground.trial, ground.yard
    weight = weigh(case, option)
    hull = vessel(case.boat, case.waters, weight.net, option.propeller)
    aged = ageing(case, option, hull, trial.scale, ground.age)
    option = with_renewal(option, aged)
    held = store(case, option, None if aged is None else (aged.new, aged.aged, aged.last))
    winds = CALM if brief else WINDS
    found = power(case, option, hull, trial.scale, held.aged, winds)
    docked = docking(case, option, found, trial.scale)
    kept = reserve(case, option, found, trial.scale, held)
    outfit = Outfit(case, option, trial.scale, found, held, kept)
    legs = passages(outfit)
    bank = bank_result(outfit, weight, aged)
    worked = duty(outfit)
    made = installation(case, option, place, bank, worked)
    key = key_figures(case, option, found, legs)
    use = _brief_use(outfit, legs) if brief else _use(outfit, legs, key.worst_leg)
    lines = ledger(case, option)
    against = headwind(case, option, found, trial.scale, asked_winds(case, brief))
    return Findings(
        case=case,
        option=option,
        place=place,
        trial=trial,
        weight=weight,
        placement=placed(case, option, weight),
        power=found,
        headwind=against,
        yard=yard,
        holding=holding(outfit, against, yard),
        docking=docked,
        stream=stream(case, option, found, trial.scale),
        match=match(case, option, found, trial.scale, docked, brief),
        store=held,
        reserve=kept,
        ranges=() if brief else cruising_range(outfit),
        bank=bank,
        installation=made,
        legs=legs if brief else with_slow(legs, use.slow),
        use=use,
        low_speed=None if brief else low_speed(case, option, found),
        key=key,
        sail=None if brief else under_sail(case, option, found, trial.scale),
        rules=rules_of_thumb(case, found, key.cruise_shaft_power),
        duty=worked,
        fault=one_fault(outfit, bank, made),
        losses=None if brief else losses(outfit),
        chemistries=None if brief else chemistries(outfit, bank, legs),
        confined=confined_legs(case, found.vessel),
        ledger=lines,
        cost=cost(case, option, legs, lines),
        savings=None,
        emissions=None,
        break_even=None,
        range_cautions=hull_cautions(found.vessel),
    )


def _against(case: Case, moved: Case, own: Findings, every: tuple[Findings, ...]) -> Findings:
    """One option held against both diesels, in money and in carbon."""
    keep, new = (
        next((found for found in every if found.option.kind == kind), None)
        for kind in ("keep", "new diesel")
    )
    fair = new if fair_baseline(case) == "new diesel" else keep
    held = savings(
        moved, own.option, own.cost, keep.cost if keep else None, new.cost if new else None
    )
    return replace(
        own,
        savings=held,
        worth=worth(moved, own.option, own.cost, held, fair.cost if fair else None),
        emissions=emissions(
            moved, own.option, own.cost, (fair.option, fair.cost) if fair else None
        ),
        break_even=break_even_of(case, own, fair)
        if fair and own.bank and own.cost.priced and fair.cost.priced
        else None,
    )


def _brief_use(outfit: Outfit, legs: Legs) -> Use:
    """What the rows of the verdict read of the use: passages inside range, and the berth."""
    hours = next(row for row in criteria() if row.id == RECHARGE)
    return Use(
        slow=(),
        sizes=None,
        coverage=coverage(outfit, legs),
        help=(),
        walk=None,
        berth=berthed(outfit, hours.go * HOUR),
        sizing=None,
    )


def _use(outfit: Outfit, legs: Legs, worst: int | None) -> Use:
    """The owner's legs as slowly as pays, what would mend them, the berth, the smallest bank."""
    must, share, hours = (
        next(row for row in criteria() if row.id == number) for number in (MUST, COVERAGE, RECHARGE)
    )
    case, option = outfit.case, outfit.option
    held = outfit.store
    strips = leg_strips(outfit)
    slow, sizes = slow_legs(strips, legs), by_size(case, option, held)
    leg = None if worst is None else legs.results[worst]
    electric = option.bank is not None and bool(legs.results)
    wanted = Wanted(must.go, share.go)
    return Use(
        slow=slow,
        sizes=sizes,
        coverage=coverage(outfit, legs),
        help=leg_help(strips, sizes, legs),
        walk=None if leg is None or worst is None else energy_walk(outfit, leg, worst),
        berth=berthed(outfit, hours.go * HOUR),
        sizing=sizing(strips, sizes, legs, wanted) if electric else None,
    )
