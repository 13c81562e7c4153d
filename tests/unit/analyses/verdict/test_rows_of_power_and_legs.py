"""Do the rows of legs, reserve and wind (1 to 4 and 6) pass and fail on both sides of their limits?

By findings of one boat of which a part is exchanged, and through cases where a case decides. With
them the yardstick, the reserve and the ordinary wind that they stand on.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.analyses.handling.yardstick import yardstick
from generator.analyses.motion.demand import Weather, shaft_demand
from generator.analyses.motion.hull import vessel
from generator.analyses.motion.plant import within
from generator.analyses.motion.power import at_points
from generator.analyses.motion.pull import drain_of, greatest_pull
from generator.analyses.store.bank_state import taken
from generator.analyses.store.reserve import reserve
from generator.analyses.use.coverage import Coverage
from generator.analyses.use.legs import LegResult, passages
from generator.analyses.use.ordinary_weather import ordinary_wind, with_ordinary_wind
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
from generator.case.case import Case
from generator.case.open import read_case
from generator.case.usage import Leg
from generator.draws import make_draws
from generator.report.numbers import Display
from generator.report.tree import Telling, tree
from generator.study import stand
from tests.alone import alone, case_of
from tests.unit.case.faulty import changed

SLOOP = Path(__file__).parents[4] / "cases" / "sloop_30_weekend.yaml"
KEEP, ELECTRIC = 0, 2  # places of the options in the case
DRAWS = 200
KNOT, EDGE = 1852 / 3600, 1e-4
SAID = Telling(Display("metric", "GBP"))
MUST = 1  # place of the leg that must be made


@lru_cache(maxsize=1)
def sloop() -> Case:
    return read_case(SLOOP)


@lru_cache(maxsize=2)
def found(place: int = ELECTRIC) -> Findings:
    return alone(sloop(), place, DRAWS).findings


def row(number: int, part: Findings) -> Judgement:
    """The row, its words said: an outcome without words would stop here."""
    judged = JUDGES[number](next(each for each in criteria() if each.id == number), part)
    mend = tree(judged.facts, "here", SAID)["words_mend"]
    if judged.decides:
        assert bool(mend) == (judged.result in (CONDITIONAL, NO)), mend
    return judged


def under(part: Any, path: str, **values: Any) -> Any:
    """The findings with something of the case, the option or a result changed; `a.b` goes deep."""
    head, _, rest = path.partition(".")
    inner = getattr(part, head)
    new = under(inner, rest, **values) if rest else replace(inner, **values)
    return replace(part, **{head: new})


def mostly(holds: float, share: float = 1.0, fails: float = 0.0) -> np.ndarray:
    """A best estimate and the draws: a value in a share of them, another in the rest."""
    count = round(DRAWS * share)
    return np.array([holds, *[holds] * count, *[fails] * (DRAWS - count)]).reshape(-1, 1)


# 1: the leg that must be made


def worst(**values: Any) -> Findings:
    """Her findings with the leg that must be made as it is said."""
    legs = found().legs
    results = list(legs.results)
    results[MUST] = replace(results[MUST], **values)
    return replace(found(), legs=replace(legs, results=tuple(results)))


@pytest.mark.parametrize(
    ("powered", "untouched", "with_reserve", "result"),
    [
        (0.90, 0.90, 0.0, GO),
        (0.89, 0.90, 0.0, CONDITIONAL),  # the motor does not hold it always
        (0.90, 0.89, 0.90, CONDITIONAL),
        (0.50, 0.50, 0.90, CONDITIONAL),
        (0.90, 0.50, 0.89, NO),  # never conditional on a coin
        (0.90, 0.49, 1.0, NO),
        (0.49, 1.0, 1.0, NO),  # she is not to count on it, whatever the bank
    ],
)
def test_a_leg_leaves_the_reserve_or_uses_it(
    powered: float, untouched: float, with_reserve: float, result: str
) -> None:
    part = worst(powered=powered, untouched=untouched, with_reserve=with_reserve)
    assert row(1, part).result == result


@pytest.mark.parametrize(
    ("untouched", "with_reserve", "told"),
    [
        (0.0, 0.0, "Where the motor holds the trip, the battery does not last in any case"),
        (0.3, 0.6, "does not last: the reserve stays untouched in 30% of those cases"),
        (0.95, 1.0, ""),
    ],
)
def test_what_the_battery_lacks_is_said_beside_what_the_motor_does(
    untouched: float, with_reserve: float, told: str
) -> None:
    """Held in three draws of five: there the word is the bank's, and so is what mends it."""
    need = np.where(mostly(1.0, 0.6) > 0.0, 40e3 * 3600.0, np.nan)
    why = {**found().legs.results[MUST].absent, "need": "stopped_by_power"}
    part = worst(
        powered=0.6, untouched=untouched, with_reserve=with_reserve, need=need,
        ratio=mostly(0.5, 0.6), stopped_by="power", absent=why,
    )  # fmt: skip
    judged = row(1, part)
    said = tree(judged.facts, "here", SAID)
    assert judged.facts.outcome == "at_times"
    assert judged.result == (NO if told else CONDITIONAL)
    assert "the motor, once warm, cannot hold her" in said["words"]
    assert told in said["words"]
    assert ("the battery does not last" in said["words"]) is bool(told)
    assert ("battery of " in said["words_mend"]) is bool(told)
    assert "more continuous power" in said["words_mend"]


