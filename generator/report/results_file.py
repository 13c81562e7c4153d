"""What is in results.json? Every result of the study, by keys that stay."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

from generator.analyses.differences import Difference
from generator.analyses.findings import Findings
from generator.analyses.handling.headwind_table import HeadwindTable
from generator.analyses.handling.range_table import RangeRows
from generator.analyses.key_numbers import KeyNumbers
from generator.analyses.motion.speed_table import SpeedPower
from generator.analyses.motion.trial_table import TrialTable
from generator.analyses.particulars import Particulars
from generator.analyses.use.legs import YearOfLegs
from generator.analyses.verdict.goals import Goals
from generator.analyses.verdict.limits_of_practice import LimitsOfPractice
from generator.answer.answer import Answer
from generator.case.case import Case
from generator.report.numbers import Display
from generator.report.results.case_part import (
    boat_part,
    case_part,
    engine_part,
    inputs_part,
    propeller_part,
    surroundings_part,
)
from generator.report.results.suffix import plain, without_idle_reasons
from generator.report.template import reason
from generator.report.tree import Telling, tree
from generator.search import Smallest
from generator.sensitivity import MoneyTornado, Moved, Tornado
from generator.study import OptionStudy, Study
from generator.tables.sources import sources
from generator.verbatim import as_typed, braced, kept_apart
from generator.version import VERSION

SCHEMA = 2


def build(
    case: Case,
    study: Study,
    moved: Moved = (),
    sizes: tuple[Smallest, ...] = (),
    marked: bool = False,
    led: Answer | None = None,
) -> dict[str, Any]:
    """The whole results tree, in plain types.

    ``moved`` is what moves each option's verdict, ``sizes`` the smallest bank of each, ``led`` what
    the study leads to. For tests
    ``marked`` puts private signs around the numbers in the words of records.
    """
    found = tuple(option.findings for option in study.options)
    own, keep = found[study.as_she_is], _first(found, "keep")
    telling = Telling(Display(case.study.units, case.study.currency), marked)
    whole: dict[str, Any] = {
        "schema": SCHEMA,
        "tool_version": VERSION,
        **case_part(case, study.draws),
        "boat": boat_part(case, own),
        "engine": engine_part(case, keep),
        "propeller": propeller_part(case.propeller),
        **_shared(case, study, telling),
        "evidence": tree(study.evidence, "evidence", telling),
        "service_factor": tree(study.service, "service_factor", telling),
        **surroundings_part(case, own),
        "weather": tree(study.climate, "weather", telling),
        "weather_why": None if study.climate else reason("no_position"),
        "house_loads": tree(study.loads, "house_loads", telling),
        **inputs_part(case),
        "sea_states": tree(study.seas, "sea_states", telling),
        "options": [
            _option(item, moved, sizes, telling)
            | _lived(study, item.findings, telling)
            | _tornado(moved, place, telling)
            | _led(led, place, telling)
            for place, item in enumerate(study.options)
        ],
        "answer": _answer(led, telling),
        "money": tree(study.terms, "money", telling),
        "comparison": _comparison(found, telling),
        "criteria": tree(study.criteria, "criteria", telling),
        "cautions": tree(study.cautions, "cautions", telling),
        "range_warnings": tree(study.range_warnings, "range_warnings", telling),
        **tree(study.papers, "papers", telling),
        "warnings": [str(replace(item, file=case.file.name)) for item in case.warnings],
    }
    whole["sources"] = _sources(whole)
    typed = sorted(braced(case), key=len, reverse=True)
    result: dict[str, Any] = kept_apart(without_idle_reasons(plain(whole)), typed)
    return result


def _shared(case: Case, study: Study, telling: Telling) -> dict[str, Any]:
    """The trial, limits of the rules that pages name, and how far the curve is known."""
    return {
        "trial": tree(TrialTable.of(case, study.trial), "trial", telling),
        "limits": tree(LimitsOfPractice.told(), "limits", telling)
        | tree(Goals.of(study.options[0].verdict.judgements), "limits", telling),
        "second_opinions": tree(study.opinions.forms, "second_opinions", telling),
        "form_scores": tree(study.opinions.scores, "form_scores", telling),
        "form_band": tree(study.opinions.band, "form_band", telling),
    }


def _slow(found: Findings, key: str, telling: Telling) -> dict[str, Any]:
    """Watts at a crawl and what owners have read; nothing without a motor."""
    low = found.low_speed
    return {
        "low_speed": tree(low.rows, f"{key}.low_speed", telling) if low else [],
        "owners_readings": tree(low.readings, f"{key}.owners_readings", telling) if low else [],
    }


def _comparison(found: tuple[Findings, ...], telling: Telling) -> dict[str, Any]:
    """Where two motors differ by more than the doubt."""
    key = "comparison.differences"
    return {"differences": tree(Difference.all(found), key, telling)}


def _lived(study: Study, found: Findings, telling: Telling) -> dict[str, Any]:
    """The year of one option and what the sun alone does, or why there is none."""
    bank, panels, key = found.option.bank is not None, found.panels, f"options.{found.place}"
    lacks = "no_propulsion_bank" if study.climate else "no_position"
    dark = "no_panels" if bank else "no_propulsion_bank"
    if panels and panels.rated and found.energy_year:
        dark = "no_speed_by_motor"
    return {
        "energy_year": tree(found.energy_year, f"{key}.energy_year", telling),
        "energy_year_why": None if found.energy_year else reason(lacks),
        "sun_only": tree(found.sun, f"{key}.sun_only", telling),
        "sun_only_why": reason(dark if panels or not bank else "no_position"),
    }


def _answer(led: Answer | None, telling: Telling) -> dict[str, Any]:
    """What the study leads to; nothing where it was not asked for."""
    if led is None:
        return {"asked": False}
    return {
        "asked": True,
        "advice": tree(led.advice, "answer.advice", telling),
        "subjects": tree(led.subjects, "answer.subjects", telling),
        "comparison": tree(led.comparison, "answer.comparison", telling),
    }


def _led(led: Answer | None, place: int, telling: Telling) -> dict[str, Any]:
    """What mends an option, and until when its word holds."""
    if led is None:
        return {}
    key = f"options.{place}"
    return {
        "remedies": tree(led.sets.get(place, ()), f"{key}.remedies", telling),
        "until": tree(led.until.get(place), f"{key}.until", telling),
        "map": tree(led.maps.get(place), f"{key}.map", telling),
    }


def _first(found: tuple[Findings, ...], kind: str) -> Findings | None:
    return next((item for item in found if item.option.kind == kind), None)


def _tornado(moved: Moved, place: int, telling: Telling) -> dict[str, Any]:
    """What moves the verdict of an option."""
    own = (item for item in moved if item.option == place)
    found = next((item for item in own if isinstance(item, Tornado)), None)
    told = tree(found, f"options.{place}.tornado", telling)
    return {"tornado": told, "tornado_why": None if told else reason("nothing_decides")}


def _cost(item: OptionStudy, moved: Moved, telling: Telling) -> dict[str, Any]:
    """Its money, and what moves that."""
    place = item.findings.place
    own = (each for each in moved if each.option == place)
    swing = next((each for each in own if isinstance(each, MoneyTornado)), None)
    cost: dict[str, Any] = tree(item.account, f"options.{place}.cost", telling)
    return cost | (tree(swing, f"options.{place}.cost", telling) or {"swing": []})


def _option(
    item: OptionStudy, moved: Moved, sizes: tuple[Smallest, ...], telling: Telling
) -> dict[str, Any]:
    found = item.findings
    option = found.option
    key = f"options.{found.place}"
    year = YearOfLegs.of(found.legs, found.reserve.kept_in)
    bank = tree(found.bank, f"{key}.bank", telling)
    return {
        "id": option.id,
        "name": option.name,
        "kind": option.kind,
        "note": option.note,
        "reference": option.kind != "battery",
        "particulars": tree(Particulars.of(option), f"{key}.particulars", telling)
        | {"propeller": propeller_part(option.propeller)},
        **tree(KeyNumbers.of(found), key, telling),
        "speed_power": tree(SpeedPower.calm(found), f"{key}.speed_power", telling),
        "wind_power": tree(SpeedPower.in_wind(found), f"{key}.wind_power", telling),
        **_slow(found, key, telling),
        "top_speed": tree(found.power.top, f"{key}.top_speed", telling),
        "headwind": tree(HeadwindTable.of(found), f"{key}.headwind", telling),
        "docking": tree(found.docking, f"{key}.docking", telling),
        "match": tree(found.match, f"{key}.match", telling),
        "reached": tree(found.key.reached, f"{key}.reached", telling),
        "stream": tree(found.stream, f"{key}.stream", telling),
        "under_sail": tree(found.sail, f"{key}.under_sail", telling),
        "rules_of_thumb": tree(found.rules, f"{key}.rules_of_thumb", telling),
        "range": tree(RangeRows.of(found), f"{key}.range", telling),
        "range_at_cruise": tree(found.bars.at_cruise, f"{key}.range_at_cruise", telling),
        "range_slower": tree(found.bars.slower, f"{key}.range_slower", telling),
        "bank": bank,
        **({} if bank else {"bank_why": reason("no_propulsion_bank")}),
        "reserve": tree(found.reserve, f"{key}.reserve", telling),
        "duty": tree(found.duty, f"{key}.duty", telling),
        "one_fault": tree(found.fault, f"{key}.one_fault", telling),
        "losses": tree(found.losses, f"{key}.losses", telling),
        "chemistries": tree(found.chemistries, f"{key}.chemistries", telling),
        "chemistries_why": reason("neither_leg_nor_cruise" if bank else "no_propulsion_bank"),
        "legs": tree(found.legs.results, f"{key}.legs", telling),
        "use": _use(found, sizes, f"{key}.use", telling),
        "year": tree(year, f"{key}.year", telling),
        "installation": tree(found.installation, f"{key}.installation", telling),
        **({} if found.installation else {"installation_why": reason("no_propulsion_bank")}),
        "weight": tree(found.weighed, f"{key}.weight", telling),
        "cost": _cost(item, moved, telling),
        "worth": tree(found.worth, f"{key}.worth", telling),
        "carbon": tree(item.carbon, f"{key}.carbon", telling),
        "placement": tree(found.placed, f"{key}.placement", telling),
        "placement_why": reason("no_spaces" if bank else "no_propulsion_bank"),
        "verdict": _verdict(item, f"{key}.verdict", telling),
        "failures": tree(item.failures, f"{key}.failures", telling),
        "failure_count": tree(item.failure_count, f"{key}.failure_count", telling),
    }


def _verdict(item: OptionStudy, key: str, telling: Telling) -> dict[str, Any]:
    """The word and its rows; the reasons and conditions of page 1 are the words of some of them."""
    node: dict[str, Any] = tree(item.told, key, telling)
    rows = node["criteria"]
    return node | {
        "reasons": [rows[place]["words"] for place in item.verdict.reasons],
        "conditions": [rows[place]["words_condition"] for place in item.verdict.conditions],
    }


def _use(
    found: Findings, sizes: tuple[Smallest, ...], key: str, telling: Telling
) -> dict[str, Any]:
    """The owner's use, and the end of the search for the smallest bank."""
    use: dict[str, Any] = tree(replace(found.use, sun=found.carried), key, telling)
    size = next((item for item in sizes if item.place == found.place), None)
    use["smallest"] = tree(size, f"{key}.smallest", telling)
    return use | {"smallest_why": None if size else reason("no_propulsion_bank")}


