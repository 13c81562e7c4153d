"""How alike are two hulls, and what did the measured ones teach?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from generator.arrays import Array
from generator.physics.hull.form import HullForm, beam_draught, length_beam, length_displacement
from generator.tables.load import read_table

RATIOS, HULLS, NODES = "hull/regression_ratios", "hull/regression_hulls", "hull/regression_nodes"
SHARES = 1000.0  # the regression is of thousandths of the weight
SLENDER = 4  # place of the length-displacement ratio among the ratios
VAGUE = 100.0  # variance of the level, in units of the noise: the hulls alone decide it


@dataclass(frozen=True)
class Covariance:
    """How alike two hulls are: variance in units of the noise; the rest per ratio."""

    centre: Array
    scale: Array
    lengths: Array
    slopes: Array
    amplitude: float


@dataclass(frozen=True)
class Fit:
    """The fitted tables as arrays."""

    covariance: Covariance
    low: Array  # (ratios,)
    high: Array
    hulls: Array  # (hulls, ratios)
    weights: Array  # (hulls, nodes)
    inverse: Array  # (hulls, hulls)
    nodes: Array  # Froude numbers
    mean: Array  # (nodes,) of ln(1000 Rr/W)
    spread: Array  # (nodes,) sd of ln Rr per unit of the process
    unseen_family: Array  # (nodes,) sd of ln Rr for a family left out


def ratios(form: HullForm) -> Array:
    """The ratios of a hull that the regression is made on.

    Cp, xb/L, (xf - xb)/L, ln(B/Tc), ln(LV), Cm, ln(Aw/V^(2/3)), ln(L/B)

    Args:
        form: the canoe body

    Returns:
        the eight ratios on a last axis [-]

    Valid: any hull
    Source: dsyhs_hydrostatics, quantities of the models
    """
    loading = form.waterplane_area / np.cbrt(form.canoe_volume) ** 2
    columns = (
        form.prismatic_coefficient,
        form.lcb,
        np.asarray(form.lcf) - form.lcb,
        np.log(beam_draught(form)),
        np.log(length_displacement(form)),
        form.midship_coefficient,
        np.log(loading),
        np.log(length_beam(form)),
    )
    return np.stack(np.broadcast_arrays(*columns), axis=-1)


def covariance(model: Covariance, first: Array, second: Array) -> Array:
    """Covariance of ln Rr between hulls, in units of the noise variance.

    k(x, y) = a^2 exp(-1/2 sum ((x - y) / l)^2) + sum s^2 x y + 100, x and y centred and scaled

    Args:
        model: a, l, s and the scaling
        first: x, a row a hull, ratios as they are [-]
        second: y, likewise [-]

    Returns:
        k, a row for each x and a column for each y [-]

    Valid: any ratios
    Source: dsyhs_measurements, own regression on the bare hulls
    """
    x, y = ((hulls - model.centre) / model.scale for hulls in (first, second))
    linear = (x * model.slopes**2) @ y.T
    x, y = x / model.lengths, y / model.lengths
    distance = (x * x).sum(axis=-1)[:, None] + (y * y).sum(axis=-1) - 2.0 * x @ y.T
    near = np.exp(-0.5 * np.maximum(distance, 0.0))
    return np.asarray(model.amplitude**2 * near + linear + VAGUE)


def own_variance(model: Covariance, hulls: Array) -> Array:
    """Covariance of each hull with itself, in units of the noise variance.

    k(x, x) = a^2 + sum s^2 x^2 + 100

    Args:
        model: a, s and the scaling
        hulls: x, a row a hull, ratios as they are [-]

    Returns:
        k(x, x) of each hull [-]

    Valid: any ratios
    Source: dsyhs_measurements, own regression on the bare hulls
    """
    scaled = (hulls - model.centre) / model.scale
    return np.asarray(model.amplitude**2 + ((scaled * model.slopes) ** 2).sum(axis=-1) + VAGUE)


@lru_cache(maxsize=1)
def fitted() -> Fit:
    """The fitted tables, read once.

    K^-1 = (k(hulls, hulls) + 1)^-1

    Returns:
        the fit; its numbers in [-]

    Valid: the tables of the package
    Source: dsyhs_measurements, own regression on 36 bare hulls
    """
    scales, measured, nodes = (read_table(name) for name in (RATIOS, HULLS, NODES))
    names = scales.text("ratio")
    model = Covariance(
        centre=scales.column("centre"),
        scale=scales.column("scale"),
        lengths=scales.column("length"),
        slopes=scales.column("slope"),
        amplitude=float(scales.column("amplitude")[0]),
    )
    hulls = measured.matrix(*names)
    own = covariance(model, hulls, hulls) + np.eye(len(hulls))
    weights = [name for name in measured.names if name.startswith("weight")]
    return Fit(
        covariance=model,
        low=scales.column("low"),
        high=scales.column("high"),
        hulls=hulls,
        weights=measured.matrix(*weights),
        inverse=np.asarray(np.linalg.inv(own), dtype=np.float64),
        nodes=nodes.column("froude_number"),
        mean=nodes.column("mean"),
        spread=nodes.column("spread"),
        unseen_family=nodes.column("unseen_family"),
    )
