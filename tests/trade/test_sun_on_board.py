"""Facts of the trade about panels on board: common practice, no source.

The boat of heavy_cruiser.yaml is invented, as are her panels of 600 W; shade, salt and losses are
the register's. "Sunny water" is the Mediterranean and the trade-wind belt.
"""

from __future__ import annotations

import tempfile
from functools import lru_cache
from math import ceil
from pathlib import Path

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.case.open import read_case
from generator.draws import make_draws
from generator.study import run

KNOT = 1852.0 / 3600.0
KILOWATT_HOUR = 3.6e6
BANK = 14.4 * KILOWATT_HOUR  # 48 V, 300 Ah
SUNNY = {"Palma": (39.5, 2.6), "Aegina": (37.7, 23.5), "Cascais": (38.6, -9.4)}
EXAMPLE = Path(__file__).with_name("heavy_cruiser.yaml")


@lru_cache(maxsize=8)
def studied(place: str) -> Findings:
    """The small motor of the heavy cruiser on a mooring, with 600 W of panels."""
    latitude, longitude = SUNNY[place]
    text = EXAMPLE.read_text(encoding="utf-8")
    for old, new in (
        ("\nengine:", f"\n  latitude: {latitude}\n  longitude: {longitude}\nengine:"),
        ("shore_power: true", "shore_power: false"),
        ("    motor: {continuous_power: 10 kW",
         "    supply: {panels: [{name: p, power: 600 W}]}\n    motor: {continuous_power: 10 kW"),
    ):  # fmt: skip
        assert text.count(old) == 1
        text = text.replace(old, new)
    return _first_motor(text, place)


def _first_motor(text: str, place: str) -> Findings:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / f"{place.lower()}.yaml"
        path.write_text(text, encoding="utf-8")
        case = read_case(path)
    found = run(case, make_draws(case, 0))
    return next(option.findings for option in found.options if option.findings.sun)


@pytest.mark.parametrize("place", SUNNY)
def test_600_watts_return_about_a_fifth_of_the_bank_on_a_summer_day(place: str) -> None:
    """A fifth is a round number: 0.17 to 0.23 would be called so."""
    sun = studied(place).sun
    assert sun is not None
    assert 0.17 <= np.mean([month.daily for month in sun.months[5:8]]) / BANK <= 0.23


@pytest.mark.parametrize("place", SUNNY)
def test_half_a_bank_refills_in_three_to_six_summer_days_with_the_house_off(place: str) -> None:
    """Days are counted whole, as an owner counts them."""
    found = studied(place)
    assert found.sun is not None
    assert found.year is not None
    share = BANK / 2.0 / found.sun.half  # of the bank as new
    days = [month.refill_off / 86400.0 * share for month in found.sun.months[5:8]]
    assert all(3 <= ceil(day) <= 6 for day in days)


@pytest.mark.parametrize("place", SUNNY)
def test_one_to_two_knots_are_sustained_in_full_sun(place: str) -> None:
    sun = studied(place).sun
    assert sun is not None
    speed = np.array([month.noon_speed for month in sun.months[4:8]]) / KNOT
    assert np.all((speed >= 1.0) & (speed <= 2.0))


@pytest.mark.parametrize("place", SUNNY)
def test_a_lightly_used_boat_with_sun_lives_near_nine_tenths_of_charge(place: str) -> None:
    """Twenty short legs a year. Near: within ten points, for the study charges to the full."""
    year = studied(place).year
    assert year is not None
    assert year.state.mean() == pytest.approx(0.90, abs=0.10)
    assert year.state.min() < 0.90
