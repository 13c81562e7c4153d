"""Do the rows of charging, house, cold, masses, waters, space, papers and engine pass and fail?

Each on both sides of each limit, by findings of one boat of which a part is exchanged.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.analyses.store.cold_months import coldest
from generator.analyses.use.berth import Berthed, berthed, usual_day
from generator.analyses.use.outings import outings
from generator.analyses.verdict.criteria.catalogue import criteria
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NO,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    TOLD,
    Judgement,
)
from generator.analyses.verdict.criteria.diesels import of_a_diesel
from generator.analyses.verdict.criteria.evaluate import JUDGES
from generator.analyses.verdict.verdict import _reasons, verdict
from generator.analyses.wiring.installation import Problem
from generator.analyses.year.sun_carries import SunCarries
from generator.analyses.year.weather import weather
from generator.case.case import Case
from generator.case.open import read_case
from generator.case.option import LedgerItem
from generator.case.supply import Genset
from generator.report.numbers import Display
from generator.report.tree import Telling, tree
from tests.alone import alone

CASES = Path(__file__).parents[4] / "cases"
KEEP, NEW, ELECTRIC = range(3)  # places of the options in the case
DRAWS = 200
HOUR, MILE, DAY = 3600.0, 1852.0, 86400.0
SAID = Telling(Display("metric", "GBP"))


@lru_cache(maxsize=1)
def sloop() -> Case:
    return read_case(CASES / "sloop_30_weekend.yaml")


@lru_cache(maxsize=3)
def found(place: int = ELECTRIC) -> Findings:
    return alone(sloop(), place, DRAWS).findings


def row(number: int, part: Findings) -> Judgement:
    """The row as it counts, its words said: an outcome without words would stop here."""
    judged = JUDGES[number](next(each for each in criteria() if each.id == number), part)
    judged = judged if part.option.bank is not None else of_a_diesel(judged, part)
    mend = tree(judged.facts, "here", SAID)["words_mend"]
    if judged.decides:
        assert bool(mend) == (judged.result in (CONDITIONAL, NO)), mend
    return judged


def said(judged: Judgement) -> str:
    words: dict[str, str] = tree(judged.facts, "here", SAID)
    text = f"{words['words']} -> {words['words_mend']}"
    return text.replace("\u00a0", " ").replace("\u202f", " ")


def in_case(part: Findings, name: str, **values: Any) -> Findings:
    """The findings with a part of their case exchanged."""
    item = replace(getattr(part.case, name), **values)
    return replace(part, case=replace(part.case, **{name: item}))


def mostly(holds: float, fails: float, share: float) -> np.ndarray:
    """A column of draws of which a share holds."""
    count = round(DRAWS * share)
    return np.array([holds, *[holds] * count, *[fails] * (DRAWS - count)]).reshape(-1, 1)


def at_berth(
    hours: np.ndarray | float, lies: float | None = 6.0, unattended: bool = False
) -> Findings:
    berth = found().use.berth
    assert berth is not None
    timed = replace(berth, typical_hours=np.atleast_2d(hours) * HOUR)
    part = replace(found(), use=replace(found().use, berth=timed))
    between = None if lies is None else lies * DAY
    return in_case(part, "berth", days_between_use=between, unattended=unattended)


def with_supply(part: Findings, **values: Any) -> Findings:
    supply = part.option.supply
    assert supply is not None
    return replace(part, option=replace(part.option, supply=replace(supply, **values)))


GENSET = Genset(2000.0, 0.1, 0.6)


@pytest.mark.parametrize(
    ("hours", "lies", "unattended", "result"),
    [
        (9.9, None, False, GO),
        (mostly(9.9, 30.0, 0.9), None, False, GO),
        (mostly(9.9, 30.0, 0.6), None, False, CONDITIONAL),
        (mostly(9.9, 30.0, 0.4), None, False, NO),
        (23.9, None, False, CONDITIONAL),
        (24.1, None, False, NO),
        (40.0, 2.0, True, GO),  # before the next use, with nobody aboard
        (49.0, 2.0, True, NO),
        (40.0, 2.0, False, CONDITIONAL),  # attended
        (49.0, 2.0, False, NO),
        (np.inf, 6.0, True, NO),
    ],
)
def test_a_usual_day_is_back_in_a_night_or_before_the_next_use(
    hours: np.ndarray | float, lies: float | None, unattended: bool, result: str
) -> None:
    assert row(11, at_berth(hours, lies, unattended)).result == result


def test_a_slow_post_is_spared_the_no_by_another_source() -> None:
    assert row(11, at_berth(60.0, None)).result == NO
    judged = row(11, with_supply(at_berth(60.0, None), genset=GENSET))
    assert judged.result == CONDITIONAL
    assert "Another source aboard" in said(judged)


def test_somebody_aboard_mends_what_may_not_charge_alone() -> None:
    assert "somebody aboard" in said(row(11, at_berth(40.0, 2.0)))
    assert "somebody aboard" not in said(row(11, at_berth(49.0, 2.0)))


def test_a_post_that_nobody_read_is_a_condition() -> None:
    berth = found().use.berth
    assert berth is not None
    unread = replace(berth, typical_hours=None, worst_hours=None)
    judged = row(11, replace(found(), use=replace(found().use, berth=unread)))
    assert judged.result == CONDITIONAL
    assert "read the breaker on the post" in said(judged)


def unplugged(part: Findings) -> Findings:
    return in_case(part, "berth", shore_power=False)


def sunny(ratio: np.ndarray | float) -> Findings:
    """On a buoy with panels that carry her so far."""
    carried = SunCarries(20, np.full((1, 1), 3.6e7), 3.6e7, 3.6e6, 400.0, np.atleast_2d(ratio),
                         500.0, 2.5)  # fmt: skip
    part = with_supply(unplugged(found()), panels=("a panel",))
    return replace(part, carried=carried)


@pytest.mark.parametrize(
    ("ratio", "result"),
    [
        (1.0, GO), (mostly(1.0, 0.7, 0.9), GO), (mostly(1.0, 0.7, 0.5), CONDITIONAL),
        (mostly(1.0, 0.7, 0.4), NO), (0.99, CONDITIONAL), (0.8, CONDITIONAL), (0.79, NO),
    ],
)  # fmt: skip
def test_the_sun_carries_her_in_the_dimmest_quarter(ratio: np.ndarray | float, result: str) -> None:
    assert row(12, sunny(ratio)).result == result


def test_another_source_carries_her_where_the_sun_does_not() -> None:
    assert row(12, with_supply(sunny(0.5), genset=GENSET)).result == CONDITIONAL
    bare = with_supply(unplugged(found()), panels=())
    assert row(12, with_supply(bare, genset=GENSET)).result == CONDITIONAL


def test_no_way_to_charge_fails_and_is_the_first_reason() -> None:
    """Even where rows of a lower number fail too."""
    bare = with_supply(unplugged(found()), panels=(), genset=None, wind=None)
    assert row(12, bare).result == NO
    assert "nothing charges her" in said(row(12, bare))
    short = replace(row(1, found()), result=NO)
    rows = (short, row(12, bare))
    assert _reasons(rows)[0] == 1
    assert _reasons((short, row(12, sunny(0.5))))[0] == 0


def test_with_a_plug_the_sun_is_not_asked_and_without_a_position_it_is_a_condition() -> None:
    assert row(12, found()).result == NOT_APPLICABLE
    unknown = in_case(replace(sunny(1.0), carried=None), "waters", latitude=None, longitude=None)
    assert row(12, unknown).result == CONDITIONAL
    placed = in_case(unknown, "waters", latitude=54.0, longitude=10.0)
    assert row(12, placed).result == NOT_ASSESSED  # a look that leaves the year out


def with_house(watts: float, buffered: bool, separate: bool = False) -> Findings:
    return in_case(
        found(), "house", under_way=watts, separate_bank=separate, buffered=buffered,
        converter_standing=0.0,
    )  # fmt: skip


@lru_cache(maxsize=1)
def watts_of_leg() -> float:
    """House load that takes all that the longest leg needs [W]."""
    facts = row(13, with_house(100.0, True)).facts
    return 100.0 / float(np.median(facts.of_leg[1:]))


@lru_cache(maxsize=1)
def watts_of_bank() -> float:
    """House load that empties the aged bank on the longest leg [W]."""
    facts = row(13, with_house(100.0, True)).facts
    return 100.0 / float(np.median(facts.of_bank[1:]))


@pytest.mark.parametrize(
    ("share", "result"), [(0.14, GO), (0.16, CONDITIONAL), (0.24, CONDITIONAL), (0.26, NO)]
)
def test_a_buffered_house_takes_a_part_of_the_longest_leg(share: float, result: str) -> None:
    assert row(13, with_house(share * watts_of_leg(), True)).result == result


@pytest.mark.parametrize(("share", "result"), [(0.019, CONDITIONAL), (0.021, NO)])
def test_a_light_and_a_radio_mend_a_house_that_takes_next_to_nothing(
    share: float, result: str
) -> None:
    judged = row(13, with_house(share * watts_of_bank(), False))
    assert judged.result == result
    assert ("a light and a radio" in said(judged)) == (result == CONDITIONAL)


def test_a_house_battery_of_its_own_passes() -> None:
    assert row(13, with_house(900.0, False, separate=True)).result == GO


def cold(degrees: np.ndarray | float, lock_out: bool | None, lead: bool = False) -> Findings:
    bank, own = found().bank, found().option.bank
    assert bank is not None
    assert own is not None
    aged = replace(bank.ageing.aged, temperature=np.atleast_2d(degrees))
    bank = replace(bank, ageing=replace(bank.ageing, aged=aged), lead=lead)
    option = replace(found().option, bank=replace(own, charge_lock_out=lock_out))
    return replace(found(), bank=bank, option=option)


@pytest.mark.parametrize(
    ("degrees", "lock_out", "result"),
    [
        (5.0, False, GO),
        (mostly(6.0, -4.0, 0.9), False, GO),
        (mostly(6.0, -4.0, 0.6), False, CONDITIONAL),
        (4.9, True, CONDITIONAL),
        (-5.0, True, CONDITIONAL),
        (4.9, None, CONDITIONAL),  # nobody said: to be confirmed
        (0.0, None, CONDITIONAL),
        (-0.1, None, NO),
        (4.9, False, NO),
    ],
)
def test_cold_asks_for_a_lock_out(
    degrees: np.ndarray | float, lock_out: bool | None, result: str
) -> None:
    assert row(15, cold(degrees, lock_out)).result == result


def test_above_freezing_a_known_lock_out_leaves_the_current_to_ask_for() -> None:
    """The middle of the draws stands beside the middle, the cautious end beside the cautious."""
    degrees = np.linspace(3.0, 7.0, DRAWS + 1).reshape(-1, 1)
    takes = np.where(degrees < 5.0, 5.0, 15.0)
    takes[0] = degrees[0] = 6.0
    takes[0] = 15.0

    def part(degrees: np.ndarray) -> Findings:
        mild = cold(degrees, True)
        assert mild.bank is not None
        return replace(mild, bank=replace(mild.bank, cold_charge=takes))

    judged = row(15, part(degrees))
    assert (judged.result, judged.facts.may_freeze) == (CONDITIONAL, False)
    assert "at 5 °C" in said(judged).replace("\u00a0", " ")
    assert "(cautious figures 3 °C and 5 A)" in said(judged).replace("\u00a0", " ")
    assert "no more than 5 A" in said(judged).replace("\u00a0", " ")
    assert "below freezing, or" not in said(judged)
    assert "do not charge below freezing" in said(row(15, part(degrees - 5.0)))


def test_lead_takes_charge_in_the_cold() -> None:
    assert row(15, cold(-5.0, None, lead=True)).result == GO


def test_the_coldest_battery_is_that_of_the_coldest_month_of_use() -> None:
    """Off the Dutch coast the water of July is milder than that of April, and January's colder."""
    case = read_case(CASES / "ketch_34_two_motors.yaml")

    def in_months(season: str) -> float:
        plan = replace(case.planning, season=season)
        return float(np.ravel(coldest(replace(case, planning=plan)))[0])

    april, july, winter = (
        in_months(f"{first} to {last}")
        for first, last in (("April", "October"), ("July", "August"), ("January", "December"))
    )
    assert winter < april < july
    assert april == pytest.approx(7.8, abs=0.1)  # the grid's April there
    nowhere = replace(case, waters=replace(case.waters, latitude=None, longitude=None))
    assert float(np.ravel(coldest(nowhere))[0]) == pytest.approx(15.0 - 7.0)
    leg = replace(case.legs[0], season="March to March")  # one leg outside of her season
    earlier = replace(case, legs=(leg, *case.legs[1:]))
    assert float(np.ravel(coldest(earlier))[0]) < april


