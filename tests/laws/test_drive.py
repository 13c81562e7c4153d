"""What must hold for every screw, motor, gear and bank."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.physics.drive.diesel_engine import fuel_rate, power_from_fuel
from generator.physics.drive.gear import input_power, output_power
from generator.physics.drive.motor import efficiency, electrical_power, motor_losses
from generator.physics.drive.operating_point import bollard, operating_point
from generator.physics.drive.propeller import thrust_coefficient
from generator.physics.energy.battery import current, nominal_energy, peukert_capacity, peukert_time

BLADES = st.integers(2, 4)
AREA = st.floats(0.30, 1.05)
PITCH = st.floats(0.5, 1.4)
DIAMETER = st.floats(0.25, 0.8)
THRUST = st.floats(0.0, 5000.0)
SPEED = st.floats(0.0, 5.0)
MORE = st.floats(1.01, 3.0)
DENSITY = 1025.0
NEAR_STANDSTILL = 0.1  # advance ratio
POLYNOMIAL_DIP = 0.002
ROUND_OFF = 1e-9


@given(THRUST, SPEED, DIAMETER, PITCH, AREA, BLADES)
def test_operating_point_balances_and_wastes(
    thrust: float, speed: float, diameter: float, pitch: float, area: float, blades: int
) -> None:
    """The thrust found is the thrust asked for, and power in is useful power and loss."""
    point = operating_point(thrust, speed, diameter, pitch, area, blades, DENSITY)
    assert bool(point.feasible)
    turns = float(point.revolutions) / (2 * np.pi)
    scale = DENSITY * turns**2 * diameter**4
    found = float(thrust_coefficient(float(point.advance), pitch, area, blades)) * scale
    assert found == pytest.approx(thrust, abs=ROUND_OFF * (1.0 + scale))
    assert float(point.delivered_power) >= thrust * speed * (1.0 - ROUND_OFF)
    assert 0.0 <= float(point.open_water_efficiency) < 1.0
    turning = float(point.torque) * float(point.revolutions)
    assert float(point.delivered_power) == pytest.approx(turning)


@given(st.floats(1.0, 3000.0), MORE, SPEED, DIAMETER, PITCH, AREA, BLADES)
def test_more_thrust_needs_more_turns_torque_and_power(
    thrust: float,
    more: float,
    speed: float,
    diameter: float,
    pitch: float,
    area: float,
    blades: int,
) -> None:
    asked = np.array([thrust, more * thrust])
    point = operating_point(asked, speed, diameter, pitch, area, blades, DENSITY)
    for value in (point.revolutions, point.torque, point.delivered_power):
        assert value[1] > value[0]
    assert point.advance[1] <= point.advance[0]


@given(st.floats(1.0, 3000.0), st.floats(0.1, 3.0), MORE, DIAMETER, PITCH, AREA, BLADES)
def test_the_same_thrust_at_more_speed_needs_more_power(
    thrust: float,
    speed: float,
    more: float,
    diameter: float,
    pitch: float,
    area: float,
    blades: int,
) -> None:
    """The printed polynomial itself dips near standstill for four steep, narrow blades.

    0.14 % at J 0.02, P/D 1.4, area ratio 0.30. Away from there the law is strict.
    """
    speeds = np.array([speed, more * speed])
    point = operating_point(thrust, speeds, diameter, pitch, area, blades, DENSITY)
    kept = 1.0 if point.advance[0] >= NEAR_STANDSTILL else 1.0 - POLYNOMIAL_DIP
    assert point.delivered_power[1] > kept * point.delivered_power[0]
    assert point.revolutions[1] > point.revolutions[0]


@given(st.floats(10.0, 5e4), MORE, DIAMETER, PITCH, AREA, BLADES)
def test_more_power_pulls_harder_tied_up(
    power: float, more: float, diameter: float, pitch: float, area: float, blades: int
) -> None:
    pull = bollard(np.array([power, more * power]), diameter, pitch, area, blades, DENSITY)
    assert pull.thrust[1] > pull.thrust[0] > 0.0
    np.testing.assert_allclose(pull.torque * pull.revolutions, [power, more * power])


@given(st.floats(0.0, 2e4), st.floats(1.0, 400.0), st.floats(1e3, 2e4), st.floats(50.0, 400.0))
def test_electrical_power_is_shaft_power_and_losses(
    power: float, speed: float, rated_power: float, rated_speed: float
) -> None:
    losses = motor_losses(power, speed, rated_power, rated_speed)
    taken = electrical_power(power, losses)
    assert float(losses) > 0.0
    assert float(np.asarray(taken)) == pytest.approx(power + float(losses))
    assert 0.0 <= float(efficiency(power, losses)) < 1.0
    shaft = float(efficiency(power, losses)) * float(np.asarray(taken))
    assert shaft == pytest.approx(power, abs=1e-6)


@given(st.floats(100.0, 1e4), MORE, st.floats(50.0, 300.0))
def test_a_larger_motor_loses_more_on_the_same_light_load(
    power: float, larger: float, speed: float
) -> None:
    """Turning without load grows with the rating; heat of the windings, with load, falls.

    The first wins where torque is below sqrt(0.030 / 0.055) = 0.74 of rated at rated turns.
    """
    ratings = 2.0 * power * np.array([1.0, larger])
    losses = motor_losses(power, speed, ratings, speed)
    assert losses[1] > losses[0]


@given(st.floats(0.0, 1e5), st.floats(0.5, 1.0))
def test_gear_input_is_output_and_loss(power: float, share: float) -> None:
    taken = input_power(power, share)
    loss = taken - power
    assert loss >= 0.0
    assert output_power(taken, share) + loss == pytest.approx(taken)


@given(st.floats(0.0, 1e5), st.floats(1e3, 1e5))
def test_fuel_and_power_are_inverse(power: float, rated: float) -> None:
    fuel = fuel_rate(power, rated)
    assert float(power_from_fuel(fuel, rated)) == pytest.approx(power, abs=1e-6)
    assert fuel_rate(1.1 * power + 1.0, rated) > fuel


@given(st.floats(10.0, 60.0), st.floats(1e5, 1e7), st.floats(1.0, 500.0), st.floats(1.0, 1.6))
def test_what_a_bank_gives_and_keeps_is_what_it_holds(
    voltage: float, charge: float, drawn: float, exponent: float
) -> None:
    """Energy held = energy out + what Peukert's law keeps back, which is never negative."""
    time = float(peukert_time(72_000.0, charge, drawn, exponent))
    out = voltage * drawn * time
    held = float(np.asarray(nominal_energy(voltage, charge)))
    kept = held - voltage * float(peukert_capacity(72_000.0, charge, drawn, exponent))
    assert kept >= -ROUND_OFF * held
    assert out + kept == pytest.approx(held)
    assert current(voltage * drawn, voltage) == pytest.approx(drawn)


@given(st.floats(1e5, 1e7), st.floats(1.0, 500.0), MORE, st.floats(1.0, 1.6))
def test_more_current_empties_sooner_and_gives_no_more(
    charge: float, drawn: float, more: float, exponent: float
) -> None:
    currents = np.array([drawn, more * drawn])
    time = peukert_time(72_000.0, charge, currents, exponent)
    capacity = peukert_capacity(72_000.0, charge, currents, exponent)
    assert time[1] < time[0]
    assert capacity[1] <= capacity[0] * (1.0 + ROUND_OFF)
