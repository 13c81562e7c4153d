"""What raises the curve in a calm and what only in wind, and what stands behind small drives."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import Any

import numpy as np
import pytest

from generator.analyses.motion.demand import (
    BREEZE,
    Covered,
    Scale,
    Weather,
    calm_parts,
    calm_resistance,
    fouling_share,
    in_weather,
    still_air,
    weather_force,
)
from generator.analyses.motion.engine_space import warm_share
from generator.analyses.motion.hull import Vessel, vessel, wind_drag_area
from generator.analyses.motion.service_factor import service_factor
from generator.arrays import Array
from generator.case.case import Case
from tests.alone import alone, case_of
from tests.unit.case.faulty import changed

SPEED = np.array([1.0, 2.0, 3.0])
UNTOLD = ("  bottom: smooth\n", "")


@lru_cache
def wren(*exchanges: tuple[str, str]) -> Case:
    return case_of(changed(*exchanges))


@lru_cache
def hull() -> Vessel:
    return vessel(wren().boat, wren().waters, 0.0, wren().propeller)


def water(case: Case) -> Array:
    parts = calm_parts(hull(), case.factors, SPEED)
    return calm_resistance(parts, case.factors, case.boat, 1.0)


def met(wind: float, **factors: Any) -> Array:
    case = wren()
    own = replace(case.factors, **{"wind_and_chop": 1.2, "steering_and_trim": 1.1} | factors)
    return in_weather(hull(), water(case), Weather(wind, 5000.0), SPEED, own)


def test_in_a_calm_neither_steering_nor_chop_tells() -> None:
    assert met(0.0) == pytest.approx(water(wren()) + still_air(hull(), SPEED))


def test_calm_water_takes_hull_and_bottom_alone() -> None:
    case = wren()
    clean = calm_parts(hull(), case.factors, SPEED).total()
    assert water(case) == pytest.approx(clean * case.factors.hull_model)


def test_where_wind_and_sea_are_large_steering_tells_and_chop_does_not() -> None:
    wind = 9.0
    force = weather_force(hull(), Weather(wind, 5000.0), SPEED, wren().factors)
    assert met(wind) == pytest.approx(1.1 * water(wren()) + force)


def test_chop_is_the_least_that_a_light_wind_costs() -> None:
    """At the breeze from which it is whole; without waves so that the wind costs less."""
    least = 1.1 * 1.5 * water(wren()) + still_air(hull(), SPEED)
    assert met(BREEZE, wind_and_chop=1.5, wave_resistance=0.0)[-1] == pytest.approx(least[-1])


def test_steering_and_chop_come_in_without_a_step() -> None:
    over = np.stack([met(wind) for wind in np.linspace(0.0, 2.0 * BREEZE, 50)])
    assert (np.diff(over, axis=0) > 0.0).all()
    for wind in (0.0, BREEZE):
        assert met(wind + 1e-6) == pytest.approx(met(wind), rel=1e-5)


def test_an_untold_bottom_is_drawn_from_clean_to_slimed() -> None:
    told, untold = wren(("bottom: smooth", "bottom: light slime")), wren(UNTOLD)
    row = next(item for item in untold.assumptions if item.path == "boat.bottom_share")
    slimed = fouling_share(told.factors, told.boat)
    ends = [row.low * untold.factors.fouling, row.high * untold.factors.fouling]
    assert ends == pytest.approx([0.0, slimed])
    assert fouling_share(untold.factors, untold.boat) == pytest.approx(0.5 * slimed)
    assert not any(item.path == "boat.bottom_share" for item in told.assumptions)
    assert fouling_share(wren().factors, wren().boat) == 0.0


def test_an_untold_bottom_moves_the_curve() -> None:
    middle = [
        alone(case, 2, 0).findings.power.curves["calm"].output.drain[0, 8]
        for case in (wren(), wren(UNTOLD), wren(("bottom: smooth", "bottom: light slime")))
    ]
    assert middle[0] < middle[1] < middle[2]


def test_what_grows_on_the_bottom_grows_on_the_blades() -> None:
    clean, foul = (
        wren(("bottom: smooth", f"bottom: {state}")).factors.propeller_condition
        for state in ("light slime", "heavy slime")
    )
    assert (clean, foul) == (1.03, 1.10)


def test_the_table_of_the_service_factor_says_what_tells_in_a_calm() -> None:
    case = wren(UNTOLD)
    parts = service_factor(case, alone(case, 2, 0).findings.key).parts
    assert [part.id for part in parts if part.in_calm] == ["fouling", "propeller_condition"]
    assert "not told" in parts[0].name


@pytest.mark.parametrize(("rating", "seal", "standby"), [(15.0, 60.0, 35.0), (5.0, 28.8, 16.8)])
def test_standing_losses_go_by_the_rating(rating: float, seal: float, standby: float) -> None:
    """60 and 35 W at 15 kW; at a third of it (1/3)^(2/3) = 0.481 of them."""
    usual, other = (
        f"continuous_power: {kw} kW, peak_power: {top} kW" for kw, top in ((8, 12), (rating, 20))
    )
    case = wren((usual, other))
    motor = case.options[2].motor
    assert motor is not None
    found = [motor.seal_and_bearings, motor.electronics_standby]
    assert found == pytest.approx([seal, standby], rel=0.005)


def test_a_motor_whose_rating_is_inherited_in_part_has_losses_of_its_own() -> None:
    a, b = (wren().options[place].motor for place in (2, 3))
    assert a is not None
    assert b is not None
    assert b.seal_and_bearings / a.seal_and_bearings == pytest.approx((10 / 8) ** 0.667)


def test_water_cooling_takes_the_heat_overboard() -> None:
    air, water_cooled = (
        wren(("cooling: air", f"cooling: {means}")).options[2].motor for means in ("air", "water")
    )
    assert air is not None
    assert water_cooled is not None
    assert (air.heat_share, water_cooled.heat_share) == (1.0, 0.2)
    factors = wren().factors
    assert warm_share(water_cooled, factors)[0, 0] > warm_share(air, factors)[0, 0] + 0.02


def test_a_told_heat_share_holds_beside_the_cooling() -> None:
    motor = wren(("cooling: air", "cooling: water, heat_share: 0.5")).options[2].motor
    assert motor is not None
    assert motor.heat_share == 0.5


def windage(length: float, beam: float, extra: str = "") -> float:
    text = changed(
        ("length_overall: 9.20 m", f"length_overall: {length} m"),
        ("waterline_length: 7.80 m", f"waterline_length: {0.85 * length} m"),
        ("beam: 3.00 m", f"beam: {beam} m"),
        ("waters:\n", f"{extra}waters:\n"),
    )
    return float(np.asarray(wind_drag_area(case_of(text).boat)))


def test_windage_goes_by_length() -> None:
    """By hand: 1.13 (B FB + hm (dm + df)) + 1.1 hm dw + 1.2 As."""
    for length, beam in ((6.5, 2.3), (14.0, 4.2)):
        mast, tenths = 1.3 * length, length / 10.0
        by_hand = (
            1.13 * (beam * 0.105 * length + mast * (0.0125 * mast + 0.1 * tenths))
            + 1.1 * mast * 0.05 * tenths
            + 1.2 * 1.3 * tenths**2
        )
        assert windage(length, beam) == pytest.approx(by_hand, rel=1e-6)
    assert windage(14.0, 4.2) / windage(6.5, 2.3) > (14.0 / 6.5) ** 1.8


@pytest.mark.parametrize(
    ("more", "less"),
    [("ketch", "yawl"), ("yawl", "cat"), ("cutter", "sloop"), ("sloop", "cat")],
)
def test_windage_goes_by_the_rig(more: str, less: str) -> None:
    areas = [windage(11.0, 3.5, f"  windage: {{rig: {rig}}}\n") for rig in (more, less)]
    assert areas[0] > 1.02 * areas[1]


def test_the_rig_is_read_from_the_type_unless_it_is_told() -> None:
    ketch = wren(("  name: Wren\n", "  name: Wren\n  type: 34-ft steel ketch\n"))
    assert ketch.boat.windage.rig == "ketch"
    both = changed(
        ("  name: Wren\n", "  name: Wren\n  type: ketch\n"),
        ("waters:\n", "  windage: {rig: sloop}\nwaters:\n"),
    )
    assert case_of(both).boat.windage.rig == "sloop"
    assert wren().boat.windage.rig == "sloop"


def test_a_good_trial_fades_into_the_model_outside_its_speeds() -> None:
    scale = Scale(1.1, inside=Covered(1.3, 0.0, 2.0, 3.0))
    found = scale.at(np.array([1.0, 2.0, 2.5, 3.0, 3.0 * 1.25**0.5, 4.0]))
    assert found == pytest.approx([1.1, 1.3, 1.3, 1.3, (1.1 * 1.3) ** 0.5, 1.1])
