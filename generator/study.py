"""The whole study on one screen: for each option the same path, none special."""

from __future__ import annotations

from dataclasses import dataclass

from generator.analyses.bank import bank_result
from generator.analyses.cautions import CautionItem, cautions
from generator.analyses.cost import cost
from generator.analyses.cruising_range import cruising_range
from generator.analyses.findings import Findings
from generator.analyses.hull import hull_cautions, vessel
from generator.analyses.key_figures import key_figures
from generator.analyses.legs import passages
from generator.analyses.placement import place as placed
from generator.analyses.plant import store
from generator.analyses.power import power
from generator.analyses.reserve import reserve
from generator.analyses.service_factor import ServiceFactor, service_factor
from generator.analyses.trial import TrialResult, read_trial
from generator.analyses.verdict import Verdict, verdict
from generator.analyses.weight import weigh
from generator.case.case import Case
from generator.case.option import Option
from generator.draws import Draws, drawn


@dataclass(frozen=True)
class OptionStudy:
    """What was found of one option, and the word on it."""

    findings: Findings
    verdict: Verdict


@dataclass(frozen=True)
class Study:
    """The answers for every option of a case."""

    draws: Draws
    trial: TrialResult
    options: tuple[OptionStudy, ...]
    cautions: tuple[CautionItem, ...]
    service: ServiceFactor


def run(case: Case, draws: Draws) -> Study:
    """Weight, hull and power, bank, legs, money, verdict: for each option in turn."""
    moved = drawn(case, draws)
    trial = read_trial(moved, vessel(moved.boat, moved.waters, 0.0))
    options = tuple(
        _option(moved, option, place, trial) for place, option in enumerate(moved.options)
    )
    found = tuple(option.findings for option in options)
    return Study(draws, trial, options, cautions(found), service_factor(moved, found[0].key))


def _option(case: Case, option: Option, place: int, trial: TrialResult) -> OptionStudy:
    weight = weigh(case, option)
    found = power(case, option, weight.net, trial.scale)
    held = store(option)
    kept = reserve(case, option, found, trial.scale, held)
    legs = passages(case, option, found, trial.scale, kept, held)
    findings = Findings(
        case=case,
        option=option,
        place=place,
        trial=trial,
        weight=weight,
        placement=placed(case, option, weight),
        power=found,
        store=held,
        reserve=kept,
        ranges=cruising_range(case, option, found, kept, held),
        bank=bank_result(case, option, found, trial.scale, kept, held, weight),
        legs=legs,
        key=key_figures(case, option, found, legs),
        cost=cost(case, option, legs),
        range_cautions=hull_cautions(found.vessel.form),
    )
    return OptionStudy(findings, verdict(findings))
