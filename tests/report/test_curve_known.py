"""What the pages say of how the curve is known, and of what is worth measuring."""

from __future__ import annotations

import copy

import pytest

from generator.report.page import Page, Results, bare_text
from generator.report.parts import Part
from generator.report.sections import certainty, technical, trips
from tests.report.conftest import studied

RATIO = {"law_over_fuel": 1.31, "law_over_fuel_share": 0.31, "apart": True}


def _low_speed(of: Page) -> Part | None:
    return next((part for part in technical.motion(of) if part and part.name == "low-speed"), None)


PARTS = (technical.forms, _low_speed, certainty.measuring)


def text_of(part: Part | None) -> str:
    assert part is not None
    cells = [cell for table in part.tables for row in table.rows for cell in (row.head, *row.cells)]
    pieces = (*part.text, part.body, part.closing, *cells)
    return " ".join(bare_text(piece) for piece in pieces).replace("\u00a0", " ")


def sample() -> Results:
    return copy.deepcopy(studied("ketch_34_two_motors"))


def page(**trial: object) -> Page:
    results = sample()
    results["trial"] |= trial
    return Page(results)


def curve(page: Page) -> str:
    return text_of(certainty.parts(page)[0])


def test_readings_far_apart_are_told_with_causes() -> None:
    said = curve(page(**RATIO))
    assert "The propeller law shows 31% more power than the metered fuel" in said
    assert "more than a quarter" in said
    assert "tired engine" in said
    less = curve(page(apart=True, law_over_fuel_share=-0.3))
    assert "30% less power" in less
    assert "too much pitch" in less
    assert "Likely" not in curve(page(law_over_fuel_share=0.1))


def test_wrong_turns_are_told() -> None:
    assert "check tachometer" not in curve(page())
    assert "check tachometer" in curve(page(turns_wrong=True))
    assert "3% below" in curve(page(turns_over_model_share=-0.03))
    assert "3% above" in curve(page(turns_over_model_share=0.03))


def test_without_a_fit_the_reason_stands_there() -> None:
    said = curve(page(reference_kn=None, used_rows=1))
    assert "Of the sea trial 1 of 6 runs can be used, which is too few" in said


def test_a_run_that_was_not_used_says_why() -> None:
    assert "all 6 runs were used" in curve(page())
    assert "why not" not in curve(page())
    refused = page()
    refused.results["trial"]["rows"][2] |= {"used": False, "why": "wind above 12 kn"}
    said = curve(refused)
    assert "not used: wind above 12 kn" in said
    assert "all 6 runs" not in said


def test_an_input_outside_the_measured_hulls_is_named() -> None:
    results = sample()
    names = [row["quantity"] for row in results["range_warnings"]]
    assert len(names) > 1
    said = curve(Page(results))
    listed = text_of(certainty.outside(Page(results)))
    for row in results["range_warnings"]:
        assert row["quantity"] in said
        assert row["quantity"] in listed
        assert row["words"] in listed
    results["range_warnings"] = []
    assert "outside" not in curve(Page(results))
    assert certainty.outside(Page(results)) is None


@pytest.mark.parametrize("make", PARTS)
def test_parts_are_left_out_where_the_results_lack_them(make: object) -> None:
    results = sample()
    results |= {"second_opinions": [], "form_scores": []}
    for option in results["options"]:
        option |= {"low_speed": [], "owners_readings": [], "tornado": None}
    assert callable(make)
    assert make(Page(results)) is None


def test_what_to_measure_names_input_and_way() -> None:
    """Of the motor that the advice names: the five that move its verdict most."""
    results = sample()
    advised = results["answer"]["advice"]["option"]
    said = text_of(certainty.measuring(page()))
    for option in results["options"]:
        if option["tornado"] and option["name"].startswith(advised):
            rows = [row for row in option["tornado"]["rows"] if row["how"]][:5]
            assert len(rows) == 5
            for row in rows:
                assert row["what"] in said
                assert row["how"] in said


def test_a_result_that_no_input_moves_is_a_sentence() -> None:
    results = sample()
    for option in results["options"]:
        if option["tornado"]:
            option["tornado"] |= {"best": 0.0}
            for row in option["tornado"]["rows"]:
                row |= {"at_low": 0.0, "at_high": 0.0}
    part = certainty.measuring(Page(results))
    assert part is not None
    assert part.figures == ()
    assert text_of(part).count("fails whichever input is varied") == 2
    # One motor that an input does move has the chart, the other its sentence.
    results["options"][2]["tornado"]["rows"][0]["at_high"] = 0.5
    part = certainty.measuring(Page(results))
    assert part is not None
    assert [figure.name for figure in part.figures] == ["tornado-2"]
    assert "For Motor B" in text_of(part)


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
