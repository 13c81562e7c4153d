"""By what name is an uncertain number drawn, so that nothing beside it moves its draws?

The name is the number's path in the case with each item of a list called by its own name: neither
a line of the file nor the place of an item among its neighbours is part of it.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping

from generator.case.key_kinds import Group

PLACE = re.compile(r"\[(\d+)\]")


def item_names(keys: Group, path: str = "") -> dict[str, str]:
    """Every list item with an ``id`` or a ``name``: its path by place, and what it is called.

    Of several items of one name the later ones bear their number among them.
    """
    return dict(_item_names(keys, path))


def _item_names(keys: Group, path: str) -> Iterator[tuple[str, str]]:
    for field in type(keys).model_fields:
        value, below = getattr(keys, field), f"{path}.{field}".removeprefix(".")
        if isinstance(value, Group):
            yield from _item_names(value, below)
        if not isinstance(value, tuple):
            continue
        seen: Counter[str] = Counter()
        for place, item in enumerate(value):
            if not isinstance(item, Group):
                continue
            at = f"{below}[{place}]"
            name = getattr(item, "id", None) or getattr(item, "name", None)
            if name:
                seen[name] += 1
                yield at, name if seen[name] == 1 else f"{name} #{seen[name]}"
            yield from _item_names(item, at)


def stream_name(path: str, names: Mapping[str, str]) -> str:
    """A path of the frozen case with its items called by name: ``options[a].bank.charge``."""

    def called(place: re.Match[str]) -> str:
        return f"[{names.get(path[: place.end()], place[1])}]"

    return PLACE.sub(called, path)
