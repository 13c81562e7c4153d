"""Pages where a number is absent: never a dash in a sentence, and never a chart that breaks."""

from __future__ import annotations

import copy
import re
from collections.abc import Callable
from typing import Any

import pytest
from markupsafe import Markup

from generator.report.figures.cost_years import cost_years
from generator.report.figures.money_swing import money_swing
from generator.report.figures.peak_time import peak_time
from generator.report.figures.tornado import tornado
from generator.report.old_keys import new_key
from generator.report.page import Page
from generator.report.parts import Part
from generator.report.sections import (
    boat,
    certainty,
    charge,
    failing,
    money,
    schedules,
    technical,
    technical_store,
)

MOTORS = (2, 3)
SAID = re.compile(r"<p\b.*?</p>|<caption[^>]*>.*?</caption>", re.DOTALL)
NOTED = re.compile(r'<p class="note">.*?</p>', re.DOTALL)
DASH = 'class="absent"'
WHY = "in too many draws beyond"


def without(results: dict[str, Any], *keys: str) -> Page:
    """The results with nothing at those keys, of both motors where a key begins with a dot."""
    tree = copy.deepcopy(results)
    for key in keys:
        for path in [f"options.{motor}{key}" for motor in MOTORS] if key[0] == "." else [key]:
            *way, last = new_key(path).split(".")
            row: Any = tree
            for step in way:
                row = row[int(step)] if isinstance(row, list) else row[step]
            reasons = {
                f"{last}_why",
                f"{last.rpartition('_')[0]}_why",
                new_key(f"{path}_why").rpartition(".")[2],
            }
            row.update({last: None, **dict.fromkeys(reasons, WHY)})
    return Page(tree)


def parts(page: Page, made: Part | tuple[Part, ...] | None) -> list[Part]:
    return [] if made is None else [made] if isinstance(made, Part) else list(made)


def sentences(every: list[Part]) -> list[Markup]:
    """All that stands in sentences: text, findings, captions."""
    found = [Markup(text) for part in every for text in part.text]
    found += [Markup(text) for part in every for text in SAID.findall(f"{part.body}{part.closing}")]
    found += [figure.finding for part in every for figure in part.figures]
    return found + [table.caption for part in every for table in (*part.opening, *part.tables)]


