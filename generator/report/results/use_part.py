"""What does results.json say of the owner's use: legs covered, walk, berth, smallest bank?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import lacking_share, scalar, spread
from generator.analyses.use.berth import Berthed
from generator.analyses.use.coverage import Coverage
from generator.analyses.use.energy_walk import Walk
from generator.analyses.use.sizing import Sizing
from generator.analyses.year.sun_carries import SunCarries
from generator.arrays import Array
from generator.report.results.suffix import NOT_MOTORED, PER_SI, excused, put
from generator.report.tree import Telling, tree
from generator.search import Smallest
from generator.study import Study

Row = dict[str, Any]
NO_BANK = "no propulsion battery"
NO_POWER = "continuous power does not hold a leg in one draw of ten"
NO_CHARGE = "in too many draws nothing charges at all"
TENTH = 0.1  # share of the draws beyond the pessimistic end
NO_BREAKER = "no plug, or neither breaker nor voltage of the berth is given"


def use_part(found: Findings, sizes: tuple[Smallest, ...], telling: Telling) -> Row:
    """Coverage, failing legs, walk, charging and size of one option."""
    use = found.use
    size = next((item for item in sizes if item.option == found.place), None)
    return {
        "coverage": None if use.coverage is None else _coverage(use.coverage),
        "coverage_why": "no passage is motored",
        "failing": tree(use.help, f"options.{found.place}.use.failing", telling),
        **_walk(use.walk),
        "berth": None if use.berth is None else _berth(found, use.berth),
        "berth_why": NO_BANK,
        "charging": [] if use.berth is None else _charging(use.berth),
        "sizing": [] if use.sizing is None else _by_speed(use.sizing),
        "smallest": None
        if use.sizing is None or size is None
        else _smallest(found, use.sizing, size),
        "smallest_why": NO_BANK,
        "sun": None if found.carried is None else _sun(found.carried),
        "sun_why": "no bank, no week of use, or no position of her waters",
    }


def _sun(item: SunCarries) -> Row:
    """What the sun does where there is no plug."""
    ratio = spread(item.ratio, "low")
    row = {
        "weeks": item.weeks,
        "use_kwh": scalar(spread(item.use).middle) * PER_SI["kwh"],
        "sun_dim_kwh": put(item.sun, "kwh"),
        "house_kwh": put(item.house, "kwh"),
        "rated_w": item.rated,
        "ratio": scalar(ratio.middle),
        "ratio_p10": scalar(ratio.low),
        "least_w": item.least,
        "least_w_why": _why_short(item.use, "no panels that she can carry do it"),
        "least_area_m2": item.area,
    }
    return excused(row, NOT_MOTORED)


def _why_short(day: Array, otherwise: str) -> str:
    """Why nothing is enough: too many draws do not know what is asked for, or another reason."""
    return NOT_MOTORED if lacking_share(day) > TENTH else otherwise


def goals_part(study: Study) -> Row:
    """What makes the legs go, by the criteria themselves."""
    rows = {row.criterion.id: row.criterion for row in study.options[0].verdict.judgements}
    return {"mooring_go": rows[12].go, "leg_go": rows[1].go, "coverage_go_share": rows[2].go}


def _told(name: str, values: Array, suffix: str, why: str) -> Row:
    """Middle and both ends, high being the end to plan with; ``why`` where one is no number."""
    told = spread(values)
    ends = (("", told.middle), ("_low", told.low), ("_high", told.high))
    row = {f"{name}{end}_{suffix}": scalar(value) * PER_SI[suffix] for end, value in ends}
    return excused(row, why)


def _coverage(item: Coverage) -> Row:
    return {
        "passages": item.passages,
        "legs_share": scalar(spread(item.legs).middle),
        "legs_low_share": scalar(spread(item.legs).low),
        "miles_share": scalar(spread(item.miles).middle),
        "miles_low_share": scalar(spread(item.miles).low),
        "slower_legs_low_share": scalar(spread(item.legs_slower).low),
        "slower_miles_low_share": scalar(spread(item.miles_slower).low),
    }


def _walk(walk: Walk | None) -> Row:
    if walk is None:
        why = "no bank, or the best estimate does not make a leg that must be made"
        return {"walk": [], "walk_leg": None, "walk_leg_why": why}
    left = scalar(spread(walk.left_each, "low").low)
    return {
        "walk": [{"name": step.name, "step_kwh": put(step.energy, "kwh")} for step in walk.steps],
        "walk_leg": walk.place,
        "walk_nominal_kwh": put(walk.nominal, "kwh"),
        "walk_left_kwh": put(walk.left, "kwh"),
        "walk_left_low_kwh": put(left, "kwh"),
        "walk_left_low_kwh_why": "too many draws cannot make it at all",
    }


def _berth(found: Findings, item: Berthed) -> Row:
    outings = spread(item.outings, "low")
    left = {"outings_low": scalar(outings.low), "outings": scalar(outings.middle)}
    slow = "no charger puts a usual day back in time: the bank takes no more"
    row: Row = {
        "outing": [found.case.legs[place].name for place in item.outing],
        "days": item.days,
        **_told("typical", item.typical, "kwh", NOT_MOTORED),
        **_told("worst", item.worst, "kwh", NOT_MOTORED),
        **excused(left, NOT_MOTORED),
        "wall_kw": put(item.wall, "kw"),
        "into_bank_kw": put(item.into_bank, "kw"),
        "bound_by": item.bound_by or None,
        "voltage_v": item.voltage,
        "least_charger_kw": put(item.least_charger, "kw"),
        "least_charger_kw_why": _why_short(item.typical, slow),
        "shore_power": found.case.berth.shore_power,
    }
    for name, hours in (("typical", item.hours_typical), ("worst", item.hours_worst)):
        names = (f"{name}_hours_h", f"{name}_hours_low_h", f"{name}_hours_high_h")
        if hours is None:
            row |= dict.fromkeys(names) | {f"{name}_hours_h_why": NO_BREAKER}
            continue
        why = _why_never_full(hours)
        row |= {f"{name}_hours_h_why": why} | _told(f"{name}_hours", hours, "h", why)
    return row


def _why_never_full(hours: Array) -> str:
    """Why there is no time to full: what came home missing is not known, or nothing charges."""
    return NOT_MOTORED if np.isnan(hours).any() else NO_CHARGE


def _charging(item: Berthed) -> list[Row]:
    """Hours to full over the berth's breaker."""
    typical, worst = spread(item.by_current_typical), spread(item.by_current_worst)
    why = _why_never_full(item.by_current_typical)
    return [
        excused(
            {
                "breaker_a": current,
                "typical_h": float(typical.middle[place]) * PER_SI["h"],
                "typical_high_h": float(typical.high[place]) * PER_SI["h"],
                "worst_h": float(worst.middle[place]) * PER_SI["h"],
                "worst_high_h": float(worst.high[place]) * PER_SI["h"],
            },
            why,
        )
        for place, current in enumerate(item.currents)
    ]


def _by_speed(item: Sizing) -> list[Row]:
    return [
        {
            "speed_kn": put(float(speed), "kn"),
            "smallest_kwh": put(float(bank), "kwh"),
            "smallest_kwh_why": NO_POWER,
        }
        for speed, bank in zip(item.speed, item.by_speed, strict=True)
    ]


def _smallest(found: Findings, item: Sizing, size: Smallest) -> Row:
    return {
        "own_nominal_kwh": put(item.nominal, "kwh"),
        "own_speed_kn": put(item.mean_speed, "kn"),
        "bank_kwh": put(size.bank, "kwh"),
        "bank_kwh_why": size.why or None,
        "without_mass_kwh": put(item.at_own_speeds, "kwh"),
        "without_mass_kwh_why": NO_POWER,
        "heavier_kg": None if size.bank is None else size.heavier,
        "heavier_kg_why": size.why or None,
        "charger_kw": put(size.charger, "kw"),
        "charger_kw_why": "no charger puts a usual day back in time",
        "enough": bool(size.bank is not None and item.nominal >= size.bank),
        "place": found.place,
    }
