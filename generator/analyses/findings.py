"""What has the study found of one option, before it is judged?"""

from __future__ import annotations

from dataclasses import dataclass

from generator.analyses.bank import BankResult
from generator.analyses.confined import ConfinedLeg
from generator.analyses.cost import Cost
from generator.analyses.cruising_range import Range
from generator.analyses.emissions import Emissions
from generator.analyses.key_figures import KeyFigures
from generator.analyses.ledger import Ledger
from generator.analyses.legs import Legs
from generator.analyses.low_speed import LowSpeed
from generator.analyses.plant import Store
from generator.analyses.power import Power
from generator.analyses.reserve import Reserve
from generator.analyses.savings import Savings
from generator.analyses.swing import Swing
from generator.analyses.trial import TrialResult
from generator.analyses.weight import Weight
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
    power: Power
    store: Store
    reserve: Reserve
    ranges: tuple[Range, ...]
    bank: BankResult | None
    legs: Legs
    low_speed: LowSpeed | None
    key: KeyFigures
    ledger: Ledger
    cost: Cost
    confined: tuple[ConfinedLeg, ...]  # legs in shallow or narrow water
    savings: Savings | None  # absent until all options are there to be held against
    emissions: Emissions | None
    swing: Swing | None
    range_cautions: tuple[Caution, ...]  # where a formula is used outside its range
