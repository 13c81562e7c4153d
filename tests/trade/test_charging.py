"""What the trade knows of charging at a berth. Common practice, no source."""

from __future__ import annotations

import pytest

from generator.physics.energy.charging import (
    acceptance,
    state_at_knee,
    supply_power,
    time_to_full,
)

HOUR = 3600.0


@pytest.mark.parametrize(
    ("amperes", "volts", "kilowatts"),
    [(16, 230, 3.68), (32, 230, 7.36), (30, 120, 3.6), (50, 120, 6.0), (50, 240, 12.0)],
)
def test_a_socket_gives_what_its_label_says(amperes: float, volts: float, kilowatts: float) -> None:
    assert supply_power(amperes, volts, 1.0) == pytest.approx(kilowatts * 1e3)


def test_a_breaker_carries_four_fifths_for_hours() -> None:
    assert supply_power(16.0, 230.0, 0.8) == pytest.approx(2944.0)


@pytest.mark.parametrize(("rate", "knee"), [(0.3, 0.95), (0.5, 0.90)])
def test_iron_phosphate_reaches_its_voltage_late(rate: float, knee: float) -> None:
    takes = acceptance("LFP")
    found = state_at_knee(rate / HOUR, takes.time_constant, takes.tail)
    assert found == pytest.approx(knee, abs=0.02)  # the two figures of practice are round


def test_lead_reaches_its_voltage_at_four_fifths() -> None:
    takes = acceptance("AGM")
    assert state_at_knee(0.15 / HOUR, takes.time_constant, takes.tail) == pytest.approx(
        0.8, abs=0.02
    )


@pytest.mark.parametrize("chemistry", ["AGM", "flooded"])
def test_the_last_fifth_of_lead_takes_three_to_six_hours(chemistry: str) -> None:
    takes = acceptance(chemistry)
    last = time_to_full(0.8, takes.rate, takes.time_constant, takes.tail, takes.kept)
    assert 2.5 * HOUR <= last <= 6.0 * HOUR


def test_lithium_has_no_long_last_fifth() -> None:
    takes = acceptance("LFP")
    last = time_to_full(0.8, takes.rate, takes.time_constant, takes.tail, takes.kept)
    assert last < 1.0 * HOUR


def test_a_night_on_a_weak_pedestal_brings_back_half_of_a_fifteen_kilowatt_hour_bank() -> None:
    """4 A in a small marina against 16 A: the weak one needs the night, the other an evening."""
    takes = acceptance("LFP")
    hours = [
        float(
            time_to_full(
                0.5, 0.93 * supply_power(amperes, 230.0, 0.8) / 14.4e3 / HOUR,
                takes.time_constant, takes.tail, takes.kept,
            )
        )
        / HOUR
        for amperes in (4.0, 16.0)
    ]  # fmt: skip
    assert 9.0 < hours[0] < 13.0
    assert 2.0 < hours[1] < 4.0
