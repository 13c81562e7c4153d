"""Criterion 16: how far do the masses move her from the boat that was designed?

No rule of yachts has such limits. Those of towing vessels are borrowed: 2 per cent of lightweight
and 1 per cent of length. They count the sum of all that leaves and comes; here the net gain
decides, two of the crew are never a matter, and the sum is told. 5 per cent is a growth margin of
shipbuilding practice.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import held_share, scalar, spread
from generator.analyses.verdict.criteria.apart import apart
from generator.analyses.verdict.criteria.criterion import (
    GO,
    NO,
    SURE,
    Criterion,
    Judgement,
    by_chance,
)
from generator.arrays import Array, Flags, Numbers
from generator.records import number, record
from generator.tables.method import method

CENTRE_LIMIT = method("judging.gravity_shift")
STABILITY_LOST = method("judging.stability_lost")


@record
class MassChange:
    """What she gains or loses, and what that does to her stability.

    ``outcome``: heavier, lighter. The flags tell what keeps the row from passing.
    """

    SAID_BY: ClassVar[str] = "mass_change"
    SAID_IN: ClassVar[str] = "criteria_boat"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    result: str
    too_heavy: bool
    plate_exceeded: bool
    centre_far: bool
    stability_falls: bool
    net: Numbers = number("mass", "net change of mass", cautious="high")
    share: Array = number("share_small", "net change over lightship", cautious="high")
    light: Numbers = number("mass", "lightship")
    both_ways: Array = number("share", "out and in together over lightship", cautious="high")
    plate_left: Numbers | None = number("mass", "left of the builder's plate", cautious="low")
    centre: Array | None = number("share_small", "shift of the centre of gravity", cautious="high")
    before: Array = number("length", "metacentric height before", cautious="low")
    after: Array = number("length", "metacentric height after", cautious="low")
    lost: Array = number("share_small", "metacentric height lost", cautious="high")
    absent: Mapping[str, str] = field(default_factory=dict)


ABSENT = {
    "plate_left": "no_plate",
    "centre": "mass_without_place",
    "lost": "not_stable",
}


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Net gain over lightship, the builder's plate, the centre of gravity, and her stability."""
    weight = found.weight
    if not weight.ledger.items:
        return apart(criterion, "no_mass_moves")
    net, light = (np.atleast_2d(each) for each in (weight.net, weight.light_displacement))
    holds = _holding(criterion, found, net, light)
    small, most, plate, _, stiff = holds
    result = by_chance(small & plate & stiff, most & plate)
    share = np.abs(net) / light
    told = spread(share)
    facts = _facts(found, holds, result, share)
    return Judgement(
        criterion, scalar(told.middle), scalar(told.high), "-", result, facts=facts
    )  # fmt: skip


def _holding(
    criterion: Criterion, found: Findings, net: Array, light: Array
) -> tuple[Flags, Flags, Flags, Flags, Flags]:
    """Draws in which the gain is small, in which it is bearable, and in which all else holds."""
    assert criterion.second is not None
    assert criterion.third is not None
    gain, weight = net / light, found.weight
    small = (gain <= criterion.go) | (net <= criterion.second.go) & (gain <= criterion.third.go)
    yes = np.ones((1, 1), dtype=bool)
    plate = yes if weight.plate_left is None else np.atleast_2d(weight.plate_left) >= 0.0
    shift = weight.centre_shift  # where a mass has no place, the row on trim asks for it
    near = yes if shift is None else np.atleast_2d(np.abs(np.asarray(shift))) <= CENTRE_LIMIT
    heavier = scalar(spread(net).middle) >= 0.0
    return small, gain <= criterion.conditional, plate, near, yes if heavier else _stiff(found)


def _stiff(found: Findings) -> Flags:
    return np.atleast_2d(_lost(found)) <= STABILITY_LOST


def _lost(found: Findings) -> Array:
    """Share of the metacentric height that goes with the masses; nan without stability."""
    before, after = _heights(found)
    return np.where(before > 0.0, 1.0 - after / np.where(before > 0.0, before, 1.0), np.nan)


def _heights(found: Findings) -> tuple[Array, Array]:
    change = found.weight.change
    before, after = (
        np.atleast_2d(np.asarray(each.metacentric_height)) for each in (change.before, change.after)
    )
    return before, after


def _facts(found: Findings, holds: tuple[Flags, ...], result: str, share: Array) -> MassChange:
    weight, (small, most, plate, near, stiff) = found.weight, holds
    wanted = small if result != NO else most
    before, after = _heights(found)
    shift = weight.centre_shift
    heavier = scalar(spread(weight.net).middle) >= 0.0
    return MassChange(
        outcome="heavier" if heavier else "lighter",
        result=result,
        too_heavy=result != GO and _fails(wanted),
        plate_exceeded=_fails(plate),
        centre_far=result != GO and _fails(near),  # told; it asks for nothing by itself
        stability_falls=_fails(stiff),
        net=weight.net,
        share=share,
        light=weight.light_displacement,
        both_ways=np.atleast_2d(weight.absolute / np.asarray(weight.light_displacement)),
        plate_left=weight.plate_left,
        centre=None if shift is None else np.atleast_2d(np.abs(np.asarray(shift))),
        before=before,
        after=after,
        lost=_lost(found),
        absent=ABSENT,
    )


def _fails(holds: Flags) -> bool:
    return held_share(holds) < SURE
