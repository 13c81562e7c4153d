"""What are the answers, on one option and on the boat, that pages read as records?"""

from __future__ import annotations

from generator.analyses.handling.docking import Docking
from generator.analyses.handling.headwind_table import HeadwindTable
from generator.analyses.handling.low_speed import CrawlRows, ReadingRows
from generator.analyses.handling.range_table import RangeRows
from generator.analyses.handling.stream import Stream
from generator.analyses.handling.under_sail import UnderSail
from generator.analyses.money.worth import Worth
from generator.analyses.motion.key_figures import Reached
from generator.analyses.motion.match import Match
from generator.analyses.motion.rules_of_thumb import RulesOfThumb
from generator.analyses.motion.second_opinions import FormBand, OpinionRows, ScoreRows
from generator.analyses.motion.speed_table import SpeedPower
from generator.analyses.motion.trial_table import TrialTable
from generator.analyses.store.bank import BankResult
from generator.analyses.store.reserve import Reserve
from generator.analyses.use.legs import LegResult
from generator.analyses.verdict.limits_of_practice import LimitsOfPractice
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
    bank: BankResult | None
    reserve: Reserve
    legs: tuple[LegResult, ...]
    worth: Worth | None  # none in a copy without prices


@record
class StudyAnswers:
    """What is the same for all options, likewise."""

    trial: TrialTable | None
    limits: LimitsOfPractice
    second_opinions: OpinionRows
    form_scores: ScoreRows
    form_band: FormBand
