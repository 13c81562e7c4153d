"""Which numbers of which kept cases are stored, in a file for each case and part?"""

from __future__ import annotations

import json
from functools import lru_cache
from pathlib import Path
from typing import Any

from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.results_file import build
from generator.study import run

HERE = Path(__file__).parent
CASES = HERE / "cases"
STORED = HERE / "numbers"
NAMES = ("sloop_30_weekend", "ketch_34_two_motors", "every_key")
DRAWS = 400
PARTS = {
    "boat": (
        "boat.hull_speed_kn",
        "boat.wetted_area_m2",
        "trial.resistance_scale",
        "service_factor.at_cruise",
    ),
    "power": (
        "options.*.cruise_shaft_kw",
        "options.*.clean_need_kw",
        "options.*.cruise_battery_kw",
        "options.*.top_speed.continuous_kn",
        "options.*.top_speed.peak_low_kn",
    ),
    "bank": (
        "options.*.bank.available_aged_kwh",
        "options.*.bank.peak_current_a",
    ),
    "legs": (
        "options.*.calm_range_nm",
        "options.*.calm_aged_nm",
        "options.*.wind_aged_nm",
        "options.*.worst_leg_ratio",
    ),
    "weight": (
        "options.*.weight.net_kg",
        "options.*.weight.sinkage_mm",
        "options.*.weight.trim_mm",
    ),
    "money": (
        "options.*.cost.first_money",
        "options.*.cost.present_value_money",
    ),
    "verdict": ("options.*.verdict.word",),
}


def stored_file(name: str, part: str) -> Path:
    """Where the numbers of one part of one case stand."""
    return STORED / name / f"{part}.json"


def stored(name: str, part: str) -> dict[str, Any]:
    """The numbers as they were written down."""
    found: dict[str, Any] = json.loads(stored_file(name, part).read_text(encoding="utf-8"))
    return found


def computed(name: str, part: str) -> dict[str, Any]:
    """The same numbers as they are now."""
    return {key: picked(results(name), key.split(".")) for key in PARTS[part]}


@lru_cache(maxsize=1)
def results(name: str) -> dict[str, Any]:
    """The results tree of a kept case."""
    case = read_case(CASES / f"{name}.yaml")
    return build(case, run(case, make_draws(case, DRAWS)))


def picked(tree: Any, steps: list[str]) -> Any:
    """The value at a key; a star stands for every item of a list."""
    if not steps or tree is None:
        return tree
    if steps[0] == "*":
        return [picked(item, steps[1:]) for item in tree]
    return picked(tree.get(steps[0]), steps[1:])