def test_the_season_is_the_owners_own() -> None:
    case = read_case(CASES / "ketch_34_two_motors.yaml")
    sky = weather(case)
    assert sky is not None

    def seasons(plan: str, legs: str) -> tuple[tuple[int, ...], bool]:
        named = tuple(replace(leg, season=legs) for leg in case.legs)
        made = outings(replace(case, planning=replace(case.planning, season=plan), legs=named), sky)
        return made.season, made.season_given

    assert seasons("April to October", "") == (tuple(range(3, 10)), True)
    assert seasons("", "May to June") == ((4, 5), True)
    assert seasons("", "") == (tuple(range(3, 9)), False)
    assert seasons("", "November to February") == ((10, 11, 0, 1), True)


def with_masses(
    net: np.ndarray | float, plate: np.ndarray | float | None = None, shift: float = 0.0
) -> Findings:
    """Her findings with a net change, and without what her own masses do beside that."""
    weight = found().weight
    light = np.full((1, 1), 4000.0)
    change, start = weight.change, weight.change.before
    length = np.atleast_2d(start.waterline_length)
    moved = replace(change, gravity_shift=(shift * length, 0.0, 0.0), after=start)
    return replace(
        found(),
        weight=replace(
            weight, removed_mass=np.zeros((1, 1)), added_mass=np.atleast_2d(net), change=moved,
            light_displacement=light, plate_left=None if plate is None else np.atleast_2d(plate),
        ),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("net", "result"),
    [
        (149.0, GO),  # two of the crew, where 2 % are 80 kg
        (151.0, CONDITIONAL),
        (199.0, CONDITIONAL),
        (201.0, NO),
        (mostly(149.0, 300.0, 0.9), GO),
        (mostly(149.0, 300.0, 0.6), CONDITIONAL),
        (mostly(149.0, 300.0, 0.4), NO),
        (-400.0, GO),  # lighter, and as stable as before
    ],
)
def test_a_net_gain_passes_by_share_or_as_two_of_the_crew(
    net: np.ndarray | float, result: str
) -> None:
    assert row(16, with_masses(net)).result == result


