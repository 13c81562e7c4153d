"""Is an option that the tests study alone judged as it is beside the others?"""

from __future__ import annotations

import re
from pathlib import Path

import numpy as np
import pytest

from generator.case.open import read_case
from generator.draws import make_draws
from generator.study import OptionStudy, run
from tests.alone import alone

CASES = Path(__file__).parents[2] / "cases"
OF_OTHERS = {25, 26, 27}  # criteria that look at the diesels
OF_THE_YEAR = {12, 13}
DRAWS = 10


def rows(study: OptionStudy, without: set[int]) -> list[str]:
    """The judgements as text, to the last digit; alone an option stands at another place."""
    with np.printoptions(threshold=10**6, floatmode="unique"):
        kept = (row for row in study.verdict.judgements if row.criterion.id not in without)
        return [re.sub(r"options\.\d+", "options.here", repr(row)) for row in kept]


@pytest.mark.parametrize("name", ["sloop_30_weekend", "ketch_34_two_motors", "every_key"])
def test_an_option_alone_is_judged_as_beside_the_others(name: str) -> None:
    case = read_case(CASES / f"{name}.yaml")
    whole = run(case, make_draws(case, DRAWS))
    motors = [place for place, option in enumerate(case.options) if option.bank]
    for year, place in [(True, motors[0]), *((False, place) for place in motors)]:
        without = OF_OTHERS if year else OF_OTHERS | OF_THE_YEAR
        found = rows(alone(case, place, DRAWS, year), without)
        assert found == rows(whole.options[place], without), (place, year)
        assert len(found) >= 23
