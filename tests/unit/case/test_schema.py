"""The schema mirrors the frozen case, and its messages name what is wrong."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import pytest
from pydantic import BaseModel

from generator.case.boat import Boat, Floatation, Hull, Keel, Rudder, Space, Waters, Windage
from generator.case.boat_keys import BOTTOMS
from generator.case.case import Instruction
from generator.case.diesel import Diesel, Propeller
from generator.case.factors import Carbon, Factors, Masses
from generator.case.option import Bank, LedgerItem, Motor, Option
from generator.case.prices import CostItem, Prices
from generator.case.register import find_default, read_register
from generator.case.schema import CaseKeys
from generator.case.trial import SeaTrial, TrialRow
from generator.case.usage import Berth, House, Leg, Planning
from generator.case.validate import _fields, _model
from generator.tables.load import read_table
from tests.unit.case.faulty import changed, line_of, lines

MIRRORS = [
    (("study",), Instruction),
    (("boat",), Boat),
    (("boat", "hull"), Hull),
    (("boat", "keel"), Keel),
    (("boat", "rudder"), Rudder),
    (("boat", "windage"), Windage),
    (("boat", "floatation"), Floatation),
    (("boat", "spaces"), Space),
    (("waters",), Waters),
    (("factors",), Factors),
    (("masses",), Masses),
    (("engine",), Diesel),
    (("propeller",), Propeller),
    (("trial",), SeaTrial),
    (("trial", "rows"), TrialRow),
    (("planning",), Planning),
    (("berth",), Berth),
    (("legs",), Leg),
    (("house",), House),
    (("prices",), Prices),
    (("carbon",), Carbon),
    (("options",), Option),
    (("options", "motor"), Motor),
    (("options", "bank"), Bank),
    (("options", "removed"), LedgerItem),
    (("options", "costs"), CostItem),
]
# Keys that the frozen case calls otherwise, or knows from elsewhere.
ONLY_IN_FILE = {"from", "plus_minus", "engine", "energy"}
BY_BLOCKS = ("nominal_voltage", "charge")  # of the whole bank, or of its blocks: check_bank.py
ONLY_IN_CASE = {"line", "source", "diesel", "doubted", "subjects", "wishes", "holds_outside"}


@pytest.mark.parametrize(("place", "kind"), MIRRORS)
def test_keys_are_the_fields_of_the_case(place: tuple[str, ...], kind: type) -> None:
    keys = set(_fields(_model(place)))
    names = {field.name for field in dataclasses.fields(kind)}
    only_in_case = ONLY_IN_CASE | ({"currency"} if kind is Prices else set())
    assert keys - names - ONLY_IN_FILE == set()
    assert names - keys - only_in_case == set()


@pytest.mark.parametrize(("place", "kind"), MIRRORS)
def test_a_number_that_may_be_left_out_has_a_default(place: tuple[str, ...], kind: type) -> None:
    """What is neither needed nor optional in the case must have a row for each circumstance."""
    for key, field in _fields(_model(place)).items():
        types = {item.name: str(item.type) for item in dataclasses.fields(kind)}
        extra = field.json_schema_extra or {}
        if (
            types.get(key) != "Numbers"
            or key in ("y", "z", *BY_BLOCKS)
            or (key == "fetch" and kind is Leg)
        ):
            continue
        assert isinstance(extra, dict)
        if not extra.get("needed"):
            rows = read_register()[".".join((*place, key))]
            found = {row.when for row in rows}
            groups = (
                {""}, {"fin", "long"}, {"older", "modern"}, {"shaft", "saildrive"},
                {"LFP", "NMC", "AGM", "flooded"}, {"fixed", "folding", "feathering"},
            )  # fmt: skip
            assert any(group <= found for group in groups), key


def test_every_row_of_the_register_is_a_key() -> None:
    for key in read_register():
        *place, last = key.split(".")
        assert last in _fields(_model(tuple(place))), key


def test_find_default_takes_the_narrower_circumstance() -> None:
    narrow = find_default("propeller.area_ratio", ("fixed two-blade", "fixed", "fin"))
    wide = find_default("propeller.area_ratio", ("fixed", "fin"))
    assert narrow is not None
    assert wide is not None
    assert (narrow.value, wide.value) == (0.30, 0.50)
    assert find_default("propeller.area_ratio", ("paddle",)) is None


def test_register_is_in_si() -> None:
    lcb = find_default("boat.hull.lcb", ())
    rate = find_default("options.bank.cruise_rate_limit", ("LFP",))
    diesel = find_default("prices.diesel", ())
    assert lcb is not None
    assert rate is not None
    assert diesel is not None
    assert (lcb.value, lcb.shown) == (-0.03, "-3.0 %")
    assert rate.value == pytest.approx(0.30 / 3600)
    assert diesel.value == pytest.approx(1500.0)  # 1.5 EUR/l


def test_bottoms_are_those_of_the_fouling_table() -> None:
    assert read_table("hull/fouling").text("state") == BOTTOMS


def test_all_sections_are_refused_unknown_keys() -> None:
    def models(model: type[BaseModel]) -> set[type[BaseModel]]:
        inner = {_model((name,)) for name in model.model_fields}
        return {model} | inner

    assert all(model.model_config.get("extra") == "forbid" for model in models(CaseKeys))


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("version: 1\n", "", "boat.yaml:1: version: is missing, expected 1"),
        ("version: 1", "version: 2", "version: is `2`, expected 1"),
        ("market: EEA", "market: EU", "boat.market: is `EU`, expected one of: EEA, GB,"),
        ("bottom: smooth", "bottom: smoth", "boat.bottom: is `smoth`, did you mean `smooth`?"),
        ("date: 2026-05-17", "date: 17.5.2026", "study.date: is `17.5.2026`, expected a date"),
        ("date: 2026-05-17", "date: 2026-02-30", "study.date: is `2026-02-30`, expected a date"),
        ("country: DK", "country: UK", "waters.country: is `UK`, expected a country code"),
        ("refuge: true", "refuge: yes", "legs[0].refuge: is `yes`, expected `true` or `false`"),
        ("blades: 3", "blades: three", "propeller.blades: is `three`, expected a whole number"),
        ("blades: 3", "blades: 3.0", "propeller.blades: is `3.0`, expected a whole number"),
        ("draught: 1.60 m", "draught: -1.6 m", "draught: is `-1.6 m`, expected a length above 0"),
        ("draught: 1.60 m", "draught:", "boat.hull.draught: is empty, expected a length"),
        ("name: Wren", "name: ''", "boat.name: is empty, expected a text"),
        ("tank: 60 l", "tank: 60 gal", "engine.tank: `60 gal`: `gal` is not clear"),
        ("hull_type: displacement monohull", "hull_type: catamaran", "holds for no multihull"),
        ("hull_type: displacement monohull", "hull_type: planing", "no planing hull"),
        ("currency: EUR", "currency: euro", "study.currency: is `euro`, did you mean `EUR`?"),
        ("id: keep", "id: Keep it", "options[0].id: is `Keep it`, expected a short id"),
        ("cruise_speed: 5.0 kn", "cruise_sped: 5.0 kn", "cruise_sped: unknown key, did you mean"),
        ("tank: 60 l", "tank: {volume: 60 l}", "engine.tank: is a section, expected a volume"),
        ("tank: 60 l", "tank: [60 l]", "engine.tank: is a list, expected a volume"),
        ("tank: 60 l", "tank: {value: 60 l, form: x}", "tank.form: unknown key, did you mean"),
        ("tank: 60 l", "tank: {value: 60 l, from: gues}", "engine.tank.from: `gues` is no origin"),
        ("tank: 60 l", "tank: {value: 60 l, plus_minus: 5}", "tank.plus_minus: `5` has no unit"),
        ("tank: 60 l", "tank: {value: 60 l, plus_minus: 60 l}", "is as large as the value"),
        ("tank: 60 l", "tank: {value: [60 l]}", "engine.tank.value: is not a single value"),
        ("tank: 60 l", "tank: {from: builder, plus_minus: 5 %}", "engine.tank.value: is missing"),
        ("mass: 150 kg, x: 2 m, plus_minus: 10 %", "mass: 1 t, plus_minus: 2 m",
         "options[2].added[0].plus_minus: `2 m` is a length"),
        ("from: builder}", "from: quote}", "options[2].added[0].from: is `quote`"),
        ("house:\n  separate_bank: true\n", "", "boat.yaml:1: house: is missing, expected keys"),
        ("house:\n  separate_bank: true", "house: none", "house: is a single value, expected a"),
    ],
)  # fmt: skip
def test_one_mistake_gives_one_message(tmp_path: Path, old: str, new: str, message: str) -> None:
    found = lines(tmp_path, changed((old, new)))
    assert len(found) == 1
    assert message in found[0]


def test_a_message_names_the_line(tmp_path: Path) -> None:
    text = changed(("pitch: 11 in", "pitch: 11 inch in"))
    assert lines(tmp_path, text)[0].startswith(f"boat.yaml:{line_of(text, 'pitch:')}: ")


def test_twelve_faults_of_different_kinds_give_twelve_lines(tmp_path: Path) -> None:
    text = changed(
        ("date: 2026-05-17", "date: May"),  # 1 no date
        ("market: EEA", "markt: EEA"),  # 2 unknown key, which was also needed
        ("keel_type: fin", "keel_type: bulb"),  # 3 none of the words
        ("length_overall: 9.20 m", "length_overall: 9,20 m"),  # 4 decimal comma
        ("beam: 3.00 m", "beam: 3.00 m\n    beam: 3.10 m"),  # 5 given twice
        ("from: weighed", "from: guessed"),  # 6 no origin
        ("  tank: 60 l\n", ""),  # 7 missing
        ("year: 1992\n  condition", "year: !!int 1992\n  condition"),  # 8 tag
        ("pitch: 11 in", "pitch: 11 kg"),  # 9 wrong kind
        ("exposed_distance: 2 nm", "exposed_distance: 12 nm"),  # 10 longer than the leg
        ("amount: 9000 EUR", "amount: 9000 GBP"),  # 11 another currency
        ("from: a\n", "from: z\n"),  # 12 no such option
    )
    found = lines(tmp_path, text)
    assert len(found) == 12, "\n".join(found)
    numbers = [int(line.split(":")[1]) for line in found]
    assert numbers == sorted(numbers)
    assert len({line.split(": ", maxsplit=2)[1] for line in found}) == 12