@pytest.mark.parametrize(
    ("light", "net", "result"),
    [(2500.0, 124.0, GO), (2500.0, 126.0, NO), (10000.0, 199.0, GO), (10000.0, 201.0, CONDITIONAL)],
)
def test_two_of_the_crew_are_never_above_a_twentieth(light: float, net: float, result: str) -> None:
    part = with_masses(net)
    weight = replace(part.weight, light_displacement=np.full((1, 1), light))
    assert row(16, replace(part, weight=weight)).result == result


def test_an_exceeded_plate_fails_and_asks_for_less_load() -> None:
    assert row(16, with_masses(100.0, plate=1.0)).result == GO
    judged = row(16, with_masses(100.0, plate=-1.0))
    assert judged.result == NO
    assert "plate is kept" in said(judged)


def test_a_far_shift_of_the_centre_is_told_and_does_not_judge() -> None:
    judged = row(16, with_masses(0.0, shift=-0.011))
    assert judged.result == GO
    assert "Her centre of gravity moves" in said(judged)
    both = row(16, with_masses(199.0, shift=-0.011))
    assert both.result == CONDITIONAL
    assert "weights nearer to those that are removed" in said(both)


@pytest.mark.parametrize(("lost", "result"), [(0.04, GO), (0.06, CONDITIONAL)])
def test_a_lighter_boat_that_loses_stability_is_conditional(lost: float, result: str) -> None:
    part = with_masses(-100.0)
    start = part.weight.change.before
    height = np.asarray(start.gravity[2]) + lost * np.asarray(start.metacentric_height)
    after = replace(start, gravity=(start.gravity[0], start.gravity[1], height))
    change = replace(part.weight.change, after=after)
    judged = row(16, replace(part, weight=replace(part.weight, change=change)))
    assert judged.result == result
    assert "metacentric height" in said(judged)


