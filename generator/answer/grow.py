"""Which larger bank and which larger motor could an option have?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.money.cost_ledger import ledger
from generator.analyses.percentiles import best, scalar
from generator.answer.defaults import refilled
from generator.answer.remedy import BANK, MOTOR, Change, Remedy, Typed, one
from generator.answer.values import scaled
from generator.arrays import Numbers
from generator.case.case import Case
from generator.case.option import Bank, Motor, Option

KWH, AMPERE_HOUR = 3.6e6, 3600.0
MOST_STRINGS = 4  # more, beside those that are there
SHARES = tuple(1.0 + 0.1 * step for step in range(1, 21))  # of a bank that comes in one piece
LADDER = tuple(1e3 * power for power in (3, 4, 6, 8, 10, 12, 15, 20, 25, 30))  # W
MOST_MOTORS = 4
LIMITS = (50.0, 80.0, 100.0, 150.0, 200.0, 250.0, 300.0, 400.0, 500.0)  # A
RATE = 1.0  # A for each ampere hour
LEAD = ("AGM", "flooded")
SIDE_BY_SIDE = "side by side"  # how a charge is told that the file gives of one block
SAME = 0.02  # of a power: one motor
TOO_NEAR = 0.03  # of a ratio: nobody changes a gear for less


def bank_offers(found: Findings, place: int) -> tuple[Change, ...]:
    """One string more at a time, or a tenth more of a bank that does not come in strings."""
    bank = found.option.bank
    if bank is None:
        return ()
    sizes: list[tuple[float, int | None]] = [(share, None) for share in SHARES]
    if _in_strings(found.case, place):
        own = bank.blocks.parallel
        sizes = [(1.0 + more / own, own + more) for more in range(1, MOST_STRINGS + 1)]
    return tuple(
        _bank(found, place, bank, factor, strings)
        for factor, strings in sizes
        if _carried(found, "battery", factor)
    )


def limit_offers(found: Findings, place: int) -> tuple[Change, ...]:
    """The next sizes of management system of each string; cells give an hour's rate for good."""
    bank = found.option.bank
    if bank is None:
        return ()
    of_block = bank.blocks.discharge_limit is not None
    own = bank.blocks.discharge_limit if of_block else bank.discharge_limit
    if own is None or bank.chemistry in LEAD:
        return ()
    name = ("blocks", "discharge_limit") if of_block else ("discharge_limit",)
    at = ("options", place, "bank", *name)
    cells = _first(bank.charge) / AMPERE_HOUR / (bank.blocks.parallel if of_block else 1)
    return tuple(
        one(Remedy("limit", BANK, current=size), at, size, f"{size:.0f} A")
        for size in LIMITS
        if 1.02 * _first(own) < size <= RATE * cells
    )


def _carried(found: Findings, part: str, factor: float) -> bool:
    """Whether the spaces in which the owner's ledger puts a part carry so much of it."""
    most = {space.name: _first(space.max_mass) for space in found.case.boat.spaces}
    return all(
        _first(item.mass) * factor <= most.get(item.space, np.inf)
        for item in found.option.added
        if item.part == part
    )


def _in_strings(case: Case, place: int) -> bool:
    """Whether the file tells the charge of one block, so that strings can be counted."""
    path = f"options[{place}].bank.charge"
    return any(item.path == path and SIDE_BY_SIDE in item.shown for item in case.assumptions)


def _bank(found: Findings, place: int, bank: Bank, factor: float, strings: int | None) -> Change:
    at = ("options", place, "bank")
    charge = _round(_first(bank.charge) * factor / AMPERE_HOUR, 1.0) * AMPERE_HOUR
    factor = factor if strings else charge / _first(bank.charge)
    fields: dict[tuple[str, ...], Any] = {}
    typed: list[Typed] = []

    def change(name: str, value: Any, text: str | None) -> None:
        fields[tuple(map(str, (*at, *name.split("."))))] = value
        if text is not None:
            typed.append(Typed((*at, *name.split(".")), text))

    if strings:
        change("charge", scaled(factor), None)
        change("blocks.parallel", strings, str(strings))
    else:
        change("charge", charge, f"{charge / AMPERE_HOUR:.0f} Ah")
    if not strings:
        typed.append(Typed((*at, "energy"), None))  # the one said anew replaces the other
    for name, unit in (("discharge_limit", "A"), ("mass", "kg")):
        own = getattr(bank, name)
        if own is not None:
            value = _round(_first(own) * factor, 1.0)
            change(name, value, f"{value:.0f} {unit}")
    if not strings and bank.blocks.discharge_limit is not None:
        value = _round(_first(bank.blocks.discharge_limit) * factor, 1.0)
        change("blocks.discharge_limit", value, f"{value:.0f} A")
    if bank.resistance is not None:
        value = _first(bank.resistance) / factor
        change("resistance", value, f"{value * 1e3:.6f} mΩ")
    heavier = _scaled_items(found.option, place, "battery", factor)
    nominal = _first(bank.nominal_voltage) * _first(bank.charge) * factor
    told = Remedy(
        "bank", BANK, nominal=nominal, count=strings,
        extra=_extra(found, factor), price=_price(found, "battery", factor),
    )  # fmt: skip
    return Change(told, fields | heavier[0], (*typed, *heavier[1]))


def _extra(found: Findings, factor: float) -> float | None:
    """What the larger bank weighs more [kg]."""
    mass = found.weight.bank_mass
    return None if mass is None else _first(mass) * (factor - 1.0)


