"""What are the answers on one option that pages read as records?"""

from __future__ import annotations

from generator.analyses.handling.docking import Docking
from generator.analyses.handling.headwind_table import HeadwindTable
from generator.analyses.handling.range_table import RangeRows
from generator.analyses.handling.stream import Stream
from generator.analyses.handling.under_sail import UnderSail
from generator.analyses.money.worth import Worth
from generator.analyses.motion.key_figures import Reached
from generator.analyses.motion.match import Match
from generator.analyses.motion.rules_of_thumb import RulesOfThumb
from generator.analyses.motion.speed_table import SpeedPower
from generator.analyses.store.bank import BankResult
from generator.analyses.store.reserve import Reserve
from generator.analyses.use.legs import LegResult
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
    headwind: HeadwindTable
    docking: Docking
    match: Match
    reached: Reached
    stream: Stream
    under_sail: UnderSail
    rules_of_thumb: RulesOfThumb
    bank: BankResult | None
    reserve: Reserve
    legs: tuple[LegResult, ...]
    worth: Worth | None  # none in a copy without prices