def floating(trim: np.ndarray | float, heel: float = 0.0, dry: float = 0.1) -> Findings:
    change = replace(
        found().weight.change, trim=np.atleast_2d(np.arctan(trim)), list=np.radians(heel), aft=0.0
    )
    boat = found().case.boat
    part = replace(found(), weight=replace(found().weight, change=change))
    return in_case(part, "boat", floatation=replace(boat.floatation, drain_height=dry))


@pytest.mark.parametrize(
    ("trim", "heel", "dry", "result"),
    [
        (0.0049, 0.0, 0.1, GO), (0.0051, 0.0, 0.1, CONDITIONAL), (0.0101, 0.0, 0.1, NO),
        (0.0, 0.49, 0.1, GO), (0.0, 0.51, 0.1, CONDITIONAL), (0.0, -1.01, 0.1, NO),
        (0.0, 0.0, -0.01, CONDITIONAL), (mostly(0.0049, 0.02, 0.6), 0.0, 0.1, CONDITIONAL),
        (mostly(0.0049, 0.02, 0.4), 0.0, 0.1, NO),
    ],
)  # fmt: skip
def test_trim_list_and_drains(
    trim: np.ndarray | float, heel: float, dry: float, result: str
) -> None:
    assert row(17, floating(trim, heel, dry)).result == result