@pytest.mark.parametrize(("share", "outcome"), [(1.0, "makes"), (0.6, "at_times"), (0.4, "never")])
def test_a_sea_beyond_the_formula_is_said_whatever_the_outcome(share: float, outcome: str) -> None:
    held = mostly(1.0, share)
    need = np.where(held > 0.0, 3.6e6, np.nan)
    why = {**found().legs.results[MUST].absent, "need": "stopped_by_power"}
    part = {"powered": share, "need": need, "ratio": held, "stopped_by": "power", "absent": why}
    for beyond in (True, False):
        judged = row(1, worst(**part, beyond_sea=beyond))
        assert judged.facts.outcome == outcome
        said = tree(judged.facts, "here", SAID)["words"]
        assert ("beyond what the wave formula covers" in said) is beyond


@pytest.mark.parametrize("doubt", ["as_if_marked", "beyond_sea"])
def test_a_leg_that_nobody_marked_or_a_sea_beyond_the_formula_is_conditional_at_best(
    doubt: str,
) -> None:
    sure = {"powered": 1.0, "untouched": 1.0, "with_reserve": 1.0}
    assert row(1, worst(**sure)).result == GO
    assert row(1, worst(**sure, **{doubt: True})).result == CONDITIONAL


def test_no_leg_at_all_is_a_condition_and_a_refuge_for_each_asks_for_nothing() -> None:
    none = under(found(), "key", worst_leg=None)
    assert row(1, none).result == NOT_APPLICABLE
    assert row(1, under(none, "case", legs=())).result == CONDITIONAL


def answered(**said: Any) -> Case:
    """The sloop with every leg's refuge and sail as they are said, along a coast."""
    legs = tuple(replace(leg, **said) for leg in sloop().legs)
    waters = replace(sloop().waters, exposure="coastal")
    return replace(sloop(), legs=legs, waters=waters)


def test_in_open_waters_the_way_home_is_judged_where_nobody_said_which_leg_must_be_made() -> None:
    case = answered(refuge=None, sailable=None)
    part = alone(case, ELECTRIC, 0).findings
    asked = part.legs.results[MUST]  # the one that follows another, with an exposed part
    assert (asked.must_make, asked.as_if_marked) == (True, True)
    assert sum(item.must_make for item in part.legs.results) == 1
    judged = row(1, part)
    assert (judged.result, judged.facts.as_if_marked) == (CONDITIONAL, True)
    inside = replace(case, waters=replace(case.waters, exposure="sheltered"))
    assert row(1, alone(inside, ELECTRIC, 0).findings).result == NOT_APPLICABLE
    refuges = alone(answered(refuge=True, sailable=None), ELECTRIC, 0).findings
    assert row(1, refuges).result == NOT_APPLICABLE


@pytest.mark.parametrize(
    ("hours", "result"), [(360, GO), (340, CONDITIONAL), (315, CONDITIONAL), (280, NO)]
)
def test_the_leg_follows_the_bank(hours: float, result: str) -> None:
    part = alone(with_bank(hours), ELECTRIC, DRAWS).findings
    leg = part.legs.results[MUST]
    assert row(1, part).result == result
    assert (leg.untouched >= 0.9) is (result == GO)
    assert (leg.untouched >= 0.5) is (result != NO)
    assert leg.powered == 1.0


def with_bank(hours: float) -> Case:
    return with_option("bank", charge=hours * 3600.0)


def with_option(part: str, **values: Any) -> Case:
    option = sloop().options[ELECTRIC]
    other = replace(option, **{part: replace(getattr(option, part), **values)})
    gone = tuple(f"options[{ELECTRIC}].{part}.{name}" for name in values)
    kept = tuple(item for item in sloop().assumptions if item.path not in gone)
    options = (*sloop().options[:ELECTRIC], other, *sloop().options[ELECTRIC + 1 :])
    return replace(sloop(), options=options, assumptions=kept)


