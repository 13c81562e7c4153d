"""Is it said how long a word holds, without promising more years than were looked at?"""

from __future__ import annotations

from generator.answer.until import Until
from generator.report.numbers import Display
from generator.report.tree import Telling, tree

SAID = Telling(Display("metric", "EUR"))


def said(found: Until) -> str:
    return str(tree(found, "here", SAID)["words"]).replace("\u00a0", " ")


def test_a_word_that_holds_through_the_horizon_promises_no_year_beyond_it() -> None:
    words = said(Until(for_good=True, ends="", at=5.0, year=12.0))
    assert "to the end of the 12 years looked at, if the battery lasts that long" in words
    assert "at least" not in words


def test_a_word_that_ends_names_its_last_year_and_the_row_that_ends_it() -> None:
    words = said(Until(for_good=False, ends="Reserve", at=5.0, year=8.0))
    assert "holds until it is 8 years old; after that it fails on “Reserve”" in words
