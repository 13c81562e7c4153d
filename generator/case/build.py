"""How do checked keys become the frozen case, with every default filled in and listed?"""

from __future__ import annotations

import hashlib
from dataclasses import replace
from pathlib import Path

from generator.case.boat import (
    Boat,
    Floatation,
    Hull,
    Keel,
    Offsets,
    Rudder,
    Space,
    Waters,
    Windage,
)
from generator.case.boat_keys import BoatKeys
from generator.case.build_options import build_option
from generator.case.case import Case, CaseFile, Instruction
from generator.case.circumstances import (
    boat_sizes,
    boat_words,
    model_words,
    propeller_words,
    read_off,
    rig,
    waters_words,
)
from generator.case.diesel import Diesel, Propeller
from generator.case.factors import Carbon, Factors, Masses
from generator.case.files.weather_file import WeatherFile
from generator.case.fill import Desk
from generator.case.prices import Prices
from generator.case.said import Keys, line_of
from generator.case.schema import CaseKeys
from generator.case.streams import item_names
from generator.case.trial import SeaTrial, TrialRow
from generator.case.usage import Berth, House, Leg, Planning, StudyKeys
from generator.case.wiring import Papers
from generator.errors import Fault

DATUM = "aft end of the waterline"


def build_case(
    keys: CaseKeys,
    root: Keys,
    path: Path,
    content: bytes,
    warnings: tuple[Fault, ...],
    beside: tuple[Offsets | None, WeatherFile | None] = (None, None),
) -> Case:
    """The frozen case; only for keys without a fault.

    ``beside``: what stands in the files that the case names.
    """
    desk = Desk(keys.study.currency or "", item_names(keys))
    offsets, weather = beside
    boat = replace(_boat(keys, root, desk), offsets=offsets)
    screw = (*propeller_words(keys, keys.propeller), keys.propeller.installation or "")
    model = model_words(keys.boat, float(boat.hull.canoe_share))
    return Case(
        file=CaseFile(path.name, path.stem, hashlib.sha256(content).hexdigest()),
        study=_study(keys),
        boat=boat,
        waters=_waters(keys, desk),
        weather=weather,
        factors=desk.fill(Factors, keys.factors, "factors", "factors", model),
        masses=desk.fill(Masses, keys.masses, "masses", "masses"),
        engine=desk.fill(Diesel, keys.engine, "engine", "engine", screw),
        propeller=desk.fill(Propeller, keys.propeller, "propeller", "propeller", screw),
        trial=_trial(keys, root, desk),
        planning=_planning(keys, desk),
        berth=desk.fill(
            Berth, keys.berth, "berth", "berth", unattended=bool(keys.berth.unattended)
        ),
        legs=tuple(_leg(keys, root, desk, number) for number in range(len(keys.legs))),
        house=desk.fill(House, keys.house, "house", "house", services=_texts(keys.house.services)),
        papers=Papers(keys.papers.insurer or "", keys.papers.conversion or ""),
        prices=_prices(keys, desk),
        carbon=desk.fill(Carbon, keys.carbon, "carbon", "carbon"),
        options=tuple(build_option(keys, root, desk, n) for n in range(len(keys.options))),
        assumptions=tuple(desk.taken),
        warnings=warnings,
    )


def _study(keys: CaseKeys) -> Instruction:
    """What is not said stays empty: the report is then a draft."""
    study = keys.study
    return Instruction(
        reference=study.reference or "",
        client=study.client or "",
        prepared_by=study.prepared_by or "",
        date=study.date or "",
        currency=study.currency or "",
        units=study.units or "metric",
        priorities=tuple(wish.text or "" for wish in study.priorities),
        reasons=tuple(wish.text or "" for wish in study.reasons),
        subjects=_subjects(study),
        qualification=study.qualification or "",
        independence=study.independence or "",
        issue=study.issue or "",
        changes=tuple(each or "" for each in study.changes),
        wishes=tuple(
            (wish.text or "", wish.subject or "other")
            for wish in (*study.priorities, *study.reasons)
        ),
    )


def _subjects(study: StudyKeys) -> tuple[str, ...]:
    """What the owner's wishes and reasons are about, each once, in his order."""
    every = [wish.subject or "other" for wish in (*study.reasons, *study.priorities)]
    return tuple(dict.fromkeys(every))


def _waters(keys: CaseKeys, desk: Desk) -> Waters:
    return desk.fill(
        Waters,
        keys.waters,
        "waters",
        "waters",
        waters_words(keys.waters),
        fetch=desk.number(
            read_off(keys.waters.fetch), "waters.fetch", "waters.fetch", waters_words(keys.waters)
        ),
        combustion_engines=keys.waters.combustion_engines or "allowed",
        sun=tuple(
            desk.number(given, f"waters.sun[{month}]", "waters.sun") or 0.0
            for month, given in enumerate(keys.waters.sun)
        ),
        weather_file=keys.waters.weather_file or "",
    )


