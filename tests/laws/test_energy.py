"""What must hold of any bank: no more out than in, never more when colder or older."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.analyses.findings import Findings
from generator.physics.energy.ageing import calendar_loss, cycle_loss
from generator.physics.energy.battery import peukert_capacity
from generator.physics.energy.cell import (
    capacity_share,
    charge_rate_limit,
    open_circuit_voltage,
    resistance_factor,
)
from generator.physics.energy.pack import most_power, sag_current, terminal_voltage
from tests.alone import alone, case_of
from tests.unit.case.faulty import changed

CHEMISTRIES = st.sampled_from(["LFP", "NMC", "AGM", "flooded"])
TEMPERATURES = st.floats(-25.0, 45.0)
SHARES = st.floats(0.0, 1.0)
YEAR = 365 * 86400.0


@given(CHEMISTRIES, st.floats(0.0, 500.0), st.floats(1e-4, 0.05))
def test_energy_out_never_exceeds_energy_in(
    chemistry: str, current: float, resistance: float
) -> None:
    states = np.linspace(0.0, 1.0, 21)
    rest = 16 * open_circuit_voltage(chemistry, states)
    out = terminal_voltage(rest, resistance, current)
    into = terminal_voltage(rest, resistance, -current)
    assert np.trapezoid(np.asarray(out), states) <= np.trapezoid(np.asarray(into), states)


@given(st.floats(10.0, 100.0), st.floats(1e-3, 0.1), st.floats(0.0, 60e3))
def test_a_bank_gives_the_power_or_nothing(open_: float, resistance: float, power: float) -> None:
    """No root: the bank cannot deliver, and the answer is no number, never a plausible one."""
    current = float(sag_current(open_, resistance, power))
    most = open_**2 / (4 * resistance)
    if power > most * (1 + 1e-9):
        assert np.isnan(current)
    elif power < most * (1 - 1e-9):
        voltage = float(terminal_voltage(open_, resistance, current))
        assert current * voltage == pytest.approx(power, rel=1e-6, abs=1e-6)
        assert voltage >= open_ / 2 - 1e-9


@given(CHEMISTRIES, TEMPERATURES, TEMPERATURES)
def test_colder_never_gives_more(chemistry: str, one: float, other: float) -> None:
    cold, warm = sorted((one, other))
    assert capacity_share(chemistry, cold) <= capacity_share(chemistry, warm) <= 1.0
    assert resistance_factor(chemistry, cold, 0.5) >= resistance_factor(chemistry, warm, 0.5)
    held = [
        float(most_power(52.0, 0.01 * resistance_factor(chemistry, t, 0.5), 42.0))
        for t in (cold, warm)
    ]
    assert held[0] <= held[1]


@given(CHEMISTRIES, st.floats(0.0, 30.0), st.floats(0.0, 30.0), SHARES)
def test_older_never_holds_more(chemistry: str, one: float, other: float, state: float) -> None:
    young, old = sorted((one, other))
    lost = [
        float(calendar_loss(chemistry, years * YEAR, 10 * YEAR, 20.0, state))
        + float(cycle_loss(years * 30, 2000.0))
        for years in (young, old)
    ]
    assert 0.0 <= lost[0] <= lost[1]


@given(st.floats(1.0, 500.0), st.floats(1.0, 500.0), st.floats(1.0, 1.6))
def test_lead_gives_less_the_harder_it_is_drawn(one: float, other: float, exponent: float) -> None:
    soft, hard = sorted((one, other))
    hours, charge = 72000.0, 400 * 3600.0
    given_ = [float(peukert_capacity(hours, charge, amps, exponent)) for amps in (soft, hard)]
    assert charge >= given_[0] >= given_[1]


@given(st.floats(-40.0, -0.01))
def test_lithium_is_never_charged_below_freezing(temperature: float) -> None:
    assert charge_rate_limit("LFP", temperature) == 0.0
    assert charge_rate_limit("NMC", temperature) == 0.0


def found(text: str) -> Findings:
    case = case_of(text)
    place = next(place for place, option in enumerate(case.options) if option.bank)
    return alone(case, place, 0).findings


BANK = "bank: {chemistry: LFP, nominal_voltage: 51.2 V, charge: 300 Ah}"


def with_bank(bank: str, waters: str = "") -> str:
    return changed((BANK, f"bank: {bank}"), ("  country: DK\n", f"  country: DK\n{waters}"))


def reach(findings: Findings) -> float:
    """Sum of calm ranges of the aged bank over all speeds."""
    ranges = [item for item in findings.ranges if item.sea == "calm" and item.age == "aged"]
    return float(np.sum(ranges[0].distance))


@settings(max_examples=12, deadline=None)
@given(st.sampled_from(["LFP", "NMC", "AGM", "flooded"]), st.integers(1, 5))
def test_adding_a_string_never_lowers_range(chemistry: str, strings: int) -> None:
    volts = {"LFP": 12.8, "NMC": 14.6, "AGM": 12.0, "flooded": 12.0}[chemistry]
    ranges = [
        reach(
            found(
                with_bank(
                    f"{{chemistry: {chemistry}, blocks: {{series: 4, parallel: {count}, "
                    f"voltage: {volts} V, charge: 100 Ah, discharge_limit: 100 A}}}}"
                ),
            )
        )
        for count in (strings, strings + 1)
    ]
    assert ranges[0] <= ranges[1] + 1e-6


@pytest.mark.parametrize(
    "worse", ["  coldest: -5 °C\n", "  season_swing: 12 K\n"], ids=["coldest", "swing"]
)
def test_a_colder_boat_never_reaches_farther(worse: str) -> None:
    whole = BANK.removeprefix("bank: ")
    mild = found(with_bank(whole, "  coldest: 15 °C\n"))
    cold = found(with_bank(whole, worse))
    assert reach(cold) < reach(mild)


def test_an_older_boat_never_reaches_farther() -> None:
    young, old = (
        found(
            changed(("house:\n", f"prices: {{horizon: {years} year}}\nhouse:\n")),
        )
        for years in (2, 12)
    )
    assert reach(old) < reach(young)
