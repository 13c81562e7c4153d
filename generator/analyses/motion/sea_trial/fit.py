"""What factor on resistance, growing with speed or not, do the rows and the hull model ask for?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.arrays import Array, Numbers

FEWEST_FOR_GROWTH = 4  # rows
SPAN_FOR_GROWTH = 1.35  # fastest over slowest


@dataclass(frozen=True)
class Prior:
    """One sigma of the hull model: level of ln R, and its growth with ln v."""

    level: float
    growth: float


@dataclass(frozen=True)
class Noise:
    """Doubt of ln R of the rows: parts that rows share, a column each; and each row's own."""

    shared: Array  # (rows, methods)
    own: Array  # (rows,)

    @property
    def covariance(self) -> Array:
        """Of the rows with one another."""
        return np.asarray(self.shared @ self.shared.T + np.diag(self.own**2))


@dataclass(frozen=True)
class Fitted:
    """ln R above the model = level + growth ln(v / reference), per draw; sigma of the level."""

    level: Array
    growth: Array
    reference: float
    sigma: float
    grows: bool


def fit(
    speed: Array,
    logarithm: Array,
    noise: Noise,
    prior: Prior | None,
    deviates: tuple[Numbers, Numbers],
) -> Fitted:
    """Weighted least squares with the hull model as prior, for every draw at once.

    Without a prior the rows stand alone: least squares by their own doubts.

    Each draw is itself a draw of the prior, and its readings carry drawn errors, so its own
    least squares make a draw of the posterior (randomised maximum likelihood). ``deviates``
    are standard normal: the rows' own noise as level and as growth.
    """
    reference = float(np.exp(np.log(speed).mean()))
    run = np.log(speed / reference)
    grows = len(speed) >= FEWEST_FOR_GROWTH and float(np.ptp(run)) >= np.log(SPAN_FOR_GROWTH)
    design = np.stack([np.ones_like(run), run], axis=1)[:, : 2 if grows else 1]
    gain, left = _gain(design, noise, prior)
    found = (logarithm + _own_noise(design, noise, deviates)) @ gain.T
    growth = found[:, 1:2] if grows else np.zeros_like(found[:, :1])
    return Fitted(found[:, :1], growth, reference, float(np.sqrt(left[0, 0])), grows)


def _gain(design: Array, noise: Noise, prior: Prior | None) -> tuple[Array, Array]:
    """What turns the rows into level and growth, and the covariance that is left of these."""
    if prior is None:
        weight = np.linalg.inv(noise.covariance)
        left = np.linalg.inv(design.T @ weight @ design)
        return np.asarray(left @ design.T @ weight), np.asarray(left)
    spread = np.diag([prior.level**2, prior.growth**2][: design.shape[1]])
    inner = design @ spread @ design.T + noise.covariance
    gain = spread @ design.T @ np.linalg.inv(inner)
    return np.asarray(gain), np.asarray(spread - gain @ design @ spread)


def _own_noise(design: Array, noise: Noise, deviates: tuple[Numbers, Numbers]) -> Array:
    """Noise of the rows within what level and growth can see; the rest does not matter."""
    directions = np.linalg.qr(design / noise.own[:, None])[0]
    moved: Array = np.zeros((1, len(noise.own)))
    for column, deviate in zip(directions.T, deviates, strict=False):
        moved = moved + np.atleast_2d(np.asarray(deviate)) * column * noise.own
    return moved
