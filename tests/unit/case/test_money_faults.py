"""Are wrong entries of money refused or said, each with its line and what would be right?"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.unit.case.faulty import FULL, changed, lines, read

SALE = "{name: Sale of the old engine, amount: -400 GBP, when: first, from: estimate}"
MOTOR = "{name: Motor and controller, amount: 6200 GBP, when: first, from: quote}"


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        (SALE, SALE.replace("-400 GBP,", "400 GBP, part: sale,"),
         "is 400 GBP, a sale without its sign, expected -400 GBP: money that comes in is negative"),
        (MOTOR, MOTOR.replace("6200 GBP,", "6200 GBP, part: grant,"),
         "is 6200 GBP, a grant without its sign"),
        (MOTOR, MOTOR.replace("GBP", "EUR"), "expected the study's currency, GBP"),
        (MOTOR, MOTOR.replace("from: quote", "from: quote, price_year: 2031"),
         "price_year: is 2031, expected at most 2026"),
        ("  market: GB\n", "  market: GB\n  import_date: 2027-01-05\n",
         "import_date: is 2027-01-05, after the study's own date"),
    ],
)  # fmt: skip
def test_a_wrong_entry_is_refused(tmp_path: Path, old: str, new: str, words: str) -> None:
    found = lines(tmp_path, changed((old, new), text=FULL))
    assert [line for line in found if words in line], found


def test_a_credit_by_its_name_without_its_sign_is_doubted(tmp_path: Path) -> None:
    text = changed((SALE, SALE.replace("-400", "400")), text=FULL)
    found = [str(warning) for warning in read(tmp_path, text).warnings]
    assert any("reads like money that comes in" in line for line in found)


BARE = (("Engine rebuild", "Paint"), ("Second overhaul", "More paint"))
UNPRICED = "gives no price of the overhaul that a dying engine needs"


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ((), False),
        (BARE, True),
        ((*BARE, ("condition: dying", "condition: worn")), False),
        ((*BARE, ("prices:\n", "prices:\n  overhaul: 3000 GBP\n")), False),
    ],
)
def test_a_dying_engine_that_is_kept_has_its_overhaul_priced(
    tmp_path: Path, changes: tuple[tuple[str, str], ...], told: bool
) -> None:
    found = [str(warning) for warning in read(tmp_path, changed(*changes, text=FULL)).warnings]
    assert any(UNPRICED in line for line in found) is told


SOURCES = """    supply:
      panels:
        - {name: on the arch, power: 200 W}
      genset: {power: 3 kW}
"""


def test_a_source_that_no_line_prices_or_weighs_is_doubted(tmp_path: Path) -> None:
    start = FULL.index("  - id: a\n")
    place = FULL.index("    bank:\n", start)
    text = FULL[:place] + SOURCES + FULL[place:]
    found = [str(warning) for warning in read(tmp_path, text).warnings]
    for source in ("panels", "genset"):
        words = f"counts {source}, but no line of costs or added names them"
        assert [line for line in found if words in line], found
    named = text.replace("Motor and controller, amount", "Motor and solar panels, amount")
    found = [str(warning) for warning in read(tmp_path, named).warnings]
    assert any("counts panels, but no line of added names them" in line for line in found)


def test_an_option_without_a_first_price_is_told(tmp_path: Path) -> None:
    """Fitting it would else look free."""
    text = FULL.replace("when: first", "when: yearly")
    found = [str(warning) for warning in read(tmp_path, text).warnings]
    told = [line for line in found if "no word on its money" in line]
    # A new diesel, and a motor whose lines another takes over; what is aboard need not be bought.
    assert len(told) == 2
    assert all("expected a line with when: first" in line for line in told)
