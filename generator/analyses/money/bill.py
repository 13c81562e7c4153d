"""What does the expected case cost, in lines that add?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.percentiles import scalar
from generator.arrays import Array, Numbers


@dataclass(frozen=True)
class Bill:
    """The best estimate in whole units of money: as printed, lines add to their sum.

    ``contingency`` is what ``first`` holds beside the payments of the ledger. ``first``, less
    ``end_worth``, and what comes yearly and later at its worth today are the cost of ownership.
    Nan where the energy of a leg is not known.
    """

    first: float
    contingency: float
    energy: float  # per year
    service: float
    other: float
    yearly_worth: float  # what comes every year, over the horizon
    later_worth: float  # overhauls and banks to come
    end_worth: float  # what engine, motor and bank are worth at the end

    @property
    def yearly(self) -> float:
        """Energy, service and what else comes every year."""
        return self.energy + self.service + self.other

    @property
    def ownership(self) -> float:
        """Over the horizon, in present value."""
        return self.first + self.yearly_worth + self.later_worth - self.end_worth

    @staticmethod
    def whole(amount: Numbers) -> float:
        """The best estimate of an amount in whole units of money."""
        return float(np.round(scalar(amount)))

    @staticmethod
    def printed(values: Array, expected: float) -> Array:
        """Draws of an amount with the expected case in front, as the printed lines have it.

        Where nothing is drawn the amount itself stays behind it, for the ends of its band.
        """
        drawn = values[1:] if values.shape[0] > 1 else values
        return np.vstack([np.full((1, drawn.shape[1]), expected), drawn])