def ways(**values: Any) -> LegResult:
    """The leg that must be made, by the same plant, as it is changed."""
    outfit = found().outfit
    legs = list(outfit.case.legs)
    legs[MUST] = replace(legs[MUST], **values)
    return passages(replace(outfit, case=replace(outfit.case, legs=tuple(legs)))).results[MUST]


def test_draws_that_the_motor_does_not_hold_are_no_shortage_of_the_bank() -> None:
    """Against 24 kn half of the draws are held: of those the bank does more than nine tenths."""
    leg = ways(wind=24.0 * KNOT)
    assert 0.2 < leg.powered < 0.8
    assert leg.feasible == pytest.approx(leg.powered, abs=0.02)
    held = np.isfinite(leg.need[1:, 0])
    does = (leg.need <= leg.available)[1:, 0]
    assert leg.untouched == pytest.approx(does[held].mean(), abs=0.01)
    assert leg.untouched > 1.2 * does.mean()


def test_the_exposed_part_goes_as_fast_as_is_held_down_to_one_knot_over_the_ground() -> None:
    """What is not held at the owner's speed is held slower; below 1 kn it is no passage."""
    calm, hard = ways(wind=5.0 * KNOT), ways(wind=24.0 * KNOT)
    own = np.asarray(calm.leg.exposed_speed)
    assert calm.outside[0, 0] == pytest.approx(float(np.ravel(own)[0]))
    assert 1.8 * KNOT - 1e-9 <= hard.outside[0, 0] < 0.8 * calm.outside[0, 0]  # 0.8 kn of stream
    gentle: dict[str, float] = {"exposed_speed": 3.5 * KNOT, "wind": 5.0 * KNOT}
    assert ways(**gentle, foul_stream=2.49 * KNOT).feasible == 1.0
    assert ways(**gentle, foul_stream=2.51 * KNOT).feasible == 0.0


def test_a_bank_that_is_short_slows_the_exposed_part_down() -> None:
    outfit = found().outfit
    full = passages(outfit).results[MUST]
    held = replace(outfit.store, usable_aged=np.asarray(outfit.store.usable_aged) * 0.8)
    less = passages(replace(outfit, store=held)).results[MUST]
    assert np.mean(less.outside[1:]) < np.mean(full.outside[1:])


def test_the_tide_that_the_owner_works_takes_the_stream_out() -> None:
    against, worked = ways(), ways(tide_worked=True)
    slack = ways(foul_stream=0.0)
    assert np.all(worked.need < against.need)
    np.testing.assert_allclose(worked.need, slack.need)


def tidal(stream: float, worked: bool) -> Findings:
    """The leg that must be made against a stream, with the tide worked there or not."""
    legs = list(found().case.legs)
    legs[MUST] = replace(
        legs[MUST], foul_stream=stream * KNOT, spring_stream=None, tide_worked=worked
    )
    case = replace(found().case, legs=tuple(legs))
    outfit = replace(found().outfit, case=case)
    return replace(found(), case=case, legs=passages(outfit))


def test_a_tide_that_is_worked_is_said_and_asked_for_where_it_decides() -> None:
    weak, waits, free = tidal(2.4, worked=False), tidal(2.4, worked=True), tidal(0.0, worked=True)
    assert row(1, weak).result != GO
    judged = row(1, waits)
    assert (judged.result, judged.facts.waits) == (CONDITIONAL, True)
    said = tree(judged.facts, "here", SAID)
    assert "without stream because the owner works the tide there" in said["words"]
    name = found().case.legs[MUST].name
    assert said["words_mend"] == f"leave at slack water on “{name}”, its time named"
    # no stream, or one that leaves the row as it is, asks for nothing
    assert (row(1, free).result, row(1, free).facts.slack) == (GO, False)
    little = row(1, tidal(0.1, worked=True))
    assert (little.result, little.facts.slack, little.facts.waits) == (GO, True, False)


def test_what_the_leg_before_took_in_a_calm_is_gone() -> None:
    """4.5 nm at 4.8 kn against 0.4 kn, in a calm whatever wind stands on the way home."""
    leg, out = ways(), found().case.legs[0]
    outfit = found().outfit
    assert leg.leg.follows == 0
    curve = at_points(outfit.case, outfit.option, outfit.power, outfit.scale,
                      np.atleast_2d(out.speed), Weather(0.0, 1.0))  # fmt: skip
    loss = taken(outfit.option.bank, outfit.store.aged, curve.output.drain)
    time = np.asarray(out.distance) / (np.asarray(out.speed) - np.asarray(out.foul_stream))
    assert np.all(within(curve.output.load, curve.demand.feasible))
    np.testing.assert_allclose(leg.before, loss * time, rtol=1e-6)
    np.testing.assert_allclose(leg.available, leg.above - leg.before)
    np.testing.assert_allclose(ways(wind=25.0 * KNOT).before, leg.before)


