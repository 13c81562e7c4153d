"""Sentences of templates: each number in them is that of its key, and no outcome lacks words."""

from __future__ import annotations

import csv
import itertools
import re
from dataclasses import fields
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest

from generator.analyses.money.worth import Worth
from generator.analyses.option import OptionAnswers
from generator.analyses.study_answers import StudyAnswers
from generator.analyses.verdict.criteria.must_make_leg import MustMakeLeg
from generator.case.open import read_case
from generator.draws import make_draws
from generator.records import facts_of, records_of
from generator.report import old_keys
from generator.report.csv_tables import described
from generator.report.declared import FACTS
from generator.report.numbers import Display, shown
from generator.report.page import Page
from generator.report.results_file import build, to_json
from generator.report.sections import technical_store
from generator.report.template import said
from generator.report.tree import dictionary
from generator.report.view import View
from generator.study import run
from tests.report.conftest import CASES, studied

MARKED = re.compile("\ue000([^\ue000-\ue002]*)\ue001([^\ue000-\ue002]*)\ue002")
SIGNS = re.compile("[\ue000-\uf8ff]")
BOATS = ("sloop_30_weekend", "ketch_34_two_motors", "every_key")


def strings(node: Any) -> list[str]:
    if isinstance(node, dict):
        return [text for value in node.values() for text in strings(value)]
    if isinstance(node, list):
        return [text for value in node for text in strings(value)]
    return [node] if isinstance(node, str) else []


def at(node: Any, key: str) -> Any:
    for step in key.split("."):
        node = node[int(step)] if isinstance(node, list) else node[step]
    return node


@pytest.mark.parametrize("name", BOATS)
def test_every_number_in_words_is_that_of_its_key(name: str) -> None:
    """The key at a mark is the one that the template printed; a label that parts from it shows."""
    results = marked(name)
    display = Display(results["case"]["units"], results["case"]["currency"])
    kinds = {key: kind for key, kind, _ in dictionary_with_kinds()}
    found = [match for text in strings(results) for match in MARKED.findall(text)]
    assert len(found) > 20
    for key, text in found:
        value = at(results, key)
        kind = kinds[re.sub(r"(?<!criteria)\.\d+(?=\.|$)", ".*", key)]
        dressed = {shown(value, form, display) for form in (kind, f"{kind}:bare", f"{kind}:whole")}
        assert text in {each.replace("\u2060", "") for each in dressed}, key


def dictionary_with_kinds() -> list[tuple[str, str, str]]:
    """Every declared number of the criteria that are records, by its key with stars."""
    from generator.analyses.use.leg_help import LegHelp
    from generator.records import key_of, kind_of, numbers_of

    rows: list[tuple[str, str, str]] = []

    def walk(record: Any, before: str) -> None:
        for name, number in numbers_of(record).items():
            for kept in ("bank", "tank"):
                kind = kind_of(number, kept)
                for end in ("", "low", "high"):
                    rows.append((f"{before}.{key_of(name, kind, end)}", kind, number.label))
        for name, inner in records_of(record).items():
            for each in inner:
                walk(each, f"{before}.{name}{'.*' if is_list(record, name) else ''}".strip("."))

    for number, record in FACTS.items():
        walk(record, f"options.*.verdict.criteria.{number - 1}.facts")
    walk(LegHelp, "options.*.use.failing.*")
    walk(OptionAnswers, "options.*")
    walk(StudyAnswers, "")
    return rows


def is_list(record: Any, name: str) -> bool:
    part = next(part for part in fields(record) if part.name == name)
    return str(part.type).startswith("tuple")


def facts_below(record: Any, before: str) -> set[str]:
    """Every fact of a record and of those in it, and the words that are said of them."""
    found = {f"{before}.{name}".strip(".") for name in facts_of(record)}
    if hasattr(record, "SAID_BY"):
        also = ("", *(f"_{part}" for part in getattr(record, "SAYS_ALSO", ())))
        found |= {f"{before}.words{part}".strip(".") for part in also}
    for name, inner in records_of(record).items():
        star = ".*" if is_list(record, name) else ""
        for each in inner:
            found |= facts_below(each, f"{before}.{name}{star}".strip("."))
    return found


@pytest.mark.parametrize("name", BOATS)
def test_no_private_sign_is_shipped(name: str) -> None:
    assert not SIGNS.search(to_json(studied(name)))


@pytest.mark.parametrize("name", BOATS)
def test_the_dictionary_describes_the_results(name: str) -> None:
    """Every key of a declared number that this boat can have is there."""
    options = studied(name)["options"]
    keys = {key for key, _, _ in dictionary(OptionAnswers, "options.*")}
    assert len(keys) > 150
    for option in options:
        other = "_kwh" if option["kind"] != "battery" else "_l"
        for leg in option["legs"]:
            for key in keys:
                head, _, last = key.rpartition(".")
                if head == "options.*.legs.*" and not last.endswith(other):
                    assert last in leg, key


