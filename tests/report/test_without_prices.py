"""In a copy without prices no number of money is left, and no words that name one.

Which numbers are of money is not asked of the code that takes them out, but of the page: whatever
it would print with the sign of the currency.
"""

from __future__ import annotations

import copy
import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import field
from typing import Any

import pytest

from generator.records import Number, key_of, kind_of, number, numbers_of, record, records_of
from generator.report import declared, without_prices
from generator.report.declared import records_in
from generator.report.numbers import Display, shown
from generator.report.template import numbers_said
from generator.report.tree import Telling, tree
from generator.report.view import View
from generator.units.kinds import KINDS
from tests.report.conftest import KETCH, studied

BOATS = ["sloop_30_weekend", KETCH, "every_key"]
POUNDS = Display("metric", "GBP")
PRICED = frozenset(name for name in KINDS if "£" in shown(1000.0, name, POUNDS))
SAID = re.compile(r"[£€$]\s?\d|\b(EUR|GBP|USD)\b")


def money_of(kind: Any) -> dict[str, Number]:
    """The declared numbers of a record that the page shows as money."""
    return {name: said for name, said in numbers_of(kind).items() if said.kind in PRICED}


def left(bare: Mapping[str, Any]) -> Iterator[str]:
    """What of money is still in a copy: keys of numbers, keys of texts."""
    for key, node, kind in records_in(dict(bare)):
        for name, said in money_of(kind).items():
            ends = [key_of(name, kind_of(said, "bank"), end) for end in ("", "low", "high")]
            yield from (f"{key}.{end}" for end in ends if node.get(end) is not None)
            if node[f"{name}_why"] != without_prices.LEFT_OUT:
                yield f"{key}.{name}_why"
    yield from (key for key, text in texts({**bare, "case": {}}) if SAID.search(text))


def texts(node: Any, key: str = "") -> Iterator[tuple[str, str]]:
    if isinstance(node, str):
        yield key, node
    elif isinstance(node, dict | list):
        for name, each in node.items() if isinstance(node, dict) else enumerate(node):
            yield from texts(each, f"{key}.{name}".strip("."))


def test_kinds_of_money_are_those_that_the_page_prints_as_money() -> None:
    assert {name for name, kind in KINDS.items() if kind.of_money} == PRICED
    assert {"money", "money_whole", "price", "diesel_price", "electricity_price"} <= PRICED


@pytest.mark.parametrize("name", BOATS)
def test_no_number_of_money_is_left_and_no_words_that_name_one(name: str) -> None:
    full = studied(name)
    bare = without_prices.without_prices(full)
    assert list(left(bare)) == []
    assert len(list(left(full))) > 150  # it can fail
    case = full["case"]
    kept = {key: node for key, node, _ in records_in(bare)}
    display, dropped = Display(case["units"], case["currency"]), 0
    for key, node, kind in records_in(full):
        for part in ("", *getattr(kind, "SAYS_ALSO", ())) if hasattr(kind, "SAID_BY") else ():
            words = f"words_{part}".strip("_")
            keys = numbers_said(View(node, kind, key, display), part)
            if any(without_prices.of_money(each) for each in keys):
                assert kept[key][words] == ("" if part else without_prices.LEFT_OUT), key
                dropped += 1
            elif not SAID.search(node[words]):
                assert kept[key][words] == node[words], key
    assert dropped > 3


@pytest.mark.parametrize("name", BOATS)
def test_what_is_no_money_is_left_as_it_was(name: str) -> None:
    full = studied(name)
    bare = without_prices.without_prices(full)
    for option, before in zip(bare["options"], full["options"], strict=True):
        assert option["speed_power"] == before["speed_power"]
        assert option["legs"] == before["legs"]
        assert option["carbon"] == before["carbon"]
        assert option["cost"]["wall_yearly_kwh"] == before["cost"]["wall_yearly_kwh"]
    assert "redacted" not in full["case"]  # the whole one is not touched


@pytest.mark.parametrize("name", BOATS)
def test_no_record_is_passed_over(name: str) -> None:
    """Whatever stands at a place of records is one of its classes, and so is all within it."""
    results = studied(name)
    met = {key: (node, kind) for key, node, kind in records_in(results)}
    for place, _ in declared.PLACES:
        for key, _ in declared._at(results, place.split("."), ""):
            assert key in met or re.fullmatch(r"options\.\d+\.cost", key), key
    for key, (node, kind) in met.items():
        for field_name in records_of(kind):
            value = node[field_name]
            for each in value if isinstance(value, list) else [value]:
                assert each is None or any(each is one for one, _ in met.values()), (
                    key,
                    field_name,
                )


@record
class Bid:
    """A record that nobody has told of to the copy without prices."""

    offered: float = number("money", "what somebody offers for the engine")
    lamp: float = number("power", "power of a lamp")
    absent: Mapping[str, str] = field(default_factory=dict)


def with_a_bid(monkeypatch: pytest.MonkeyPatch) -> dict[str, Any]:
    monkeypatch.setattr(declared, "PLACES", (*declared.PLACES, ("options.*.bid", (Bid,))))
    results = copy.deepcopy(studied(KETCH))
    for place, option in enumerate(results["options"]):
        option["bid"] = tree(Bid(32107.25, 60.0), f"options.{place}.bid", Telling(POUNDS))
    return results


def test_a_new_field_of_money_is_taken_out_by_its_kind(monkeypatch: pytest.MonkeyPatch) -> None:
    results = with_a_bid(monkeypatch)
    bare = without_prices.without_prices(results)
    assert list(left(bare)) == []
    assert "32107.25" in json.dumps(results)
    assert "32107.25" not in json.dumps(bare)
    assert bare["options"][0]["bid"]["lamp_kw"] == 0.06


def test_a_new_field_that_is_not_taken_out_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    """The rule broken: one field of money passes."""
    results = with_a_bid(monkeypatch)
    rule = without_prices.of_money
    monkeypatch.setattr(
        without_prices, "of_money", lambda key: rule(key) and not key.endswith("offered_money")
    )
    found = set(left(without_prices.without_prices(results)))
    assert found == {f"options.{place}.bid.offered_money" for place in range(4)}


def test_words_that_are_not_taken_out_are_found(monkeypatch: pytest.MonkeyPatch) -> None:
    """The rule broken: no words are asked what they name, and no amount is looked for."""
    monkeypatch.setattr(without_prices._Copy, "_on_money", lambda copy, item: False)
    found = set(left(without_prices.without_prices(studied(KETCH))))
    assert "options.2.worth.words" in found


def test_owners_words_with_an_amount_are_left_out() -> None:
    results = copy.deepcopy(studied(KETCH))
    results["options"][2]["note"] = "Offered by the yard at 4200 EUR"
    results["options"][3]["note"] = "Offered by the yard"
    bare = without_prices.without_prices(results)
    assert bare["options"][2]["note"] == without_prices.LEFT_OUT
    assert bare["options"][3]["note"] == "Offered by the yard"
    assert bare["case"]["currency"] == "EUR"