# 2: habits in ordinary weather


def habits(
    legs: np.ndarray | float,
    miles: np.ndarray | float,
    slower: tuple[float, float] = (0.0, 0.0),
    by: str = "range",
) -> Findings:
    """Shares of passages and miles inside range, and the same at a slower speed."""
    one = np.ones((DRAWS + 1, 1))
    covered = Coverage(
        legs=one * legs,
        miles=one * miles,
        slower_legs=one * slower[0],
        slower_miles=one * slower[1],
        legs_bad_day=one * 0.0,
        passages=46.0,
        slower=0.5 * KNOT,
        missed=(2,),
        missed_slower=(2,),
        missed_by=(by,),
    )
    return replace(found(), use=replace(found().use, coverage=covered))


@pytest.mark.parametrize(
    ("legs", "miles", "slower", "result", "outcome"),
    [
        (0.95, 0.80, (0.0, 0.0), GO, "enough"),
        (mostly(0.95, 0.90), 0.80, (0.0, 0.0), GO, "enough"),
        (mostly(0.95, 0.89), 0.80, (0.0, 0.0), CONDITIONAL, "most"),
        (mostly(0.95, 0.50), 0.80, (0.0, 0.0), CONDITIONAL, "most"),
        (mostly(0.95, 0.49), 0.80, (0.0, 0.0), NO, "some"),
        (0.94, 0.80, (0.0, 0.0), CONDITIONAL, "most"),
        (0.95, 0.79, (0.0, 0.0), CONDITIONAL, "most"),
        (0.75, 0.50, (0.0, 0.0), CONDITIONAL, "most"),
        (0.74, 0.50, (0.0, 0.0), NO, "some"),
        (0.75, 0.49, (0.0, 0.0), NO, "some"),
        (mostly(0.75, 0.90), 0.50, (0.0, 0.0), CONDITIONAL, "most"),
        (mostly(0.75, 0.89), 0.50, (0.0, 0.0), NO, "some"),
        (0.5, 0.3, (0.95, 0.80), CONDITIONAL, "slower"),
        (0.5, 0.3, (0.94, 0.80), NO, "some"),
        (0.5, 0.3, (0.95, 0.79), NO, "some"),
    ],
)
def test_habits_go_by_passages_and_miles(
    legs: Any, miles: Any, slower: tuple[float, float], result: str, outcome: str
) -> None:
    judged = row(2, habits(legs, miles, slower))
    assert (judged.result, judged.facts.outcome) == (result, outcome)
    named = () if result == GO else (found().case.legs[2].name,)
    assert judged.facts.named == named


@pytest.mark.parametrize(
    ("by", "told", "mend"),
    [
        (
            "range",
            "Not within range: “",
            "fit a larger battery, charge on the way, or motor slower",
        ),
        ("wind", "The motor cannot hold ", "fit more continuous power, or motor slower on “"),
        ("calm", " in a calm on “", "fit more continuous power, or motor slower on “"),
        ("current", "cannot deliver the current for ", "fit a battery that delivers more current"),
        ("stream", "too little speed over the ground on “", "wait for less stream, or motor"),
    ],
)
def test_what_the_motor_does_not_hold_is_not_put_on_the_bank(by: str, told: str, mend: str) -> None:
    judged = row(2, habits(0.5, 0.3, by=by))
    said = tree(judged.facts, "here", SAID)
    assert judged.result == NO
    assert told in said["words"]
    assert said["words_mend"].startswith(mend)
    assert ("larger battery" in said["words_mend"]) is (by == "range")
    assert found().case.legs[2].name in said["words"]


def test_nobody_who_never_motors_is_asked_for_range() -> None:
    assert row(2, under(found(), "use", coverage=None)).result == NOT_APPLICABLE


# 3: the reserve


def reserved(**values: Any) -> Findings:
    """Her findings with the owner's plan changed, and the reserve found anew."""
    case = replace(found().case, planning=replace(found().case.planning, **values))
    kept = reserve(case, found().option, found().power, found().trial.scale, found().store)
    return replace(found(), case=case, reserve=kept)


@pytest.mark.parametrize(
    ("plan", "result", "outcome"),
    [
        ({}, GO, "kept"),
        ({"hold_time": 900.0 - 1.0}, CONDITIONAL, "lowered"),
        ({"hold_wind": 19.9 * KNOT}, CONDITIONAL, "lowered"),
        ({"manoeuvring_time": 1799.0}, CONDITIONAL, "lowered"),
        ({"reserve_share": 0.199}, CONDITIONAL, "lowered"),
        ({"hold_time": 1800.0, "reserve_share": 0.3}, GO, "kept"),
        ({"hold_time": 0.0, "manoeuvring_time": 0.0, "reserve_share": 0.0}, NO, "none"),
    ],
)
def test_a_reserve_is_the_rules_or_the_owners_own(
    plan: dict[str, float], result: str, outcome: str
) -> None:
    judged = row(3, reserved(**plan))
    assert (judged.result, judged.facts.outcome) == (result, outcome)


