"""The frozen case: SI, defaults by circumstance, every number listed as an assumption."""

from __future__ import annotations

import dataclasses
import hashlib
import math
import re
from pathlib import Path
from typing import Any

import pytest
import yaml

from generator.case.assumption import Assumption
from generator.case.case import Case
from generator.case.open import read_case
from generator.case.validate import _fields, _inner, _model
from tests.unit.case.faulty import FULL, ROOT, SMALL, changed, line_of, read

KN = 1852.0 / 3600.0
EVERY_KEY = ROOT / "cases" / "every_key.yaml"
CASES = {"every_key": EVERY_KEY, "full": Path(__file__).parent / "full.yaml"}


@pytest.fixture
def full(tmp_path: Path) -> Case:
    return read(tmp_path, FULL)


def by_path(case: Case, path: str) -> Assumption:
    found = [item for item in case.assumptions if item.path == path]
    assert len(found) == 1, path
    return found[0]


def field_at(case: Case, path: str) -> Any:
    """The field that an assumption names."""
    value: Any = case
    for part in path.replace("]", "").replace("[", ".").split("."):
        value = value[int(part)] if part.isdigit() else getattr(value, part)
    return value


def test_read_case_gives_si(full: Case) -> None:
    assert full.boat.hull.displacement == 4300.0
    assert full.engine.rated_power == 13400.0
    assert full.engine.rated_speed == pytest.approx(120 * math.pi)  # 3600 rpm
    assert full.engine.tank == pytest.approx(0.055)
    assert full.engine.hours_per_year == 45 * 3600.0
    assert full.propeller.diameter == pytest.approx(0.381)
    assert full.planning.cruise_speed == pytest.approx(4.8 * KN)
    assert full.legs[0].distance == 18520.0
    assert full.legs[1].refuge is False
    assert full.berth.days_between_use == 5 * 86400.0
    assert full.prices.diesel == pytest.approx(1400.0)
    assert full.prices.electricity == pytest.approx(0.45 / 3.6e6)
    assert full.prices.horizon == 10
    bank = full.options[2].bank
    assert bank is not None
    assert bank.charge == pytest.approx(1.08e6)  # 300 Ah
    assert full.trial is not None
    assert full.trial.rows[0].speed_back == pytest.approx(3.3 * KN)


def test_read_case_knows_its_file(full: Case) -> None:
    assert (full.file.name, full.file.stem) == ("boat.yaml", "boat")
    assert full.file.sha256 == hashlib.sha256(FULL.encode()).hexdigest()
    assert full.options[2].line == line_of(FULL, "- id: a\n")
    assert full.legs[1].line == line_of(FULL, "- name: Home from")
    assert full.options[0].costs[1].line == line_of(FULL, "- {name: Second overhaul")


@pytest.mark.parametrize("name", CASES)
def test_every_assumption_names_a_field_with_its_value(name: str) -> None:
    case = read_case(CASES[name])
    for item in case.assumptions:
        assert field_at(case, item.path) == item.value, item.path
        assert item.low <= item.value <= item.high, item.path
        assert item.origin in ("given", "default")
        assert (item.line > 0) == (item.origin == "given")
    paths = [item.path for item in case.assumptions]
    assert len(paths) == len(set(paths))


@pytest.mark.parametrize("name", CASES)
def test_every_number_of_the_case_is_an_assumption(name: str) -> None:
    """But for a place across and above that nobody gave: amidships, at the waterline."""
    case = read_case(CASES[name])
    listed = {item.path for item in case.assumptions}

    def numbers(value: Any, path: str) -> list[str]:
        if isinstance(value, tuple):
            return [p for n, v in enumerate(value) for p in numbers(v, f"{path}[{n}]")]
        if dataclasses.is_dataclass(value):
            return [
                p
                for field in dataclasses.fields(value)
                for p in numbers(getattr(value, field.name), f"{path}.{field.name}".lstrip("."))
            ]
        return [path] if isinstance(value, float) else []

    parts = {f.name: getattr(case, f.name) for f in dataclasses.fields(case)}
    held = [
        path
        for name, part in parts.items()
        if name not in ("assumptions", "warnings")
        for path in numbers(part, name)
    ]
    held = [path for path in held if not path.startswith("boat.offsets.")]  # of a file of its own
    unlisted = {path for path in held if path not in listed and not path.endswith((".y", ".z"))}
    assert unlisted == set()


