"""Whole cases against stored numbers of our own making: a change that moves one shows here.

The stored numbers are no truth; a moved number belongs into the change list of DEVELOPERS.md,
and `python -m tests.recorded.test_demo_cases` stores the new ones.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.results_file import build
from generator.study import run

CASES = Path(__file__).parents[2] / "cases"
STORED = Path(__file__).with_name("demo_cases.json")
NAMES = ("sloop_30_weekend", "ketch_34_two_motors", "every_key")
DRAWS = 400
KEYS = (
    "boat.hull_speed_kn",
    "boat.wetted_area_m2",
    "trial.resistance_scale",
    "service_factor.product_at_cruise",
    "options.*.cruise_shaft_kw",
    "options.*.clean_need_kw",
    "options.*.cruise_battery_kw",
    "options.*.top_speed.continuous_kn",
    "options.*.top_speed.peak_low_kn",
    "options.*.calm_range_nm",
    "options.*.calm_aged_nm",
    "options.*.wind_aged_nm",
    "options.*.bank.available_aged_kwh",
    "options.*.bank.peak_current_a",
    "options.*.weight.net_kg",
    "options.*.weight.sinkage_mm",
    "options.*.weight.trim_mm",
    "options.*.cost.first_money",
    "options.*.cost.present_value_money",
    "options.*.worst_leg_ratio",
    "options.*.verdict.word",
)


def picked(tree: Any, steps: list[str]) -> Any:
    """The value at a key; a star stands for every item of a list."""
    if not steps or tree is None:
        return tree
    if steps[0] == "*":
        return [picked(item, steps[1:]) for item in tree]
    return picked(tree.get(steps[0]), steps[1:])


def computed(name: str) -> dict[str, Any]:
    case = read_case(CASES / f"{name}.yaml")
    results = build(case, run(case, make_draws(case, DRAWS)))
    return {key: picked(results, key.split(".")) for key in KEYS}


@pytest.mark.parametrize("name", NAMES)
def test_demo_case_gives_the_stored_numbers(name: str) -> None:
    stored = json.loads(STORED.read_text(encoding="utf-8"))[name]
    found = computed(name)
    assert set(found) == set(stored)
    for key, value in stored.items():
        pairs = (
            zip(value, found[key], strict=True)
            if isinstance(value, list)
            else [(value, found[key])]
        )
        for old, new in pairs:
            wanted = pytest.approx(old, rel=1e-6) if isinstance(old, float) else old
            assert new == wanted, key


if __name__ == "__main__":
    text = json.dumps({name: computed(name) for name in NAMES}, indent=1)
    STORED.write_text(text + "\n", encoding="utf-8")
