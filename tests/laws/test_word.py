"""Does the word on a battery never get better by what makes the task harder?

A dozen plants of one boat by the same draws: what is changed is changed after they are drawn, so
that two words differ by that alone. The reading of her trial is held; the year and the other
options are left out. Each law is held row by row, meets a *suitable* in a quarter of its plants,
and is felt: something does get worse.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from generator.analyses.findings import Findings
from generator.analyses.handling.yardstick import yardstick
from generator.analyses.motion.hull import vessel
from generator.analyses.verdict.criteria.criterion import CONDITIONAL, GO, NO
from generator.analyses.verdict.verdict import WORD_CONDITIONS, WORD_GO, WORD_NO, verdict
from generator.case.case import Case
from generator.case.open import read_case
from generator.case.option import Option
from generator.draws import make_draws
from generator.one_option import Ground, technical
from generator.study import stand
from tests.once import once

SLOOP = Path(__file__).parents[2] / "cases" / "sloop_30_weekend.yaml"
ELECTRIC, DRAWS = 2, 100
KNOT = 1852 / 3600
PLANTS = (  # kW for good and Ah: motors and banks that are too small, just enough, and ample
    (8, 200), (8, 330), (8, 700), (10, 400), (13, 280), (13, 300), (13, 330), (13, 400),
    (13, 550), (13, 700), (18, 400), (18, 900),
)  # fmt: skip
WORDS = {WORD_NO: 0, WORD_CONDITIONS: 1, WORD_GO: 2}
RESULTS = {NO: 0, CONDITIONAL: 1, GO: 2}
Judged = dict[str | int, int]  # the word, and each row that decides, as a rank


@lru_cache(maxsize=1)
def ground() -> Ground:
    case = read_case(SLOOP)
    return stand(case, make_draws(case, DRAWS))


def over(case: Case, age: float | None = None) -> Ground:
    """The same draws and the same reading of her trial, under a case that is changed."""
    hull = vessel(case.boat, case.waters, 0.0, case.propeller)
    trial = ground().trial
    return Ground(case, trial, yardstick(case, hull, trial.scale), age)


def plant(kilowatts: float, hours: float) -> Option:
    option = ground().case.options[ELECTRIC]
    assert option.motor is not None
    assert option.bank is not None
    watts = kilowatts * 1e3
    motor = replace(option.motor, continuous_power=watts, peak_power=1.2 * watts)
    return replace(option, motor=motor, bank=replace(option.bank, charge=hours * 3600.0))


def looked_at(on: Ground, option: Option) -> Findings:
    return technical(on, option, ELECTRIC, brief=True)


def judged(on: Ground, option: Option) -> Judged:
    found = verdict(looked_at(on, option))
    rows: Judged = {
        row.criterion.id: RESULTS[row.result]
        for row in found.judgements
        if row.decides and row.result in RESULTS
    }
    return rows | {"word": WORDS[found.word]}


def all_plants(on: Ground, bank: float = 1.0) -> list[Judged]:
    return [judged(on, plant(kilowatts, hours * bank)) for kilowatts, hours in PLANTS]


@once
def as_they_are() -> list[Judged]:
    return all_plants(ground())


@once
def in_slack_water() -> list[Judged]:
    return all_plants(over(slack()))


def holds(
    better: list[Judged], worse: list[Judged], rows: tuple[str | int, ...] | None = None
) -> None:
    """Nothing that decides is higher where it ought to be lower; a quarter is suitable before."""
    felt = False
    for one, other, size in zip(better, worse, PLANTS, strict=True):
        for row in rows or tuple(one):
            if row in one and row in other:
                assert other[row] <= one[row], (size, row)
                felt = felt or other[row] < one[row]
    assert felt, "nothing moves by it"
    suitable = sum(each["word"] == WORDS[WORD_GO] for each in better)
    assert suitable >= len(PLANTS) / 4, suitable


def times(part: Any, share: float, *names: str) -> Any:
    """A part with some of its numbers multiplied, of each draw; what nobody told stays so."""
    told = {name: getattr(part, name) for name in names}
    return replace(
        part, **{n: np.asarray(value) * share for n, value in told.items() if value is not None}
    )


def on_legs(case: Case, share: float, *names: str) -> Case:
    return replace(case, legs=tuple(times(leg, share, *names) for leg in case.legs))


def windier(case: Case) -> Case:
    blown = on_legs(case, 1.2, "wind", "usual_wind")
    return replace(blown, planning=times(case.planning, 1.2, "hold_wind"))


def rougher(case: Case) -> Case:
    return replace(on_legs(case, 2.0, "fetch"), waters=times(case.waters, 2.0, "fetch"))


def draughtier(case: Case) -> Case:
    what = (
        "freeboard", "freeboard_share", "mast_diameter", "mast_diameter_share", "wire_width",
        "furled_sail_width", "sprayhood_area",
    )  # fmt: skip
    return replace(case, boat=replace(case.boat, windage=times(case.boat.windage, 1.3, *what)))


def colder(case: Case) -> Case:
    waters = case.waters
    assert waters.coldest is not None
    water, cells = (np.asarray(each) - 7.0 for each in (waters.temperature, waters.coldest))
    return replace(case, waters=replace(waters, temperature=water, coldest=cells))


@pytest.mark.parametrize("harder", [windier, rougher, draughtier, colder])
def test_harder_circumstances_never_improve_a_word(harder: Callable[[Case], Case]) -> None:
    holds(as_they_are(), all_plants(over(harder(ground().case))))


def test_an_older_bank_never_improves_a_word() -> None:
    """The word is that of year 5: new, as it is, and nine years old."""
    case = ground().case
    holds(as_they_are(), all_plants(over(case, age=9.0)))
    holds(all_plants(over(case, age=0.0)), as_they_are())


def test_a_larger_bank_of_the_same_mass_never_worsens_a_word() -> None:
    """To 1,170 Ah: from some 1,300 on no usual fuse breaks its short circuit, and row 22 asks."""
    for share in (1.05, 1.3):
        holds(all_plants(ground(), bank=share), as_they_are())


def slack() -> Case:
    """No stream, and a house battery of its own."""
    case = ground().case
    still = tuple(
        replace(leg, foul_stream=0.0, spring_stream=None if leg.spring_stream is None else 0.0)
        for leg in case.legs
    )
    return replace(case, legs=still, house=replace(case.house, separate_bank=True))


@pytest.mark.parametrize("share", [0.9, 0.75])
def test_a_lower_speed_never_worsens_rows_1_to_3(share: float) -> None:
    """As low as 3 kn; below that the standing losses of the drive are what is left."""
    slower = on_legs(slack(), share, "speed", "exposed_speed")
    assert min(float(np.min(leg.speed)) for leg in slower.legs) > 3.0 * KNOT
    holds(all_plants(over(slower)), in_slack_water(), rows=(1, 2, 3))


def matched(on: Ground, kilowatts: float) -> Findings:
    """A motor on the reduction with which it turns as rated at full power."""
    option = plant(kilowatts, 700)
    assert option.motor is not None
    direct = replace(option, motor=replace(option.motor, gear_ratio=1.0))
    ratio = looked_at(on, direct).match.ratio
    return looked_at(on, replace(option, motor=replace(option.motor, gear_ratio=ratio)))


@pytest.mark.parametrize(("exposure", "knots"), [("narrow", 15.0), ("sheltered", 20.0)])
def test_a_smaller_motor_never_keeps_a_larger_reserve(exposure: str, knots: float) -> None:
    """Losses scale with the rating, so that all have one curve of efficiency; in every draw."""
    case = ground().case
    waters = replace(case.waters, exposure=exposure)
    planning = replace(case.planning, hold_wind=knots * KNOT)
    on = over(replace(case, waters=waters, planning=planning))
    found = [matched(on, kilowatts) for kilowatts in (18, 13, 8, 5, 3)]
    for larger, smaller in pairwise(found):
        assert np.all(smaller.reserve.demand <= larger.reserve.demand * (1.0 + 1e-9))
    assert found[-1].reserve.held < 0.5 + 0.5 * (exposure == "narrow")  # it cannot, and is capped
    words = [verdict(each).word for each in found]
    assert words.count(WORD_GO) >= len(words) / 4