def test_a_given_value_carries_its_doubt(full: Case) -> None:
    mass = by_path(full, "boat.hull.displacement")
    assert (mass.low, mass.high, mass.shape) == (4300 * 0.96, 4300 * 1.04, "normal")
    assert (mass.shown, mass.shown_low, mass.shown_high) == ("4.30 t", "4.128 t", "4.472 t")
    assert (mass.unit, mass.provenance, mass.plus_minus) == ("kg", "weighed", "4 %")
    assert mass.line == line_of(FULL, "displacement: {")
    plain = by_path(full, "engine.rated_speed")
    assert (plain.low, plain.high, plain.shape) == (plain.value, plain.value, "fixed")
    assert plain.provenance == ""


def test_a_default_carries_its_row(full: Case) -> None:
    row = by_path(full, "boat.hull.lcf")
    assert row.draw_key == "boat.hull.lcf@older"  # on the market in 1984
    assert (row.value, row.low, row.high) == pytest.approx((-0.0375, -0.045, -0.03))
    assert (row.origin, row.provenance, row.mark) == ("default", "register", "published")
    assert row.source == "dsyhs_hydrostatics"


def test_two_values_of_one_line_have_draws_of_their_own(full: Case) -> None:
    """Trial rows stand on one line; their readings err each for itself."""
    out = by_path(full, "trial.rows[0].speed_out")
    back = by_path(full, "trial.rows[0].speed_back")
    assert out.line == back.line
    assert out.draw_key == "trial.rows[0].speed_out"
    assert out.draw_key != back.draw_key


def test_options_share_draws_of_what_they_inherit(full: Case) -> None:
    a = by_path(full, "options[2].bank.charge")
    b = by_path(full, "options[3].bank.charge")
    assert (a.draw_key, a.line) == (b.draw_key, b.line)
    a = by_path(full, "options[2].motor.gear_efficiency")
    b = by_path(full, "options[3].motor.gear_efficiency")
    assert a.draw_key == b.draw_key == "options.motor.gear_efficiency@direct"
    boat = by_path(full, "propeller.pitch")
    assert by_path(full, "options[2].propeller.pitch").draw_key == boat.draw_key


def test_an_option_starts_from_another(full: Case) -> None:
    a, b = full.options[2:]
    assert (b.id, b.name, b.kind) == ("b", "Motor B, 12 kW", "battery")
    assert a.motor is not None
    assert b.motor is not None
    assert (b.motor.continuous_power, b.motor.peak_power) == (12000.0, 16000.0)
    assert (b.motor.rated_speed, b.motor.peak_time) == (a.motor.rated_speed, a.motor.peak_time)
    assert (b.motor.mass, a.motor.mass) == (48.0, 38.0)
    assert (b.bank, b.removed, b.added, b.costs) == (a.bank, a.removed, a.added, a.costs)


def test_a_restated_list_replaces_the_inherited_one(tmp_path: Path) -> None:
    text = SMALL + "    added:\n      - {name: Box, mass: 5 kg}\n"
    case = read(tmp_path, text)
    assert [item.name for item in case.options[3].added] == ["Box"]
    assert case.options[3].costs == case.options[2].costs


def test_a_new_diesel_stands_in_the_boat_of_the_old(full: Case) -> None:
    old, new = full.engine, full.options[1].diesel
    assert new is not None
    assert (new.rated_power, new.gear_ratio, new.condition) == (14000.0, 2.6, "good")
    assert (new.tank, new.hours_per_year) == (old.tank, old.hours_per_year)
    assert (new.year, new.hours) == (None, None)  # those of the old engine
    assert full.options[0].diesel == old
    assert full.options[2].diesel is None


def test_another_propeller_takes_its_blades_from_the_register() -> None:
    case = read_case(EVERY_KEY)
    fixed, folding = case.options[2].propeller, case.options[3].propeller
    assert fixed == case.propeller
    assert (folding.kind, folding.area_ratio, folding.thrust_scale) == ("folding", 0.42, 0.97)
    assert folding.wake_fraction == fixed.wake_fraction  # of the hull


