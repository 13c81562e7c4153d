"""Is the map of motor against bank a staircase, and does it agree with full looks?"""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from generator.answer.bank_steps import MOVED, stock
from generator.answer.desk import Desk, Look
from generator.answer.grow import matched_motor
from generator.answer.motor_look import motor_look
from generator.answer.remedy import Change, Remedy
from generator.answer.staircase import SLOWER, Staircase, Stairs, climbed, slower_by, told
from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.numbers import Display
from generator.report.tree import Telling, tree
from generator.study import stand

CASES = Path(__file__).parents[3] / "cases"
DEMOS = (("sloop_30_weekend", 2), ("ketch_34_two_motors", 3))
OWN, SLOW = 0, 2  # speeds
KNOT = 1852.0 / 3600.0


@cache
def desk_of(name: str) -> Desk:
    case = read_case(CASES / f"{name}.yaml")
    return Desk(stand(case, make_draws(case, 100)), {}, 100)


@cache
def base_of(name: str, place: int) -> Look:
    return desk_of(name).look(place)


@cache
def stairs_of(name: str, place: int, mass_held: bool = False) -> Stairs:
    return climbed(desk_of(name), base_of(name, place), mass_held)


@cache
def in_slack_water(name: str, place: int) -> Stairs:
    desk = desk_of(name)
    legs = tuple(replace(leg, foul_stream=0.0, spring_stream=None) for leg in desk.ground.case.legs)
    case = replace(desk.ground.case, legs=legs)
    still = Desk(replace(desk.ground, case=case), {}, desk.count)
    return climbed(still, still.look(place))


def map_of(name: str, place: int) -> Staircase:
    return told(stairs_of(name, place), base_of(name, place).findings)


def own_motor(name: str, place: int) -> int:
    """Place of the option's own motor on its map."""
    return stairs_of(name, place).motors.index(map_of(name, place).own_motor)


def full(name: str, place: int, motor: int, size: int, speed: int) -> dict[int, int]:
    """The rows of motor and bank, looked at in full: masses, losses, sea and all."""
    desk, found, stairs = desk_of(name), base_of(name, place).findings, stairs_of(name, place)
    factor = stairs.sizes[size] / map_of(name, place).own_bank
    option = desk.ground.case.options[place]
    assert option.bank is not None
    assert option.motor is not None
    at = ("options", str(place))
    added = tuple(
        replace(each, mass=each.mass * factor) if each.part == "battery" else each
        for each in option.added
    )
    bank = Change(
        Remedy("bank", 4), {(*at, "bank"): option.bank.resized(factor), (*at, "added"): added}, ()
    )
    changes = [bank, slower_by(found, SLOWER[speed])]
    if motor != own_motor(name, place):
        changes.insert(1, matched_motor(found, place, option.motor, stairs.motors[motor]))
    return {row: rank for row, rank in desk.look(place, changes).ranks.items() if row in MOVED}


@pytest.mark.parametrize(("name", "place"), DEMOS)
def test_more_bank_is_never_worse_at_the_same_mass(name: str, place: int) -> None:
    stairs = stairs_of(name, place, mass_held=True)
    for motor in range(len(stairs.motors)):
        for speed in range(len(SLOWER)):
            assert (np.diff(stairs.worst(motor, speed)) <= 0).all(), (motor, speed)


@pytest.mark.parametrize(("name", "place"), DEMOS)
def test_a_larger_bank_is_at_last_too_heavy(name: str, place: int) -> None:
    stairs, light = stairs_of(name, place), stairs_of(name, place, mass_held=True)
    own = own_motor(name, place)
    assert stairs.binding(own, OWN, len(stairs.sizes) - 1) == (2, 16)
    assert light.binding(own, OWN, len(stairs.sizes) - 1)[0] < 2


@pytest.mark.parametrize(("name", "place"), DEMOS)
def test_slower_is_never_worse_in_slack_water(name: str, place: int) -> None:
    stairs, better = in_slack_water(name, place), 0
    for motor in range(len(stairs.motors)):
        worst = [stairs.worst(motor, speed) for speed in range(len(SLOWER))]
        assert (worst[1] <= worst[0]).all()
        assert (worst[2] <= worst[1]).all()
        better += int((worst[2] < worst[0]).sum())
    assert better


@pytest.mark.parametrize(("name", "place"), DEMOS)
@pytest.mark.parametrize("rank", [0, 1])
@pytest.mark.parametrize("speed", [OWN, SLOW])
def test_the_smallest_bank_of_the_own_motor_is_that_of_full_looks_within_a_step(
    name: str, place: int, rank: int, speed: int
) -> None:
    stairs, own = stairs_of(name, place), own_motor(name, place)
    able = np.flatnonzero(stairs.worst(own, speed) <= rank)
    if not able.size:
        assert max(full(name, place, own, 10, speed).values()) > rank
        return
    first = int(able[0])
    assert max(full(name, place, own, first + 1, speed).values()) <= rank
    assert max(full(name, place, own, first - 2, speed).values()) > rank


