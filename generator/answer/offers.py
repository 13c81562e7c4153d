"""Which changes might mend a row, by stage from what costs nothing to what costs most?"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, scalar
from generator.answer.desk import Look
from generator.answer.defaults import refilled
from generator.answer.grow import TOO_NEAR, bank_offers, motor_offers
from generator.answer.remedy import Change, Remedy, Typed, one
from generator.case.usage import Leg

KNOT = 1852.0 / 3600.0
STEP, MOST_STEPS = 0.1 * KNOT, 10  # by which a leg is made slower, up to one knot
LEAST_THROUGH, LEAST_OVER = 3.0 * KNOT, 1.5 * KNOT
OUTBOARD = 3.5 * KNOT
FACTS, SETTINGS, HABIT, PARTS, BANK, MOTOR, SECOND = range(7)


@dataclass(frozen=True, eq=False)
class Offer:
    """One kind of change in several strengths, the weakest first, and the rows it may mend."""

    kind: str
    stage: int
    rows: tuple[int, ...]
    levels: tuple[Change, ...]


def offers(look: Look, place: int) -> tuple[Offer, ...]:
    """All that may mend the option as it was looked at; what changes nothing is left out."""
    bad = {row for row, rank in look.ranks.items() if rank}
    made = [offer for build in BUILDERS for offer in build(look, place)]
    return tuple(offer for offer in made if offer.levels and bad & set(offer.rows))


def _insurer(look: Look, place: int) -> list[Offer]:
    if look.findings.case.papers.insurer in ("accepted", "no cover wanted"):
        return []
    change = one(Remedy("insurer", FACTS), ("papers", "insurer"), "accepted", "accepted")
    return [Offer("insurer", FACTS, (20,), (change,))]


def _body(look: Look, place: int) -> list[Offer]:
    change = one(Remedy("body", FACTS), ("papers", "conversion"), "assessed", "assessed")
    return [Offer("body", FACTS, (21,), (change,))]


def _seen(look: Look, place: int) -> list[Offer]:
    """The space looked at and found good, where nobody has looked."""
    compartment = look.findings.option.compartment
    unseen = [name for name in ASKED if getattr(compartment, name) is None]
    if not unseen:
        return []
    at = ("options", place, "compartment")
    change = Change(
        Remedy("seen", FACTS),
        {tuple(map(str, (*at, name))): True for name in unseen},
        tuple(Typed((*at, name), "true") for name in unseen),
    )
    return [Offer("seen", FACTS, (19,), (change,))]


ASKED = ("dry", "above_bilge", "ventable", "not_a_berth", "escape_clear")
WORKS = "Works that make the battery's space fit for it"


def _works(look: Look, place: int) -> list[Offer]:
    """Works on a space that is not as it must be."""
    compartment = look.findings.option.compartment
    wrong = tuple(name for name in ASKED if getattr(compartment, name) is False)
    if not wrong or compartment.works:
        return []
    at = ("options", place, "compartment", "works")
    return [Offer("works", PARTS, (19,), (one(Remedy("works", PARTS, wrong), at, WORKS, WORKS),))]


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
            speed=first, slower=step * STEP,
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
    return [Offer("slower", HABIT, (1, 2, 11, 12, 13), tuple(levels))]


def _less(leg: Leg, by: float) -> float | None:
    """The owner's speed less so much, to a hundredth of a knot; none where it is too little."""
    stream = scalar(best(leg.foul_stream))
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
        Remedy("tide", HABIT, tuple(found.case.legs[n].name for n in legs)),
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


def _reduction(look: Look, place: int) -> list[Offer]:
    """The ratio with which the motor turns as rated on her own propeller."""
    found = look.findings
    motor, ratio = found.option.motor, round(found.match.ratio, 2)
    if motor is None or not np.isfinite(ratio) or abs(ratio - scalar(best(motor.gear_ratio))) < TOO_NEAR:
        return []
    change = geared(found, Remedy("reduction", PARTS, ratio=ratio), place, ratio)
    return [Offer("reduction", PARTS, (4, 5, 6, 7, 9, 23, 24, 1), (change,))]


def geared(found: Findings, told: Remedy, place: int, ratio: float) -> Change:
    """Another reduction; what turned the shaft itself gets the losses of a gear with it."""
    motor = found.option.motor
    assert motor is not None
    at = ("options", place, "motor", "gear_ratio")
    power = scalar(best(motor.continuous_power))
    fields = {tuple(map(str, at)): ratio} | refilled(found, place, power, ratio, motor.cooling)
    return Change(told, fields, (Typed(at, f"{ratio:.2f}"),))


def _lock_out(look: Look, place: int) -> list[Offer]:
    bank = look.findings.option.bank
    if bank is None or bank.charge_lock_out:
        return []
    at = ("options", place, "bank", "charge_lock_out")
    return [Offer("lock-out", PARTS, (15,), (one(Remedy("lock-out", PARTS), at, True, "true"),))]


def _own_house(look: Look, place: int) -> list[Offer]:
    if look.findings.case.house.separate_bank:
        return []
    at = ("house", "separate_bank")
    return [Offer("house", PARTS, (13,), (one(Remedy("house", PARTS), at, True, "true"),))]


def _charger(look: Look, place: int) -> list[Offer]:
    """The charger that puts a usual day back in time, where the berth gives as much."""
    berth = look.findings.use.berth
    if berth is None or berth.least_charger is None:
        return []
    power = float(np.ceil(berth.least_charger / 100.0) * 100.0)
    at = ("options", place, "supply", "charger", "power")
    change = one(Remedy("charger", PARTS, power=power), at, power, f"{power / 1e3:.1f} kW")
    return [Offer("charger", PARTS, (11,), (change,))]


def _bank(look: Look, place: int) -> list[Offer]:
    return [
        Offer("bank", BANK, (1, 2, 3, 4, 6, 7, 9, 11, 14, 24), bank_offers(look.findings, place))
    ]


def _motor(look: Look, place: int) -> list[Offer]:
    levels = motor_offers(look.findings, place)
    return [Offer("motor", MOTOR, (1, 2, 4, 5, 6, 7, 9, 14, 23, 24), levels)]


BUILDERS: tuple[Callable[[Look, int], list[Offer]], ...] = (
    _insurer, _body, _seen, _slower, _tide, _plug, _tow, _reduction, _lock_out, _own_house,
    _charger, _works, _bank, _motor, _outboard,
)  # fmt: skip