def test_an_outcome_without_words_stops_the_run() -> None:
    node = {"outcome": "unheard of", "kept_in": "bank", "leg": None}
    view = View(node, MustMakeLeg, "here", Display("metric", "EUR"))
    with pytest.raises(Exception, match="undefined"):
        said(view)


def test_a_word_on_money_without_words_stops_the_run() -> None:
    node = {"outcome": "unheard of", "baseline": "keep", "needs": "ledger"}
    view = View(node, Worth, "here", Display("metric", "EUR"))
    with pytest.raises(Exception, match="undefined"):
        said(view, "", "worth")


def test_every_old_key_has_a_new_one_that_is_there_or_a_reason() -> None:
    with old_keys.FILE.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    keys = {key for key, _, _ in dictionary_with_kinds()} | {row["key"] for row in described()}
    facts = {"options.*.use.failing.*.words", *facts_below(OptionAnswers, "options.*")}
    facts |= facts_below(StudyAnswers, "")
    for row in rows:
        assert row["why"], row["old"]
        if row["new"] and not row["new"].endswith("_why"):
            assert row["new"] in keys | facts, row["new"]


# What the words beside a number say it is, and the number that must stand there.
SAID = (
    ("day with {} ahead", "leg.wind"), ("needs {}, at worst", "leg.need"),
    ("at worst {}", "leg.need_high"), ("{} is left above the reserve", "leg.available"),
    ("after the {} of the trip before it", "leg.before"),
    ("hold the trip in {} of all cases", "powered"), ("untouched in {} of cases", "untouched"),
    ("she gets home in {} of them", "with_reserve"),
    ("cannot be made in {} of cases", "impossible"),
    ("{} through the water in shelter", "slow_speed"),
    ("battery of {} nominal", "wanted(?:_held)?_high"),
    ("only in up to {} of head wind", "wind"),
    ("in ordinary weather {} of", "covered"), ("of the {} yearly trips", "passages"),
    ("yearly trips (cautious figure {})", "covered_low"), ("and {} of their miles", "miles"),
    (", {} when", "slower"), ("when {} slower", "by"), ("on a bad day {}", "bad_day"),
    ("{} stays in reserve", "kept"), ("the usual rule requires {}", "wanted"),
)  # fmt: skip


KEPT = Path(__file__).parents[1] / "recorded" / "cases"


@lru_cache(maxsize=6)
def marked(name: str, folder: Path = CASES) -> dict[str, Any]:
    case = read_case(folder / f"{name}.yaml")
    return build(case, run(case, make_draws(case, 20)), marked=True)


def test_words_say_what_the_number_beside_them_is() -> None:
    """Each phrase is met on some boat, and never with another number."""
    met = set()
    for name, folder in itertools.product(BOATS, (CASES, KEPT)):
        for option in marked(name, folder)["options"]:
            for row in option["verdict"]["criteria"][:3]:
                for text in (row["facts"]["words"], row["facts"]["words_mend"]):
                    for phrase, field in SAID:
                        before, _, behind = phrase.partition("{}")
                        pattern = re.escape(before) + MARKED.pattern + re.escape(behind)
                        for key, _ in re.findall(pattern, text):
                            own = key.partition(".facts.")[2]
                            assert re.fullmatch(rf"{field}(_[a-z]+)?", own), (
                                phrase,
                                key,
                            )
                            met.add(phrase)
    # No demo is held back by current alone, or carried by a larger bank or a slower speed always.
    assert len(met) >= len(SAID) - 3, [phrase for phrase, _ in SAID if phrase not in met]


@pytest.mark.parametrize("name", BOATS)
def test_words_on_the_reserve_say_what_the_number_beside_them_is(name: str) -> None:
    """From the page itself: the key in the element beside each phrase."""
    part = technical_store.bank(Page(studied(name)))
    assert part is not None
    body = str(part.body)
    said = re.sub(r'<data data-key="[^"]*\.([a-z_]+)"[^>]*>[^<]*</data>', r"{\1}", body)
    said = " ".join(re.sub(r"<[^>]+>", "", said).split())
    motors = [each for each in studied(name)["options"] if each["kind"] == "battery"]
    phrases = (
        "a reserve of {of_new_kwh} in a new battery", "and {of_aged_kwh} at the end.",
        "({share_kwh} new, {share_aged_kwh} at the end)", "where more, the {demand_kwh} that",
    )  # fmt: skip
    for phrase in phrases:
        assert said.count(phrase) == len(motors), phrase
