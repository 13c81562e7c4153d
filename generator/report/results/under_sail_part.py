"""What does results.json say of the propeller under sail, and of the rules of thumb?"""

from __future__ import annotations

from typing import Any

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.arrays import Array
from generator.report.results.suffix import BEYOND, CRUISE_BEYOND, PER_SI, excused

Row = dict[str, Any]
SAILING = (4.0, 5.0, 6.0)  # kn, as the analysis takes them
SLOW_SAILING = (2.0, 2.5, 3.0)
NOT_FIXED = "a folding or feathering propeller gives nothing back"
NO_MOTOR = "a diesel gives nothing back"


def under_sail_part(found: Findings) -> Row:
    """Speed lost by state, power for one more knot, and what comes back."""
    sail = found.sail
    assert sail is not None
    return {
        "state": {"fixed": "locked", "folding": "folded", "feathering": "feathered"}[
            found.option.propeller.kind
        ],
        "rows": [_row(found, place) for place in range(len(SAILING))],
        "one_more": [
            excused(
                {
                    "sailing_kn": speed,
                    "shaft_w": _middle(sail.more_shaft, place),
                    **_drain(found, place),
                },
                BEYOND,
            )
            for place, speed in enumerate(SLOW_SAILING)
        ],
    }


def _middle(values: Array, place: int, cautious: str = "high") -> float:
    return scalar(spread(values[:, [place]], cautious).middle)


def _drain(found: Findings, place: int) -> Row:
    assert found.sail is not None
    drain = _middle(found.sail.more_drain, place)
    if found.option.motor is not None:
        return {"battery_w": drain}
    return {"fuel_l_per_h": drain * PER_SI["l_per_h"]}


def _row(found: Findings, place: int) -> Row:
    sail = found.sail
    assert sail is not None
    row: Row = {"sailing_kn": SAILING[place]}
    for state, lost in sail.lost.items():
        row[f"{state}_n"] = _middle(sail.drag[state], place)
        row[f"{state}_lost_kn"] = _middle(lost, place) * PER_SI["kn"]
    row = excused(row, BEYOND)
    back = _middle(sail.returned, place, "low")
    if back <= 0.0:
        why = NO_MOTOR if found.option.motor is None else NOT_FIXED
        return row | {"returned_w": None, "returned_w_why": why, "returned_lost_kn": None}
    cost = _middle(sail.returned_lost, place) * PER_SI["kn"]
    return row | excused({"returned_w": back, "returned_lost_kn": cost}, BEYOND)


def rules_part(found: Findings) -> Row:
    """The cross-check line."""
    rules = found.rules
    row = {
        "speed_kn": rules.speed * PER_SI["kn"],
        "speed_length": rules.speed_length,
        "gerr_kw": rules.gerr / 1e3,
        "keith_kw": rules.keith / 1e3,
        "wyman_kw": rules.wyman / 1e3,
        "computed_kw": rules.computed / 1e3,
        "gerr_share": rules.computed / rules.gerr,
        "above": rules.above,
    }
    return excused(row, CRUISE_BEYOND)
