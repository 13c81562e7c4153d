"""Which fuse stands in the positive leg of a circuit, and does it hold its rules?"""

from __future__ import annotations

from dataclasses import dataclass, replace

from generator.analyses.percentiles import scalar
from generator.analyses.wiring.installation import Conductor, Device, Problem
from generator.analyses.wiring.loads import Load
from generator.physics.energy.protection import (
    LOAD_SHARE,
    FuseClass,
    fuse_class,
    fuse_ratings,
    least_fuse,
    most_fuse,
    selective,
)
from generator.tables.method import method

BARE, SHEATHED = 0.178, 1.016  # m from the source: cfr33_183, 7 and 40 in
DERATING, RATED_AIR = method("wiring.fuse_derating"), method("wiring.fuse_air")
LASTING = method("wiring.lasting")
AS_STATED, UNKNOWN_LET_THROUGH = "as stated", 20.0  # the second in s: the slowest of the classes


@dataclass(frozen=True)
class Stand:
    """Where a fuse stands: fault current [A] and air there, the fuse before it, distance rule."""

    id: str
    fault: float
    upstream: str | None
    sheathed: bool
    air: float  # degC about it


def warm_share(air: float) -> float:
    """What of its rating a fuse carries in the air where it stands [-]; air in degC."""
    return 1.0 - DERATING * max(air - RATED_AIR, 0.0)


def asked(load: Load, air: float) -> float:
    """Rating that the load asks for in the air of its space [A]."""
    lasting = load.peak if load.peak_time > LASTING else load.continuous
    return max(load.continuous / LOAD_SHARE, lasting) / warm_share(air)


def rating(load: Load, fault: float, air: float) -> float:
    """As stated, else the smallest one sold that carries the load, else the largest [A].

    Where no class of that rating breaks the fault, the next larger one of a class that does:
    its conductor is chosen by it.
    """
    if load.plan.fuse is not None:
        return scalar(load.plan.fuse)
    least = least_fuse(0.0, asked(load, air)) or fuse_ratings()[-1]
    if load.plan.fuse_voltage is not None or load.plan.fuse_breaking is not None:
        return least
    larger = (one for one in fuse_ratings() if one >= least)
    return next((one for one in larger if fuse_class(load.ceiling, fault, one)), least)


def smallest(ceiling: float, fault: float) -> float:
    """Smallest rating sold of which a class bears voltage and fault; else the smallest [A]."""
    every = fuse_ratings()
    return next((one for one in every if fuse_class(ceiling, fault, one)), every[0])


def class_of(load: Load, fault: float, air: float) -> FuseClass | None:
    """As stated, else the first class that bears voltage and fault."""
    plan = load.plan
    fits = fuse_class(load.ceiling, fault, rating(load, fault, air))
    if plan.fuse_voltage is None and plan.fuse_breaking is None:
        return fits
    own = fits or FuseClass("", load.ceiling, fault, UNKNOWN_LET_THROUGH)
    return FuseClass(
        AS_STATED,
        own.voltage if plan.fuse_voltage is None else scalar(plan.fuse_voltage),
        own.breaking if plan.fuse_breaking is None else scalar(plan.fuse_breaking),
        own.let_through,
    )


def fuse(load: Load, wire: Conductor, stand: Stand) -> Device:
    """The fuse of one circuit."""
    kind = class_of(load, stand.fault, stand.air)
    device = Device(
        id=stand.id,
        circuit=load.id,
        place=f"{load.source}, positive",
        fuse_class=None if kind is None else kind.name,
        rating=rating(load, stand.fault, stand.air),
        voltage=None if kind is None else kind.voltage,
        breaking=None if kind is None else kind.breaking,
        fault=stand.fault,
        ceiling=load.ceiling,
        least=asked(load, stand.air),
        most=most_fuse(load.ceiling, wire.ampacity),
        distance=scalar(load.plan.fuse_distance),
        distance_limit=SHEATHED if stand.sheathed else BARE,
        upstream=stand.upstream,
        selective=None,
        spares=1,
        stated=load.plan.fuse is not None,
        problems=(),
    )
    return replace(device, problems=_problems(device))


def _problems(device: Device) -> tuple[Problem, ...]:
    """What does not hold."""
    found = []
    if device.rating > device.most:
        found.append("larger_than_conductor")
    if device.rating < device.least:
        found.append("too_small")
    if device.fuse_class is None:
        found.append("no_class")
    if device.voltage is not None and device.voltage < device.ceiling:
        found.append("below_ceiling")
    if device.breaking is not None and device.breaking < device.fault:
        found.append("breaks_less")
    if device.distance > device.distance_limit:
        found.append("too_far")
    return tuple(Problem(device.id, what) for what in found)


def with_selectivity(devices: tuple[Device, ...], strings: int) -> tuple[Device, ...]:
    """Each fuse told whether it opens before those of all strings together."""
    return tuple(
        device
        if device.upstream is None
        else replace(device, selective=selective(strings * devices[0].rating, device.rating))
        for device in devices
    )
