"""What bank of each chemistry meets the same legs and the same peak current?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np

from generator.analyses.percentiles import scalar, spread
from generator.analyses.store.bank import BankResult
from generator.analyses.store.limits import setting_share
from generator.analyses.store.outfit import Outfit
from generator.analyses.use.legs import Legs
from generator.case.register import find_default
from generator.physics.energy.battery import (
    peukert_capacity,
    peukert_exponent,
    rated_discharge_time,
)
from generator.physics.energy.cell import capacity_share
from generator.records import number, record, working
from generator.tables.load import read_table
from generator.tables.method import method

CHEMISTRIES = ("LFP", "NMC", "AGM", "flooded")
WORN = method("bank.worn_share")
STEPS = 30  # of a fixed point that halves its error in each


@record
class Alternative:
    """A bank of one chemistry. J, C, kg, m3, years; money in the currency of the case."""

    chemistry: str
    own: bool
    binds: str  # legs, peak current or cruise current: which asks for the most
    nominal: float = number("energy", "nominal energy, for all that is asked")
    legs: float = number("energy", "nominal energy for the legs")
    peak: float = number("energy", "nominal energy for peak current")
    cruise: float = number("energy", "nominal energy for cruise current")
    mass: float = number("mass", "mass with tray and fastenings")
    volume: float = number("fuel", "volume")
    price: float = number("money", "price")
    life: float = number("years", "years until it is worn out")  # nan: yearly use not known
    absent: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Need:
    """What all have in common. J, A, V, degC, [-]."""

    energy: float  # of the longest leg with the reserve it asks for
    yearly: float  # not finite where too many draws cannot motor a leg
    voltage: float
    peak_current: float
    cruise_current: float
    coldest: float
    fastening: float


@record
class Chemistries:
    """What all have in common, and one bank of each chemistry that meets it."""

    leg: str
    banks: tuple[Alternative, ...]
    need: float = number("energy", "energy of the longest leg with its reserve")
    peak_current: float = number("current", "current at peak, at the voltage of the label")
    cruise_current: float = number("current", "current at cruise")
    yearly: float = working()  # J; not finite where too many draws cannot motor a leg
    voltage: float = working()


def chemistries(outfit: Outfit, bank: BankResult | None, legs: Legs) -> Chemistries | None:
    """Size every chemistry for the longest leg that can be made, above its reserve.

    None where neither a leg nor cruise has a number in more than half of the draws.
    """
    case, option, kept = outfit.case, outfit.option, outfit.reserve
    own = option.bank
    if own is None or bank is None:
        return None
    told = ((scalar(spread(leg.need).middle), leg.leg.name) for leg in legs.results)
    needs = [(need, name) for need, name in told if np.isfinite(need)]
    cruise = scalar(spread(bank.cruise_current).middle)
    if not needs or not np.isfinite(cruise):
        return None
    energy, name = max(needs)
    voltage = float(np.asarray(own.nominal_voltage).flat[0])
    charge = float(np.asarray(own.charge).flat[0])
    need = Need(
        energy=(energy + scalar(spread(kept.demand).middle))
        * _lead_gives(own.chemistry, charge, cruise),
        yearly=scalar(spread(legs.yearly).middle),
        voltage=voltage,
        peak_current=scalar(spread(np.asarray(bank.peak_power) / voltage).middle),
        cruise_current=cruise,
        coldest=float(np.asarray(bank.ageing.aged.temperature).flat[0]),
        fastening=1.0 + float(np.asarray(case.masses.battery_fastening).flat[0]),
    )
    banks = (_alternative(kind, need, kind == own.chemistry) for kind in CHEMISTRIES)
    return Chemistries(
        leg=name,
        banks=tuple(banks),
        need=need.energy,
        peak_current=need.peak_current,
        cruise_current=need.cruise_current,
        yearly=need.yearly,
        voltage=need.voltage,
    )


def _default(key: str, chemistry: str) -> float:
    row = find_default(f"options.bank.{key}", (chemistry,))
    assert row is not None
    return row.value


def _lead_gives(chemistry: str, charge: float, current: float) -> float:
    """Share of its charge that a bank gives at a current; 1 for lithium."""
    exponent, hours = peukert_exponent(chemistry), rated_discharge_time(chemistry)
    return float(peukert_capacity(hours, charge, current, exponent)) / charge


def _for_energy(chemistry: str, need: Need) -> float:
    """Nominal energy that the leg asks of a worn, cold bank; lead by its current as well."""
    cold = float(capacity_share(chemistry, need.coldest))
    share = WORN * cold * _default("usable_share", chemistry)
    nominal = need.energy / share
    for _ in range(STEPS):  # the larger a lead bank, the less its current costs
        given = _lead_gives(chemistry, nominal * WORN * cold / need.voltage, need.cruise_current)
        nominal = 0.5 * (nominal + need.energy / (share * given))
    return nominal


def _alternative(chemistry: str, need: Need, own: bool) -> Alternative:
    """One bank by the register's defaults of its chemistry, worn and at the coldest."""
    peak_rate = setting_share(chemistry, False) * _default("continuous_rate", chemistry)
    asked = {
        "legs": _for_energy(chemistry, need),
        "peak current": need.voltage * need.peak_current / peak_rate,
        "cruise current": need.voltage
        * need.cruise_current
        / _default("cruise_rate_limit", chemistry),
    }
    nominal = max(asked.values())
    table = read_table("energy/bulk")
    row = table.row_of("chemistry", chemistry)
    cycles = need.yearly / nominal
    by_cycles = _default("cycle_life", chemistry) / np.maximum(cycles, 1e-9)
    life = np.minimum(_default("calendar_life", chemistry), by_cycles)  # nan if cycles are none
    return Alternative(
        chemistry=chemistry,
        own=own,
        binds=max(asked, key=lambda name: asked[name]),
        nominal=nominal,
        legs=asked["legs"],
        peak=asked["peak current"],
        cruise=asked["cruise current"],
        mass=nominal / _default("specific_energy", chemistry) * need.fastening,
        volume=nominal / 3600.0 / float(table.column("volume_energy")[row]) / 1e3,
        price=nominal / 3.6e6 * float(table.column("price")[row]),
        life=float(life) if np.isfinite(cycles) else np.nan,
        absent={"life": "leg_beyond"},
    )
