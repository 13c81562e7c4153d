"""What must hold for every hull of the series, at every speed."""

from __future__ import annotations

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from generator.arrays import Array
from generator.physics.hull.form import HullForm, immersed_deeper, make_form
from generator.physics.hull.friction import friction_coefficient
from generator.physics.hull.resistance import Appendage, CalmResistance, calm_resistance
from generator.physics.hull.roughness import friction_increase, states
from generator.physics.hull.waves import fetch_sea
from generator.physics.hull.windage import wind_force

DENSITY, VISCOSITY = 1025.0, 1.19e-6


@st.composite
def forms(draw: st.DrawFn) -> HullForm:
    """Cruising hulls inside the series: 6 to 13 m waterline, LV 4.4 to 6.0."""
    length = draw(st.floats(6.0, 13.0))
    ratio = draw(st.floats(4.4, 6.0))
    return make_form(
        waterline_length=length,
        waterline_beam=length / draw(st.floats(2.9, 3.8)),
        canoe_draught=None,
        canoe_volume=(length / ratio) ** 3,
        prismatic_coefficient=draw(st.floats(0.53, 0.59)),
        midship_coefficient=draw(st.floats(0.66, 0.77)),
        waterplane_coefficient=draw(st.floats(0.66, 0.71)),
        lcb=draw(st.floats(-0.05, -0.01)),
        lcf=-0.05,
    )


def resistance(form: HullForm, speed: Array) -> CalmResistance:
    length = form.waterline_length
    keel = Appendage(0.2 * form.canoe_wetted_area, 0.16 * length, 0.12)
    rudder = Appendage(0.08 * form.canoe_wetted_area, 0.06 * length, 0.12)
    return calm_resistance(form, keel, rudder, speed, DENSITY, VISCOSITY)


def speeds(form: HullForm, low: float, high: float) -> Array:
    return np.linspace(low, high, 60) * np.sqrt(9.81 * np.asarray(form.waterline_length))


@given(forms())
def test_resistance_rises_with_speed(form: HullForm) -> None:
    total = np.asarray(resistance(form, speeds(form, 0.0, 0.45)).total)
    assert np.all(np.diff(total) > 0.0)
    assert total[0] == 0.0


@given(forms(), st.floats(0.01, 0.10))
def test_resistance_rises_with_mass(form: HullForm, share: float) -> None:
    speed = speeds(form, 0.05, 0.45)
    deeper = immersed_deeper(form, share * form.canoe_volume)
    light, heavy = resistance(form, speed), resistance(deeper, speed)
    assert np.all(np.asarray(heavy.hull_friction) > np.asarray(light.hull_friction))
    assert np.all(np.asarray(heavy.total) > np.asarray(light.total))


@given(forms())
def test_parts_are_never_thrust(form: HullForm) -> None:
    parts = resistance(form, speeds(form, 0.0, 0.45))
    for part in (parts.hull_friction, parts.keel, parts.rudder, parts.residuary):
        assert np.all(np.asarray(part) >= 0.0)


@given(forms(), st.floats(0.0, 1.0))
def test_fouling_never_lowers_resistance(form: HullForm, taken: float) -> None:
    parts = resistance(form, speeds(form, 0.05, 0.45))
    friction = np.asarray(parts.total) - np.asarray(parts.residuary)
    added = [taken * friction_increase(state) * friction for state in states()]
    assert np.all(np.diff(added, axis=0) >= 0.0)
    assert np.all(np.asarray(added) >= 0.0)


@given(st.floats(1e5, 1e9), st.floats(1.001, 10.0))
def test_friction_coefficient_falls_with_reynolds_number(reynolds: float, factor: float) -> None:
    assert friction_coefficient(factor * reynolds) < friction_coefficient(reynolds)


@given(st.floats(0.0, 25.0), st.floats(0.0, 25.0), st.floats(0.0, 1e6), st.floats(0.0, 1e6))
def test_more_wind_and_more_water_raise_no_less_sea(
    wind: float, more_wind: float, fetch: float, more_fetch: float
) -> None:
    low = fetch_sea(wind, fetch)
    high = fetch_sea(wind + more_wind, fetch + more_fetch)
    assert np.all(np.asarray(high) >= np.asarray(low) * (1.0 - 1e-12))


@given(st.floats(1.0, 20.0), st.floats(0.0, 25.0), st.floats(0.0, 5.0), st.floats(0.01, 5.0))
def test_wind_force_rises_with_the_wind(
    area: float, wind: float, speed: float, more: float
) -> None:
    assert wind_force(area, wind + more, speed) > wind_force(area, wind, speed)
