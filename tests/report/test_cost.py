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
from generator.report.sections import boat, money
from generator.report.sections.item_rows import ORDER, item_rows
from generator.report.without_prices import without_prices
from tests.report.conftest import CASES, FEW, KETCH, studied
from tests.report.front_text import front_words


def texts(part: Any) -> str:
    """Words and tables of a part, spaces made plain."""
    said = " ".join(bare_text(text) for text in (part.body, part.closing))
    return " ".join(said.replace("\u00a0", " ").split())


def cost_of(page: Page) -> str:
    return texts(money.parts(page)[0])


def carbon_of(page: Page) -> str:
    part = money.carbon(page)
    assert part is not None
    return texts(part)


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
    said = cost_of(Page(results))
    assert "are in money of 2026; later ones are discounted at 3.0% a year above inflation" in said
    compared = "Every option is compared with keeping the present diesel with the overhauls listed"
    assert said.startswith(compared)
    assert re.search(r"That costs about €[\d,]+ over 12 years", said)
    assert "longer than the years compared, so its remaining value is credited" in said
    assert "The present diesel has used 110% of its life before an overhaul" in said
    assert "not within 12 years" in said
    dying = cost_of(Page(studied("sloop_30_weekend")))
    assert "over 10 years" in dying
    assert "The present diesel is at the end of its life, so an overhaul is due" in dying


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
         ("the day on which the boat was first sold in Northern Ireland", "for Northern Ireland")),
        ({"market": "US", "year_on_market": 1984, "import_date": "2015-05-01"}, "owed",
         ("brought in on 2015-05-01, after 1998-06-16", "until a notified or approved body")),
        ({"market": "EEA", "year_on_market": 1979, "import_date": "1997-05-03"}, "out of scope",
         ("brought in on 1997-05-03, no later than 1998-06-16",
          "no assessment after conversion is counted")),
        ({"market": "US", "year_on_market": 2004}, "out of scope",
         ("sold outside the EEA and the UK and not brought in, no assessment after conversion",)),
    ],
)  # fmt: skip
def test_assessment_is_tied_to_her_day_and_market(
    results: dict[str, Any], boat: dict[str, Any], status: str, words: tuple[str, ...]
) -> None:
    tree = json.loads(json.dumps(results))
    tree["boat"] |= {"import_date": None, **boat}
    for option in tree["options"]:
        option["cost"]["assessment"] = status
    said = cost_of(Page(tree))
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
    closing = str(money.parts(page)[0].closing)
    rows = [row for kind in item_rows(page) for row in kind]
    for place, option in enumerate(page.options):
        for key in page.keys(f"{option}.cost.items"):
            assert closing.count(f'data-key="{key}.amount_money"') == 1
            (row,) = [row for row in rows
                      if f"{key}.amount" in [it.amount.key for it in row.cells[place]]]  # fmt: skip
            assert page.value(f"{key}.name") in [str(name) for name in row.names]
            if page.value(f"{key}.source") != "register":
                assert f'data-key="{key}.source"' in closing


def test_two_items_of_one_option_never_share_a_row_but_by_name(results: dict[str, Any]) -> None:
    for kind in item_rows(Page(results)):
        for row in kind:
            for cell in row.cells:
                assert len({str(item.name) for item in cell}) <= 1


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
    said = carbon_of(Page(results))
    assert "That is repaid after" in said
    assert "(Netherlands, 2023)" in said
    assert "28.7 kWh" in said  # where the battery goes is tied to this battery
    never = json.loads(json.dumps(results))
    for option in never["options"]:
        option["carbon"] |= {"payback_years": None, "never_share": 0.9}
    assert "At this use that is never repaid" in carbon_of(Page(never))


def test_carbon_that_is_not_saved_is_not_called_saved(results: dict[str, Any]) -> None:
    dirty = json.loads(json.dumps(results))
    for option in dirty["options"]:
        option["carbon"] |= {"saved_yearly_kg": -20.0, "payback_years": None}
    said = carbon_of(Page(dirty))
    assert "Motor A emits no less each year than the diesel" in said
    assert "of carbon dioxide a year, and to make it" not in said


