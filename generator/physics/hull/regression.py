"""What do the waves of the bare hull cost, by the measured hulls most like her?"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from generator.arrays import Array, Numbers
from generator.physics.hull.form import HullForm, length_displacement
from generator.physics.hull.interpolation import between, cubics
from generator.physics.hull.regression_fit import (
    RATIOS,
    SHARES,
    SLENDER,
    covariance,
    fitted,
    own_variance,
    ratios,
)
from generator.physics.hull.residuary import froude_number
from generator.physics.validity import Caution, outside
from generator.physics.water import GRAVITY
from generator.tables.load import read_table

SOURCE = "dsyhs_measurements"
LIGHT_FROM, LIMIT = 5.0, 0.45  # length-displacement ratio; Froude number of heavier hulls
# Within 25 % as an 80 % band, beyond the heaviest model: no tank result to hold it against.
HEAVY_DOUBT = 0.25 / 1.2816
HELD, HELD_HEAVY = "held_wider", "heavy_times_displacement"  # what is done outside the range


@dataclass(frozen=True)
class RegressionCurve:
    """What the regression says of one hull, or of each draw of it, ready to be read."""

    weight: Numbers  # displacement over water density [m4/s2]: g V
    coefficients: Array  # cubics of ln(1000 f) over ln Fn between the nodes
    doubt: Array  # (..., nodes): standard deviation of ln f
    highest: Array  # last Froude number


def regression_curve(form: HullForm) -> RegressionCurve:
    """What the regression says of a hull, at its nodes, made once for all speeds.

    ln(1000 f) at each node = mean + sum over measured hulls of w k(form, hull); doubt =
    max(own, family): own = spread (k(x, x) + 1 - k K^-1 k)^(1/2) by the process, family = what
    came out when whole families were left out; beyond the heaviest model with 25 % (as an 80 %
    band) added in squares

    Args:
        form: the canoe body

    Returns:
        the curve, for ``share_at`` and ``doubt_at``

    Valid: ratios of the measured hulls (``cautions``), held at the ends outside, the volume
        with its draught; keel and rudder are not in it; outside, the doubt grows with distance
    Source: dsyhs_measurements, own regression on 36 bare hulls
    """
    fit = fitted()
    hulls = _rows(form)
    held = np.clip(_rows(_within_weights(form)), fit.low, fit.high)
    towards = covariance(fit.covariance, held, fit.hulls)
    # most hulls lie within the series: then this is dear and the same twice
    near = towards if np.array_equal(held, hulls) else covariance(fit.covariance, hulls, fit.hulls)
    values = (fit.mean + towards @ fit.weights).reshape(*_shape(form), -1)
    slender = length_displacement(form)
    return RegressionCurve(
        weight=GRAVITY * np.asarray(form.canoe_volume),
        coefficients=cubics(np.log(fit.nodes), values),
        doubt=_doubt(hulls, near).reshape(*_shape(form), -1),
        highest=np.where(np.asarray(slender) >= LIGHT_FROM, fit.nodes[-1], LIMIT),
    )


def _doubt(hulls: Array, towards: Array) -> Array:
    fit = fitted()
    known = ((towards @ fit.inverse) * towards).sum(axis=-1)
    unknown = own_variance(fit.covariance, hulls) + 1.0 - known
    own = np.sqrt(np.maximum(unknown, 1.0))[:, None] * fit.spread
    heavy = hulls[:, [SLENDER]] < fit.low[SLENDER]
    doubt = np.hypot(np.maximum(own, fit.unseen_family), np.where(heavy, HEAVY_DOUBT, 0.0))
    return np.asarray(doubt)


def share_at(curve: RegressionCurve, froude: Array) -> Array:
    """Residuary resistance of the bare hull over its displacement weight, read from its curve.

    between the nodes by monotone cubic in ln f and ln Fn; below 0.20 as Fn^4

    Args:
        curve: of ``regression_curve``
        froude: Fn [-]

    Returns:
        f [-]; NaN above Fn 0.45, for hulls of length-displacement ratio from 5.0 above 0.55

    Valid: as ``regression_curve``
    Source: dsyhs_measurements, own regression on 36 bare hulls
    """
    nodes = fitted().nodes
    first, last = nodes[0], nodes[-1]
    places = np.log(np.clip(froude, first, last))
    share = np.exp(between(np.log(nodes), curve.coefficients, places)) / SHARES
    slow = np.minimum(np.abs(froude) / first, 1.0) ** 2
    return np.asarray(np.where(froude > curve.highest + 1e-9, np.nan, share * slow * slow))


def doubt_at(curve: RegressionCurve, froude: Array) -> Array:
    """Standard deviation of ln Rr: multiply Rr by exp(z sd), one z for all speeds of a draw.

    between the nodes by straight lines, level outside them

    Args:
        curve: of ``regression_curve``
        froude: Fn [-]

    Returns:
        sd of ln Rr [-]

    Valid: as ``regression_curve``
    Source: dsyhs_measurements, own regression, families left out one at a time
    """
    return _straight(fitted().nodes, curve.doubt, froude)


def regression_share(form: HullForm, froude: Array) -> Array:
    """Residuary resistance of the bare hull over its displacement weight.

    f = ``share_at`` of the hull's ``regression_curve``

    Args:
        form: the canoe body
        froude: Fn [-]

    Returns:
        f [-]; NaN as ``share_at``

    Valid: as ``regression_curve``
    Source: dsyhs_measurements, own regression on 36 bare hulls
    """
    return share_at(regression_curve(form), froude)


def residuary_of_bare_hull(form: HullForm, speed: Numbers, density: Numbers) -> Numbers:
    """Residuary resistance of the bare hull; the keel's own is added by ``keel_residuary``.

    Rr = ρ g V f(Fn, form)

    Args:
        form: the canoe body
        speed: v [m/s]
        density: ρ of the water [kg/m3]

    Returns:
        Rr [N]; NaN as ``regression_share``

    Valid: as ``regression_share``
    Source: dsyhs_measurements, own regression on 36 bare hulls
    """
    froude = np.asarray(froude_number(speed, form.waterline_length))
    return density * GRAVITY * form.canoe_volume * regression_share(form, froude)


def residuary_doubt(form: HullForm, speed: Numbers) -> Array:
    """Standard deviation of ln Rr for a hull and speeds.

    sd = ``doubt_at`` of the hull's ``regression_curve``

    Args:
        form: the canoe body
        speed: v [m/s]

    Returns:
        sd of ln Rr [-]

    Valid: any hull; outside the measured ratios it grows with the distance
    Source: dsyhs_measurements, own regression, families left out one at a time
    """
    froude = np.asarray(froude_number(speed, form.waterline_length))
    return doubt_at(regression_curve(form), froude)


def cautions(form: HullForm) -> tuple[Caution, ...]:
    """Where the form lies outside the measured hulls, and what is then done.

    each ratio of the form against the range of the measured hulls

    Args:
        form: the canoe body

    Returns:
        a caution for each ratio outside; its ends in [-]

    Valid: any hull
    Source: dsyhs_hydrostatics, range of the bare hulls
    """
    table, hulls = read_table(RATIOS), ratios(form)
    found = []
    for place, words in enumerate(table.text("words")):
        ends = [float(table.column(end)[place]) for end in ("low", "high")]
        values = hulls[..., place]
        if table.text("logarithm")[place] == "yes":
            ends, values = [float(np.exp(end)) for end in ends], np.exp(values)
        heavy = place == SLENDER and float(np.min(values)) < ends[0]
        message = HELD_HEAVY if heavy else HELD
        found.append(outside(words, values, ends[0], ends[1], SOURCE, message))
    return tuple(caution for caution in found if caution is not None)


def _within_weights(form: HullForm) -> HullForm:
    """The same waterlines floating at the nearest measured length-displacement ratio."""
    fit = fitted()
    slender = np.asarray(length_displacement(form))
    held = np.clip(slender, np.exp(fit.low[SLENDER]), np.exp(fit.high[SLENDER]))
    grown = (slender / held) ** 3  # of volume and of draught, so that Cp and Cm stay
    return replace(
        form,
        canoe_volume=form.canoe_volume * grown,
        canoe_draught=form.canoe_draught * grown,
    )


def _shape(form: HullForm) -> tuple[int, ...]:
    """The common shape of the form's draws."""
    return np.broadcast_shapes(*(np.shape(field) for field in vars(form).values()))


def _rows(form: HullForm) -> Array:
    """The ratios, one hull a row."""
    held = np.broadcast_to(ratios(form), (*_shape(form), len(fitted().low)))
    return held.reshape(-1, held.shape[-1])


def _straight(nodes: Array, values: Array, places: Array) -> Array:
    """Values on a last axis read between the nodes by straight lines, level outside."""
    held = np.minimum(np.maximum(places, nodes[0]), nodes[-1])
    interval = np.minimum(np.searchsorted(nodes, held, side="right") - 1, len(nodes) - 2)
    share = (held - nodes[interval]) / np.diff(nodes)[interval]
    drawn = values.shape[:-1]
    first = np.arange(int(np.prod(drawn, dtype=np.int64))).reshape(drawn) * len(nodes)
    at, flat = first + interval, values.reshape(-1)
    start = flat.take(at)
    return np.asarray(start + share * (flat.take(at + 1) - start))
