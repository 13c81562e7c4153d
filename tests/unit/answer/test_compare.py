"""Are two motors compared where they differ, each difference with its own sign?"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from generator.answer.compare import Comparison, compare
from generator.case.open import read_case
from generator.draws import make_draws
from generator.report.numbers import Display
from generator.report.tree import Telling, tree
from generator.study import OptionStudy, Study, run

CASE = Path(__file__).parents[3] / "cases" / "ketch_34_two_motors.yaml"
KNOT = 1852 / 3600
SAID = Telling(Display("metric", "EUR"))
DRAWS = 20


@lru_cache(maxsize=1)
def study() -> Study:
    case = read_case(CASE)
    return run(case, make_draws(case, DRAWS), year=False)


@lru_cache(maxsize=1)
def motors() -> tuple[OptionStudy, OptionStudy]:
    found = [each for each in study().options if each.findings.option.motor is not None]
    return found[0], found[1]


def compared(*options: OptionStudy) -> Comparison:
    found = compare(replace(study(), options=options))
    assert found is not None
    return found


def under(part: Any, path: str, **values: Any) -> Any:
    """An option with something deep in it changed; `a.b` goes deep."""
    head, _, rest = path.partition(".")
    inner = getattr(part, head)
    new = under(inner, rest, **values) if rest else replace(inner, **values)
    return replace(part, **{head: new})


def ladder(option: OptionStudy, ends: float, height: float = 0.0) -> OptionStudy:
    """It makes a tenth of a knot for each knot of wind below the one that ends it."""
    winds = np.arange(41.0)
    speed = np.tile(np.maximum(ends - winds, 0.0) * 0.1 * KNOT, (DRAWS + 1, 1))
    raised = np.full((DRAWS + 1, 41), 0.0) + np.where(winds > height, 1e3, 0.0) * bool(height)
    held = under(option, "findings.holding", ladder=speed)
    return under(held, "findings.headwind", height=raised)  # type: ignore[no-any-return]


@pytest.mark.parametrize(
    ("ends", "covered", "wind"),
    [
        ((40.0, 45.0), 0.0, 25.0),  # both make way in the wind in which she is held off
        ((10.0, 12.0), 0.0, 11.0),  # neither does: the strongest in which one of them still does
        ((40.0, 45.0), 18.0, 18.0),  # the strongest that the wave formula covers
    ],
)
def test_two_motors_are_compared_in_a_wind_that_tells_them_apart(
    ends: tuple[float, float], covered: float, wind: float
) -> None:
    a, b = motors()
    found = compared(ladder(a, ends[0], covered), ladder(b, ends[1], covered))
    most = float(np.ravel(a.findings.case.planning.hold_wind)[0]) / KNOT
    assert found.against / KNOT == pytest.approx(min(wind, most))
    assert np.all(found.wind > 0.0)
    said = tree(found, "here", SAID)["words"]
    assert f"against {min(wind, most):.0f}\u00a0kn of wind" in said


def test_of_equal_motors_the_larger_bank_is_the_larger_wherever_it_stands_in_the_file() -> None:
    a, b = motors()
    power = b.findings.option.motor.continuous_power  # type: ignore[union-attr]
    alike = under(a, "findings.option.motor", continuous_power=power)
    small = under(alike, "findings.store", nominal=10e3 * 3600.0)
    large = under(b, "findings.store", nominal=20e3 * 3600.0)
    for order in ((small, large), (large, small)):
        assert compared(*order).larger == "Motor B"
    cheap, dear = (under(each, "findings.store", nominal=10e3 * 3600.0) for each in (alike, b))
    costs = (np.full((DRAWS + 1, 1), value) for value in (9e3, 8e3))
    cheap, dear = (
        under(each, "findings.cost", first=cost)
        for each, cost in zip((cheap, dear), costs, strict=True)
    )
    assert compared(dear, cheap).larger == "Motor A"


def netting(option: OptionStudy, more: float) -> dict[str, Any]:
    """Masses with so much more of net change than another option has [kg]."""
    weight = option.findings.weight
    removed = np.asarray(weight.removed_mass)
    return {"removed_mass": removed, "added_mass": removed + weight.net + more}


def test_what_is_less_is_said_as_less() -> None:
    a, b = (ladder(each, ends) for each, ends in zip(motors(), (45.0, 40.0), strict=True))
    b = under(b, "findings.weight", **netting(a, -30.0))
    b = under(b, "findings.cost", first=np.asarray(a.findings.cost.first) - 1000.0)
    found = compared(a, b)
    assert (found.windward, found.weight, found.price) == ("less", "less", "less")
    assert found.real
    assert np.all(found.wind > 0.0)
    said = tree(found, "here", SAID)["words"]
    assert "0.5\u00a0kn slower against" in said
    assert "weighs 30\u00a0kg less and costs \u20ac1,000 less to fit" in said
    same = under(b, "findings.weight", **netting(a, 0.2))
    assert "weighs" not in tree(compared(a, same), "here", SAID)["words"]


def test_the_speed_in_a_calm_is_that_which_is_held_for_good() -> None:
    a, b = motors()
    top = replace(a.findings.power.top, continuous=b.findings.power.top.continuous - 0.3 * KNOT)
    found = compared(under(a, "findings.power", top=top), b)
    np.testing.assert_allclose(found.faster, 0.3 * KNOT)
    assert (
        f"is 0.3\u00a0kn faster than {found.smaller} in a calm"
        in tree(found, "here", SAID)["words"]
    )
