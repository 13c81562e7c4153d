"""What current may a bank be asked for, and who says so?

One answer for speeds, range, settings, cables and word. What a maker states holds for good; of
shorter times he says nothing here, so that the same limit holds at peak.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.option import Bank, Option
from generator.case.wiring import Wiring
from generator.physics.energy.cell import LEAD
from generator.tables.method import method

PEAK_SHARE = method("bank.peak_share")
HOUSE_SHARE = method("wiring.house_margin")
LEAST_LEFT = 0.01  # of the limit: what is left to a motor beside a house that takes it all
STATED, CUSTOMARY = "stated", "customary"
BESIDE = ("converter", "inverter")  # circuits that draw on the bank beside the motor


@dataclass(frozen=True)
class Limits:
    """Discharge currents of a whole bank [A], for good and at peak alike.

    ``bank`` is that at which its management systems cut it off, or that its chemistry is used to.
    ``motor`` is the most that the motor may be set to: less than that by the share that keeps a
    management system from tripping, and by what the house may draw meanwhile. Nothing cuts off
    lead, so there only the house counts.
    """

    rule: str  # stated by the maker, or customary of the chemistry
    bank: Numbers
    beside: float
    motor: Array


def limits(bank: Bank, beside: float = 0.0, steady: Numbers = 0.0) -> Limits:
    """The maker's limit, else the customary rate, beside a current of the house [A].

    ``steady`` is the current of the motor's continuous power, bank old and cold [A]: what is drawn
    for good without a step may come up to the limit itself, of anything above it a share is kept
    free.
    """
    stated = _stated(bank)
    whole = bank.charge * bank.continuous_rate if stated is None else stated
    share = setting_share(bank.chemistry, stated is not None)
    free = np.maximum(np.asarray(whole) * share, np.minimum(np.asarray(steady), whole))
    left = np.minimum(free, np.asarray(whole) - beside)
    return Limits(
        rule=CUSTOMARY if stated is None else STATED,
        bank=whole,
        beside=beside,
        motor=np.atleast_2d(np.maximum(left, LEAST_LEFT * np.asarray(whole))),
    )


def setting_share(chemistry: str, stated: bool) -> float:
    """What of a limit a motor may be set to: all where nothing trips [-]."""
    return 1.0 if chemistry in LEAD and not stated else PEAK_SHARE


def _stated(bank: Bank) -> Numbers | None:
    """Continuous current at which the whole bank trips [A]; none where nothing is stated."""
    if bank.discharge_limit is not None:
        return bank.discharge_limit
    if bank.blocks.discharge_limit is None:
        return None
    return bank.blocks.discharge_limit * shared(bank, bank.blocks.parallel)


def string_limit(bank: Bank) -> Numbers | None:
    """Continuous current at which the management system of one string trips [A]."""
    if bank.blocks.discharge_limit is not None:
        return bank.blocks.discharge_limit
    if bank.discharge_limit is not None:
        return bank.discharge_limit / bank.blocks.parallel
    return None


def string_rating(bank: Bank) -> Numbers:
    """Continuous current of one string [A]: its limit, or the rate of its chemistry."""
    limit = string_limit(bank)
    return bank.charge * bank.continuous_rate / bank.blocks.parallel if limit is None else limit


def shared(bank: Bank, strings: int) -> Numbers:
    """How many strings' worth of current some strings give before the first of them trips."""
    return strings * bank.sharing if strings > 1 else float(strings)


def house_power(case: Case, wiring: Wiring) -> float:
    """The most that the house takes through the converter [W]."""
    return max(HOUSE_SHARE * _first(case.house.under_way), _first(wiring.house_peak))


def beside_motor(case: Case, option: Option, lowest: Numbers) -> float:
    """Current of converter and inverter from a bank that is nearly empty [A]."""
    wiring = option.installation
    if wiring is None:
        return 0.0
    said = {plan.name: plan.current for plan in wiring.circuits if plan.name in BESIDE}
    house = house_power(case, wiring) / _first(case.house.converter_efficiency) / _first(lowest)
    drawn = {"converter": house} if "converter" in said else {}
    drawn |= {name: _first(current) for name, current in said.items() if current is not None}
    return sum(drawn.values())


def _first(value: Numbers) -> float:
    return float(np.asarray(value).flat[0])