@pytest.mark.parametrize(
    ("trim", "across", "told", "left_out"),
    [
        (0.0080, 0.0, "one metre aft, or place", "port"),
        (0.0, 40.0, "move 40 kg one metre to port, or place", "aft"),
        (0.0080, 40.0, "one metre aft and 40 kg one metre to port, or place", "nothing"),
        (0.0080, 0.2, "one metre aft, or place", "port"),
    ],
)
def test_nothing_is_moved_that_rounds_to_nothing(
    trim: float, across: float, told: str, left_out: str
) -> None:
    part = floating(trim, 0.8)
    change = part.weight.change
    shift = np.asarray(across) / np.asarray(change.after.displacement)
    gravity = (change.gravity_shift[0], shift, change.gravity_shift[2])
    moved = replace(part.weight, change=replace(change, gravity_shift=gravity))
    words = said(row(17, replace(part, weight=moved))).replace("\u00a0", " ")
    assert told in words
    assert left_out not in words.partition(" -> ")[2]


def test_masses_without_a_place_are_asked_for_once() -> None:
    ledger = found().weight.ledger
    bare = replace(ledger, added=tuple(replace(item, x=None) for item in ledger.added))
    weight = replace(found().weight, ledger=bare, trim_why="no position")
    part = replace(found(), weight=weight)
    assert row(17, part).result == CONDITIONAL
    assert ledger.added[0].name in said(row(17, part))
    assert row(16, part).result == GO


@pytest.mark.parametrize(
    ("exposure", "refuge", "result"),
    [
        ("narrow", 30.0, GO), ("sheltered", 30.0, GO), ("coastal", 19.9, GO),
        ("coastal", 20.1, CONDITIONAL), ("offshore", 5.0, CONDITIONAL), ("ocean", 5.0, NO),
    ],
)  # fmt: skip
def test_waters_ask_for_more_farther_out(exposure: str, refuge: float, result: str) -> None:
    alone_there = in_case(found(), "planning", fallback="tow")
    part = in_case(alone_there, "waters", exposure=exposure, refuge_distance=refuge * MILE)
    assert row(18, part).result == result


