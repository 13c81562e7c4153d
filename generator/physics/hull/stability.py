"""How does she stand after masses were moved: centre of gravity, list, roll, heel by wind?"""

from __future__ import annotations

import math

import numpy as np

from generator.arrays import Numbers

GRAVITY = 9.80665  # m/s2, standard


def moved_centre(
    mass: Numbers, centre: Numbers, mass_change: Numbers, moment_change: Numbers
) -> Numbers:
    """Centre of gravity along one axis after masses came aboard, left or were shifted.

    g1 = (m g + M) / (m + dm)

    Args:
        mass: m, before [kg]
        centre: g, before, from the datum [m]
        mass_change: dm, sum of masses, those that leave negative [kg]
        moment_change: M, sum of mass times position from the same datum [kg m]

    Returns:
        g1 [m]

    Valid: any masses
    Source: derrett, final centre of gravity by moments
    """
    return (mass * centre + moment_change) / (mass + mass_change)


def list_angle(moment: Numbers, mass: Numbers, metacentric_height: Numbers) -> Numbers:
    """List by masses off the centre line.

    tan(phi) = M / (m GM)

    Args:
        moment: M, sum of mass times distance to starboard [kg m]
        mass: m, displacement after the change [kg]
        metacentric_height: GM after the change [m]

    Returns:
        phi, to starboard positive [rad]

    Valid: lists of some degrees, GM positive
    Source: derrett, list by a transverse shift of the centre of gravity
    """
    return np.arctan(np.asarray(moment) / (mass * metacentric_height))


def wall_sided_lever(
    metacentric_height: Numbers, transverse_radius: Numbers, angle: Numbers
) -> Numbers:
    """Righting lever of a ship whose sides stand upright at the waterline.

    GZ = sin(phi) (GM + 1/2 BM tan(phi)^2)

    Args:
        metacentric_height: GM [m]
        transverse_radius: BM [m]
        angle: phi [rad]

    Returns:
        GZ [m]

    Valid: until the deck edge or the bilge meets the water
    Source: derrett, wall-sided formula
    """
    return np.sin(angle) * (metacentric_height + 0.5 * transverse_radius * np.tan(angle) ** 2)


def roll_period(gyration_radius: Numbers, metacentric_height: Numbers) -> Numbers:
    """Time of a full roll in still water.

    T = 2 pi k / sqrt(g GM)

    Args:
        gyration_radius: k, of the boat's mass about the axis of roll [m]
        metacentric_height: GM, positive [m]

    Returns:
        T [s]

    Valid: small rolls, without damping and added mass
    Source: derrett, period of roll
    """
    return 2.0 * math.pi * gyration_radius / np.sqrt(GRAVITY * np.asarray(metacentric_height))


def height_from_roll(gyration_radius: Numbers, period: Numbers) -> Numbers:
    """Metacentric height that a timed roll stands for.

    GM = (2 pi k / T)^2 / g

    Args:
        gyration_radius: k [m]
        period: T, of a full roll in still water [s]

    Returns:
        GM [m]

    Valid: small rolls; k carries the doubt
    Source: derrett, period of roll
    """
    return (2.0 * math.pi * gyration_radius / period) ** 2 / GRAVITY


def wind_heel(moment: Numbers, mass: Numbers, metacentric_height: Numbers) -> Numbers:
    """Heel by a steady wind on the beam.

    sin(phi) = M / (m g GM)

    Args:
        moment: M, wind force times its lever above half the draught [N m]
        mass: m, displacement [kg]
        metacentric_height: GM [m]

    Returns:
        phi; a right angle where the wind asks for more than she can give [rad]

    Valid: angles up to about 10 degrees
    Source: derrett, heel by a moment at small angles
    """
    share = np.asarray(moment) / (mass * GRAVITY * metacentric_height)
    return np.arcsin(np.clip(share, -1.0, 1.0))


def buoyancy_after(
    volume: Numbers, height: Numbers, volume_change: Numbers, rise: Numbers
) -> Numbers:
    """Height of the centre of buoyancy after a slice at the waterline was added.

    b1 = (V b + dV s / 2) / (V + dV)

    Args:
        volume: V, displaced before [m3]
        height: b above the old waterline, negative below it [m]
        volume_change: dV [m3]
        rise: s, by which the water stands higher on her sides [m]

    Returns:
        b1 above the old waterline [m]

    Valid: sides near the waterline upright
    Source: derrett, shift of the centre of buoyancy by a layer
    """
    return (volume * height + 0.5 * volume_change * rise) / (volume + volume_change)


def moved_gyration(
    mass: Numbers, gyration_radius: Numbers, mass_change: Numbers, inertia_change: Numbers
) -> Numbers:
    """Radius of gyration in roll after masses came aboard or left.

    k1 = sqrt((m k^2 + I) / (m + dm))

    Args:
        mass: m, before [kg]
        gyration_radius: k, before [m]
        mass_change: dm [kg]
        inertia_change: I, sum of mass times squared distance from the axis of roll [kg m2]

    Returns:
        k1 [m]

    Valid: the axis of roll stays at the centre of gravity of before
    Source: derrett, radius of gyration
    """
    moved = (mass * np.asarray(gyration_radius) ** 2 + inertia_change) / (mass + mass_change)
    return np.sqrt(np.maximum(moved, 0.0))
