"""What are the answers on one option that pages read as records?"""

from __future__ import annotations

from generator.analyses.money.worth import Worth
from generator.analyses.store.bank import BankResult
from generator.analyses.store.reserve import Reserve
from generator.analyses.use.legs import LegResult
from generator.analyses.weight.placement_result import PlacementResult
from generator.analyses.weight.weight_result import WeightResult
from generator.analyses.year.energy_year import EnergyYear
from generator.analyses.year.sun_only import SunOnly
from generator.records import record


@record
class OptionAnswers:
    """Stands in the results as it stands here, among parts that are not yet records."""

    id: str
    name: str
    kind: str
    bank: BankResult | None
    reserve: Reserve
    legs: tuple[LegResult, ...]
    worth: Worth | None  # none in a copy without prices
    weight: WeightResult
    placement: PlacementResult | None  # none without a battery or its spaces
    energy_year: EnergyYear | None  # none without a bank or a position
    sun_only: SunOnly | None
