"""What has the study found of one option, before it is judged?"""

from __future__ import annotations

from dataclasses import dataclass

from generator.analyses.bank import BankResult
from generator.analyses.break_even import BreakEven
from generator.analyses.chemistries import Chemistries
from generator.analyses.confined import ConfinedLeg
from generator.analyses.cost import Cost
from generator.analyses.cost_ledger import Ledger
from generator.analyses.cruising_range import Range
from generator.analyses.docking import Docking
from generator.analyses.duty import Duty
from generator.analyses.emissions import Emissions
from generator.analyses.headwind import Headwind
from generator.analyses.installation import Installation
from generator.analyses.key_figures import KeyFigures
from generator.analyses.legs import Legs
from generator.analyses.losses import Losses
from generator.analyses.low_speed import LowSpeed
from generator.analyses.match import Match
from generator.analyses.one_fault import OneFault
from generator.analyses.panel_yield import PanelYield
from generator.analyses.placement import Placement
from generator.analyses.plant import Store
from generator.analyses.power import Power
from generator.analyses.reserve import Reserve
from generator.analyses.rules_of_thumb import RulesOfThumb
from generator.analyses.savings import Savings
from generator.analyses.stream import Stream
from generator.analyses.sun_carries import SunCarries
from generator.analyses.sun_only import SunOnly
from generator.analyses.trial import TrialResult
from generator.analyses.under_sail import UnderSail
from generator.analyses.use import Use
from generator.analyses.weight import Weight
from generator.analyses.year import Year
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
    docking: Docking
    stream: Stream
    match: Match
    store: Store
    reserve: Reserve
    ranges: tuple[Range, ...]
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
    sail: UnderSail
    rules: RulesOfThumb
    ledger: Ledger
    cost: Cost
    confined: tuple[ConfinedLeg, ...]  # legs in shallow or narrow water
    savings: Savings | None  # absent until all options are there to be held against
    emissions: Emissions | None
    break_even: BreakEven | None
    range_cautions: tuple[Caution, ...]  # where a formula is used outside its range
    year: Year | None = None  # hour by hour; none without a bank or a position
    sun: SunOnly | None = None  # none without panels
    panels: PanelYield | None = None
    carried: SunCarries | None = None  # none without a bank or a position