def test_a_lowered_reserve_gives_the_owners_reason_or_asks_for_it() -> None:
    silent, told = (
        tree(row(3, reserved(hold_time=600.0, reserve_reason=why)).facts, "here", SAID)
        for why in ("", "two anchors ready")
    )
    assert "the owner's reason in writing" in silent["words_mend"]
    assert "two anchors ready" in told["words"]
    assert "in writing" not in told["words_mend"]


@pytest.mark.parametrize(("share", "result"), [(0.90, GO), (0.89, NO)])
def test_a_bank_holds_its_reserve_in_nine_draws_of_ten(share: float, result: str) -> None:
    usable = mostly(1.01, share, 0.99) * np.asarray(found().reserve.of_aged)
    assert row(3, under(found(), "store", usable_aged=usable)).result == result


def drained(part: Findings, knots: float, wind: float) -> np.ndarray:
    """What the bank loses each second at a speed through the water against a wind [W]."""
    speed, weather = np.atleast_2d(knots * KNOT), Weather(wind * KNOT, part.case.waters.fetch)
    curve = at_points(part.case, part.option, part.power, part.trial.scale, speed, weather)
    return np.asarray(taken(part.option.bank, part.store.aged, curve.output.drain))


def test_the_reserve_is_half_an_hour_of_harbour_and_a_quarter_of_wind() -> None:
    kept = reserved(manoeuvring_speed=3.0 * KNOT).reserve
    np.testing.assert_allclose(kept.manoeuvring, drained(found(), 3.0, 0.0) * 1800.0, rtol=1e-6)
    np.testing.assert_allclose(kept.holding, drained(found(), 2.0, 20.0) * 900.0, rtol=1e-6)
    np.testing.assert_allclose(kept.demand, kept.manoeuvring + kept.holding)
    np.testing.assert_allclose(kept.share_aged, 0.2 * np.asarray(found().store.usable_aged))
    np.testing.assert_allclose(kept.of_aged, np.maximum(kept.demand, kept.share_aged))


def test_each_part_is_capped_at_what_the_option_draws_in_that_time() -> None:
    """3 kW hold her in 20 kn in no draw: the reserve asks for what they take, and no more."""
    weak = alone(with_option("motor", continuous_power=3e3, peak_power=3.6e3), ELECTRIC, 40)
    part = weak.findings
    speed = np.atleast_2d(2.0 * KNOT)
    pull = greatest_pull(part.option, part.power, part.case.factors, speed, peak=False)
    most = taken(part.option.bank, part.store.aged, drain_of(part.option, pull, part.case.factors))
    assert part.reserve.held == 0.0
    np.testing.assert_allclose(part.reserve.holding, np.atleast_2d(most) * 900.0, rtol=1e-6)
    assert row(3, part).result == GO
    assert row(4, part).result == NO  # the shortage stands there alone


def test_peak_is_drawn_for_the_reserve_where_it_lasts_through() -> None:
    weak = {"continuous_power": 3e3, "peak_power": 9e3}
    for_long, short = (
        alone(with_option("motor", **weak, peak_time=time), ELECTRIC, 0).findings.reserve
        for time in (900.0, 899.0)
    )
    assert for_long.holding[0, 0] > 1.2 * short.holding[0, 0]


@pytest.mark.parametrize(
    ("exposure", "hold", "bad"),
    [("narrow", 15, 15), ("sheltered", 20, 20), ("coastal", 25, 20), ("offshore", 25, 25),
     ("ocean", 25, 25)],
)  # fmt: skip
def test_wind_fits_the_waters(exposure: str, hold: float, bad: float) -> None:
    """In a case that tells no wind: to hold off in, and of a bad day."""
    text = changed(
        ("exposure: sheltered", f"exposure: {exposure}"), text=SLOOP.read_text(encoding="utf-8")
    )
    case = case_of(text)
    assert case.planning.hold_wind == pytest.approx(hold * KNOT)
    for leg in case.legs:
        assert leg.wind == pytest.approx(bad * KNOT)
    part = under(found(), "case.waters", exposure=exposure)
    part = under(part, "case.planning", hold_wind=case.planning.hold_wind)
    assert row(4, part).facts.wind == pytest.approx(hold * KNOT)
    assert row(6, part).facts.wind == pytest.approx(bad * KNOT)


