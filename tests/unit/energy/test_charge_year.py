"""The steps of the year against the same rules written out for one bank, hour by hour."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pytest

from generator.arrays import Array
from generator.physics.energy.charge_year import (
    Charging,
    Course,
    Flows,
    Hook,
    Machine,
    charge_course,
)

HOURS, OPTIONS, YEARS = 24 * 20, 2, 3
KILOWATT_HOUR = 3.6e6


@dataclass(frozen=True)
class Setting:
    flows: Flows
    charging: Charging
    machine: Machine
    start: Array


def setting(taper: float = 1.0) -> Setting:
    """Sun by day, a plug in every third block of hours, loads that at times empty the bank."""
    random = np.random.default_rng(5)
    shape = (HOURS, OPTIONS, YEARS)
    hour = np.arange(HOURS)[:, np.newaxis, np.newaxis]
    sun = random.random(shape) * np.maximum(np.sin((hour % 24 - 6) * np.pi / 12), 0.0)
    plug = np.where(hour // 30 % 3 == 0, 1.5, 0.0) * np.ones(shape)
    most = random.choice([0.0, 0.4, 5.0], (HOURS // 24, OPTIONS, YEARS))
    return Setting(
        Flows(sun * KILOWATT_HOUR, plug * KILOWATT_HOUR, random.random(shape) * KILOWATT_HOUR),
        Charging(
            np.array([[5.0], [8.0]]) * KILOWATT_HOUR,
            most * KILOWATT_HOUR,
            np.full((OPTIONS, 1), taper),
            np.array([[0.9], [1.0]]),
        ),
        Machine(
            np.array([[2.0], [0.0]]) * KILOWATT_HOUR,
            np.array([[1.0], [0.0]]) * KILOWATT_HOUR,
            np.array([[4.0], [0.0]]) * KILOWATT_HOUR,
        ),
        np.full((OPTIONS, YEARS), 3.0 * KILOWATT_HOUR),
    )


def by_hand(given: Setting, with_machine: bool, option: int, year: int) -> list[dict[str, float]]:
    """One bank, in words: loads first, then room for sun, for the machine, for the plug."""
    flows, charging = given.flows, given.charging
    full, share = charging.full[option, 0], charging.efficiency[option, 0]
    state, on, told = float(given.start[option, year]), False, []
    for hour in range(HOURS):
        own, plug, load = (
            float(part[hour, option, year]) for part in (flows.own, flows.plug, flows.load)
        )
        on = with_machine and plug == 0.0 and state < given.machine.stop[option, 0] and (
            on or state < given.machine.start[option, 0]
        )  # fmt: skip
        machine = float(given.machine.power[option, 0]) if on else 0.0
        room = min(
            (full - state) * charging.taper[option, 0], charging.most[hour // 24, option, year]
        )
        takes = room / share  # at the terminals
        left = load
        row = {"spilled": 0.0, "machine": 0.0, "plug": 0.0}
        for name, offered in (("own", own), ("machine", machine), ("plug", plug)):
            used = min(offered, left)
            left -= used
            stored = min(offered - used, takes)
            takes -= stored
            row[name] = used + stored
        row["spilled"] = own - row.pop("own")
        into = room / share - takes
        drawn = min(left, state) if left > 0.0 else 0.0
        row["unserved"], row["lost"] = left - drawn, into * (1.0 - share)
        state += into * share - drawn
        told.append(row | {"state": state})
    return told


@pytest.mark.parametrize("taper", [1.0, 0.4])
@pytest.mark.parametrize("with_machine", [False, True])
def test_course_is_that_of_the_rules_written_out(taper: float, with_machine: bool) -> None:
    given = setting(taper)
    machine = given.machine if with_machine else None
    found = charge_course(given.flows, given.charging, given.start, machine, {})
    for option in range(OPTIONS):
        for year in range(YEARS):
            told = by_hand(given, with_machine, option, year)
            for name in ("plug", "spilled", "unserved", "lost"):
                column = getattr(found, name)[:, option, year]
                assert column == pytest.approx([row[name] for row in told], abs=1e-3), name
            states = found.state[1:, option, year]
            assert states == pytest.approx([row["state"] for row in told], abs=1e-3)
            if with_machine:
                ran = found.machine[:, option, year]
                assert ran == pytest.approx([row["machine"] for row in told], abs=1e-3)


def imbalance(flows: Flows, course: Course) -> float:
    came = flows.own - course.spilled + course.plug + course.machine
    went = flows.load - course.unserved + course.lost
    return float(np.abs(np.diff(course.state, axis=0) - came + went).max())


@pytest.mark.parametrize("with_machine", [False, True])
def test_every_hour_balances_to_a_millionth_and_no_flow_is_below_nothing(
    with_machine: bool,
) -> None:
    given = setting(0.7)
    machine = given.machine if with_machine else None
    found = charge_course(given.flows, given.charging, given.start, machine, {})
    assert imbalance(given.flows, found) <= 1e-6 * given.charging.full.min()
    for name in ("plug", "machine", "spilled", "unserved", "lost"):
        assert getattr(found, name).min() >= 0.0, name
    assert (found.plug <= given.flows.plug).all()
    assert (found.unserved <= given.flows.load + 1e-6).all()
    assert (found.state <= given.charging.full + 1e-6).all()
    assert found.state.min() >= 0.0


@pytest.mark.parametrize("with_machine", [False, True])
def test_a_hook_sees_the_charge_of_its_hour_and_what_it_adds_is_drawn(with_machine: bool) -> None:
    given, plain = setting(), setting()
    machine = given.machine if with_machine else None
    seen: dict[int, Array] = {}

    def leave(hour: int) -> Hook:
        def act(state: Array) -> int:
            seen[hour] = state.copy()
            given.flows.load[hour : hour + 3] += KILOWATT_HOUR
            return hour + 3

        return act

    hooks = {hour: leave(hour) for hour in (0, 50, 51, HOURS - 1)}
    found = charge_course(given.flows, given.charging, given.start, machine, hooks)
    for hour in (0, 50, 51, HOURS - 1):
        assert seen[hour] == pytest.approx(found.state[hour])
        plain.flows.load[hour : hour + 3] += KILOWATT_HOUR
    before = charge_course(plain.flows, plain.charging, plain.start, machine, {})
    assert found.state == pytest.approx(before.state)


def test_a_bank_that_is_too_cold_takes_nothing_but_serves_the_house_from_the_plug() -> None:
    one = np.ones((24, 1, 1)) * KILOWATT_HOUR
    flows = Flows(0.0 * one, 2.0 * one, 0.5 * one)
    charging = Charging(
        np.array([[9.0]]) * KILOWATT_HOUR, np.zeros((1, 1, 1)), np.ones((1, 1)), np.ones((1, 1))
    )
    found = charge_course(flows, charging, np.array([[2.0]]) * KILOWATT_HOUR, None, {})
    assert found.state == pytest.approx(2.0 * KILOWATT_HOUR)
    assert found.plug == pytest.approx(0.5 * KILOWATT_HOUR)
