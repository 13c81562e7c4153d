"""What is found of one option by itself, without the year and the other options?"""

from __future__ import annotations

from dataclasses import dataclass

from generator.analyses.findings import Findings
from generator.analyses.handling.confined import confined_legs
from generator.analyses.handling.cruising_range import cruising_range
from generator.analyses.handling.docking import docking
from generator.analyses.handling.headwind import asked_winds, headwind
from generator.analyses.handling.holding import holding
from generator.analyses.handling.low_speed import low_speed
from generator.analyses.handling.range_bars import range_bars
from generator.analyses.handling.stream import stream
from generator.analyses.handling.under_sail import under_sail
from generator.analyses.handling.yardstick import Yardstick
from generator.analyses.money.cost import cost
from generator.analyses.money.cost_ledger import ledger
from generator.analyses.money.renewal import with_renewal
from generator.analyses.motion.hull import hull_cautions, vessel
from generator.analyses.motion.key_figures import key_figures
from generator.analyses.motion.match import match
from generator.analyses.motion.plant import store
from generator.analyses.motion.power import WINDS, power
from generator.analyses.motion.rules_of_thumb import rules_of_thumb
from generator.analyses.motion.trial import TrialResult
from generator.analyses.store.ageing import ageing
from generator.analyses.store.bank import bank_result
from generator.analyses.store.bank_size import by_size
from generator.analyses.store.chemistries import chemistries
from generator.analyses.store.duty import duty
from generator.analyses.store.floor import with_floor
from generator.analyses.store.losses import losses
from generator.analyses.store.one_fault import one_fault
from generator.analyses.store.outfit import Outfit
from generator.analyses.store.reserve import Outline, reserve, reserve_power
from generator.analyses.use.berth import berthed
from generator.analyses.use.coverage import coverage
from generator.analyses.use.energy_walk import energy_walk
from generator.analyses.use.leg_energy import leg_strips
from generator.analyses.use.leg_help import leg_help
from generator.analyses.use.legs import Legs, passages, with_slow
from generator.analyses.use.sizing import Wanted, sizing
from generator.analyses.use.slow_legs import slow_legs
from generator.analyses.use.use import Parts, Use, use_of
from generator.analyses.verdict.criteria.catalogue import criteria
from generator.analyses.weight.placement import battery_space
from generator.analyses.weight.placement import place as placed
from generator.analyses.weight.placement_result import placement_result
from generator.analyses.weight.weight import weigh
from generator.analyses.weight.weight_result import weight_result
from generator.analyses.wiring.install import Aboard, installation
from generator.case.case import Case
from generator.case.option import Option

HOUR = 3600.0
CALM = {"calm": 0.0}
MUST, COVERAGE, RECHARGE = 1, 2, 11  # ids of the criteria of use


@dataclass(frozen=True)
class Ground:
    """What all options stand on: the drawn case, her trial, and the engine that is in her.

    ``age`` in years is that of the bank in place of the one that the word is for.
    """

    case: Case
    trial: TrialResult
    yard: Yardstick
    age: float | None = None


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
    outline = Outline(case, option, found, trial.scale, held)
    held = with_floor(outline, reserve_power(outline))
    docked = docking(case, option, found, trial.scale)
    kept = reserve(case, option, found, trial.scale, held)
    outfit = Outfit(case, option, trial.scale, found, held, kept)
    legs = passages(outfit)
    bank = bank_result(outfit, weight, aged)
    worked = duty(outfit)
    berths = placed(case, option, weight)
    aboard = Aboard(battery_space(weight, berths), hull.mast_height)
    made = installation(case, option, place, bank, worked, aboard)
    key = key_figures(case, option, found, legs)
    use = _brief_use(outfit, legs) if brief else _use(outfit, legs, key.worst_leg)
    lines = ledger(case, option)
    ranges = () if brief else cruising_range(outfit)
    against = headwind(case, option, found, trial.scale, asked_winds(case, brief))
    return Findings(
        case=case,
        option=option,
        place=place,
        trial=trial,
        weight=weight,
        placement=berths,
        power=found,
        headwind=against,
        yard=yard,
        holding=holding(outfit, against, yard),
        docking=docked,
        stream=stream(case, option, found, trial.scale),
        match=match(case, option, found, trial.scale, docked, brief),
        store=held,
        reserve=kept,
        ranges=ranges,
        bars=range_bars(outfit, ranges),
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
        weighed=None if brief else weight_result(case, weight),
        placed=None if brief else placement_result(berths, weight),
    )


def _brief_use(outfit: Outfit, legs: Legs) -> Use:
    """What the rows of the verdict read of the use: passages inside range, and the berth."""
    hours = next(row for row in criteria() if row.id == RECHARGE)
    return use_of(Parts(coverage(outfit, legs), berthed(outfit, hours.go * HOUR)))


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
    return use_of(
        Parts(
            coverage=coverage(outfit, legs),
            berth=berthed(outfit, hours.go * HOUR),
            slow=slow,
            sizes=sizes,
            failing=leg_help(strips, sizes, legs),
            walk=None if leg is None or worst is None else energy_walk(outfit, leg, worst),
            sizing=sizing(strips, sizes, legs, wanted) if electric else None,
        )
    )
