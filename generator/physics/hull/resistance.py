"""What does she need to be pulled through calm water, part by part?"""

from __future__ import annotations

from dataclasses import dataclass

from generator.arrays import Numbers
from generator.physics.hull.appendages import appendage_friction
from generator.physics.hull.form import HullForm
from generator.physics.hull.friction import hull_friction
from generator.physics.hull.residuary import residuary_resistance


@dataclass(frozen=True)
class Appendage:
    """A keel, or rudder with skeg; m2 on both sides, m, [-]."""

    wetted_area: Numbers
    chord: Numbers
    thickness_ratio: Numbers


@dataclass(frozen=True)
class CalmResistance:
    """Resistance of a clean boat in calm water [N]."""

    hull_friction: Numbers
    keel: Numbers
    rudder: Numbers
    residuary: Numbers

    @property
    def total(self) -> Numbers:
        """Sum of the parts [N]."""
        return self.hull_friction + self.keel + self.rudder + self.residuary


def calm_resistance(
    form: HullForm,
    keel: Appendage,
    rudder: Appendage,
    speed: Numbers,
    density: Numbers,
    viscosity: Numbers,
) -> CalmResistance:
    """Resistance of the clean appended boat in calm water, kept by part.

    R = RF(hull) + R(keel) + R(rudder) + Rr; no residuary part of the keel, which is in Rr

    Args:
        form: the canoe body
        keel: fin, or the body below the canoe line of a long keel
        rudder: rudder with skeg
        speed: v [m/s]
        density: ρ [kg/m3]
        viscosity: ν [m2/s]

    Returns:
        the parts [N]; the residuary part is NaN above the speeds of the series

    Valid: as the parts
    Source: gko1993, division of resistance
    """

    def drag(part: Appendage) -> Numbers:
        return appendage_friction(
            speed, part.wetted_area, part.chord, part.thickness_ratio, density, viscosity
        )

    return CalmResistance(
        hull_friction=hull_friction(form, speed, density, viscosity),
        keel=drag(keel),
        rudder=drag(rudder),
        residuary=residuary_resistance(form, speed, density),
    )
