"""How much capacity do years at rest and cycles take from a cell?"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from generator.arrays import Array, Numbers
from generator.tables.load import read_table

DAY = 86400.0
KELVIN = 273.15
LOST_AT_END = 0.2  # share lost when a cell is called worn out: common practice
EMPTY_GRAPHITE, FULL_GRAPHITE = 0.0085, 0.78  # lithium content at 0 and 1, as in blast_lite


def graphite_potential(state: Numbers) -> Array:
    """Potential of the graphite electrode against lithium.

    Ua = sum of the terms of a table in x; x = 0.0085 + (0.78 - 0.0085) s

    Args:
        state: s, state of charge 0 to 1 [-]

    Returns:
        Ua [V]

    Valid: cells with a graphite electrode
    Source: safari2011, half-cell function of graphite; blast_lite, lithium content
    """
    x = EMPTY_GRAPHITE + np.asarray(state) * (FULL_GRAPHITE - EMPTY_GRAPHITE)
    table = read_table("energy/graphite_potential")
    shapes: dict[str, Callable[[Array], Array]] = {
        "constant": np.ones_like,
        "exponential": np.exp,
        "tanh": np.tanh,
    }
    rows = table.matrix("scale", "centre", "width").tolist()
    total = np.zeros_like(x)
    for kind, (scale, centre, width) in zip(table.text("term"), rows, strict=True):
        total = total + scale * shapes[kind]((x - centre) / width)
    return np.asarray(total)


def iron_phosphate_calendar_loss(time: Numbers, temperature: Numbers, state: Numbers) -> Array:
    """Share of capacity that rest takes from a large iron-phosphate cell.

    q = k t^p, k = a exp(b / T) exp(c Ua / T), t in days

    Args:
        time: t [s]
        temperature: T of the resting cell [degC]
        state: s, state of charge at rest [-]

    Returns:
        q, share of the new capacity lost [-]

    Valid: 10 to 45 degC; one maker's prismatic cell of more than 250 Ah
    Source: blast_lite, 250 Ah prismatic cell; gasper2023, the tests behind it
    """
    p = _parameters()
    kelvin = np.asarray(temperature) + KELVIN
    k = p["calendar_scale"] * np.exp(
        (p["calendar_temperature"] + p["calendar_potential"] * graphite_potential(state)) / kelvin
    )
    return np.asarray(k * (np.asarray(time) / DAY) ** p["calendar_exponent"])


def iron_phosphate_cycle_loss(
    cycles: Numbers, temperature: Numbers, depth: Numbers, mean_rate: Numbers
) -> Array:
    """Share of capacity that cycles take from a large iron-phosphate cell.

    q = k N^p, k = (a + b d + c r) (exp(e / T) + exp(f / T))

    Args:
        cycles: N, charge through the cell over its capacity [-]
        temperature: T [degC]
        depth: d, of discharge [-]
        mean_rate: r, charge and discharge current over capacity, averaged over all time [1/s]

    Returns:
        q, share of the new capacity lost [-]

    Valid: 10 to 45 degC, d 0.8 to 1, charge below 0.65 C, discharge below 1 C
    Source: blast_lite, 250 Ah prismatic cell; gasper2023, the tests behind it
    """
    p = _parameters()
    kelvin = np.asarray(temperature) + KELVIN
    wear = p["cycle_base"] + p["cycle_depth"] * np.asarray(depth)
    wear = wear + p["cycle_rate"] * np.asarray(mean_rate) * 3600.0
    k = wear * (np.exp(p["cycle_cold"] / kelvin) + np.exp(p["cycle_hot"] / kelvin))
    return np.asarray(k * np.asarray(cycles) ** p["cycle_exponent"])


def calendar_loss(
    chemistry: str, time: Numbers, life: Numbers, temperature: Numbers, state: Numbers
) -> Array:
    """Share of capacity that rest takes: a life in years, and how it moves with the conditions.

    LFP: q = 0.2 c(t, T, s) / c(L, Tr, 1), c the loss of the published cell;
    others: q = 0.2 (t / L)^p 2^((T - Tr) / Td) (1 - b (1 - s))

    Args:
        chemistry: LFP, NMC, AGM or flooded [-]
        time: t [s]
        life: L, until a fifth is lost, resting full at Tr [s]
        temperature: T of the resting bank [degC]
        state: s, state of charge at rest [-]

    Returns:
        q, share of the new capacity lost [-]

    Valid: 10 to 35 degC
    Source: practice, lives on board and their growth with warmth; blast_lite, course of LFP
    """
    table = read_table("energy/calendar_life")
    row = table.row_of("chemistry", chemistry)
    p, reference, doubling, b = (
        float(table.column(name)[row])
        for name in ("exponent", "reference", "doubling", "state_slope")
    )
    if chemistry == "LFP":
        whole = iron_phosphate_calendar_loss(life, reference, 1.0)
        return LOST_AT_END * iron_phosphate_calendar_loss(time, temperature, state) / whole
    warm = 2.0 ** ((np.asarray(temperature) - reference) / doubling)
    full = 1.0 - b * (1.0 - np.asarray(state))
    return np.asarray(LOST_AT_END * (np.asarray(time) / np.asarray(life)) ** p * warm * full)


def cycle_loss(cycles: Numbers, cycle_life: Numbers) -> Array:
    """Share of capacity that cycles take, from a life in cycles.

    q = 0.2 N / N_life

    Args:
        cycles: N, of the depth for which the life is stated [-]
        cycle_life: N_life, until a fifth is lost [-]

    Returns:
        q, share of the new capacity lost [-]

    Valid: depths near that of the stated life
    Source: practice, life in cycles
    """
    return np.asarray(LOST_AT_END * np.asarray(cycles) / np.asarray(cycle_life))


def _parameters() -> dict[str, float]:
    table = read_table("energy/ageing_lfp")
    return dict(zip(table.text("name"), table.column("value").tolist(), strict=True))