# 4 and 6: against a wind


def against(
    made: Any = 0.0, bad: Any = 0.0, share: Any = 0.0, part: Findings | None = None, **more: Any
) -> Findings:
    """Along a coast: kn made good against 25 kn and against 20 kn, and the share of the pull."""
    one = np.ones((DRAWS + 1, 1))
    ladder = np.hstack([one * bad] * 21 + [one * made] * 20) * KNOT
    part = under(part or found(), "case.waters", exposure=more.pop("exposure", "coastal"))
    part = under(part, "case.planning", hold_wind=25.0 * KNOT)
    part = under(part, "holding", ladder=ladder, share=np.hstack([one * share] * 2))
    lasting = replace(part.headwind.continuous, speed=ladder)
    part = under(part, "headwind", continuous=lasting, peak=lasting, height=ladder * 0.0)
    return under(part, "yard", **more) if more else part


AGAINST = [  # made good by the row's own limits: go + 0, conditional + 0, and a share of draws
    ("go", 1.0, 0.0, 0.0, GO),
    ("go", 0.90, 0.0, 0.0, GO),
    ("go", 0.89, 0.0, 0.0, CONDITIONAL),
    ("go", 0.50, 0.0, 0.0, CONDITIONAL),
    ("go", 0.49, 0.0, 0.0, NO),
    ("conditional", 0.90, 0.0, 0.0, CONDITIONAL),
    ("conditional", 0.89, 0.0, 0.0, NO),
    ("conditional", 1.0, 0.90, 1.0, GO),  # by pull, where she makes the conditional limit
    ("conditional", 1.0, 0.90, 0.90, GO),
    ("conditional", 1.0, 0.90, 0.89, CONDITIONAL),
    ("conditional", 1.0, 0.899, 1.0, CONDITIONAL),
    ("conditional", 0.50, 0.90, 1.0, GO),
    ("conditional", 0.49, 0.90, 1.0, CONDITIONAL),  # pull that works off no shore
]


@pytest.mark.parametrize(("number", "limits"), [(4, (3.0, 2.0)), (6, (3.5, 2.5))])
@pytest.mark.parametrize(("limit", "share", "pull", "pulling", "result"), AGAINST)
def test_speed_or_the_engines_pull_holds_her(
    number: int,
    limits: tuple[float, float],
    limit: str,
    share: float,
    pull: float,
    pulling: float,
    result: str,
) -> None:
    fast = limits[0] if limit == "go" else limits[1]
    made = mostly(fast + EDGE, share)
    part = against(made, made, mostly(pull, pulling) if pull else 0.0)
    assert row(number, part).result == result
    if share == 1.0 and not pull:
        slow = mostly(fast - EDGE)
        lower = {GO: CONDITIONAL, CONDITIONAL: NO}[result]
        assert row(number, against(slow, slow)).result == lower


@pytest.mark.parametrize(
    ("share", "pulling", "bad", "works", "result"),
    [
        (0.60, 1.0, 1.5, 1.0, CONDITIONAL),
        (0.60, 0.90, 1.5, 0.50, CONDITIONAL),
        (0.60, 0.89, 1.5, 1.0, NO),
        (0.60, 1.0, 1.5, 0.49, NO),
        (0.60, 1.0, 1.5 - EDGE, 1.0, NO),
        (0.599, 1.0, 1.5, 1.0, NO),
    ],
)
@pytest.mark.parametrize("number", [4, 6])
def test_six_tenths_of_the_pull_are_a_condition_where_she_still_goes_on_a_bad_day(
    number: int, share: float, pulling: float, bad: float, works: float, result: str
) -> None:
    part = against(0.0, mostly(bad, works), mostly(share, pulling))
    assert row(number, part).result == result


def test_draw_by_draw_one_of_the_two_is_enough() -> None:
    """In 45 of a hundred by speed, in another 45 by pull."""
    half = DRAWS // 20 * 9
    made = np.array([3.1, *[3.1] * half, *[2.1] * (DRAWS - half)]).reshape(-1, 1)
    share = np.array([0.0, *[0.0] * half, *[0.95] * half, *[0.5] * (DRAWS - 2 * half)])
    assert row(4, against(made, made, share.reshape(-1, 1))).result == GO


@pytest.mark.parametrize("number", [4, 6])
def test_an_engine_that_never_was_enough_is_no_yardstick(number: int) -> None:
    pulls = mostly(1.2)
    works = mostly(2.6)
    assert row(number, against(works, works, pulls)).result == GO
    judged = row(number, against(works, works, pulls, counts=False))
    assert (judged.result, judged.facts.by) == (CONDITIONAL, "speed")
    fast = mostly(4.0)  # it lifts and never lowers
    assert row(number, against(fast, fast, 0.1)).result == GO


