"""Does the cost section say what the money says, and does a copy without prices hold none?"""

from __future__ import annotations

import copy
import itertools
import json
import re
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from markupsafe import Markup

from generator import cli
from generator.case.prices import PARTS
from generator.cli import run_command
from generator.report import write
from generator.report.figures.cost_years import apart, cost_years
from generator.report.figures.money_swing import MOST, widest
from generator.report.page import Page, bare_text
from generator.report.pdf import PdfResult
from generator.report.render import Pages, make_pages
from generator.report.sections import boat, carbon, cost
from generator.report.sections.cost_items import ORDER, items
from generator.report.without_prices import without_prices
from tests.report.conftest import CASES, FEW, KETCH, studied
from tests.report.front_text import front_words


def texts(part: Any) -> str:
    return " ".join(bare_text(text) for text in part.text)


def test_the_word_on_money_of_page_1_says_what_the_money_says(results: dict[str, Any]) -> None:
    page = Page(results)
    said = front_words(page)
    for motor in page.motors:
        cost = page.plain(f"{motor}.cost.against_keep_money", "money")
        saving = page.value(f"{motor}.cost.saving")
        assert saving["discounted_payback_years"] is None
        window = f"over {saving['window_years']:.0f} years it is"
        assert f"If cost decides, keep the diesel: {window}" in said
        short = page.name(motor).partition(",")[0]
        assert f"about {cost} cheaper than {short}" in said
    assert "Neither motor pays for itself." in said


def test_page_1_answers_each_wish_of_the_owner(results: dict[str, Any]) -> None:
    """In his words and in his order: what matters first, then his reasons."""
    asked = [row["asked"] for row in results["answer"]["subjects"]]
    assert asked == [*results["study"]["priorities"], *results["study"]["reasons"]]
    said = front_words(Page(results))
    for row in results["answer"]["subjects"]:
        assert f"{row['asked']} {row['words']}".replace("\u00a0", " ") in said


def test_terms_and_baseline_are_stated(results: dict[str, Any]) -> None:
    said = texts(cost.part(Page(results))).replace("\u00a0", " ")
    assert "All amounts are real, in money of 2026" in said
    stand = "Savings and paybacks stand against keeping the present diesel, over"
    assert f"{stand} 12 years, with what it needs: the engine is worn" in said
    assert "ends before the bank's life" in said  # 12 years of horizon, 15 of the bank
    dying = texts(cost.part(Page(studied("sloop_30_weekend")))).replace("\u00a0", " ")
    assert f"{stand} 10 years, with what it needs: the engine is dying" in dying


def test_page_1_and_the_section_on_cost_name_one_baseline_and_one_window() -> None:
    """Of the dying engine of one demo and the worn one of the other."""
    for name in ("sloop_30_weekend", "ketch_34_two_motors"):
        page = Page(studied(name))
        horizon = page.value("planning.horizon_years")
        assert page.value("money.fair_baseline") == "keep"
        for motor in page.motors:
            saving = page.value(f"{motor}.cost.saving")
            word = page.value(f"{motor}.worth")
            assert (saving["baseline"], word["baseline"]) == ("keep", "keep")
            assert (saving["window_years"], word["horizon_years"]) == (horizon, horizon)
            assert "keeping the present diesel" in word["words"]


@pytest.mark.parametrize(
    ("boat", "status", "words"),
    [
        ({"market": "GB", "year_on_market": 2004}, "owed",
         ("first sold in Great Britain in 2004, after 1998-06-16", "until an approved body")),
        ({"market": "EEA", "year_on_market": 1998}, "owed",
         ("first sold in the EEA in 1998, after 1998-06-16", "until a notified body says")),
        ({"market": "NI", "year_on_market": None}, "owed",
         ("first sold in Northern Ireland on a day that nobody has given", "for Northern Ireland")),
        ({"market": "US", "year_on_market": 1984, "import_date": "2015-05-01"}, "owed",
         ("brought in on 2015-05-01, after 1998-06-16", "until a notified or approved body")),
        ({"market": "EEA", "year_on_market": 1979, "import_date": "1997-05-03"}, "out of scope",
         ("brought in on 1997-05-03, no later than 1998-06-16", "no assessment is counted")),
        ({"market": "US", "year_on_market": 2004}, "out of scope",
         ("sold outside the EEA and the UK and not brought in, no assessment is counted",)),
    ],
)  # fmt: skip
def test_assessment_is_tied_to_her_day_and_market(
    results: dict[str, Any], boat: dict[str, Any], status: str, words: tuple[str, ...]
) -> None:
    tree = json.loads(json.dumps(results))
    tree["boat"] |= {"import_date": None, **boat}
    for option in tree["options"]:
        option["cost"]["assessment"] = status
    said = texts(cost.part(Page(tree)))
    assert all(each in said for each in words)


