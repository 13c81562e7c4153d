"""Do rows 5, 7 to 10, 23, 24 and 28 change at each of their limits, by the rule of chance?

Findings of one boat are given the figure that a row reads, draw by draw: just on this side of a
limit and just on that. Where a whole case is asked, the study runs.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.analyses.percentiles import spread
from generator.analyses.verdict.criteria.catalogue import criteria
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    NOT_APPLICABLE,
    TOLD,
    Judgement,
)
from generator.analyses.verdict.criteria.evaluate import JUDGES
from generator.arrays import Array
from generator.case.case import Case
from generator.case.open import read_case
from tests.alone import alone

CASES = Path(__file__).parents[4] / "cases"
KNOT = 1852 / 3600
ELECTRIC, DRAWS = 2, 200
EDGE = 1e-4


@lru_cache(maxsize=1)
def sloop() -> Case:
    return read_case(CASES / "sloop_30_weekend.yaml")


@lru_cache(maxsize=1)
def base() -> Findings:
    return alone(sloop(), ELECTRIC, DRAWS).findings


def judged(number: int, found: Findings) -> Judgement:
    return JUDGES[number](next(row for row in criteria() if row.id == number), found)


def draws(value: float, share: float = 1.0, otherwise: float = 0.0) -> Array:
    """A best estimate and the draws: a value in a share of them, another in the rest."""
    many = round(share * DRAWS)
    return np.array([value, *[value] * many, *[otherwise] * (DRAWS - many)])[:, np.newaxis]


def under(found: Any, part: str, **values: Any) -> Any:
    """The findings with something of the case, the option or a result changed; `a.b` goes deep."""
    head, _, rest = part.partition(".")
    inner = getattr(found, head)
    changed = under(inner, rest, **values) if rest else replace(inner, **values)
    return replace(found, **{head: changed})


def no_yardstick(found: Findings) -> Any:
    return under(found, "yard", counts=False)


# 5: the owner's cruise for good


def holding(knots: Array) -> Any:
    """A motor whose load in a calm is 1 at a speed, per draw; planned cruise is 5 kn."""
    found = under(base(), "case.planning", cruise_speed=5.0 * KNOT)
    calm = found.power.curves["calm"]
    load = found.power.speed / (np.maximum(knots, 1e-3) * KNOT)
    curve = replace(calm, output=replace(calm.output, motor_load=load))
    return under(found, "power", curves={**found.power.curves, "calm": curve})


@pytest.mark.parametrize(
    ("knots", "share", "otherwise", "result"),
    [
        (5.0 + EDGE, 0.90, 3.0, GO),
        (5.0 + EDGE, 0.89, 4.51, CONDITIONAL),
        (5.0 + EDGE, 0.50, 3.0, CONDITIONAL),
        (5.0 + EDGE, 0.49, 3.0, NO),
        (5.0 - EDGE, 1.0, 0.0, CONDITIONAL),  # half a knot less in all
        (4.5 + EDGE, 0.90, 3.0, CONDITIONAL),
        (4.5 + EDGE, 0.89, 3.0, NO),
        (4.5 - EDGE, 1.0, 0.0, NO),
    ],
)
def test_cruise_is_held_for_good(knots: float, share: float, otherwise: float, result: str) -> None:
    row = judged(5, holding(draws(knots, share, otherwise)))
    assert row.result == result
    assert row.facts.outcome == result
    assert row.decides


def test_cruise_that_the_screw_keeps_back_is_mended_by_a_reduction() -> None:
    """12 kW are there where 2.4 kW are needed: not power but turns or torque is short."""
    facts = judged(5, holding(draws(4.0))).facts
    assert facts.by_screw
    assert facts.ratio == base().match.advised
    assert not judged(5, holding(draws(5.5))).facts.by_screw
    motor = base().option.motor
    assert motor is not None
    weak = under(holding(draws(4.0)), "option.motor", continuous_power=1500.0)
    assert not judged(5, weak).facts.by_screw  # no reduction makes power
    assert judged(5, weak).facts.ratio is None


@pytest.mark.parametrize(("kilowatts", "result"), [(10.0, GO), (4.5, CONDITIONAL), (3.2, NO)])
def test_cruise_follows_the_rating_of_the_case(kilowatts: float, result: str) -> None:
    option = sloop().options[ELECTRIC]
    assert option.motor is not None
    motor = replace(option.motor, continuous_power=kilowatts * 1e3)
    options = (*sloop().options[:ELECTRIC], replace(option, motor=motor))
    gone = f"options[{ELECTRIC}].motor.continuous_power"
    kept = tuple(item for item in sloop().assumptions if item.path != gone)
    case = replace(sloop(), options=options, assumptions=kept)
    assert judged(5, alone(case, ELECTRIC, DRAWS).findings).result == result


# 7: calm top speed for ten minutes

HULL, CRUISE = 7.0, 5.0


def topped(knots: Array, engine: float = 20.0, lasting: Array | None = None) -> Any:
    """Hull speed 7 kn, planned cruise 5 kn: 6.3 or 6 kn pass, 5.6 or 5.5 kn with conditions."""
    found = under(base(), "case.planning", cruise_speed=CRUISE * KNOT)
    found = under(found, "power.vessel", hull_speed=np.array([[HULL * KNOT]]))
    steady = knots if lasting is None else lasting
    found = under(found, "power.top", peak=knots * KNOT, continuous=steady * KNOT)
    return under(found, "yard", top=draws(engine * KNOT, 1.0))


@pytest.mark.parametrize(
    ("knots", "share", "cruise", "result"),
    [
        (6.3 + EDGE, 0.90, 6.0, GO),  # 0.9 of hull speed
        (6.3 + EDGE, 0.89, 6.0, CONDITIONAL),
        (6.3 - EDGE, 1.0, 6.0, CONDITIONAL),
        (6.0 + EDGE, 0.90, 5.0, GO),  # cruise and a knot
        (6.0 - EDGE, 1.0, 5.0, CONDITIONAL),
        (6.0 + EDGE, 0.50, 5.0, CONDITIONAL),
        (6.0 + EDGE, 0.49, 5.0, NO),
        (5.6 + EDGE, 0.90, 6.0, CONDITIONAL),  # 0.8 of hull speed
        (5.6 - EDGE, 1.0, 6.0, NO),
        (5.5 + EDGE, 0.90, 5.0, CONDITIONAL),  # cruise and half a knot
        (5.5 + EDGE, 0.89, 5.0, NO),
        (5.5 - EDGE, 1.0, 5.0, NO),
    ],
)
def test_calm_speed_by_hull_and_by_plan(
    knots: float, share: float, cruise: float, result: str
) -> None:
    found = under(topped(draws(knots, share)), "case.planning", cruise_speed=cruise * KNOT)
    row = judged(7, found)
    assert row.result == result
    assert not row.facts.by_engine


@pytest.mark.parametrize(
    ("knots", "engine", "result"),
    [
        (5.75, 5.75 / 0.9501, GO),
        (5.75, 5.75 / 0.9499, CONDITIONAL),
        (5.45, 5.45 / 0.9501, CONDITIONAL),  # short of 0.8 and of half a knot: no plain pass
        (5.45, 5.45 / 0.8501, CONDITIONAL),
        (5.45, 5.45 / 0.8499, NO),
    ],
)
def test_calm_speed_beside_the_engine_that_is_in_her(
    knots: float, engine: float, result: str
) -> None:
    found = topped(draws(knots), engine)
    assert judged(7, found).result == result
    alone_ = judged(7, no_yardstick(found)).result
    assert alone_ == (NO if knots < 5.5 else CONDITIONAL)
    assert judged(7, found).facts.by_engine == (result != alone_)


@pytest.mark.parametrize(("seconds", "result"), [(600.0, GO), (599.0, NO)])
def test_peak_counts_where_it_lasts_ten_minutes(seconds: float, result: str) -> None:
    found = topped(draws(6.5), lasting=draws(4.0))
    row = judged(7, under(found, "option.motor", peak_time=seconds))
    assert row.result == result
    assert row.facts.at_peak == (result == GO)


# 8: power a tonne, told


@pytest.mark.parametrize(
    ("exposure", "watts_per_kilogram", "outcome"),
    [
        ("coastal", 1.2 + EDGE, "reached"), ("coastal", 1.2 - EDGE, "below"),
        ("ocean", 1.2 - EDGE, "below"),
        ("sheltered", 0.6 + EDGE, "reached"), ("sheltered", 0.6 - EDGE, "below"),
        ("narrow", 0.6 + EDGE, "reached"),
    ],
)  # fmt: skip
def test_power_a_tonne_is_told_and_never_decides(
    exposure: str, watts_per_kilogram: float, outcome: str
) -> None:
    found = under(base(), "case.waters", exposure=exposure)
    watts = watts_per_kilogram * np.asarray(found.weight.displacement) * np.ones((DRAWS + 1, 1))
    found = under(found, "key.reached", shaft_power=watts)
    row = judged(8, found)
    assert (row.result, row.facts.outcome) == (TOLD, outcome)
    assert not row.decides


# 9: a foul stream at a gate


def gated(
    over: Array, engine: float = 20.0, *, springs: bool = True, worked: bool = False,
    must: bool = True,
) -> Any:  # fmt: skip
    """One gate with 2 kn against her; the speed over the ground is that on the lasting rating."""
    found = base()
    gate = found.stream.gates[0]
    leg = replace(gate.leg, tide_worked=worked)
    gate = replace(gate, leg=leg, stream=np.array([2.0 * KNOT]), at_springs=springs, must_make=must)
    found = under(found, "stream", gates=(gate,))
    top = (over + 2.0) * KNOT
    found = under(found, "power.top", continuous=top, peak=top)
    return under(found, "yard", top=draws(engine * KNOT))


@pytest.mark.parametrize(
    ("over", "share", "otherwise", "result"),
    [
        (1.5 + EDGE, 0.90, 0.0, GO),
        (1.5 + EDGE, 0.89, 0.0, CONDITIONAL),
        (1.5 + EDGE, 0.49, 0.0, NO),
        (1.5 - EDGE, 1.0, 0.0, CONDITIONAL),
        (0.5 + EDGE, 0.90, 0.0, CONDITIONAL),
        (0.5 + EDGE, 0.89, 0.0, NO),
        (0.5 - EDGE, 1.0, 0.0, NO),
    ],
)
def test_gate_over_the_ground(over: float, share: float, otherwise: float, result: str) -> None:
    assert judged(9, gated(draws(over, share, otherwise))).result == result


@pytest.mark.parametrize(
    ("over", "share_of_engine", "result"),
    [
        (1.0, 0.9001, GO),
        (1.0, 0.8999, CONDITIONAL),
        (0.5 + EDGE, 0.9001, GO),
        (0.5 - EDGE, 0.9999, NO),  # as fast as her engine, and neither makes the ground
    ],
)
def test_gate_beside_the_engine_that_is_in_her(
    over: float, share_of_engine: float, result: str
) -> None:
    found = gated(draws(over), (over + 2.0) / share_of_engine)
    row = judged(9, found)
    assert row.result == result
    assert row.facts.by_engine == (result == GO)
    assert judged(9, no_yardstick(found)).result != GO


@pytest.mark.parametrize(
    ("over", "result", "worked"),
    [(2.0, GO, GO), (1.0, CONDITIONAL, GO), (0.2, NO, CONDITIONAL)],
)
def test_tide_that_the_owner_works_is_his_answer(over: float, result: str, worked: str) -> None:
    assert judged(9, gated(draws(over))).result == result
    assert judged(9, gated(draws(over), worked=True)).result == worked


def test_gate_without_its_spring_stream_is_no_plain_go() -> None:
    assert judged(9, gated(draws(2.0), springs=False)).result == CONDITIONAL
    assert judged(9, gated(draws(0.2), springs=False)).result == NO
    assert judged(9, gated(draws(2.0), springs=False, worked=True)).result == GO


def test_gate_of_a_leg_that_need_not_be_made_is_not_asked() -> None:
    row = judged(9, gated(draws(0.2), must=False))
    assert (row.result, row.facts.outcome) == (NOT_APPLICABLE, "none")


@pytest.mark.parametrize(("seconds", "result"), [(3600.0, GO), (3599.0, NO)])
def test_peak_counts_at_a_gate_where_it_lasts_through(seconds: float, result: str) -> None:
    """2 nm at 2 kn over the ground take an hour."""
    found = gated(draws(2.0))
    gate = found.stream.gates[0]
    gate = replace(gate, leg=replace(gate.leg, distance=np.array([2.0 * 1852.0 - 1e-6])))
    found = under(found, "stream", gates=(gate,))
    found = under(found, "power.top", continuous=draws(2.2 * KNOT))
    assert judged(9, under(found, "option.motor", peak_time=seconds)).result == result


# 10: after any one fault


@pytest.mark.parametrize(
    ("plan", "knots", "narrow", "sheltered", "coastal"),
    [
        ("second propulsor", 3.0 + EDGE, GO, GO, GO),
        ("second propulsor", 3.0 - EDGE, GO, CONDITIONAL, CONDITIONAL),
        ("second propulsor", 1.0 + EDGE, GO, CONDITIONAL, CONDITIONAL),
        ("second propulsor", 1.0 - EDGE, CONDITIONAL, CONDITIONAL, NO),
        ("second propulsor", None, GO, CONDITIONAL, CONDITIONAL),
        ("tow", None, GO, CONDITIONAL, CONDITIONAL),
        ("oars", None, GO, CONDITIONAL, NO),
        ("none", None, CONDITIONAL, CONDITIONAL, NO),
        (None, None, CONDITIONAL, CONDITIONAL, CONDITIONAL),  # nobody asked: a doubt
    ],
)
def test_what_moves_her_after_one_fault(
    plan: str | None, knots: float | None, narrow: str, sheltered: str, coastal: str
) -> None:
    speed = None if knots is None else draws(knots * KNOT)
    found = under(base(), "case.planning", fallback=plan, fallback_speed=speed)
    waters = {"narrow": narrow, "sheltered": sheltered, "coastal": coastal, "ocean": coastal}
    for exposure, result in waters.items():
        row = judged(10, under(found, "case.waters", exposure=exposure))
        assert (exposure, row.result) == (exposure, result)
        assert row.decides


def test_second_propulsor_goes_by_chance() -> None:
    for share, result in ((0.90, GO), (0.89, CONDITIONAL)):
        speed = draws(3.1 * KNOT, share, 2.0 * KNOT)
        plan = {"fallback": "second propulsor", "fallback_speed": speed}
        assert judged(10, under(base(), "case.planning", **plan)).result == result


def test_diesel_has_no_such_row() -> None:
    assert judged(10, replace(base(), fault=None)).result == NOT_APPLICABLE


def test_belt_is_named_only_where_there_is_a_reduction() -> None:
    assert judged(10, under(base(), "option.motor", gear_ratio=1.0)).facts.direct
    assert not judged(10, under(base(), "option.motor", gear_ratio=1.5)).facts.direct


# 23: propeller match


def turning(off: Array) -> Any:
    return under(base(), "match", deviation=off)


def weak(found: Findings) -> Any:
    """Row 4 does not pass: no way against the wind, and half of the engine's pull."""
    stands = np.zeros_like(found.holding.ladder)
    return under(found, "holding", ladder=stands, share=0.5 * np.ones((DRAWS + 1, 2)))


