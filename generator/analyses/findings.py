"""What has the study found of one option, before it is judged?"""

from __future__ import annotations

from dataclasses import dataclass

from generator.analyses.handling.confined import ConfinedLeg
from generator.analyses.handling.cruising_range import Range
from generator.analyses.handling.docking import Docking
from generator.analyses.handling.headwind import Headwind
from generator.analyses.handling.holding import Holding
from generator.analyses.handling.low_speed import LowSpeed
from generator.analyses.handling.range_bars import RangeBars
from generator.analyses.handling.stream import Stream
from generator.analyses.handling.under_sail import UnderSail
from generator.analyses.handling.yardstick import Yardstick
from generator.analyses.money.break_even import BreakEven
from generator.analyses.money.cost import Cost
from generator.analyses.money.cost_ledger import Ledger
from generator.analyses.money.emissions import Emissions
from generator.analyses.money.savings import Savings
from generator.analyses.money.worth import Worth
from generator.analyses.motion.key_figures import KeyFigures
from generator.analyses.motion.match import Match
from generator.analyses.motion.plant import Store
from generator.analyses.motion.power import Power
from generator.analyses.motion.rules_of_thumb import RulesOfThumb
from generator.analyses.motion.trial import TrialResult
from generator.analyses.store.bank import BankResult
from generator.analyses.store.chemistries import Chemistries
from generator.analyses.store.duty import Duty
from generator.analyses.store.losses import Losses
from generator.analyses.store.one_fault import OneFault
from generator.analyses.store.outfit import Outfit
from generator.analyses.store.reserve import Reserve
from generator.analyses.use.legs import Legs
from generator.analyses.use.use import Use
from generator.analyses.weight.placement import Placement
from generator.analyses.weight.placement_result import PlacementResult
from generator.analyses.weight.weight import Weight
from generator.analyses.weight.weight_result import WeightResult
from generator.analyses.wiring.installation import Installation
from generator.analyses.year.energy_year import EnergyYear
from generator.analyses.year.panel_yield import PanelYield
from generator.analyses.year.sun_carries import SunCarries
from generator.analyses.year.sun_only import SunOnly
from generator.analyses.year.year import Year
from generator.case.case import Case
from generator.case.option import Option
from generator.physics.validity import Caution


@dataclass(frozen=True)
class Findings:
    """Every result of one option, in the order in which they were found."""

    case: Case
    option: Option
    place: int  # of the option in the case
    trial: TrialResult
    weight: Weight
    placement: Placement | None
    power: Power
    headwind: Headwind
    yard: Yardstick
    holding: Holding
    docking: Docking
    stream: Stream
    match: Match
    store: Store
    reserve: Reserve
    ranges: tuple[Range, ...]
    bars: RangeBars
    bank: BankResult | None
    installation: Installation | None
    legs: Legs
    use: Use
    low_speed: LowSpeed | None
    duty: Duty | None
    fault: OneFault | None
    losses: Losses | None
    chemistries: Chemistries | None
    key: KeyFigures
    sail: UnderSail | None  # none in a brief look, as all below that may be none
    rules: RulesOfThumb
    ledger: Ledger
    cost: Cost
    confined: tuple[ConfinedLeg, ...]  # legs in shallow or narrow water
    savings: Savings | None  # absent until all options are there to be held against
    emissions: Emissions | None
    break_even: BreakEven | None
    range_cautions: tuple[Caution, ...]  # where a formula is used outside its range
    worth: Worth | None = None
    weighed: WeightResult | None = None  # none in a brief look, as the next
    placed: PlacementResult | None = None  # none without a battery or its spaces
    year: Year | None = None  # hour by hour; none without a bank or a position
    energy_year: EnergyYear | None = None  # its sums
    sun: SunOnly | None = None  # none without panels
    panels: PanelYield | None = None
    carried: SunCarries | None = None  # none without a bank or a position

    @property
    def outfit(self) -> Outfit:
        """What of the option travels together."""
        scale = self.trial.scale
        return Outfit(self.case, self.option, scale, self.power, self.store, self.reserve)
