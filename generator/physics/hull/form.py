"""Which ratios of the hull does the resistance series use?"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from generator.arrays import Numbers
from generator.tables.load import read_table


@dataclass(frozen=True)
class HullForm:
    """The canoe body: the hull without keel and rudder. m, m2, m3, [-]; fields may hold draws."""

    waterline_length: Numbers
    waterline_beam: Numbers
    canoe_draught: Numbers
    canoe_volume: Numbers
    prismatic_coefficient: Numbers
    midship_coefficient: Numbers
    lcb: Numbers  # from midships over waterline length, forward positive
    lcf: Numbers  # the same
    waterplane_area: Numbers
    canoe_wetted_area: Numbers


def make_form(
    *,
    waterline_length: Numbers,
    waterline_beam: Numbers,
    canoe_draught: Numbers | None,
    canoe_volume: Numbers,
    prismatic_coefficient: Numbers,
    midship_coefficient: Numbers,
    waterplane_coefficient: Numbers,
    lcb: Numbers,
    lcf: Numbers,
) -> HullForm:
    """The canoe body from its main dimensions.

    Tc = V / (Cp Cm L B) where the draught is not known, else Cm = V / (Cp L B Tc);
    Aw = Cwp L B

    Args:
        waterline_length: L [m]
        waterline_beam: B [m]
        canoe_draught: Tc, hull without keel [m], or nothing
        canoe_volume: V, hull without keel [m3]
        prismatic_coefficient: Cp [-]
        midship_coefficient: Cm, used only without a draught [-]
        waterplane_coefficient: Cwp [-]
        lcb: centre of buoyancy from midships over L, forward positive [-]
        lcf: centre of flotation likewise [-]

    Returns:
        the form; its fields in m, m2, m3, [-]

    Valid: any hull with a canoe body
    Source: larsson_eliasson, definitions of the form coefficients
    """
    section = canoe_volume / (prismatic_coefficient * waterline_length * waterline_beam)
    draught = section / midship_coefficient if canoe_draught is None else canoe_draught
    midship = midship_coefficient if canoe_draught is None else section / draught
    return HullForm(
        waterline_length=waterline_length,
        waterline_beam=waterline_beam,
        canoe_draught=draught,
        canoe_volume=canoe_volume,
        prismatic_coefficient=prismatic_coefficient,
        midship_coefficient=midship,
        lcb=lcb,
        lcf=lcf,
        waterplane_area=waterplane_coefficient * waterline_length * waterline_beam,
        canoe_wetted_area=canoe_wetted_area(
            waterline_length, waterline_beam, draught, midship, canoe_volume
        ),
    )


def immersed_deeper(form: HullForm, added_volume: Numbers) -> HullForm:
    """The same hull floating deeper or, with a negative volume, higher.

    Tc' = Tc + dV / Aw; V' = V + dV; Cm' = V' / (Cp L B Tc'); wetted area recomputed

    Args:
        form: as she floats before
        added_volume: dV, added mass over water density [m3]

    Returns:
        the form at its new draught, on the same waterline length and waterplane

    Valid: added volume small against the displaced volume, sides near the waterline upright
    Source: derrett, parallel sinkage by the waterplane area; gko1993, wetted area
    """
    length, beam = form.waterline_length, form.waterline_beam
    volume = form.canoe_volume + added_volume
    draught = form.canoe_draught + added_volume / form.waterplane_area
    midship = volume / (form.prismatic_coefficient * length * beam * draught)
    return replace(
        form,
        canoe_draught=draught,
        canoe_volume=volume,
        midship_coefficient=midship,
        canoe_wetted_area=canoe_wetted_area(length, beam, draught, midship, volume),
    )


def canoe_wetted_area(
    waterline_length: Numbers,
    waterline_beam: Numbers,
    canoe_draught: Numbers,
    midship_coefficient: Numbers,
    canoe_volume: Numbers,
) -> Numbers:
    """Wetted area of the canoe body, without keel and rudder.

    Sc = (1.97 + 0.171 B/Tc) (0.65/Cm)^(1/3) (V L)^(1/2)

    Args:
        waterline_length: L [m]
        waterline_beam: B [m]
        canoe_draught: Tc [m]
        midship_coefficient: Cm [-]
        canoe_volume: V [m3]

    Returns:
        Sc [m2]

    Valid: hulls of the series; a textbook yacht is met within 4 per cent
    Source: gko1993, wetted area; keuning1998, the same formula
    """
    L, B, Tc, Cm, V = (
        waterline_length,
        waterline_beam,
        canoe_draught,
        midship_coefficient,
        canoe_volume,
    )
    constant, slope, parent = map(float, read_table("hull/wetted_area").column("value"))
    return (constant + slope * B / Tc) * np.cbrt(parent / Cm) * np.sqrt(V * L)


def length_displacement(form: HullForm) -> Numbers:
    """Length-displacement ratio of the canoe body.

    LV = L / V^(1/3)

    Args:
        form: the canoe body

    Returns:
        LV [-]

    Valid: any hull
    Source: gko1993, definitions
    """
    return form.waterline_length / np.cbrt(form.canoe_volume)


def length_beam(form: HullForm) -> Numbers:
    """Waterline length over waterline beam.

    L / B

    Args:
        form: the canoe body

    Returns:
        L/B [-]

    Valid: any hull
    Source: gko1993, definitions
    """
    return form.waterline_length / form.waterline_beam


def beam_draught(form: HullForm) -> Numbers:
    """Waterline beam over canoe draught.

    B / Tc

    Args:
        form: the canoe body

    Returns:
        B/Tc [-]

    Valid: any hull
    Source: gko1993, definitions
    """
    return form.waterline_beam / form.canoe_draught


def block_coefficient(form: HullForm) -> Numbers:
    """Block coefficient of the canoe body.

    Cb = V / (L B Tc)

    Args:
        form: the canoe body

    Returns:
        Cb [-]

    Valid: any hull
    Source: larsson_eliasson, definitions of the form coefficients
    """
    box = form.waterline_length * form.waterline_beam * form.canoe_draught
    return form.canoe_volume / box


def waterplane_coefficient(form: HullForm) -> Numbers:
    """Waterplane area over the rectangle around it.

    Cwp = Aw / (L B)

    Args:
        form: the canoe body

    Returns:
        Cwp [-]

    Valid: any hull
    Source: larsson_eliasson, definitions of the form coefficients
    """
    return form.waterplane_area / (form.waterline_length * form.waterline_beam)