@pytest.mark.parametrize(
    ("off", "share", "otherwise", "outcome"),
    [
        (0.10 - EDGE, 1.0, 0.0, "fits"),
        (-0.10 + EDGE, 0.90, -0.3, "fits"),
        (-0.10 + EDGE, 0.89, -0.3, "off"),
        (-0.10 - EDGE, 1.0, 0.0, "off"),
        (-0.9, 1.0, 0.0, "off"),  # never by itself
        (0.10 + EDGE, 1.0, 0.0, "short"),
        (0.30, 1.0, 0.0, "short"),
    ],
)
def test_turns_at_full_power(off: float, share: float, otherwise: float, outcome: str) -> None:
    row = judged(23, turning(draws(off, share, otherwise)))
    assert row.facts.outcome == outcome
    assert row.result == (CONDITIONAL if outcome == "off" else GO)


def test_geared_short_passes_only_where_the_rows_that_it_serves_pass() -> None:
    found = turning(draws(0.2))
    assert judged(23, found).result == GO
    assert judged(4, weak(found)).result != GO
    assert judged(23, weak(found)).result == CONDITIONAL
    slow = under(found, "case.planning", cruise_speed=8.0 * KNOT)
    assert judged(5, slow).result != GO
    assert judged(23, slow).result == CONDITIONAL


