"""Do motor, ratio and propeller belong together, and what would?"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from generator.analyses.handling.docking import Docking
from generator.analyses.motion.demand import Demand, Scale, Weather, shaft_demand
from generator.analyses.motion.plant import plant_output
from generator.analyses.motion.power import KNOT, Power, at_points, speed_at_limit
from generator.analyses.motion.pull import greatest_pull
from generator.analyses.percentiles import best, first_row, held_share, scalar
from generator.arrays import Array, Flags, Numbers
from generator.case.case import Case
from generator.case.diesel import Diesel, Propeller
from generator.case.option import Motor, Option
from generator.physics.drive.cavitation import needed_area_ratio
from generator.physics.drive.shafting import shaft_diameter
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


@dataclass(frozen=True)
class Match:
    """Turns at full continuous power on the option's own propeller, and what would fit better."""

    turns: Array  # rad/s of the motor that full continuous power would take, per draw
    torque: Array  # N m of the motor that it would take there; key_figures has what comes about
    deviation: Array  # turns over rated, less 1
    beyond_curve: bool  # full power lies above the last speed of the hull form
    ratio: float  # with which she turns as rated in a calm, propeller kept
    advised: float  # that pulls hardest of all that match, and holds her speed in a calm
    pitch: float | None  # m, with which she does, ratio kept; None if no pitch of the series does
    own: Screw
    best: Screw | None
    clearance: float | None  # at the tips over diameter, None without an aperture
    stall_torque: float  # N m at the shaft
    shaft_needed: float  # m
    blade_area_needed: float  # AE/A0 at the greatest pull


def match(case: Case, option: Option, found: Power, scale: Scale, docked: Docking) -> Match:
    """Full power on the calm-water curve; pitch, ratio and diameter for the best estimate."""
    calm, plant = found.curves["calm"], _plant(option)
    rated, full = np.asarray(plant.rated_speed), np.asarray(_full_power(plant))
    turns = _turns_at(calm.output.power, calm.output.turns, calm.demand.feasible, full)
    bench = _Bench(case, option, found, scale, turns / scalar(turns))
    own = bench.screw(bench.propeller, bench.ratio)
    propeller = bench.propeller
    torque = scalar(np.asarray(docked.ahead_peak))
    stall = _stall_torque(first_row(plant))
    top = np.atleast_2d(np.where(calm.demand.feasible, calm.output.power, 0.0))[0].max()
    return Match(
        turns=turns,
        torque=np.atleast_2d(full / turns),
        deviation=np.atleast_2d(turns / rated - 1.0),
        beyond_curve=bool(top < scalar(full)),
        ratio=bench.ratio * scalar(np.atleast_2d(rated)) / scalar(turns),
        advised=bench.serving(propeller),
        pitch=bench.matching_pitch(),
        own=own,
        best=bench.best(),
        clearance=_clearance(propeller),
        stall_torque=stall,
        shaft_needed=float(np.asarray(shaft_diameter(stall))),
        blade_area_needed=float(
            np.asarray(
                needed_area_ratio(
                    torque,
                    propeller.diameter,
                    propeller.blades,
                    propeller.shaft_depth,
                    scalar(np.asarray(found.vessel.water_density)),
                )
            )
        ),
    )


def _plant(option: Option) -> Motor | Diesel:
    plant = option.motor or option.diesel
    assert plant is not None
    return plant


def _full_power(plant: Motor | Diesel) -> Numbers:
    return plant.continuous_power if isinstance(plant, Motor) else plant.rated_power


def _stall_torque(plant: Motor | Diesel) -> float:
    """Torque at the shaft when the motor pushes against a stopped propeller [N m]."""
    power = plant.peak_power if isinstance(plant, Motor) else plant.rated_power
    return float(power / plant.rated_speed * plant.gear_ratio * plant.gear_efficiency)


def _clearance(propeller: Propeller) -> float | None:
    if propeller.aperture_height is None:
        return None
    return float(0.5 * (propeller.aperture_height - propeller.diameter) / propeller.diameter)


def _turns_at(power: Array, turns: Array, feasible: Flags, wanted: Numbers) -> Array:
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