def test_longest_bar_is_on_top_and_its_ends_are_those_of_the_results(
    results: dict[str, Any],
) -> None:
    page = Page(results)
    for motor in page.motors:
        rows = page.value(f"{motor}.cost.swing")
        # nine digits are kept of each end: bars of one width may differ in the last of them
        sizes = [round(abs(row["at_high_money"] - row["at_low_money"]), 3) for row in rows]
        assert sizes == sorted(sizes, reverse=True)
        assert len(rows) >= 5
    wide = widest(page, page.motors)
    assert wide[0] == page.value(f"{page.motors[0]}.cost.swing.0.what")
    assert len(set(wide)) == len(wide) == MOST


def test_no_input_of_money_is_called_by_its_path(results: dict[str, Any]) -> None:
    page = Page(results)
    names = [row["what"] for motor in page.motors for row in page.value(f"{motor}.cost.swing")]
    assert not [name for name in names if "." in name or "[" in name]


def test_every_item_stands_in_the_table_and_every_part_has_its_row(
    results: dict[str, Any],
) -> None:
    page = Page(results)
    assert set(ORDER) == set(PARTS)
    table = items(page)
    cells = " ".join(cell for row in table.rows for cell in row.cells)
    for option in page.options:
        for key in page.keys(f"{option}.cost.items"):
            assert f'data-key="{key}.amount_money"' in cells
            assert f'data-key="{key}.source"' in cells


def test_maps_meet_the_best_estimate_where_she_is(results: dict[str, Any]) -> None:
    """On the map at today's price the best estimate lies between the savings of two lives."""
    page = Page(results)
    for motor in page.motors:
        rows = page.value(f"{motor}.cost.maps.price_and_life")
        turn = page.value(f"{motor}.cost.turn")
        price, life = turn["today_bank_money"], turn["today_life_years"]
        near = [row for row in rows if row["bank_money"] == pytest.approx(price)]
        ends = [row["saving_money"] for row in near if abs(row["life_years"] - life) < 1.0]
        assert len(ends) == 2
        assert min(ends) <= page.value(f"{motor}.cost.swing_middle_money") <= max(ends)


def test_carbon_says_years_or_never(results: dict[str, Any]) -> None:
    page = Page(results)
    part = carbon.part(page)
    assert part is not None
    said = texts(part)
    assert "repaid after" in said
    assert "Grid of the Netherlands, 2023" in said
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
            "grid_why": "no figure for the electricity of IS: set carbon.grid",
        }
    part = carbon.part(Page(unknown))
    assert part is not None
    assert "no figure for the electricity of IS" in texts(part)


MONEY = re.compile(r"[£€$]|\b(EUR|GBP|USD)\b|\bmoney\|")


@pytest.mark.usefixtures("sketched")
@pytest.mark.parametrize("name", ["sloop_30_weekend", KETCH, "every_key"])
def test_a_copy_without_prices_holds_none(name: str) -> None:
    """Of its charts the words: the marks of their scales are numbers alone."""
    full, bare = studied(name), without_prices(studied(name))
    shown = seen(make_pages(bare))
    assert MONEY.findall(shown) == []
    assert MONEY.search(seen(make_pages(full)))  # it can fail
    text = json.dumps({**bare, "case": {}})
    assert MONEY.search(text) is None
    for option in full["options"]:
        amount = option["cost"]["first_money"]
        assert amount == 0.0 or json.dumps(amount) not in text
    assert "is without prices" in shown
    assert "Carbon" in shown


def seen(pages: Pages) -> str:
    """What can be read on the pages and in their charts."""
    body = re.sub(r"<style>.*?</style>", "", pages.html_screen, flags=re.DOTALL)
    return re.sub(r"<[^>]+>", " ", body)