@pytest.mark.parametrize(
    ("clearance", "shape", "result"),
    [
        (0.0999, {"diameter": 0.40}, NO), (0.1001, {"diameter": 0.40}, GO),
        (0.0999, {"kind": "folding"}, NO), (0.0999, {}, GO), (None, {"diameter": 0.40}, GO),
    ],
)  # fmt: skip
def test_tips_of_a_new_propeller_clear_the_hull(
    clearance: float | None, shape: dict[str, Any], result: str
) -> None:
    """The old one has run there; so has the same one with its aperture measured at last."""
    found = under(turning(draws(0.0)), "option.propeller", aperture_height=0.46, **shape)
    row = judged(23, under(found, "match", clearance=clearance))
    assert row.result == result
    assert row.facts.largest == pytest.approx(0.46 / 1.2)


def test_larger_propeller_is_offered_where_nobody_measured_the_aperture() -> None:
    found = turning(draws(-0.2))
    assert found.option.propeller.aperture_height is None
    facts = judged(23, found).facts
    own = float(np.ravel(found.option.propeller.diameter)[0])
    assert own < facts.diameter <= 1.2 * own + 1e-9
    assert facts.room == pytest.approx(1.2 * facts.diameter)
    assert facts.gain > 0.0
    assert not facts.measured


