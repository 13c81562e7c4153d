"""Can every assessed criterion go, be conditional and fail, each through a case?"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.power import at_points
from generator.analyses.percentiles import spread
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    Judgement,
)
from generator.case.case import Case
from generator.case.open import read_case
from generator.draws import make_draws
from generator.study import OptionStudy, run
from tests.alone import alone

CASES = Path(__file__).parents[3] / "cases"
KNOT = 1852 / 3600
ELECTRIC = 2  # place of the battery option in the case
DRAWS = 200  # of a hundred her tenth percentile is too coarse for its margin of a twentieth
OF_OTHERS = (25, 26, 27)  # criteria that look at the diesels too


@lru_cache(maxsize=1)
def sloop() -> Case:
    return read_case(CASES / "sloop_30_weekend.yaml")


@lru_cache(maxsize=8)
def studied(case: Case) -> OptionStudy:
    return run(case, make_draws(case, DRAWS)).options[ELECTRIC]


def judged(case: Case) -> OptionStudy:
    """By all that decides; what it costs beside the diesels is only told."""
    return alone(case, ELECTRIC, DRAWS, year=True)


def judgement(case: Case, number: int) -> Judgement:
    found = studied(case) if number in OF_OTHERS else alone(case, ELECTRIC, DRAWS)
    return next(row for row in found.verdict.judgements if row.criterion.id == number)


def changed(part: str, **values: Any) -> Case:
    option = sloop().options[ELECTRIC]
    other = replace(option, **{part: replace(getattr(option, part), **values)})
    options = (*sloop().options[:ELECTRIC], other)
    gone = tuple(f"options[{ELECTRIC}].{part}.{name}" for name in values)
    kept = tuple(item for item in sloop().assumptions if item.path not in gone)
    return replace(sloop(), options=options, assumptions=kept)


def turning_as_rated(share: float) -> Case:
    """The same power at other rated turns: above 1 her propeller does not let it reach them."""
    motor = sloop().options[ELECTRIC].motor
    assert motor is not None
    return changed("motor", rated_speed=share * motor.rated_speed)


def with_bank(hours: float) -> Case:
    return changed("bank", charge=hours * 3600.0)


@pytest.mark.parametrize(("amperes", "result"), [(240, GO), (200, CONDITIONAL), (60, NO)])
def test_battery_currents_follow_the_discharge_limit(amperes: float, result: str) -> None:
    """The whole of it for good, of which the motor takes some 220 A; 60 A at cruise."""
    assert judgement(changed("bank", discharge_limit=amperes), 14).result == result


def test_one_failed_deciding_row_makes_her_not_suitable() -> None:
    found = judged(with_bank(280)).verdict
    decided = {row.criterion.id for row in found.judgements if row.decides and row.result == NO}
    assert decided == {1}
    assert found.word == "Not suitable as specified"
    first = found.conditions[0]
    assert found.judgements[first].criterion.id == 1


def test_rows_that_are_not_assessed_do_not_cap_the_word() -> None:
    kept = tuple(item for item in sloop().assumptions if item.path != "boat.worth")
    unvalued = replace(sloop(), boat=replace(sloop().boat, worth=None), assumptions=kept)
    found = judged(unvalued).verdict
    assert found.word == "Suitable", [
        (row.criterion.name, row.result) for row in found.judgements if row.result not in (GO,)
    ]
    assert sum(row.result == "not assessed" for row in found.judgements) > 0


def test_holding_off_takes_the_peak_only_if_it_lasts_half_an_hour() -> None:
    short = changed("motor", continuous_power=6e3, peak_time=1799.0)
    long = changed("motor", continuous_power=6e3, peak_time=1800.0)
    assert judgement(short, 4).result == NO
    assert judgement(long, 4).result == GO


def test_flip_of_the_must_make_leg_does_flip_it() -> None:
    """The bank that the failed row asks for, put aboard, passes."""
    row = judgement(with_bank(120), 1)
    wanted = float(spread(row.facts.wanted).high[0]) / 51.2 / 3600.0
    assert judgement(with_bank(wanted * 1.02), 1).result == GO


def told(case: Case, number: int) -> Judgement:
    row = judgement(case, number)
    assert row.criterion.role == "tell"
    assert studied(case).verdict.word == "Go"  # a row that tells never moves the word
    return row


def cheaper(share: float) -> Case:
    """The sloop with the prices of her electric option scaled."""
    option = sloop().options[ELECTRIC]
    costs = tuple(replace(item, amount=item.amount * share) for item in option.costs)
    gone = f"options[{ELECTRIC}].costs"
    kept = tuple(item for item in sloop().assumptions if not item.path.startswith(gone))
    options = (*sloop().options[:ELECTRIC], replace(option, costs=costs))
    return replace(sloop(), options=options, assumptions=kept)


def test_a_reserve_that_the_warm_motor_cannot_spend_is_a_shortage_of_the_motor() -> None:
    """3.5 kW do not hold her off a shore: told in row 4, and no blame of the bank in row 3."""
    weak = changed("motor", continuous_power=3.5e3, peak_power=4.5e3)
    assert judgement(weak, 4).result == NO
    row = judgement(weak, 3)
    assert (row.result, row.facts.outcome) == (GO, "kept")
    assert np.all(row.facts.held < np.asarray(row.facts.hold_time))


def test_a_reserve_kept_by_construction_is_no_reason_on_page_one() -> None:
    found = studied(sloop())
    named = [found.verdict.judgements[place].criterion.id for place in found.verdict.reasons]
    assert 3 not in named


def test_continuous_power_is_what_the_torque_lets_her_propeller_take() -> None:
    """By hand: torque of the plate is power over rated turns, and turns fall short of rated."""
    case = turning_as_rated(1.4)
    for tried in (sloop(), case):
        found = alone(tried, ELECTRIC, DRAWS).findings
        motor, reached = found.option.motor, found.key.reached
        assert motor is not None
        plate = motor.continuous_power / motor.rated_speed
        assert np.all(reached.torque <= plate * (1.0 + 1e-9))
        assert np.all(reached.power <= motor.continuous_power * (1.0 + 1e-9))
    assert motor is not None
    assert reached.limit == "torque"
    assert reached.torque[0, 0] == pytest.approx(plate)
    assert reached.turns[0, 0] < found.match.turns[0, 0]  # which would take more than the torque
    assert reached.power[0, 0] < 0.8 * motor.continuous_power
    each = judgement(case, 8).per_draw
    tonnes = np.asarray(found.weight.displacement) / 1e3
    assert each is not None
    np.testing.assert_allclose(each, reached.shaft_power / 1e3 / tonnes)


def test_where_the_limit_meets_the_propeller_the_curve_says_the_same() -> None:
    """The demand at the speed that is told takes the power that is told."""
    case = turning_as_rated(1.4)
    found = alone(case, ELECTRIC, DRAWS).findings
    reached, scale = found.key.reached, found.trial.scale
    speed = np.array([reached.speed[0, 0]])
    curve = at_points(found.case, found.option, found.power, scale, speed, Weather(0.0, 1.0))
    assert curve.demand.shaft_power[0, 0] == pytest.approx(reached.shaft_power[0, 0], rel=0.005)
    assert curve.output.turns[0, 0] == pytest.approx(reached.turns[0, 0], rel=0.003)
