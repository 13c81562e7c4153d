"""The ladder against the balance solved the other way, and the pull against its limits."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.analyses.handling.headwind import headwind
from generator.analyses.motion.demand import (
    Weather,
    calm_parts,
    calm_resistance,
    in_weather,
    sea_state,
    thrust_kept,
)
from generator.analyses.motion.plant import LIMITS, plant_output
from generator.analyses.motion.power import at_points
from generator.analyses.motion.pull import greatest_pull
from generator.analyses.store.limits import limits
from generator.analyses.verdict.criteria.holding_off import judge as holding_off
from generator.case.case import Case
from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.numbers import Display
from generator.report.tree import Telling, tree
from generator.study import run

KNOT = 1852.0 / 3600.0
KETCH = Path(__file__).parents[3] / "cases" / "ketch_34_two_motors.yaml"


@lru_cache
def case() -> Case:
    return read_case(KETCH)


@lru_cache
def found() -> tuple[Findings, ...]:
    study = run(case(), make_draws(case(), 0))
    return tuple(option.findings for option in study.options)


@pytest.mark.parametrize("option", [0, 1, 2, 3])
@pytest.mark.parametrize("wind", [10, 15, 20, 24])
def test_at_the_speed_made_good_the_plant_is_at_its_limit(option: int, wind: int) -> None:
    """The other solver, thrust to turns, finds a load of 1 at the ladder's speed.

    Tolerance 2 per cent: the ladder is straight between 14 speeds.
    """
    of = found()[option]
    for ladder, load in ((of.headwind.continuous, "load"), (of.headwind.peak, "peak_load")):
        speed = ladder.speed[0, [wind]]
        if speed[0] <= 0.0:
            continue
        weather = Weather(wind * KNOT, of.case.waters.fetch)
        curve = at_points(of.case, of.option, of.power, of.trial.scale, speed, weather)
        assert float(np.atleast_2d(getattr(curve.output, load))[0, 0]) == pytest.approx(
            1.0, abs=0.02
        )


def test_calm_end_of_the_ladder_is_the_calm_top_speed() -> None:
    """Tolerance 0.03 kn: between two grids of speed."""
    for of in found():
        calm = of.headwind.continuous.speed[0, 0]
        assert calm / KNOT == pytest.approx(of.power.top.continuous[0, 0] / KNOT, abs=0.03)


@pytest.mark.parametrize("wind", [0, 3, 6, 12, 20])
def test_the_ladder_asks_what_the_legs_ask(wind: int) -> None:
    """Within 3 per cent: at 2 kn the chord between two of 14 speeds lies 2.5 above the curve."""
    of = found()[2]
    hull, factors = of.power.vessel, replace(of.case.factors, wind_and_chop=1.5)
    ladder = headwind(replace(of.case, factors=factors), of.option, of.power, of.trial.scale)
    weather = Weather(wind * KNOT, of.case.waters.fetch)
    speed = np.array([2.0 * KNOT])
    water = calm_resistance(
        calm_parts(hull, factors, speed), factors, of.case.boat, of.trial.scale.at(speed)
    )
    met = in_weather(hull, water, weather, speed, factors)
    kept = thrust_kept(factors, sea_state(hull, weather).height, hull)
    asked = met / kept / (1.0 - np.asarray(of.option.propeller.thrust_deduction))
    assert ladder.need[wind] == pytest.approx(float(asked.flat[0]), rel=0.03)


def test_chop_slows_her_in_a_light_wind_and_not_in_a_calm() -> None:
    of = found()[2]
    calm, light = zip(
        *(
            headwind(
                replace(of.case, factors=replace(of.case.factors, wind_and_chop=chop)),
                of.option, of.power, of.trial.scale,
            ).continuous.speed[0, [0, 6]]
            for chop in (1.0, 1.5)
        ),
        strict=True,
    )  # fmt: skip
    assert calm[0] == calm[1]
    assert light[1] < 0.97 * light[0]


@pytest.mark.parametrize(
    "limit", ["power", "torque", "turns", "battery current", "battery voltage"]
)
def test_greatest_pull_stops_at_each_limit(limit: str) -> None:
    """Only one limit is tight; it is the one named, and the plant's own share of it is 1."""
    of = found()[2]
    motor, bank, screw = of.option.motor, of.option.bank, of.option.propeller
    assert motor is not None
    assert bank is not None
    wide = replace(motor, continuous_power=60e3, peak_power=60e3)
    assert of.power.aged is not None
    loose = replace(bank, discharge_limit=5000.0)
    stiff = replace(of.power.aged, resistance_half=np.full((1, 1), 1e-4))
    if limit == "power":
        wide = replace(
            motor, continuous_power=6e3, peak_power=6e3, rated_speed=77.0
        )  # 6 kW at 79 rad/s
    if limit == "torque":
        wide = replace(motor, continuous_power=6e3, peak_power=6e3, rated_speed=300.0)
    if limit == "battery current":
        loose = replace(bank, discharge_limit=100.0)
    stiff = replace(stiff, limits=limits(loose))
    if limit == "battery voltage":
        stiff = replace(stiff, resistance_half=np.full((1, 1), 0.02))
    option = replace(of.option, motor=wide, bank=loose, propeller=screw)
    power = replace(of.power, aged=stiff)
    pull = greatest_pull(option, power, of.case.factors, np.array([1.5]), peak=False)
    assert LIMITS[int(pull.binding.flat[0])] == limit
    demand = of.power.curves["calm"].demand
    at = replace(demand, shaft_speed=pull.shaft_speed, shaft_power=pull.shaft_power)
    output = plant_output(option, at, of.case.factors, stiff)
    assert float(output.load.flat[0]) == pytest.approx(1.0, abs=1e-5)
    assert LIMITS[int(output.binding.flat[0])] == limit


def test_twenty_five_knots_over_a_long_fetch_are_not_answered() -> None:
    """50 km: 1.47 m of sea against a limit of some 0.65 m, for every option alike."""
    waters = replace(case().waters, fetch=50e3, exposure="coastal")
    kept = tuple(item for item in case().assumptions if item.path != "waters.fetch")
    rough = replace(case(), waters=waters, assumptions=kept)
    study = run(rough, make_draws(rough, 0), year=False)
    for option in study.options:
        of = option.findings
        assert bool(of.headwind.beyond_limit[0, 25])
        row = next(row for row in option.verdict.judgements if row.criterion.id == 4)
        assert row.facts.beyond_sea
        said = tree(row.facts, "here", Telling(Display("metric", "GBP")))["words"]
        assert "beyond what the wave formula covers (0.65\u00a0m)" in said
        # no speed passes there; the engine's pull may, for it needs no sea
        assert row.facts.outcome != "go" or row.facts.by == "pull"
        unlike = replace(of, yard=replace(of.yard, counts=False))
        assert holding_off(row.criterion, unlike).facts.outcome != "go"