@pytest.mark.parametrize("number", [4, 6])
def test_beyond_the_wave_formula_only_pull_passes(number: int) -> None:
    fast = mostly(4.0)

    def rough(share: float, high: float) -> Findings:
        part = against(fast, fast, share)
        limit = float(np.ravel(part.power.seas["calm"].limit)[0])
        height = mostly(1.01 * limit, high, 0.0) * np.ones((1, 41))
        return under(part, "headwind", height=height)  # type: ignore[no-any-return]

    judged = row(number, rough(0.0, 0.11))
    assert (judged.result, judged.facts.beyond_sea) == (CONDITIONAL, True)
    assert row(number, rough(0.9, 0.11)).result == GO
    assert row(number, rough(0.0, 0.10)).result == GO  # as many draws as a pass may leave out


@pytest.mark.parametrize(
    ("exposure", "result"),
    [("narrow", TOLD), ("sheltered", TOLD), ("coastal", NO), ("offshore", NO), ("ocean", NO)],
)
def test_hours_of_wind_are_told_where_there_is_shelter(exposure: str, result: str) -> None:
    judged = row(6, against(exposure=exposure))
    assert (judged.result, judged.decides) == (result, result != TOLD)
    assert row(4, against(exposure=exposure)).result == NO


def test_the_power_that_mends_is_that_of_the_pull_which_passes() -> None:
    """A share of the engine's thrust at 3 kn on her own screw; less of it asks for less power."""
    pull = np.full((DRAWS + 1, 2), 2600.0)
    steep = np.full((DRAWS + 1, 41), 9.0)
    facts = row(4, under(against(share=0.5, pull=pull), "headwind", height=steep)).facts
    assert facts.power_by == "pull"
    demand = shaft_demand(
        found().power.vessel, found().option.propeller, found().case.factors.propeller_condition,
        np.array([3.0 * KNOT]), np.full((1, 1), 0.90 * 2600.0),
    )  # fmt: skip
    wanted = np.percentile(demand.shaft_power, 90)
    assert facts.power_wanted == pytest.approx(float(wanted), rel=0.02)
    assert "gives 90% of the pull of the present engine" in tree(facts, "here", SAID)["words_mend"]
    # so little that it is there already: it does not reach the water
    assert row(4, against(share=0.5, pull=pull * 0.1)).facts.power_by == "gear"


def test_beyond_the_wave_formula_no_power_is_promised() -> None:
    steep = np.full((DRAWS + 1, 41), 9.0)
    judged = row(4, under(against(counts=False), "headwind", height=steep))
    assert judged.facts.beyond_sea
    assert (judged.facts.power_by, judged.facts.power_wanted) == ("beyond", None)
    assert "sail, or stay in harbour" in tree(judged.facts, "here", SAID)["words_mend"]


def test_neither_she_nor_her_engine_works_off_a_shore() -> None:
    still = np.zeros((DRAWS + 1, 41))
    judged = row(4, against(share=1.0, made_good=still))
    assert judged.facts.neither
    assert "Neither this option nor the present engine" in tree(judged.facts, "here", SAID)["words"]
    assert not row(4, against(share=1.0, made_good=still + 2.1 * KNOT)).facts.neither


def test_peak_counts_where_it_lasts_through_the_exposed_part() -> None:
    """As long as the exposed part of the worst leg takes; half an hour where there is none."""
    part = against(exposure="coastal")
    peak = replace(part.headwind.peak, speed=np.full((DRAWS + 1, 41), 4.0 * KNOT))
    part = under(part, "headwind", peak=peak)
    leg = part.legs.results[MUST]
    takes = float(np.ravel(leg.leg.exposed_distance)[0] / leg.outside[0, 0])
    assert takes != pytest.approx(1800.0, rel=0.1)
    nowhere = under(part, "key", worst_leg=None)
    for time, where in ((takes, part), (1800.0, nowhere)):
        enough, short = (
            under(where, "option.motor", peak_time=each) for each in (time + 1e-6, time - 1.0)
        )
        assert row(6, enough).result == GO
        assert row(6, short).result == NO


def test_an_owner_who_plans_with_more_wind_is_judged_by_his_own() -> None:
    part = against(0.0, 0.0)
    harder, softer = (under(part, "case.planning", hold_wind=wind * KNOT) for wind in (30.0, 15.0))
    assert row(4, harder).facts.wind == pytest.approx(30.0 * KNOT)
    assert row(4, softer).facts.wind == pytest.approx(25.0 * KNOT)


# The yardstick


