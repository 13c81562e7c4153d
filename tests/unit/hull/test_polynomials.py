"""The bare-hull polynomials and the keel's, by hand."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from generator.physics.hull.form import HullForm
from generator.physics.hull.polynomials import (
    KeelBody,
    cautions_2008,
    keel_curve,
    keel_residuary,
    keel_share_at,
    keuning1998_share,
    keuning2008_share,
)

# Round numbers: V^(1/3) = 1.6, V^(2/3) = 2.56, V^(1/3)/L = 0.2, xb/L = 0.53, xf/L = 0.55.
HULL = HullForm(
    waterline_length=8.0,
    waterline_beam=2.8,
    canoe_draught=0.5,
    canoe_volume=4.096,
    prismatic_coefficient=0.56,
    midship_coefficient=0.70,
    lcb=-0.03,
    lcf=-0.05,
    waterplane_area=16.0,
    canoe_wetted_area=20.0,
)


def test_form_of_1998_at_a_node() -> None:
    """Fn 0.40, V^(2/3)/Aw 0.16, B/L 0.35, V^(2/3)/Sc 0.128, xb/xf 0.963636.

    first bracket 2.3095 x 0.53 - 1.5152 x 0.56 + 0.0751 x 0.16 - 0.0858 x 0.35
    = 1.224035 - 0.848512 + 0.012016 - 0.030030 = 0.357509
    second -0.5349 x 0.128 + 0.1715 x 0.963636 - 2.455 x 0.2809 + 1.1865 x 0.3136
    = -0.068467 + 0.165264 - 0.689610 + 0.372086 = -0.220727
    f = -0.0064 + 0.2 (0.357509 - 0.220727) = 0.020956
    """
    assert keuning1998_share(HULL, np.array([0.40]))[0] == pytest.approx(0.020956, abs=1e-6)


def test_form_of_2008_at_a_node() -> None:
    """Fn 0.40, B/Tc 5.6.

    -0.4034 x 0.53 - 0.125 x 0.56 + 0.0273 x 0.16 - 0.1341 x 0.35 + 0.3578 x 0.963636
    + 0.0045 x 5.6 + 0.1115 x 0.70
    = -0.213802 - 0.070000 + 0.004368 - 0.046935 + 0.344789 + 0.025200 + 0.078050 = 0.121670
    f = -0.0064 + 0.2 x 0.121670 = 0.017934
    """
    assert keuning2008_share(HULL, np.array([0.40]))[0] == pytest.approx(0.017934, abs=1e-6)


def test_keel_at_a_node() -> None:
    """Fn 0.35, v = 0.35 (9.81 x 8)^(1/2); Vk 0.216 m3, its cube root 0.6.

    T/B 1.8/2.8 = 0.642857, (0.5 + 0.55)/0.6 = 1.75, V/Vk 18.962963:
    -0.00713 + 0.02632 x 0.642857 - 0.00232 x 1.75 + 0.00039 x 18.962963
    = -0.00713 + 0.016920 - 0.00406 + 0.007396 = 0.013126
    x 1025 x 9.81 x 0.216 = 28.508 N
    """
    keel = KeelBody(volume=0.216, centre_depth=0.55, total_draught=1.8)
    speed = 0.35 * np.sqrt(9.81 * 8.0)
    assert keel_residuary(HULL, keel, speed, 1025.0) == pytest.approx(28.508, abs=0.01)


def test_no_thrust_from_waves() -> None:
    froude = np.linspace(0.0, 0.6, 61)
    assert keuning1998_share(HULL, froude).min() >= 0.0
    assert keuning2008_share(HULL, froude).min() >= 0.0


def test_no_answer_above_the_last_node() -> None:
    assert np.isnan(keuning1998_share(HULL, np.array([0.601]))[0])
    assert np.isnan(keuning2008_share(HULL, np.array([0.751]))[0])


@pytest.mark.parametrize(("midship", "answers"), [(0.62, False), (0.63, True), (0.81, False)])
def test_form_of_2008_refuses_odd_midship_coefficients(midship: float, answers: bool) -> None:
    hull = replace(HULL, midship_coefficient=midship)
    assert np.isfinite(keuning2008_share(hull, np.array([0.40]))[0]) == answers
    assert bool(cautions_2008(hull)) is not answers


def test_refusal_is_by_draw() -> None:
    hull = replace(HULL, midship_coefficient=np.array([[0.60], [0.70]]))
    share = keuning2008_share(hull, np.array([0.30, 0.40]))
    assert np.isnan(share).tolist() == [[True, True], [False, False]]
    assert cautions_2008(hull)[0].share_outside == 0.5


# A long keel by the shares of the register on this hull: T/B 0.607143, (0.5 + 0.46)/0.72 = 1.3333,
# V/Vk 10.97394.
LONG = KeelBody(volume=0.373248, centre_depth=0.46, total_draught=1.7, along=True)


def at_nodes(keel: KeelBody, *froude: float) -> list[float]:
    return [float(f) for f in keel_share_at(keel_curve(HULL, keel), np.array(froude))]


def test_polynomial_has_a_dent_for_a_long_keel() -> None:
    """The reason of the bridge: at Fn 0.30 lower than at 0.25, and a twelfth of that at 0.35.

    0.30: -0.0111 + 0.01421 x 0.607143 + 0.00069 x 1.33333 + 0.00021 x 10.97394 = 0.000752
    0.25: -0.0055 + 0.00597 x 0.607143 + 0.0039 x 1.33333 - 0.00009 x 10.97394 = 0.002337
    """
    low, dent, high = at_nodes(replace(LONG, along=False), 0.25, 0.30, 0.35)
    assert [low, dent] == pytest.approx([0.002337, 0.000752], abs=1e-6)
    assert dent < high / 12.0


def test_waves_of_a_long_keel_rise_with_speed_through_its_own_other_nodes() -> None:
    froude = np.linspace(0.15, 0.40, 51)
    assert np.all(np.diff(keel_share_at(keel_curve(HULL, LONG), froude)) > 0.0)
    others = (0.20, 0.25, 0.35, 0.40, 0.60)
    assert at_nodes(LONG, *others) == pytest.approx(at_nodes(replace(LONG, along=False), *others))


def test_bridge_lies_near_the_power_of_speed_through_its_neighbours() -> None:
    """Within a tenth: f(0.25) (f(0.35)/f(0.25))^(ln(0.30/0.25)/ln(0.35/0.25))."""
    low, bridge, high = at_nodes(LONG, 0.25, 0.30, 0.35)
    power = np.log(0.30 / 0.25) / np.log(0.35 / 0.25)
    assert bridge == pytest.approx(low * (high / low) ** power, rel=0.10)


def test_bridge_is_by_draw() -> None:
    drawn = replace(LONG, volume=np.array([[0.35], [0.40]]))
    froude = np.array([0.28, 0.30, 0.33])
    found = keel_share_at(keel_curve(HULL, drawn), froude)
    for row, volume in zip(found, (0.35, 0.40), strict=True):
        alone = keel_share_at(keel_curve(HULL, replace(LONG, volume=volume)), froude)
        np.testing.assert_allclose(row, alone)