def _planning(keys: CaseKeys, desk: Desk) -> Planning:
    plan = keys.planning
    return desk.fill(
        Planning,
        plan,
        "planning",
        "planning",
        waters_words(keys.waters),
        season=plan.season or "",
        at_sea=plan.at_sea or "engine",
        reserve_reason=plan.reserve_reason or "",
    )


def _texts(said: tuple[str | None, ...]) -> tuple[str, ...]:
    return tuple(text for text in said if text)


def _boat(keys: CaseKeys, root: Keys, desk: Desk) -> Boat:
    """Hull, keel, rudder and windage by the kind of keel and the age of the hull."""
    boat, words, rough = keys.boat, boat_words(keys.boat), "boat.bottom_share"
    untold = None if boat.bottom else desk.number(boat.bottom_share, rough, rough)
    return Boat(
        name=boat.name or "",
        type=boat.type or "",
        year_on_market=boat.year_on_market,
        import_date=boat.import_date,
        market=boat.market or "",
        assessment=boat.assessment or "presumed",
        worth=desk.number(boat.worth, "boat.worth", "boat.worth"),
        design_category=boat.design_category or "none",
        hull=desk.fill(Hull, boat.hull, "boat.hull", "boat.hull", words),
        keel=desk.fill(Keel, boat.keel, "boat.keel", "boat.keel", words),
        rudder=desk.fill(Rudder, boat.rudder, "boat.rudder", "boat.rudder", words),
        windage=_windage(boat, desk),
        floatation=desk.fill(Floatation, boat.floatation, "boat.floatation", "boat.floatation"),
        offsets=None,
        spaces=tuple(_space(keys, root, desk, number) for number in range(len(boat.spaces))),
        bottom=boat.bottom or "",
        bottom_share=untold,
        datum=boat.datum or DATUM,
    )


def _windage(boat: BoatKeys, desk: Desk) -> Windage:
    """Hull and rig by her length and the kind of rig."""
    named, path = rig(boat), "boat.windage"
    return desk.fill(Windage, boat.windage, path, path, (named,), boat_sizes(boat), rig=named)


def _space(keys: CaseKeys, root: Keys, desk: Desk, number: int) -> Space:
    """One space for batteries; it lies on the centre line unless y says otherwise."""
    space, path = keys.boat.spaces[number], f"boat.spaces[{number}]"
    return desk.fill(
        Space,
        space,
        path,
        "boat.spaces",
        y=desk.number(space.y, f"{path}.y", "boat.spaces.y") or 0.0,
        line=line_of(root, ("boat", "spaces", number)),
    )


def _trial(keys: CaseKeys, root: Keys, desk: Desk) -> SeaTrial | None:
    """The sea trial, where there was one."""
    if "trial" not in keys.model_fields_set:
        return None
    rows = tuple(
        desk.fill(
            TrialRow,
            row,
            f"trial.rows[{number}]",
            "trial.rows",
            line=line_of(root, ("trial", "rows", number)),
        )
        for number, row in enumerate(keys.trial.rows)
    )
    return desk.fill(SeaTrial, keys.trial, "trial", "trial", rows=rows)


def _leg(keys: CaseKeys, root: Keys, desk: Desk, number: int) -> Leg:
    """One leg; its fetch is that of the waters unless it has its own."""
    leg, path = keys.legs[number], f"legs[{number}]"
    return desk.fill(
        Leg,
        leg,
        path,
        "legs",
        waters_words(keys.waters),
        fetch=desk.number(
            read_off(leg.fetch or keys.waters.fetch),
            f"{path}.fetch",
            "waters.fetch",
            waters_words(keys.waters),
        ),
        holds_outside=leg.exposed_speed is not None,
        tide_worked=bool(leg.tide_worked),
        season=leg.season or "",
        follows=_followed(keys, number),
        line=line_of(root, ("legs", number)),
    )


def _followed(keys: CaseKeys, number: int) -> int | None:
    """Place of the leg that a leg follows on the same outing."""
    names = [leg.name for leg in keys.legs[:number]]
    wanted = keys.legs[number].follows
    return names.index(wanted) if wanted and wanted in names else None


def _prices(keys: CaseKeys, desk: Desk) -> Prices:
    """Prices in the currency of the study; the horizon counts whole years."""
    years = desk.number(keys.prices.horizon, "prices.horizon", "prices.horizon")
    terms = keys.prices.terms or "real"
    return desk.fill(
        Prices,
        keys.prices,
        "prices",
        "prices",
        (terms,),
        terms=terms,
        currency=keys.study.currency or "",
        horizon=round(years or 0.0),
    )
