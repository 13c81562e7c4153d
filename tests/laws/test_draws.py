"""Common draws: nothing that is added to a file, or to the register, moves another number.

Whole results trees are compared, at enough draws that every percentile would show another stream.
"""

from __future__ import annotations

import copy
import re
from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest

from generator.case import register
from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.results_file import build
from generator.study import run
from tests.corpus.leaves import Difference, Renames, differences
from tests.corpus.variants import KEPT, edited, read_plain, spelled

DRAWS = 60
NEW = "brand-new"  # what is added is called so, and whatever bears that name belongs to it
NEW_LEG = {
    # Made not once a year, easy and not needed: it takes no hour, no cycle and no word from others.
    "name": NEW,
    "distance": "1 nm",
    "times_per_year": "0",
    "speed": "4 kn",
    "exposed_distance": "0 nm",
    "foul_stream": "0 kn",
    "refuge": "true",
    "sailable": "true",
}
PLACE = re.compile(r"\b(options|legs)[.\[](\d+)\]?")
LINE = re.compile(r"^\S+:\d+: ")
# Lines of the file, its fingerprint, how many inputs there are, and tables that name every option.
LEFT_OUT = ("line", "sha256", "input_count", "comparison")
CALLED = (("path", "when"), ("path",), ("id",), ("name",))  # what may tell items of a list apart


@lru_cache
def boat() -> Any:
    """Two motors of which one inherits from the other, a doubt on every number, and no year."""
    gone = ["waters.latitude", "waters.longitude", "berth.breaker", "options.new"]
    kept = read_plain((KEPT / "ketch_34_two_motors.yaml").read_text(encoding="utf-8"))
    return edited(kept, {"remove": gone, "doubt": "3 %"})


def results(text: str) -> Any:
    """The tree of a case file with every item of a list called by its name, not its place."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / "boat.yaml"
        path.write_text(text, encoding="utf-8")
        case = read_case(path)
    tree = build(case, run(case, make_draws(case, DRAWS)))
    names = {
        "options": [option["id"] for option in tree["options"]],
        "legs": [leg["name"] for leg in tree["legs"]],
    }
    return by_name(tree, names)


@lru_cache
def before() -> Any:
    return results(spelled(boat()))


def by_name(node: Any, names: dict[str, list[str]], key: str = "") -> Any:
    if isinstance(node, dict):
        return {k: by_name(value, names, k) for k, value in node.items() if k not in LEFT_OUT}
    if isinstance(node, list) and key == "warnings":
        return {LINE.sub("", by_name(text, names)): True for text in node}
    if isinstance(node, list):
        return called([by_name(item, names) for item in node])
    if isinstance(node, str) and ("options" in node or "legs" in node):
        return PLACE.sub(lambda found: f"{found[1]}<{names[found[1]][int(found[2])]}>", node)
    if isinstance(node, int) and (key == "leg" or key.endswith("_leg")):
        return names["legs"][node]
    return node


def called(items: list[Any]) -> Any:
    """The items by what tells them apart; as they were where nothing does."""
    for keys in CALLED:
        if all(isinstance(item, dict) and set(keys) <= set(item) for item in items):
            named = {" ".join(str(item[key]) for key in keys): item for item in items}
            if len(named) == len(items):
                return named
    return items


def moved(text: str) -> list[Difference]:
    """What is not as before, but for what belongs to the new thing."""
    now = results(text)
    if now == before():
        return []
    _, found = differences(before(), now, Renames({}))
    return [item for item in found if NEW not in item.key]


def test_remarks_move_no_number() -> None:
    remarks = "".join(f"# remark {number}\n" for number in range(40))
    assert moved(remarks + spelled(boat())) == []


def test_order_of_keys_moves_no_number() -> None:
    turned = reversed_keys(boat())
    assert list(turned) == list(boat())[::-1]
    assert moved(spelled(turned)) == []


def reversed_keys(node: Any) -> Any:
    if isinstance(node, dict):
        return {key: reversed_keys(node[key]) for key in reversed(node)}
    return [reversed_keys(item) for item in node] if isinstance(node, list) else node


@lru_cache
def moved_by_options() -> list[Difference]:
    """Two more motors, one before the other options and one behind them."""
    tree = copy.deepcopy(boat())
    other = {**tree["options"][1], "id": NEW, "name": "Another motor"}
    other["motor"] = {**other["motor"], "rated_speed": "1300 rpm"}
    tree["options"] = [other, *tree["options"], {**other, "id": f"{NEW}-too"}]
    return moved(spelled(tree))


def test_options_before_and_behind_the_others_move_no_number() -> None:
    assert moved_by_options() == []


def test_legs_before_and_behind_the_others_move_no_number() -> None:
    tree = copy.deepcopy(boat())
    tree["legs"] = [NEW_LEG, *tree["legs"], {**NEW_LEG, "name": f"{NEW} too"}]
    assert moved(spelled(tree)) == []


@pytest.fixture
def new_row(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    """A row more in the register, of an uncertain number."""
    before()  # by the register as it is
    rows = register.read_register()
    like = replace(rows["prices.horizon"][0], unit="EUR", shape="triangular", meaning=NEW)
    row = replace(like, key=request.param, value=9000.0, low=5000.0, high=20000.0)
    monkeypatch.setattr(register, "read_register", lambda: {**rows, row.key: (row,)})
    assert register.find_default(row.key, ()) is row
    return row.key


@pytest.mark.parametrize("new_row", ["boat.hull.wings"], indirect=True)
def test_register_row_that_nothing_asks_for_moves_no_number(new_row: str) -> None:
    assert moved(spelled(boat())) == []


@pytest.mark.parametrize("new_row", ["boat.worth"], indirect=True)
def test_register_row_of_a_new_key_moves_only_what_it_answers(new_row: str) -> None:
    found = {item.key for item in moved(spelled(boat()))}
    its_own = re.compile(
        rf"assumptions\.{re.escape(new_row)} .*"
        r"|options\.\w+\.worth\.(boat|share|over_half|words_warning).*"
        r"|options\.\w+\.verdict\.(criteria\.26\..*|assessed|judged|open|words|some_open)"
    )
    assert [key for key in found if not its_own.fullmatch(key)] == []
    assert "options.a.verdict.criteria.26.pessimistic" in found
