"""Which is the cheapest way in which a leg that does not fit would?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import ClassVar

import numpy as np

from generator.analyses.motion.power import KNOT
from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.store.bank_size import BySize
from generator.analyses.use.leg_energy import (
    LEAST_THROUGH,
    Strips,
    cheapest,
    in_hand,
    stretches,
    wanted_usable,
)
from generator.analyses.use.legs import LegResult, Legs
from generator.arrays import Array
from generator.case.usage import Leg
from generator.records import number, numbers_of, record

STREAMS = (0.75, 0.5, 0.25, 0.0, -0.5, -1.0)  # shares of the leg's own foul stream
WINDS = (15.0, 10.0, 5.0)  # kn on the nose
ORDER = ("slower", "sail", "tide", "wind", "charge", "bank", "power")  # by money, then by time


@record
class LegHelp:
    """Ways in which nine draws of ten make a leg; what does not help is none. SI."""

    SAID_BY: ClassVar[str] = "leg_help"
    name: str
    kept_in: str
    leg: int  # place among the legs
    cheapest: str  # the first of ORDER that helps; more power where nothing does
    before: str | None  # the leg before it on the same outing
    slower: float | None = number("speed", "through the water in shelter, the fastest that fits")
    slower_time: float | None = number("hours", "time of the whole leg at that speed")
    sail: float | None = number("ratio", "left over needed with the leg before it sailed")
    stream: float | None = number("speed", "most stream against her")
    wind: float | None = number("wind", "most wind on the nose")
    charge: float | None = number("energy", "charged before it or on the way")
    nominal: float | None = number("stored", "nominal size that carries it")
    absent: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class _Question:
    """One leg that does not fit, and what is asked of it."""

    strips: Strips
    sizes: BySize
    item: LegResult

    @property
    def leg(self) -> Leg:
        return self.item.leg

    def fits(self, need: Array) -> bool:
        """Whether nine draws of ten have what it takes."""
        ratio = in_hand(np.atleast_2d(need), self.item.available)
        return scalar(spread(ratio).low) >= 1.0


def leg_help(strips: Strips, sizes: BySize, legs: Legs) -> tuple[LegHelp, ...]:
    """Every leg that does not fit at its pessimistic end, and each way taken by itself."""
    return tuple(
        _help(_Question(strips, sizes, item), place, legs)
        for place, item in enumerate(legs.results)
        if scalar(spread(item.ratio).low) < 1.0
    )


def _help(asked: _Question, place: int, legs: Legs) -> LegHelp:
    leg, item = asked.leg, asked.item
    parts = stretches(asked.strips, leg, item.outside)
    slower, time = _slower(asked, parts[1].need(leg.stream))
    sail, stream = _sailed(asked, legs), _tide(asked, *(part.need for part in parts))
    wind, charge = _wind(asked, parts[0].need(leg.stream)), _charge(asked)
    nominal = _nominal(asked)
    found = zip(ORDER, (slower, sail, stream, wind, charge, nominal), strict=False)
    return LegHelp(
        name=item.name,
        kept_in=item.kept_in,
        leg=place,
        cheapest=next((way for way, value in found if value is not None), "power"),
        before=item.after,
        slower=slower,
        slower_time=time,
        sail=sail,
        stream=stream,
        wind=wind,
        charge=charge,
        nominal=nominal,
        absent=dict.fromkeys(numbers_of(LegHelp), "does_not_help"),
    )


def _slower(asked: _Question, exposed_need: Array) -> tuple[float | None, float | None]:
    """The fastest tabulated speed below the owner's at which it fits, and its time."""
    leg, tried = asked.leg, asked.strips.calm.speed
    calm, rough = asked.strips.calm, asked.strips.rough(leg)
    sheltered = np.asarray(leg.distance - leg.exposed_distance)
    owner = float(best(leg.speed)[0])
    for speed in tried[(tried < owner) & (tried >= LEAST_THROUGH)][::-1]:
        smooth, _ = cheapest(calm.at(float(speed)), sheltered, leg.stream)
        slow, _ = cheapest(rough, leg.exposed_distance, leg.stream, speed)
        # lacking: of two ways the one that can be done; where neither can, need has no value
        worse = np.where(np.isfinite(exposed_need), exposed_need, np.inf)
        # lacking: likewise
        best_rough = np.minimum(np.where(np.isfinite(slow), slow, np.inf), worse)
        need = smooth + np.where(np.isfinite(best_rough), best_rough, np.nan)
        if asked.fits(need):
            whole = float(best(leg.distance)[0])
            return float(speed), whole / (float(speed) - float(best(leg.stream)[0]))
    return None, None


def _sailed(asked: _Question, legs: Legs) -> float | None:
    """Energy in hand where the leg before it is sailed, if it can be and that is enough."""
    first = asked.leg.follows
    if first is None or not legs.results[first].leg.sailable:
        return None
    above = np.maximum(asked.item.above - legs.results[first].before, 0.0)
    ratio = scalar(spread(in_hand(np.atleast_2d(asked.item.need), above)).low)
    return ratio if ratio >= 1.0 else None


def _tide(asked: _Question, *needs: object) -> float | None:
    """The most foul stream, of shares of the leg's own, at which it fits; below 0 fair."""
    own = np.asarray(asked.leg.stream)
    if float(best(own)[0]) <= 0.0:
        return None
    for share in STREAMS:
        need = sum(part(own * share) for part in needs)  # type: ignore[operator]
        if asked.fits(np.atleast_2d(need)):
            return float(best(own)[0]) * share
    return None


def _wind(asked: _Question, sheltered_need: Array) -> float | None:
    """The most wind on the nose at which it fits, the owner's speed kept in shelter."""
    leg = asked.leg
    if not np.any(np.asarray(leg.exposed_distance)):
        return None
    own = float(best(leg.exposed_speed)[0])
    for knots in WINDS:
        if knots * KNOT >= float(best(leg.wind)[0]):
            continue
        rough = asked.strips.rough(leg, knots * KNOT)
        need, _ = cheapest(rough, leg.exposed_distance, leg.stream, own)
        if asked.fits(sheltered_need + need):
            return knots * KNOT
    return None


def _charge(asked: _Question) -> float | None:
    """What must be taken on the way; only where there is a refuge, and a bank to charge."""
    need = asked.item.need
    if asked.strips.outfit.option.bank is None:
        return None
    if not asked.leg.refuge and asked.leg.follows is None:
        return None
    # lacking: what cannot be done lacks charge without end, which no reader is told
    short = np.where(np.isfinite(need), need + asked.item.before - asked.item.above, np.inf)
    most = scalar(spread(np.maximum(short, 0.0)).high)
    return most if np.isfinite(most) else None


def _nominal(asked: _Question) -> float | None:
    """Bank or tank, its own mass left out, that carries the leg above the reserve."""
    share = asked.strips.outfit.case.planning.reserve_share
    usable = wanted_usable(
        asked.item.need, 1.0, asked.strips.outfit.reserve.demand, share, asked.item.before
    )
    most = scalar(spread(asked.sizes.nominal_for(usable)).high)
    return most if np.isfinite(most) else None
