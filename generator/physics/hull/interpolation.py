"""How is a quantity known at some Froude numbers read between them, without overshoot?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array


def node_slopes(nodes: Array, values: Array) -> Array:
    """Slopes at the nodes that keep a cubic between them monotone (PCHIP).

    inside: (w1 + w2) / (w1/δ[k-1] + w2/δ[k]) where δ[k-1], δ[k] have one sign, else 0, with
    w1 = 2 h[k] + h[k-1], w2 = h[k] + 2 h[k-1]; ends: three-point formula, limited

    Args:
        nodes: places, rising [-]
        values: on the last axis one value for each node; draws before it [unit of the values]

    Returns:
        slope at each node [unit of the values per unit of the nodes]

    Valid: three nodes or more
    Source: fritsch_butland1984, equation of the weighted harmonic mean
    """
    h = np.diff(nodes)
    delta = np.diff(values) / h
    before, after = delta[..., :-1], delta[..., 1:]
    w1 = 2.0 * h[1:] + h[:-1]
    w2 = h[1:] + 2.0 * h[:-1]
    # (w1 + w2) / (w1/before + w2/after), written so that no zero is divided by
    same_sign = before * after > 0.0
    divisor = np.where(same_sign, w1 * after + w2 * before, 1.0)
    slopes = np.empty_like(values)
    slopes[..., 1:-1] = np.where(same_sign, (w1 + w2) * before * after / divisor, 0.0)
    slopes[..., 0] = _end_slope(h[0], h[1], delta[..., 0], delta[..., 1])
    slopes[..., -1] = _end_slope(h[-1], h[-2], delta[..., -1], delta[..., -2])
    return slopes


def _end_slope(near: float, far: float, delta_near: Array, delta_far: Array) -> Array:
    """Three-point slope at an end, kept on the side and within three times its own chord."""
    slope = ((2.0 * near + far) * delta_near - near * delta_far) / (near + far)
    wrong_side = np.sign(slope) != np.sign(delta_near)
    turning = np.sign(delta_near) != np.sign(delta_far)
    limited = np.where(turning & (np.abs(slope) > 3.0 * np.abs(delta_near)), 3 * delta_near, slope)
    return np.where(wrong_side, 0.0, limited)


def cubics(nodes: Array, values: Array) -> Array:
    """Coefficients of the monotone cubic of each interval.

    y[k], d[k], c = (3 δ - 2 d[k] - d[k+1])/h, b = (d[k] + d[k+1] - 2 δ)/h^2, with the slopes
    d of ``node_slopes``

    Args:
        nodes: places, rising [-]
        values: on the last axis one value for each node; draws before it [unit of the values]

    Returns:
        on the last axis y[k], d[k], c, b; before it the intervals [units of the values per
        power of the nodes]

    Valid: three nodes or more
    Source: fritsch_butland1984, cubic between nodes
    """
    d = node_slopes(nodes, values)
    h = np.diff(nodes)
    delta = np.diff(values) / h
    c = (3.0 * delta - 2.0 * d[..., :-1] - d[..., 1:]) / h
    b = (d[..., :-1] + d[..., 1:] - 2.0 * delta) / h**2
    return np.stack([values[..., :-1], d[..., :-1], c, b], axis=-1)


def between(nodes: Array, coefficients: Array, places: Array) -> Array:
    """Read the cubics of ``cubics`` at places between the nodes.

    y = y[k] + s (d[k] + s (c + s b)), s = x - x[k]

    Args:
        nodes: as the cubics were made on, rising [-]
        coefficients: of the cubics; their draws broadcast with the places [as ``cubics``]
        places: x, held inside the nodes [-]

    Returns:
        y [unit of the values]

    Valid: between the first and the last node
    Source: fritsch_butland1984, cubic between nodes
    """
    intervals = len(nodes) - 1
    drawn = coefficients.shape[:-2]
    first_row = np.arange(int(np.prod(drawn, dtype=np.int64))).reshape(drawn) * intervals
    held = np.minimum(np.maximum(places, nodes[0]), nodes[-1])
    interval = np.minimum(np.searchsorted(nodes, held, side="right") - 1, intervals - 1)
    picked = coefficients.reshape(-1, 4).take(first_row + interval, axis=0)
    s = held - nodes[interval]
    y = picked[..., 3] * s
    for power in (2, 1):
        y += picked[..., power]
        y *= s
    return np.asarray(y + picked[..., 0])
