"""What are payments over years worth today, and when has a first cost paid itself back?"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array, Numbers


def present_value(flows: Array, rate: Numbers) -> Array:
    """Net present value of a row of payments, the first one made now and not discounted.

    NPV = sum of C_t / (1 + r)^t for t = 0, 1, ...

    Args:
        flows: C, years along the last axis, year 0 first [currency]
        rate: r, real, per year; a number or of shape (n, 1) [-]

    Returns:
        NPV, without the axis of years [currency]

    Valid: r above -1; real rate with real payments, never mixed with nominal ones
    Source: gitman2003, net present value; numpy_financial, npv
    """
    step = _step(rate)
    worth = np.asarray(flows[..., -1])
    for year in range(np.shape(flows)[-1] - 2, -1, -1):  # a column at a time: no power, no copy
        worth = worth * step + flows[..., year]
    return np.asarray(worth)


def discounted(flows: Array, rate: Numbers) -> Array:
    """Each payment at its worth today.

    C_t / (1 + r)^t

    Args:
        flows: C, years along the last axis, year 0 first [currency]
        rate: r, real, per year; a number or of shape (n, 1) [-]

    Returns:
        payments at their worth today, same axes [currency]

    Valid: as present_value
    Source: gitman2003, net present value
    """
    step = _step(rate)
    years = np.shape(flows)[-1]
    factor = np.ones_like(step)
    found = np.empty((years, *np.broadcast_shapes(np.shape(flows)[:-1], np.shape(step))))
    for year in range(years):
        np.multiply(flows[..., year], factor, out=found[year, ...])
        factor = factor * step
    return np.moveaxis(found, 0, -1)


def cumulative(flows: Array, rate: Numbers) -> Array:
    """What has been paid up to and with each year, at its worth today.

    S_T = sum of C_t / (1 + r)^t for t = 0 ... T

    Args:
        flows: C, years along the last axis, year 0 first [currency]
        rate: r, real, per year; a number or of shape (n, 1) [-]

    Returns:
        S, years along the last axis [currency]

    Valid: as present_value
    Source: gitman2003, net present value
    """
    found = discounted(flows, rate)
    for year in range(1, np.shape(found)[-1]):
        found[..., year] += found[..., year - 1]
    return found


def annuity(principal: Numbers, rate: Numbers, years: int) -> Array:
    """Equal payment at the end of each year that is worth the principal today.

    A = P r / (1 - (1 + r)^-n), P / n where r is 0

    Args:
        principal: P, positive for a positive payment [currency]
        rate: r, real, per year [-]
        years: n, above 0 [year]

    Returns:
        A [currency per year]

    Valid: r above -1
    Source: gitman2003, annuity; numpy_financial, pmt (there with the opposite sign)
    """
    r = np.asarray(rate, dtype=np.float64)
    # log1p and expm1 keep their digits where 1 - (1 + r)^-n would lose them at small rates.
    growth = -np.expm1(-years * np.log1p(r))
    factor = np.where(r == 0.0, 1.0 / years, r) / np.where(r == 0.0, 1.0, growth)
    return np.asarray(principal * factor)


def recovery(savings: Array) -> Array:
    """Years until what was saved has returned what was spent, and stays returned.

    n = t + S_t / (S_t - S_(t+1)) for the last t with S_t below zero; S is the running sum

    Args:
        savings: of each year, year 0 (the extra first cost, negative) first [currency]

    Returns:
        n, without the axis of years [year]; 0 where nothing is owed at any time, infinite where
        the last year still owes

    Valid: savings spread evenly over each year; a later loss, as by a replacement, opens the
        debt again
    Source: gitman2003, payback period
    """
    owed = np.zeros(np.shape(savings)[:-1])
    years = np.zeros_like(owed)
    for year in range(np.shape(savings)[-1]):
        now = owed + savings[..., year]
        rise = np.where(now > owed, now - owed, 1.0)
        crossed = (owed < 0.0) & (now >= 0.0)
        years = np.where(now < 0.0, np.inf, np.where(crossed, year - 1.0 - owed / rise, years))
        owed = now
    return np.asarray(years)


def _step(rate: Numbers) -> Array:
    """What a payment loses by waiting one year, without the axis of years."""
    step = 1.0 / (1.0 + np.asarray(rate, dtype=np.float64))
    return np.asarray(step[..., 0] if step.ndim else step)
