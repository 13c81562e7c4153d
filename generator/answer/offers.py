"""Which changes might mend a row, by stage from what costs nothing to what costs most?"""

from __future__ import annotations

from collections.abc import Callable

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, scalar
from generator.answer.desk import Look
from generator.answer.grow import bank_offers, limit_offers, motor_offers
from generator.answer.parts import PART_BUILDERS, SEEN
from generator.answer.remedy import (
    BANK,
    FACTS,
    HABIT,
    MOTOR,
    SECOND,
    Change,
    Offer,
    Remedy,
    Typed,
    one,
)
from generator.case.usage import Leg

KNOT = 1852.0 / 3600.0
STEP, MOST_STEPS = 0.1 * KNOT, 10  # by which a leg is made slower, up to one knot
LEAST_THROUGH, LEAST_OVER = 3.0 * KNOT, 1.5 * KNOT
OUTBOARD = 3.5 * KNOT


def offers(look: Look, place: int, also: Look) -> tuple[Offer, ...]:
    """All that may mend the option as it was looked at; what changes nothing is left out.

    Rows that are bad in ``also``, the same on other draws, are to be mended too.
    """
    bad = {row for each in (look, also) for row, rank in each.ranks.items() if rank}
    made = [offer for build in BUILDERS for offer in build(look, place)]
    return tuple(offer for offer in made if offer.levels and bad & set(offer.rows))


def _insurer(look: Look, place: int) -> list[Offer]:
    asked = look.findings.case.papers.insurer
    if asked in ("accepted", "no cover wanted"):
        return []
    kind = "other insurer" if asked in ("refused", "another asked") else "insurer"
    change = one(Remedy(kind, FACTS), ("papers", "insurer"), "accepted", "accepted")
    return [Offer("insurer", FACTS, (20,), (change,))]


def _body(look: Look, place: int) -> list[Offer]:
    change = one(Remedy("body", FACTS), ("papers", "conversion"), "assessed", "assessed")
    return [Offer("body", FACTS, (21,), (change,))]


def _seen(look: Look, place: int) -> list[Offer]:
    """The space looked at and found good, where nobody has looked."""
    compartment = look.findings.option.compartment
    unseen = [name for name in SEEN if getattr(compartment, name) is None]
    if not unseen:
        return []
    at = ("options", place, "compartment")
    change = Change(
        Remedy("seen", FACTS),
        {tuple(map(str, (*at, name))): True for name in unseen},
        tuple(Typed((*at, name), "true") for name in unseen),
    )
    return [Offer("seen", FACTS, (19,), (change,))]


def _slower(look: Look, place: int) -> list[Offer]:
    """The legs that bind, and those before them on the outing, by tenths of a knot."""
    case, legs = look.findings.case, _binding_legs(look.findings)
    if not legs:
        return []
    levels = []
    for step in range(1, MOST_STEPS + 1):
        speeds = {n: _less(case.legs[n], step * STEP) for n in legs}
        if any(speed is None for speed in speeds.values()):
            break
        first = speeds[legs[0]]
        told = Remedy(
            "slower", HABIT, tuple(case.legs[n].name for n in legs),
            speed=first, slower=step * STEP, price=0.0,
        )  # fmt: skip
        levels.append(
            Change(
                told,
                {("legs", str(n), "speed"): speed for n, speed in speeds.items()},
                tuple(
                    Typed(("legs", n, "speed"), f"{(speed or 0.0) / KNOT:.2f} kn")
                    for n, speed in speeds.items()
                ),
            )
        )
    return [Offer("slower", HABIT, (1, 2), tuple(levels))]


def _less(leg: Leg, by: float) -> float | None:
    """The owner's speed less so much, to a hundredth of a knot; none where it is too little."""
    stream = scalar(best(leg.stream))
    speed = round((scalar(best(leg.speed)) - by) / KNOT, 2) * KNOT
    return speed if speed >= max(LEAST_THROUGH, stream + LEAST_OVER) - 1e-9 else None


def _binding_legs(found: Findings) -> list[int]:
    """Legs that are not made above the reserve, with those before them on the outing."""
    missed = set() if found.use.coverage is None else set(found.use.coverage.missed)
    if found.key.worst_leg is not None:
        missed.add(found.key.worst_leg)
    for place in sorted(missed, reverse=True):
        before = found.case.legs[place].follows
        while before is not None:
            missed.add(before)
            before = found.case.legs[before].follows
    return sorted(missed)


def _tide(look: Look, place: int) -> list[Offer]:
    """The tide worked on the legs that must be made against a spring stream."""
    found = look.findings
    legs = [
        n for n, item in enumerate(found.legs.results)
        if item.must_make and _against(item.leg) and not item.leg.tide_worked
    ]  # fmt: skip
    if not legs:
        return []
    change = Change(
        Remedy("tide", HABIT, tuple(found.case.legs[n].name for n in legs), price=0.0),
        {("legs", str(n), "tide_worked"): True for n in legs},
        tuple(Typed(("legs", n, "tide_worked"), "true") for n in legs),
    )
    return [Offer("tide", HABIT, (1, 9), (change,))]


def _against(leg: Leg) -> bool:
    """Whether a stream stands against her."""
    return leg.spring_stream is not None or scalar(best(leg.foul_stream)) > 0.0


def _plug(look: Look, place: int) -> list[Offer]:
    """A charge between a leg that binds and the one before it."""
    found = look.findings
    legs = [n for n in _binding_legs(found) if found.case.legs[n].follows is not None]
    if not legs:
        return []
    change = Change(
        Remedy("plug", HABIT, tuple(found.case.legs[n].name for n in legs)),
        {("legs", str(n), "follows"): None for n in legs},
        tuple(Typed(("legs", n, "follows"), None) for n in legs),
    )
    return [Offer("plug", HABIT, (1, 2), (change,))]


def _tow(look: Look, place: int) -> list[Offer]:
    change = one(Remedy("tow", HABIT), ("planning", "fallback"), "tow", "tow")
    return [Offer("tow", HABIT, (10,), (change,))]


def _outboard(look: Look, place: int) -> list[Offer]:
    """A second propulsor that brings her home by itself."""
    change = Change(
        Remedy("outboard", SECOND, speed=OUTBOARD),
        {("planning", "fallback"): "second propulsor", ("planning", "fallback_speed"): OUTBOARD},
        (
            Typed(("planning", "fallback"), "second propulsor"),
            Typed(("planning", "fallback_speed"), f"{OUTBOARD / KNOT:.1f} kn"),
        ),
    )
    return [Offer("outboard", SECOND, (10, 18), (change,))]


def _bank(look: Look, place: int) -> list[Offer]:
    return [
        Offer("bank", BANK, (1, 2, 3, 4, 6, 7, 9, 11, 14, 24), bank_offers(look.findings, place))
    ]


def _limit(look: Look, place: int) -> list[Offer]:
    """A management system that lets more through, up to what the cells bear for good."""
    levels = limit_offers(look.findings, place)
    return [Offer("limit", BANK, (1, 4, 6, 7, 9, 14, 24), levels)]


def _motor(look: Look, place: int) -> list[Offer]:
    levels = motor_offers(look.findings, place)
    return [Offer("motor", MOTOR, (1, 2, 4, 5, 6, 7, 9, 14, 23, 24), levels)]


BUILDERS: tuple[Callable[[Look, int], list[Offer]], ...] = (
    _insurer, _body, _seen, _slower, _tide, _plug, _tow, *PART_BUILDERS, _limit, _bank, _motor,
    _outboard,
)  # fmt: skip
