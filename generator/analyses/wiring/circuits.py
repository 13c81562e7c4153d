"""Which conductor does a circuit take, what does it lose, and how warm does it get?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from generator.analyses.wiring.installation import Circuit, Conductor, Drop, Problem, Warmth
from generator.analyses.wiring.loads import Load
from generator.physics.energy.conductor import (
    boat_form_area,
    bundle_factor,
    copper_resistivity,
    fault_constant,
    metric_form_area,
    overload_temperature,
    short_circuit_area,
    steady_temperature,
    table_ampacity,
    volt_drop,
    warm_air_factor,
    warming_time,
)
from generator.physics.energy.protection import clearing_time
from generator.tables.load import read_table
from generator.tables.method import method

SQUARE_MILLIMETRE = 1e-6
DROP_LIMIT = method("wiring.drop_share")
MOST_SIDE_BY_SIDE = 4
LEAST_SIDE_BY_SIDE = method("wiring.least_doubled")


@dataclass(frozen=True)
class Surroundings:
    """Insulation, air and bundle that all circuits share; degC."""

    temperature_class: float
    air: float
    bundled: int


@cache
def sections() -> tuple[tuple[float, str], ...]:
    """Metric sections [m2] with the gauge whose allowable current each may take."""
    table = read_table("energy/metric_sections")
    areas = table.column("section") * SQUARE_MILLIMETRE
    return tuple((float(area), gauge) for area, gauge in zip(areas, table.text("awg"), strict=True))


def conductor(area: float, number: int, around: Surroundings, stated: bool) -> Conductor:
    """A conductor of a given section and what it may carry."""
    fits = [gauge for section, gauge in sections() if section <= area * 1.001]
    gauge = fits[-1] if fits else sections()[0][1]
    own = table_ampacity(gauge, int(around.temperature_class)) * number
    warm = float(warm_air_factor(around.temperature_class, around.air))
    carried = own * warm * bundle_factor(around.bundled)
    return Conductor(gauge, stated, area, number, own, carried)


def chosen(wanted: float, copper: float, around: Surroundings) -> Conductor:
    """The smallest conductor that carries a current and has that much copper."""
    every = (
        conductor(area, number, around, False)
        for number in range(1, MOST_SIDE_BY_SIDE + 1)
        for area, _ in sections()
        if number == 1 or area >= LEAST_SIDE_BY_SIDE
    )
    fits = (item for item in every if item.ampacity >= wanted and item.copper >= copper)
    largest = sections()[-1][0]
    return next(fits, None) or conductor(largest, MOST_SIDE_BY_SIDE, around, False)


def drop_of(load: Load, around: Surroundings, wire: Conductor) -> Drop:
    """Voltage lost at the temperature that the conductor settles at, and the two code forms."""
    loop, permitted = 2.0 * load.run, DROP_LIMIT * load.voltage
    limit = around.temperature_class
    warm = min(float(steady_temperature(load.continuous, wire.ampacity, limit, around.air)), limit)
    resistivity = float(copper_resistivity(warm))
    volts = float(volt_drop(load.continuous, loop, wire.copper, resistivity))
    peak = float(volt_drop(load.peak, loop, wire.copper, float(copper_resistivity(limit))))
    return Drop(
        lost=volts,
        share=volts / load.voltage,
        peak_share=peak / load.voltage,
        limit=DROP_LIMIT,
        physical_area=drop_area(load, around),
        boat_form_area=float(boat_form_area(load.continuous, loop, permitted)),
        metric_form_area=float(metric_form_area(load.continuous, loop, permitted)),
    )


def drop_area(load: Load, around: Surroundings) -> float:
    """Least copper for the permitted drop, at the highest temperature of the insulation [m2]."""
    resistivity = float(copper_resistivity(around.temperature_class))
    return float(volt_drop(load.continuous, 2.0 * load.run, DROP_LIMIT * load.voltage, resistivity))


def fault_area(rating: float, let_through: float, fault: float, around: Surroundings) -> float:
    """Least copper that the fault at its source does not spoil before the fuse opens [m2]."""
    constant = fault_constant(around.temperature_class)
    time = clearing_time(rating, let_through, fault)
    return float(short_circuit_area(fault, time, constant))


def warmth_of(load: Load, around: Surroundings, wire: Conductor, spoiled: float) -> Warmth:
    """Temperatures for good and at the end of the peak; the peak begins from the settled one."""
    limit, air = around.temperature_class, around.air
    settled = float(steady_temperature(load.continuous, wire.ampacity, limit, air))
    aim = float(steady_temperature(load.peak, wire.ampacity, limit, air))
    single = wire.ampacity / wire.side_by_side
    slow = float(warming_time(wire.area, single, limit, air))
    return Warmth(
        space=air,
        settled=settled,
        after_peak=float(overload_temperature(settled, aim, load.peak_time, slow)),
        limit=limit,
        time_constant=slow,
        fault_area=spoiled,
    )


def circuit(
    load: Load, around: Surroundings, wire: Conductor, spoiled: float, device: str
) -> Circuit:
    """One circuit with everything that its row of the schedule says."""
    drop, warmth = drop_of(load, around, wire), warmth_of(load, around, wire, spoiled)
    return Circuit(
        id=load.id,
        kind=load.kind,
        name=load.name,
        source=load.source,
        target=load.target,
        voltage=load.voltage,
        ceiling=load.ceiling,
        continuous=load.continuous,
        peak=load.peak,
        peak_time=load.peak_time,
        from_power=load.plan.current is None,
        run=load.run,
        conductor=wire,
        drop=drop,
        warmth=warmth,
        device=device,
        problems=_problems(load, wire, drop, warmth),
    )


def _problems(load: Load, wire: Conductor, drop: Drop, warmth: Warmth) -> tuple[Problem, ...]:
    """What does not hold."""
    found = []
    if load.continuous > wire.ampacity:
        found.append("over_its_current")
    if warmth.after_peak > warmth.limit:
        found.append("too_warm")
    if drop.share > drop.limit:
        found.append("loses_too_much")
    if warmth.fault_area > wire.copper:
        found.append("spoiled_by_fault")
    return tuple(Problem(load.id, what) for what in found)
