"""Which case files are the variants, made from the kept cases by the edits of variants.yaml?"""

from __future__ import annotations

import copy
import re
import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from tests.unit.case.weather_text import energyplus

KEPT = Path(__file__).parents[1] / "recorded" / "cases"
LIST = Path(__file__).with_name("variants.yaml")
EDITS = ("remove", "set", "add", "replace", "doubt")
KEYS = {"of", "draws", "crashes", *EDITS}
AMOUNT = re.compile(r"-?[0-9][0-9.]* \S.*")  # a number and its unit
BESIDE = ("mass", "amount")  # their doubt stands beside them, in the item of the list
EXACT = ("horizon", "year", "life")  # whole years, or no length of time that anyone measures
ANY_DEPTH = "**"
MANY = 40  # legs

Tree = Any  # sections, lists and texts as they stand in the file


@dataclass(frozen=True)
class Variant:
    """One case file: its kept case, how many draws, and why it breaks down, if it does."""

    name: str
    of: str
    edits: dict[str, Any]
    draws: int | None
    crashes: str

    @property
    def file(self) -> str:
        """Its name in the folder of all variants."""
        return f"{self.name}.yaml"

    def text(self) -> str:
        """The case file, plainly spelled; the kept case's own words where nothing is edited."""
        kept = (KEPT / f"{self.of}.yaml").read_text(encoding="utf-8")
        return spelled(edited(read_plain(kept), self.edits)) if self.edits else kept


class _Dumper(yaml.CSafeDumper):
    """Writes an item that stands twice twice, for a case file holds no aliases."""

    def ignore_aliases(self, data: Any) -> bool:
        return True


def variants() -> dict[str, Variant]:
    """All of them by name, in the order of the list."""
    listed = read_plain(LIST.read_text(encoding="utf-8"))
    return {name: _variant(name, said) for name, said in listed.items()}


def write_variants(folder: Path) -> None:
    """Every variant and all files that one of them names, side by side."""
    for path in KEPT.iterdir():
        if path.suffix != ".yaml":
            shutil.copy(path, folder)
    (folder / "typical.epw").write_text(energyplus(), encoding="utf-8")
    (folder / "many_legs.csv").write_text(many_legs(), encoding="utf-8")
    for variant in variants().values():
        (folder / variant.file).write_text(variant.text(), encoding="utf-8")


def many_legs() -> str:
    """A list of legs as a spreadsheet saves it."""
    rows = ["name,distance [nm],times_per_year,speed [kn],foul_stream [kn],refuge,sailable"]
    for number in range(MANY):
        distance, speed = 2 + number % 7, 4.2 + 0.1 * (number % 6)
        refuge, sailable = str(number % 2 == 0).lower(), str(number % 5 > 0).lower()
        rows.append(f"Log {number + 1},{distance},1,{speed:.1f},0.{number % 4},{refuge},{sailable}")
    return "\n".join(rows) + "\n"


def read_plain(text: str) -> Tree:
    """A file as sections, lists and texts, no text taken for a number or a truth value."""
    return yaml.load(text, yaml.CBaseLoader)


def spelled(tree: Tree) -> str:
    """The file of a tree."""
    dumper: Any = _Dumper
    return yaml.dump(tree, Dumper=dumper, sort_keys=False, allow_unicode=True, width=1_000)


def edited(tree: Tree, edits: dict[str, Any]) -> Tree:
    """A copy with every edit made; an edit that meets nothing is an error."""
    tree = copy.deepcopy(tree)
    for path in edits.get("remove", ()):
        for above, step in reversed(_met(tree, path)):
            del above[step]
    for path, value in edits.get("set", {}).items():
        for above, step in _met(tree, path, new=True):
            above[step] = copy.deepcopy(value)
    for path, items in edits.get("add", {}).items():
        for above, step in _met(tree, path):
            above[step].extend(copy.deepcopy(items))
    for old, new in edits.get("replace", {}).items():
        tree = _replaced(tree, old, new)
    return _doubted(tree, edits["doubt"]) if "doubt" in edits else tree


def _variant(name: str, said: dict[str, Any]) -> Variant:
    unknown = set(said) - KEYS
    if unknown:
        raise KeyError(f"{LIST.name}: {name}: no such edit: {', '.join(sorted(unknown))}")
    draws = int(said["draws"]) if "draws" in said else None
    edits = {key: said[key] for key in EDITS if key in said}
    return Variant(name, said["of"], edits, draws, said.get("crashes", ""))


def _met(tree: Tree, path: str, new: bool = False) -> list[tuple[Tree, Any]]:
    """Every place that a path names, as what holds it and its key there."""
    steps = path.split(".")
    places = list(_anywhere(tree, steps[1]) if steps[0] == ANY_DEPTH else _places(tree, steps, new))
    if not places:
        raise KeyError(f"{LIST.name}: nothing stands at {path}")
    return places


def _places(tree: Tree, steps: list[str], new: bool) -> Iterator[tuple[Tree, Any]]:
    """Sections on the way to a new key are made; of a list only items that are there are met."""
    step, below = steps[0], steps[1:]
    if isinstance(tree, list):
        keys: list[Any] = [n for n, item in enumerate(tree) if _is(item, n, step)]
    elif isinstance(tree, dict):
        if new and step not in tree:
            tree[step] = {}
        keys = [step] if step in tree else []
    else:
        keys = []
    for key in keys:
        if below:
            yield from _places(tree[key], below, new)
        else:
            yield tree, key


def _is(item: Tree, place: int, step: str) -> bool:
    named = isinstance(item, dict) and item.get("id") == step
    return named or step in ("*", str(place))


def _anywhere(tree: Tree, key: str) -> Iterator[tuple[Tree, Any]]:
    if isinstance(tree, dict) and key in tree:
        yield tree, key
    for below in _below(tree):
        yield from _anywhere(below, key)


def _below(tree: Tree) -> list[Tree]:
    if isinstance(tree, dict):
        return list(tree.values())
    return tree if isinstance(tree, list) else []


def _replaced(tree: Tree, old: str, new: str) -> Tree:
    if isinstance(tree, dict):
        return {key: _replaced(value, old, new) for key, value in tree.items()}
    if isinstance(tree, list):
        return [_replaced(item, old, new) for item in tree]
    return tree.replace(old, new)


def _doubted(tree: Tree, doubt: str) -> Tree:
    """Every number with a unit gets the doubt, where it has none."""
    if isinstance(tree, list):
        return [_doubted(item, doubt) for item in tree]
    if not isinstance(tree, dict):
        return tree
    if "value" in tree or any(key in tree for key in BESIDE):
        return {"plus_minus": doubt, **tree}
    return {key: _with_doubt(key, value, doubt) for key, value in tree.items()}


def _with_doubt(key: str, value: Tree, doubt: str) -> Tree:
    plain = isinstance(value, str) and AMOUNT.fullmatch(value) and key not in EXACT
    return {"value": value, "plus_minus": doubt} if plain else _doubted(value, doubt)
