"""What do the lines of a hull, given as a table of offsets, say of how she floats?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.arrays import Array


@dataclass(frozen=True)
class Station:
    """One section: half breadths [m] at heights above the waterline [m], keel first."""

    x: float  # m from the datum, forward positive
    heights: Array
    half_breadths: Array


@dataclass(frozen=True)
class Waterplane:
    """m2, m, m4; the centre from the datum, inertias about the axes through the centre."""

    area: float
    centre: float
    transverse_inertia: float
    longitudinal_inertia: float
    length: float
    beam: float


@dataclass(frozen=True)
class Immersed:
    """What lies below the waterline: m3, m; centres from the datum and above the waterline."""

    volume: float
    centre: float
    height: float
    waterplane: Waterplane


def waterplane(x: Array, half_breadths: Array) -> Waterplane:
    """Area, centre and inertias of a waterplane by Simpson's rule for uneven spacing.

    A = 2 int y dx; xf = 2 int x y dx / A; IT = 2/3 int y^3 dx; IL = 2 int x^2 y dx - A xf^2

    Args:
        x: stations, rising, from the datum [m]
        half_breadths: y at the waterline [m]

    Returns:
        the waterplane; its fields in m2, m, m4, m

    Valid: three stations or more; best with an odd number, evenly spaced
    Source: derrett, Simpson's rules
    """
    from scipy.integrate import simpson

    y = np.maximum(half_breadths, 0.0)
    area = 2.0 * float(simpson(y, x=x))
    centre = 2.0 * float(simpson(x * y, x=x)) / area
    wet = np.flatnonzero(y > 0.0)
    ends = x[max(wet[0] - 1, 0)], x[min(wet[-1] + 1, x.size - 1)]
    return Waterplane(
        area=area,
        centre=centre,
        transverse_inertia=2.0 / 3.0 * float(simpson(y**3, x=x)),
        longitudinal_inertia=2.0 * float(simpson(x**2 * y, x=x)) - area * centre**2,
        length=float(ends[1] - ends[0]),
        beam=2.0 * float(y.max()),
    )


def section_below(station: Station, level: float = 0.0) -> tuple[float, float, float]:
    """Area and moment of one section below a level, straight between its points.

    a = 2 int y dz; m = 2 int z y dz, exact for straight lines between the points

    Args:
        station: half breadths at heights
        level: z of the water [m]

    Returns:
        area [m2], its moment about the waterline [m3], half breadth at the level [m]

    Valid: points close enough to follow the curve
    Source: derrett, areas and moments of sections
    """
    z, y = station.heights, station.half_breadths
    at_level = float(np.interp(level, z, y, left=0.0))
    under = z < level
    z, y = np.append(z[under], level), np.append(y[under], at_level)
    if z.size < 2:
        return 0.0, 0.0, at_level
    step, mean = np.diff(z), 0.5 * (y[1:] + y[:-1])
    middle = 0.5 * (z[1:] + z[:-1])
    moment = middle * mean * step + np.diff(y) * step**2 / 12.0
    return 2.0 * float((mean * step).sum()), 2.0 * float(moment.sum()), at_level


def immersed(stations: tuple[Station, ...], level: float = 0.0) -> Immersed:
    """Volume below a level, its centre, and the waterplane at the level.

    V = int a dx; xb = int x a dx / V; zb = int m dx / V

    Args:
        stations: sections, x rising
        level: z of the water [m]

    Returns:
        the immersed body; its fields in m3, m and those of the waterplane

    Valid: three stations or more, upright, on an even keel
    Source: derrett, volumes by Simpson's rules
    """
    from scipy.integrate import simpson

    x = np.array([station.x for station in stations])
    cuts = np.array([section_below(station, level) for station in stations])
    volume = float(simpson(cuts[:, 0], x=x))
    return Immersed(
        volume=volume,
        centre=float(simpson(x * cuts[:, 0], x=x)) / volume,
        height=float(simpson(cuts[:, 1], x=x)) / volume,
        waterplane=waterplane(x, cuts[:, 2]),
    )
