"""Which units may be written for which kind of quantity, and which are shown on a page?"""

from __future__ import annotations

from dataclasses import dataclass

# Pint reads these instead of its own list of a thousand units; tests compare the two.
DEFINITIONS = [
    "milli- = 1e-3",
    "centi- = 1e-2",
    "kilo- = 1e3",
    "mega- = 1e6",
    "meter = [length]",
    "second = [time]",
    "gram = [mass]",
    "ampere = [current]",
    "kelvin = [temperature]; offset: 0",
    "degree_Celsius = kelvin; offset: 273.15",
    "degree_Fahrenheit = 5 / 9 * kelvin; offset: 233.15 + 200 / 9",
    "each = []",
    "percent = 0.01 * each",
    "radian = []",
    "revolution = 6.283185307179586 * radian",
    "minute = 60 * second",
    "hour = 60 * minute",
    "day = 24 * hour",
    "inch = 0.0254 * meter",
    "foot = 12 * inch",
    "mile = 5280 * foot",
    "nautical_mile = 1852 * meter",
    "knot = nautical_mile / hour",
    "liter = 1e-3 * meter ** 3",
    "US_gallon = 231 * inch ** 3",
    "imperial_gallon = 4.54609 * liter",
    "pound = 0.45359237 * kilogram",
    "metric_ton = 1e3 * kilogram",
    "newton = kilogram * meter / second ** 2",
    "standard_gravity = 9.80665 * meter / second ** 2",
    "pound_force = pound * standard_gravity",
    "joule = newton * meter",
    "watt = joule / second",
    "horsepower = 550 * foot * pound_force / second",
    "metric_horsepower = 75 * kilogram * standard_gravity * meter / second",
    "watt_hour = watt * hour",
    "volt = watt / ampere",
    "ohm = volt / ampere",
    "farad = ampere * second / volt",
    "coulomb = ampere * second",
    "ampere_hour = ampere * hour",
]


@dataclass(frozen=True)
class Kind:
    """One kind of quantity: how it is called, its SI unit, and every unit it may be written in."""

    noun: str  # with its article
    example: str
    si: str  # label; of money the part after the currency
    si_name: str  # pint's name
    units: dict[str, str]  # spelling -> pint's name
    shown: tuple[str, ...]  # spellings that messages list
    money: bool = False


def _kind(noun: str, example: str, si: str, si_name: str, units: str, also: str = "") -> Kind:
    """A kind from lists like ``mm=millimeter, m=meter``; ``also`` is read but not advertised."""
    shown, more = _spellings(units), _spellings(also)
    return Kind(noun, example, si, si_name, shown | more, tuple(shown))


def _spellings(units: str) -> dict[str, str]:
    pairs = [pair.split("=") for pair in units.split(",") if pair.strip()]
    return {spelling.strip(): name.strip() for spelling, name in pairs}


CURRENCIES = (
    "EUR", "GBP", "USD", "CHF", "SEK", "NOK", "DKK", "ISK", "PLN", "CZK", "HUF",
    "RON", "TRY", "AUD", "NZD", "CAD", "ZAR", "JPY", "BRL", "SGD", "HKD",
)  # fmt: skip
_VOLUMES = {"l": "liter", "L": "liter", "m3": "meter**3"}
_GALLONS = {"US gal": "US_gallon", "imp gal": "imperial_gallon"}
_ENERGIES = {"kWh": "kilowatt_hour", "MWh": "megawatt_hour", "MJ": "megajoule"}


def _rate(noun: str, example: str, si: str, si_name: str, per: dict[str, str]) -> Kind:
    """A price for an amount of something, in any currency of the list."""
    units = {f"{money}/{unit}": f"1/{name}" for money in CURRENCIES for unit, name in per.items()}
    return Kind(noun, example, si, si_name, units, tuple(f"EUR/{unit}" for unit in per), True)


_MONEY = Kind(
    "an amount of money", "4200 GBP", "", "each", dict.fromkeys(CURRENCIES, "each"),
    tuple(CURRENCIES), True,
)  # fmt: skip

