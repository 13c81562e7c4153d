"""What must hold against every wind, at the quay, in every stream and for every motor."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.analyses.findings import Findings
from generator.analyses.handling.headwind import Headwind, headwind
from generator.analyses.handling.stream import cheapest
from generator.case.case import Case
from generator.case.open import read_case
from generator.case.option import Option
from generator.draws import make_draws
from generator.physics.drive.greatest_thrust import TURN, power_at, turns_at_power_line, wheel
from generator.physics.drive.sailing_drag import drag_coefficient
from generator.study import run

CASES = ("sloop_30_weekend", "ketch_34_two_motors", "every_key")
KNOT = 1852.0 / 3600.0
ROUND_OFF = 1e-9


@lru_cache
def case(name: str) -> Case:
    """A demo without its position: no law here looks at the year."""
    whole = read_case(Path(__file__).parents[2] / "cases" / f"{name}.yaml")
    waters = replace(whole.waters, latitude=None, longitude=None)
    gone = ("waters.latitude", "waters.longitude")
    kept = tuple(item for item in whole.assumptions if item.path not in gone)
    return replace(whole, waters=waters, weather=None, assumptions=kept)


@lru_cache
def found(name: str, draws: int = 40) -> tuple[Findings, ...]:
    study = run(case(name), make_draws(case(name), draws))
    return tuple(option.findings for option in study.options)


def studied(of: Case, *options: Option) -> tuple[Findings, ...]:
    """Other options in the same boat, best estimate only."""
    changed = replace(of, options=options, assumptions=())
    return tuple(each.findings for each in run(changed, make_draws(changed, 0)).options)


def geared(option: Option, ratio: float) -> Option:
    if option.motor is not None:
        return replace(option, motor=replace(option.motor, gear_ratio=ratio))
    assert option.diesel is not None
    return replace(option, diesel=replace(option.diesel, gear_ratio=ratio))


def ladder(of: Findings, fetch: float) -> Headwind:
    waters = replace(of.case.waters, fetch=fetch)
    return headwind(replace(of.case, waters=waters), of.option, of.power, of.trial.scale)


@pytest.mark.parametrize("name", CASES)
def test_more_wind_never_raises_speed_made_good(name: str) -> None:
    for option in found(name):
        for each in (option.headwind.continuous, option.headwind.peak):
            assert np.all(np.diff(each.speed, axis=1) <= ROUND_OFF)
            assert each.speed[:, 0].min() > 0.0


@settings(max_examples=20, deadline=None)
@given(st.floats(100.0, 100e3), st.floats(1.01, 5.0))
def test_more_fetch_never_raises_speed_made_good(fetch: float, more: float) -> None:
    of = found("ketch_34_two_motors")[2]
    near, far = ladder(of, fetch), ladder(of, more * fetch)
    assert np.all(far.peak.speed <= near.peak.speed + ROUND_OFF)
    assert np.all(far.limit_wind <= near.limit_wind + ROUND_OFF)


@pytest.mark.parametrize("name", CASES)
def test_peak_never_makes_less_than_the_continuous_rating(name: str) -> None:
    for option in found(name):
        assert np.all(option.headwind.peak.speed >= option.headwind.continuous.speed - ROUND_OFF)
        assert np.all(option.headwind.peak.stops >= option.headwind.continuous.stops - ROUND_OFF)


@pytest.mark.parametrize("name", CASES)
def test_two_motors_with_the_same_limits_give_the_same_result(name: str) -> None:
    """A name, a mass and a note are no limits; the ladder, the quay and the match are equal."""
    option = case(name).options[2]
    twin = replace(option, id="twin", name="Another maker's", note="the same limits")
    one, other = studied(case(name), option, twin)
    np.testing.assert_array_equal(one.headwind.peak.speed, other.headwind.peak.speed)
    np.testing.assert_array_equal(one.docking.ahead_peak, other.docking.ahead_peak)
    np.testing.assert_array_equal(one.match.turns, other.match.turns)


@pytest.mark.parametrize("name", CASES)
def test_same_torque_and_turns_at_the_shaft_give_the_same_pull_at_any_ratio(name: str) -> None:
    """Half the torque at twice the turns through twice the ratio is the same motor."""
    of = found(name, 0)[2]
    motor = of.option.motor
    assert motor is not None
    fast = replace(motor, rated_speed=2.0 * motor.rated_speed, gear_ratio=2.0 * motor.gear_ratio)
    other = headwind(of.case, replace(of.option, motor=fast), of.power, of.trial.scale)
    np.testing.assert_allclose(other.peak.speed, of.headwind.peak.speed, rtol=1e-9)


@given(
    st.floats(0.25, 0.6), st.floats(0.5, 1.2), st.floats(0.3, 0.7), st.integers(2, 5),
    st.floats(1.0, 4.0), st.floats(2e3, 3e4),
)  # fmt: skip
def test_matched_fixed_propeller_does_not_absorb_rated_power_at_the_bollard(
    diameter: float, pitch: float, area: float, blades: int, speed: float, power: float
) -> None:
    """Matched under way, the torque of full power is reached at fewer turns when tied up."""
    screw = wheel(diameter, pitch, area, blades, 1025.0)
    under_way = float(turns_at_power_line(screw, speed, power, 0.0, 1e4))
    torque = power / (TURN * under_way)
    tied_up = float(turns_at_power_line(screw, 0.0, 0.0, TURN * torque, 1e4))
    assert tied_up < under_way
    assert float(power_at(screw, 0.0, tied_up)) < power * (1.0 - 1e-6)


@pytest.mark.parametrize("name", CASES)
def test_bollard_power_of_every_option_is_below_rated_once_matched(name: str) -> None:
    """The reduction that matches in a calm; then torque, not power, binds at the quay."""
    for of in found(name, 0):
        option = geared(of.option, of.match.ratio)
        (again,) = studied(of.case, option)
        assert float(again.match.deviation[0, 0]) == pytest.approx(0.0, abs=0.01)
        assert np.all(again.docking.bollard_power < 0.97 * again.key.rated_shaft_power)


@pytest.mark.parametrize("name", CASES)
def test_stopping_takes_longer_from_more_speed_and_is_never_free(name: str) -> None:
    for of in found(name):
        three, five = of.docking.stops
        assert np.all(five.distance > three.distance)
        assert np.all(five.time > three.time)
        assert np.all(three.distance > 0.0)
        assert np.all(of.docking.astern < of.docking.ahead_peak)


@given(st.floats(0.1, 3.0))
def test_least_energy_over_the_ground_for_a_cube_law_is_at_one_and_a_half_streams(
    knots: float,
) -> None:
    """For power as the cube of speed: v = 1.5 c, but never below 2.5 kn and 1 kn over ground."""
    speed = np.arange(0.5, 6.0, 0.002) * KNOT
    drain = (speed**3)[np.newaxis, :]
    _, through = cheapest(speed, drain, np.ones_like(drain, dtype=bool), knots * KNOT)
    expected = max(1.5 * knots, 2.5, knots + 1.0)
    assert through / KNOT == pytest.approx(expected, abs=0.005)


@pytest.mark.parametrize("name", CASES)
def test_a_stream_never_makes_a_mile_cheaper(name: str) -> None:
    for of in found(name):
        for costs in (of.stream.rows.least, of.stream.rows.cruise):
            step = np.diff(costs, axis=1)
            assert np.all(step[np.isfinite(step)] >= -ROUND_OFF)
        filled = np.nan_to_num(of.stream.rows.cruise, nan=np.inf)
        off_grid = 0.02  # the cheapest speed is chosen among quarter knots
        assert np.all(np.nan_to_num(of.stream.rows.least, nan=0.0) <= filled * (1.0 + off_grid))


def test_states_of_a_propeller_under_sail_stand_in_order() -> None:
    drags = [drag_coefficient(state) for state in ("folded", "feathered", "free", "locked")]
    middles = [middle for middle, _, _ in drags]
    assert middles == sorted(middles)
    assert all(low <= middle <= high for middle, low, high in drags)


@pytest.mark.parametrize("name", CASES)
def test_regeneration_is_less_than_what_its_drag_takes(name: str) -> None:
    """Power into the bank is below drag times speed, and nothing for what cannot give."""
    for of in found(name):
        fixed = of.option.motor is not None and of.option.propeller.kind == "fixed"
        assert of.sail is not None
        assert np.all((of.sail.rows.returned > 0.0) == fixed)
        speed = np.array([4.0, 5.0, 6.0]) * KNOT
        back = np.nan_to_num(of.sail.rows.returned)  # lacking: what cannot give, gives nothing
        assert np.all(back < of.sail.rows.locked * speed)
