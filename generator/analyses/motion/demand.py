"""What must the shaft deliver at a speed, in a calm or against wind and sea?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.motion.hull import Vessel
from generator.arrays import Array, Flags, Numbers
from generator.case.boat import Boat
from generator.case.diesel import Propeller
from generator.case.factors import Factors
from generator.physics.drive.interaction import advance_speed, required_thrust
from generator.physics.drive.operating_point import operating_point
from generator.physics.hull.appendages import appendage_friction
from generator.physics.hull.friction import hull_friction
from generator.physics.hull.polynomials import keel_share_at
from generator.physics.hull.regression import doubt_at, share_at
from generator.physics.hull.residuary import froude_number
from generator.physics.hull.roughness import friction_increase
from generator.physics.hull.stern_gear import stern_gear_drag
from generator.physics.hull.waves import added_resistance, fetch_sea, height_limit
from generator.physics.hull.windage import wind_force
from generator.physics.water import GRAVITY
from generator.tables.method import method

BREEZE = method("service.breeze")
BLEND = method("trial.blend")


@dataclass(frozen=True)
class Weather:
    """Wind on the nose [m/s] and the open water to windward [m]; broadcasts with speeds."""

    wind: Numbers
    fetch: Numbers


@dataclass(frozen=True)
class Sea:
    """The sea that a wind raises: m, s; and where the added-resistance formula stops."""

    height: Array
    period: Array
    beyond_limit: Flags  # the formula is taken at its limit there
    free_height: Array  # as the wind raises it
    limit: Numbers  # of the formula


@dataclass(frozen=True)
class Covered:
    """The trial's own factor on calm resistance, and the speeds that it covers [m/s]."""

    level: Numbers
    growth: Numbers
    slowest: float
    fastest: float

    def share(self, speed: Array) -> Array:
        """How much of the factor is the trial's: 1 over the speeds covered, 0 far outside [-]."""
        beyond = np.maximum(np.log(self.slowest / speed), np.log(speed / self.fastest))
        return np.asarray(1.0 - np.clip(beyond / np.log(BLEND), 0.0, 1.0))


@dataclass(frozen=True)
class Scale:
    """Factor on calm resistance [-]: level (v / reference)^growth, v held between two ends.

    Over the speeds that a good trial covers, its own factor ``inside`` stands instead; outside
    them the one goes over into the other within a factor of ``BLEND`` in speed.
    """

    level: Numbers = 1.0
    growth: Numbers = 0.0
    reference: float = 1.0  # m/s
    slowest: float = 0.1  # m/s
    fastest: float = np.inf  # m/s
    inside: Covered | None = None

    def at(self, speed: Array) -> Array:
        """The factor at speeds [m/s]."""
        held = np.clip(speed, self.slowest, self.fastest) / self.reference
        outside = np.asarray(self.level * held ** np.asarray(self.growth))
        if self.inside is None:
            return outside
        share = self.inside.share(speed)
        own = self.inside.level * held ** np.asarray(self.inside.growth)
        return np.asarray(own**share * outside ** (1.0 - share))


@dataclass(frozen=True)
class CalmParts:
    """Calm-water resistance [N]: friction, waves of her own, and what stands before the screw."""

    friction: Array
    residuary: Array
    stern_gear: Array

    def total(self, friction_share: Numbers = 0.0) -> Array:
        """Sum with the friction raised by ``friction_share`` [-]."""
        rubbed = self.friction * (1.0 + np.asarray(friction_share))
        return np.asarray(rubbed + self.residuary + self.stern_gear)


@dataclass(frozen=True)
class Demand:
    """What the shaft must do, per draw and speed. m/s, N, rad/s, W, N m."""

    speed: Array
    resistance: Array
    thrust: Array
    shaft_speed: Array
    torque: Array
    shaft_power: Array
    propeller_efficiency: Array
    feasible: Flags  # inside the hull form's and the propeller's range
    beyond_limit: Flags  # the sea is steeper than the added-resistance formula allows


def calm_parts(vessel: Vessel, factors: Factors, speed: Array) -> CalmParts:
    """Resistance of the clean boat in a tank, split as the fouling needs it."""
    water, viscosity = vessel.water_density, vessel.water_viscosity
    gear = np.asarray(stern_gear_drag(vessel.stern_gear, speed, water, viscosity))
    return CalmParts(calm_friction(vessel, speed), residuary(vessel, factors, speed), gear)


def residuary(vessel: Vessel, factors: Factors, speed: Array) -> Array:
    """Waves of hull and keel [N]: regression and keel, moved within the regression's doubt."""
    froude = np.asarray(froude_number(speed, vessel.form.waterline_length))
    bare = vessel.waves.weight * share_at(vessel.waves, froude)
    keel = GRAVITY * vessel.keel_body.volume * keel_share_at(vessel.keel_waves, froude)
    moved = np.exp(factors.residuary_deviate * doubt_at(vessel.waves, froude))
    return np.asarray(vessel.water_density * (bare + keel) * moved)


