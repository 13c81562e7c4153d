"""Are the drawings clean, the same every time, and true to the results?"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any
from xml.etree import ElementTree

import numpy as np
import pytest

from generator.report.canvas import drawn, placed
from generator.report.figures.look import RULES
from generator.report.numbers import Display, shown
from generator.report.render import Pages
from generator.report.typeface import FACES, FAMILY, FOLDER

if TYPE_CHECKING:
    from matplotlib.axes import Axes

SIGNS = "≤≥≈±ΩΔ²₂→−×·°–—€£½“”’\u00a0\u2009\u202f"


def test_charts_are_well_formed_and_not_empty(pages: Pages) -> None:
    assert len(pages.charts) >= 6
    for name, svg in pages.charts.items():
        root = ElementTree.fromstring(svg)
        shapes = [node for node in root.iter() if node.tag.endswith(("path", "use", "text"))]
        # The chart of page 1 has bars and words alone, no axes.
        assert len(shapes) > (12 if name == "bad-day" else 20), name


def test_names_inside_charts_do_not_collide(pages: Pages) -> None:
    names = [found for svg in pages.charts.values() for found in re.findall(r'\bid="([^"]+)"', svg)]
    assert len(names) == len(set(names))
    for name, svg in pages.charts.items():
        assert all(found.startswith(name) for found in re.findall(r"url\(#([^)]+)\)", svg))


def test_numbers_in_charts_are_those_of_the_results(results: dict[str, Any], pages: Pages) -> None:
    display, seen = Display(results["case"]["units"], results["case"]["currency"]), 0
    for svg in pages.charts.values():
        for group in ElementTree.fromstring(svg).iter():
            key = group.get("data-key")
            if key is None:
                continue
            value: Any = results
            for step in key.split("."):
                value = value[int(step)] if isinstance(value, list) else value[step]
            text = "".join(group.itertext()).strip()
            assert text == shown(value, group.get("data-form") or "", display), key
            seen += 1
    assert seen >= 12


def test_charts_are_set_in_the_bundled_typeface(pages: Pages) -> None:
    for svg in pages.charts.values():
        assert FAMILY in svg
        assert "DejaVu" not in svg


def test_charts_hold_no_date_and_no_maker(pages: Pages) -> None:
    for svg in pages.charts.values():
        assert "<metadata" not in svg
        assert "Matplotlib" not in svg


def test_typeface_has_every_sign_of_the_trade_and_even_digits() -> None:
    from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

    for name, _, _ in FACES:
        font = TTFont(FOLDER / f"{name}.ttf")
        glyphs = font.getBestCmap()
        assert [sign for sign in SIGNS if ord(sign) not in glyphs] == []
        assert font["name"].getDebugName(1) == FAMILY
        if name != "italic":  # numbers are never set in italics
            assert len({font["hmtx"][glyphs[ord(digit)]][0] for digit in "0123456789"}) == 1


def test_typeface_travels_with_its_licence() -> None:
    text = (FOLDER / "OFL.txt").read_text(encoding="utf-8")
    assert "SIL OPEN FONT LICENSE Version 1.1" in text
    assert "Reserved Font Name" in text


def test_dots_of_a_hatch_are_the_discs_of_the_library_at_its_places() -> None:
    """Set as round ends of strokes: as wide as the disc with its rim, and where it stood."""
    from matplotlib.hatch import get_path
    from matplotlib.path import Path as Outline

    svg = drawn("x", 1.0, lambda figure: _dotted(placed(figure, 0.0, 0.0, 1.0, 1.0))).svg
    found = re.search(r'<pattern.*?<path d="([^"]*)".*?stroke-width="([\d.]+)" (.*?)/>', svg, re.S)
    assert found
    path, width, rest = found.groups()
    assert "round" in rest
    dots = [(float(x), float(y)) for x, y in re.findall(r"M (\S+) (\S+) h 0.01", path)]
    hatch = get_path("..", 6)
    vertices, codes = np.asarray(hatch.vertices), np.asarray(hatch.codes)
    discs = np.split(vertices, np.flatnonzero(codes == Outline.MOVETO)[1:])
    centres = [disc[:-1].min(axis=0) / 2 + disc[:-1].max(axis=0) / 2 for disc in discs]
    assert dots == [pytest.approx((72 * x, 72 * (1 - y)), abs=1e-3) for x, y in centres]
    radius = float(np.ptp(discs[0][:-1, 0])) / 2 * 72
    assert float(width) == pytest.approx(
        2 * radius + float(str(RULES["hatch.linewidth"])), rel=1e-3
    )


def _dotted(axes: Axes) -> None:
    axes.bar(0, 1, hatch="..", color="white", edgecolor="black")