def test_measured_aperture_bounds_the_propeller_that_is_offered() -> None:
    option = sloop().options[ELECTRIC]
    for height in (0.50, 0.42):  # her own 381 mm clears in the first by more than a tenth
        propeller = replace(option.propeller, aperture_height=height)
        options = (*sloop().options[:ELECTRIC], replace(option, propeller=propeller))
        offered = alone(replace(sloop(), options=options), ELECTRIC, 20).findings.match.best
        assert offered is not None
        assert offered.diameter == pytest.approx(height / 1.2)


# The reduction that is advised


@lru_cache(maxsize=1)
def ketch() -> Case:
    return read_case(CASES / "ketch_34_two_motors.yaml")


def geared(ratio: float, cruise: float | None = None) -> Findings:
    """Her first motor, geared as one chooses; another planned cruise [m/s] where one is given."""
    option = ketch().options[2]
    assert option.motor is not None
    motor = replace(option.motor, gear_ratio=ratio)
    options = (*ketch().options[:2], replace(option, motor=motor), *ketch().options[3:])
    gone = ("options[2].motor.gear_ratio", *(() if cruise is None else ("planning.cruise_speed",)))
    kept = tuple(item for item in ketch().assumptions if item.path not in gone)
    case = replace(ketch(), options=options, assumptions=kept)
    if cruise is not None:
        case = replace(case, planning=replace(case.planning, cruise_speed=cruise))
    return alone(case, 2, DRAWS).findings


