"""The band of a hull guess: each doubt once, and together what the trade says of a guess.

Source: trial_accuracy; a hull model without a trial is good to 25 to 30 % at one sigma.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from generator.analyses.motion.demand import residuary
from generator.analyses.motion.hull import vessel
from generator.case.case import Case
from generator.case.open import read_case
from generator.draws import Draws, drawn
from generator.physics.hull.regression import residuary_doubt
from tests.alone import alone
from tests.unit.case.faulty import ROOT

KNOT = 1852.0 / 3600.0


def guessed(name: str) -> Case:
    """A demo case as if nobody had timed her."""
    case = read_case(Path(ROOT) / "cases" / f"{name}.yaml")
    return replace(
        case,
        trial=None,
        assumptions=tuple(a for a in case.assumptions if not a.path.startswith("trial.")),
    )


@pytest.mark.parametrize(
    ("name", "sigma"), [("sloop_30_weekend", 0.25), ("ketch_34_two_motors", 0.30)]
)
def test_a_guess_is_as_doubtful_as_the_trade_says(name: str, sigma: float) -> None:
    """At 5 kn; the rest of the band is drawn, so that two points of per cent are left to it."""
    case = guessed(name)
    found = alone(case, 0, 1000).findings.power
    place = int(np.argmin(np.abs(found.speed - 5.0 * KNOT)))
    power = found.curves["calm"].demand.shaft_power[1:, place]
    assert np.log(power).std() == pytest.approx(sigma, abs=0.02)


def test_deviate_moves_the_waves_by_the_doubt_of_unseen_families() -> None:
    case = guessed("sloop_30_weekend")
    moved = drawn(
        case, Draws(2, 0, {"factors.residuary_deviate": np.array([[0.0], [1.0], [-1.0]])})
    )
    hull, speed = (
        vessel(case.boat, case.waters, 0.0, case.propeller),
        np.array([4.0, 5.0, 6.0]) * KNOT,
    )
    waves = residuary(hull, moved.factors, speed)
    doubt = residuary_doubt(hull.form, speed)
    np.testing.assert_allclose(np.log(waves[1] / waves[0]), doubt)
    np.testing.assert_allclose(np.log(waves[2] / waves[0]), -doubt)
    assert np.all(doubt > 0.05)


def test_keel_displaces_what_canoe_body_and_rudder_leave() -> None:
    """4300 kg / 1026.02 kg/m3 x 0.05 x 0.90 = 0.1886 m3; 0.43 of the keel's depth."""
    case = guessed("sloop_30_weekend")
    hull = vessel(case.boat, case.waters, 0.0, case.propeller)
    assert hull.keel_body.volume == pytest.approx(0.1886, abs=2e-4)
    depth = 0.43 * (1.45 - float(np.asarray(hull.form.canoe_draught)))
    assert hull.keel_body.centre_depth == pytest.approx(depth)
    given = replace(case.boat, keel=replace(case.boat.keel, volume=0.25, centre_depth=0.4))
    own = vessel(given, case.waters, 0.0, case.propeller).keel_body
    assert (own.volume, own.centre_depth) == (0.25, 0.4)


def test_added_mass_sinks_the_keel_too() -> None:
    case = guessed("sloop_30_weekend")
    light, heavy = (vessel(case.boat, case.waters, mass, case.propeller) for mass in (0.0, 300.0))
    sunk = heavy.form.canoe_draught - light.form.canoe_draught
    assert heavy.keel_body.total_draught == pytest.approx(1.45 + float(np.asarray(sunk)))
    assert heavy.keel_body.volume == light.keel_body.volume
