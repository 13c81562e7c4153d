"""How does she float after masses were moved?"""

from __future__ import annotations

from generator.arrays import Numbers


def sinkage(mass: Numbers, mass_per_immersion: Numbers) -> Numbers:
    """Parallel sinkage by a mass put aboard.

    s = m / m'

    Args:
        mass: m added, negative when taken out [kg]
        mass_per_immersion: m' [kg/m]

    Returns:
        s, deeper positive [m]

    Valid: masses small against the displacement
    Source: derrett, tonnes per centimetre immersion
    """
    return mass / mass_per_immersion


def trim_angle(moment: Numbers, moment_to_trim: Numbers) -> Numbers:
    """Trim by masses put aboard or moved.

    angle = M / M'

    Args:
        moment: M, sum of mass times arm forward of the centre of flotation [kg m]
        moment_to_trim: M' [kg m/rad]

    Returns:
        angle, by the bow positive [rad]

    Valid: small trims
    Source: derrett, moment to change trim
    """
    return moment / moment_to_trim


def end_draughts(
    angle: Numbers, lcf: Numbers, waterline_length: Numbers
) -> tuple[Numbers, Numbers]:
    """Change of draught at the ends of the waterline by trim.

    dF = angle L (1/2 - lcf); dA = -angle L (1/2 + lcf)

    Args:
        angle: trim, by the bow positive [rad]
        lcf: centre of flotation from midships over L, forward positive [-]
        waterline_length: L [m]

    Returns:
        change forward and change aft, deeper positive [m]

    Valid: small trims, about the centre of flotation
    Source: derrett, change of draught by trim
    """
    change = angle * waterline_length
    return change * (0.5 - lcf), -change * (0.5 + lcf)
