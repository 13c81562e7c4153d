"""How deep may the bank be drawn, so that what is asked of her is held to the last?"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from generator.analyses.motion.demand import Weather
from generator.analyses.motion.plant import (
    Store,
    battery_power,
    controller_cut_off,
    house_drain,
    warm_power,
)
from generator.analyses.motion.power import at_points
from generator.analyses.percentiles import side_by_side
from generator.analyses.store.bank_state import floored
from generator.analyses.store.reserve import Outline
from generator.arrays import Array, Numbers


def with_floor(boat: Outline, reserved: Array) -> Store:
    """The store with the floor of its bank by the greatest power that is asked of her.

    That of passages and of the reserve. Peak power is told apart: a burst of it at the end of a
    passage is asked of nobody, and a larger motor takes no energy away. ``reserved`` are the
    powers that the reserve plans with [W].
    """
    bank, motor, held = boat.option.bank, boat.option.motor, boat.store
    if bank is None or motor is None or held.new is None or held.aged is None or held.last is None:
        return held
    asked, controller = greatest_asked(boat, reserved), controller_cut_off(bank, motor)
    new, aged, last = (
        floored(bank, state, asked, controller) for state in (held.new, held.aged, held.last)
    )
    return replace(
        held, usable=new.usable, usable_aged=aged.usable, asked=asked, new=new, aged=aged, last=last
    )


def greatest_asked(boat: Outline, reserved: Array) -> Array:
    """The greatest power at the terminals of passages and of the reserve [W], (draws, 1).

    Cruise and the owner's speeds in a calm, what he holds on each exposed part on a bad day, as
    far as the motor gives it for good; manoeuvring and holding off as the reserve has them.
    """
    case, option, motor = boat.case, boat.option, boat.option.motor
    assert motor is not None
    speed, wind, fetch = zip(*_points(boat), strict=True)
    weather = Weather(side_by_side(*wind), side_by_side(*fetch))
    curve = at_points(case, option, boat.found, boat.scale, side_by_side(*speed), weather)
    most = battery_power(motor, warm_power(motor, case.factors), motor.rated_speed, case.factors)
    # lacking: what her hull or her screw does not hold takes all that the motor gives
    wanted = np.where(np.isfinite(curve.output.drain), curve.output.drain, np.inf)
    under_way = np.minimum(np.atleast_2d(wanted), most) + house_drain(case, option)
    greatest = (part.max(axis=1, keepdims=True) for part in (np.atleast_2d(under_way), reserved))
    return np.asarray(np.maximum(*greatest))


def _points(boat: Outline) -> list[tuple[Numbers, Numbers, Numbers]]:
    """Speed, wind and fetch of all that is motored, each once."""
    case = boat.case
    calm = [case.planning.cruise_speed, *(leg.speed for leg in case.legs)]
    points: list[tuple[Numbers, Numbers, Numbers]] = [(speed, 0.0, 1.0) for speed in calm]
    points += [
        (leg.exposed_speed, leg.wind, leg.fetch)
        for leg in case.legs
        if np.any(np.asarray(leg.exposed_distance))
    ]
    unlike = {tuple(np.asarray(part).tobytes() for part in point): point for point in points}
    return list(unlike.values())
