"""Which fuse may protect a conductor, and which class of fuse breaks the fault?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, lru_cache

import numpy as np

from generator.tables.load import read_table

FIFTY_VOLTS = 50.0  # V, where the rule for fuses changes
LARGE_BANK, LARGE_BREAKING = 2200.0, 20000.0  # A, above which abyc_e11 asks for as much
LOAD_SHARE = 0.8  # of its rating that a fuse carries for good
OVER_AMPACITY = 1.5  # of allowable current, at most


@dataclass(frozen=True)
class FuseClass:
    """A class of fuse: V, A, and the heat it lets through over the square of its rating [s]."""

    name: str
    voltage: float
    breaking: float
    let_through: float


def fuse_ratings() -> list[float]:
    """Ratings in which fuses are sold, rising.

    The column of a table.

    Returns:
        ratings [A]

    Valid: direct current on boats
    Source: practice, usual series of ratings
    """
    return list(_ratings())


@cache
def _ratings() -> tuple[float, ...]:
    return tuple(float(rating) for rating in read_table("energy/fuse_sizes").column("rating"))


def least_fuse(continuous: float, lasting: float) -> float | None:
    """Smallest rating sold that carries a load for good and a longer peak.

    I_f >= I / 0.8 and I_f >= I_peak

    Args:
        continuous: I, for good [A]
        lasting: I_peak, for minutes [A]

    Returns:
        rating [A]; none where no rating is large enough

    Valid: fuse in air near 30 degC
    Source: practice, four fifths of its rating for a lasting load
    """
    asked = max(continuous / LOAD_SHARE, lasting)
    return next((rating for rating in _ratings() if rating >= asked), None)


def most_fuse(ceiling: float, allowable: float) -> float:
    """Highest rating that a conductor's fuse may have.

    Below 50 V 1.5 Ia; from 50 V on Ia, or the next rating sold above it, no more than 1.5 Ia.
    The voltage is the highest on charge, not the one on the label.

    Args:
        ceiling: highest voltage of the circuit [V]
        allowable: Ia of the conductor in its space and bundle [A]

    Returns:
        rating [A]

    Valid: direct current; the rule binds boats with petrol engines and serves others as a table
    Source: cfr33_183, section 183.455
    """
    most = OVER_AMPACITY * allowable
    if ceiling < FIFTY_VOLTS:
        return most
    above = (rating for rating in _ratings() if rating >= allowable)
    return min(next(above, allowable), most)


@lru_cache(maxsize=4096)  # each circuit tries every rating, of every bank that is looked at
def fuse_class(ceiling: float, fault: float, rating: float) -> FuseClass | None:
    """First class of fuse that bears the voltage and breaks the fault.

    The first row of a table with U >= ceiling, breaking >= fault and the rating in its range.

    Args:
        ceiling: highest voltage of the circuit [V]
        fault: prospective current at the fuse [A]
        rating: of the fuse [A]

    Returns:
        the class; none where no class does

    Valid: the maker's sheet of the fuse that is bought comes first
    Source: practice, usual ratings of the classes
    """
    table = read_table("energy/fuse_classes")
    fits = (
        (table.column("voltage") >= ceiling)
        & (table.column("breaking") >= fault)
        & (table.column("least") <= rating)
        & (table.column("most") >= rating)
    )
    if not fits.any():
        return None
    row = int(np.argmax(fits))
    numbers = table.matrix("voltage", "breaking", "let_through")[row]
    return FuseClass(table.text("name")[row], *(float(number) for number in numbers))


def selective(upstream: float, downstream: float) -> bool:
    """Does the fuse nearer the fault open alone?

    I_up >= 1.6 I_down

    Args:
        upstream: rating nearer the battery [A]
        downstream: rating nearer the load [A]

    Returns:
        whether it does [-]

    Valid: fuses of one class and family; across classes the makers' curves decide
    Source: iec60269, ratio of ratings for fuses of class gG
    """
    return upstream >= 1.6 * downstream


def clearing_time(rating: float, let_through: float, fault: float) -> float:
    """Time for which a fault would have to flow to do what its fuse lets through.

    t = m I_f² / I²

    Args:
        rating: I_f of the fuse [A]
        let_through: m, heat let through over the square of the rating [s]
        fault: I, prospective current [A]

    Returns:
        t [s]

    Valid: faults of ten times the rating and more
    Source: practice, let-through of the classes
    """
    return let_through * (rating / fault) ** 2


def breaker_capacity(cranking: float, branch: bool) -> float:
    """Breaking capacity asked of a breaker on 12 or 24 V.

    The first row of a table whose limit is not below the bank's cranking current.

    Args:
        cranking: cold cranking current of the bank [A]
        branch: whether it stands in a branch; a main breaker else [-]

    Returns:
        capacity [A]

    Valid: 12 and 24 V; the maker's short-circuit current comes first where it is known
    Source: abyc_e11, interrupting capacity of breakers as quoted in the trade
    """
    table = read_table("energy/interrupting")
    if cranking > LARGE_BANK:
        return LARGE_BREAKING
    row = int(np.searchsorted(table.column("cranking_most"), cranking))
    return float(table.column("branch" if branch else "main")[row])