@pytest.mark.parametrize(
    ("name", "place", "motor", "size", "speed"),
    [
        ("sloop_30_weekend", 2, 0, 9, OWN),  # 8 kW with 27 kWh: row 4 with conditions
        # 20 kW with 18 kWh: the must-make leg alone since continuous current may use the whole
        # limit; the map still scales the current of the option's own bank.
        pytest.param(
            "sloop_30_weekend",
            2,
            4,
            5,
            OWN,
            marks=pytest.mark.xfail(
                strict=True, reason="the map's current of a small bank errs on the cautious side"
            ),
        ),
        ("sloop_30_weekend", 2, 1, 5, SLOW),  # 10 kW with 18 kWh: suitable
        ("ketch_34_two_motors", 3, 1, 7, OWN),  # 12 kW with 36 kWh: the must-make leg fails
        ("ketch_34_two_motors", 3, 3, 9, OWN),  # 20 kW with 43 kWh: leg, berth and mass
        ("ketch_34_two_motors", 3, 4, 12, OWN),  # 25 kW with 54 kWh: too heavy
    ],
)
def test_a_cell_has_the_rows_of_a_full_look(
    name: str, place: int, motor: int, size: int, speed: int
) -> None:
    stairs = stairs_of(name, place)
    cell = {row: int(ranks[size]) for row, ranks in stairs.columns[motor][speed].ranks.items()}
    seen = full(name, place, motor, size, speed)
    worst = max(seen.values())
    assert max(cell.values()) == worst
    assert {row for row, rank in cell.items() if rank and rank == worst} == {
        row for row, rank in seen.items() if rank and rank == worst
    }


def test_a_motor_that_is_too_small_is_told_by_its_own_row_whatever_the_bank() -> None:
    stairs = stairs_of("ketch_34_two_motors", 3)
    for size in range(len(stairs.sizes)):
        assert stairs.binding(0, SLOW, size) == (2, 4)
    assert full("ketch_34_two_motors", 3, 0, 12, SLOW)[4] == 2


def test_rows_that_neither_moves_are_in_every_cell_and_told_apart() -> None:
    map_ = map_of("ketch_34_two_motors", 3)
    assert "Insurer" in map_.asks
    assert not any(cell.word == "Suitable" for cell in map_.cells)
    assert not map_of("sloop_30_weekend", 2).asks


def test_the_smallest_is_the_smaller_motor_then_the_smaller_bank() -> None:
    stairs, first = stairs_of("sloop_30_weekend", 2), map_of("sloop_30_weekend", 2).smallest[0]
    assert first.there
    motor, size = stairs.motors.index(first.motor or 0.0), stairs.sizes.index(first.bank or 0.0)
    assert stairs.worst(motor, OWN)[size] == 0
    assert (stairs.worst(motor, OWN)[:size] > 0).all()
    assert all((stairs.worst(each, OWN) > 0).all() for each in range(motor))


def test_the_cells_printed_hold_the_option_as_specified() -> None:
    map_ = map_of("sloop_30_weekend", 2)
    own = [
        cell
        for cell in map_.cells
        if cell.motor == map_.own_motor and np.isclose(cell.bank, map_.own_bank)
    ]
    assert [cell.slower for cell in own] == list(SLOWER)
    assert own[0].word == base_of("sloop_30_weekend", 2).word


def test_a_leg_is_not_made_slower_than_she_is_steered() -> None:
    found = base_of("sloop_30_weekend", 2).findings
    slow = replace(found.case.legs[0], speed=3.4 * KNOT, foul_stream=0.0)
    case = replace(found.case, legs=(slow, *found.case.legs[1:]))
    fields = slower_by(replace(found, case=case), 1.0 * KNOT).fields
    assert fields["legs", "0", "speed"] == pytest.approx(3.0 * KNOT)


@pytest.mark.parametrize(("name", "place"), DEMOS)
def test_the_words_name_the_smallest_at_three_speeds(name: str, place: int) -> None:
    node = tree(map_of(name, place), "options.2.map", Telling(Display("metric", "EUR")))
    said = node["words"].replace("\u00a0", " ")
    assert said.count("suitable") == len(SLOWER)
    assert re.search(r"at the owner's speeds (the smallest|none up to)", said)
    assert "0.5 kn slower" in said
    assert "1.0 kn slower" in said


def test_a_small_bank_keeps_what_holding_off_takes_a_large_one_its_share() -> None:
    name, place = "sloop_30_weekend", 2
    base, desk = base_of(name, place), desk_of(name)
    look = motor_look(desk, base, None, [slower_by(base.findings, 0.0)])
    demand = look.found.reserve.demand
    share = np.asarray(look.found.case.planning.reserve_share)
    small, large = stock(look, 0.3), stock(look, 3.0)
    assert (small[1] >= demand).all()
    assert (small[1] > share * small[0] + 1.0).any()
    assert large[1] == pytest.approx(share * large[0])
    assert (large[0] > 9.0 * small[0]).all()  # sag takes more of a small one
