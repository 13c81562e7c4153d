"""What a case says of weather, sources and the calendar, and what of it cannot be."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from generator.case.months import season_months
from tests.unit.case.faulty import SMALL, changed, lines, read
from tests.unit.case.weather_text import energyplus

WINTRY = 3 * ["6 kWh/m2"] + 6 * ["1 kWh/m2"] + 3 * ["6 kWh/m2"]
PLACE = "country: DK\n  latitude: 55.7\n  longitude: 12.6"


def with_file(folder: Path, text: str, place: str = "country: DK", name: str = "quay.epw") -> str:
    """The small case with a weather file beside it."""
    (folder / name).write_text(text, encoding="utf-8")
    return changed(("country: DK", f"{place}\n  weather_file: {name}"))


@pytest.mark.parametrize(
    ("new", "message"),
    [
        ("country: DK\n  latitude: 95", "waters.latitude: is `95`, expected a plain number not ab"),
        ("country: DK\n  latitude: -80", "waters.latitude: is `-80`, expected a plain number not"),
        ("country: DK\n  latitude: 55.7", "waters.longitude: is missing, expected the longitude"),
        ("country: DK\n  longitude: 12.6", "waters.latitude: is missing, expected the latitude"),
        (f"{PLACE}\n  sun: [1 kWh/m2, 2 kWh/m2]", "waters.sun: has 2 months, expected 12"),
        (
            f"{PLACE}\n  sun: [{', '.join(WINTRY)}]",
            "waters.sun: has more sun in winter than in summer at 55.7",
        ),
        ("country: DK\n  weather_file: none.epw", "waters.weather_file: names none.epw: there is"),
        ("country: DK\n  weather_file: ../up.epw", "waters.weather_file: is `../up.epw`, expected"),
    ],
)  # fmt: skip
def test_waters_that_cannot_be(tmp_path: Path, new: str, message: str) -> None:
    found = lines(tmp_path, changed(("country: DK", new)))
    assert any(message in line for line in found), found


def test_more_hours_of_legs_than_the_year_has(tmp_path: Path) -> None:
    text = changed(("times_per_year: ", "times_per_year: 90000 # "))
    assert any("than the year has" in line or "h of its season" in line for line in
               lines(tmp_path, text))  # fmt: skip


def test_more_nights_away_than_the_season_of_a_leg_has(tmp_path: Path) -> None:
    old = "sailable: true" if SMALL.count("sailable: true") == 1 else "sailable: false"
    text = changed((old, f"{old}\n    season: May to June\n    nights_away: 20"))
    found = lines(tmp_path, text)
    assert any("expected at most the 1,460 h of its season" in line for line in found), found


def test_a_whole_weather_file_is_read_hour_by_hour(tmp_path: Path) -> None:
    case = read(tmp_path, with_file(tmp_path, energyplus()))
    assert case.weather is not None
    assert (case.weather.place, case.weather.latitude, case.weather.zone) == ("Quay", 51.6, 1.0)
    assert case.weather.sun.shape == (8760,)
    assert case.weather.sun.reshape(365, 24).argmax(axis=1) == pytest.approx(
        np.full(365, case.weather.sun.reshape(365, 24)[0].argmax())
    )
    assert (case.weather.air[0], case.weather.wind[0]) == (2.1, 4.0)


def test_a_weather_file_of_the_other_hemisphere(tmp_path: Path) -> None:
    south = with_file(tmp_path, energyplus(-36.7, 12.6, south=True), PLACE)
    assert any("expected a file of her own hemisphere" in line for line in lines(tmp_path, south))
    turned = with_file(tmp_path, energyplus(55.0, 12.6, south=True), PLACE)
    assert any("more sun in winter than in summer" in line for line in lines(tmp_path, turned))


def test_a_weather_file_of_another_place(tmp_path: Path) -> None:
    text = with_file(tmp_path, energyplus(45.0, 12.6), PLACE)
    assert any("expected a station within 5 degrees" in line for line in lines(tmp_path, text))


@pytest.mark.parametrize(
    ("flaw", "message"),
    [
        (lambda rows: rows[:5000] + rows[5001:], "has a gap before line 5001"),
        (lambda rows: rows[:-30], "has 8730 hours, expected 8,760"),
        (lambda rows: [*rows, rows[-1]], "has 8761 hours"),
        (lambda rows: [*rows[:100], rows[100].replace(",x,", ",x,99.9#"), *rows[101:]],
         "cannot be read"),
        (lambda rows: rows[:3], "has 0 hours"),
        (lambda rows: ["nothing"], "cannot be read, expected an EPW"),
    ],
)  # fmt: skip
def test_a_weather_file_with_a_flaw(tmp_path: Path, flaw: object, message: str) -> None:
    assert callable(flaw)
    rows = energyplus().splitlines()
    text = with_file(tmp_path, "\n".join(flaw(rows)))
    found = lines(tmp_path, text)
    assert any(message in line for line in found), found


def test_hours_that_were_not_measured(tmp_path: Path) -> None:
    rows = energyplus().splitlines()
    cells = rows[4000].split(",")
    cells[13] = "9999"
    rows[4000] = ",".join(cells)
    found = lines(tmp_path, with_file(tmp_path, "\n".join(rows)))
    assert any("has no sunshine in line 4001" in line for line in found), found


def test_a_file_in_an_old_encoding_is_read(tmp_path: Path) -> None:
    text = with_file(tmp_path, "")
    content = energyplus().replace("Quay", "Kiøge").encode("latin-1")
    (tmp_path / "quay.epw").write_bytes(content)
    case = read(tmp_path, text)
    assert case.weather is not None
    assert case.weather.place == "Kiøge"


def test_a_source_where_no_bank_is(tmp_path: Path) -> None:
    text = changed(("    kind: keep\n", "    kind: keep\n    supply: {regeneration: true}\n"))
    assert any("options[0].supply: is given" in line for line in lines(tmp_path, text))


def test_a_genset_that_stops_before_it_starts(tmp_path: Path) -> None:
    bank = "    bank: {chemistry: LFP, nominal_voltage: 51.2 V, charge: 300 Ah}\n"
    more = "    supply: {genset: {power: 3 kW, start: 0.5, stop: 0.4}}\n"
    found = lines(tmp_path, changed((bank, bank + more)))
    assert any("genset.start: is 0.5, no lower than stop" in line for line in found), found


def test_a_season_goes_over_the_turn_of_the_year() -> None:
    assert season_months("November to February") == (10, 11, 0, 1)
    assert season_months("May to May") == (4,)