KINDS: dict[str, Kind] = {
    "number": _kind("a plain number", "1.05", "-", "each", "=each"),
    "fraction": _kind(
        "a share", "85 %", "-", "each", "%=percent, =each", "percent=percent"
    ),
    "ratio": _kind("a ratio", "2.14", "-", "each", "=each", ":1=each"),
    "length": _kind(
        "a length", "9.5 m", "m", "meter", "mm=millimeter, cm=centimeter, m=meter, "
        "in=inch, ft=foot", "\"=inch, '=foot, inch=inch, inches=inch, feet=foot",
    ),
    "distance": _kind(
        "a distance", "12 nm", "m", "meter", "nm=nautical_mile, km=kilometer, m=meter, mi=mile",
        "nmi=nautical_mile, NM=nautical_mile",
    ),
    "area": _kind(
        "an area", "3.4 m2", "m2", "meter**2", "m2=meter**2, mm2=millimeter**2, ft2=foot**2",
        "mm²=millimeter**2, mm^2=millimeter**2, "
        "m²=meter**2, m^2=meter**2, ft²=foot**2, ft^2=foot**2, sq ft=foot**2, sq m=meter**2",
    ),
    "volume": _kind(
        "a volume", "80 l", "m3", "meter**3", "l=liter, m3=meter**3, US gal=US_gallon, "
        "imp gal=imperial_gallon", "L=liter, litre=liter, litres=liter, m³=meter**3",
    ),
    "mass": _kind(
        "a mass", "5.2 t", "kg", "kilogram", "kg=kilogram, t=metric_ton, lb=pound",
        "g=gram, lbs=pound",
    ),
    "speed": _kind(
        "a speed", "5.5 kn", "m/s", "meter/second", "kn=knot, m/s=meter/second, "
        "km/h=kilometer/hour, mph=mile/hour", "kt=knot, kts=knot, knots=knot",
    ),
    "time": _kind(
        "a time", "30 min", "s", "second", "s=second, min=minute, h=hour, d=day",
        "hours=hour, day=day, days=day, minutes=minute",
    ),
    "years": _kind("a number of years", "10 year", "year", "each", "year=each, =each",
                   "years=each, a=each"),
    "power": _kind(
        "a power", "8 kW", "W", "watt", "W=watt, kW=kilowatt, hp=horsepower, "
        "PS=metric_horsepower, cv=metric_horsepower",
    ),
    "energy": _kind(
        "an energy", "0.9 kWh", "J", "joule", "Wh=watt_hour, kWh=kilowatt_hour, "
        "MJ=megajoule, kJ=kilojoule, J=joule",
    ),
    "charge": _kind("a charge", "300 Ah", "A s", "coulomb", "Ah=ampere_hour",
                    "kAh=kiloampere_hour"),
    "voltage": _kind("a voltage", "51.2 V", "V", "volt", "V=volt", "kV=kilovolt"),
    "current": _kind("a current", "16 A", "A", "ampere", "A=ampere", "kA=kiloampere"),
    "resistance": _kind("a resistance", "12 mohm", "ohm", "ohm", "mohm=milliohm, ohm=ohm",
                        "mΩ=milliohm, Ω=ohm"),
    "resistance times charge": _kind(
        "a resistance times a charge", "140 mohm Ah", "ohm A s", "ohm*coulomb",
        "mohm Ah=milliohm*ampere_hour",
    ),
    "warming": _kind("a difference of temperature", "5 K", "K", "kelvin", "K=kelvin"),
    "conductance": _kind("a heat flow per kelvin", "15 W/K", "W/K", "watt/kelvin",
                         "W/K=watt/kelvin"),
    "air flow": _kind(
        "an air flow", "60 m3/h", "m3/s", "meter**3/second",
        "m3/h=meter**3/hour, m3/s=meter**3/second", "m³/h=meter**3/hour",
    ),
    "capacitance": _kind("a capacitance", "10 mF", "F", "farad", "mF=millifarad, uF=microfarad",
                         "µF=microfarad"),
    "rotation": _kind(
        "a speed of rotation", "3600 rpm", "rad/s", "radian/second",
        "rpm=revolution/minute, 1/min=revolution/minute, rad/s=radian/second",
        "r/min=revolution/minute, RPM=revolution/minute",
    ),
    "c_rate": _kind("a C rate", "0.5 C", "1/s", "1/second", "C=1/hour, 1/h=1/hour"),
    "temperature": _kind(
        "a temperature", "15 °C", "degC", "degree_Celsius",
        "°C=degree_Celsius, °F=degree_Fahrenheit",
        "degC=degree_Celsius, degF=degree_Fahrenheit, "
        "deg C=degree_Celsius, deg F=degree_Fahrenheit",
    ),
    "specific energy": _kind(
        "an energy per mass", "110 Wh/kg", "J/kg", "joule/kilogram",
        "Wh/kg=watt_hour/kilogram, kJ/kg=kilojoule/kilogram",
    ),
    "irradiation": _kind(
        "sunshine on the level, a day", "4.2 kWh/m2", "J/m2", "joule/meter**2",
        "kWh/m2=kilowatt_hour/meter**2, MJ/m2=megajoule/meter**2",
        "kWh/m²=kilowatt_hour/meter**2, MJ/m²=megajoule/meter**2",
    ),
    "mass per power": _kind(
        "a mass per power", "4.3 kg/kW", "kg/W", "kilogram/watt",
        "kg/kW=kilogram/kilowatt, lb/hp=pound/horsepower",
    ),
    "volume rate": _kind(
        "a consumption", "2.1 l/h", "m3/s", "meter**3/second", "l/h=liter/hour, "
        "US gal/h=US_gallon/hour, imp gal/h=imperial_gallon/hour", "L/h=liter/hour",
    ),
    "carbon per volume": _kind(
        "a mass of carbon dioxide per volume", "2.66 kg/l", "kg/m3", "kilogram/meter**3",
        "kg/l=kilogram/liter, kg/US gal=kilogram/US_gallon", "kg/L=kilogram/liter",
    ),
    "carbon per energy": _kind(
        "a mass of carbon dioxide per energy", "240 g/kWh", "kg/J", "kilogram/joule",
        "g/kWh=gram/kilowatt_hour, kg/kWh=kilogram/kilowatt_hour",
    ),
    "money": _MONEY,
    "money per volume": _rate(
        "a price per volume", "1.40 EUR/l", "/m3", "1/meter**3", _VOLUMES | _GALLONS
    ),
    "money per energy": _rate(
        "a price per energy", "0.32 EUR/kWh", "/J", "1/joule", _ENERGIES
    ),
}  # fmt: skip

