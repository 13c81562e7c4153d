"""What is left when one string of the bank drops out, and do the others follow it?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

import numpy as np

from generator.analyses.motion.plant import house_drain
from generator.analyses.motion.power import at_speed, speed_at_limit
from generator.analyses.store.bank import BankResult
from generator.analyses.store.bank_state import HALF, open_voltage, resistance
from generator.analyses.store.limits import shared, string_limit, string_rating
from generator.analyses.store.outfit import Outfit
from generator.analyses.wiring.installation import Installation
from generator.arrays import Array, Numbers
from generator.case.option import Bank
from generator.records import number, record


@record
class OneFault:
    """The aged, cold bank with one string less. W, m/s, m, s, A; per draw."""

    split: bool
    bound_by: str  # what sets the current that a string carries
    strings: int = number("count", "strings side by side")
    power: Array = number("power", "power left at the terminals, for good", cautious="low")
    speed: Array = number("speed", "calm speed left", cautious="low")
    distance: Array = number("distance", "distance at manoeuvring speed, from full", cautious="low")
    endurance: Array = number("hours", "time at manoeuvring speed, from full", cautious="low")
    string_limit: Numbers | None = number("current", "limit of a string's management system")
    string_carries: Array = number("current", "current that one string carries for good", "low")
    cruise_string: Array = number(
        "current", "current of the hardest-worked string at cruise", "high"
    )
    peak_string: Array = number("current", "current of the hardest string at peak", "high")
    cruise_trips: float = number("share", "chance that the strings left trip at cruise")
    peak_trips: float = number("share", "chance that the strings left trip at peak")
    half_power: Array | None = number("power", "power of one half of a split bank", cautious="low")
    absent: Mapping[str, str] = field(default_factory=dict)


def one_fault(
    outfit: Outfit, bank: BankResult | None, made: Installation | None
) -> OneFault | None:
    """Take the largest string away; all strings are equal.

    Those left carry no more than management system, fuse, isolator and cable let each of them.
    """
    case, option, found, held = outfit.case, outfit.option, outfit.power, outfit.store
    own = option.bank
    if own is None or bank is None or held.aged is None:
        return None
    strings = own.blocks.parallel
    wired = np.inf if made is None else made.string.wired
    wired_peak = np.inf if made is None else made.string.wired_peak
    power = _power(own, bank, strings - 1, wired)
    curve = found.curves["calm"]
    drain = np.atleast_2d(curve.output.drain + house_drain(case, option))
    load = np.maximum(curve.output.load, drain / np.maximum(power, 1e-9))
    speed = speed_at_limit(load, curve.demand.feasible, found.speed)
    slow = float(np.asarray(case.planning.manoeuvring_speed).flat[0])
    wanted = at_speed(np.where(curve.demand.feasible, drain, np.nan), found.speed, slow)
    energy = np.asarray(held.aged.usable) * (strings - 1) / strings
    lasts = np.where(speed >= slow, energy / wanted, 0.0)
    cruise, peak = (
        _worst(own, value, strings) for value in (bank.cruise_current, bank.peak_current)
    )
    limit = string_limit(own)
    bound = np.inf if limit is None else np.asarray(limit)
    none_left = strings == 1
    return OneFault(
        split=own.split,
        bound_by="its management system" if made is None else made.string.bound_by,
        strings=strings,
        power=power,
        speed=speed,
        distance=lasts * slow,
        endurance=lasts,
        string_limit=limit,
        string_carries=_carries(own, wired),
        cruise_string=cruise,
        peak_string=peak,
        cruise_trips=float((~(cruise <= np.minimum(bound, wired))).mean()),
        peak_trips=float((~(peak <= np.minimum(bound, wired_peak))).mean()),
        half_power=_power(own, bank, strings // 2, wired) if own.split and strings > 1 else None,
        absent={
            **dict.fromkeys(("distance", "endurance"), "manoeuvring_beyond"),
            "string_limit": "no_string_limit",
            "cruise_string": "no_string_left" if none_left else "cruise_not_had",
            "peak_string": "no_string_left" if none_left else "peak_not_had",
            "half_power": "not_split",
        },
    )


def _carries(bank: Bank, wired: float) -> Array:
    """Current of one string for good [A]: its own limit, or what it is wired for."""
    return np.minimum(string_rating(bank), wired)


def _power(bank: Bank, result: BankResult, strings: int, wired: float) -> Array:
    """Power that some strings hold for good above both cut-offs and below their limit [W]."""
    if strings < 1:
        return np.zeros_like(result.peak_power)
    aged = result.states[2]
    whole = resistance(bank, aged.condition, HALF) - np.asarray(bank.link_resistance)
    less = whole * bank.blocks.parallel / strings + bank.link_resistance
    voltage = open_voltage(bank, HALF)
    current = np.minimum((voltage - result.cut_off) / less, voltage / (2.0 * less))
    current = np.minimum(current, _carries(bank, wired) * shared(bank, strings))
    return np.atleast_2d(np.maximum(current, 0.0) * (voltage - less * current))


def _worst(bank: Bank, current: Array, strings: int) -> Array:
    """Current of the string that takes most, when one of them is gone [A]."""
    if strings < 2:
        return np.full_like(current, np.inf)
    return np.asarray(current / shared(bank, strings - 1))
