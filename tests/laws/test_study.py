"""What must hold for every study, whatever the boat: signs, order, energy, spellings."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.arrays import Numbers
from generator.case.case import Case
from generator.case.open import read_case
from generator.draws import make_draws
from generator.physics.hull.roughness import states
from generator.report.numbers import Display, look_of, shown
from generator.report.results_file import build
from generator.study import run
from tests.alone import alone

CASES = Path(__file__).parents[2] / "cases"
SLOOP = CASES / "sloop_30_weekend.yaml"


@lru_cache(maxsize=1)
def sloop() -> Case:
    return read_case(SLOOP)


def electric(case: Case) -> Findings:
    """The battery option at the best estimate, without trial so that nothing pulls it back."""
    case = replace(case, trial=None, assumptions=())  # nothing is drawn, the fields stand
    return alone(case, 2, 0).findings


def heavier(case: Case, mass: Numbers) -> Case:
    boat = case.boat
    return replace(case, boat=replace(boat, hull=replace(boat.hull, displacement=mass)))


def test_shaft_power_rises_with_speed_and_mass() -> None:
    """65 masses in steps of 50 kg, as the rows of one study."""
    masses = np.arange(3600.0, 6801.0, 50.0)
    case = heavier(sloop(), masses[:, np.newaxis])
    case = replace(case, trial=None, assumptions=(), options=case.options[2:3])
    curves = run(case, make_draws(case, 0)).options[0].findings.power.curves
    assert len(curves) >= 4
    for curve in curves.values():
        power, good = np.atleast_2d(curve.demand.shaft_power), np.atleast_2d(curve.demand.feasible)
        assert power.shape[0] == len(masses)
        for row, stands in zip(power, good, strict=True):
            assert stands.sum() > 4
            assert np.all(np.diff(row[stands]) > 0)
    assert np.all(np.diff(np.atleast_2d(curves["calm"].demand.shaft_power), axis=0) > 0)


def test_shaft_power_never_falls_with_fouling() -> None:
    powers = [
        np.atleast_2d(
            electric(replace(sloop(), boat=replace(sloop().boat, bottom=state)))
            .power.curves["calm"]
            .demand.shaft_power
        )[0]
        for state in states()
    ]
    for cleaner, fouler in pairwise(powers):
        assert np.all(fouler > cleaner)


def test_more_wind_asks_for_more_power_at_every_speed() -> None:
    curves = electric(sloop()).power.curves
    powers = [
        np.atleast_2d(curves[name].demand.shaft_power)[0]
        for name in ("calm", "wind_15", "wind_20", "wind_25")
    ]
    slow = slice(0, 16)  # up to about 5 kn: above, chop in a calm may outweigh a light wind
    for less, more in pairwise(powers):
        assert np.all(more[slow] > less[slow])


def test_energy_taken_from_the_battery_is_thrust_work_and_losses() -> None:
    found = electric(sloop())
    option, curve = found.option, found.power.curves["calm"]
    motor, propeller = option.motor, option.propeller
    assert motor is not None
    demand, output = curve.demand, curve.output
    after_cable = output.drain * motor.cable_efficiency
    at_motor = np.asarray(output.power)
    after_gear = (at_motor - motor.seal_and_bearings) * motor.gear_efficiency
    work = demand.thrust * demand.speed * (1.0 - propeller.wake_fraction)
    stages = [output.drain, after_cable, at_motor, after_gear, work]
    good = np.atleast_2d(demand.feasible)[0]
    for before, after in pairwise(stages):
        loss = np.atleast_2d(before - after)[0][good]
        assert np.all(loss > 0)
    np.testing.assert_allclose(
        np.atleast_2d(after_gear)[0][good], np.atleast_2d(demand.shaft_power)[0][good], rtol=1e-12
    )
    np.testing.assert_allclose(
        np.atleast_2d(demand.torque * demand.shaft_speed)[0][good],
        np.atleast_2d(demand.shaft_power)[0][good],
        rtol=1e-9,
    )


def test_reserve_is_never_above_what_is_usable_and_left_is_the_rest() -> None:
    found = alone(sloop(), 2, 50).findings
    bank = found.bank
    assert bank is not None
    left = np.asarray(found.store.usable_aged) - found.reserve.of_aged
    np.testing.assert_allclose(bank.available_aged, np.maximum(left, 0.0))
    assert np.all(found.reserve.of_aged >= 0.2 * np.asarray(found.store.usable_aged) - 1e-6)


SPELLINGS = (
    ("7.60 m", "24.934383 ft"),
    ("{value: 4.30 t,", "{value: 4300 kg,"),
    ("15 in", "381 mm"),
    ("{value: 13.4 kW,", "{value: 13400 W,"),
    ("55 l", "0.055 m3"),
    ("4.8 kn", "2.4693333333 m/s"),
)


def spelt(folder: Path, old: str, new: str) -> Case:
    text = SLOOP.read_text(encoding="utf-8")
    assert old in text, old
    path = folder / SLOOP.name
    path.write_text(text.replace(old, new), encoding="utf-8")
    return read_case(path)


@pytest.mark.parametrize(("old", "new"), SPELLINGS)
def test_units_in_any_spelling_give_the_same_study(old: str, new: str, tmp_path: Path) -> None:
    one, other = electric(sloop()), electric(spelt(tmp_path, old, new))
    for name in ("calm", "wind_20"):
        np.testing.assert_allclose(
            np.atleast_2d(other.power.curves[name].output.drain),
            np.atleast_2d(one.power.curves[name].output.drain),
            rtol=1e-6,
        )
    np.testing.assert_allclose(other.cost.present_value, one.cost.present_value, rtol=1e-6)


def test_metric_and_imperial_displays_agree() -> None:
    case = sloop()
    results = build(case, run(case, make_draws(case, 20)))
    metric, imperial = Display("metric", "GBP"), Display("imperial", "GBP")
    for key, form, factor in (
        ("waterline_length_m", "length", 0.3048),
        ("displacement_kg", "mass", 0.45359237),
    ):
        value = results["boat"][key]
        look = look_of(form, imperial)
        assert value * look.scale == pytest.approx(value / factor)
        assert shown(value, form, metric) != shown(value, form, imperial)
    speed = results["boat"]["hull_speed_kn"]
    assert shown(speed, "speed", metric) == shown(speed, "speed", imperial)


def test_same_case_and_seed_give_the_same_results() -> None:
    case = sloop()
    first, second = (build(case, run(case, make_draws(case, 30))) for _ in range(2))
    assert first == second
