"""Fuses, fault current and pre-charge against printed rules, tables and examples."""

from __future__ import annotations

import pytest

from generator.analyses.wiring.fuses import BARE, SHEATHED
from generator.physics.energy.fault_current import fault_current, string_resistance
from generator.physics.energy.precharge import charge_time, first_current, resistor_energy
from generator.physics.energy.protection import breaker_capacity, fuse_class, most_fuse, selective
from generator.tables.load import read_table


def test_fuse_below_fifty_volts_is_at_most_half_as_much_again() -> None:
    """Source: cfr33_183, section 183.455 (c)(1); 210 A is the conductor AWG 2 at 105 degC."""
    assert most_fuse(14.6, 210.0) == 315.0
    assert most_fuse(49.9, 210.0) == 315.0


def test_fuse_from_fifty_volts_on_is_the_next_size_at_most() -> None:
    """Source: cfr33_183, section 183.455 (c)(2); 225 A is the next size sold above 210 A."""
    assert most_fuse(50.0, 210.0) == 225.0
    assert most_fuse(58.4, 225.0) == 225.0
    assert most_fuse(58.4, 1.0) == 1.5  # the next size, 5 A, is more than half as much again


def test_fuse_stands_within_seven_or_forty_inches() -> None:
    """Source: cfr33_183, section 183.455 (b)(1) and (2). Millimetres are rounded."""
    assert pytest.approx(7 * 0.0254, abs=0.0005) == BARE
    assert pytest.approx(40 * 0.0254, abs=0.0005) == SHEATHED


@pytest.mark.parametrize(
    ("cranking", "main", "branch"),
    [(650.0, 1500, 750), (651.0, 3000, 1500), (1100.0, 3000, 1500), (1101.0, 5000, 2500)],
)
def test_breaker_capacity_is_that_of_the_table(cranking: float, main: int, branch: int) -> None:
    """Source: abyc_e11, table of interrupting capacity at 12 to 24 V as reprinted."""
    assert breaker_capacity(cranking, False) == main
    assert breaker_capacity(cranking, True) == branch


def test_breaker_capacity_of_a_large_bank_is_twenty_thousand() -> None:
    """Source: abyc_e11 as quoted: above 2,200 A of cranking current 20 kA at 125 V."""
    assert breaker_capacity(2201.0, False) == 20_000


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [("blade", 1000, 1000), ("strip", 2000, 6000), ("terminal post", 2000, 10000),
     ("class T", 20000, 20000), ("knife blade NH", 25000, 25000)],
)  # fmt: skip
def test_classes_break_what_the_trade_prints(name: str, low: int, high: int) -> None:
    """Source: trade pages on interrupt ratings.

    Blade 1 kA, bolted strips 2 to 6 kA, terminal post 10 kA at 12 V and less at more, class T
    20 kA, NH at least 25 kA at direct current.
    """
    table = read_table("energy/fuse_classes")
    found = [
        breaking
        for own, breaking in zip(table.text("name"), table.column("breaking"), strict=True)
        if own == name
    ]
    assert found
    assert low <= min(found) <= max(found) <= high


def test_a_large_lithium_bank_at_forty_eight_volts_asks_for_class_t() -> None:
    """Source: trade pages: only class T, of the fuses common in boats, breaks 20 kA at 125 V."""
    found = fuse_class(58.4, 11_000.0, 300.0)
    assert found is not None
    assert (found.name, found.voltage, found.breaking) == ("class T", 125.0, 20_000.0)


def test_selective_is_the_printed_ratio() -> None:
    """Source: iec60269 as printed by makers: fuses gG discriminate in a ratio of 1.6 to 1."""
    assert selective(160.0, 100.0)
    assert not selective(150.0, 100.0)


def test_fault_current_of_one_block_is_the_printed_one() -> None:
    """Source: electronics page, battery short-circuit current: 12 V over 5 milliohm, 2,400 A."""
    assert fault_current(12.0, 5e-3, 1) == pytest.approx(2400.0)


def test_fault_current_of_strings_follows_the_printed_method() -> None:
    """Source: the same page.

    Cells in series add resistance, strings divide it, so that the current stays with cells in
    series and grows with strings side by side.
    """
    one = fault_current(3.33 * 16, string_resistance(16, 0.25e-3, 1.0, 1.0, 0.0), 1)
    twice = fault_current(3.33 * 32, string_resistance(32, 0.25e-3, 1.0, 1.0, 0.0), 1)
    beside = fault_current(3.33 * 16, string_resistance(16, 0.25e-3, 1.0, 1.0, 0.0), 3)
    assert one == pytest.approx(3.33 / 0.25e-3)
    assert twice == pytest.approx(one)
    assert beside == pytest.approx(3.0 * one)


@pytest.mark.parametrize(
    ("resistance", "strings", "kiloamperes"),
    [(0.25e-3, 1, 11.1), (0.25e-3, 2, 20.9), (0.25e-3, 3, 29.6), (0.17e-3, 1, 15.1)],
)
def test_fault_current_of_series_parallel_banks(
    resistance: float, strings: int, kiloamperes: float
) -> None:
    """Source: practice, worked banks of 16 cells. Three digits are given.

    0.5 milliohm of links a string, 0.3 in the trunk, 3.33 V a cell.
    """
    string = string_resistance(16, resistance, 1.0, 1.0, 0.5e-3)
    found = fault_current(16 * 3.33, string, strings, 0.3e-3)
    assert found / 1e3 == pytest.approx(kiloamperes, abs=0.06)


def test_pre_charge_is_that_of_a_resistor_makers_page() -> None:
    """Source: page of a maker of resistors: 800 V, 47 ohm, 1 mF.

    Digits as printed: 17.0 A, 13,617 W, 320.0 J, 141.0 ms to 95 % and 216.4 ms to 99 %; the page
    takes 3 and 4.6 time constants for the last two, hence two parts in a thousand.
    """
    start = first_current(800.0, 47.0)
    assert start == pytest.approx(17.0, abs=0.05)
    assert start * 800.0 == pytest.approx(13_617.0, abs=0.5)
    assert resistor_energy(800.0, 1e-3) == pytest.approx(320.0, abs=0.05)
    assert charge_time(47.0, 1e-3, 0.05) == pytest.approx(0.1410, rel=2e-3)
    assert charge_time(47.0, 1e-3, 0.01) == pytest.approx(0.2164, rel=2e-3)


def test_pre_charge_of_five_time_constants_leaves_what_is_printed() -> None:
    """Source: page of a maker of contactors: five time constants are 99.326 %."""
    assert charge_time(47.0, 10e-3, 1.0 - 0.99326) == pytest.approx(5 * 47.0 * 10e-3, rel=1e-3)
