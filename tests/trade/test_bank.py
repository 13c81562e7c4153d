"""Facts of the trade about banks: common practice, no source."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from generator.analyses.store.limits import limits
from generator.case.register import find_default
from tests.alone import alone
from tests.unit.case.faulty import changed, read


@pytest.mark.parametrize(("chemistry", "rate"), [("LFP", 1.0), ("NMC", 2.0), ("AGM", 0.35)])
def test_continuous_current_is_c_times_ampere_hours(
    tmp_path: Path, chemistry: str, rate: float
) -> None:
    volts = {"LFP": "51.2 V", "NMC": "51.1 V", "AGM": "48 V"}[chemistry]
    case = read(
        tmp_path,
        changed(("LFP, nominal_voltage: 51.2 V", f"{chemistry}, nominal_voltage: {volts}")),
    )
    bank = case.options[2].bank
    assert bank is not None
    assert float(np.asarray(limits(bank).bank)) == pytest.approx(rate * 300)


def test_three_to_five_thousand_cycles_of_lithium_lie_inside_the_register() -> None:
    row = find_default("options.bank.cycle_life", ("LFP",))
    assert row is not None
    assert row.low <= 3000.0 <= row.high
    assert row.low <= 5000.0 <= row.high


@pytest.mark.parametrize("trips", [100, 150])
def test_lithium_of_a_sailing_boat_is_limited_by_the_calendar(tmp_path: Path, trips: int) -> None:
    """20 to 60 full cycles a year: far fewer than would wear a cell out in its years."""
    case = read(tmp_path, changed(("times_per_year: 20", f"times_per_year: {trips}")))
    found = alone(case, 2, 0).findings
    assert found.bank is not None
    age = found.bank.ageing
    assert 20.0 <= float(age.cycles.flat[0]) <= 60.0
    assert float(age.calendar.flat[0]) > 3 * float(age.wear.flat[0])
    assert float(age.life.flat[0]) < float(age.cycle_years.flat[0])