@pytest.mark.parametrize(
    ("exchange", "path", "draw_key"),
    [
        (("keel_type: fin", "keel_type: long"), "propeller.wake_fraction", "@long"),
        (("keel_type: fin", "keel_type: fin"), "boat.keel.chord_share", "@fin"),
        (("keel_type: fin", "keel_type: fin"), "factors.hull_model", "@fin"),
        (("value: 4.00 t", "value: 6.60 t"), "factors.hull_model", "@long"),  # heavy for her length
        (("value: 4.00 t", "value: 6.60 t"), "boat.hull.canoe_share", "@fin"),
        (("keel_type: fin", "keel_type: fin"), "boat.hull.lcf", "@modern"),
        (("year_on_market: 1992", "year_on_market: 1984"), "boat.hull.lcf", "@older"),
        (("blades: 3", "blades: 2"), "propeller.area_ratio", "@fixed two-blade"),
        (("kind: fixed", "kind: feathering"), "propeller.thrust_scale", "@feathering"),
        (
            ("installation: shaft", "installation: saildrive"),
            "engine.gear_efficiency",
            "@saildrive",
        ),
        (("chemistry: LFP", "chemistry: AGM"), "options[2].bank.usable_share", "@AGM"),
    ],
)
def test_defaults_follow_the_circumstances(
    tmp_path: Path, exchange: tuple[str, str], path: str, draw_key: str
) -> None:
    case = read(tmp_path, changed(exchange))
    assert by_path(case, path).draw_key.endswith(draw_key)


def test_the_fetch_of_a_leg_is_that_of_the_waters(full: Case) -> None:
    assert full.legs[0].fetch == full.waters.fetch
    leg, waters = by_path(full, "legs[0].fetch"), by_path(full, "waters.fetch")
    assert leg.draw_key == waters.draw_key


def test_euro_figures_are_marked_where_the_currency_differs(full: Case) -> None:
    service = by_path(full, "prices.diesel_service")
    assert (service.value, service.shown, service.unit) == (350.0, "350 GBP", "GBP")
    assert "EUR figure taken as is" in service.meaning
    euro = read_case(EVERY_KEY)
    assert not any("taken as is" in item.meaning for item in euro.assumptions)


def test_a_mass_takes_the_doubt_that_stands_beside_it(full: Case) -> None:
    mass = by_path(full, "options[2].added[1].mass")
    assert (mass.low, mass.high) == pytest.approx((138.0, 162.0))  # 150 kg, 8 %
    assert (mass.provenance, mass.plus_minus) == ("estimate", "8 %")
    assert full.options[2].added[1].source == "estimate"


def test_names_stay_text(tmp_path: Path) -> None:
    text = changed(("name: Wren", "name: Off"), ("country: DK", "country: NO"))
    case = read(tmp_path, text)
    assert (case.boat.name, case.waters.country) == ("Off", "NO")


def test_units_in_any_spelling_give_the_same_case(tmp_path: Path) -> None:
    text = changed(
        ("length_overall: 9.20 m", "length_overall: 920 cm"),
        ("rated_power: 13 kW", "rated_power: 13000 W"),
        ("cruise_speed: 5.0 kn", "cruise_speed: 9.26 km/h"),
        ("charge: 300 Ah", "charge: 300.0 Ah"),
    )
    one, other = read(tmp_path, SMALL), read(tmp_path, text)
    values = [[item.value for item in case.assumptions] for case in (one, other)]
    assert values[0] == pytest.approx(values[1], rel=1e-12)  # rounding of the conversion


def test_every_key_holds_every_key() -> None:
    text = EVERY_KEY.read_text(encoding="utf-8")
    tree = yaml.safe_load(text)

    def walk(model: Any, said: Any, path: str) -> list[str]:
        missing = []
        for key, field in _fields(model).items():
            found = [s[key] for s in (said if isinstance(said, list) else [said]) if key in s]
            inner = _inner(field)
            if not found:
                missing.append(f"{path}{key}")
            elif inner:
                below = [v for f in found for v in (f if isinstance(f, list) else [f])]
                missing += walk(inner, below, f"{path}{key}.")
        return missing

    missing = walk(_model(()), tree, "")
    # An option's own propeller has the keys of the boat's; a file cannot stand beside this one.
    kept = [path for path in missing if not path.startswith("options.propeller.")]
    assert kept == ["boat.bottom_share", "waters.weather_file"]  # the one stands beside bottom
    assert "  # bottom_share: " in text
    assert "  # weather_file: " in text
    doubts = read_case(EVERY_KEY).warnings  # its sources of energy have no line in the ledgers
    assert {doubt.problem.split(",")[0] for doubt in doubts} == {
        "counts panels",
        "counts genset",
        "counts wind generator",
    }


def test_every_key_says_what_each_key_means() -> None:
    text = EVERY_KEY.read_text(encoding="utf-8")
    explained = set(re.findall(r"^[ #-]*([a-z_]+):.*#", text, flags=re.MULTILINE))

    def names(model: Any) -> set[str]:
        fields = _fields(model).items()
        own = {key for key, field in fields if not _inner(field)}
        return own.union(*(names(_inner(field)) for _, field in fields if _inner(field)))

    assert names(_model(())) - explained == set()
