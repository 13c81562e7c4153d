"""Criterion 17: does she float on her lines afterwards, upright, with her drains above water?"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import held_share, scalar, spread
from generator.analyses.verdict.criteria.apart import apart
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    SURE,
    Criterion,
    Judgement,
    by_chance,
)
from generator.arrays import Array, Flags
from generator.records import number, record

# Half a degree of list weighs as much as the go limit of trim, a whole degree as the other one.
LIST_PER_TRIM = math.radians(0.5) / 0.005
LEAST = 0.5  # kg; less is printed as nothing
A_METRE = 1.0  # by which a mass is thought moved


@record
class TrimAndList:
    """How she lies afterwards. ``outcome``: floats, unplaced (a mass has no place along her)."""

    SAID_BY: ClassVar[str] = "trim_and_list"
    SAID_IN: ClassVar[str] = "criteria_boat"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    result: str
    unplaced: tuple[str, ...]
    end: str  # bow, stern: the end that goes down
    other_end: str  # forward, aft: where masses must move to
    other_side: str  # port, starboard
    off: bool  # trim or list is beyond the limit
    wet: bool  # the lowest drain may go under
    moves_along: bool  # so much to be moved that a page tells it
    moves_across: bool
    trim: Array | None = number("length_small", "trim over the waterline", cautious="high")
    list: Array | None = number("angle", "list", cautious="high")
    drain: Array | None = number("length_small", "lowest drain left above water", cautious="low")
    level_trim: Array | None = number("mass", "mass moved a metre that levels her trim")
    level_list: Array | None = number("mass", "mass moved a metre that levels her list")
    absent: Mapping[str, str] = field(default_factory=dict)


ABSENT = dict.fromkeys(("trim", "list", "level_trim", "level_list"), "mass_without_place") | {
    "drain": "not_said"
}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """The worse of trim over waterline length and list, as weighed; drains that stay dry."""
    weight = found.weight
    if not weight.ledger.items:
        return apart(criterion, "no_mass_moves")
    if weight.trim is None:
        facts = _unplaced(found)
        return Judgement(criterion, None, None, "-", CONDITIONAL, facts=facts)
    trim = np.abs(np.tan(np.atleast_2d(weight.trim)))
    listing = np.abs(np.atleast_2d(weight.change.list)) / LIST_PER_TRIM
    worse = np.maximum(trim, listing)
    level, bearable = criterion.reached(worse)
    dry = _dry(found)
    result = by_chance(level & dry, bearable)
    told = spread(worse)
    facts = _facts(found, result, held_share(level) < SURE, held_share(dry) < SURE)
    return Judgement(criterion, scalar(told.middle), scalar(told.high), "-", result, facts=facts)


def _dry(found: Findings) -> Flags:
    """Draws in which the lowest drain stays above water; all where none was measured."""
    left = _drain(found)
    return np.ones((1, 1), dtype=bool) if left is None else left > 0.0


def _drain(found: Findings) -> Array | None:
    height = found.case.boat.floatation.drain_height
    return None if height is None else np.atleast_2d(height - np.asarray(found.weight.change.aft))


def _unplaced(found: Findings) -> TrimAndList:
    names = found.weight.ledger.unplaced
    return TrimAndList(
        "unplaced", CONDITIONAL, names, "", "", "", True, False, False, False, None, None, None,
        None, None, ABSENT,
    )  # fmt: skip


def _facts(found: Findings, result: str, off: bool, wet: bool) -> TrimAndList:
    weight = found.weight
    change, starboard = weight.change, scalar(spread(weight.change.list).middle) >= 0
    bow = scalar(spread(change.trim).middle) >= 0
    by_length = np.abs(np.tan(np.atleast_2d(change.trim)))
    resist = change.before.displacement * np.asarray(change.before.longitudinal_radius)
    athwart = change.gravity_shift[1] * np.asarray(change.after.displacement)
    level_trim, level_list = (
        np.abs(np.atleast_2d(each)) / A_METRE for each in (resist * change.trim, athwart)
    )
    return TrimAndList(
        outcome="floats",
        result=result,
        unplaced=(),
        end="bow" if bow else "stern",
        other_end="aft" if bow else "forward",
        other_side="port" if starboard else "starboard",
        off=off and result != GO,
        wet=wet,
        moves_along=scalar(spread(level_trim).middle) >= LEAST,
        moves_across=scalar(spread(level_list).middle) >= LEAST,
        trim=by_length * change.before.waterline_length,
        list=np.abs(np.atleast_2d(change.list)),
        drain=_drain(found),
        level_trim=level_trim,
        level_list=level_list,
        absent=ABSENT,
    )