def _sources(whole: dict[str, Any]) -> list[dict[str, Any]]:
    """The sources that this study used, by key."""
    used = {row["source"] for row in whole["assumptions"]}
    used |= {row["source"] for row in whole["range_warnings"]}
    used |= set(METHOD_SOURCES)
    used |= set(SUN_SOURCES) if whole["weather"] else set()
    return [
        {"key": source.key, "text": source.text}
        for source in sources().values()
        if source.key in used
    ]


SUN_SOURCES = (
    "nasa_sse",
    "merra2",
    "pfenninger2016",
    "coads",
    "ncep",
    "pvlib",
    "ineichen2002",
    "erbs1982",
    "faiman2008",
    "graham1988",
)
METHOD_SOURCES = (
    "cfr33_183",
    "abyc_e11",
    "iec60269",
    "dsyhs_measurements",
    "dsyhs_hydrostatics",
    "fastsim",
    "gko1993",
    "keuning1998",
    "keuning2008",
    "ittc57",
    "hoerner",
    "hazen1980",
    "stawave",
    "oosterveld1975",
    "derrett",
    "safari2011",
    "pysam",
    "blast_lite",
    "gasper2023",
    "iec60034",
    "peukert",
    "cfr_144_315",
    "gitman2003",
    "owid_energy",
)


def to_json(results: dict[str, Any]) -> str:
    """The tree as text; refuses what JSON cannot say."""
    return as_typed(json.dumps(results, indent=1, ensure_ascii=False, allow_nan=False)) + "\n"
