"""Of which kind is a number: what is its key called, how is it written, and how does it look?

One list for all three uses. ``suffix`` ends the keys of the results; stored = SI times ``per_si``.
``family`` names the units in which an owner may write it. ``metric`` and ``imperial`` are its look
on a page: shown = stored x scale + offset, with decimals by the size of what is shown. Several
kinds may share a suffix, and then its unit: the speed of a boat has a decimal, that of wind none.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

FOOT, POUND, INCH, GALLON, POUND_FORCE = 0.3048, 0.45359237, 25.4, 3.785411784, 4.4482216152605
KNOT, MILE, HOUR, KILOWATT_HOUR = 1852.0 / 3600.0, 1852.0, 3600.0, 3.6e6


@dataclass(frozen=True)
class Look:
    """One display of a kind; ``steps`` are pairs of limit and decimals below it."""

    unit: str
    steps: tuple[tuple[float, int], ...]
    scale: float = 1.0
    offset: float = 0.0
    thousands: bool = True


@dataclass(frozen=True)
class Kind:
    """What a number is: the end of its key, the factor from SI to that unit, and its looks."""

    suffix: str
    per_si: float
    metric: Look
    imperial: Look
    family: str = ""  # of the units in which it may be written; none where no case gives it
    also: tuple[str, ...] = ()  # ends of keys that were named before this list was

    @property
    def of_money(self) -> bool:
        """An amount or a price: shown in the currency, left out of a copy without prices."""
        return self.suffix.partition("_")[0] == "money"


def _rounding(*steps: float) -> tuple[tuple[float, int], ...]:
    """Pairs of limit and decimals from a flat list; the last decimals hold for all above."""
    limits = (*steps[1::2], math.inf)
    return tuple((limit, int(decimals)) for limit, decimals in zip(limits, steps[::2], strict=True))


def _same(
    suffix: str, per_si: float, unit: str, *steps: float,
    family: str = "", also: str = "", thousands: bool = True,
) -> Kind:  # fmt: skip
    """Shown alike in both systems of units."""
    look = Look(unit, _rounding(*steps), thousands=thousands)
    return Kind(suffix, per_si, look, look, family, tuple(also.split()))


def _both(
    suffix: str, per_si: float, metric: Look, imperial: Look, family: str = "", also: str = ""
) -> Kind:
    return Kind(suffix, per_si, metric, imperial, family, tuple(also.split()))


_PERCENT, _FINE_PERCENT = (Look("%", _rounding(*steps), 100.0) for steps in ((0,), (2, 1, 1)))
_TENS, _HUNDREDS = (0, 1000, -1, 10000, -2), (0, 100, -1, 1000, -2, 10000, -3)

KINDS: Mapping[str, Kind] = {
    "speed": _same("kn", 1 / KNOT, "kn", 1, family="speed"),
    "speed_small": _same("kn", 1 / KNOT, "kn", 2, family="speed"),
    "wind": _same("kn", 1 / KNOT, "kn", 0, family="speed"),
    "distance": _same("nm", 1 / MILE, "nm", 1, 10, 0, family="distance"),
    "power": _same("kw", 1e-3, "kW", 2, 1, 1, 100, 0, family="power"),
    "watts": _same("w", 1.0, "W", 0, 1000, -1, 10000, -2, family="power"),
    "energy": _same("kwh", 1 / KILOWATT_HOUR, "kWh", 2, 1, 1, 100, 0, family="energy"),
    "energy_per_mile": _same("kwh_per_nm", MILE / KILOWATT_HOUR, "kWh/nm", 2, also="kwh per_nm"),
    "fuel_per_mile": _both(
        "l_per_nm", MILE * 1e3, Look("L/nm", _rounding(2)),
        Look("US gal/nm", _rounding(2), scale=1 / GALLON),
    ),
    "current": _same("a", 1.0, "A", 0, family="current"),
    "resistance": _same("mohm", 1e3, "mΩ", 1, 10, 0, family="resistance"),
    "short_circuit": _same("ka", 1e-3, "kA", 1, family="current"),
    "kiloamperes": _same("ka", 1e-3, "kA", 0, family="current"),
    "milliamperes": _same("ma", 1e3, "mA", 2, 1, 0, family="current"),
    "joules": _same("j", 1.0, "J", 0, family="energy"),
    "megohms": _same("megohm", 1e-6, "megohm", 0, family="resistance"),
    "ohms": _same("ohm", 1.0, "Ω", 0, family="resistance"),
    "capacitance": _same("mf", 1e3, "mF", 1, family="capacitance"),
    "section": _same("mm2", 1e6, "mm²", 1, 10, 0, family="area"),
    "voltage": _same("v", 1.0, "V", 1, 100, 0, family="voltage"),
    "millivolts": _same("mv", 1e3, "mV", 0, family="voltage"),
    "cell_voltage": _same("v", 1.0, "V", 2, family="voltage"),
    "charge": _same("ah", 1 / HOUR, "Ah", 0, family="charge"),
    "rate": _same("c", HOUR, "C", 2, family="c_rate"),
    "rpm": _same("rpm", 30.0 / math.pi, "rpm", -1, family="rotation"),
    "air": _same("m3_per_h", HOUR, "m³/h", 0, family="air flow"),
    "hours": _same("h", 1 / HOUR, "h", 1, 10, 0, family="time"),
    "minutes": _same("min", 1 / 60.0, "min", 0, family="time"),
    "days": _same("d", 1 / 86400.0, "days", 0, family="time"),
    "seconds": _same("s", 1.0, "s", 1, 10, 0, family="time"),
    "percent": _same("pct", 100.0, "%", 1, 10, 0, family="fraction"),
    "angle": _same("deg", 180.0 / math.pi, "°", 1),
    "ratio": _same("", 1.0, "", 2, 10, 1, family="ratio"),
    "share": _both("share", 1.0, _PERCENT, _PERCENT, "fraction"),
    "share_small": _both("share", 1.0, _FINE_PERCENT, _FINE_PERCENT, "fraction"),
    "count": _same("", 1.0, "", 0, family="number"),
    "mean_count": _same("", 1.0, "", 0, 0.05, 1, 10, 0, family="number"),
    "flag": _same("", 1.0, "", 0),
    "lengths": _same("", 1.0, "lengths", 2),
    "specific_power": _same("kw_per_t", 1.0, "kW/t", 1),
    "years": _same("years", 1.0, "years", 0, family="years"),
    "year": _same("year", 1.0, "", 0, also="market line", thousands=False),
    "plain": _same("", 1.0, "", 4, 0.01, 3, 10, 1, 1000, 0, family="number"),
    "mass": _both(
        "kg", 1.0, Look("kg", _rounding(0)), Look("lb", _rounding(0), scale=1 / POUND), "mass"
    ),
    "mass_about": _both(
        "kg", 1.0, Look("kg", _rounding(*_HUNDREDS)),
        Look("lb", _rounding(*_HUNDREDS), scale=1 / POUND), "mass",
    ),
    "length": _both(
        "m", 1.0, Look("m", _rounding(2)), Look("ft", _rounding(1), scale=1 / FOOT), "length"
    ),
    "height": _both(
        "m", 1.0, Look("m", _rounding(1)), Look("ft", _rounding(1), scale=1 / FOOT), "length"
    ),
    "length_small": _both(
        "mm", 1e3, Look("mm", _rounding(0)), Look("in", _rounding(1), scale=1 / INCH), "length"
    ),
    "area": _both(
        "m2", 1.0, Look("m²", _rounding(1)), Look("ft²", _rounding(0), scale=1 / FOOT**2), "area"
    ),
    "fetch": _both(
        "km", 1e-3, Look("km", _rounding(0)), Look("nm", _rounding(1), scale=1 / 1.852), "distance"
    ),
    "force": _both(
        "n", 1.0, Look("N", _rounding(*_TENS)),
        Look("lbf", _rounding(*_TENS), scale=1 / POUND_FORCE),
    ),
    "torque": _same("newtonmetre", 1.0, "N m", 0),
    "fuel": _both(
        "l", 1e3, Look("L", _rounding(1, 10, 0)), Look("US gal", _rounding(1), scale=1 / GALLON),
        "volume",
    ),
    "fuel_rate": _both(
        "l_per_h", 1e3 * HOUR, Look("L/h", _rounding(2, 1, 1)),
        Look("US gal/h", _rounding(2), scale=1 / GALLON), "volume rate", "h l",
    ),
    "sunshine": _same("kwh_m2", 1 / KILOWATT_HOUR, "kWh/m²", 2, 1, 1, 100, 0, family="irradiation"),
    "temperature": _both(
        "degc", 1.0, Look("°C", _rounding(0)),
        Look("°F", _rounding(0), scale=1.8, offset=32.0), "temperature", "c",
    ),
    "mass_moment": _same("kgm", 1.0, "kg m", 0),
    "temperature_step": _same("k", 1.0, "K", 0),
    "intensity": _same(
        "g_per_kwh", 1e3 * KILOWATT_HOUR, "g/kWh", 0, family="carbon per energy",
        also="kwh per_kwh",
    ),
    "diesel_price": _same("money_per_l", 1e-3, "", 2, family="money per volume"),
    "electricity_price": _same(
        "money_per_kwh", KILOWATT_HOUR, "", 2, family="money per energy"
    ),
    "price": _same("money_per_unit", 1.0, "", 2, also="l kwh per_l per_kwh"),
    "money": _same("money", 1.0, "", 0, 1000, -1, 20000, -2, family="money"),
    "money_whole": _same("money", 1.0, "", 0, family="money"),  # lines that add to their sum
}  # fmt: skip
# What a number that depends on the store is of, by where it is kept: energy of a bank or fuel of a
# tank, either of them for a mile, or as it is drawn, much or little.
STORES: Mapping[str, Mapping[str, str]] = {
    "stored": {"bank": "energy", "tank": "fuel"},
    "per_mile": {"bank": "energy_per_mile", "tank": "fuel_per_mile"},
    "drain": {"bank": "power", "tank": "fuel_rate"},
    "small_drain": {"bank": "watts", "tank": "fuel_rate"},
}
