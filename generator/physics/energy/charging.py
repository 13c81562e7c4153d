"""How long does a battery take to be full again?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.arrays import Array, Numbers
from generator.tables.load import read_table

HOUR = 3600.0


@dataclass(frozen=True)
class Acceptance:
    """How a chemistry takes charge. 1/s, s, 1/s, [-]."""

    rate: float  # greatest charge current over capacity
    time_constant: float  # of the current at constant voltage
    tail: float  # current over capacity at which it counts as full
    kept: float  # share of the charge put in that comes out again


def acceptance(chemistry: str) -> Acceptance:
    """How a chemistry takes charge.

    Rate, tail and share of one table; tau = (1 - s) / r from the knee s at a rate r of another.

    Args:
        chemistry: LFP, NMC, AGM or flooded [-]

    Returns:
        greatest rate [1/s], time constant [s], tail [1/s], share kept [-]

    Valid: cells at 15 to 45 degC; the maker's sheet comes first
    Source: practice, charging by constant current and then constant voltage
    """
    table, knees = read_table("energy/absorption"), read_table("energy/taper")
    row, knee = (each.row_of("chemistry", chemistry) for each in (table, knees))
    rate, tail, kept = (float(table.column(name)[row]) for name in ("rate", "tail", "kept"))
    at, current = (float(knees.column(name)[knee]) for name in ("knee", "rate"))
    return Acceptance(rate / HOUR, (1.0 - at) / current * HOUR, tail / HOUR, kept)


def supply_power(breaker: Numbers, voltage: Numbers, share: Numbers) -> Numbers:
    """Power that a breaker gives for hours.

    P = k I U

    Args:
        breaker: I, rating [A]
        voltage: U, at the post under load [V]
        share: k, of the rating that it carries for hours [-]

    Returns:
        P [W]

    Valid: single phase, power factor 1; a charger without power-factor correction draws more
    Source: practice, continuous load at 80 % of a breaker
    """
    return share * breaker * voltage


def state_at_knee(rate: Numbers, time_constant: float, tail: float) -> Array:
    """State of charge at which the voltage is reached and the current begins to fall.

    s_cv = 1 - tau r, no higher than the state that counts as full, 1 - tau r_tail

    Args:
        rate: r, charge current over capacity [1/s]
        time_constant: tau, of the falling current [s]
        tail: r_tail, current over capacity at which it counts as full [1/s]

    Returns:
        s_cv [-]

    Valid: rates up to 0.5 C for lithium, 0.25 C for lead; a cell of constant resistance
    Source: practice, knee between constant current and constant voltage
    """
    return np.asarray(1.0 - time_constant * np.maximum(rate, tail))


def time_to_full(
    state: Numbers, rate: Numbers, time_constant: float, tail: float, kept: float
) -> Array:
    """Time from a state of charge until the bank counts as full.

    t = ((s_cv - s) / r + tau ln(r / r_tail)) / k where s lies below the knee, else
    t = tau ln((1 - s) / (1 - s_full)) / k; 0 from s_full = 1 - tau r_tail on

    Args:
        state: s, state of charge at the start [-]
        rate: r, charge current over capacity [1/s]
        time_constant: tau, of the falling current [s]
        tail: r_tail, current over capacity at which it counts as full [1/s]
        kept: k, share of the charge put in that is kept [-]

    Returns:
        t [s]; infinite where nothing charges

    Valid: constant current, then constant voltage with a current that falls by 1 - s over tau
    Source: practice, charging by constant current and constant voltage
    """
    s, r = np.broadcast_arrays(np.asarray(state, float), np.asarray(rate, float))
    s_cv = state_at_knee(r, time_constant, tail)
    s_full = 1.0 - time_constant * tail
    none = r <= 0.0
    safe = np.where(none, 1.0, r)
    rising = np.maximum(s_cv - s, 0.0) / safe
    start = np.clip(s, s_cv, s_full)
    falling = time_constant * np.log((1.0 - start) / (1.0 - s_full))
    return np.asarray(np.where(none & (s < s_full), np.inf, (rising + falling) / kept))
