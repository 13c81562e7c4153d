"""How does an option stand on each criterion?"""

from __future__ import annotations

from collections.abc import Callable

from generator.analyses.findings import Findings
from generator.analyses.verdict.criteria import (
    after_one_fault,
    battery_currents,
    boat_value,
    calm_speed,
    charge_ceiling,
    cold,
    compartment,
    continuous_power,
    conversion,
    design_area,
    evidence,
    foul_gate,
    healthy_engine,
    holding_off,
    hours_of_headwind,
    house_supply,
    insurer,
    legs_covered,
    mass_change,
    mooring,
    must_make_leg,
    payback,
    power_per_tonne,
    propeller_match,
    recharge,
    reserve_kept,
    stopping,
    trim_and_list,
)
from generator.analyses.verdict.criteria.catalogue import criteria
from generator.analyses.verdict.criteria.criterion import Criterion, Judgement
from generator.analyses.verdict.criteria.diesels import of_a_diesel

JUDGES: dict[int, Callable[[Criterion, Findings], Judgement]] = {
    1: must_make_leg.judge,
    2: legs_covered.judge,
    3: reserve_kept.judge,
    4: holding_off.judge,
    5: continuous_power.judge,
    6: hours_of_headwind.judge,
    7: calm_speed.judge,
    8: power_per_tonne.judge,
    9: foul_gate.judge,
    10: after_one_fault.judge,
    11: recharge.judge,
    12: mooring.judge,
    13: house_supply.judge,
    14: battery_currents.judge,
    15: cold.judge,
    16: mass_change.judge,
    17: trim_and_list.judge,
    18: design_area.judge,
    19: compartment.judge,
    20: insurer.judge,
    21: conversion.judge,
    22: charge_ceiling.judge,
    23: propeller_match.judge,
    24: stopping.judge,
    25: payback.judge,
    26: boat_value.judge,
    27: healthy_engine.judge,
    28: evidence.judge,
}


def evaluate(found: Findings) -> tuple[Judgement, ...]:
    """Judge every criterion."""
    return tuple(_one(criterion, found) for criterion in criteria())


def _one(criterion: Criterion, found: Findings) -> Judgement:
    row = JUDGES[criterion.id](criterion, found)
    return row if found.option.bank is not None else of_a_diesel(row, found)
