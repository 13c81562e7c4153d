"""What cannot hold together is a fault; what is seldom right is a warning."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.unit.case.faulty import (
    FULL,
    LEFT_OPEN,
    SMALL,
    changed,
    doubts,
    faults,
    line_of,
    lines,
    read,
)


def test_the_small_case_leaves_three_things_open_and_has_no_fault(tmp_path: Path) -> None:
    assert tuple(warning.path for warning in read(tmp_path, SMALL).warnings) == LEFT_OPEN


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("waterline_length: 7.80 m", "waterline_length: 9.80 m", "boat.hull.waterline_length: is"),
        ("beam: 3.00 m", "beam: 12 m", "boat.hull.beam: is 12 m, more than length_overall 9.20 m"),
        ("draught: 1.60 m", "draught: 0.6 m\n    canoe_draught: 0.7 m", "hull.canoe_draught: is"),
        ("  year_on_market: 1992\n", "", "boat.year_on_market: is missing, expected a year"),
        ("year_on_market: 1992", "year_on_market: 2031", "after the study's own date"),
        ("exposed_distance: 2 nm", "exposed_distance: 20 km", "legs[0].exposed_distance: is 20 km"),
        ("amount: 9000 EUR", "amount: 9000 GBP", "options[2].costs[0].amount: is `9000 GBP`"),
        ("house:", "prices: {diesel: 1.4 GBP/l}\nhouse:", "prices.diesel: is `1.4 GBP/l`"),
        ("id: new", "id: keep", "options[1].id: is `keep`, the id of options[0]"),
        ("    engine: {rated_power: 15 kW}\n", "", "options[1].engine: is missing"),
        ("engine: {rated_power: 15 kW}", "engine: {gear_ratio: 2}", "rated_power: is missing"),
        ("    kind: keep\n", "    kind: keep\n    bank: {}\n", "options[0].bank: is given"),
        ("peak_power: 12 kW", "peak_power: 7 kW", "motor.peak_power: is 7 kW, below continuous"),
        ("when: first", "when: once", "options[2].costs[0].year: is missing"),
        ("when: first", "when: first, year: 3", "costs[0].year: is given for a payment made first"),
        ("    bank: {chemistry: LFP, nominal_voltage: 51.2 V, charge: 300 Ah}\n", "",
         "options[2].bank: is missing"),
        ("    from: a\n", "    from: b\n", "options[3].from: `b` is no earlier option"),
        ("  - id: keep\n", "  - id: keep\n    from: a\n", "options[0].from: `a` is no earlier"),
        (", rated_speed: 1500 rpm", "", "options[2].motor.rated_speed: is missing"),
        ("cruise_speed: 5.0 kn", "cruise_speed: 5.0 kn\ntrial:\n  rows: []", "rows: is empty"),
        ("  pitch: 11 in", "  pitch: 11 in\n  aperture_height: 15 in",
         "propeller.diameter: is 16 in, no smaller than its aperture of 15 in"),
        ("speed: 4.8 kn", "speed: 4.8 kn\n    fetch: 8 km\n    wind: 0 kn",
         "legs[0].fetch: is 8 km where the wind is 0 kn"),
        ("foul_stream: 0 kn", "foul_stream: 1 kn\n    spring_stream: 0.5 kn",
         "legs[0].spring_stream: is 0.5 kn, less than foul_stream 1 kn"),
        ("foul_stream: 0 kn", "foul_stream: 0 kn\n    spring_stream: -1 kn",
         "legs[0].spring_stream: is `-1 kn`, expected a speed not below 0 kn"),
    ],
)  # fmt: skip
def test_a_contradiction_is_one_fault(tmp_path: Path, old: str, new: str, message: str) -> None:
    found = lines(tmp_path, changed((old, new)))
    assert len(found) == 1, found
    assert message in found[0]


def test_a_step_above_full_throttle_is_a_fault(tmp_path: Path) -> None:
    text = changed(("full_throttle_speed: 3550 rpm", "full_throttle_speed: 2000 rpm"), text=FULL)
    found = faults(tmp_path, text)
    assert [(f.path, f.line) for f in found] == [
        ("trial.rows[1].engine_speed", line_of(text, "engine_speed: 2100"))
    ]


@pytest.mark.parametrize(
    ("old", "new", "path"),
    [
        ("16 in\n  pitch: 11 in", "34 in\n  pitch: 22 in", "propeller.diameter"),
        ("pitch: 11 in", "pitch: 4 in", "propeller.pitch"),
        ("pitch: 11 in", "pitch: 7.9 in", "propeller.pitch"),
        ("pitch: 11 in", "pitch: 23 in", "propeller.pitch"),
        ("cruise_speed: 5.0 kn", "cruise_speed: 7.5 kn", "planning.cruise_speed"),
        ("speed: 4.8 kn", "speed: 8 kn", "legs[0].speed"),
        ("speed: 4.8 kn", "speed: 3 kn\n    exposed_speed: 3.5 kn", "legs[0].exposed_speed"),
        ("foul_stream: 0 kn", "foul_stream: 5 kn", "legs[0].foul_stream"),
        ("shore_power: false", "shore_power: true", "berth.breaker"),
        ("rated_power: 13 kW", "rated_power: 130 kW", "engine.rated_power"),
        ("rated_speed: 3200 rpm", "rated_speed: 320 rpm", "engine.rated_speed"),
        ("    draught: 1.60 m", "    draught: 1.6 m\n    lcb: 4 %", "boat.hull.lcb"),
        ("charge: 300 Ah", "charge: 3 Ah", "options[2].bank.charge"),
        ("nominal_voltage: 51.2 V", "nominal_voltage: 6.4 V", "options[2].bank.nominal_voltage"),
        ("mass: 150 kg", "mass: 1500 kg", "options[2].added"),
    ],
)
def test_an_implausible_value_is_a_warning(tmp_path: Path, old: str, new: str, path: str) -> None:
    warnings = doubts(tmp_path, changed((old, new)))
    assert [warning.path for warning in warnings] == [path]
    assert all(warning.warning and ": warning: " in str(warning) for warning in warnings)


def test_a_payment_after_the_horizon_is_a_warning(tmp_path: Path) -> None:
    text = changed(
        ("house:", "prices: {horizon: 8}\nhouse:"), ("when: first", "when: once, year: 12")
    )
    late, year = doubts(tmp_path, text)
    assert (late.path, year.path) == ("options[2].costs", "options[2].costs[0].year")
    assert "no first price" in late.problem


def test_prices_of_another_currency_are_asked_for_once(tmp_path: Path) -> None:
    text = changed(
        ("currency: EUR", "currency: SEK"), ("9000 EUR", "90000 SEK"), ("8500 EUR", "85000 SEK")
    )
    warnings = doubts(tmp_path, text)
    assert [w.path for w in warnings] == ["prices"]
    assert "diesel, electricity, diesel_service, electric_service" in warnings[0].problem


def test_no_option_of_kind_keep_is_a_warning(tmp_path: Path) -> None:
    text = changed(("  - id: keep\n    name: Keep\n    kind: keep\n", ""))
    assert [w.path for w in doubts(tmp_path, text)] == ["options"]


def test_what_an_option_inherits_is_told_once(tmp_path: Path) -> None:
    wrong = changed(("rated_speed: 1500 rpm", "rated_speed: 1500"))
    assert [fault.path for fault in faults(tmp_path, wrong)] == ["options[2].motor.rated_speed"]
    doubtful = changed(("charge: 300 Ah", "charge: 3 Ah"))
    assert len(doubts(tmp_path, doubtful)) == 1


def test_checks_go_on_beside_faults_of_the_schema(tmp_path: Path) -> None:
    """A length that cannot be read hides no contradiction elsewhere."""
    text = changed(("draught: 1.60 m", "draught: deep"), ("peak_power: 12 kW", "peak_power: 7 kW"))
    assert [fault.path for fault in faults(tmp_path, text)] == [
        "boat.hull.draught",
        "options[2].motor.peak_power",
    ]
