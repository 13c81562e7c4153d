"""What carbon is saved, where does the electricity come from, and when is the making repaid?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.money.cost import Cost
from generator.analyses.weight.mass_ledger import given_mass, motor_mass
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.option import Option
from generator.physics.energy.emissions import carbon_payback, electricity_carbon, fuel_carbon
from generator.tables.load import read_table

GRAMS_PER_KILOWATT_HOUR = 1e-3 / 3.6e6  # in kg/J


@dataclass(frozen=True)
class GridMix:
    """Carbon of the electricity where she lies."""

    intensity: Numbers | None  # kg/J generated
    country: str
    year: int | None  # of the table; none where the case gives the figure


NO_GRID = GridMix(None, "", None)  # of a bank that no plug charges


@dataclass(frozen=True)
class Emissions:
    """Carbon dioxide of one option, kg, per draw; arrays absent where the mix is not known."""

    charged_by: str  # as of Cost
    mix: GridMix
    bank_made: Array
    drive_made: Array  # motor with controller, or a new diesel with gear
    yearly: Array | None
    diesel_yearly: Array | None  # of the diesel that would run otherwise
    extra_made: Array | None  # above what that diesel needs
    payback: Array | None  # years; infinite where nothing is saved, nan where that is not known


def grid_mix(case: Case) -> GridMix:
    """The figure of the case, else that of the country of the waters."""
    if case.carbon.grid is not None:
        return GridMix(case.carbon.grid, case.waters.country, None)
    table = read_table("money/grid_intensity")
    codes = table.text("code")
    if case.waters.country not in codes:
        return GridMix(None, case.waters.country, None)
    row = codes.index(case.waters.country)
    intensity = float(table.column("intensity")[row]) * GRAMS_PER_KILOWATT_HOUR
    return GridMix(intensity, table.text("country")[row], int(table.column("year")[row]))


def emissions(
    case: Case, option: Option, own: Cost, diesel: tuple[Option, Cost] | None
) -> Emissions:
    """Made once and emitted each year, against the diesel that would run otherwise."""
    mix = grid_mix(case) if own.charged_by in ("fuel", "wall") else NO_GRID
    bank_made, drive_made = _made(case, option)
    yearly = _yearly(case, own, mix)
    if diesel is None or option.bank is None or yearly is None:
        return Emissions(own.charged_by, mix, bank_made, drive_made, yearly, None, None, None)
    other, cost = diesel
    burnt = _yearly(case, cost, mix)
    assert burnt is not None
    extra = bank_made + drive_made - _made(case, other)[1]
    saved = burnt - yearly
    payback = np.where(np.isnan(saved), np.nan, carbon_payback(extra, saved))
    return Emissions(own.charged_by, mix, bank_made, drive_made, yearly, burnt, extra, payback)


def _yearly(case: Case, own: Cost, mix: GridMix) -> Array | None:
    """Of what is burnt and bought; none where nothing charges her or the mix is not known."""
    carbon = case.carbon
    burnt = np.atleast_2d(fuel_carbon(own.burnt, carbon.diesel_burnt, carbon.diesel_upstream))
    if own.charged_by != "wall":
        return None if own.charged_by == "nothing" else burnt
    if mix.intensity is None:
        return None
    # what is bought holds the charging losses already
    intensity = np.asarray(mix.intensity) * carbon.grid_trend
    return np.atleast_2d(electricity_carbon(own.bought, intensity, carbon.network_loss, 1.0))


def _made(case: Case, option: Option) -> tuple[Array, Array]:
    """Bank, and motor or new diesel as the ledger weighs it; one that stays was made long ago."""
    masses, carbon = case.masses, case.carbon
    bank: Numbers = 0.0
    drive: Numbers = 0.0
    if option.bank is not None and option.motor is not None:
        capacity = np.asarray(option.bank.nominal_voltage) * option.bank.charge
        bank = capacity * option.bank.manufacture
        own = given_mass(option.added, "motor")
        mass = motor_mass(option.motor, masses) if own is None else own
        drive = np.asarray(mass) * carbon.motor_made
    elif option.kind == "new diesel" and option.diesel is not None:
        own = given_mass(option.added, "engine")
        power = np.asarray(option.diesel.rated_power)
        mass = masses.diesel_fixed + power * masses.diesel_per_kilowatt if own is None else own
        drive = np.asarray(mass) * carbon.engine_made
    return np.atleast_2d(np.asarray(bank)), np.atleast_2d(np.asarray(drive))
