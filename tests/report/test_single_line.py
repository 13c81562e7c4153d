"""Can the single-line diagram be read: nothing over anything else, large enough, in grey?"""

from __future__ import annotations

from itertools import combinations
from xml.etree.ElementTree import fromstring

import pytest

from generator.report.figures.single_line import LEAST, single_line
from tests.report.colour_vision import contrast
from tests.report.wirings import TAG, apart, size_of, text_boxes, wires, wiring

SIZES = [(strings, motors) for strings in range(1, 7) for motors in (1, 2)]
SMALLEST = 6.0  # pt on A4: common practice for drawings; the page's own smallest type is 6.8
PAGE = 150.0 / 25.4 * 72.0  # pt, the height that the style sheet leaves to a picture


@pytest.mark.parametrize("house_battery", [True, False])
@pytest.mark.parametrize(("strings", "motors"), SIZES)
def test_no_words_lie_over_words_or_wires_or_the_edge(
    strings: int, motors: int, house_battery: bool
) -> None:
    root = fromstring(single_line("x", wiring(strings, motors, house_battery)).svg)
    width, height = (float(part) for part in (root.get("viewBox") or "").split()[2:])
    boxes = text_boxes(root)
    assert len(boxes) > 30
    clash = [(a, b) for (a, first), (b, second) in combinations(boxes, 2)
             if not apart(first, second)]  # fmt: skip
    assert clash == []
    crossed = [text for text, box in boxes for wire in wires(root) if not apart(box, wire)]
    assert crossed == []
    every = [*boxes, *(("wire", box) for box in wires(root))]
    outside = [text for text, (left, top, right, low) in every
               if left < 0 or top < 0 or right > width or low > height]  # fmt: skip
    assert outside == []


@pytest.mark.parametrize(("strings", "motors"), SIZES)
def test_words_are_large_enough_on_paper(strings: int, motors: int) -> None:
    root = fromstring(single_line("x", wiring(strings, motors)).svg)
    width, height = (float(part) for part in (root.get("viewBox") or "").split()[2:])
    scale = min(LEAST / width, PAGE / height)
    assert min(size_of(node) for node in root.iter(f"{TAG}text")) * scale >= SMALLEST


def test_it_is_drawn_in_dark_on_white_so_that_grey_takes_nothing_away() -> None:
    root = fromstring(single_line("x", wiring(2, 1)).svg)
    inks = {node.get("stroke") for node in root.iter() if node.get("stroke")}
    inks |= {node.get("fill") for node in root.iter(f"{TAG}text")}
    assert inks
    assert all(contrast(ink) >= 7.0 for ink in inks if ink)


def test_the_measure_sees_words_over_words() -> None:
    """The measure of this file is worth nothing if it misses a clash."""
    root = fromstring(single_line("x", wiring(1, 1)).svg)
    first, second = list(root.iter(f"{TAG}text"))[:2]
    second.set("x", first.get("x") or "")
    second.set("y", first.get("y") or "")
    (_, one), (_, two) = text_boxes(root)[:2]
    assert not apart(one, two)
