"""What stands between hull and screw, by the kind of stern, and where it tells."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from generator.analyses.motion.demand import calm_parts, calm_resistance
from generator.analyses.motion.hull import hull_cautions, stern_gear, vessel
from generator.analyses.motion.power import at_speed
from generator.analyses.percentiles import scalar, spread
from generator.case.case import Case
from generator.case.open import read_case
from generator.physics.hull.stern_gear import SternGear, stern_gear_drag
from tests.alone import alone, case_of
from tests.unit.case.faulty import ROOT, changed, read

KNOT = 1852.0 / 3600.0
SPEED = np.array([2.0, 3.0])
SAILDRIVE = ("installation: shaft", "installation: saildrive")
LONG = ("keel_type: fin", "keel_type: long")


def gear(*exchanges: tuple[str, str]) -> SternGear:
    return stern_gear(case_of(changed(*exchanges)).propeller)


def test_open_shaft_grows_with_the_screw() -> None:
    """16 in: 2.5 x 0.4064 = 1.016 m of 0.067 x 0.4064 = 0.0272 m; 0.07 of the disc, 0.00908 m2."""
    found = gear()
    assert found.shaft_run == pytest.approx(1.016)
    assert found.shaft_diameter == pytest.approx(0.02723, abs=1e-5)
    assert found.frontal_area == pytest.approx(0.00908, abs=1e-5)
    assert found.shaft_slope == pytest.approx(0.20944, abs=1e-5)  # 12 degrees
    assert found.drag_coefficient == 0.6


def test_leg_replaces_shaft_and_bracket() -> None:
    found = gear(SAILDRIVE)
    assert (found.shaft_run, found.frontal_area, found.drag_coefficient) == (0.0, 0.04, 0.15)


def test_aperture_of_a_long_keel_leaves_the_anodes() -> None:
    found = gear(LONG)
    assert found.shaft_run == 0.0
    assert found.frontal_area == pytest.approx(0.02 * np.pi / 4.0 * 0.4064**2)


def test_measured_gear_stands_for_the_shares() -> None:
    own = "  pitch: 11 in\n  shaft_run: 0.7 m\n  shaft_diameter: 30 mm\n  stern_gear_area: 0.005 m2"
    found = gear(("  pitch: 11 in", own))
    assert (found.shaft_run, found.shaft_diameter) == (0.7, 0.03)
    assert found.frontal_area == 0.005


def test_calm_water_feels_it_and_the_bottom_does_not_raise_it() -> None:
    case = case_of(changed(("bottom: smooth", "bottom: heavy slime")))
    hull = vessel(case.boat, case.waters, 0.0, case.propeller)
    parts = calm_parts(hull, case.factors, SPEED)
    drag = stern_gear_drag(hull.stern_gear, SPEED, hull.water_density, hull.water_viscosity)
    assert parts.stern_gear == pytest.approx(drag)
    assert parts.total(0.5) == pytest.approx(1.5 * parts.friction + parts.residuary + drag)


def test_saildrive_and_open_shaft_cost_some_per_cent_at_cruise() -> None:
    for exchange in ((), (SAILDRIVE,)):
        case = case_of(changed(*exchange))
        hull = vessel(case.boat, case.waters, 0.0, case.propeller)
        parts = calm_parts(hull, case.factors, np.array([5.0 * KNOT]))
        total = calm_resistance(parts, case.factors, case.boat, 1.0)
        assert 0.02 < float((parts.stern_gear / total)[0]) < 0.08


def test_another_leg_has_its_own_dimensions(tmp_path: Path) -> None:
    """Else a leg would have the drag coefficient of the bracket that it replaces."""
    own = "  shaft_run: 0.7 m\n  stern_gear_area: 0.003 m2\n  stern_gear_drag: 0.6\n"
    text = changed(("  pitch: 11 in\n", f"  pitch: 11 in\n{own}"))
    case = read(tmp_path, f"{text}    propeller: {{installation: saildrive}}\n")
    before, after = case.propeller, case.options[-1].propeller
    assert (before.shaft_run, before.stern_gear_area, before.stern_gear_drag) == (0.7, 0.003, 0.6)
    assert (after.shaft_run, after.shaft_diameter) == (None, None)
    assert (after.stern_gear_area, after.stern_gear_drag) == (0.04, 0.15)
    assert after.wake_fraction == before.wake_fraction  # of the hull


def battery(case: Case) -> float:
    found = alone(case, 1, 300).findings.power
    drain = found.curves["calm"].output.drain
    return scalar(spread(at_speed(drain, found.speed, 5.0 * KNOT)).middle)


def test_good_trial_holds_the_curve_whatever_the_gear(tmp_path: Path) -> None:
    """Within a hundredth, where the gear is several hundredths of the model."""
    path = ROOT / "cases" / "sloop_30_weekend.yaml"
    text = path.read_text(encoding="utf-8")
    assert text.count("\npropeller:\n") == 1
    bare = text.replace(
        "\npropeller:\n", "\npropeller:\n  stern_gear_area: 0 m2\n  shaft_run: 0 m\n"
    )
    assert battery(read(tmp_path, bare)) == pytest.approx(battery(read_case(path)), rel=0.01)


def test_long_keel_has_a_caution_on_its_waves() -> None:
    for exchange, told in (((), False), ((LONG,), True)):
        case = case_of(changed(*exchange))
        hull = vessel(case.boat, case.waters, 0.0, case.propeller)
        assert hull.keel_body.along is told
        words = [item.quantity for item in hull_cautions(hull)]
        assert ("mean chord of the keel over the waterline" in words) is told
