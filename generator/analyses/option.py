"""What are the answers on one option that pages read as records?"""

from __future__ import annotations

from generator.analyses.money.worth import Worth
from generator.analyses.store.bank import BankResult
from generator.analyses.store.chemistries import Chemistries
from generator.analyses.store.duty import Duty
from generator.analyses.store.losses import Losses
from generator.analyses.store.one_fault import OneFault
from generator.analyses.store.reserve import Reserve
from generator.analyses.use.legs import LegResult
from generator.analyses.use.use import Use
from generator.records import record


@record
class OptionAnswers:
    """Stands in the results as it stands here, among parts that are not yet records."""

    id: str
    name: str
    kind: str
    bank: BankResult | None
    reserve: Reserve
    duty: Duty | None
    one_fault: OneFault | None
    losses: Losses | None  # a table along speed
    chemistries: Chemistries | None
    legs: tuple[LegResult, ...]
    use: Use
    worth: Worth | None  # none in a copy without prices
