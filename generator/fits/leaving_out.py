"""How far off is a form for hulls that it has not seen?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.arrays import Array, Flags
from generator.fits.likelihood import fit, predict
from generator.fits.measured_series import NODES, SCORED, MeasuredSeries
from generator.physics.hull.polynomials import keuning1998_share, keuning2008_share
from generator.physics.hull.regression_fit import SHARES
from generator.physics.hull.residuary import gko1993_share

EIGHTY = 1.2816  # sd of half an 80 % band


@dataclass(frozen=True)
class LeftOut:
    """Each hull as predicted by a regression that has not seen it: ln(1000 Rr/W) and its sd."""

    predicted: Array
    spread: Array


@dataclass(frozen=True)
class Score:
    """Error of total resistance over the scored nodes, shares of the measured."""

    rms: float
    bias: float
    worst: float


def one_hull(series: MeasuredSeries) -> LeftOut:
    """Every hull left out alone."""
    return _leave_out(series, np.arange(len(series.models), dtype=np.float64))


def one_family(series: MeasuredSeries) -> LeftOut:
    """Every family left out as a whole."""
    return _leave_out(series, series.family)


def _leave_out(series: MeasuredSeries, group: Array) -> LeftOut:
    """Lengths and slopes too are found again without the hulls of the group."""
    values = series.log_residuary
    predicted, spread = np.empty_like(values), np.empty_like(values)
    for number in np.unique(group):
        out = group == number
        made = fit(series.ratios[~out], values[~out], SCORED)
        predicted[out], spread[out] = predict(made, series.ratios[out])
    return LeftOut(predicted, spread)


def form_errors(series: MeasuredSeries, alone: LeftOut, family: LeftOut) -> dict[str, Array]:
    """Error of total resistance by every form that could be the primary one."""
    shares = {
        "hull_out": np.exp(alone.predicted) / SHARES,
        "family_out": np.exp(family.predicted) / SHARES,
        "gko1993": gko1993_share(series.form, NODES),
        "keuning1998": keuning1998_share(series.form, NODES),
        "keuning2008": keuning2008_share(series.form, NODES),
    }
    return {form: total_error(series, share) for form, share in shares.items()}


def total_error(series: MeasuredSeries, residuary: Array) -> Array:
    """Predicted over measured total resistance, less one, from Rr per weight at the nodes."""
    return np.asarray((series.friction + residuary) / series.total - 1.0)


def score(error: Array, hulls: Flags) -> Score:
    """The score of some hulls at the nodes that count."""
    chosen = error[hulls][:, SCORED]
    return Score(
        rms=float(np.sqrt((chosen**2).mean())),
        bias=float(chosen.mean()),
        worst=float(np.abs(chosen).max()),
    )


def log_error(series: MeasuredSeries, left: LeftOut) -> Array:
    """Rms error of ln Rr at each node for cruiser-like hulls left out."""
    missed = (series.log_residuary - left.predicted)[series.cruiser_like]
    return np.asarray(np.sqrt((missed**2).mean(axis=0)))


def coverage(series: MeasuredSeries, predicted: Array, spread: Array, hulls: Flags) -> float:
    """Share of the measured totals that the 80 % band holds."""
    low, high = (
        series.friction + np.exp(predicted + side * EIGHTY * spread) / SHARES for side in (-1, 1)
    )
    return float(((low <= series.total) & (series.total <= high))[hulls][:, SCORED].mean())
