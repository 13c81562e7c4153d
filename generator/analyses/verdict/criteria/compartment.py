"""Criterion 19: can the battery live where it is to stand?"""

from __future__ import annotations

import math

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.verdict.criteria.criterion import NOT_APPLICABLE, Criterion, Judgement
from generator.case.option import LedgerItem
from generator.tables.load import read_table
from generator.tables.method import method

NEAR = method("wiring.near_motor")
APART = "apart from the motor's heat"
ASKED = {
    "dry": "dry",
    "above_bilge": "above the bilge water",
    "ventable": "ventable",
    "not_a_berth": "no sleeping place",
    "escape_clear": "off the way out of the cabin",
}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Five things seen aboard; what is not so wants works, what was not seen a look."""
    if found.option.bank is None:
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, "no propulsion battery", "")
    place = found.option.compartment
    seen = {said: getattr(place, name) for name, said in ASKED.items()}
    shared = _shared(found)
    if shared is not None:
        seen[APART] = not shared
    wrong = [said for said, so in seen.items() if so is False]
    unseen = [said for said, so in seen.items() if so is None]
    value = 1.0 if not wrong and not unseen else 0.0 if place.works or not wrong else -1.0
    numbers = {"held": float(len(seen) - len(wrong) - len(unseen)), "asked": float(len(seen))}
    why = "the battery's space holds {here.held|count} of {here.asked|count} points"
    if wrong:
        why += f"; it is not {', not '.join(wrong)}"
    if unseen:
        why += f"; not looked at: {', '.join(unseen)}"
    apart = _distance(found)
    if apart is not None and apart < NEAR and found.duty is not None:
        numbers["from_motor_m"] = apart
        why += (
            "; it stands {here.from_motor_m|height} from the motor, whose air reaches "
            f"{{options.{found.place}.duty.space_full_c|temperature}} at full power"
        )
    flip, condition = _mending(wrong, unseen, place.works)
    return Judgement(
        criterion, value, value, "-", criterion.judge(value), why, flip, condition, numbers
    )


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


def _mending(wrong: list[str], unseen: list[str], works: str) -> tuple[str, str]:
    """What would mend it, and what page 1 asks for."""
    if wrong and not works:
        return f"works that make it {' and '.join(wrong)}, or another place", ""
    if wrong:
        return works, ""
    if unseen:
        return "a look at the battery's space, dry and wet", ""
    return "", ""
