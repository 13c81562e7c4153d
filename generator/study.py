"""The whole study on one screen: for each option the same path, none special."""

from __future__ import annotations

from dataclasses import dataclass, replace

from generator.analyses.findings import Findings
from generator.analyses.handling.under_sail import UnderSail, under_sail
from generator.analyses.handling.yardstick import yardstick
from generator.analyses.money.account import Account, account
from generator.analyses.money.carbon import CarbonResult, carbon
from generator.analyses.money.emissions import emissions
from generator.analyses.money.savings import fair_baseline, savings
from generator.analyses.money.terms import MoneyTerms, money_terms
from generator.analyses.money.worth import worth
from generator.analyses.motion.hull import vessel
from generator.analyses.motion.sea_states import SeaState, sea_states
from generator.analyses.motion.sea_trial.model import trial_option
from generator.analyses.motion.second_opinions import SecondOpinions, second_opinions
from generator.analyses.motion.service_factor import ServiceFactor, service_factor
from generator.analyses.motion.trial import TrialResult, read_trial
from generator.analyses.store.cold_months import with_coldest
from generator.analyses.use.ordinary_weather import with_ordinary_wind
from generator.analyses.use.outings import Outings, outings
from generator.analyses.verdict.cautions import CautionItem, cautions
from generator.analyses.verdict.criteria.catalogue import ListedCriterion, criteria, listed
from generator.analyses.verdict.curve_evidence import EVIDENCE, CurveEvidence, curve_evidence
from generator.analyses.verdict.failure import Failure, FailureCount
from generator.analyses.verdict.failures import counted, failures
from generator.analyses.verdict.papers import Papers, papers
from generator.analyses.verdict.range_warnings import RangeWarning, range_warnings
from generator.analyses.verdict.verdict import Verdict, VerdictTold, told, verdict
from generator.analyses.weight.weight import weigh
from generator.analyses.year.climate import Climate, climate
from generator.analyses.year.energy_year import energy_year
from generator.analyses.year.house import HouseLoads, house
from generator.analyses.year.option_year import option_year
from generator.analyses.year.panel_yield import panel_yield
from generator.analyses.year.sun_carries import SunCarries, reference_panels, sun_carries
from generator.analyses.year.sun_only import sun_only
from generator.analyses.year.weather import Sky, weather
from generator.analyses.year.year import Year, years
from generator.case.case import Case
from generator.draws import Draws, drawn
from generator.one_option import Ground, technical
from generator.turning import break_even_of

DIESELS = ("keep", "new diesel")
MOORING = 12  # id of the criterion


@dataclass(frozen=True)
class OptionStudy:
    """What was found of one option, and the word on it."""

    findings: Findings
    verdict: Verdict
    failures: tuple[Failure, ...]
    account: Account
    carbon: CarbonResult | None

    @property
    def told(self) -> VerdictTold:
        """The verdict as it stands in the results."""
        return told(self.verdict)

    @property
    def failure_count(self) -> FailureCount:
        """How many faults there are, and how many take the drive away."""
        return counted(self.failures)


@dataclass(frozen=True)
class Study:
    """The answers for every option of a case."""

    draws: Draws
    trial: TrialResult
    options: tuple[OptionStudy, ...]
    cautions: tuple[CautionItem, ...]
    service: ServiceFactor
    opinions: SecondOpinions
    loads: HouseLoads
    sky: Sky | None  # none where the case tells no position
    climate: Climate | None
    papers: Papers
    terms: MoneyTerms
    as_she_is: int  # place of the option whose figures stand for the boat herself

    @property
    def own(self) -> Findings:
        """What is found of the boat as she is."""
        return self.options[self.as_she_is].findings

    @property
    def evidence(self) -> CurveEvidence:
        """On what the power curve rests, as the criterion for it found."""
        rows = self.options[self.as_she_is].verdict.judgements
        row = next(item for item in rows if item.criterion.id == EVIDENCE)
        return curve_evidence(row, self.own, self.options[0].findings, self.opinions)

    @property
    def seas(self) -> tuple[SeaState, ...]:
        """The seas of the study in these waters."""
        return sea_states(self.own.power)

    @property
    def range_warnings(self) -> tuple[RangeWarning, ...]:
        """Where a formula is used outside what it was tested on."""
        every = (self.own, *(option.findings for option in self.options))
        return range_warnings(item for found in every for item in found.range_cautions)

    @property
    def criteria(self) -> tuple[ListedCriterion, ...]:
        """All criteria as they are listed."""
        return listed()


