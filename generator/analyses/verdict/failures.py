"""What does each single fault do to an option, what is left after it, and what is done then?"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.store.one_fault import OneFault
from generator.arrays import Numbers
from generator.tables.method import method

WHOLE, PART, SAIL = "all", "part", "sail"
MANY = 0.1  # of the draws; a cascade in more of them is counted on
HOT_JOINT = method("wiring.hot_joint")
KNOT, HOUR, KILOWATT_HOUR = 1852.0 / 3600.0, 3600.0, 3.6e6


@dataclass(frozen=True)
class Failure:
    """One fault; texts carry ``{results key|form}`` places, ``here`` reaches the numbers."""

    id: str
    fault: str
    effect: str
    kind: str  # WHOLE, PART of the drive, or SAIL
    left: str
    action: str
    diesel: str  # what the same fault leaves of a diesel; empty: it has no such part
    numbers: dict[str, float] = field(default_factory=dict)


def failures(found: Findings) -> tuple[Failure, ...]:
    """The single faults of a battery option, the gravest first; none of a diesel."""
    if found.fault is None or found.bank is None:
        return ()
    every = (
        _bank(found), _string(found, found.fault), _feeder(found), _controller(found),
        _throttle(found), _mechanical(found),
        _rope(found), _joint(found), _charger(found), _gauge(found), _house(found),
    )  # fmt: skip
    return tuple(item for item in every if item is not None)


def _without_drive(found: Findings) -> tuple[str, dict[str, float]]:
    """What moves her when the drive is gone."""
    plan = found.case.planning
    if plan.fallback == "second propulsor" and plan.fallback_speed is not None:
        speed = scalar(spread(np.asarray(plan.fallback_speed)).low) / KNOT
        return "sail, or {here.other_kn|speed} by the second propulsor", {"other_kn": speed}
    return ("sail or a tow" if plan.fallback == "tow" else "sail"), {}


def _alive(found: Findings) -> str:
    """What becomes of the house when the bank is gone."""
    return "on its own battery" if found.case.house.separate_bank else "goes dark with it"


def _bank(found: Findings) -> Failure:
    left, numbers = _without_drive(found)
    return Failure(
        "bank",
        "Remote disconnect or its wire opens, or every management system cuts off",
        "All strings' contactors open: drive, charger and converter are dead at once; the house "
        f"({{house.under_way_w|watts}}) {_alive(found)}",
        SAIL,
        left,
        "Alarm before cut-off; reset once the cause is known; anchor ready to let go",
        "",
        numbers,
    )


def _string(found: Findings, fault: OneFault) -> Failure | None:
    """One of several strings; a single one is the whole bank."""
    if fault.strings < 2:
        return None
    key = f"options.{found.place}.one_fault"
    cascade = float(np.mean(fault.cruise_trips)) > MANY
    left = f"{{{key}.speed_kn|speed}} at most"
    if np.isfinite(scalar(spread(fault.endurance, "low").middle)):
        left += f"; {{{key}.endurance_h|hours}} at {{planning.manoeuvring_speed_kn|speed}}"
    if cascade:
        left = "sail: at cruise the strings left trip one after the other"
    elif float(np.mean(fault.peak_trips)) > MANY:
        left += ", throttle back at the alarm"
    held = _held(found)
    action = "Throttle back, isolate that string, go in; no new fuse before the cause is known"
    if held and not cascade:
        action = "Controller to {here.held_a|current} at most" + action[len("Throttle back") :]
    return Failure(
        "string",
        "One string trips or its fuse blows",
        f"One of {{{key}.strings|count}} strings is gone, the others carry its current",
        SAIL if cascade else PART,
        left,
        action,
        "",
        held,
    )


def _held(found: Findings) -> dict[str, float]:
    """Battery current to which the controller is set with one string out [A]."""
    if found.installation is None or found.installation.settings.one_out is None:
        return {}
    return {"held_a": found.installation.settings.one_out.current}


def _feeder(found: Findings) -> Failure | None:
    """A short circuit behind the busbar: what opens besides the fuse of the drive."""
    made = found.installation
    drive = None if made is None else made.circuit("motor")
    if made is None or drive is None:
        return None
    left, numbers = _without_drive(found)
    alone = made.device_of(drive.id).selective
    more = (
        "the strings' fuses stay whole if the makers' curves say so"
        if alone
        else "the strings' fuses may open with it: then charger and converter are dead too, and "
        f"the house ({{house.under_way_w|watts}}) {_alive(found)}"
    )
    return Failure(
        "feeder",
        "Short circuit in cable or controller of the drive",
        f"Its fuse opens; {more}",
        SAIL,
        left,
        "Isolators open; no new fuse before the cause is found; replace all that carried it",
        "",
        numbers,
    )


def _controller(found: Findings) -> Failure:
    left, numbers = _without_drive(found)
    return Failure(
        "controller",
        "Controller, drive contactor or motor stops",
        "No drive; battery and house ({house.under_way_w|watts}) stay alive",
        SAIL,
        left,
        "Sail to berth or anchor; change the controller at rest, main isolator open",
        "sail",
        numbers,
    )


def _throttle(found: Findings) -> Failure:
    left, numbers = _without_drive(found)
    top = scalar(spread(found.power.top.peak).middle)
    return Failure(
        "throttle",
        "Throttle or its wire fails",
        "Thrust unasked, at worst as much as the motor has",
        SAIL,
        f"{left}; until stopped up to {{options.{found.place}.top_speed.peak_kn|speed}}, "
        "{here.second_m|height} a second",
        "Emergency stop at the helm: no torque within a second; broken wire must mean no thrust",
        "gear lever, then stop lever",
        numbers | {"second_m": top},
    )


def _mechanical(found: Findings) -> Failure:
    """What turns the shaft lets go: one real conversion in five had such a fault."""
    left, numbers = _without_drive(found)
    motor = found.option.motor
    direct = motor is None or float(np.asarray(motor.gear_ratio).flat[0]) == 1.0
    return Failure(
        "mechanical",
        f"{'Coupling' if direct else 'Belt, coupling'}, mount or shaft key lets go",
        "The motor turns and the shaft does not; on a loose mount it shakes out of line",
        SAIL,
        left,
        "Throttle to nothing, isolator open, shaft made fast; look at it in the first hours and "
        "each spring",
        "the same: coupling, mount, key",
        numbers,
    )


def _rope(found: Findings) -> Failure:
    left, numbers = _without_drive(found)
    return Failure(
        "rope",
        "Rope in the propeller",
        "No thrust; a stalled motor holds full torque on the rope",
        SAIL,
        left,
        "Main isolator open and locked before a hand goes near the shaft",
        "sail",
        numbers,
    )


def _joint(found: Findings) -> Failure | None:
    if found.bank is None:
        return None
    cruise, peak = (
        _watts(current) for current in (found.bank.cruise_current, found.bank.peak_current)
    )
    heats = {"cruise_w": cruise, "peak_w": peak}
    heats = {name: heat for name, heat in heats.items() if np.isfinite(heat)}
    if not heats:
        return None
    made = ", ".join(f"{{here.{name}|watts}} at {name.removesuffix('_w')}" for name in heats)
    return Failure(
        "joint",
        "A lug works loose or corrodes",
        "It heats with the square of the current, and opens in the end",
        WHOLE,
        f"all until then; each {{here.joint_mohm|resistance}} more makes {made}",
        "Torque marks; feel or film the lugs after an hour, each spring and after hard use",
        "",
        {"joint_mohm": 1e3 * HOT_JOINT, **heats},
    )


def _watts(current: Numbers) -> float:
    """Heat in the joint at the middle of a current; no number where that is none."""
    middle = scalar(spread(current).middle)
    return HOT_JOINT * middle * middle


def _charger(found: Findings) -> Failure | None:
    place = next(
        (at for at, item in enumerate(found.ranges) if item.sea == "calm" and item.age == "aged"),
        None,
    )
    if place is None:
        return None
    bar = f"options.{found.place}.range_at_cruise.{place}"
    left = f"{{{bar}.range_nm|distance}} to reserve"
    if not _goes(found, place):
        left = "no way to reserve at {planning.cruise_speed_kn|speed}"
    return Failure(
        "charger",
        "Charger or shore supply fails",
        "Nothing comes in; what is in the bank is all there is until {berth.name|given}",
        WHOLE,
        f"from full, aged: {left}",
        "Look at the charge before leaving, not after; a second charger or another berth",
        "",
    )


def _goes(found: Findings, place: int) -> bool:
    """Whether a range at planned cruise is there in more than half of the draws."""
    cruise = float(np.asarray(found.case.planning.cruise_speed).flat[0])
    speed, distance = found.power.speed, np.atleast_2d(found.ranges[place].distance)
    near = np.abs(speed - cruise) < speed[1] - speed[0] - 1e-9  # the speeds on either side of it
    rows = (distance[1:] if distance.shape[0] > 1 else distance)[:, near]
    return bool(near.any() and (rows > 0.0).all(axis=1).mean() > 0.5)


def _gauge(found: Findings) -> Failure | None:
    bank = found.option.bank
    if bank is None or found.bank is None:
        return None
    error = float(np.asarray(bank.gauge_error).flat[0])
    lost = error * scalar(spread(np.asarray(found.bank.nominal)).middle)
    drain = scalar(spread(found.key.cruise_drain).middle)
    numbers = {"gauge_kwh": lost / KILOWATT_HOUR}
    left = "all, {here.gauge_kwh|energy} less than shown"
    if drain > 0.0 and np.isfinite(drain):
        cruise = float(np.asarray(found.case.planning.cruise_speed).flat[0])
        numbers["gauge_nm"] = lost / drain * cruise / 1852.0
        left = "all, {here.gauge_nm|distance} less than shown"
    return Failure(
        "gauge",
        "Charge gauge reads high",
        f"{{options.{found.place}.bank.gauge_error_pct|percent}} of the bank is not there",
        WHOLE,
        left,
        "Charge to full and let the gauge find its end at least once a month",
        "gauge of the tank, likewise",
        numbers,
    )


def _house(found: Findings) -> Failure:
    own = found.case.house.separate_bank
    lit = "the house runs on from its own battery" if own else "radio and lights go dark"
    return Failure(
        "house",
        "Converter to the house fails",
        f"{{house.under_way_w|watts}} are no longer fed; {lit}",
        WHOLE,
        "all of the drive, if its controls are not fed from the house",
        "Handheld radio and torch charged; controls of the drive on the drive's own supply",
        "alternator fails: house battery drains",
    )
