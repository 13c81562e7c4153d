"""Does an input lie outside what a source was tested on?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.arrays import Numbers


@dataclass(frozen=True)
class Caution:
    """An input outside the range of a source; low and high in the input's own unit."""

    quantity: str
    low: float
    high: float
    share_outside: float  # of the draws, 0 to 1
    source: str  # key of the bibliography
    message: str


def outside(
    quantity: str, values: Numbers, low: float, high: float, source: str, message: str = ""
) -> Caution | None:
    """Say that some of the values lie outside a range, or nothing.

    share = number of values below low or above high / number of values

    Args:
        quantity: what the values are, in words
        values: one value or draws [unit of the range]
        low: lower end of the tested range [unit of the values]
        high: upper end of the tested range [unit of the values]
        source: key of the bibliography
        message: what is done about it, one of the words of a range warning

    Returns:
        the caution, its share [-]; nothing when all values lie inside

    Valid: any numbers; ends belong to the range
    Source: practice, comparison with the tested range
    """
    beyond = (np.asarray(values) < low) | (np.asarray(values) > high)
    share = float(np.mean(beyond))
    if share == 0.0:
        return None
    return Caution(quantity, low, high, share, source, message or "outside")
