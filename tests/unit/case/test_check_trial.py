"""What cannot be in a sea trial is told with its line."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.unit.case.faulty import FULL, changed, faults, line_of, read

FAST = (
    "    - {engine_speed: 2100 rpm, speed_out: 4.7 kn, speed_back: 4.3 kn, wind: 5 kn, depth: 8 m}"
)


def with_row(row: str) -> str:
    return changed((FAST, f"{FAST}\n    - {row}"), text=FULL)


@pytest.mark.parametrize(
    ("row", "path", "words"),
    [
        ("{engine_speed: 2105 rpm, speed_out: 5.4 kn, speed_back: 5.2 kn, wind: 5 kn}",
         "trial.rows[2].speed_out", "the turns that make 4.50 kn in rows[1]"),
        ("{engine_speed: 2500 rpm, speed_out: 5.4 kn, speed_back: 5.2 kn, wind: 5 kn,"
         " fuel_rate: 6 l/h}", "trial.rows[2].fuel_rate", "expected at most 5.1 l/h"),
        ("{engine_speed: 3540 rpm, speed_out: 5.4 kn, speed_back: 5.2 kn, wind: 5 kn,"
         " curve_power: 20 kW}", "trial.rows[2].curve_power", "expected at most engine.rated"),
        ("{engine_speed: 2500 rpm, speed_out: 5.4 kn, speed_back: 5.2 kn, wind: 5 kn,"
         " battery_power: 3 kW}", "trial.rows[2].battery_power", "which motor was aboard?"),
    ],
)  # fmt: skip
def test_a_row_that_cannot_be_is_a_fault(tmp_path: Path, row: str, path: str, words: str) -> None:
    text = with_row(row)
    found = faults(tmp_path, text)
    assert [(item.path, item.line) for item in found] == [(path, line_of(text, row))]
    assert words in f"{found[0].problem}, {found[0].expected}"


def test_turns_above_the_governor_are_a_fault(tmp_path: Path) -> None:
    """3600 rpm rated: 1.12 x 3600 = 4032 rpm."""
    text = changed(("full_throttle_speed: 3550 rpm", "full_throttle_speed: 4200 rpm"),
                   ("engine_speed: 2100 rpm", "engine_speed: 4100 rpm"), text=FULL)  # fmt: skip
    found = faults(tmp_path, text)
    assert [item.path for item in found] == ["trial.rows[1].engine_speed"]
    assert "expected at most 4032 rpm" in found[0].expected


@pytest.mark.parametrize("named", ["z", "keep"])
def test_a_motor_aboard_must_be_one_of_the_options(tmp_path: Path, named: str) -> None:
    text = changed(("  full_throttle_speed: 3550 rpm", f"  with_option: {named}"), text=FULL)
    assert "trial.with_option" in [item.path for item in faults(tmp_path, text)]


def test_a_speed_above_the_form_is_a_warning(tmp_path: Path) -> None:
    """0.45 (9.81 x 7.6)^(1/2) = 3.886 m/s = 7.55 kn."""
    row = "{engine_speed: 3500 rpm, speed_out: 8.0 kn, speed_back: 7.8 kn, wind: 5 kn, depth: 12 m}"
    warnings = read(tmp_path, with_row(row)).warnings
    told = next(item for item in warnings if item.path == "trial.rows[2].speed_out")
    assert "expected at most 7.6 kn" in told.expected
