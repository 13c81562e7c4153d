"""Which numbers of a case file can be typed a hundredfold or as a hundredth, and nobody asks?"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from unittest.mock import patch

from generator.case import open as opening
from generator.case.open import read_case
from generator.case.read import Document, read_document
from generator.case.said import path_text
from generator.errors import CaseError, Fault

NUMBER = re.compile(r"(-?[0-9]+(?:\.[0-9]+)?)(?=$|[ %/:])(.*)", re.DOTALL)
WORDS = {"name", "text", "note", "works", "reference", "client", "prepared_by", "version", "date"}

Place = tuple[str | int, ...]


def numbers(document: Document) -> Iterator[tuple[Place, Any]]:
    """Every number of the file that is not nothing: its place and the node that holds it."""
    yield from _numbers(document.root, ())


def _numbers(node: Any, place: Place) -> Iterator[tuple[Place, Any]]:
    if hasattr(node, "text"):
        found = NUMBER.fullmatch(node.text)
        if found and float(found[1]) and place[-1] not in WORDS:
            yield place, node
        return
    inner = node.nodes.items() if isinstance(node.nodes, dict) else enumerate(node.nodes)
    for key, below in inner:
        if key not in ("plus_minus", "from"):
            yield from _numbers(below, (*place, key))


def slipped(text: str, factor: float) -> str:
    """The same text with its number multiplied."""
    found = NUMBER.fullmatch(text)
    assert found
    return f"{float(found[1]) * factor:.10g}{found[2]}"


def told(document: Document, path: Path) -> set[tuple[str, str]]:
    """Places and problems of everything that is said of a file as it is."""
    with (
        patch.object(opening, "read_document", lambda _: document),
        patch.object(opening, "build_case", lambda *found: found[4]),
    ):
        try:
            found: Any = read_case(path)
        except CaseError as error:
            found = error.faults
    return {_once(fault) for fault in found}


def _once(fault: Fault) -> tuple[str, str]:
    return fault.path, fault.problem


def silent(path: Path, factor: float) -> tuple[list[str], int]:
    """The places whose slip makes nobody ask, and how many numbers there are."""
    document = read_document(path)
    before = told(document, path)
    found = []
    places = list(numbers(document))
    for place, node in places:
        as_it_was = node.text
        object.__setattr__(node, "text", slipped(as_it_was, factor))
        if not told(document, path) - before:
            found.append(path_text(place).removesuffix(".value"))
        object.__setattr__(node, "text", as_it_was)
    return found, len(places)
