"""Do the battery's blocks fit the spaces aboard, and where do they hold trim and list?"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from generator.analyses.percentiles import best, scalar
from generator.analyses.weight.weight import Weight
from generator.arrays import Array, Numbers
from generator.case.boat import Space
from generator.case.case import Case
from generator.case.option import Option
from generator.errors import TableError
from generator.physics.hull.hydrostatics import moment_to_trim

TRIM_LIMIT = 0.005  # of waterline length: the go limit of criterion 17
LIST_LIMIT = math.radians(0.5)  # the same


@dataclass(frozen=True)
class Berth:
    """One space: how many blocks it can take, by what, and how many it gets."""

    space: Space
    room: int
    bound_by: str  # mass, volume
    blocks: int


@dataclass(frozen=True)
class Placement:
    """Blocks on their best places, at the best estimate. kg, m, rad."""

    berths: tuple[Berth, ...]
    blocks: int
    block_mass: float
    volume_known: bool
    fits: bool
    trim: float | None  # by the bow positive, over waterline length
    list: float | None  # to starboard positive
    trim_moment: float | None  # left over, mass times arm forward [kg m]
    list_moment: float | None  # the same to starboard
    why: str  # why there is no placing

    @property
    def level(self) -> bool:
        """Whether trim and list stay within the limits of criterion 17."""
        if self.trim is None or self.list is None:
            return False
        return abs(self.trim) <= TRIM_LIMIT and abs(self.list) <= LIST_LIMIT

    def to_shift(self) -> tuple[float, float]:
        """Moments [kg m] along and across that something else must make to come within limits."""
        return (
            _beyond(self.trim, TRIM_LIMIT, self.trim_moment),
            _beyond(self.list, LIST_LIMIT, self.list_moment),
        )


def _beyond(found: float | None, limit: float, moment: float | None) -> float:
    """The part of a moment that lies beyond its limit, turned round."""
    if not found or moment is None:
        return 0.0
    return -moment * max(0.0, 1.0 - limit / abs(found))


def place(case: Case, option: Option, weight: Weight) -> Placement | None:
    """Best places of the blocks among the boat's spaces; None without spaces or a battery."""
    bank, spaces = option.bank, case.boat.spaces
    if bank is None or not spaces or weight.bank_mass is None:
        return None
    own = [item.mass for item in weight.added if item.part == "battery"]
    mass = _one(sum(own[1:], own[0]) if own else weight.bank_mass)
    blocks = bank.blocks.count
    volume = None if bank.block_volume is None else _one(bank.block_volume)
    berths = tuple(_berth(space, mass / blocks, volume) for space in spaces)
    known = (berths, blocks, mass / blocks, volume is not None)
    if sum(berth.room for berth in berths) < blocks:
        return Placement(*known, False, None, None, None, None, "the blocks do not fit")
    if not weight.placed:
        return Placement(*known, True, None, None, None, None, weight.trim_why)
    return _level(berths, weight, blocks, mass / blocks, volume is not None)


def _one(value: Numbers) -> float:
    return scalar(best(value))


def _berth(space: Space, mass: float, volume: float | None) -> Berth:
    """How many blocks a space can take, at most, by its mass and by its volume."""
    by_mass = math.floor(_one(space.max_mass) / mass + 1e-9)
    if volume is None:
        return Berth(space, by_mass, "mass", 0)
    by_volume = math.floor(_one(space.volume) / volume + 1e-9)
    return Berth(space, min(by_mass, by_volume), "mass" if by_mass <= by_volume else "volume", 0)


def _level(
    berths: tuple[Berth, ...], weight: Weight, blocks: int, mass: float, known: bool
) -> Placement:
    """Share the blocks out so that trim and list, each over its limit, are least together."""
    along, across = _arms(berths, weight)
    rest = _rest(weight)
    before, after = weight.change.before, weight.change.after
    per_trim = _one(moment_to_trim(before.displacement, before.longitudinal_radius))
    per_list = _one(np.asarray(after.displacement) * after.metacentric_height)
    moments = np.array([along / per_trim / TRIM_LIMIT, across / per_list / LIST_LIMIT]) * mass
    start = np.array([rest[0] / per_trim / TRIM_LIMIT, rest[1] / per_list / LIST_LIMIT])
    counts = _shared_out(moments, start, np.array([berth.room for berth in berths]), blocks)
    trim_moment = rest[0] + mass * float(along @ counts)
    list_moment = rest[1] + mass * float(across @ counts)
    return Placement(
        tuple(
            Berth(berth.space, berth.room, berth.bound_by, int(count))
            for berth, count in zip(berths, counts, strict=True)
        ),
        blocks,
        mass,
        known,
        True,
        math.tan(trim_moment / per_trim),
        math.atan(list_moment / per_list),
        trim_moment,
        list_moment,
        "",
    )


def _arms(berths: tuple[Berth, ...], weight: Weight) -> tuple[Array, Array]:
    """Distance of each space forward of the centre of flotation and to starboard [m]."""
    flotation = _one(weight.change.before.flotation)
    along = np.array([_one(berth.space.x) - flotation for berth in berths])
    return along, np.array([_one(berth.space.y) for berth in berths])


def _rest(weight: Weight) -> tuple[float, float]:
    """Moments of all other masses of the ledger, forward and to starboard [kg m]."""
    flotation = _one(weight.change.before.flotation)
    forward = starboard = 0.0
    for sign, item in weight.ledger.items:
        if item.x is None or (sign > 0 and item.part == "battery"):
            continue
        forward += sign * _one(item.mass) * (_one(item.x) - flotation)
        starboard += sign * _one(item.mass) * _one(item.y)
    return forward, starboard


def _shared_out(moments: Array, start: Array, room: Array, blocks: int) -> Array:
    """Whole numbers of blocks n per space: least |start + moments n| summed over both axes."""
    from scipy.optimize import Bounds, LinearConstraint, milp

    spaces = room.size
    cost = np.concatenate((np.zeros(spaces), np.ones(2)))
    over = np.hstack((moments, -np.eye(2)))  # start + moments n <= t
    under = np.hstack((-moments, -np.eye(2)))  # -(start + moments n) <= t
    whole = np.concatenate((np.ones(spaces), np.zeros(2)))[np.newaxis]
    found = milp(
        cost,
        integrality=np.concatenate((np.ones(spaces), np.zeros(2))),
        bounds=Bounds(np.zeros(spaces + 2), np.concatenate((room, np.full(2, np.inf)))),
        constraints=(
            LinearConstraint(over, -np.inf, -start),
            LinearConstraint(under, -np.inf, start),
            LinearConstraint(whole, blocks, blocks),
        ),
    )
    if found.x is None:  # cannot be: there is room for all blocks, and the sums have no limit
        raise TableError(f"placement: {found.message}")
    counts: Array = np.round(found.x[:spaces])
    return counts


def battery_space(weight: Weight, found: Placement | None) -> str | None:
    """Names of the spaces in which the battery stands: as placed here, else as the case says."""
    if found is not None:
        names = [berth.space.name for berth in found.berths if berth.blocks]
        if names:
            return ", ".join(names)
    named = [item.space for item in weight.added if item.part == "battery" and item.space]
    return ", ".join(dict.fromkeys(named)) or None
