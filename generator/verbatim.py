"""How does a text pass as it is where a brace would open a place for a number?

Sentences that still stand in Python mark places for numbers by braces. What an owner typed, and
what a template has said already, may hold braces too: there they stand as a private sign until
the text is shown or written.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence
from functools import cache
from typing import Any

BRACE, SIGN = "{", "\ue00f"


def guarded(text: str) -> str:
    """The text with its braces hidden."""
    return text.replace(BRACE, SIGN)


def as_typed(text: str) -> str:
    """The text with its braces back."""
    return text.replace(SIGN, BRACE)


def braced(item: Any) -> set[str]:
    """Every text with a brace in it of a frozen case, as its owner typed it."""
    return {text for text in _texts(item) if BRACE in text}


def kept_apart(node: Any, typed: Sequence[str]) -> Any:
    """The tree with every text of the owner guarded, by itself and inside of sentences."""
    if not typed:
        return node
    if isinstance(node, dict):
        return {key: kept_apart(value, typed) for key, value in node.items()}
    if isinstance(node, list):
        return [kept_apart(value, typed) for value in node]
    if isinstance(node, str):
        for text in typed:
            node = node.replace(text, guarded(text))
    return node


def _texts(item: Any) -> Iterator[str]:
    if isinstance(item, str):
        yield item
    elif isinstance(item, tuple):
        for each in item:
            yield from _texts(each)
    else:
        kind: type = type(item)
        for name in _parts(kind):
            yield from _texts(getattr(item, name))


@cache
def _parts(kind: type) -> tuple[str, ...]:
    """Names of the fields of a dataclass; none of anything else."""
    every = dataclasses.fields(kind) if dataclasses.is_dataclass(kind) else ()
    return tuple(part.name for part in every)
