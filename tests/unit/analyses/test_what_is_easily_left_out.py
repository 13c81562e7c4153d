"""Lines whose loss no total would show: torque in duty, added mass, energy of a lost string, waves.

Each against a value worked the long way, on a plant for which the line matters.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.analyses.handling.headwind import headwind
from generator.analyses.motion.demand import Weather, calm_parts, calm_resistance, still_air
from generator.analyses.motion.power import at_points
from tests.alone import alone, case_of
from tests.unit.case.faulty import changed

KNOT = 1852 / 3600
BANK = "bank: {chemistry: LFP, nominal_voltage: 51.2 V, charge: 300 Ah}"
TWO = (
    "bank: {chemistry: LFP, blocks: {series: 4, parallel: 2, voltage: 12.8 V, charge: 150 Ah, "
    "discharge_limit: 150 A}}"
)
GEARED_LONG = ("gear_ratio: 1.4}", "gear_ratio: 1.0}")


def findings(*exchanges: tuple[str, str], draws: int = 0) -> Findings:
    return alone(case_of(changed(*exchanges)), 2, draws).findings


def test_duty_goes_by_the_torque_of_a_motor_that_turns_slowly() -> None:
    """Current follows torque: at two thirds of rated turns a power weighs half as much again."""
    own = findings(GEARED_LONG)
    motor, duty, calm = own.option.motor, own.duty, own.power.curves["calm"]
    assert motor is not None
    assert duty is not None
    place = int(np.argmin(np.abs(own.power.speed - 5.0 * KNOT)))
    power, turns = calm.output.power[0, place], calm.output.turns[0, place]
    rated = float(np.ravel(motor.rated_speed)[0])
    assert turns < 0.9 * rated
    by_torque = (power / turns) / (float(duty.continuous_power[0, 0]) / rated)
    told = float(np.interp(5.0 * KNOT, duty.speed, duty.holds["calm"].load[0]))
    assert told == pytest.approx(by_torque, rel=1e-6)
    assert told > 1.1 * power / float(duty.continuous_power[0, 0])


def test_a_boat_that_stops_takes_the_water_about_her_along() -> None:
    """Energy lost is work done: her mass and a tenth of it in water, against thrust and drag."""
    own = findings()
    case, hull, docked = own.case, own.power.vessel, own.docking
    speed = np.linspace(1e-3, 3.0 * KNOT, 2001)
    parts = calm_parts(hull, case.factors, speed)
    drag = calm_resistance(parts, case.factors, case.boat, own.trial.scale.at(speed))
    braking = np.atleast_2d(drag + still_air(hull, speed))[0] + docked.astern[0, 0]
    mass = float(np.ravel(hull.displacement)[0]) * 1.10
    way = float(np.trapezoid(mass * speed / braking, speed))
    motor = own.option.motor
    assert motor is not None
    waited = float(np.ravel(motor.reversal_time)[0]) * 3.0 * KNOT
    assert docked.stops[0].distance[0, 0] == pytest.approx(way + waited, rel=0.01)
    assert way > 0.5 * docked.stops[0].distance[0, 0]


def test_a_lost_string_takes_its_energy_with_it() -> None:
    """Half of the aged bank is left to go on at manoeuvring speed with."""
    own = findings((BANK, TWO))
    fault, usable = own.fault, own.store.usable_aged
    assert fault is not None
    assert fault.strings == 2
    slow = np.atleast_2d(own.case.planning.manoeuvring_speed)
    drain = at_points(own.case, own.option, own.power, own.trial.scale, slow, Weather(0.0, 1.0))
    hours = 0.5 * np.asarray(usable) / drain.output.drain
    assert fault.endurance[0, 0] == pytest.approx(float(hours[0, 0]), rel=0.01)
    assert fault.distance[0, 0] == pytest.approx(float((hours * slow)[0, 0]), rel=0.01)


def test_the_doubt_of_waves_stands_in_the_ladder() -> None:
    """More and less of the added resistance, with all else the same, slower and faster."""
    own = findings()
    speeds = []
    for share in (0.5, 1.0, 2.0):
        factors = replace(own.case.factors, wave_resistance=share)
        case = replace(own.case, factors=factors)
        ladder = headwind(case, own.option, own.power, own.trial.scale).continuous.speed
        speeds.append(ladder[0, 20] / KNOT)
    assert speeds[0] > speeds[1] + 0.05 > speeds[2] + 0.15
    drawn = findings(draws=60)
    waves = np.ravel(np.asarray(drawn.case.factors.wave_resistance))
    assert np.ptp(waves) > 0.3  # and it is drawn
    with_it = drawn.headwind.continuous.speed[1:, 20]
    assert np.corrcoef(waves[1:], with_it)[0, 1] < 0.0
