"""What are the answers on the whole study that pages read as records?"""

from __future__ import annotations

from generator.analyses.motion.sea_states import SeaState
from generator.analyses.motion.second_opinions import FormBand, OpinionRows, ScoreRows
from generator.analyses.motion.service_factor import ServiceFactor
from generator.analyses.motion.trial_table import TrialTable
from generator.analyses.verdict.cautions import CautionItem
from generator.analyses.verdict.criteria.catalogue import ListedCriterion
from generator.analyses.verdict.curve_evidence import CurveEvidence
from generator.analyses.verdict.limits_of_practice import LimitsOfPractice
from generator.analyses.verdict.papers import Certificate, Document, HandoverTest
from generator.analyses.verdict.range_warnings import RangeWarning
from generator.analyses.verdict.spares import Spare
from generator.records import record


@record
class StudyAnswers:
    """Stands in the results as it stands here, among parts that are not yet records."""

    evidence: CurveEvidence
    service_factor: ServiceFactor
    sea_states: tuple[SeaState, ...]
    criteria: tuple[ListedCriterion, ...]
    cautions: tuple[CautionItem, ...]
    range_warnings: tuple[RangeWarning, ...]
    documents: tuple[Document, ...]
    certificates: tuple[Certificate, ...]
    spares: tuple[Spare, ...]
    handover: tuple[HandoverTest, ...]
    trial: TrialTable | None
    limits: LimitsOfPractice
    second_opinions: OpinionRows
    form_scores: ScoreRows
    form_band: FormBand
