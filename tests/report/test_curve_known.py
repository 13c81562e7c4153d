"""What the pages say of how the curve is known, and of what is worth measuring."""

from __future__ import annotations

import copy

import pytest

from generator.report.page import Page, Results, bare_text
from generator.report.parts import Part
from generator.report.sections import forms, known, low_speed, tornado, trips
from tests.report.conftest import studied

RATIO = {"law_over_fuel": 1.31, "law_over_fuel_share": 0.31, "apart": True}

PARTS = (forms.part, known.part, low_speed.part, tornado.part)


def text_of(part: Part | None) -> str:
    assert part is not None
    cells = [cell for table in part.tables for row in table.rows for cell in (row.head, *row.cells)]
    return " ".join(bare_text(piece) for piece in (*part.text, part.body, *cells, part.closing))


def sample() -> Results:
    return copy.deepcopy(studied("ketch_34_two_motors"))


def page(**trial: object) -> Page:
    results = sample()
    results["trial"] |= trial
    return Page(results)


def test_readings_far_apart_are_told_with_causes() -> None:
    said = text_of(known.part(page(**RATIO)))
    assert "propeller law against fuel: +31%" in said
    assert "tired engine" in said
    assert "too much pitch" in text_of(known.part(page(apart=True, law_over_fuel_share=-0.3)))
    assert "Likely" not in text_of(known.part(page(law_over_fuel_share=0.1)))


def test_wrong_turns_are_told() -> None:
    assert "check tachometer" not in text_of(known.part(page()))
    assert "check tachometer" in text_of(known.part(page(turns_wrong=True)))


def test_without_a_fit_the_reason_stands_there() -> None:
    said = text_of(known.part(page(reference_kn=None, note="1 usable rows; 2 are needed")))
    assert "1 usable rows; 2 are needed" in said


@pytest.mark.parametrize("make", PARTS)
def test_parts_are_left_out_where_the_results_lack_them(make: object) -> None:
    results = sample()
    results |= {"second_opinions": [], "form_scores": []}
    for option in results["options"]:
        option |= {"low_speed": [], "owners_readings": [], "tornado": None}
    assert callable(make)
    assert make(Page(results)) is None


def test_what_to_measure_names_input_and_way() -> None:
    said = text_of(tornado.part(page()))
    found = [option["tornado"] for option in sample()["options"] if option["tornado"]]
    rows = [row for each in found for row in each["rows"][:3]]
    assert len(rows) > 3
    for row in rows:
        assert row["what"] in said
        assert row["how"] in said


@pytest.mark.parametrize(
    ("deep", "words"), [(True, "is still right there"), (False, "the verdict is conditional")]
)
def test_depth_of_a_leg_is_told(deep: bool, words: str) -> None:
    results = sample()
    results["legs"][0] |= {
        "depth_m": 1.8,
        "depth_froude": 0.49,
        "blockage_pct": 2.0,
        "deep_enough": deep,
        "wide_enough": True,
    }
    said = text_of(trips.parts(Page(results))[1])
    assert "a depth Froude number of 0.49" in said
    assert words in said