def test_an_ocean_wants_a_second_means_of_its_own_fuel_or_a_signature() -> None:
    ocean = in_case(in_case(found(), "planning", fallback="tow"), "waters", exposure="ocean")
    sunny_ocean = with_supply(ocean, panels=("a panel",), regeneration=True)
    assert row(18, sunny_ocean).result == NO
    assert row(18, with_supply(ocean, genset=GENSET)).result == CONDITIONAL
    assert row(18, in_case(ocean, "planning", fallback="second propulsor")).result == CONDITIONAL
    assert row(18, in_case(ocean, "planning", at_sea="sail")).result == CONDITIONAL


@pytest.mark.parametrize("place", [KEEP, NEW])
def test_a_ban_fails_a_diesel_and_nothing_else_does(place: int) -> None:
    assert row(18, found(place)).result == GO
    banned = in_case(found(place), "waters", combustion_engines="banned")
    assert row(18, banned).result == NO
    assert row(18, banned).decides
    assert row(18, in_case(found(), "waters", combustion_engines="banned")).result == GO


def seen(works: str = "", **values: Any) -> Findings:
    place = replace(found().option.compartment, works=works, **values)
    return replace(found(), option=replace(found().option, compartment=place))


def test_a_space_that_nobody_has_seen_is_said_so() -> None:
    """Not as none of five points that hold."""
    none = dict.fromkeys(("dry", "above_bilge", "ventable", "not_a_berth", "escape_clear"))
    words = said(row(19, seen("", **none)))
    assert words.startswith("nobody has looked at the battery space yet")
    assert "points" not in words
    assert "points; not looked at: dry" in said(row(19, seen("", dry=None)))


@pytest.mark.parametrize("point", ["dry", "above_bilge", "ventable", "not_a_berth", "escape_clear"])
def test_a_space_that_does_not_hold_fails_until_works_are_listed(point: str) -> None:
    assert row(19, seen()).result == GO
    assert row(19, seen("", **{point: None})).result == CONDITIONAL
    assert row(19, seen("A vent to the coaming", **{point: False})).result == CONDITIONAL
    assert row(19, seen("", **{point: False})).result == NO


def test_a_space_shared_with_the_hot_motor_does_not_hold() -> None:
    part, worked = seen(), found().duty
    assert worked is not None
    motor, battery = (
        LedgerItem(name, 60.0, 2.0, 0.0, 0.0, name, "Engine space", "builder", 1)
        for name in ("motor", "battery")
    )
    ledger = replace(part.weight.ledger, added=(motor, battery))
    part = replace(part, weight=replace(part.weight, ledger=ledger))
    for degrees, result in ((60.0, NO), (30.0, GO)):
        duty = replace(worked, space_full=np.full((1, 1), degrees))
        judged = row(19, replace(part, duty=duty))
        assert judged.result == result
        assert ("apart from the motor" in said(judged)) == (result == NO)


@pytest.mark.parametrize(
    ("answer", "result"),
    [
        ("accepted", GO), ("no cover wanted", GO), ("applied", CONDITIONAL),
        ("another asked", CONDITIONAL), ("not asked", CONDITIONAL), ("", CONDITIONAL),
        ("refused", NO),
    ],
)  # fmt: skip
def test_a_refusal_stops_and_a_doubt_is_a_condition(answer: str, result: str) -> None:
    judged = row(20, in_case(found(), "papers", insurer=answer))
    assert judged.result == result
    assert judged.decides


@pytest.mark.parametrize(
    ("market", "year", "answer", "result"),
    [
        ("EEA", 1992, "", GO), ("EEA", 2004, "", CONDITIONAL), ("GB", None, "", CONDITIONAL),
        ("US", 2004, "", GO), ("EEA", 2004, "not in scope", GO), ("EEA", 2004, "assessed", GO),
        ("EEA", 1992, "enquired", CONDITIONAL), ("EEA", 2004, "not asked", CONDITIONAL),
        ("EEA", 2004, "refused", NO),
    ],
)  # fmt: skip
def test_conversion_follows_market_year_and_answer(
    market: str, year: int | None, answer: str, result: str
) -> None:
    part = in_case(found(), "boat", market=market, year_on_market=year)
    judged = row(21, in_case(part, "papers", conversion=answer))
    assert judged.result == result
    assert judged.decides


