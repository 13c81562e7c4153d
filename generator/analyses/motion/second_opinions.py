"""What do other published forms say of her resistance, and how well does each foretell hulls?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.demand import calm_friction
from generator.analyses.motion.hull import Vessel
from generator.arrays import Array
from generator.case.case import Case
from generator.physics.hull.polynomials import (
    cautions_2008,
    keel_residuary,
    keuning1998_share,
    keuning2008_share,
)
from generator.physics.hull.regression import residuary_of_bare_hull
from generator.physics.hull.residuary import froude_number, residuary_resistance
from generator.physics.water import GRAVITY
from generator.tables.load import read_table

KNOT = 1852.0 / 3600.0
SPEEDS = (4.0, 5.0, 6.0)  # kn, beside the planned cruise
SCORES = "hull/regression_scores"
BAND, OUT = "hull/regression_band", ("family", "hull")


@dataclass(frozen=True)
class Opinion:
    """Total resistance [N] of the clean boat at each speed by one form; nan: no answer."""

    id: str  # as in the table of scores
    name: str
    keel: str  # how the keel's own waves come in
    total: Array
    why: str  # no answer


@dataclass(frozen=True)
class Score:
    """Error of total resistance at a Froude number, as a share, on cruiser-like models."""

    froude: float
    rms: dict[str, float]
    bias: dict[str, float]


@dataclass(frozen=True)
class SecondOpinions:
    """Forms side by side on this hull, the primary one first; their scores on measured hulls."""

    speed: Array
    opinions: tuple[Opinion, ...]
    scores: tuple[Score, ...]
    family_inside: float  # share of hulls inside the 80 % band, their family left out
    hull_inside: float  # the same with only the hull left out: the band is too wide for it


def second_opinions(case: Case, vessel: Vessel) -> SecondOpinions:
    """Total resistance by every form, for the best estimate of the boat as she is today."""
    cruise = float(np.asarray(case.planning.cruise_speed).flat[0]) / KNOT
    speed = np.array(sorted({*SPEEDS, round(cruise, 6)})) * KNOT
    form, water = vessel.form, vessel.water_density
    friction = calm_friction(vessel, speed)
    froude = np.asarray(froude_number(speed, form.waterline_length))
    weight = water * GRAVITY * np.asarray(form.canoe_volume)
    keel = keel_residuary(form, vessel.keel_body, speed, water)
    added, within = "keel polynomial added", "keel and rudder in the form"
    odd = "".join(item.message for item in cautions_2008(form))
    found = (
        ("family_out", "Own regression on measured hulls", added,
         residuary_of_bare_hull(form, speed, water) + keel, ""),
        ("gko1993", "Series form of 1993", within, residuary_resistance(form, speed, water), ""),
        ("keuning1998", "Bare-hull form of 1998", added,
         weight * keuning1998_share(form, froude) + keel, ""),
        ("keuning2008", "Bare-hull form of 2008", added,
         weight * keuning2008_share(form, froude) + keel, odd),
    )  # fmt: skip
    opinions = tuple(
        Opinion(key, name, part, np.atleast_2d(friction + waves)[0], why)
        for key, name, part, waves, why in found
    )
    band = read_table(BAND)
    inside = {name: float(band.column("inside")[band.row_of("left_out", name)]) for name in OUT}
    return SecondOpinions(speed, opinions, scores(), *(inside[name] for name in OUT))


def scores() -> tuple[Score, ...]:
    """Errors by leaving out and in sample, per Froude number."""
    table = read_table(SCORES)
    forms = [name.removesuffix("_rms") for name in table.names if name.endswith("_rms")]
    return tuple(
        Score(
            float(froude),
            {form: float(table.column(f"{form}_rms")[row]) for form in forms},
            {form: float(table.column(f"{form}_bias")[row]) for form in forms},
        )
        for row, froude in enumerate(table.column("froude_number"))
    )
