"""How deep, how stiff and how willing to trim is she, from few dimensions?"""

from __future__ import annotations

from generator.arrays import Numbers
from generator.tables.load import read_table

TRANSVERSE = "transverse"
LONGITUDINAL = "longitudinal"


def mass_per_immersion(waterplane_area: Numbers, density: Numbers) -> Numbers:
    """Mass that sinks her by a unit of depth.

    m' = ρ Aw (tonnes per centimetre: 1e-5 of it)

    Args:
        waterplane_area: Aw [m2]
        density: ρ [kg/m3]

    Returns:
        m' [kg/m]

    Valid: small changes of draught, sides near the waterline upright
    Source: derrett, tonnes per centimetre immersion
    """
    return density * waterplane_area


def vertical_centre_of_buoyancy(
    canoe_draught: Numbers, block_coefficient: Numbers, waterplane_coefficient: Numbers
) -> Numbers:
    """Height of the centre of buoyancy above the bottom of the canoe body.

    KB = Tc (5/6 - Cb / (3 Cwp))

    Args:
        canoe_draught: Tc [m]
        block_coefficient: Cb [-]
        waterplane_coefficient: Cwp [-]

    Returns:
        KB [m]

    Valid: fair hulls
    Source: morrish, approximate rule
    """
    return canoe_draught * (5.0 / 6.0 - block_coefficient / (3.0 * waterplane_coefficient))


def inertia_coefficient(axis: str, waterplane_coefficient: Numbers) -> Numbers:
    """Inertia of the waterplane over the cube and first power of its sides, for ships.

    CI = 0.1216 Cwp - 0.0410 transverse; CIL = 0.350 Cwp^2 - 0.405 Cwp + 0.146 longitudinal

    Args:
        axis: transverse or longitudinal
        waterplane_coefficient: Cwp [-]

    Returns:
        CI or CIL [-]

    Valid: Cwp 0.65 to 0.72; yachts by ``yacht_correction`` besides
    Source: darcangelo, waterplane inertia
    """
    constant, linear, square, _ = _row(axis)
    return constant + linear * waterplane_coefficient + square * waterplane_coefficient**2


def yacht_correction(axis: str) -> float:
    """Inertia of a yacht's waterplane, with its wide stern, over that of the ship formula.

    0.93 transverse, 1.10 longitudinal

    Args:
        axis: transverse or longitudinal

    Returns:
        the factor [-]

    Valid: Cwp 0.65 to 0.72, wide stern
    Source: practice, exact integrals of yacht-like waterplanes against the formulas
    """
    return _row(axis)[3]


def _row(axis: str) -> tuple[float, float, float, float]:
    table = read_table("hull/waterplane_inertia")
    row = table.row_of("axis", axis)
    names = ("constant", "linear", "square", "yacht_correction")
    constant, linear, square, correction = (float(table.column(name)[row]) for name in names)
    return constant, linear, square, correction


def metacentric_radius(inertia: Numbers, volume: Numbers) -> Numbers:
    """Height of the metacentre above the centre of buoyancy.

    BM = I / V

    Args:
        inertia: I of the waterplane about the axis through its centre [m4]
        volume: V, displaced [m3]

    Returns:
        BM [m]

    Valid: small angles
    Source: derrett, metacentric radius
    """
    return inertia / volume


def transverse_metacentric_radius(
    waterplane_area: Numbers, waterline_length: Numbers, waterline_beam: Numbers, volume: Numbers
) -> Numbers:
    """Transverse metacentric radius of a yacht.

    BMT = 0.93 CI L B^3 / V, Cwp = Aw / (L B)

    Args:
        waterplane_area: Aw [m2]
        waterline_length: L [m]
        waterline_beam: B [m]
        volume: V, displaced by hull, keel and rudder together [m3]

    Returns:
        BMT [m]

    Valid: Cwp 0.65 to 0.72; within 3 to 5 per cent
    Source: darcangelo, waterplane inertia; practice, correction for yachts
    """
    C = inertia_coefficient(TRANSVERSE, waterplane_area / (waterline_length * waterline_beam))
    inertia = yacht_correction(TRANSVERSE) * C * waterline_length * waterline_beam**3
    return metacentric_radius(inertia, volume)


def longitudinal_metacentric_radius(
    waterplane_area: Numbers, waterline_length: Numbers, waterline_beam: Numbers, volume: Numbers
) -> Numbers:
    """Longitudinal metacentric radius of a yacht.

    BML = 1.10 CIL L^3 B / V, Cwp = Aw / (L B)

    Args:
        waterplane_area: Aw [m2]
        waterline_length: L [m]
        waterline_beam: B [m]
        volume: V, displaced by hull, keel and rudder together [m3]

    Returns:
        BML [m]

    Valid: Cwp 0.65 to 0.72; within 3 to 5 per cent
    Source: darcangelo, waterplane inertia; practice, correction for yachts
    """
    C = inertia_coefficient(LONGITUDINAL, waterplane_area / (waterline_length * waterline_beam))
    inertia = yacht_correction(LONGITUDINAL) * C * waterline_length**3 * waterline_beam
    return metacentric_radius(inertia, volume)


def moment_to_trim(mass: Numbers, longitudinal_radius: Numbers) -> Numbers:
    """Mass moment that trims her by a unit of angle.

    M' = m GML, GML taken as BML (MCT 1 cm, in tonne metres: M' / (1e5 L))

    Args:
        mass: m, displacement [kg]
        longitudinal_radius: BML [m]

    Returns:
        M' [kg m/rad]

    Valid: small trims
    Source: derrett, moment to change trim
    """
    return mass * longitudinal_radius
