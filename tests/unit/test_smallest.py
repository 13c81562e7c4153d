"""The search for the smallest bank ends with an answer or a reason, never in the air."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from generator import search
from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.template import reason
from generator.search import smallest
from generator.study import run

CASES = Path(__file__).parents[2] / "cases"


@pytest.mark.parametrize("ratio", ["1.16", "1.3"])
def test_a_motor_at_the_edge_of_holding_a_leg_has_an_answer(ratio: str, tmp_path: Path) -> None:
    """About one draw in ten does not hold the leg: few draws and many may disagree on it."""
    text = (CASES / "ketch_34_two_motors.yaml").read_text(encoding="utf-8")
    first, rest = text.split("gear_ratio: 1\n", 1)
    path = tmp_path / "ketch.yaml"
    path.write_text(f"{first}gear_ratio: {ratio}\n{rest}", encoding="utf-8")
    case = read_case(path)
    for found in smallest(case, run(case, make_draws(case, 300))):
        assert (found.bank is None) == bool(found.absent["bank"])
        assert found.bank is None or 5.0 < found.bank / 3.6e6 < 200.0


def test_few_draws_that_find_no_bank_end_the_search(monkeypatch: pytest.MonkeyPatch) -> None:
    """The many draws of the study may find a bank where the few of the search do not."""
    case = read_case(CASES / "sloop_30_weekend.yaml")
    study = run(case, make_draws(case, 50))
    monkeypatch.setattr(search, "_asked", lambda *_: np.inf)
    (found,) = search.smallest(case, study)
    assert found.bank is None
    assert reason(found.absent["bank"]).startswith("no bank does it")
    assert not found.enough
