"""What do other published forms say of her resistance, and how well does each foretell hulls?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import ClassVar

import numpy as np

from generator.analyses.motion.demand import calm_friction
from generator.analyses.motion.hull import Vessel
from generator.arrays import Array, Numbers
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
from generator.records import number, numbers_of, record
from generator.tables.load import read_table

KNOT = 1852.0 / 3600.0
SPEEDS = (4.0, 5.0, 6.0)  # kn, beside the planned cruise
SCORES = "hull/regression_scores"
MIDSHIP, SPEED = "midship_beyond_form", "speed_beyond_form"  # why a form has no answer
BAND, OUT = "hull/regression_band", ("family", "hull")


@record
class OpinionRows:
    """Total resistance of the clean boat by one form after the other, the primary one first.

    ``form``: as in the table of scores. ``keel``: how the keel's own waves come in.
    """

    ALONG: ClassVar[str] = "speed"
    form: tuple[str, ...]
    name: tuple[str, ...]
    keel: tuple[str, ...]
    speed: Array = number("speed", "speed through the water")
    total: Array = number("force", "total resistance, clean")
    over_primary: Array = number("share", "total over the primary form's")
    absent: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


@record
class ScoreRows:
    """Error of total resistance as a share, on cruiser-like models, by form."""

    ALONG: ClassVar[str] = "froude_number"
    froude_number: Array = number("plain", "Froude number")
    family_out_rms: Array = number("share", "rms error, its family left out")
    family_out_bias: Array = number("share", "mean error, its family left out")
    hull_out_rms: Array = number("share", "rms error, hull left out")
    hull_out_bias: Array = number("share", "mean error, hull left out")
    gko1993_rms: Array = number("share", "rms error, form of 1993")
    gko1993_bias: Array = number("share", "mean error, form of 1993")
    keuning1998_rms: Array = number("share", "rms error, form of 1998")
    keuning1998_bias: Array = number("share", "mean error, form of 1998")
    keuning2008_rms: Array = number("share", "rms error, form of 2008")
    keuning2008_bias: Array = number("share", "mean error, form of 2008")


@record
class FormBand:
    """How many measured hulls the 80 % band holds."""

    family_inside: float = number("share", "inside the band, family left out")
    hull_inside: float = number("share", "inside the band, hull left out")


@dataclass(frozen=True)
class SecondOpinions:
    """Forms side by side on this hull; their scores on measured hulls."""

    forms: OpinionRows
    scores: ScoreRows
    band: FormBand

    def others_at(self, speed: float) -> list[float]:
        """How far the other forms lie from the first at a speed [m/s], as shares."""
        forms = len(dict.fromkeys(self.forms.form))
        speeds, shares = (np.reshape(each, (forms, -1)) for each in
                          (self.forms.speed, self.forms.over_primary))  # fmt: skip
        found = [float(np.interp(speed, speeds[0], own)) for own in shares[1:]]
        return [share for share in found if np.isfinite(share)]


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
    odd = MIDSHIP if cautions_2008(form) else SPEED
    found = (
        ("family_out", "Own regression on measured hulls", added,
         residuary_of_bare_hull(form, speed, water) + keel, SPEED),
        ("gko1993", "Series form of 1993", within, residuary_resistance(form, speed, water),
         SPEED),
        ("keuning1998", "Bare-hull form of 1998", added,
         weight * keuning1998_share(form, froude) + keel, SPEED),
        ("keuning2008", "Bare-hull form of 2008", added,
         weight * keuning2008_share(form, froude) + keel, odd),
    )  # fmt: skip
    forms = _side_by_side(speed, friction, found)
    band = read_table(BAND)
    inside = {name: float(band.column("inside")[band.row_of("left_out", name)]) for name in OUT}
    return SecondOpinions(forms, scores(), FormBand(*(inside[name] for name in OUT)))


def _side_by_side(
    speed: Array, friction: Array, found: tuple[tuple[str, str, str, Numbers, str], ...]
) -> OpinionRows:
    """One row for each form and speed; ``found`` has id, name, keel, waves and why none."""
    each = speed.size
    total = [np.atleast_2d(friction + waves)[0] for *_, waves, _ in found]
    why = tuple(word for *_, word in found for _ in range(each))
    return OpinionRows(
        form=tuple(item[0] for item in found for _ in range(each)),
        name=tuple(item[1] for item in found for _ in range(each)),
        keel=tuple(item[2] for item in found for _ in range(each)),
        speed=np.tile(speed, len(found)),
        total=np.concatenate(total),
        over_primary=np.concatenate([own / total[0] - 1.0 for own in total]),
        absent={"total": why, "over_primary": why},
    )


def scores() -> ScoreRows:
    """Errors by leaving out and in sample, per Froude number."""
    table = read_table(SCORES)
    return ScoreRows(**{name: table.column(name) for name in numbers_of(ScoreRows)})
