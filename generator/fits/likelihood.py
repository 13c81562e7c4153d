"""Which lengths and slopes of a Gaussian process do the measured hulls make most likely?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from scipy.optimize import minimize

from generator.arrays import Array, Flags
from generator.physics.hull.regression_fit import Covariance, covariance

# Logarithms of amplitude, lengths, slopes, all in units of the noise and of each ratio's spread.
START = (1.0, 1.0, 0.5)
LOWEST = (-3.0, -0.7, -5.0)
HIGHEST = (4.0, 4.0, 4.0)
# A faint wish that lengths be near e and slopes near one, so that no ratio runs away unasked.
LENGTH_WISH, SLOPE_WISH = 0.3, 0.075


@dataclass(frozen=True)
class Fitted:
    """A regression made on some hulls: what it needs to predict others."""

    covariance: Covariance
    ratios: Array  # (hulls, ratios), as they are
    weights: Array  # (hulls, nodes)
    mean: Array  # (nodes,) mean of ln(1000 Rr/W)
    spread: Array  # (nodes,) sd of ln Rr per unit of the process
    inverse: Array  # (hulls, hulls)


def fit(ratios: Array, values: Array, scored: Flags) -> Fitted:
    """The regression on these hulls; the scored nodes alone choose lengths and slopes."""
    centre, scale = ratios.mean(axis=0), ratios.std(axis=0)
    mean = values.mean(axis=0)
    rest = values - mean
    choice = most_likely((ratios - centre) / scale, rest[:, scored])
    amplitude, lengths, slopes = _parts(choice)
    model = Covariance(centre, scale, lengths, slopes, amplitude)
    inverse = np.asarray(np.linalg.inv(covariance(model, ratios, ratios) + np.eye(len(ratios))))
    weights = inverse @ rest
    spread = np.asarray(np.sqrt((rest * weights).sum(axis=0) / len(ratios)))
    return Fitted(model, ratios, weights, mean, spread, inverse)


def predict(fitted: Fitted, ratios: Array) -> tuple[Array, Array]:
    """Mean and standard deviation of ln(1000 Rr/W) at the nodes for other hulls."""
    towards = covariance(fitted.covariance, ratios, fitted.ratios)
    own = np.diagonal(covariance(fitted.covariance, ratios, ratios))
    left = own + 1.0 - np.einsum("ij,jk,ik->i", towards, fitted.inverse, towards)
    return fitted.mean + towards @ fitted.weights, np.sqrt(left)[:, None] * fitted.spread


def most_likely(ratios: Array, rest: Array) -> Array:
    """The parameters of the highest marginal likelihood; all nodes share them."""
    count = ratios.shape[1]
    spread_out = np.repeat(np.arange(3), (1, count, count))
    bounds = list(zip(np.array(LOWEST)[spread_out], np.array(HIGHEST)[spread_out], strict=True))
    found = minimize(
        _unlikelihood,
        np.array(START)[spread_out],
        args=(ratios, rest),
        jac=True,
        method="L-BFGS-B",
        bounds=bounds,
    )
    return np.asarray(found.x)


def _unlikelihood(parameters: Array, ratios: Array, rest: Array) -> tuple[float, Array]:
    """Minus the logarithm of the likelihood per node, scale eliminated; and its gradient."""
    hulls, count = ratios.shape
    amplitude, lengths, slopes = _parts(parameters)
    model = Covariance(np.zeros(count), np.ones(count), lengths, slopes, amplitude)
    noisy = covariance(model, ratios, ratios) + np.eye(hulls)
    inverse = np.linalg.inv(noisy)
    weights = inverse @ rest
    misfit = (rest * weights).sum(axis=0)
    value = 0.5 * np.linalg.slogdet(noisy)[1] + 0.5 * hulls * np.log(misfit / hulls).mean()
    pull = 0.5 * (inverse - hulls * (weights / misfit) @ weights.T / rest.shape[1])
    gradient = np.array([(pull * change).sum() for change in _changes(model, ratios)])
    wish = np.repeat((0.0, LENGTH_WISH, SLOPE_WISH), (1, count, count))
    off = parameters - np.repeat(START, (1, count, count))
    return float(value + 0.5 * (wish * off**2).sum()), gradient + wish * off


def _changes(model: Covariance, ratios: Array) -> Iterator[Array]:
    """Change of the covariance with each logarithm: amplitude, lengths, slopes."""
    apart = ratios[:, None, :] - ratios
    near = model.amplitude**2 * np.exp(-0.5 * ((apart / model.lengths) ** 2).sum(axis=-1))
    yield 2.0 * near
    for place, length in enumerate(model.lengths):
        yield near * (apart[..., place] / length) ** 2
    for place, slope in enumerate(model.slopes):
        yield 2.0 * slope**2 * np.outer(ratios[:, place], ratios[:, place])


def _parts(parameters: Array) -> tuple[float, Array, Array]:
    """Amplitude, lengths and slopes from their logarithms."""
    count = (len(parameters) - 1) // 2
    natural = np.exp(parameters)
    return float(natural[0]), natural[1 : 1 + count], natural[1 + count :]
