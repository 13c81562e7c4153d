"""Odd but allowed boats: the study answers, every page is made, nothing warns.

A boat has one oddity, or a few that meet in no part of the study. Charts are set where an oddity
changes what they draw or the scale of it. Where it only leaves out a line, a table or a whole chart
(``PLAIN``), they are written down and not set (tests/sketch.py).
"""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.render import Made, make_pages
from generator.report.results_file import build, to_json
from generator.sensitivity import tornadoes
from generator.study import run

KETCH = Path(__file__).parents[2] / "cases" / "ketch_34_two_motors.yaml"
ODD = {
    "a trial faster than any hull of hers": (
        ("6.2 kn, speed_back: 6.0", "9.2 kn, speed_back: 9.0"),
    ),
    "lead": (("chemistry: LFP", "chemistry: AGM"), ("400 A", "200 A"), ("560 A", "200 A")),
    "a propeller of a dinghy": (("18 in", "9 in"), ("12 in", "6 in")),
    "two folding blades": (("kind: fixed", "kind: folding"), ("blades: 3", "blades: 2")),
    "a cruise above hull speed": (("cruise_speed: 5 kn", "cruise_speed: 7.4 kn"),),
    "a leg above hull speed": (("speed: 4.5 kn", "speed: 9.5 kn"),),
    "a bank of a caravan": (("charge: 560 Ah", "charge: 40 Ah"),),
    "a motor of a mixer": (("continuous_power: 10 kW", "continuous_power: 0.5 kW"),),
    "a stream that she cannot stem": (
        ("foul_stream: 0.7 kn\n    spring_stream: 1.6 kn", "foul_stream: 4.4 kn"),
    ),
    "an ocean to windward": (("fetch: 5 km", "fetch: 600 km"),),
    "no signatory": (("  prepared_by: J. Castell, marine electrician\n", ""),),
    "a mass without a place": (("x: 2.70 m, ", ""),),
    "a heavy hull": (("7.9 t", "12 t"),),
    "feet and pounds": (("units: metric", "units: imperial"),),
    "no leg that must be made": (("sailable: false", "sailable: true"),),
}
WHOLE = {
    "no diesel to compare with": (r"  - id: keep\n.*?(?=  - id: a\n)", ""),
    "diesels only": (r"  - id: a\n.*", ""),
    "the present engine alone": (r"  - id: new\n.*", ""),
    "no costs": (r"    costs:\n(      - [^\n]*\n)+", ""),
    "no trial": (r"trial:\n.*?(?=planning:)", ""),
}
BOATS = (
    ("a trial faster than any hull of hers", "a motor of a mixer"),
    ("a cruise above hull speed", "a leg above hull speed", "an ocean to windward"),
    ("a propeller of a dinghy", "feet and pounds"),
    ("a stream that she cannot stem", "a bank of a caravan"),
)
PLAIN = (
    ("lead", "two folding blades", "no costs"),  # two boats with lead have charts set below
    ("a heavy hull", "a mass without a place", "no diesel to compare with"),
    ("no leg that must be made", "no signatory"),
    ("diesels only",),
    ("no trial", "the present engine alone"),
)


def report_of(text: str, folder: Path) -> str:
    path = folder / KETCH.name
    path.write_text(text, encoding="utf-8")
    case = read_case(path)
    results = build(case, run(case, make_draws(case, 30)))
    assert "NaN" not in to_json(results)
    return make_pages(results).html_print


def odd(*oddities: str) -> str:
    """The ketch with all of them."""
    text = KETCH.read_text(encoding="utf-8")
    for what in oddities:
        for old, new in ODD.get(what, ()):
            assert old in text, old
            text = text.replace(old, new)
        if what in WHOLE:
            old, new = WHOLE[what]
            text, count = re.subn(old, new, text, flags=re.DOTALL)
            assert count, what
    return text


@pytest.mark.parametrize("oddities", BOATS, ids=" and ".join)
def test_odd_boat_is_answered(oddities: tuple[str, ...], tmp_path: Path) -> None:
    assert "Wandelaar" in report_of(odd(*oddities), tmp_path)


@pytest.mark.usefixtures("sketched")
@pytest.mark.parametrize("oddities", PLAIN, ids=" and ".join)
def test_boat_without_a_part_is_answered(oddities: tuple[str, ...], tmp_path: Path) -> None:
    assert "Wandelaar" in report_of(odd(*oddities), tmp_path)


def test_no_oddity_is_left_out() -> None:
    assert sorted(sum(BOATS + PLAIN, ())) == sorted([*ODD, *WHOLE])


def only_of_inputs(what: str, make: Callable[[], Made], /) -> Made | None:
    """The charts of what moves a bank's numbers, and no others."""
    return make() if any(word in what for word in OF_INPUTS) else None


OF_INPUTS = ("tornado", "swing", "range", "speed-power", "losses")
BANK = "blocks: {series: 1, parallel: 1, voltage: 51.2 V, charge: 560 Ah, discharge_limit: 400 A}"
LEAD = {
    "at some ends of inputs": "series: 4, parallel: 1, voltage: 12 V, charge: 220 Ah",
    "at the best estimate": "series: 1, parallel: 1, voltage: 48 V, charge: 200 Ah",
}


@pytest.mark.parametrize("where", LEAD)
def test_a_lead_bank_that_cannot_give_what_is_asked_is_answered(where: str, tmp_path: Path) -> None:
    """Its inputs are moved too, and there the currents of the first motor have no value.

    Charts are drawn of what the bank's currents and its inputs change.
    """
    text = KETCH.read_text(encoding="utf-8").replace("chemistry: LFP", "chemistry: AGM")
    assert BANK in text
    path = tmp_path / KETCH.name
    path.write_text(text.replace(BANK, f"blocks: {{{LEAD[where]}}}"), encoding="utf-8")
    case = read_case(path)
    study = run(case, make_draws(case, 30))
    results = build(case, study, tornadoes(case, study))
    charts = make_pages(results, only_of_inputs).charts
    # One chart at most, of a motor whose result an input moves; the others have a sentence.
    drawn = [int(name.rpartition("-")[2]) for name in charts if name.startswith("tornado-")]
    moved = [place for place, option in enumerate(results["options"]) if option.get("tornado")]
    assert len(drawn) <= 1
    assert set(drawn) <= set(moved)
