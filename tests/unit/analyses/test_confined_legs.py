"""Does a shallow or narrow leg bar a plain go on the deep-water curve, and say why?"""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.analyses.verdict.criteria.criterion import CONDITIONAL, GO, Judgement
from generator.case.case import Case
from generator.study import OptionStudy
from tests.alone import alone, case_of
from tests.unit.case.faulty import ROOT, changed, lines

SLOOP = (ROOT / "cases" / "sloop_30_weekend.yaml").read_text(encoding="utf-8")
LEG = "    distance: 9 nm\n    times_per_year: 4\n    speed: 4.5 kn\n"
EVIDENCE = 28


def studied(water: str) -> tuple[Case, OptionStudy]:
    """The battery option with its year, so that all that decides is judged."""
    case = case_of(changed((LEG, LEG.replace("speed: 4.5 kn\n", water)), text=SLOOP))
    return case, alone(case, 2, 0, year=True)


def evidence(study: OptionStudy) -> Judgement:
    return next(row for row in study.verdict.judgements if row.criterion.id == EVIDENCE)


@pytest.mark.parametrize(
    ("water", "result"),
    [
        ("speed: 4.5 kn\n", GO),
        ("speed: 4.0 kn\n    depth: 1.8 m\n", GO),  # depth Froude number 0.4897
        ("speed: 4.2 kn\n    depth: 1.8 m\n", CONDITIONAL),  # 0.514
        ("speed: 4.0 kn\n    depth: 2.5 m\n    width: 60 m\n", GO),
        ("speed: 4.0 kn\n    depth: 2.5 m\n    width: 9 m\n", CONDITIONAL),
    ],
)
def test_shallow_or_narrow_water_bars_go(water: str, result: str) -> None:
    _, study = studied(water)
    assert evidence(study).result == result
    assert (study.verdict.word == "Suitable") == (result == GO)


def test_reason_names_the_leg_and_a_speed_that_would_do() -> None:
    case, study = studied("speed: 4.2 kn\n    depth: 1.8 m\n")
    row = evidence(study)
    assert row.facts.leg == case.legs[2].name
    assert row.facts.shallow
    assert not row.facts.narrow
    # 0.5 (9.81 x 1.8)^(1/2) = 2.1011 m/s = 4.084 kn
    assert row.facts.fastest == pytest.approx(2.1011, abs=0.001)


@pytest.mark.parametrize(
    ("water", "message"),
    [
        ("speed: 4 kn\n    depth: 1.4 m\n", "depth: is 1.4 m, and she draws 1.45 m"),
        ("speed: 4 kn\n    depth: 3 m\n    width: 3 m\n", "width: is 3 m, and she is 3.02 m wide"),
        ("speed: 4 kn\n    width: 20 m\n", "legs[2].depth: is missing"),
    ],
)
def test_impossible_water_is_a_fault(tmp_path: Path, water: str, message: str) -> None:
    found = lines(tmp_path, changed((LEG, LEG.replace("speed: 4.5 kn\n", water)), text=SLOOP))
    assert len(found) == 1
    assert message in found[0]