def test_advice_does_not_undo_itself() -> None:
    """From any gearing the same reduction is advised; followed, it passes and no other is."""
    advised = [geared(ratio).match.advised for ratio in (0.8, 1.0, 1.6)]
    assert max(advised) == pytest.approx(min(advised), rel=0.005)
    row = judged(23, geared(advised[0]))
    assert (row.result, row.facts.outcome) == (GO, "fits")
    assert not row.facts.regear


def test_advice_on_the_reduction_takes_no_passed_row_away() -> None:
    """She plans for so much that plain matching, which pulls harder, just misses her top speed."""
    plain = geared(geared(1.0).match.ratio)
    careful = float(spread(plain.power.top.peak, "low").low[0])
    cruise = careful - 0.98 * KNOT  # a fiftieth of a knot less than a knot below it
    own = geared(1.0, cruise)
    assert judged(23, own).result == CONDITIONAL
    assert judged(7, own).result == GO
    assert judged(7, geared(own.match.ratio, cruise)).result == CONDITIONAL
    better = geared(own.match.advised, cruise)
    assert [judged(number, better).result for number in (5, 7, 23)] == [GO, GO, GO]
    assert np.all(better.holding.pull[0] > own.holding.pull[0])
    assert better.headwind.continuous.speed[0, 20] > own.headwind.continuous.speed[0, 20]


