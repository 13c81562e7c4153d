"""With no price there is no word on money, and the page says which price is missing."""

from __future__ import annotations

import re
from functools import lru_cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from markupsafe import Markup

from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.page import Page, bare_text
from generator.report.results_file import build
from generator.report.sections import money
from generator.study import run
from tests.report.conftest import CASES
from tests.report.front_text import front_html, front_words

SLOOP = "sloop_30_weekend"
KEEP, NEW, MOTOR = 0, 1, 2
OF_ONE = {"motor": "a", "new diesel": "new"}  # id of the option that loses its prices


@lru_cache(maxsize=4)
def without(*ids: str) -> dict[str, Any]:
    """The sloop, the options of those ids without a line of costs."""
    text = (CASES / f"{SLOOP}.yaml").read_text(encoding="utf-8")
    for name in ids:
        text, count = re.subn(
            rf"(  - id: {name}\n(?:    .*\n)*?)    costs:\n(?:      - .*\n)+", r"\1", text
        )
        assert count == 1
    assert text.count("  condition: dying\n") == 1
    # No price of an overhaul but that of the ledger.
    text = re.sub(r"  overhaul: .*\n", "", text, count=1)
    with TemporaryDirectory() as folder:
        path = Path(folder) / f"{SLOOP}.yaml"
        path.write_text(text, encoding="utf-8")
        case = read_case(path)
    return build(case, run(case, make_draws(case, 20)))


@pytest.mark.parametrize("ids", [("a",), ("keep",), ("a", "keep")])
def test_the_sentence_on_money_names_the_price_that_is_missing(ids: tuple[str, ...]) -> None:
    page = Page(without(*ids))
    words = page.value("options.2.worth.words")
    assert words.startswith("there is no answer on money, because no price is given for ")
    assert ("fitting it" in words) == ("a" in ids)
    assert ("the overhaul that the dying engine needs" in words) == ("keep" in ids)
    assert f"Electric, 10 kW: {words}." in front_words(page)


def test_nothing_is_held_against_what_has_no_price() -> None:
    options = without("a")["options"]
    for option in options:
        own = option["cost"]
        assert (own["first_money"] is None) == (option["id"] == "a")
        assert (own["present_value_money"] is None) == (option["id"] == "a")
    motor = options[MOTOR]["cost"]
    assert (motor["saving"], motor["maps"], motor["cumulative"]) == (None, None, [])
    assert motor["against_keep_money"] is None
    assert motor["energy_yearly_money"] > 0.0  # what is known is told
    assert options[NEW]["cost"]["against_keep_money"] is not None
    rows = {row["id"]: row for row in options[MOTOR]["verdict"]["criteria"]}
    assert rows[25]["result"] == rows[26]["result"] == "not assessed"


def test_a_priced_motor_is_not_held_against_a_diesel_without_a_price() -> None:
    motor = without("new")["options"][MOTOR]["cost"]
    assert motor["first_money"] > 0.0
    assert motor["against_new_diesel_money"] is None
    assert motor["against_keep_money"] is not None
    held = without("keep")["options"]
    assert held[MOTOR]["cost"]["saving"] is None  # hers is dying, and no overhaul has a price
    assert held[MOTOR]["cost"]["against_keep_money"] is None
    assert held[MOTOR]["cost"]["against_new_diesel_money"] is not None
    assert held[KEEP]["cost"]["present_value_money"] is None


def test_the_page_shows_no_price_of_nought() -> None:
    page = Page(without("a", "new"))
    said = " ".join(bare_text(money.parts(page)[0].body).split())
    words = page.value("options.2.worth.words")
    assert "no price is given for fitting it" in words
    assert f"For the motor {words}." in said
    _, _, row = front_html(page).partition("Price, fitted</th>")
    motor, keep, new = (
        Markup(cell).striptags() for cell in row.partition("</tr>")[0].split("</td>")[:3]
    )
    assert (motor, new) == ("no price", "no price")
    assert keep.startswith("£")