_WHICH_TON = "`t` (1000 kg), or kg or lb: short, long and metric tons differ"
_WHICH_GALLON = "`US gal` (3.785 l) or `imp gal` (4.546 l)"
_WHICH_HORSE = "`hp` (745.7 W), or `PS` or `cv` (735.5 W)"
# Spellings that people write and that mean two things; "" stands for every kind.
HINTS: dict[tuple[str, str], str] = {
    **dict.fromkeys([(unit, "") for unit in ("ton", "tons", "Ton", "T")], _WHICH_TON),
    **dict.fromkeys([(unit, "") for unit in ("gal", "gallon", "gallons")], _WHICH_GALLON),
    **dict.fromkeys([(unit, "") for unit in ("gal/h", "gph", "GPH")], "`US gal/h` or `imp gal/h`"),
    **dict.fromkeys([(unit, "") for unit in ("HP", "Hp", "bhp", "CV", "ch", "ps")], _WHICH_HORSE),
    ("C", "temperature"): "`°C`, for `C` alone is a C rate",
    ("F", "temperature"): "`°F`",
    ("C", "charge"): "`Ah`, for `C` alone is a C rate",
    ("M", "distance"): "`nm` for nautical miles, or m",
    ("miles", "distance"): "`nm` for nautical miles, or `mi` for miles on land",
    ("m", "time"): "`min`",
}

# What pages show beside the units that may be written: label -> pint's name and that of SI.
PAGE_UNITS: dict[str, tuple[str, str]] = {
    "N": ("newton", "newton"),
    "lbf": ("pound_force", "newton"),
    "Wh/nm": ("watt_hour/nautical_mile", "joule/meter"),
    "kWh/nm": ("kilowatt_hour/nautical_mile", "joule/meter"),
    "l/nm": ("liter/nautical_mile", "meter**2"),
    "US gal/nm": ("US_gallon/nautical_mile", "meter**2"),
    "Nm": ("newton*meter", "newton*meter"),
    "lbf ft": ("pound_force*foot", "newton*meter"),
    "kg/cm": ("kilogram/centimeter", "kilogram/meter"),
    "lb/in": ("pound/inch", "kilogram/meter"),
    "h/year": ("hour", "second"),
}

# What is shown -> metric and imperial unit; seafarers use knots and miles in both.
DISPLAY: dict[str, tuple[str, str]] = {
    "length": ("m", "ft"),
    "small length": ("mm", "in"),
    "distance": ("nm", "nm"),
    "area": ("m2", "ft2"),
    "volume": ("l", "US gal"),
    "mass": ("kg", "lb"),
    "displacement": ("t", "lb"),
    "speed": ("kn", "kn"),
    "time": ("h", "h"),
    "short time": ("min", "min"),
    "power": ("kW", "hp"),
    "electric power": ("kW", "kW"),
    "small power": ("W", "W"),
    "energy": ("kWh", "kWh"),
    "charge": ("Ah", "Ah"),
    "voltage": ("V", "V"),
    "current": ("A", "A"),
    "c_rate": ("C", "C"),
    "rotation": ("rpm", "rpm"),
    "temperature": ("°C", "°F"),
    "share": ("%", "%"),
    "force": ("N", "lbf"),
    "torque": ("Nm", "lbf ft"),
    "mass per immersion": ("kg/cm", "lb/in"),
    "volume rate": ("l/h", "US gal/h"),
    "specific energy": ("Wh/kg", "Wh/kg"),
    "energy per distance": ("Wh/nm", "Wh/nm"),
    "volume per distance": ("l/nm", "US gal/nm"),
}
