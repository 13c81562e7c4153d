"""What are the answers, on one option and on the boat, that pages read as records?"""

from __future__ import annotations

from generator.analyses.handling.docking import Docking
from generator.analyses.handling.headwind_table import HeadwindTable
from generator.analyses.handling.low_speed import CrawlRows, ReadingRows
from generator.analyses.handling.range_bars import RangeBar
from generator.analyses.handling.range_table import RangeRows
from generator.analyses.handling.stream import Stream
from generator.analyses.handling.under_sail import UnderSail
from generator.analyses.money.account import Account
from generator.analyses.money.carbon import CarbonResult
from generator.analyses.money.worth import Worth
from generator.analyses.motion.key_figures import Reached
from generator.analyses.motion.match import Match
from generator.analyses.motion.power import TopSpeed
from generator.analyses.motion.rules_of_thumb import RulesOfThumb
from generator.analyses.motion.speed_table import SpeedPower
from generator.analyses.particulars import Particulars
from generator.analyses.store.bank import BankResult
from generator.analyses.store.chemistries import Chemistries
from generator.analyses.store.duty import Duty
from generator.analyses.store.losses import Losses
from generator.analyses.store.one_fault import OneFault
from generator.analyses.store.reserve import Reserve
from generator.analyses.use.legs import LegResult, YearOfLegs
from generator.analyses.use.use import Use
from generator.analyses.verdict.failure import Failure, FailureCount
from generator.analyses.verdict.verdict import VerdictTold
from generator.analyses.weight.placement_result import PlacementResult
from generator.analyses.weight.weight_result import WeightResult
from generator.analyses.wiring.installation import Installation
from generator.analyses.year.energy_year import EnergyYear
from generator.analyses.year.sun_only import SunOnly
from generator.records import record


@record
class OptionAnswers:
    """Stands in the results as it stands here, among parts that are not yet records."""

    id: str
    name: str
    kind: str
    speed_power: SpeedPower
    wind_power: SpeedPower
    range: RangeRows
    low_speed: CrawlRows  # none in a diesel option, nor the next
    owners_readings: ReadingRows
    headwind: HeadwindTable
    docking: Docking
    match: Match
    reached: Reached
    stream: Stream
    under_sail: UnderSail
    rules_of_thumb: RulesOfThumb
    particulars: Particulars
    top_speed: TopSpeed
    range_at_cruise: tuple[RangeBar, ...]
    range_slower: RangeBar | None
    bank: BankResult | None
    reserve: Reserve
    duty: Duty | None
    one_fault: OneFault | None
    losses: Losses | None  # a table along speed
    chemistries: Chemistries | None
    legs: tuple[LegResult, ...]
    use: Use
    year: YearOfLegs
    cost: Account
    carbon: CarbonResult | None
    installation: Installation | None
    verdict: VerdictTold
    failures: tuple[Failure, ...]
    failure_count: FailureCount
    worth: Worth | None  # none in a copy without prices
    weight: WeightResult
    placement: PlacementResult | None  # none without a battery or its spaces
    energy_year: EnergyYear | None  # none without a bank or a position
    sun_only: SunOnly | None
