"""What has the study found of the owner's use of an option: legs, berth, size?"""

from __future__ import annotations

from dataclasses import dataclass

from generator.analyses.store.bank_size import BySize
from generator.analyses.use.berth import Berthed
from generator.analyses.use.coverage import Coverage
from generator.analyses.use.energy_walk import Walk
from generator.analyses.use.leg_help import LegHelp
from generator.analyses.use.legs import SlowLeg
from generator.analyses.use.sizing import Sizing


@dataclass(frozen=True)
class Use:
    """Legs at their least-energy speed, what would mend them, the berth, the smallest bank."""

    slow: tuple[SlowLeg, ...]
    sizes: BySize | None  # what a larger or smaller store has usable; none in a brief look
    coverage: Coverage | None  # none without passages
    help: tuple[LegHelp, ...]  # of the legs that do not fit
    walk: Walk | None  # of the leg that must be made
    berth: Berthed | None  # none without a bank
    sizing: Sizing | None