def calm_friction(vessel: Vessel, speed: Array) -> Array:
    """Friction of hull, keel and rudder, smooth [N]."""
    water, viscosity = vessel.water_density, vessel.water_viscosity
    friction = hull_friction(vessel.form, speed, water, viscosity)
    for part in (vessel.keel, vessel.rudder):
        friction = friction + appendage_friction(
            speed, part.wetted_area, part.chord, part.thickness_ratio, water, viscosity
        )
    return np.asarray(friction)


def fouling_share(factors: Factors, boat: Boat) -> Numbers:
    """Share by which the state of the bottom raises friction [-]; an untold one is drawn."""
    untold = boat.bottom_share
    return factors.fouling * (friction_increase(boat.bottom) if untold is None else untold)


def still_air(vessel: Vessel, speed: Array) -> Array:
    """Drag of hull and rig through still air [N]."""
    return np.asarray(wind_force(vessel.drag_area, 0.0, speed))


def calm_resistance(parts: CalmParts, factors: Factors, boat: Boat, scale: Numbers) -> Array:
    """Water resistance in service in a calm [N]: bottom and hull; ``scale`` is the trial's."""
    return np.asarray(parts.total(fouling_share(factors, boat)) * factors.hull_model * scale)


def sea_state(vessel: Vessel, weather: Weather) -> Sea:
    """Height and period by the fetch law, height cut at the limit of the formula."""
    height, period = fetch_sea(weather.wind, weather.fetch)
    limit = height_limit(vessel.form.waterline_length)
    beyond = np.asarray(height > limit)
    held = np.asarray(np.minimum(height, limit))
    return Sea(held, np.asarray(period), beyond, np.asarray(height), limit)


def thrust_kept(factors: Factors, height: Numbers, vessel: Vessel) -> Array:
    """Share of its thrust that the screw keeps while she pitches in a sea of that height [-]."""
    steepness = height / height_limit(vessel.form.waterline_length)
    return np.asarray(1.0 - factors.pitching_loss * np.minimum(steepness, 1.0))


def weather_force(vessel: Vessel, weather: Weather, speed: Array, factors: Factors) -> Array:
    """Wind on hull and rig, plus added resistance in the sea it raises [N]."""
    sea = sea_state(vessel, weather)
    waves = added_resistance(
        sea.height,
        vessel.form.waterline_beam,
        vessel.bow_length,
        vessel.water_density,
    )
    wind = wind_force(vessel.drag_area, weather.wind, speed)
    return np.asarray(wind + waves * factors.wave_resistance)


def in_weather(
    vessel: Vessel, water: Array, weather: Weather, speed: Array, factors: Factors
) -> Array:
    """All that holds her back [N] where the calm water alone takes ``water`` [N].

    In a calm that is the water and the still air. Steering and chop come in with the wind and
    are whole from a light breeze on; chop is no more than the least that wind and sea cost, so
    that nothing counts twice.
    """
    steered = water * blown(factors.steering_and_trim, weather.wind)
    met = steered + weather_force(vessel, weather, speed, factors)
    chop = steered * blown(factors.wind_and_chop, weather.wind) + still_air(vessel, speed)
    return np.asarray(np.maximum(met, chop))


def blown(factor: Numbers, wind: Numbers) -> Array:
    """A factor on calm resistance that comes in with the wind [-]."""
    return np.asarray(1.0 + (np.asarray(factor) - 1.0) * np.minimum(wind / BREEZE, 1.0))


def shaft_demand(
    vessel: Vessel,
    propeller: Propeller,
    condition: Numbers,
    speed: Array,
    resistance: Array,
    kept: Numbers = 1.0,
) -> Demand:
    """Let the propeller meet a resistance: turns, torque and power at the shaft coupling.

    ``condition`` [-] raises the torque for rough or fouled blades; ``kept`` [-] is the share of
    its thrust that pitching leaves.
    """
    thrust = np.asarray(required_thrust(resistance, propeller.thrust_deduction) / kept)
    point = operating_point(
        thrust,
        np.asarray(advance_speed(speed, propeller.wake_fraction)),
        propeller.diameter,
        propeller.pitch / propeller.diameter,
        propeller.area_ratio,
        propeller.blades,
        vessel.water_density,
        propeller.thrust_scale,
        propeller.torque_scale * condition,
    )
    loss = propeller.rotative_efficiency * propeller.shaft_efficiency
    feasible = np.asarray(point.feasible & np.isfinite(resistance))
    return Demand(
        speed=speed,
        resistance=resistance,
        thrust=thrust,
        shaft_speed=np.asarray(point.revolutions),
        torque=np.asarray(point.torque / loss),
        shaft_power=np.asarray(point.delivered_power / loss),
        propeller_efficiency=np.asarray(point.open_water_efficiency),
        feasible=feasible,
        beyond_limit=np.zeros_like(feasible),
    )
