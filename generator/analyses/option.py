"""What are the answers on one option that pages read as records?"""

from __future__ import annotations

from generator.analyses.money.worth import Worth
from generator.analyses.store.bank import BankResult
from generator.analyses.store.reserve import Reserve
from generator.analyses.use.legs import LegResult
from generator.analyses.verdict.failure import Failure, FailureCount
from generator.analyses.verdict.verdict import VerdictTold
from generator.analyses.wiring.installation import Installation
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
    installation: Installation | None
    verdict: VerdictTold
    failures: tuple[Failure, ...]
    failure_count: FailureCount
    worth: Worth | None  # none in a copy without prices
