"""What does each single fault do to an option, what is left after it, and what is done then?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.store.bank import BankResult
from generator.analyses.store.one_fault import OneFault
from generator.analyses.verdict.failure import (
    PART,
    SAIL,
    WHOLE,
    BankOpens,
    ChargerFails,
    ControllerStops,
    Failure,
    FailureCount,
    FeederShorts,
    GaugeReadsHigh,
    HouseUnfed,
    JointHeats,
    RopeInScrew,
    ShaftLetsGo,
    StringTrips,
    ThrottleFails,
)
from generator.arrays import Array, Numbers
from generator.tables.method import method

MANY = 0.1  # of the draws; a cascade in more of them is counted on
HOT_JOINT = method("wiring.hot_joint")
TOW, PROPULSOR, BY_SAIL = "tow", "second propulsor", "sail"


def failures(found: Findings) -> tuple[Failure, ...]:
    """The single faults of a battery option, the gravest first; none of a diesel."""
    if found.fault is None or found.bank is None:
        return ()
    bank, fallback, other = found.bank, *_fallback(found)
    house, own = found.case.house.under_way, bool(found.case.house.separate_bank)
    every: tuple[Failure | None, ...] = (
        BankOpens("bank", SAIL, fallback, own, house, other),
        _string(found, found.fault),
        _feeder(found, fallback, other),
        ControllerStops("controller", SAIL, fallback, house, other),
        _throttle(found, fallback, other),
        ShaftLetsGo("mechanical", SAIL, fallback, _direct(found), other),
        RopeInScrew("rope", SAIL, fallback, other),
        _joint(bank),
        _charger(found),
        _gauge(found, bank),
        HouseUnfed("house", WHOLE, own, house),
    )
    return tuple(item for item in every if item is not None)


def counted(every: tuple[Failure, ...]) -> FailureCount:
    """All faults, and those that take the drive away."""
    return FailureCount(len(every), sum(item.kind == SAIL for item in every))


def _fallback(found: Findings) -> tuple[str, Numbers | None]:
    """What moves her when the drive is gone, and how fast a second propulsor does."""
    plan = found.case.planning
    if plan.fallback == PROPULSOR and plan.fallback_speed is not None:
        return PROPULSOR, plan.fallback_speed
    return (TOW if plan.fallback == TOW else BY_SAIL), None


def _string(found: Findings, fault: OneFault) -> StringTrips | None:
    """One of several strings; a single one is the whole bank."""
    if fault.strings < 2:
        return None
    cascade = fault.cruise_trips > MANY
    at_peak = fault.peak_trips > MANY
    one_out = None if found.installation is None else found.installation.settings.one_out
    return StringTrips(
        id="string",
        kind=SAIL if cascade else PART,
        left="sail" if cascade else "alarm" if at_peak else "part",
        strings=fault.strings,
        speed=fault.speed,
        endurance=fault.endurance,
        slow=found.case.planning.manoeuvring_speed,
        held=None if one_out is None else one_out.current,
    )


def _feeder(found: Findings, fallback: str, other: Numbers | None) -> FeederShorts | None:
    """Where there is an installation, the fuse of the drive opens first or with the others."""
    made = found.installation
    drive = None if made is None else made.circuit("motor")
    if made is None or drive is None:
        return None
    house = found.case.house
    return FeederShorts(
        id="feeder",
        kind=SAIL,
        fallback=fallback,
        alone=bool(made.device_of(drive.id).selective),
        own_battery=bool(house.separate_bank),
        house=house.under_way,
        other=other,
    )


def _throttle(found: Findings, fallback: str, other: Numbers | None) -> ThrottleFails:
    top = found.power.top.peak
    return ThrottleFails("throttle", SAIL, fallback, top, top * 1.0, other)  # in one second


def _direct(found: Findings) -> bool:
    """Without belt or gear between motor and shaft."""
    motor = found.option.motor
    return motor is None or scalar(motor.gear_ratio) == 1.0


def _joint(bank: BankResult) -> JointHeats | None:
    cruise, peak = (_heat(current) for current in (bank.cruise_current, bank.peak_current))
    if cruise is None and peak is None:
        return None
    return JointHeats("joint", WHOLE, HOT_JOINT, cruise, peak)


def _heat(current: Numbers) -> float | None:
    """Heat in the joint at the middle of a current [W]; none where that is none."""
    middle = scalar(spread(current).middle)
    return HOT_JOINT * middle * middle if np.isfinite(middle) else None


def _charger(found: Findings) -> ChargerFails | None:
    """What is in the bank is all there is: the range of the aged one at planned cruise."""
    item = next((each for each in found.ranges if (each.sea, each.age) == ("calm", "aged")), None)
    if item is None:
        return None
    cruise = found.case.planning.cruise_speed
    left = _at(np.atleast_2d(item.distance), found.power.speed, scalar(cruise))
    return ChargerFails("charger", WHOLE, found.case.berth.name, left, cruise)


def _at(distance: Array, speed: Array, wanted: float) -> Array:
    """Distance at a speed [m], linear between those of the curves; nan where one has none."""
    there = np.where(distance > 0.0, distance, np.nan)
    place = int(np.clip(np.searchsorted(speed, wanted, side="right") - 1, 0, speed.size - 2))
    share = (wanted - speed[place]) / (speed[place + 1] - speed[place])
    low = there[:, [place]]
    return low if share <= 1e-9 else low + share * (there[:, [place + 1]] - low)


def _gauge(found: Findings, bank: BankResult) -> GaugeReadsHigh:
    lost = scalar(bank.gauge_error) * bank.nominal
    drain = scalar(spread(found.key.cruise_drain).middle)
    miles = None
    if drain > 0.0 and np.isfinite(drain):
        miles = lost / drain * scalar(found.case.planning.cruise_speed)
    return GaugeReadsHigh("gauge", WHOLE, bank.gauge_error, lost, miles)