def _scaled_items(
    option: Option, place: int, part: str, factor: float
) -> tuple[dict[tuple[str, ...], Any], tuple[Typed, ...]]:
    """The masses of one part that the owner's own ledger names."""
    fields: dict[tuple[str, ...], Any] = {}
    typed: list[Typed] = []
    for row, item in enumerate(option.added):
        if item.part == part:
            mass = _round(_first(item.mass) * factor, 0.1)
            path = ("options", place, "added", row, "mass")
            # its doubt stands beside it in the file and stays
            fields[tuple(map(str, path))] = scaled(mass / _first(item.mass))
            typed.append(Typed(path, f"{mass:.1f} kg"))
    return fields, tuple(typed)


def _price(found: Findings, part: str, factor: float) -> float | None:
    """What so much more costs at the rate of the ledger's own lines; none without one."""
    lines = [row for row in found.ledger.payments if row.part == part and row.when == "first"]
    if not lines:
        return None
    return sum(_first(row.amount) for row in lines) * (factor - 1.0)


def motor_offers(found: Findings, place: int) -> tuple[Change, ...]:
    """The next larger motors of the case, then those of the ladder, each matched to her screw."""
    motor = found.option.motor
    if motor is None:
        return ()
    own = _first(motor.continuous_power)
    offered = sorted(
        _first(option.motor.continuous_power)
        for option in found.case.options
        if option.motor is not None and _first(option.motor.continuous_power) > 1.02 * own
    )
    sizes = sorted({*offered, *(power for power in LADDER if power > 1.1 * own)})[:MOST_MOTORS]
    return tuple(
        matched_motor(found, place, motor, power)
        for power in sizes
        if _carried(found, "motor", power / own)
    )


def matched_motor(found: Findings, place: int, motor: Motor, power: float) -> Change:
    """The same kind of motor, of another power; its gear lets it turn as rated at full power."""
    factor = power / _first(motor.continuous_power)
    peak = _round(_first(motor.peak_power) * factor, 100.0)
    ratio = _ratio(found, motor, power)
    at = ("options", place, "motor")
    fields: dict[tuple[str, ...], Any] = {
        tuple(map(str, (*at, "continuous_power"))): power,
        tuple(map(str, (*at, "peak_power"))): peak,
    }
    typed = [
        Typed((*at, "continuous_power"), f"{power / 1e3:.1f} kW"),
        Typed((*at, "peak_power"), f"{peak / 1e3:.1f} kW"),
    ]
    regeared = ratio != _first(motor.gear_ratio)
    if regeared:
        fields[tuple(map(str, (*at, "gear_ratio")))] = ratio
        typed.append(Typed((*at, "gear_ratio"), f"{ratio:.2f}"))
    fields |= refilled(found, place, power, ratio, motor.cooling)
    if motor.mass is not None:
        mass = _round(_first(motor.mass) * factor, 0.1)
        fields[tuple(map(str, (*at, "mass")))] = mass
        typed.append(Typed((*at, "mass"), f"{mass:.1f} kg"))
    heavier = _scaled_items(found.option, place, "motor", factor)
    offered = _offered(found, place, power)
    told = Remedy(
        "motor", MOTOR, power=power, peak=peak, ratio=ratio if regeared else None,
        names=() if offered is None else (offered.name,),
        price=_of_offer(found, offered) or _price(found, "motor", factor),
    )  # fmt: skip
    return Change(told, fields | heavier[0], (*typed, *heavier[1]))


def _offered(found: Findings, place: int, power: float) -> Option | None:
    """Another option of the case whose motor has just that power."""
    return next(
        (
            each
            for n, each in enumerate(found.case.options)
            if n != place
            and each.motor is not None
            and abs(_first(each.motor.continuous_power) / power - 1.0) < SAME
        ),
        None,
    )


def _of_offer(found: Findings, offered: Option | None) -> float | None:
    """What the motor of another option costs more than the own; none where one has no line."""
    if offered is None:
        return None
    sums = []
    for each in (ledger(found.case, offered), found.ledger):
        lines = [row for row in each.payments if row.part == "motor" and row.when == "first"]
        if not lines:
            return None
        sums.append(sum(_first(row.amount) for row in lines))
    return sums[0] - sums[1]


def _ratio(found: Findings, motor: Motor, power: float) -> float:
    """The reduction that lets it turn as rated; its own where that is as good as the same."""
    own, turns = _first(motor.gear_ratio), _shaft_turns(found, power)
    if turns is None:
        return own
    ratio = round(_first(motor.rated_speed) / turns, 2)
    return own if abs(ratio - own) < TOO_NEAR else ratio


def _shaft_turns(found: Findings, power: float) -> float | None:
    """Turns of the shaft at which her screw takes a power in a calm, best estimate [rad/s]."""
    calm = found.power.curves["calm"]
    good = np.atleast_2d(calm.demand.feasible)[0]
    shaft = np.atleast_2d(calm.demand.shaft_power)[0][good]
    turns = np.atleast_2d(calm.demand.shaft_speed)[0][good]
    if shaft.size < 2:
        return None
    if power <= shaft[-1]:
        return float(np.exp(np.interp(np.log(power), np.log(shaft), np.log(turns))))
    return float(turns[-1] * (power / shaft[-1]) ** (1.0 / 3.0))


def _round(value: float, step: float) -> float:
    return float(np.round(value / step) * step)


def _first(value: Numbers) -> float:
    return scalar(best(value))