def test_advice_on_the_reduction_pulls_where_calm_speed_is_in_hand() -> None:
    """Shorter than what matches in a calm, and no row loses by it."""
    found = base()
    assert found.match.advised > 1.03 * found.match.ratio
    option = sloop().options[ELECTRIC]
    assert option.motor is not None
    pulls, rows = [], []
    for ratio in (found.match.ratio, found.match.advised):
        motor = replace(option.motor, gear_ratio=ratio)
        options = (*sloop().options[:ELECTRIC], replace(option, motor=motor))
        gone = f"options[{ELECTRIC}].motor.gear_ratio"
        kept = tuple(item for item in sloop().assumptions if item.path != gone)
        tried = alone(replace(sloop(), options=options, assumptions=kept), ELECTRIC, DRAWS)
        pulls.append(tried.findings.holding.pull[0, 1])
        rows.append([judged(number, tried.findings).result for number in (4, 5, 6, 7, 23)])
    assert pulls[1] > pulls[0]
    assert rows[1] == rows[0]


# 24: stopping from 3 kn


def stopping(lengths: Array, engine: float = 1e-3) -> Any:
    """A boat of 10 m; the engine's way in lengths."""
    found = under(base(), "case.boat.hull", length_overall=np.array([10.0]))
    stops = found.docking.stops
    found = under(found, "docking", stops=(replace(stops[0], distance=10.0 * lengths), *stops[1:]))
    return under(found, "yard", stop=draws(10.0 * engine))


@pytest.mark.parametrize(
    ("lengths", "share", "otherwise", "result"),
    [
        (1.0 - EDGE, 0.90, 3.0, GO),
        (1.0 - EDGE, 0.89, 3.0, CONDITIONAL),
        (1.0 - EDGE, 0.49, 3.0, NO),
        (1.0 + EDGE, 1.0, 0.0, CONDITIONAL),
        (1.5 - EDGE, 0.90, 3.0, CONDITIONAL),
        (1.5 - EDGE, 0.89, 3.0, NO),
        (1.5 + EDGE, 1.0, 0.0, NO),
    ],
)
def test_way_in_boat_lengths(lengths: float, share: float, otherwise: float, result: str) -> None:
    assert judged(24, stopping(draws(lengths, share, otherwise))).result == result


@pytest.mark.parametrize(
    ("lengths", "over_engine", "result"),
    [
        (1.2, 1.0999, GO),
        (1.2, 1.1001, CONDITIONAL),
        (1.6, 1.0999, CONDITIONAL),  # neither stops within one and a half: no plain pass
        (1.6, 1.3299, CONDITIONAL),
        (1.6, 1.3301, NO),
    ],
)
def test_way_beside_the_engine_that_is_in_her(
    lengths: float, over_engine: float, result: str
) -> None:
    found = stopping(draws(lengths), lengths / over_engine)
    assert judged(24, found).result == result
    assert judged(24, no_yardstick(found)).result == (CONDITIONAL if lengths < 1.5 else NO)


# 28: evidence


def test_evidence_is_a_trial_or_a_condition_and_never_fails() -> None:
    assert judged(28, base()).result == GO
    bare = under(base(), "trial", model_power=None, points=())
    named = {"boat.hull.prismatic_coefficient", "boat.hull.lcb"}
    given = tuple(
        replace(item, origin="given" if item.path in named else "default")
        for item in base().case.assumptions
    )
    assert {item.path for item in given} >= named
    builder = replace(bare, case=replace(base().case, assumptions=given))
    guess = tuple(replace(item, origin="default") for item in given)
    nothing = replace(bare, case=replace(base().case, assumptions=guess))
    for found, grade in ((builder, "builder data"), (nothing, "hull guess")):
        row = judged(28, found)
        assert (row.result, row.grade) == (CONDITIONAL, grade)
        assert row.decides


def test_turns_that_fit_neither_pitch_nor_gear_bar_a_plain_go() -> None:
    for ratio, result in ((np.exp(0.079), GO), (np.exp(0.081), CONDITIONAL)):
        row = judged(28, under(base(), "trial", turns_over_model=float(ratio)))
        assert row.result == result
        assert row.facts.turns_wrong == (result == CONDITIONAL)
        assert not row.facts.slow_turns