def test_the_present_engine_measures_itself_as_one() -> None:
    """The diesel that is kept pulls, goes and stops as the yardstick does, in every draw.

    In a boat whose engine reaches its rated turns.
    """
    keep = alone(turning(1.0), KEEP, 40).findings
    assert keep.yard.turns is None
    np.testing.assert_allclose(keep.holding.share, 1.0, rtol=1e-9)
    np.testing.assert_allclose(keep.power.top.peak, keep.yard.top, rtol=1e-9)
    np.testing.assert_allclose(keep.docking.stops[0].distance, keep.yard.stop, rtol=1e-9)
    np.testing.assert_allclose(keep.headwind.peak.speed, keep.yard.made_good, rtol=1e-9)
    np.testing.assert_allclose(found().yard.pull, found(KEEP).yard.pull)  # whatever the option


def test_pull_is_thrust_less_the_suction_on_the_hull() -> None:
    keep = found(KEEP)
    speed = np.array([3.0, 3.5]) * KNOT
    thrust = greatest_pull(keep.option, keep.power, keep.case.factors, speed, peak=False).thrust
    suction = np.asarray(keep.option.propeller.thrust_deduction)
    np.testing.assert_allclose(keep.yard.pull, thrust * (1.0 - suction))
    assert np.all(suction > 0.0)


def turning(share: float) -> Case:
    """The sloop whose engine reaches a share of its rated turns at full throttle."""
    trial = sloop().trial
    assert trial is not None
    reached = share * float(np.ravel(sloop().engine.rated_speed)[0])
    kept = tuple(item for item in sloop().assumptions if item.path != "trial.full_throttle_speed")
    return replace(sloop(), trial=replace(trial, full_throttle_speed=reached), assumptions=kept)


def test_an_engine_that_misses_its_turns_counts_at_those_that_it_reaches() -> None:
    on = stand(turning(1.0), make_draws(turning(1.0), 0))
    hull = vessel(on.case.boat, on.case.waters, 0.0, on.case.propeller)
    rated, missed, short, far = (
        yardstick(replace(on.case, trial=turning(share).trial), hull, on.trial.scale)
        for share in (1.0, 0.901, 0.899, 0.5)
    )
    assert (rated.turns, missed.turns) == (None, None)
    engine = float(np.ravel(sloop().engine.rated_speed)[0])
    assert short.turns == pytest.approx(0.899 * engine)
    np.testing.assert_allclose(missed.top, rated.top)
    assert short.top[0, 0] < rated.top[0, 0]
    assert far.pull[0, 0] < 0.8 * rated.pull[0, 0]
    assert far.stop[0, 0] > 1.2 * rated.stop[0, 0]


def test_the_owner_says_whether_it_ever_was_enough() -> None:
    case = replace(sloop(), engine=replace(sloop().engine, enough=False))
    assert not stand(case, make_draws(case, 0)).yard.counts
    for said in (True, None):
        asked = replace(sloop(), engine=replace(sloop().engine, enough=said))
        assert stand(asked, make_draws(asked, 0)).yard.counts


# Ordinary weather


@pytest.mark.parametrize(
    ("exposure", "left"),
    [("narrow", 0.5), ("sheltered", 0.6), ("coastal", 0.8), ("offshore", 1.0), ("ocean", 1.0)],
)
def test_ordinary_wind_is_what_the_waters_leave_of_the_seasons(exposure: str, left: float) -> None:
    """0.94 of 6 m/s where no position tells a season's wind."""
    waters = replace(sloop().waters, exposure=exposure, latitude=None, longitude=None)
    case = replace(sloop(), waters=waters)
    assert ordinary_wind(case, "") == pytest.approx(0.94 * 6.0 * left)


def test_ordinary_wind_follows_position_and_season() -> None:
    gale, calm = (
        ordinary_wind(replace(sloop(), waters=replace(sloop().waters, latitude=each)), "")
        for each in (58.0, 36.0)
    )
    assert gale != pytest.approx(calm)
    winter, summer = (
        ordinary_wind(sloop(), months) for months in ("December to January", "June to July")
    )
    assert winter > 1.1 * summer


def test_a_leg_that_tells_its_usual_wind_keeps_it() -> None:
    told = replace(sloop().legs[0], usual_wind=3.0)
    others: tuple[Leg, ...] = tuple(replace(leg, usual_wind=None) for leg in sloop().legs[1:])
    legs = with_ordinary_wind(replace(sloop(), legs=(told, *others))).legs
    assert legs[0].usual_wind == 3.0
    assert legs[1].usual_wind == pytest.approx(ordinary_wind(sloop(), sloop().planning.season))
    winter = replace(others[0], season="December to January")
    (blown,) = with_ordinary_wind(replace(sloop(), legs=(winter,))).legs
    assert blown.usual_wind == pytest.approx(ordinary_wind(sloop(), "December to January"))
