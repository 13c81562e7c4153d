"""Does the cost section say what the money says, and does a copy without prices hold none?"""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

from generator.cli import run_command
from generator.report.page import Page, bare_text
from generator.report.render import make_pages
from generator.report.sections import carbon, cost, front
from generator.report.without_prices import without_prices
from tests.report.conftest import CASES, studied


def texts(part: Any) -> str:
    return " ".join(bare_text(text) for text in part.text)


def test_the_sentence_of_page_1_says_what_the_money_says(results: dict[str, Any]) -> None:
    page = Page(results)
    for motor, card in zip(page.motors, front.front(page).cards, strict=True):
        said = bare_text(card.money).replace("\u00a0", " ")
        saving = page.value(f"{motor}.cost.saving")
        assert page.plain(f"{motor}.cost.saving.extra_first_money", "money:size") in said
        never = saving["discounted_payback_years"] is None
        assert ("will not pay back" in said) == never
        assert ("keeping the diesel" in said) == (saving["baseline"] == "keep")
        assert f"{saving['window_years']} years" in said


def test_owners_reasons_stand_beside_the_money(results: dict[str, Any]) -> None:
    said = bare_text(front.front(Page(results)).wishes)
    assert results["study"]["reasons"]
    assert all(reason in said for reason in results["study"]["reasons"])


def test_terms_and_baseline_are_stated(results: dict[str, Any]) -> None:
    said = texts(cost.part(Page(results)))
    assert "All amounts are real, in money of 2026" in said
    assert "The fair baseline is keeping the diesel: the engine is worn" in said
    assert "ends before the bank's life" in said  # 12 years of horizon, 13 of the bank
    dying = texts(cost.part(Page(studied("sloop_30_weekend"))))
    assert "The fair baseline is a new diesel: the engine is dying" in dying


def test_longest_bar_is_on_top_and_its_ends_are_those_of_the_results(
    results: dict[str, Any],
) -> None:
    page = Page(results)
    for motor in page.motors:
        rows = page.value(f"{motor}.cost.swing")
        sizes = [abs(row["high_money"] - row["low_money"]) for row in rows]
        assert sizes == sorted(sizes, reverse=True)
        assert len(rows) >= 5


def test_maps_meet_the_best_estimate_where_she_is(results: dict[str, Any]) -> None:
    """On the map at today's hours and price the saving is that of the best estimate."""
    page = Page(results)
    for motor in page.motors:
        rows = page.value(f"{motor}.cost.maps.price_and_life")
        life = page.value(f"{motor}.cost.bank_life_years")
        price = {"a": 13200.0, "b": 13800.0}[page.value(motor)["id"]]  # as the case says
        near = min(
            rows, key=lambda row: abs(row["bank_money"] - price) + abs(row["life_years"] - life)
        )
        assert near["saving_money"] == pytest.approx(page.value(f"{motor}.cost.swing_middle_money"))


def test_carbon_says_years_or_never(results: dict[str, Any]) -> None:
    page = Page(results)
    part = carbon.part(page)
    assert part is not None
    said = texts(part)
    assert "repaid after" in said
    assert "Electricity of Netherlands, figure of 2023" in said
    assert "28.7 kWh" in said  # recycling is tied to this bank
    never = json.loads(json.dumps(results))
    for option in never["options"]:
        option["carbon"] |= {"payback_years": None, "never_share": 0.9}
    found = carbon.part(Page(never))
    assert found is not None
    assert "never repaid at this use" in texts(found)


def test_carbon_of_an_unknown_country_says_so(results: dict[str, Any]) -> None:
    unknown = json.loads(json.dumps(results))
    for option in unknown["options"]:
        option["carbon"] |= {
            "grid_g_per_kwh": None,
            "grid_g_per_kwh_why": "no figure for the electricity of IS: set carbon.grid",
        }
    part = carbon.part(Page(unknown))
    assert part is not None
    assert "no figure for the electricity of IS" in texts(part)


MONEY = re.compile(r"[£€$]\s?\d|\b(EUR|GBP|USD)\b|\bmoney\|")


@pytest.mark.parametrize("name", ["sloop_30_weekend", "ketch_34_two_motors", "every_key"])
def test_a_copy_without_prices_holds_none(name: str) -> None:
    full, bare = studied(name), without_prices(studied(name))
    html = make_pages(bare).html_screen
    body = re.sub(r"<style>.*?</style>", "", html, flags=re.DOTALL)
    shown = re.sub(r"<[^>]+>", " ", body)
    assert MONEY.findall(shown) == []
    assert MONEY.search(re.sub(r"<[^>]+>", " ", make_pages(full).html_screen))  # it can fail
    text = json.dumps({**bare, "case": {}})
    assert MONEY.search(text) is None
    for option in full["options"]:
        amount = option["cost"]["first_money"]
        assert amount == 0.0 or json.dumps(amount) not in text
    assert "is without prices" in shown
    assert "Carbon" in shown


def test_the_copy_has_a_folder_of_its_own(tmp_path: Path) -> None:
    case = str(CASES / "sloop_30_weekend.yaml")
    assert run_command(["report", case, "--out", str(tmp_path), "--no-prices"]) == 0
    assert [folder.name for folder in tmp_path.iterdir()] == ["sloop_30_weekend-no-prices"]
    assert "GBP/" not in (tmp_path / "sloop_30_weekend-no-prices/results.json").read_text("utf-8")
