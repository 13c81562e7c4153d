"""What do the waves that she makes cost?"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from generator.arrays import Array, Numbers
from generator.physics.hull.form import (
    HullForm,
    beam_draught,
    length_beam,
    length_displacement,
)
from generator.physics.hull.interpolation import between, cubics
from generator.physics.validity import Caution, outside
from generator.physics.water import GRAVITY
from generator.tables.load import read_table

LOW, HIGH, RANGE = "hull/gko1993_low", "hull/gko1993_high", "hull/series_range"
LOW_COEFFICIENTS = tuple(f"a{place}" for place in range(10))
HIGH_COEFFICIENTS = tuple(f"c{place}" for place in range(6))
PER_MILLE = 1e-3
PER_CENT = 100.0  # the regression takes LCB in per cent of the waterline
# Ends of the speed range by hull: basis of the regression, light hulls by its high-speed set.
LIGHT_FROM = 5.0  # length-displacement ratio
LIMIT, LIGHT_LIMIT = 0.45, 0.60  # Froude numbers
ROUNDING = 1e-9  # a speed worked back from the last Froude number still counts
HELD, HELD_HEAVY, NOT_USED = "held", "end_times_displacement", "not_used"  # outside the range
MESSAGES = {
    "length_displacement": HELD_HEAVY,
    "length_beam": NOT_USED,
    "midship_coefficient": "not_together",
}


def froude_number(speed: Numbers, waterline_length: Numbers) -> Numbers:
    """Froude number on the waterline.

    Fn = v / (g L)^(1/2)

    Args:
        speed: v [m/s]
        waterline_length: L [m]

    Returns:
        Fn [-]

    Valid: any speed
    Source: gko1993, definitions
    """
    return speed / np.sqrt(GRAVITY * waterline_length)


def residuary_resistance(
    form: HullForm, speed: Numbers, density: Numbers, method: str = "gko1993"
) -> Numbers:
    """Residuary resistance of the hull with keel and rudder: all that is not friction.

    Rr = ρ g V f(Fn, form), f by the method

    Args:
        form: the canoe body
        speed: v [m/s]
        density: ρ of the water [kg/m3]
        method: a key of METHODS

    Returns:
        Rr [N]; NaN where the method gives no answer: above Froude number 0.45, or above 0.60
        for a length-displacement ratio from 5.0

    Valid: hulls of the series (``cautions``); the form is held inside its range, the
        displacement is not
    Source: gko1993, regression of the series
    """
    froude = np.asarray(froude_number(speed, form.waterline_length))
    weight = density * GRAVITY * form.canoe_volume
    return weight * METHODS[method](form, froude)


def gko1993_share(form: HullForm, froude: Array) -> Array:
    """Residuary resistance over displacement weight, hull towed with keel and rudder.

    at Fn 0.125 to 0.450: 1000 f = a0 + a1 Cp + a2 LCB + a3 B/Tc + a4 LV + a5 Cp^2 + a6 Cp LV
    + a7 LCB^2 + a8 LV^2 + a9 LV^3; at 0.475 to 0.600 for light hulls: 1000 f = c0 + c1 L/B
    + c2 Aw/V^(2/3) + c3 LCB + c4 (L/B)^2 + c5 L/B (Aw/V^(2/3))^3; below 0 is 0; between by
    monotone cubic; below 0.125 as Fn^4

    Args:
        form: the canoe body
        froude: Fn [-]

    Returns:
        f [-]; NaN above the last Froude number for the hull

    Valid: Fn to 0.45, to 0.60 for LV from 5.0; Cp, LCB, B/Tc, LV, L/B held in their range
    Source: gko1993, regressions at low and at high speed
    """
    nodes, curves = _curves(form)
    light = np.asarray(length_displacement(form) >= LIGHT_FROM)
    limit = np.where(light, LIGHT_LIMIT, LIMIT) + ROUNDING
    if light.any() and np.any(froude > LIMIT + ROUNDING):
        nodes, curves = _continued(form, nodes, curves)
    first = nodes[1]
    grown = np.square(np.square(np.minimum(froude / first, 1.0)))
    share = between(nodes, curves, np.maximum(froude, first)) * grown
    return np.where(froude > limit, np.nan, share)


def _curves(form: HullForm) -> tuple[Array, Array]:
    """The curve to Froude number 0.45. Rest belongs to it: it sets the slope at the first node."""
    table = read_table(LOW)
    values = _node_values(_low_terms(form), table.matrix(*LOW_COEFFICIENTS))
    nodes = table.column("froude_number")
    return _from_rest(nodes), cubics(_from_rest(nodes), _from_rest(values))


def _continued(form: HullForm, nodes: Array, curves: Array) -> tuple[Array, Array]:
    """The curve with the high-speed rows, which leave it below Froude number 0.45 as it was."""
    table = read_table(HIGH)
    fast = _node_values(_high_terms(form), table.matrix(*HIGH_COEFFICIENTS))
    slow = _node_values(_low_terms(form), read_table(LOW).matrix(*LOW_COEFFICIENTS))
    drawn = np.broadcast_shapes(slow.shape[:-1], fast.shape[:-1])
    values = np.concatenate([_spread(slow, drawn, 1), _spread(fast, drawn, 1)], axis=-1)
    joined = np.concatenate([nodes, table.column("froude_number")])
    beyond = cubics(joined, _from_rest(values))[..., len(nodes) - 1 :, :]
    return joined, np.concatenate([_spread(curves, drawn, 2), beyond], axis=-2)


def _spread(values: Array, drawn: tuple[int, ...], kept: int) -> Array:
    """Repeat over draws what one form gave; the last ``kept`` axes are its own."""
    return np.asarray(np.broadcast_to(values, (*drawn, *values.shape[-kept:])))


def _from_rest(values: Array) -> Array:
    """Values on the last axis with a zero before them: no speed, no waves."""
    return np.concatenate([np.zeros((*values.shape[:-1], 1)), values], axis=-1)


def _node_values(terms: list[Numbers], coefficients: Array) -> Array:
    """The regression at each of its Froude numbers, on a last axis; no thrust from waves."""
    stacked = np.stack(np.broadcast_arrays(*terms), axis=-1)
    return np.asarray(np.maximum(stacked @ coefficients.T, 0.0) * PER_MILLE)


def _low_terms(form: HullForm) -> list[Numbers]:
    Cp = _held(form.prismatic_coefficient, "prismatic_coefficient")
    LCB = _held(form.lcb, "lcb") * PER_CENT
    BT = _held(beam_draught(form), "beam_draught")
    LV = _held(length_displacement(form), "length_displacement")
    return [1.0, Cp, LCB, BT, LV, Cp * Cp, Cp * LV, LCB * LCB, LV * LV, LV**3]


def _high_terms(form: HullForm) -> list[Numbers]:
    LB = _held(length_beam(form), "length_beam")
    loading = form.waterplane_area / np.cbrt(form.canoe_volume) ** 2
    LCB = _held(form.lcb, "lcb") * PER_CENT
    return [1.0, LB, loading, LCB, LB * LB, LB * loading**3]


def _held(values: Numbers, quantity: str) -> Array:
    """The values kept inside the range of the tested models."""
    table = read_table(RANGE)
    row = table.row_of("quantity", quantity)
    low, high = table.column("low")[row], table.column("high")[row]
    return np.asarray(np.clip(values, low, high))


def cautions(form: HullForm) -> tuple[Caution, ...]:
    """Where the form lies outside the tested models, and what is then done.

    each ratio of the form against the range of the tested models

    Args:
        form: the canoe body

    Returns:
        a caution for each ratio outside; its ends in [-]

    Valid: any hull
    Source: gko1993, range of the tested models; keuning1998, range of the tested models
    """
    ratios = {
        "prismatic_coefficient": form.prismatic_coefficient,
        "lcb": form.lcb,
        "beam_draught": beam_draught(form),
        "length_displacement": length_displacement(form),
        "length_beam": length_beam(form),
        "midship_coefficient": form.midship_coefficient,
    }
    table = read_table(RANGE)
    low, high, words = table.column("low"), table.column("high"), table.text("words")
    keys = table.text("source")
    found = []
    for row, name in enumerate(table.text("quantity")):
        ends = float(low[row]), float(high[row])
        message = MESSAGES.get(name, HELD)
        found.append(outside(words[row], ratios[name], *ends, keys[row], message))
    return tuple(caution for caution in found if caution is not None)


# A form of the series by name: share of displacement weight for a form and Froude numbers.
METHODS: dict[str, Callable[[HullForm, Array], Array]] = {"gko1993": gko1993_share}