def stand(case: Case, draws: Draws) -> Ground:
    """Draw the case, read the trial and measure the engine that is in her."""
    moved = with_coldest(with_ordinary_wind(drawn(case, draws)))
    tried = trial_option(moved)
    aboard = 0.0 if tried is None else weigh(moved, tried).net
    screw = moved.propeller if tried is None else tried.propeller
    trial = read_trial(moved, vessel(moved.boat, moved.waters, aboard, screw))
    hull = vessel(moved.boat, moved.waters, 0.0, moved.propeller)
    return Ground(moved, trial, yardstick(moved, hull, trial.scale))


def run(case: Case, draws: Draws, year: bool = True) -> Study:
    """Weight, hull and power, bank, legs, money, verdict: for each option in turn.

    Without the ``year`` nothing is followed hour by hour; the position still tells wind and cold.
    """
    ground = stand(case, draws)
    moved, trial = ground.case, ground.trial
    alone = tuple(technical(ground, option, place) for place, option in enumerate(moved.options))
    loads, sky = house(moved), weather(moved) if year and moved.legs else None
    times = None if sky is None else outings(moved, sky)
    lived = alone if sky is None or times is None else _year(moved, alone, loads, sky, times)
    found = tuple(_against(case, moved, item, lived) for item in lived)
    options = tuple(
        OptionStudy(item, verdict(item), failures(item), account(item), carbon(item))
        for item in found
    )
    own = _as_she_is(case)
    return Study(
        draws=draws,
        trial=trial,
        options=options,
        cautions=cautions(found, found[own]),
        service=service_factor(moved, found[own].key),
        opinions=second_opinions(case, vessel(case.boat, case.waters, 0.0, case.propeller)),
        loads=loads,
        sky=sky,
        papers=papers(found, float(found[own].power.speed[-1])),
        terms=money_terms(case, fair_baseline(case)),
        climate=climate(sky),
        as_she_is=own,
    )


def _as_she_is(case: Case) -> int:
    """The present diesel where it is an option, else a new one, else the first."""
    kinds = [option.kind for option in case.options]
    return next((kinds.index(kind) for kind in DIESELS if kind in kinds), 0)


def _year(
    case: Case, alone: tuple[Findings, ...], loads: HouseLoads, sky: Sky, times: Outings
) -> tuple[Findings, ...]:
    """All options through all years of weather at once."""
    panels = [panel_yield(item.option, sky) for item in alone]
    asked = [
        option_year(item.outfit, item.place, _sail(item), given, loads, sky, times)
        for item, given in zip(alone, panels, strict=True)
    ]
    ran = {year.place: year for year in years(tuple(one for one in asked if one), sky, times)}
    found = []
    for item, given, one in zip(alone, panels, asked, strict=True):
        year = ran.get(item.place)
        sun, carried, told = None, None, None
        if one is not None and year is not None:
            carried = _carried(item, year, one.efficiency, sky)
        if given is not None and year is not None:
            told = energy_year(item.case, year, given, times)
        if given is not None and given.rated and one is not None and year is not None:
            sun = sun_only(item.power, given, loads, year, one.efficiency)
        found.append(
            replace(item, year=year, energy_year=told, sun=sun, panels=given, carried=carried)
        )
    return tuple(found)


def lived(item: Findings, sky: Sky) -> Findings:
    """One option through the years of weather, by itself."""
    times = outings(item.case, sky)
    return item if times is None else _year(item.case, (item,), house(item.case), sky, times)[0]


def _sail(item: Findings) -> UnderSail:
    """What the screw gives and takes under sail; a brief look has left it out."""
    if item.sail is not None:
        return item.sail
    return under_sail(item.case, item.option, item.power, item.trial.scale)


def _carried(item: Findings, year: Year, efficiency: float, sky: Sky) -> SunCarries | None:
    """Her weeks of use by her own panels, or by reference ones where she has none."""
    go = next(row.go for row in criteria() if row.id == MOORING)
    given = panel_yield(reference_panels(item.option), sky)
    assert given is not None
    return sun_carries(item.option, year, given, efficiency, item.legs, go)


def _against(case: Case, moved: Case, own: Findings, every: tuple[Findings, ...]) -> Findings:
    """One option held against both diesels, in money and in carbon."""
    keep, new = (
        next((found for found in every if found.option.kind == kind), None)
        for kind in ("keep", "new diesel")
    )
    fair = new if fair_baseline(case) == "new diesel" else keep
    held = savings(
        moved, own.option, own.cost, keep.cost if keep else None, new.cost if new else None
    )
    return replace(
        own,
        savings=held,
        worth=worth(moved, own.option, own.cost, held, fair.cost if fair else None),
        emissions=emissions(
            moved, own.option, own.cost, (fair.option, fair.cost) if fair else None
        ),
        break_even=break_even_of(case, own, fair)
        if fair and own.bank and own.cost.priced and fair.cost.priced
        else None,
    )
