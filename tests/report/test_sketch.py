"""Does a chart that is only written down say what the drawn one says?"""

from __future__ import annotations

import re
from collections import Counter

import pytest
from markupsafe import Markup

from generator.report.render import Pages, make_pages
from tests.report.conftest import KETCH, studied

TEXT = re.compile(r"<text[^>]*>([^<]*)</text>")
NUMBER = re.compile(r'<text (data-key="[^"]*" data-form="[^"]*")[^>]*>([^<]*)</text>')
SCALE = re.compile(r"[+\u2212]?[\d,.]+")  # a mark of a scale or of a level line


def words(svg: str) -> Counter[str]:
    return Counter(Markup(text).unescape() for text in TEXT.findall(svg))


def test_a_sketch_has_the_words_and_numbers_of_the_chart(
    pages: Pages, request: pytest.FixtureRequest
) -> None:
    """All of them and no others; the chart has besides the marks of its scales."""
    request.getfixturevalue("sketched")  # after the pages, which all tests share
    sketches = make_pages(studied(KETCH)).charts
    assert list(sketches) == list(pages.charts)
    for name, svg in pages.charts.items():
        drawn, sketched = words(svg), words(sketches[name])
        assert sketched - drawn == Counter(), name
        assert [word for word in drawn - sketched if not SCALE.fullmatch(word)] == [], name
        assert Counter(NUMBER.findall(svg)) - Counter(NUMBER.findall(sketches[name])) == Counter()
