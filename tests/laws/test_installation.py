"""What must hold of every installation: more copper loses less, no fuse outgrows its cable."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.analyses.wiring.circuits import Surroundings, chosen, conductor, sections
from generator.analyses.wiring.install import leg
from generator.analyses.wiring.installation import Circuit, Device, Fault, Installation
from generator.analyses.wiring.loads import Load
from generator.case.open import read_case
from generator.case.wiring import TEMPERATURE_CLASSES, CircuitPlan
from generator.physics.energy.conductor import (
    copper_resistivity,
    short_circuit_area,
    volt_drop,
    warm_air_factor,
)
from generator.physics.energy.fault_current import fault_current
from generator.physics.energy.precharge import charge_time, first_current
from generator.physics.energy.protection import most_fuse
from tests.alone import alone

CASES = Path(__file__).parents[2] / "cases"
CURRENTS = st.floats(1.0, 800.0)
LENGTHS = st.floats(0.1, 15.0)
CLASSES = st.sampled_from(TEMPERATURE_CLASSES)
AIR = st.floats(20.0, 55.0)
CEILINGS = st.sampled_from([14.7, 29.4, 47.45, 54.75, 58.4, 62.05, 120.0])


def load(current: float, peak: float, run_length: float, ceiling: float) -> Load:
    plan = CircuitPlan("motor", run_length, None, None, None, None, None, None, 0.15)
    return Load("C1", "motor", "a to b", "a", "b", ceiling / 1.14, ceiling, current, peak, 600.0,
                run_length, plan)  # fmt: skip


@given(CURRENTS, LENGTHS, st.floats(20.0, 105.0))
def test_a_larger_conductor_never_raises_the_drop(
    current: float, loop: float, temperature: float
) -> None:
    copper = copper_resistivity(temperature)
    drops = [volt_drop(current, loop, area, copper) for area, _ in sections()]
    assert drops == sorted(drops, reverse=True)


@given(CLASSES, AIR, st.integers(2, 12))
def test_a_larger_conductor_never_carries_less(degrees: int, air: float, bundled: int) -> None:
    around = Surroundings(degrees, air, bundled)
    carried = [conductor(area, 1, around, False).ampacity for area, _ in sections()]
    assert carried == sorted(carried)


@given(CLASSES, AIR, st.floats(0.0, 30.0))
def test_warmer_air_never_lets_a_conductor_carry_more(
    degrees: int, air: float, more: float
) -> None:
    assert warm_air_factor(degrees, air + more) <= warm_air_factor(degrees, air)


@given(CURRENTS, st.floats(1.0, 2.5), LENGTHS, CEILINGS, CLASSES, AIR, st.floats(500.0, 40e3))
def test_a_fuse_never_exceeds_what_its_conductor_carries_under_its_rule(
    current: float, factor: float, length: float, ceiling: float, degrees: int, air: float,
    fault: float,
) -> None:  # fmt: skip
    """And where no conductor sold is large enough, the list says so."""
    around = Surroundings(degrees, air, 2)
    short = Fault(False, fault, fault, fault, fault, 1e-3, 1e-4, ceiling)
    wired, device = leg(load(current, current * factor, length, ceiling), around, short, 1, False)
    rule = most_fuse(ceiling, wired.conductor.ampacity)
    assert device.most == rule
    if device.rating > rule:
        assert "larger_than_conductor" in {each.what for each in device.problems}
    else:
        assert device.rating <= wired.conductor.ampacity or wired.problems or device.problems
        assert device.rating <= 1.5 * wired.conductor.ampacity
    if device.breaking is not None and device.voltage is not None:
        assert device.breaking >= fault
        assert device.voltage >= ceiling
    assert device.rating >= device.least or device.problems


def test_a_fuse_that_no_conductor_of_the_list_carries_is_told() -> None:
    """542 A in 50 °C of air ask for 700 A; four of the largest carry 693 A at 60 °C."""
    around = Surroundings(60, 50.0, 2)
    short = Fault(False, 500.0, 500.0, 500.0, 500.0, 1e-3, 1e-4, 14.7)
    wired, device = leg(load(217.0, 542.5, 1.0, 14.7), around, short, 1, False)
    assert device.rating > wired.conductor.ampacity
    assert "no_such_conductor" in {each.what for each in wired.problems}


@given(st.floats(1.0, 400.0), CLASSES)
def test_a_chosen_conductor_carries_what_is_asked_or_is_the_largest(
    current: float, degrees: int
) -> None:
    around = Surroundings(degrees, 30.0, 2)
    wire = chosen(current, 0.0, around)
    largest = chosen(1e9, 0.0, around)
    assert wire.ampacity >= current or wire == largest


@given(st.floats(10.0, 700.0), st.floats(1e-4, 2e-2), st.integers(1, 6), st.floats(0.0, 1e-3))
def test_strings_side_by_side_never_lessen_the_fault(
    voltage: float, string: float, count: int, trunk: float
) -> None:
    less = fault_current(voltage, string, count, trunk)
    assert less <= fault_current(voltage, string, count + 1, trunk)
    assert fault_current(voltage, string, count, trunk) <= voltage / string * count * (1 + 1e-12)


@given(st.floats(100.0, 30e3), st.floats(1e-3, 5.0), st.floats(80.0, 176.0))
def test_a_longer_short_circuit_wants_more_copper(
    current: float, time: float, constant: float
) -> None:
    assert short_circuit_area(current, time, constant) < short_circuit_area(
        current, 2.0 * time, constant
    )


@given(st.floats(12.0, 400.0), st.floats(1.0, 500.0), st.floats(1e-3, 5e-2))
def test_a_larger_resistor_starts_gentler_and_takes_longer(
    voltage: float, resistance: float, capacitance: float
) -> None:
    assert first_current(voltage, 2 * resistance) < first_current(voltage, resistance)
    slow = charge_time(2 * resistance, capacitance, 0.01)
    assert slow > charge_time(resistance, capacitance, 0.01)


@lru_cache(maxsize=3)
def installations(name: str) -> tuple[Installation, ...]:
    case = read_case(CASES / f"{name}.yaml")
    motors = (place for place, option in enumerate(case.options) if option.bank)
    found = (alone(case, place, 0).findings.installation for place in motors)
    return tuple(made for made in found if made is not None)


DEMOS = ("sloop_30_weekend", "ketch_34_two_motors", "every_key")


@pytest.mark.parametrize("name", DEMOS)
def test_every_positive_leg_has_its_own_fuse_in_the_list(name: str) -> None:
    assert installations(name)
    for made in installations(name):
        assert [item.device for item in made.circuits] == [item.id for item in made.devices]
        assert [item.id for item in made.circuits] == [item.circuit for item in made.devices]
        assert len({item.id for item in made.devices}) == len(made.circuits)
        strings = [item for item in made.circuits if item.kind == "string"]
        assert len(strings) == made.strings  # one fuse for each string
        assert all("positive" in item.place for item in made.devices)


@pytest.mark.parametrize("name", DEMOS)
def test_every_circuit_of_a_demo_boat_holds_its_rules(name: str) -> None:
    for made in installations(name):
        assert made.problems == ()
        for wired, device in zip(made.circuits, made.devices, strict=True):
            held(wired, device)


def held(wired: Circuit, device: Device) -> None:
    assert wired.continuous <= wired.conductor.ampacity
    assert wired.drop.share <= wired.drop.limit
    assert wired.warmth.space <= wired.warmth.settled <= wired.warmth.after_peak + 1e-9
    assert wired.warmth.after_peak <= wired.warmth.limit
    assert wired.warmth.fault_area <= wired.conductor.copper
    assert device.least <= device.rating <= device.most
    assert device.distance <= device.distance_limit
    assert device.voltage is not None
    assert device.breaking is not None
    assert device.voltage >= wired.ceiling
    assert device.breaking >= device.fault
