"""Which seas does the study meet in these waters?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

import numpy as np

from generator.analyses.motion.power import WINDS, Power
from generator.arrays import Array
from generator.records import number, record

LABELS = {
    "calm": "Calm",
    "wind_15": "15 kn on the nose",
    "wind_20": "20 kn on the nose",
    "wind_25": "25 kn on the nose",
}


@record
class SeaState:
    """A wind ahead and the waves that it raises, best estimate."""

    id: str
    label: str
    beyond_limit: bool  # the formula of added resistance is taken at its limit
    wind: float = number("wind", "wind ahead")
    wave_height: Array = number("height", "significant height of the waves", expected=True)
    wave_period: Array | None = number("seconds", "period of the waves", expected=True)
    absent: Mapping[str, str] = field(
        default_factory=lambda: dict.fromkeys(("wave_height", "wave_period"), "no_waves")
    )


def sea_states(found: Power) -> tuple[SeaState, ...]:
    """The calm first, then each wind."""
    return tuple(
        SeaState(
            id=name,
            label=LABELS[name],
            beyond_limit=WINDS[name] > 0.0 and bool(np.atleast_2d(sea.beyond_limit)[0].any()),
            wind=WINDS[name],
            wave_height=sea.height,
            wave_period=sea.period if WINDS[name] > 0.0 else None,
        )
        for name, sea in found.seas.items()
    )
