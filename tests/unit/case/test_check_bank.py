"""Blocks, strings and cells that cannot hold together are faults with a way out."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

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