class _Bench:
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
        self.plant = _plant(self.option)
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

    def _demand(self, propeller: Propeller, speed: Array, resistance: Array) -> Demand:
        condition = self.factors.propeller_condition
        return shaft_demand(self.vessel, propeller, condition, speed, resistance)

    def turns(self, propeller: Propeller, ratio: float) -> Array:
        """Turns of the motor at full power, for each pitch of the propeller."""
        option = self._geared(ratio)
        demand = self._demand(propeller, self.speed, self.resistance)
        output = plant_output(option, demand, self.factors)
        full = _full_power(self.plant)
        return _turns_at(output.power, output.turns, demand.feasible, full)[:, 0]

    def _geared(self, ratio: float | Array) -> Option:
        if self.option.motor is not None:
            return replace(self.option, motor=replace(self.option.motor, gear_ratio=ratio))
        assert self.option.diesel is not None
        return replace(self.option, diesel=replace(self.option.diesel, gear_ratio=ratio))

    def matched(self, propeller: Propeller) -> float:
        """Reduction with which full power comes at rated turns in a calm."""
        return float(self.plant.rated_speed) / float(self.turns(propeller, 1.0)[0])

    def serving(self, propeller: Propeller) -> float:
        """Of the reductions that match for sure, the one with the greatest pull against a wind.

        Shorter gearing pulls harder and turns away sooner in a calm; it goes no further than
        planned cruise and the wanted top speed allow, where plain matching reaches them.
        """
        tried = self.matched(propeller) * (1.0 + self._within_band())[:, np.newaxis]
        held, top = self._speeds(propeller, tried)
        good = (held >= np.minimum(self.cruise[0], held[0]) - 1e-9) & (
            top >= np.minimum(self.wanted, top[0]) - 1e-9
        )
        pull = np.where(good, self.pull(propeller, tried), 0.0)
        return float(tried[int(np.argmax(pull >= pull.max() * (1.0 - 1e-6))), 0])

    def _within_band(self) -> Array:
        """Middles of the turns over rated, less 1, from 0 up, that stay within the band."""
        most = _limit("Propeller match", "go")
        tried = np.arange(0.0, most + 1e-9, FASTER)
        sure = [
            held_share(np.abs(self.doubt * (1.0 + each) - 1.0) <= most) >= SURE for each in tried
        ]
        sure[0] = True  # nothing lies nearer, whatever the doubt
        return np.asarray(tried[: sure.index(False)] if False in sure else tried)

    def _speeds(self, propeller: Propeller, ratios: Array) -> tuple[Array, Array]:
        """Calm speed for good and for ten minutes [m/s] with each of the ratios."""
        demand = self._demand(propeller, self.speed, self.resistance)
        each = replace(demand, shaft_power=demand.shaft_power * np.ones_like(ratios))
        output = plant_output(self._geared(ratios), each, self.factors)
        motor = self.option.motor
        lasts = motor is None or float(motor.peak_time) >= TOP_TIME
        loads = (output.load, output.peak_load if lasts else output.load)
        held, top = (speed_at_limit(load, demand.feasible, self.speed)[:, 0] for load in loads)
        return held, top

    def pull(self, propeller: Propeller, ratios: Array) -> Array:
        """Thrust behind the hull that lasts at 3.5 kn [N] with each of the ratios."""
        option = replace(self._geared(ratios), propeller=propeller)
        found = greatest_pull(option, self.power, self.factors, np.array([PULLING]), peak=False)
        thrust = np.atleast_2d(found.thrust * (1.0 - np.asarray(propeller.thrust_deduction)))
        return np.asarray(thrust[:, 0])

    def screw(self, propeller: Propeller, ratio: float) -> Screw:
        """What one propeller draws at planned cruise."""
        demand = self._demand(propeller, self.cruise, self.cruise_resistance)
        output = plant_output(self._geared(ratio), demand, self.factors)
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


def _limit(name: str, end: str) -> float:
    """A limit of the verdict, which advice has to meet."""
    table = read_table("rules/criteria")
    return float(table.column(end)[table.row_of("name", name)])