SECTIONS: dict[str, tuple[Callable[[Page], Any], tuple[str, ...]]] = {
    "service factor": (
        technical.motion, ("service_factor.at_cruise",)
    ),
    "motor sailing": (technical.under_sail, (".under_sail.one_more.0.drain_w",)),
    "cruise": (technical.motion, (".cruise_shaft_high_kw",)),
    "duty": (
        technical_store.duty, (".duty.heat_cruise_w", ".duty.space_cruise_c", ".duty.before_share")
    ),
    "one string": (failing.parts, (".one_fault.distance_nm",)),
    "carbon": (money.carbon, (".carbon.saved_yearly_kg", ".carbon.payback_years")),
    "carbon in the end": (money.carbon, (".carbon.payback_high_years",)),
    "usual day": (charge.parts, (".use.berth.typical_kwh", ".use.berth.outings_low")),
    "hours to full": (charge.parts, (".use.berth.typical_hours_h",)),
    "hours from the reserve": (charge.parts, (".use.berth.worst_hours_h",)),
    "money": (
        money.parts, (".worth.extra_money", ".cost.saving.extra_first_money")
    ),
    "money against one": (money.parts, (".worth.extra_money",)),
    "money of the years": (money.parts, (".cost.cumulative.12.paid_money",)),
    "end of a swing": (
        money.parts, (".cost.swing.0.swing_money", ".cost.swing.0.at_low_money")
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", SECTIONS)
def test_no_dash_stands_in_a_sentence(results: dict[str, Any], name: str) -> None:
    made, keys = SECTIONS[name]
    whole = sentences(parts(Page(results), made(Page(results))))
    page = without(results, *keys)
    told = sentences(parts(page, made(page)))
    assert told
    assert told != whole, "the sentence does not know the number"
    assert [text for text in told if DASH in text] == []


def test_engine_and_evidence_leave_out_what_is_absent(results: dict[str, Any]) -> None:
    page = without(results, "engine.litres_per_year_l", "evidence.curve_high_pct")
    assert DASH in page.text("{engine.litres_per_year_l|fuel}")
    assert DASH not in str(boat.drive(page).body)
    said = certainty.parts(page)[0]
    assert said is not None
    assert "rests on" in said.body
    assert DASH not in said.body
    page = without(results, "engine.litres_per_hour_cruise_l")
    assert "burns" not in str(boat.drive(page).body)
    assert "add up to" in str(boat.drive(page).body)
    assert DASH not in str(boat.drive(page).body)


def test_dash_in_a_table_has_its_reason_below(results: dict[str, Any]) -> None:
    cells: dict[str, tuple[Callable[[Page], Any], str]] = {
        "load": (technical_store.duty, ".duty.speeds.0.calm.load_share"),
        "lost": (technical.under_sail, ".under_sail.rows.1.folded_lost_kn"),
        "saved": (money.carbon, ".carbon.saved_yearly_kg"),
    }
    for name, (made, key) in cells.items():
        page = without(results, key)
        every = parts(page, made(page))
        notes = [note for part in every for t in part.tables for note in t.notes]
        notes += [part.closing for part in every]
        assert any(WHY in note for note in notes), name


def test_an_end_without_a_value_is_a_word(results: dict[str, Any]) -> None:
    part = certainty.measuring(without(results, ".tornado.rows.0.at_high"))
    assert part is not None
    assert ", or none</td>" in part.closing
    assert DASH not in part.closing


def test_setting_without_a_value_has_its_reason_below(results: dict[str, Any]) -> None:
    page = without(results, "options.2.installation.settings.management.peak_warning_min")
    assert any(WHY in note for note in schedules._settings(page).notes)


def test_likely_short_circuit_stands_before_the_greatest(results: dict[str, Any]) -> None:
    """In the overview that a surveyor reads first, and in the words of the caution."""
    page = Page(results)
    (table,) = schedules.overview(page).tables
    row = next(row for row in table.rows if "likely, at most" in row.head)
    for motor, cell in zip(page.motors, row.cells, strict=True):
        fault = page.value(f"{motor}.installation.fault")
        assert fault["bank_likely_ka"] < fault["bank_greatest_ka"]
        shown = [float(value) for value in re.findall(r'value="([^"]*)"', str(cell))]
        assert shown == [fault["bank_likely_ka"], fault["bank_greatest_ka"]]
    caution = next(row for row in results["cautions"] if row["id"] == "fault")
    said = re.search(r"with ([0-9.]+) to ([0-9.]+)\u00a0kA", caution["words"])
    assert said is not None
    wanted = [round(caution[f"{name}_ka"], 1) for name in ("likely", "greatest")]
    assert [float(number) for number in said.groups()] == wanted


@pytest.mark.parametrize("year", [0, 5, 12])
def test_cost_over_years_stands_gaps(results: dict[str, Any], year: int) -> None:
    ends = [f".cost.cumulative.{year}.paid{end}_money" for end in ("_low", "", "_high")]
    assert cost_years(without(results, *ends)).svg


def test_cost_over_years_stands_an_end_of_the_band_only(results: dict[str, Any]) -> None:
    assert cost_years(without(results, ".cost.cumulative.12.paid_high_money")).svg


@pytest.mark.parametrize("end", ["low", "high"])
def test_swings_stand_an_end_without_a_value(results: dict[str, Any], end: str) -> None:
    page = without(results, f".cost.swing.1.at_{end}_money", ".cost.swing.1.swing_money")
    assert money_swing(page).svg
    assert tornado(without(results, f".tornado.rows.0.at_{end}"), "options.2", "tornado-2").svg


def test_chart_of_peak_stands_gaps(results: dict[str, Any]) -> None:
    motors = [f"options.{motor}" for motor in MOTORS]
    assert peak_time(without(results, ".duty.before_share"), motors).svg
