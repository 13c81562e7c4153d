"""What does an owner's case file look like once he has typed a set of changes into it?"""

from __future__ import annotations

import copy
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from generator.answer.remedy import Typed
from tests.corpus.variants import Tree, read_plain, spelled


def typed_into(tree: Tree, changes: Iterable[Typed]) -> Tree:
    """A copy of a file's sections with each key typed; one that is taken out may not be there."""
    tree = copy.deepcopy(tree)
    for change in changes:
        _put(tree, change)
    return tree


def write_typed(source: Path, changes: Iterable[Typed], name: str) -> Path:
    """The changed file, beside the one that it was made from, for it may name files there."""
    tree = typed_into(read_plain(source.read_text(encoding="utf-8")), changes)
    path = source.with_name(f"{name}.yaml")
    path.write_text(spelled(tree), encoding="utf-8")
    return path


def _put(tree: Tree, change: Typed) -> None:
    """Sections and items on the way are made; a list that is inherited becomes the option's own."""
    *way, last = change.path
    above = tree
    for depth, step in enumerate(way):
        above = _below(
            tree, above, change.path[: depth + 1], isinstance(change.path[depth + 1], int)
        )
        assert above is not None, (change, step)
    if change.text is None:
        above.pop(last, None)
    else:
        above[last] = change.text


def _below(tree: Tree, above: Tree, path: tuple[str | int, ...], a_list: bool) -> Tree:
    """What stands at the end of a path, below what stands before it."""
    step = path[-1]
    if isinstance(above, list):
        if isinstance(step, str):
            return next(each for each in above if each.get("name") == step)
        if step == len(above):
            above.append({})
        return above[step]
    if step not in above:
        inherited = _inherited(tree, path)
        listed = a_list or isinstance(inherited, list)
        above[step] = copy.deepcopy(inherited or []) if listed else {}
    return above[step]


def _inherited(tree: Tree, path: tuple[str | int, ...]) -> Any:
    """What an option would take over there: only a list is taken over whole."""
    options: list[dict[str, Any]] = tree["options"] if path[0] == "options" else []
    if len(path) < 3:
        return None
    holder = options[int(path[1])] if options else {}
    while "from" in holder:
        holder = next(each for each in options if each["id"] == holder["from"])
        found: Any = holder
        for step in path[2:]:
            found = found.get(step) if isinstance(found, dict) else None
        if found is not None:
            return found
    return None
