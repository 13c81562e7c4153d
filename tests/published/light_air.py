"""How much would a light wind add to what the owners of measured boats have read?

Run as a script it prints, by the study's own wind and sea, what each reading would be in a wind
from ahead, and as the mean of two opposite passes in it. No reading is moved by it: none tells a
wind. It says how large the error is if a reading that was taken in light air is held against a
calm curve.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.demand import (
    Weather,
    blown,
    calm_parts,
    calm_resistance,
    in_weather,
    shaft_demand,
)
from generator.analyses.motion.plant import plant_output
from generator.analyses.percentiles import scalar, spread
from generator.arrays import Array
from generator.physics.hull.windage import wind_force
from tests.alone import alone
from tests.published.measured_boats import KNOT, Foretold, boat_case, readings

DRAWS = 800
WINDS = (0.0, 5.0, 8.0)  # kn
FETCH = 1000.0  # m: little open water, so that the sea is no more than chop

Way = Callable[[Findings, Array, float], Array]


def ahead(found: Findings, speed: Array, wind: float) -> Array:
    """Battery power [W] into the wind and the sea that it raises over a kilometre."""
    water, hull = _water(found, speed), found.power.vessel
    return _drain(
        found, speed, in_weather(hull, water, Weather(wind, FETCH), speed, found.case.factors)
    )


def both_ways(found: Findings, speed: Array, wind: float) -> Array:
    """Mean battery power [W] of two opposite passes; before the wind no sea holds her back."""
    water, hull = _water(found, speed), found.power.vessel
    steered = water * blown(found.case.factors.steering_and_trim, wind)
    astern = np.maximum(steered + wind_force(hull.drag_area, -wind, speed), 0.1 * water)
    return (ahead(found, speed, wind) + _drain(found, speed, astern)) / 2.0


def _water(found: Findings, speed: Array) -> Array:
    case, hull = found.case, found.power.vessel
    parts = calm_parts(hull, case.factors, speed)
    return calm_resistance(parts, case.factors, case.boat, found.trial.scale.at(speed))


def _drain(found: Findings, speed: Array, resistance: Array) -> Array:
    option, factors = found.option, found.case.factors
    condition = factors.propeller_condition
    demand = shaft_demand(found.power.vessel, option.propeller, condition, speed, resistance)
    output = plant_output(option, demand, factors, found.power.aged)
    return np.where(demand.feasible, output.drain, np.inf)


def in_light_air(way: Way, winds: tuple[float, ...] = WINDS) -> Iterator[list[Foretold]]:
    """For each reading what is foretold in each wind [kn]."""
    boats: dict[str, Findings] = {}
    for boat, knots, read in readings():
        if boat not in boats:
            boats[boat] = alone(boat_case(boat), 1, DRAWS).findings
        speed = np.array([knots * KNOT])
        told = [spread(way(boats[boat], speed, wind * KNOT)) for wind in winds]
        yield [
            Foretold(boat, knots, read, scalar(one.low), scalar(one.middle), scalar(one.high))
            for one in told
        ]


def lines(way: Way) -> Iterator[str]:
    """The table as text: what each wind adds, and where the reading then lies."""
    yield "boat        kn   read W   calm W" + "".join(
        f"   {wind:g} kn  read/P50 inside" for wind in WINDS[1:]
    )
    for calm, *windy in in_light_air(way):
        yield f"{calm.boat:9} {calm.knots:5.2f} {calm.read:7.0f} {calm.middle:8.0f}" + "".join(
            f"  {row.middle / calm.middle - 1.0:+5.0%} {row.read / row.middle:9.2f} "
            f"{'yes' if row.hit else 'no':>6}"
            for row in windy
        )


if __name__ == "__main__":
    import sys

    for title, way in (("ahead", ahead), ("two opposite passes", both_ways)):
        sys.stdout.write("\n".join((title, *lines(way))) + "\n")
