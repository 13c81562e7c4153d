"""What does an owner's case file look like once he has typed a set of changes into it?"""

from __future__ import annotations

import copy
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from generator.answer.remedy import Typed
from tests.corpus.variants import Tree, read_plain, spelled

LISTS = ("added", "removed", "costs")  # an option says a list whole or takes its parent's


def typed_into(tree: Tree, changes: Iterable[Typed]) -> Tree:
    """A copy of a file's sections with each key typed; one that is taken out may not be there."""
    tree = copy.deepcopy(tree)
    for change in changes:
        if change.path[0] == "options" and len(change.path) > 2:
            _own_list(tree, int(change.path[1]), str(change.path[2]))
        _put(tree, change)
    return tree


def write_typed(source: Path, changes: Iterable[Typed], name: str) -> Path:
    """The changed file, beside the one that it was made from, for it may name files there."""
    tree = typed_into(read_plain(source.read_text(encoding="utf-8")), changes)
    path = source.with_name(f"{name}.yaml")
    path.write_text(spelled(tree), encoding="utf-8")
    return path


def _put(tree: Tree, change: Typed) -> None:
    *way, last = change.path
    for step in way:
        tree = tree.setdefault(step, {}) if isinstance(tree, dict) else tree[step]
    if change.text is None:
        tree.pop(last, None)
    else:
        tree[last] = change.text


def _own_list(tree: Tree, place: int, key: str) -> None:
    """A list of the option's own where it has its parent's."""
    options: list[dict[str, Any]] = tree["options"]
    holder = options[place]
    while key in LISTS and key not in holder and "from" in holder:
        holder = next(each for each in options if each["id"] == holder["from"])
    if key in LISTS and key in holder:
        options[place].setdefault(key, copy.deepcopy(holder[key]))
