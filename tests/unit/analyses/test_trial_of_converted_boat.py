"""Battery power read on a converted boat goes through the same reduction as diesel readings."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from generator.analyses.motion.demand import Scale, Weather
from generator.analyses.motion.power import at_points
from generator.case.trial import SeaTrial, TrialRow
from generator.draws import make_draws
from generator.study import run
from tests.unit.analyses.test_hull_band import KNOT, guessed

SPEEDS = np.array([3.0, 3.8, 4.6, 5.4, 6.0]) * KNOT


@pytest.mark.parametrize("truth", [0.8, 1.25])
def test_readings_at_the_battery_find_the_curve(truth: float) -> None:
    """Shunt and voltmeter at 5 % against 25 %: the hull model pulls by a twentieth at most."""
    case = guessed("sloop_30_weekend")
    before = run(case, make_draws(case, 0)).options[2].findings
    assert before.option.motor is not None
    curve = at_points(case, before.option, before.power, Scale(truth), SPEEDS, Weather(0.0, 1.0))
    rows = tuple(
        TrialRow(
            engine_speed=float(turns), engine_speed_back=None, speed_out=float(speed),
            speed_back=float(speed), wind=2.0, depth=20.0, fuel_rate=None,
            alternator_power=None, curve_power=None, battery_power=float(watts), line=1,
        )
        for speed, turns, watts in zip(
            SPEEDS, np.atleast_2d(curve.output.turns)[0], np.atleast_2d(curve.output.drain)[0],
            strict=True,
        )
    )  # fmt: skip
    trial = SeaTrial(
        with_option="a", rows=rows, full_throttle_speed=None, propeller_law_exponent=2.85
    )
    study = run(replace(case, trial=trial), make_draws(case, 0))
    found = study.trial
    assert [point.used for point in found.points] == [True] * len(rows)
    assert {item.method for point in found.points for item in point.readings} == {"battery"}
    level = np.log(found.scale.at(np.array([4.6 * KNOT])))
    assert float(level.flat[0]) == pytest.approx(np.log(truth), rel=0.08)
    assert found.turns_over_model == pytest.approx(1.0, abs=0.02)
    assert not found.turns_wrong
