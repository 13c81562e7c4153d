"""Criterion 19: can the battery live where it is to stand?"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.apart import apart
from generator.analyses.verdict.criteria.criterion import Criterion, Judgement
from generator.arrays import Array
from generator.case.option import LedgerItem
from generator.records import number, record
from generator.tables.load import read_table
from generator.tables.method import method

NEAR = method("wiring.near_motor")
ASKED = ("dry", "above_bilge", "ventable", "not_a_berth", "escape_clear")
APART = "apart"  # from the motor's heat
VALUES = {"holds": 1.0, "cured": 0.0, "unseen": 0.0, "wrong": -1.0}


@record
class Space:
    """What was seen of the battery's space.

    ``outcome``: holds, cured (by works that are listed), unseen (not all was looked at), wrong.
    """

    SAID_BY: ClassVar[str] = "space"
    SAID_IN: ClassVar[str] = "criteria_boat"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    works: str
    wrong: tuple[str, ...]  # a word of ASKED, or APART
    unseen: tuple[str, ...]
    nobody: bool  # not one of the points was looked at
    held: int = number("count", "points that hold")
    asked: int = number("count", "points asked for")
    from_motor: float | None = number("height", "from motor to battery, where it is near")
    air: Array | None = number("temperature", "air of the motor at full power", cautious="high")
    absent: Mapping[str, str] = field(default_factory=dict)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Five things seen aboard; what is not so wants works, what was not seen a look."""
    if found.option.bank is None:
        return apart(criterion, "no_battery")
    place, shared = found.option.compartment, _shared(found)
    seen = {name: getattr(place, name) for name in ASKED}
    if shared is not None:
        seen[APART] = not shared
    wrong = tuple(name for name, so in seen.items() if so is False)
    unseen = tuple(name for name, so in seen.items() if so is None)
    outcome = ("cured" if place.works else "wrong") if wrong else "unseen" if unseen else "holds"
    far = _distance(found)
    near = far is not None and far < NEAR and found.duty is not None
    facts = Space(
        outcome=outcome,
        works=place.works,
        wrong=wrong,
        unseen=unseen,
        nobody=all(seen[name] is None for name in ASKED),
        held=len(seen) - len(wrong) - len(unseen),
        asked=len(seen),
        from_motor=far if near else None,
        air=found.duty.space_full if near and found.duty is not None else None,
        absent=dict.fromkeys(("from_motor", "air"), "not_near"),
    )
    value = VALUES[outcome]
    return Judgement(criterion, value, value, "-", criterion.judge(value), facts=facts)


def _item(found: Findings, part: str) -> LedgerItem | None:
    """The first mass of a part that comes aboard."""
    return next((item for item in found.weight.added if item.part == part), None)


def _distance(found: Findings) -> float | None:
    """From the middle of the motor to that of the battery [m]; none where one has no place."""
    motor, battery = _item(found, "motor"), _item(found, "battery")
    if motor is None or battery is None or motor.x is None or battery.x is None:
        return None
    steps = (
        scalar(here) - scalar(there)
        for here, there in ((motor.x, battery.x), (motor.y, battery.y), (motor.z, battery.z))
    )
    return math.hypot(*steps)


def _shared(found: Findings) -> bool | None:
    """Does a space hold motor and battery, too warm for charging? None: the case does not say."""
    motor, battery = _item(found, "motor"), _item(found, "battery")
    if motor is None or battery is None or not motor.space or not battery.space:
        return None
    bank, worked = found.option.bank, found.duty
    if bank is None or worked is None or motor.space != battery.space:
        return False
    table = read_table("energy/temperature_limits")
    hot = float(table.column("charge_highest")[table.row_of("chemistry", bank.chemistry)])
    return scalar(spread(worked.space_full).middle) > hot
