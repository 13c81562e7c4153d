"""Is every variant a case that is read without a fault, and does the comparison see what moves?"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.results_file import build, to_json
from generator.study import run
from tests.corpus import trees
from tests.corpus.compare import events
from tests.corpus.leaves import Renames, differences, read_renames, same
from tests.corpus.tell import BELOW, judged, moves
from tests.corpus.variants import edited, read_plain, variants, write_variants

VARIANTS = variants()
BREAKS_DOWN = [
    pytest.param(
        name, marks=pytest.mark.xfail(raises=(ValueError, TypeError, KeyError), reason=why)
    )
    for name, why in ((variant.name, variant.crashes) for variant in VARIANTS.values())
    if why
]
RUN = ["no_prices", "no_position", "nominal_money", *BREAKS_DOWN]  # none of them has a year
NONE = Renames({})


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """All variants with the files beside them."""
    place = tmp_path_factory.mktemp("variants")
    write_variants(place)
    return place


@pytest.mark.parametrize("name", VARIANTS)
def test_variant_is_read_without_a_fault(name: str, folder: Path) -> None:
    read_case(folder / VARIANTS[name].file)


def test_no_two_variants_are_the_same_case(folder: Path) -> None:
    texts = {((folder / one.file).read_text("utf-8"), one.draws) for one in VARIANTS.values()}
    assert len(texts) == len(VARIANTS)


@pytest.mark.parametrize("name", RUN)
def test_variant_runs_to_a_tree_without_nan(name: str, folder: Path) -> None:
    case = read_case(folder / VARIANTS[name].file)
    draws = 2 if VARIANTS[name].crashes else 0
    results = build(case, run(case, make_draws(case, draws)))
    to_json(results)  # refuses NaN
    assert [option["id"] for option in results["options"]] == [one.id for one in case.options]


@pytest.mark.parametrize(
    "edits",
    [
        {"remove": ["boat.wings"]},
        {"set": {"options.z.motor.peak_power": "3 kW"}},
        {"remove": ["**.wings"]},
        {"add": {"boats": [{"name": "Another"}]}},
    ],
)
def test_edited_an_edit_that_meets_nothing_is_an_error(edits: dict[str, Any]) -> None:
    tree = read_plain("boat: {name: A}\noptions: [{id: a, name: B}]\n")
    with pytest.raises(KeyError, match="nothing stands at"):
        edited(tree, edits)


def test_edited_leaves_the_tree_as_it_was() -> None:
    tree = read_plain("legs: [{name: A, speed: 5 kn}, {name: B, speed: 4 kn}]\n")
    found = edited(tree, {"remove": ["legs.*.speed"], "set": {"legs.1.name": "C"}})
    assert found == {"legs": [{"name": "A"}, {"name": "C"}]}
    assert tree["legs"][1] == {"name": "B", "speed": "4 kn"}


@pytest.mark.parametrize(
    ("old", "new", "equal"),
    [
        (100.0, 100.0 * (1 + 1e-9), True),
        (100.0, 100.0 * (1 + 3e-9), False),
        (0.0, 5e-13, True),
        (0.0, 5e-12, False),
        (1, True, False),
        (1.0, None, False),
        (2, 2.0, True),
        ("Go", "Go", True),
        ("Go", "Go ", False),
        ([], {}, False),
    ],
)
def test_same_is_near_for_numbers_and_exact_for_all_else(old: Any, new: Any, equal: bool) -> None:
    assert same(old, new) is equal


@pytest.mark.parametrize(
    ("old", "new", "kind", "pattern"),
    [
        ({"a": [{"b": 1.0}]}, {"a": [{"b": 1.1}]}, "number", "a.*.b"),
        ({"a": [{"b": 1.0}]}, {"a": [{"b": None}]}, "number", "a.*.b"),
        ({"a": {"b": "x"}}, {"a": {"b": "y"}}, "text", "a.b"),
        ({"a": [1, 2]}, {"a": [1]}, "missing", "a.*"),
        ({"a": [1]}, {"a": [1, 2]}, "new", "a.*"),
        ({"a": 1, "b": {}}, {"a": 1}, "missing", "b"),
    ],
)
def test_differences_are_told_by_kind_and_pattern(
    old: Any, new: Any, kind: str, pattern: str
) -> None:
    _, found = differences(old, new, NONE)
    assert [(item.kind, item.pattern) for item in found] == [(kind, pattern)]


def renames(folder: Path, *rows: str) -> Renames:
    path = folder / "old_keys.csv"
    path.write_text("\n".join(["old,new,why", *rows]) + "\n", encoding="utf-8")
    return read_renames(path)


def test_renames_bring_old_and_new_key_together(tmp_path: Path) -> None:
    table = renames(tmp_path, "options.*.bank,options.*.store,", "options.*.bank.x,,never shown")
    old = {"options": [{"bank": {"kwh": 1.0, "x": 3}}, {"bank": {"kwh": 2.0, "x": 3}}]}
    new = {"options": [{"store": {"kwh": 1.0}}, {"store": {"kwh": 2.5}}]}
    equal, found = differences(old, new, table)
    assert equal == 1
    assert [(item.key, item.old, item.new) for item in found] == [("options.1.store.kwh", 2.0, 2.5)]


@pytest.mark.parametrize(
    ("row", "problem"),
    [("a.*.b,,", "dead without a reason"), ("a.*.b,a.b,", "not the same number of places")],
)
def test_read_renames_refuses_a_row_that_says_too_little(
    row: str, problem: str, tmp_path: Path
) -> None:
    with pytest.raises(ValueError, match=problem):
        renames(tmp_path, row)


def verdict_on(count: int, *rows: list[str], kind: Callable[[int], Any] = float) -> Any:
    old = {f"k{number}": kind(number) for number in range(count)}
    new = {key: value + kind(1) for key, value in old.items()}
    _, found = differences(old, new, NONE)
    return judged(moves([("sloop", item) for item in found]), rows)


def test_judged_passes_only_what_has_a_cause_and_tells_idle_rows() -> None:
    assert verdict_on(0).passed
    assert not verdict_on(2, ["k0", "item 5: draws"]).passed
    found = verdict_on(2, ["k0", "item 5: draws"], ["k1", "a fault mended"], ["k7", "item 1"])
    assert found.passed
    assert (found.beyond, found.idle) == (1, ("k7",))


def test_judged_allows_no_more_than_forty_patterns_beyond_named_items() -> None:
    def rows(count: int) -> list[list[str]]:
        return [[f"k{number}", "a fault mended"] for number in range(count)]

    assert verdict_on(40, *rows(40)).passed
    assert not verdict_on(41, *rows(41)).passed
    assert verdict_on(41, *[[f"k{number}", "item 3"] for number in range(41)]).passed


def test_judged_a_row_may_cover_all_below_a_key_and_counts_what_it_covers() -> None:
    old, new = {"a": {"b": 1, "c": 2}, "ab": 1}, {"a": {"b": 2, "c": 3}, "ab": 1}
    _, found = differences(old, new, NONE)
    verdict = judged(moves([("sloop", item) for item in found]), [["a" + BELOW, "mended"]])
    assert verdict.passed
    assert verdict.beyond == 2
    _, other = differences({"ab": 1}, {"ab": 2}, NONE)
    assert not judged(moves([("sloop", item) for item in other]), [["a" + BELOW, "mended"]]).passed


def test_module_of_takes_the_first_place_that_is_there(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(
        trees.PLACES, "run", ("generator.nowhere", "generator.cli", "generator.study")
    )
    assert trees.the("run") is run
    monkeypatch.setitem(trees.PLACES, "run", ("generator.nowhere.study",))
    with pytest.raises(SystemExit, match="add its place"):
        trees.module_of("run")


def test_events_are_what_breaks_down_unmarked_and_marks_that_are_idle() -> None:
    sound, marked = VARIANTS["sloop"], VARIANTS["doubt_of_the_breaker"]
    assert events(sound, {"tree": {}}) == []
    assert events(sound, {"crash": "KeyError: 'a'"}) == ["BROKEN sloop: KeyError: 'a'"]
    assert events(marked, {"crash": "ValueError"}) == []
    assert "breaks down no more" in events(marked, {"tree": {}})[0]
    assert events(marked, {"refused": ["is below 0"]})[0].startswith("BROKEN")
