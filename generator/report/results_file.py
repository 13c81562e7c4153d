"""What is in results.json? Every result of the study, by keys that stay."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

from generator.analyses.findings import Findings
from generator.answer.answer import Answer
from generator.case.case import Case
from generator.report.numbers import Display
from generator.report.results.carbon_part import carbon_part
from generator.report.results.case_part import (
    boat_part,
    case_part,
    engine_part,
    inputs_part,
    propeller_part,
    surroundings_part,
)
from generator.report.results.comparison_part import comparison_part
from generator.report.results.cost_part import cost_part, money_frame
from generator.report.results.curve_evidence import (
    band_row,
    crawl_rows,
    opinions_rows,
    reading_rows,
    score_rows,
)
from generator.report.results.curve_part import curve_rows, range_rows, wind_rows
from generator.report.results.docking_part import docking_part, match_part
from generator.report.results.energy_part import (
    chemistries_part,
    duty_part,
    losses_part,
    one_fault_part,
)
from generator.report.results.failures_part import failures_part, papers_part
from generator.report.results.frame_part import (
    cautions_part,
    criteria_part,
    evidence_part,
    range_warnings_part,
    seas_part,
    service_part,
)
from generator.report.results.headwind_part import headwind_part, limits_part
from generator.report.results.installation_part import installation_part
from generator.report.results.option_part import (
    bars,
    particulars,
    slower_bar,
    top_speed,
    year_part,
)
from generator.report.results.quick_part import quick_part
from generator.report.results.stream_part import stream_part
from generator.report.results.suffix import PER_SI, plain, without_idle_reasons
from generator.report.results.tornado_part import tornado_part
from generator.report.results.trial_part import trial_part
from generator.report.results.under_sail_part import rules_part, under_sail_part
from generator.report.results.use_part import goals_part, use_part
from generator.report.results.verdict_part import verdict_part
from generator.report.template import reason
from generator.report.tree import Telling, tree
from generator.search import Smallest
from generator.sensitivity import Tornado
from generator.study import OptionStudy, Study
from generator.tables.sources import sources
from generator.verbatim import as_typed, braced, kept_apart
from generator.version import VERSION

SCHEMA = 2
NO_BANK = "no propulsion battery"
NO_NEED = "neither a leg nor planned cruise has a number in half of the draws"


def build(
    case: Case,
    study: Study,
    moved: tuple[Tornado, ...] = (),
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
    told: dict[str, Any] = {
        "schema": SCHEMA,
        "tool_version": VERSION,
        **case_part(case, study.draws),
        "boat": boat_part(case, own),
        "engine": engine_part(case, keep),
        "propeller": propeller_part(case.propeller),
        "trial": trial_part(case, study.trial),
        "evidence": evidence_part(study),
        "service_factor": service_part(study.service),
        **surroundings_part(case, own),
        "weather": tree(study.climate, "weather", telling),
        "weather_why": None if study.climate else reason("no_position"),
        "house_loads": tree(study.loads, "house_loads", telling),
        **inputs_part(case),
        "sea_states": seas_part(own),
        "options": [
            _option(item, _money(moved, place), sizes, telling)
            | _lived(study, item.findings, telling)
            | tornado_part(study, _of(moved, place))
            | _led(led, place, telling)
            for place, item in enumerate(study.options)
        ],
        "answer": _answer(led, telling),
        "limits": limits_part() | goals_part(study),
        "money": money_frame(case, study),
        "comparison": comparison_part(found),
        "second_opinions": opinions_rows(study.opinions),
        "form_scores": score_rows(study.opinions),
        "form_band": band_row(study.opinions),
        "criteria": criteria_part(study),
        "cautions": cautions_part(study.cautions),
        "range_warnings": range_warnings_part((own, *found)),
        **papers_part(study.papers, float(own.power.speed[-1]) * PER_SI["kn"]),
        "warnings": [str(replace(item, file=case.file.name)) for item in case.warnings],
    }
    told["sources"] = _sources(told)
    typed = sorted(braced(case), key=len, reverse=True)
    result: dict[str, Any] = kept_apart(without_idle_reasons(plain(told)), typed)
    return result


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


def _of(moved: tuple[Tornado, ...], place: int) -> Tornado | None:
    """What moves the verdict of an option."""
    own = (item for item in moved if item.option == place)
    return next((item for item in own if item.criterion is not None), None)


def _money(moved: tuple[Tornado, ...], place: int) -> Tornado | None:
    """What moves its money."""
    own = (item for item in moved if item.option == place)
    return next((item for item in own if item.criterion is None), None)


def _option(
    item: OptionStudy, money: Tornado | None, sizes: tuple[Smallest, ...], telling: Telling
) -> dict[str, Any]:
    found = item.findings
    option, ranges = found.option, bars(found)
    key = f"options.{found.place}"
    bank = tree(found.bank, f"{key}.bank", telling)
    return {
        "id": option.id,
        "name": option.name,
        "kind": option.kind,
        "note": option.note,
        "reference": option.kind != "battery",
        "particulars": particulars(found),
        **quick_part(found, ranges),
        "speed_power": curve_rows(found, "calm"),
        "wind_power": wind_rows(found),
        "low_speed": crawl_rows(found.low_speed) if found.low_speed else [],
        "owners_readings": reading_rows(found.low_speed) if found.low_speed else [],
        "top_speed": top_speed(found),
        "headwind": headwind_part(found),
        "docking": docking_part(found),
        "match": match_part(found),
        "stream": stream_part(found),
        "under_sail": under_sail_part(found),
        "rules_of_thumb": rules_part(found),
        "range": range_rows(found),
        "range_at_cruise": ranges,
        "range_slower": slower_bar(found),
        "bank": bank,
        **({} if bank else {"bank_why": NO_BANK}),
        "reserve": tree(found.reserve, f"{key}.reserve", telling),
        "duty": duty_part(found),
        "one_fault": one_fault_part(found),
        "losses": losses_part(found),
        "chemistries": chemistries_part(found),
        "chemistries_why": NO_NEED if bank else NO_BANK,
        "legs": tree(found.legs.results, f"{key}.legs", telling),
        "use": use_part(found, sizes, telling),
        "year": year_part(found),
        **installation_part(found),
        "weight": tree(found.weighed, f"{key}.weight", telling),
        "cost": cost_part(found, money),
        "worth": tree(found.worth, f"{key}.worth", telling),
        "carbon": carbon_part(found),
        "placement": tree(found.placed, f"{key}.placement", telling),
        "placement_why": reason("no_spaces" if bank else "no_propulsion_bank"),
        "verdict": verdict_part(item.verdict, found.place, telling),
        **failures_part(item.failures, found.place),
    }


def _sources(tree: dict[str, Any]) -> list[dict[str, Any]]:
    """The sources that this study used, by key."""
    used = {row["source"] for row in tree["assumptions"]}
    used |= {row["source"] for row in tree["range_warnings"]}
    used |= set(METHOD_SOURCES)
    used |= set(SUN_SOURCES) if tree["weather"] else set()
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
