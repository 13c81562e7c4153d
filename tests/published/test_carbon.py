"""Carbon of fuel and electricity against the printed factors of others, each with its year."""

from __future__ import annotations

import pytest

from generator.case.register import find_default
from generator.physics.energy.emissions import carbon_payback, electricity_carbon, fuel_carbon
from generator.tables.load import read_table

LITRE, KILOWATT_HOUR = 1e-3, 3.6e6
US_GALLON = 3.785411784


def register(key: str) -> tuple[float, float, float]:
    row = find_default(key, ())
    assert row is not None
    return row.low, row.value, row.high


@pytest.mark.parametrize(
    ("printed", "source"),
    [
        (2.66155, "uk_factors, 2024, fuels: diesel, 100 % mineral"),
        (2.51279, "uk_factors, 2024, fuels: diesel, average biofuel blend"),
        (2.75541, "uk_factors, 2024, fuels: gas oil"),
        (2.77139, "uk_factors, 2024, fuels: marine gas oil"),
        (10.21 / US_GALLON, "epa_factors, 2024: 10.21 kg per US gallon"),
        (74.1 * 43.0 * 0.84 / 1e3, "ipcc2006, volume 2: 74.1 t/TJ, 43.0 TJ/Gg, 0.84 kg/l"),
    ],
)
def test_diesel_burnt_lies_within_the_range_of_the_register(printed: float, source: str) -> None:
    """Source: named in each row. Tolerance: half a unit of the register's last digit."""
    low, _, high = register("carbon.diesel_burnt")
    digit = 0.005
    assert low * LITRE - digit <= printed <= high * LITRE + digit, source


def test_diesel_burnt_is_the_mineral_row() -> None:
    """Source: uk_factors, 2024, fuels: 2.66155 kg/l; the register has two decimals."""
    assert register("carbon.diesel_burnt")[1] * LITRE == pytest.approx(2.66155, abs=0.005)
    table = read_table("money/fuel_carbon")
    assert table.column("burnt")[table.row_of("fuel", "mineral diesel")] == 2.66155


def test_a_litre_from_the_well_to_the_exhaust() -> None:
    """Source: uk_factors, 2024: 2.66 burnt and 0.61 upstream make 3.27 kg; a sum, exact."""
    made = fuel_carbon(LITRE, register("carbon.diesel_burnt")[1], 610.0)
    assert float(made) == pytest.approx(3.27, abs=1e-12)


@pytest.mark.parametrize(
    ("code", "printed", "year"),
    [("NO", 30, 2023), ("FR", 56, 2023), ("GB", 238, 2023), ("DE", 381, 2023), ("BS", 660, 2022)],
)
def test_electricity_by_country(code: str, printed: float, year: int) -> None:
    """Source: owid_energy, carbon intensity of electricity; printed in whole grams."""
    table = read_table("money/grid_intensity")
    row = table.row_of("code", code)
    assert table.column("intensity")[row] == pytest.approx(printed, abs=0.5)
    assert table.column("year")[row] == year


def test_break_even_of_a_bank_by_hand() -> None:
    """Source: battery_carbon, owid_energy, uk_factors: 20 kWh at 80 kg, 100 l and 150 kWh a year.

    By hand: 1600 kg made; 100 x 3.27 = 327 kg of fuel; 150 / 0.85 x 0.238 = 42 kg; 1600 / 285
    = 5.614 years. Exact but for the digits written here.
    """
    grid = 0.238 / KILOWATT_HOUR
    electric = electricity_carbon(150 * KILOWATT_HOUR, grid, 0.0, 0.85)
    fuel = fuel_carbon(100 * LITRE, 2660.0, 610.0)
    assert float(electric) == pytest.approx(42.0, abs=0.01)
    assert float(carbon_payback(1600.0, fuel - electric)) == pytest.approx(5.614, abs=0.001)