@pytest.mark.parametrize(
    ("volts", "expert", "problems", "result"),
    [
        (60.0, False, (), GO),
        (60.1, False, (), NO),
        (60.1, True, (), CONDITIONAL),
        (58.4, False, (Problem("C1", "over_its_current"),), CONDITIONAL),
        (60.1, False, (Problem("C1", "over_its_current"),), NO),
    ],
)
def test_charge_ceiling_and_lists(
    volts: float, expert: bool, problems: tuple[Problem, ...], result: str
) -> None:
    made, wiring = found().installation, found().option.installation
    assert made is not None
    assert wiring is not None
    wiring = replace(wiring, specialist_design=expert, insulation_monitor=expert)
    made = replace(made, voltages=replace(made.voltages, ceiling=volts), problems=problems)
    part = replace(found(), installation=made, option=replace(found().option, installation=wiring))
    judged = row(22, part)
    assert judged.result == result
    assert ("C1: carries more than it may" in said(judged)) is bool(problems)


def engine(place: int, condition: str, priced: bool, **values: Any) -> Findings:
    """The present engine in a condition; an overhaul with a price or without one."""
    part = in_case(found(place), "engine", condition=condition, **values)
    rest = tuple(item for item in part.case.assumptions if item.path != "prices.overhaul")
    own = next(item for item in part.case.assumptions if item.path == "prices.overhaul")
    price = replace(own, origin="given" if priced else "default")
    lines = tuple(each for each in part.ledger.payments if each.part != "overhaul")
    return replace(
        part, case=replace(part.case, assumptions=(*rest, price)),
        ledger=replace(part.ledger, payments=lines),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("condition", "priced", "result"),
    [
        ("good", False, GO), ("worn", False, CONDITIONAL), ("worn", True, CONDITIONAL),
        ("dying", False, NO), ("dying", True, CONDITIONAL),
    ],
)  # fmt: skip
def test_condition_decides_of_the_engine_that_stays(
    condition: str, priced: bool, result: str
) -> None:
    kept = row(27, engine(KEEP, condition, priced))
    assert kept.result == result
    assert kept.decides
    for place in (NEW, ELECTRIC):
        told = row(27, engine(place, condition, priced))
        assert (told.result, told.decides) == (TOLD, False)


def test_a_line_of_the_ledger_prices_an_overhaul() -> None:
    part = engine(KEEP, "dying", False)
    line = replace(found(NEW).ledger.payments[0], part="overhaul", amount=np.full((1, 1), 4800.0))
    priced = replace(part, ledger=replace(part.ledger, payments=(line,)))
    judged = row(27, priced)
    assert judged.result == CONDITIONAL
    assert "4,800" in said(judged)


def test_a_healthy_engine_makes_keeping_the_reference() -> None:
    young = {"year": 2020, "hours": 400 * HOUR}
    assert "the reference" in said(row(27, engine(ELECTRIC, "good", False, **young)))
    for other in ({"year": 2015}, {"hours": 1600 * HOUR}):
        part = engine(ELECTRIC, "good", False, **(young | other))
        assert "past its first health" in said(row(27, part))
    nameless = engine(ELECTRIC, "good", False, year=None)
    assert row(27, nameless).result == NOT_ASSESSED
    assert row(27, engine(KEEP, "good", False, year=None)).result == GO


@pytest.mark.parametrize(
    ("worth", "outcome"), [(1e6, "within"), (6.5e4, "above"), (2e4, "far_above")]
)
def test_cost_over_worth_is_told(worth: float, outcome: str) -> None:
    part = in_case(found(), "boat", worth=worth)
    part = replace(part, cost=replace(part.cost, first=np.full((1, 1), 25e3)))
    judged = row(26, part)
    assert (judged.result, judged.facts.outcome) == (TOLD, outcome)
    assert row(26, in_case(part, "boat", worth=None)).result == NOT_ASSESSED


