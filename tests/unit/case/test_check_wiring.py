"""Cables and fuses that cannot be are refused, each with one line that names the place."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.unit.case.faulty import changed, lines

WIRING = """    installation:
      temperature_class: 105 °C
      circuits:
        - {name: motor, run: 2 m, fuse: 300 A, fuse_voltage: 125 V, fuse_breaking: 20 kA}
        - {name: panel, run: 3 m}
"""


def test_a_good_installation_is_taken(tmp_path: Path) -> None:
    assert lines(tmp_path, with_wiring()) == []


def with_wiring(*changes: tuple[str, str]) -> str:
    """The case with an installation in its first battery option, and changes in that."""
    wiring = WIRING
    for old, new in changes:
        assert old in wiring, old
        wiring = wiring.replace(old, new)
    return changed(("    bank: {", wiring + "    bank: {"))


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("fuse_voltage: 125 V", "fuse_voltage: 58 V",
         "circuits[0].fuse_voltage: is 58 V, below the 58.4 V that charging reaches"),
        ("fuse_voltage: 125 V", "fuse_voltage: 32 V", "is 32 V, below the 58.4 V"),
        ("{name: panel, run: 3 m}", "{name: panel, run: 19 m}",
         "circuits[1].run: is 19 m, more than twice her length of 9.20 m"),
        ("      temperature_class: 105 °C\n", "",
         "installation.temperature_class: is missing, expected the class printed on the cable"),
        ("105 °C", "100 °C", "installation.temperature_class: is 100 °C, expected one of: 60 °C"),
        ("105 °C", "105 C", "temperature_class: `105 C`"),
        ("105 °C\n", "60 °C\n      space_temperature: 60 °C\n", "as warm as the insulation"),
        ("name: panel", "name: motor", "circuits[1].name: is `motor`, as circuits[0]"),
        ("name: panel", "name: pannel", "did you mean `panel`?"),
        ("name: panel, run: 3 m", "name: inverter, run: 3 m",
         "circuits[1].current: is missing, expected the inverter's current"),
        ("run: 3 m}", "run: 3 m, area: 70 m2}", "circuits[1].area: is 70 m2, expected a conductor"),
        ("run: 3 m}", "run: 3 m, area: 16 mm}", "`16 mm` is a length"),
        ("run: 2 m, fuse: 300 A", "run: 2 m, fuse_distance: 3 m, fuse: 300 A",
         "circuits[0].fuse_distance: is 3 m, past the end of a cable of 2 m"),
    ],
)  # fmt: skip
def test_one_mistake_gives_one_message(tmp_path: Path, old: str, new: str, message: str) -> None:
    found = lines(tmp_path, with_wiring((old, new)))
    assert len(found) == 1, found
    assert message in found[0]


def test_an_installation_of_a_diesel_is_refused(tmp_path: Path) -> None:
    wiring = WIRING.replace("    installation", "\n    installation", 1).lstrip("\n")
    text = changed(("    kind: keep\n", "    kind: keep\n" + wiring))
    found = lines(tmp_path, text)
    assert len(found) == 1
    assert "installation: is given, expected none for an option of kind keep" in found[0]


@pytest.mark.parametrize(
    ("current", "faults"), [("30 A", 1), ("55 A", 0), ("64 A", 0), ("66 A", 1)]
)
def test_one_charger_is_told_once(tmp_path: Path, current: str, faults: int) -> None:
    """3 kW into 51.2 V are 58.6 A; a tenth either way is losses and rounding."""
    charger = f"- {{name: charger, run: 2 m, current: {current}}}"
    text = with_wiring(("circuits:\n", f"circuits:\n        {charger}\n"))
    text = text.replace(
        "    installation:", "    supply: {charger: {power: 3 kW}}\n    installation:"
    )
    found = [line for line in lines(tmp_path, text) if "supply.charger.power" in line]
    assert len(found) == faults


def test_the_ceiling_counts_blocks_in_series(tmp_path: Path) -> None:
    """Four blocks of 12.8 V are sixteen cells: 58.4 V on charge."""
    blocks = "blocks: {series: 4, parallel: 1, voltage: 12.8 V, charge: 300 Ah}"
    text = with_wiring(("fuse_voltage: 125 V", "fuse_voltage: 58 V"))
    text = text.replace("nominal_voltage: 51.2 V, charge: 300 Ah", blocks)
    found = lines(tmp_path, text)
    assert len(found) == 1
    assert "below the 58.4 V" in found[0]
