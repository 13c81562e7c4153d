"""Which small parts might mend a row: reduction, cooling, charger, panels, works on the space?"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, scalar
from generator.answer.defaults import refilled
from generator.answer.desk import Look
from generator.answer.grow import TOO_NEAR
from generator.answer.remedy import PARTS, Change, Offer, Remedy, Typed, one
from generator.answer.values import Drawn, draws_of
from generator.case.fill import Desk as Filling
from generator.case.supply import PanelGroup, PanelKeys

STEP = 10.0  # W, in which panels are told
PANELS = "Panels"
WORKS = "Works that make the battery's space fit for it"
SEEN = ("dry", "above_bilge", "ventable", "not_a_berth", "escape_clear")


def _reduction(look: Look, place: int) -> list[Offer]:
    """The ratio that is advised on her own propeller."""
    found = look.findings
    motor, ratio = found.option.motor, round(found.match.advised, 2)
    if motor is None or not np.isfinite(ratio):
        return []
    if abs(ratio - scalar(best(motor.gear_ratio))) < TOO_NEAR:
        return []
    change = geared(found, Remedy("reduction", PARTS, ratio=ratio), place, ratio)
    return [Offer("reduction", PARTS, (4, 5, 6, 7, 9, 23, 24, 1), (change,))]


def geared(found: Findings, told: Remedy, place: int, ratio: float) -> Change:
    """Another reduction; what turned the shaft itself gets the losses of a gear with it."""
    motor = found.option.motor
    assert motor is not None
    at = ("options", place, "motor", "gear_ratio")
    power = scalar(best(motor.continuous_power))
    fields = {_steps(at): ratio} | refilled(found, place, power, ratio, motor.cooling)
    return Change(told, fields, (Typed(at, f"{ratio:.2f}"),))


def _cooling(look: Look, place: int) -> list[Offer]:
    """Water that takes the motor's heat overboard, so that it keeps its rating when warm."""
    found, motor = look.findings, look.findings.option.motor
    if motor is None or motor.cooling == "water":
        return []
    power, ratio = scalar(best(motor.continuous_power)), scalar(best(motor.gear_ratio))
    heat = refilled(found, place, power, ratio, "water")
    if not heat:
        return []  # the owner has said how much of the heat stays aboard
    at = ("options", place, "motor", "cooling")
    change = Change(Remedy("cooling", PARTS), {_steps(at): "water"} | heat, (Typed(at, "water"),))
    return [Offer("cooling", PARTS, (1, 4, 5, 6, 7, 9), (change,))]


def _lock_out(look: Look, place: int) -> list[Offer]:
    bank = look.findings.option.bank
    if bank is None or bank.charge_lock_out:
        return []
    at = ("options", place, "bank", "charge_lock_out")
    return [Offer("lock-out", PARTS, (15,), (one(Remedy("lock-out", PARTS), at, True, "true"),))]


def _own_house(look: Look, place: int) -> list[Offer]:
    if look.findings.case.house.separate_bank:
        return []
    at = ("house", "separate_bank")
    return [Offer("house", PARTS, (13,), (one(Remedy("house", PARTS), at, True, "true"),))]


def _charger(look: Look, place: int) -> list[Offer]:
    """The charger that puts a usual day back in time, where the berth gives as much."""
    berth, option = look.findings.use.berth, look.findings.option
    if berth is None or berth.least_charger is None or option.bank is None:
        return []
    power = float(np.ceil(berth.least_charger / 100.0) * 100.0)
    own = option.charger_power
    if own is not None and power <= scalar(best(own)):
        return []
    at = ("options", place, "supply", "charger", "power")
    fields: dict[tuple[str, ...], Any] = {_steps(at): power}
    typed = [Typed(at, f"{power / 1e3:.1f} kW")]
    for row, plan in enumerate(option.installation.circuits if option.installation else ()):
        if plan.name == "charger" and plan.current is not None:  # told twice, once in amperes
            current = power / scalar(best(option.bank.nominal_voltage))
            way = ("options", place, "installation", "circuits")
            fields[_steps((*way, row, "current"))] = current
            typed.append(Typed((*way, plan.name, "current"), f"{current:.1f} A"))
    change = Change(Remedy("charger", PARTS, power=power), fields, tuple(typed))
    return [Offer("charger", PARTS, (11,), (change,))]


def _panels(look: Look, place: int) -> list[Offer]:
    """The smallest panels that carry her where there is no plug: hers larger, or new ones."""
    carried, supply = look.findings.carried, look.findings.option.supply
    if carried is None or carried.least is None or supply is None:
        return []
    power = float(np.ceil(carried.least / STEP) * STEP)
    at = ("options", place, "supply", "panels")
    if supply.panels:
        rest = sum(scalar(best(each.power)) for each in supply.panels[1:])
        own = (*at, 0, "power")
        change = one(
            Remedy("panels", PARTS, power=power), own, power - rest, f"{power - rest:.0f} W"
        )
    else:
        change = Change(
            Remedy("new panels", PARTS, power=power),
            {_steps(at): Drawn(lambda _, count: (_flat(place, power, count),))},
            (Typed((*at, 0, "name"), PANELS), Typed((*at, 0, "power"), f"{power:.0f} W")),
        )
    return [Offer("panels", PARTS, (12,), (change,))]


def _flat(place: int, power: float, count: int) -> PanelGroup:
    """Panels of which the owner says no more than their power, among so many draws."""
    filling, path = Filling("EUR"), f"options[{place}].supply.panels[0]"
    group = filling.fill(
        PanelGroup, PanelKeys(), path, "options.supply.panels",
        name=PANELS, mounting="free", power=power, line=0,
    )  # fmt: skip
    names: dict[str, Any] = {
        item.path.rpartition(".")[2]: draws_of(item, count) for item in filling.taken
    }
    return replace(group, **names)


def _works(look: Look, place: int) -> list[Offer]:
    """Works on a space that is not as it must be."""
    compartment = look.findings.option.compartment
    wrong = tuple(name for name in SEEN if getattr(compartment, name) is False)
    if not wrong or compartment.works:
        return []
    at = ("options", place, "compartment", "works")
    return [Offer("works", PARTS, (19,), (one(Remedy("works", PARTS, wrong), at, WORKS, WORKS),))]


def _steps(path: tuple[str | int, ...]) -> tuple[str, ...]:
    return tuple(map(str, path))


PART_BUILDERS: tuple[Callable[[Look, int], list[Offer]], ...] = (
    _reduction, _cooling, _lock_out, _own_house, _charger, _panels, _works,
)  # fmt: skip