@pytest.mark.parametrize(
    ("years", "outcome", "result"),
    [
        (0.0, "at_once", TOLD), (9.9, "within", TOLD), (10.1, "later", TOLD),
        (np.inf, "never", TOLD), (np.nan, "unknown", NOT_ASSESSED),
    ],
)  # fmt: skip
def test_payback_is_told(years: float, outcome: str, result: str) -> None:
    case = read_case(CASES / "ketch_34_two_motors.yaml")
    whole = found_beside(case)
    savings = whole.savings
    assert savings is not None
    held = savings.fairly
    assert held is not None
    repaid = replace(held, discounted_payback=np.full((1, 1), years))
    judged = row(25, replace(whole, savings=replace(savings, keep=repaid, new_diesel=repaid)))
    assert (judged.result, judged.facts.outcome, judged.decides) == (result, outcome, False)


@lru_cache(maxsize=1)
def found_beside(case: Case) -> Findings:
    """A battery option that is held against its diesels: the whole case, of few draws."""
    from generator.draws import make_draws
    from generator.study import run

    near = replace(case, waters=replace(case.waters, latitude=None, longitude=None))
    return run(near, make_draws(near, 20)).options[ELECTRIC].findings


@pytest.mark.parametrize(
    ("place", "deciding"),
    [(KEEP, {1, 2, 3, 16, 17, 18, 27}), (NEW, {1, 2, 3, 4, 7, 9, 16, 17, 18, 23, 24})],
)
def test_a_diesel_is_judged_on_what_can_fail_it(place: int, deciding: set[int]) -> None:
    """In these waters hours against the wind, row 6, are only told."""
    rows = verdict(found(place)).judgements
    assert {each.criterion.id for each in rows if each.decides} == deciding


@pytest.mark.parametrize("number", [1, 2, 3])
def test_more_than_the_tank_holds_is_a_condition_of_a_diesel(number: int) -> None:
    short = replace(row(number, found(KEEP)), result=NO)
    assert of_a_diesel(short, found(KEEP)).result == CONDITIONAL


@pytest.mark.parametrize("place", [KEEP, NEW])
def test_what_is_told_of_a_boat_is_told_of_her_diesel(place: int) -> None:
    told = replace(row(4, found(place)), result=NO, role="tell")
    assert not of_a_diesel(told, found(place)).decides


def test_a_usual_day_is_one_outing_with_the_legs_that_follow() -> None:
    """Out and home twenty times, a Sunday thirty times, a cruise whose way home is made once."""
    leg = sloop().legs[0]

    def made(times: float, miles: float, follows: int | None) -> Any:
        return replace(leg, times_per_year=times, distance=miles * MILE, follows=follows)

    legs = (made(20, 6, None), made(20, 6, 0), made(20, 2, 1), made(30, 3, None), made(8, 50, 3))
    assert usual_day(legs) == ((3,), 30.0)
    assert usual_day((*legs[:3], made(20, 3, None))) == ((0, 1, 2), 20.0)
    assert usual_day((*legs[:4], made(16, 50, 3))) == ((3, 4), 30.0)
    assert usual_day(()) == ((), 0.0)


def test_energy_of_a_usual_day_does_not_follow_the_rest_of_the_year() -> None:
    """The year's energy over the times of the commonest leg took in every other outing."""
    outfit = found().outfit

    def day(times: float) -> Berthed:
        other = replace(outfit.case.legs[2], times_per_year=times)
        legs = (*outfit.case.legs[:2], other)
        made = berthed(replace(outfit, case=replace(outfit.case, legs=legs)), 10.0 * HOUR)
        assert made is not None
        return made

    few, many = day(1.0), day(10.0)
    assert few.places == many.places == (0, 1)
    np.testing.assert_array_equal(few.typical, many.typical)
    own = [result.leg for result in found().legs.results[:2]]
    assert few.outing == tuple(leg.name for leg in own)
    assert float(few.typical[0, 0]) > 0.0
    assert len(own) == 2