@pytest.mark.usefixtures("sketched")
def test_the_copy_has_a_folder_of_its_own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Few draws and no engine: what is looked at is the folder and the results in it."""
    monkeypatch.setattr(cli, "DRAWS", FEW)
    monkeypatch.setattr(write, "make_pdf", lambda html, charts, inside: PdfResult(b"%PDF", (), 1))
    case = str(CASES / "sloop_30_weekend.yaml")
    assert run_command(["report", case, "--out", str(tmp_path), "--no-prices"]) == 0
    assert [folder.name for folder in tmp_path.iterdir()] == ["sloop_30_weekend-no-prices"]
    assert "GBP/" not in (tmp_path / "sloop_30_weekend-no-prices/results.json").read_text("utf-8")


@given(st.lists(st.floats(0.0, 0.98), min_size=1, max_size=5).map(sorted))
def test_names_at_the_ends_of_the_lines_stay_apart_and_within(wanted: list[float]) -> None:
    gap = 0.167  # as on the page
    heights = apart(wanted, gap)
    assert max(heights) <= 1.0
    assert all(b - a >= gap - 1e-9 for a, b in itertools.pairwise(heights))
    if all(b - a >= gap for a, b in itertools.pairwise(wanted)):
        assert heights == pytest.approx(wanted)


def test_a_quote_is_printed_as_it_was_quoted_and_has_no_band() -> None:
    page = Page(studied("ketch_34_two_motors"))
    motor = page.find("options", id="a")
    quote = page.find(f"{motor}.cost.items", name="Motor A with controller")
    for end in ("", "_low", "_high"):
        assert page.value(f"{quote}.amount{end}_money") == 8900.0
    assert page.value(f"{quote}.contingency_money") == 0.0
    note = " ".join(bare_text(each) for each in items(page).notes)
    assert "a quote stands as quoted" in note
    assert page.plain("money.contingency_pct", "percent") == "15%"
    assert "Contingency of 15% is added to all that is no quote, whenever it is paid" in note


def test_a_case_that_says_what_is_paid_over_a_quote_is_told_so(results: dict[str, Any]) -> None:
    changed = copy.deepcopy(results)
    changed["money"]["quote_share"] = 1.05
    note = " ".join(bare_text(each) for each in items(Page(changed)).notes)
    assert "quotes are taken at 105%, as the case says" in note


def units(text: str) -> int:
    """A printed amount of money, without its band."""
    found = re.match(r"([+\u2212]?)\u2060?[^\d\s]*((?:\d{1,3},)*\d{1,3})(?=\D|$)", text)
    assert found, text
    return int(found[2].replace(",", "")) * (-1 if found[1] == "\u2212" else 1)


def amounts(cell: Any) -> list[int]:
    """What is printed as money in a cell, bands left out; the words of a line stand behind it."""
    bare = re.sub(r'<span class="spread">.*?</span>', " ", str(cell))
    shown = [bare_text(Markup(part)) for part in bare.split("<br>")]
    return [units(part) for part in shown if part.strip()]


@pytest.mark.parametrize("name", ["sloop_30_weekend", KETCH, "every_key"])
def test_printed_lines_add_to_their_printed_sums(name: str) -> None:
    """Of the tables of the cost as they stand on the page, option by option."""
    page = Page(studied(name))
    summary, ledger = cost.part(page).opening
    rows = {bare_text(row.head): [amounts(cell) for cell in row.cells]
            for row in summary.rows if not bare_text(row.head).startswith("Payback")}  # fmt: skip
    lines = {bare_text(row.head): row for row in ledger.rows}
    for place, option in enumerate(page.options):

        def at(head: str, place: int = place) -> int:
            return sum(rows[head][place]) if head in rows else 0

        yearly = [head for head in rows if head.startswith("of which")
                  and "contingency" not in head]  # fmt: skip
        assert sum(at(head) for head in yearly) == at("Each year")
        parts = ("First cost", "All years, at today's worth", "Later payments, at today's worth",
                 "Left at the end, at today's worth")  # fmt: skip
        assert sum(at(head) for head in parts) == at("Cost of ownership, sum of these four")
        keep = [page.value(each)["kind"] for each in page.options].index("keep")
        owned = "Cost of ownership, sum of these four"
        assert at("Dearer than to keep the diesel") == at(owned) - at(owned, keep)
        first = 0
        for key in page.keys(f"{option}.cost.items"):
            if page.value(f"{key}.when") == "first":
                first += units(page.plain(f"{key}.amount_money", "money_whole"))
        own = [amounts(lines[head].cells[place])[0]
               for head in ("contingency of first payments", "first cost")]  # fmt: skip
        assert first + own[0] == own[1] == at("First cost")


@pytest.mark.parametrize("name", ["sloop_30_weekend", KETCH, "every_key"])
def test_a_sum_lies_within_the_band_beside_it(name: str) -> None:
    for option in studied(name)["options"]:
        for stem in ("first", "present_value", "against_keep", "against_new_diesel"):
            low, told, high = (
                option["cost"].get(f"{stem}{end}_money") for end in ("_low", "", "_high")
            )
            if low is not None:
                assert low - 1.0 <= told <= high + 1.0, (option["id"], stem)


@pytest.mark.parametrize("name", ["sloop_30_weekend", KETCH, "every_key"])
def test_the_words_on_money_tell_the_sums_of_the_tables(name: str) -> None:
    for option in studied(name)["options"]:
        own, word = option["cost"], option["worth"]
        assert word["first_money"] == own["first_money"]
        assert word["ownership_money"] == own["present_value_money"]
        if word["extra_money"] is not None:
            assert word["extra_money"] == own["against_keep_money"]
            assert word["extra_money"] == -own["saving"]["present_value_money"]
        rows = {row["id"]: row["facts"] for row in option["verdict"]["criteria"]}
        if word["share_share"] is not None:
            assert rows[26]["spent_share"] == pytest.approx(word["share_share"])
            assert rows[26]["cost_money"] == pytest.approx(word["first_money"], abs=0.5)
        if own["saving"] is not None:
            assert rows[25]["after_years"] == word["payback_years"]


def test_energy_says_that_the_house_is_left_out_with_the_number_of_the_year() -> None:
    page = Page(studied("ketch_34_two_motors"))
    said = texts(cost.part(page)).replace("\u00a0", " ")
    assert "Energy is the motor's alone; with the house the plug gives" in said
    for motor in page.motors:
        wall = page.value(f"{motor}.energy_year.shore_wall_kwh")
        paid = page.value("money.electricity_money_per_kwh") * wall
        assert page.value(f"{motor}.cost.wall_yearly_kwh") == pytest.approx(wall)
        assert page.value(f"{motor}.cost.wall_bill_money") == pytest.approx(paid, rel=1e-6)
        assert page.plain(f"{motor}.cost.wall_yearly_kwh", "energy").replace("\u00a0", " ") in said


def test_a_line_that_says_survey_counts_as_one_and_what_lacks_is_told() -> None:
    page = Page(studied("ketch_34_two_motors"))
    said = texts(cost.part(page))
    for motor in page.motors:  # "Post-construction enquiry and survey", and a panel with its line
        assert page.value(f"{motor}.cost.lacking") == ["haul-out"]
    assert "no line of the ledger names haul-out." in said


def test_hours_and_litres_of_the_diesel_stand_on_the_same_legs() -> None:
    page = Page(studied("ketch_34_two_motors"))
    keep = page.find("options", kind="keep")
    assert page.value("engine.legs_hours_h") == pytest.approx(page.value(f"{keep}.year.motoring_h"))
    assert page.value("engine.litres_per_year_l") == pytest.approx(
        page.value(f"{keep}.year.energy_l")
    )
    lead = bare_text(boat.drive(page).body).replace("\u00a0", " ")
    hours, litres = (
        page.plain(key, form).replace("\u00a0", " ")
        for key, form in (("engine.legs_hours_h", "hours"), ("engine.litres_per_year_l", "fuel"))
    )
    assert f"the trips below add up to {hours} and {litres} of fuel" in lead


@pytest.mark.parametrize("ends", [("high",), ("middle", "high"), ("low", "middle", "high")])
@pytest.mark.parametrize("whole", [True, False])
def test_cost_by_year_is_drawn_where_a_cost_is_absent(
    ends: tuple[str, ...], whole: bool, results: dict[str, Any]
) -> None:
    """As where a leg cannot be made in some draws: its line breaks, all others stand."""
    changed = copy.deepcopy(results)
    rows = changed["options"][2]["cost"]["cumulative"]
    keys = {"low": "paid_low_money", "middle": "paid_money", "high": "paid_high_money"}
    for row in rows if whole else rows[-1:]:
        row |= {keys[end]: None for end in ends}
    named = [option["name"] for option in changed["options"]]
    svg = cost_years(Page(changed)).svg
    assert [name in svg for name in named] == [
        place != 2 or "middle" not in ends for place in range(len(named))
    ]
