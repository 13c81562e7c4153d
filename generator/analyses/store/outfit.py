"""What of an option travels together through the analyses of its use?"""

from __future__ import annotations

from dataclasses import dataclass

from generator.analyses.motion.demand import Scale
from generator.analyses.motion.plant import Store
from generator.analyses.motion.power import Power
from generator.analyses.store.reserve import Reserve
from generator.case.case import Case
from generator.case.option import Option


@dataclass(frozen=True)
class Outfit:
    """The boat as one option fits her out: what drives her, on what store, with what reserve.

    ``scale`` is what the sea trial says of the computed resistance; ``power`` are the curves of
    the plant on her hull.
    """

    case: Case
    option: Option
    scale: Scale
    power: Power
    store: Store
    reserve: Reserve

    @property
    def kept_in(self) -> str:
        """Bank or tank: whether what is stored is energy or fuel."""
        return "tank" if self.option.bank is None else "bank"