def test_carbon_of_an_unknown_country_says_so(results: dict[str, Any]) -> None:
    unknown = json.loads(json.dumps(results))
    for option in unknown["options"]:
        option["carbon"] |= {
            "grid_g_per_kwh": None,
            "grid_why": "no figure for the electricity of IS: set carbon.grid",
        }
    assert "no figure for the electricity of IS" in carbon_of(Page(unknown))


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
    assert "This copy is without prices" in shown
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
    note = cost_of(page)
    assert "a quote is counted as quoted" in note
    assert page.plain("money.contingency_pct", "percent") == "15%"
    assert "What is not a quote has 15% of contingency added, whenever it is paid" in note


def test_a_case_that_says_what_is_paid_over_a_quote_is_told_so(results: dict[str, Any]) -> None:
    changed = copy.deepcopy(results)
    changed["money"]["quote_share"] = 1.05
    assert "quotes are counted at 105%, as you stated" in cost_of(Page(changed))


def units(text: str) -> int:
    """A printed amount of money, without its band."""
    found = re.match(r"([+\u2212]?)\u2060?[^\d\s]*((?:\d{1,3},)*\d{1,3})(?=\D|$)", text)
    assert found, text
    return int(found[2].replace(",", "")) * (-1 if found[1] == "\u2212" else 1)


def rows_of(html: Any, table: str) -> dict[str, list[str]]:
    """Rows of a table as they stand on the page: the cells by their heads, bands left out."""
    _, _, after = str(html).partition(f'id="{table}"')
    found = {}
    for row in re.findall(r"<tr[^>]*>(.*?)</tr>", after.partition("</table>")[0], re.DOTALL):
        bare = re.sub(r'<span class="spread">.*?</span>', " ", row, flags=re.DOTALL)
        cells = re.findall(r"<t[hd][^>]*>(.*?)</t[hd]>", bare, re.DOTALL)
        head, *rest = (Markup(cell).striptags() for cell in cells)
        found[head] = rest
    return found


@pytest.mark.parametrize("name", ["sloop_30_weekend", KETCH, "every_key"])
def test_printed_lines_add_to_their_printed_sums(name: str) -> None:
    """Of the tables of the cost as they stand on the page, option by option."""
    page = Page(studied(name))
    part = money.parts(page)[0]
    rows, ledger = rows_of(part.body, "cost-table"), rows_of(part.closing, "items")
    assert len(ledger) > 5
    for place, option in enumerate(page.options):

        def at(head: str, place: int = place) -> int:
            return units(rows[head][place]) if head in rows else 0

        yearly = ("Energy each year", "Service each year", "Insurance, winter and other each year")
        assert sum(at(head) for head in yearly) == at("Running cost each year")
        worth = ("Running cost of all years", "Later payments", "Left at the end")
        parts = ("First cost", *(f"{each}, at today's worth" for each in worth))
        owned = "Cost of ownership, present value"
        assert sum(at(head) for head in parts) == at(owned)
        keep = [page.value(each)["kind"] for each in page.options].index("keep")
        extra = at("Extra cost over keeping the present diesel")
        assert extra == at(owned) - at(owned, keep)
        first = 0
        for key in page.keys(f"{option}.cost.items"):
            if page.value(f"{key}.when") == "first":
                first += units(page.plain(f"{key}.amount_money", "money_whole"))
        own = [units(ledger[head][place]) for head in ("Contingency of first payments",
                                                       "First cost")]  # fmt: skip
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
    said = cost_of(page)
    assert "Running costs count the motor's energy only. With the house, the berth supplies" in said
    for motor in page.motors:
        wall = page.value(f"{motor}.energy_year.shore_wall_kwh")
        paid = page.value("money.electricity_money_per_kwh") * wall
        assert page.value(f"{motor}.cost.wall_yearly_kwh") == pytest.approx(wall)
        assert page.value(f"{motor}.cost.wall_bill_money") == pytest.approx(paid, rel=1e-6)
        assert page.plain(f"{motor}.cost.wall_yearly_kwh", "energy").replace("\u00a0", " ") in said


def test_a_line_that_says_survey_counts_as_one_and_what_lacks_is_told() -> None:
    page = Page(studied("ketch_34_two_motors"))
    said = cost_of(page)
    for motor in page.motors:  # "Post-construction enquiry and survey", and a panel with its line
        assert page.value(f"{motor}.cost.lacking") == ["haul-out"]
    assert "No item is listed for haul-out (Motor A, Motor B): have it quoted." in said


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
