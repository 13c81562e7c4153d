"""Blocks, strings and cells that cannot hold together are faults with a way out."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from generator.analyses.store.bank_state import cells_of
from tests.unit.case.faulty import changed, lines, read

BANK = "bank: {chemistry: LFP, nominal_voltage: 51.2 V, charge: 300 Ah}"
BLOCKS = "{series: 4, parallel: 2, voltage: 12.8 V, charge: 150 Ah}"


@pytest.mark.parametrize(
    ("bank", "message"),
    [
        (
            "{chemistry: LFP, nominal_voltage: 51.2 V, charge: 300 Ah, blocks: {series: 3, "
            "parallel: 2, voltage: 12.8 V, charge: 150 Ah}}",
            "bank.blocks.voltage: is 12.8 V; 3 of them do not make 51.2 V",
        ),
        (
            "{chemistry: LFP, nominal_voltage: 51.2 V, charge: 400 Ah, blocks: {series: 4, "
            "parallel: 2, voltage: 12.8 V, charge: 150 Ah}}",
            "bank.blocks.charge: is 150 Ah; 2 of them do not make 400 Ah",
        ),
        (
            "{chemistry: LFP, blocks: {series: 4, parallel: 2, voltage: 12.8 V, charge: 150 Ah, "
            "mixed: true}}",
            "bank.blocks.mixed: is true, expected false: strings of different age",
        ),
        (
            "{chemistry: LFP, blocks: {series: 4, parallel: 2, voltage: 12 V, charge: 150 Ah}}",
            "bank.blocks.voltage: is 12 V, not a number of LFP cells, expected 9.6 V",
        ),
        ("{chemistry: LFP, charge: 300 Ah}", "bank.nominal_voltage: is missing"),
        ("{chemistry: LFP, nominal_voltage: 51.2 V}", "bank.charge: is missing"),
        (
            "{chemistry: LFP, blocks: {series: 4, voltage: 12.8 V, charge: 150 Ah}}",
            "bank.blocks.parallel: is missing",
        ),
        ("{chemistry: AGM, nominal_voltage: 51.2 V, charge: 300 Ah, sharing: 0}", "sharing: is"),
    ],
)
def test_a_bank_that_cannot_be_is_one_fault(tmp_path: Path, bank: str, message: str) -> None:
    found = lines(tmp_path, changed((BANK, f"bank: {bank}")))
    assert len(found) == 1, found
    assert message in found[0]


def test_blocks_make_voltage_and_charge(tmp_path: Path) -> None:
    case = read(tmp_path, changed((BANK, f"bank: {{chemistry: LFP, blocks: {BLOCKS}}}")))
    bank = case.options[2].bank
    assert bank is not None
    assert float(np.asarray(bank.nominal_voltage)) == pytest.approx(51.2)
    assert float(np.asarray(bank.charge)) == pytest.approx(300 * 3600.0)
    assert (bank.blocks.series, bank.blocks.parallel) == (4, 2)
    shown = {item.path: item.shown for item in case.assumptions}
    assert shown["options[2].bank.charge"] == "2 x 150 Ah side by side"


def test_labels_that_round_are_no_fault(tmp_path: Path) -> None:
    """13 cells of 3.65 V are sold as 48 V."""
    good = "{chemistry: NMC, nominal_voltage: 48 V, charge: 300 Ah}"
    assert lines(tmp_path, changed((BANK, f"bank: {good}"))) == []


LABEL = "chemistry: LFP, nominal_voltage: 48 V"


def warned(folder: Path, bank: str) -> list[str]:
    case = read(folder, changed((BANK, f"bank: {{{bank}}}")))
    own = [str(doubt) for doubt in case.warnings if "options[2].bank." in str(doubt)]
    return [text.partition("options[2].")[2] for text in own]


def test_a_label_that_fits_two_counts_is_asked_about(tmp_path: Path) -> None:
    (said,) = warned(tmp_path, f"{LABEL}, charge: 300 Ah")
    assert "bank.nominal_voltage: is 48 V: 16 cells, which end their charge at 58.4 V or 15" in said
    assert "54.8 V" in said  # 15 x 3.65 V = 54.75 V
    assert "16 are taken, expected cells or end_of_charge" in said
    in_blocks = "chemistry: LFP, blocks: {series: 1, parallel: 2, voltage: 48 V, charge: 150 Ah}"
    (said,) = warned(tmp_path, in_blocks)
    assert "bank.blocks.voltage: is 48 V" in said
    two = "chemistry: LFP, blocks: {series: 2, parallel: 1, voltage: 48 V, charge: 150 Ah}"
    (said,) = warned(tmp_path, two)
    assert "32 cells" in said


@pytest.mark.parametrize(
    ("keys", "cells", "volts"),
    [
        ("", 16, 48.0),
        ("cells: 15", 15, 48.0),
        ("cells: 16", 16, 51.2),
        ("end_of_charge: 54.6 V", 15, 48.0),
        ("end_of_charge: 54.75 V", 15, 48.0),
        ("end_of_charge: 55.6 V", 16, 51.2),
        ("end_of_charge: 58.4 V", 16, 51.2),
    ],
)
def test_the_maker_tells_how_many_cells_a_label_names(
    tmp_path: Path, keys: str, cells: int, volts: float
) -> None:
    """Fifteen bear 54.75 V and no more; sixteen of 3.2 V are 51.2 V, whatever the label says."""
    said = f"{LABEL}, charge: 300 Ah{', ' if keys else ''}{keys}"
    assert bool(warned(tmp_path, said)) is (keys == "")
    bank = read(tmp_path, changed((BANK, f"bank: {{{said}}}"))).options[2].bank
    assert bank is not None
    assert cells_of(bank) == cells
    assert float(np.asarray(bank.nominal_voltage)) == pytest.approx(volts)


@pytest.mark.parametrize(
    ("keys", "message"),
    [
        ("charge: 300 Ah, cells: 17", "bank.cells: is 17, which make 54.4 V of LFP, expected as"),
        ("charge: 300 Ah, cells: 15, end_of_charge: 58.4 V", "bank.end_of_charge: is 58.4 V"),
        ("charge: 300 Ah, end_of_charge: 62 V", "expected 51.2 to 58.4 V of 16 LFP cells"),
        ("charge: 300 Ah, energy: 20 kWh", "bank.energy: is 20 kWh, and its charge makes 14.4 kWh"),
        ("energy: 0 kWh", "bank.energy: is `0 kWh`"),
    ],
)
def test_what_the_maker_cannot_have_said_is_a_fault(
    tmp_path: Path, keys: str, message: str
) -> None:
    found = lines(tmp_path, changed((BANK, f"bank: {{{LABEL}, {keys}}}")))
    assert len(found) == 1, found
    assert message in found[0]


def test_energy_stands_for_the_charge(tmp_path: Path) -> None:
    """13 kWh at 51.2 V are 253.9 Ah; beside ampere-hours it must be theirs, within 5 %."""
    said = "bank: {chemistry: LFP, nominal_voltage: 51.2 V, energy: 13 kWh}"
    case = read(tmp_path, changed((BANK, said)))
    bank = case.options[2].bank
    assert bank is not None
    assert float(np.asarray(bank.charge)) / 3600.0 == pytest.approx(13000 / 51.2)
    shown = {item.path: item.shown for item in case.assumptions}
    assert shown["options[2].bank.charge"] == "13 kWh at 51.2 V"
    both = "bank: {chemistry: LFP, nominal_voltage: 51.2 V, charge: 280 Ah, energy: 14 kWh}"
    assert lines(tmp_path, changed((BANK, both))) == []
    counted = read(tmp_path, changed((BANK, both))).options[2].bank
    assert counted is not None
    assert float(np.asarray(counted.charge)) == pytest.approx(280 * 3600.0)  # kWh are rounded
    label = f"bank: {{{LABEL}, charge: 280 Ah, energy: 14.3 kWh}}"  # 280 Ah of 16 cells
    assert lines(tmp_path, changed((BANK, label))) == []
    doubted = (
        "bank: {chemistry: LFP, nominal_voltage: 51.2 V, energy: {value: 13 kWh, plus_minus: 5 %}}"
    )
    items = {item.path: item for item in read(tmp_path, changed((BANK, doubted))).assumptions}
    charge = items["options[2].bank.charge"]
    assert (charge.low, charge.high) == pytest.approx((0.95 * charge.value, 1.05 * charge.value))


def test_a_later_option_may_say_charge_where_the_first_says_energy(tmp_path: Path) -> None:
    said = "bank: {chemistry: LFP, nominal_voltage: 51.2 V, energy: 13 kWh}"
    text = changed((BANK, said)) + (
        "  - id: larger\n    from: b\n    name: Larger\n    bank: {charge: 500 Ah}\n"
    )
    bank = read(tmp_path, text).options[4].bank
    assert bank is not None
    assert float(np.asarray(bank.charge)) == pytest.approx(500 * 3600.0)
