"""Which reduction, pitch and propeller would match, and which of them serve best?"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from generator.analyses.motion.demand import Demand, Scale, Weather, shaft_demand
from generator.analyses.motion.plant import peak_lasts, plant_output
from generator.analyses.motion.power import KNOT, Power, at_points, speed_at_limit
from generator.analyses.motion.pull import greatest_pull
from generator.analyses.percentiles import best, first_row, held_share, scalar, spread
from generator.arrays import Array, Flags, Numbers
from generator.case.case import Case
from generator.case.diesel import Diesel, Propeller
from generator.case.option import Motor, Option
from generator.tables.load import read_table
from generator.tables.method import method

TIP_CLEARANCE = method("propeller.tip_clearance")
UNMEASURED = method("propeller.unmeasured_room")  # of her own diameter, where nobody measured
SURE = method("judging.sure")
TOP_TIME = method("judging.top_time")
PITCH_RATIOS = np.arange(0.50, 1.401, 0.05)  # the series
SIZE_STEP = 0.05  # of the greatest diameter
SMALLEST = 0.80  # of the greatest diameter, or of her own where that is smaller
CUBE = 1.0 / 3.0  # turns grow with the cube root of power where the curve ends
PULLING = 3.5 * KNOT  # through the water, against wind and sea
FASTER = 0.01  # of the turns: steps in which a reduction is tried


@dataclass(frozen=True)
class Screw:
    """A propeller and the ratio that matches it: m, -, W from the bank or m3/s of fuel."""

    diameter: float
    pitch: float
    ratio: float
    drain: float  # at planned cruise
    efficiency: float  # of the propeller in open water there
    pull: float  # N behind the hull that lasts at 3.5 kn


class Bench:
    """The best estimate of one option, on which other propellers are tried."""

    def __init__(
        self, case: Case, option: Option, found: Power, scale: Scale, doubt: Array
    ) -> None:
        """``doubt``: turns of each draw over those of the best estimate."""
        self.option = replace(
            option,
            motor=first_row(option.motor),
            bank=first_row(option.bank),
            diesel=first_row(option.diesel),
            propeller=first_row(option.propeller),
        )
        self.propeller: Propeller = self.option.propeller
        self.factors = first_row(case.factors)
        self.vessel = first_row(found.vessel)
        self.doubt = doubt
        self.power = replace(found, vessel=self.vessel, aged=None)  # the bank is not its matter
        self.plant = plant_of(self.option)
        self.ratio = float(self.plant.gear_ratio)
        calm = found.curves["calm"].demand
        usable = np.atleast_2d(calm.feasible)[0]
        self.speed = found.speed[usable]
        self.resistance = np.atleast_2d(calm.resistance)[0][usable]
        cruise = np.atleast_1d(float(np.asarray(case.planning.cruise_speed).flat[0]))
        curve = at_points(case, option, found, scale, cruise, Weather(0.0, 1.0))
        self.cruise, self.cruise_resistance = cruise, curve.demand.resistance[:1].reshape(-1)
        self.wanted = min(  # calm speed that passes
            _limit("Top speed in a calm", "go") * scalar(best(found.vessel.hull_speed)),
            float(cruise[0]) + _limit("Top speed in a calm", "second_go") * KNOT,
        )
        self.shorter = self._shorter(case, option, found)

    def _demand(self, propeller: Propeller, speed: Array, resistance: Array) -> Demand:
        condition = self.factors.propeller_condition
        return shaft_demand(self.vessel, propeller, condition, speed, resistance)

    def turns(self, propeller: Propeller, ratio: float) -> Array:
        """Turns of the motor at full power, for each pitch of the propeller."""
        option = _geared(self.option, ratio)
        demand = self._demand(propeller, self.speed, self.resistance)
        output = plant_output(option, demand, self.factors)
        full = full_power(self.plant)
        return turns_at(output.power, output.turns, demand.feasible, full)[:, 0]

    def matched(self, propeller: Propeller) -> float:
        """Reduction with which full power comes at rated turns in a calm."""
        return float(self.plant.rated_speed) / float(self.turns(propeller, 1.0)[0])

    def serving(self, propeller: Propeller) -> float:
        """The reduction that is advised: matched, and shorter or longer by what serves her."""
        return self.matched(propeller) * (1.0 + self.shorter)

    def _shorter(self, case: Case, option: Option, found: Power) -> float:
        """By how much a reduction that matches for sure is geared short to pull hardest.

        Shorter gearing pulls harder against a wind and turns away sooner in a calm: it goes no
        further than planned cruise and the wanted top speed allow in nine draws of ten, where any
        that matches reaches them.
        """
        tried = self._within_band()
        ratios = self.matched(self.propeller) * (1.0 + tried)
        made = np.array([_calm_speeds(case, option, found, each) for each in ratios])
        goal = np.minimum([self.cruise[0], self.wanted], made.max(axis=0))
        reached = (made / np.maximum(goal, 1e-9)).min(axis=1)
        served = reached >= min(reached.max(), 1.0) - 1e-9
        pull = np.where(served, self.pull(self.propeller, ratios[:, np.newaxis]), 0.0)
        best_ones = np.flatnonzero(pull >= pull.max() * (1.0 - 1e-6))
        return float(tried[best_ones[np.argmin(np.abs(tried[best_ones]))]])

    def _within_band(self) -> Array:
        """Middles of the turns over rated, less 1, that stay within the band for sure."""
        most = _limit("Propeller match", "go")
        steps = round(most / FASTER)
        tried = np.arange(-steps, steps + 1) * FASTER
        sure = [
            held_share(np.abs(self.doubt * (1.0 + each) - 1.0) <= most) >= SURE for each in tried
        ]
        sure[steps] = True  # nothing lies nearer, whatever the doubt
        return np.asarray(tried[sure])

    def pull(self, propeller: Propeller, ratios: Array) -> Array:
        """Thrust behind the hull that lasts at 3.5 kn [N] with each of the ratios."""
        option = replace(_geared(self.option, ratios), propeller=propeller)
        found = greatest_pull(option, self.power, self.factors, np.array([PULLING]), peak=False)
        thrust = np.atleast_2d(found.thrust * (1.0 - np.asarray(propeller.thrust_deduction)))
        return np.asarray(thrust[:, 0])

    def screw(self, propeller: Propeller, ratio: float) -> Screw:
        """What one propeller draws at planned cruise."""
        demand = self._demand(propeller, self.cruise, self.cruise_resistance)
        output = plant_output(_geared(self.option, ratio), demand, self.factors)
        return Screw(
            float(propeller.diameter),
            float(propeller.pitch),
            ratio,
            scalar(output.drain),
            scalar(demand.propeller_efficiency),
            float(self.pull(propeller, np.array([[ratio]]))[0]),
        )

    def matching_pitch(self) -> float | None:
        """Pitch with which full power comes at rated turns, ratio and diameter kept."""
        pitches = PITCH_RATIOS[:, np.newaxis] * self.propeller.diameter
        off = (
            self.turns(replace(self.propeller, pitch=pitches), self.ratio) / self.plant.rated_speed
        )
        falling = np.log(off)
        if not falling.min() <= 0.0 <= falling.max():
            return None
        return float(np.interp(0.0, falling[::-1], pitches[::-1, 0]))

    def best(self) -> Screw | None:
        """Least shaft power at cruise in the aperture, with the ratio that serves it.

        Where nobody measured the aperture a larger one than hers is tried as well.
        """
        sizes = self._sizes()
        diameter = np.repeat(sizes, PITCH_RATIOS.size)[:, np.newaxis]
        pitch = np.tile(PITCH_RATIOS, sizes.size)[:, np.newaxis] * diameter
        tried = replace(self.propeller, diameter=diameter, pitch=pitch)
        power = self._demand(tried, self.cruise, self.cruise_resistance).shaft_power[:, 0]
        if not np.isfinite(power).any():
            return None
        # lacking: of propellers, not of draws; one that cannot carry the thrust is no choice
        place = int(np.nanargmin(power))
        chosen = replace(
            self.propeller, diameter=float(diameter[place, 0]), pitch=float(pitch[place, 0])
        )
        return self.screw(chosen, self.serving(chosen))

    def _sizes(self) -> Array:
        """Diameters that are tried [m], the greatest that the aperture lets clear last."""
        own, room = float(self.propeller.diameter), self.propeller.aperture_height
        most = own * UNMEASURED if room is None else float(room) / (1.0 + 2.0 * TIP_CLEARANCE)
        least = SMALLEST * min(own, most)
        return np.asarray(np.linspace(least, most, round((1.0 - least / most) / SIZE_STEP) + 1))


def _geared(option: Option, ratio: float | Array) -> Option:
    """The option with another reduction."""
    if option.motor is not None:
        return replace(option, motor=replace(option.motor, gear_ratio=ratio))
    assert option.diesel is not None
    return replace(option, diesel=replace(option.diesel, gear_ratio=ratio))


def _calm_speeds(case: Case, option: Option, found: Power, ratio: float) -> tuple[float, float]:
    """Speed in a calm for good and for ten minutes [m/s], in nine draws of ten, with a ratio."""
    calm, geared = found.curves["calm"].demand, _geared(option, ratio)
    output = plant_output(geared, calm, case.factors, found.aged)
    brief = output.peak_load if peak_lasts(option, TOP_TIME) else output.load
    held, top = (
        scalar(spread(speed_at_limit(load, calm.feasible, found.speed), "low").low)
        for load in (output.motor_load, brief)
    )
    return held, top


def _limit(name: str, end: str) -> float:
    """A limit of the verdict, which advice has to meet."""
    table = read_table("rules/criteria")
    return float(table.column(end)[table.row_of("name", name)])


def plant_of(option: Option) -> Motor | Diesel:
    """What turns the shaft of an option."""
    plant = option.motor or option.diesel
    assert plant is not None
    return plant


def full_power(plant: Motor | Diesel) -> Numbers:
    """What it gives for good at its own shaft [W]."""
    return plant.continuous_power if isinstance(plant, Motor) else plant.rated_power


def at_shaft(plant: Motor | Diesel, power: Numbers) -> Array:
    """What of the plant's power [W] is left at the shaft coupling [W]."""
    standing = plant.seal_and_bearings if isinstance(plant, Motor) else plant.alternator_power
    left = np.maximum(np.asarray(power) - standing, 0.0) * np.asarray(plant.gear_efficiency)
    return np.atleast_2d(left)


def turns_at(power: Array, turns: Array, feasible: Flags, wanted: Numbers) -> Array:
    """Turns of the plant at a power on its curve, by powers between and beyond its points."""
    power, turns, good = np.broadcast_arrays(*(np.atleast_2d(v) for v in (power, turns, feasible)))
    goal = np.broadcast_to(np.atleast_2d(np.asarray(wanted)), (power.shape[0], 1))
    below = good & (power <= goal)
    last = np.maximum(good.sum(axis=1) - 1, 1)
    low = np.clip(below.sum(axis=1) - 1, 0, last - 1)
    rows = np.arange(power.shape[0])
    p0, p1 = np.log(power[rows, low]), np.log(power[rows, low + 1])
    n0, n1 = np.log(turns[rows, low]), np.log(turns[rows, low + 1])
    share = (np.log(goal[:, 0]) - p0) / (p1 - p0)
    inside = n0 + share * (n1 - n0)
    beyond = n1 + CUBE * (np.log(goal[:, 0]) - p1)
    return np.asarray(np.exp(np.where(share > 1.0, beyond, inside)))[:, np.newaxis]
