"""What is an option made of, as its makers state it?"""

from __future__ import annotations

from generator.arrays import Numbers
from generator.case.diesel import Diesel
from generator.case.option import Motor, Option
from generator.records import number, record


@record
class MotorPlate:
    """What stands on the plate of a motor, and its gear."""

    continuous_power: Numbers = number("power", "continuous power, as rated", expected=True)
    peak_power: Numbers = number("power", "peak power, as rated", expected=True)
    peak_time: Numbers = number("minutes", "time at peak, as rated", expected=True)
    rated_speed: Numbers = number("rpm", "rated turns of the motor", expected=True)
    gear_ratio: Numbers = number("ratio", "reduction of the motor", expected=True)


@record
class DieselPlate:
    """What stands on the plate of a diesel, its gear and its tank."""

    rated_power: Numbers = number("power", "rated power of the diesel", expected=True)
    rated_speed: Numbers = number("rpm", "rated turns of the diesel", expected=True)
    gear_ratio: Numbers = number("ratio", "reduction of the diesel", expected=True)
    tank: Numbers = number("fuel", "tank of the diesel", expected=True)


@record
class Particulars:
    """The plate of the one plant that an option has; its propeller stands beside it."""

    motor: MotorPlate | None
    diesel: DieselPlate | None
    genset: bool  # a charging machine is aboard; it is not counted under way

    @classmethod
    def of(cls, option: Option) -> Particulars:
        """Those of an option."""
        motor, diesel = option.motor, option.diesel
        return cls(
            motor=None if motor is None else _of_motor(motor),
            diesel=None if diesel is None else _of_diesel(diesel),
            genset=bool(option.supply and option.supply.genset),
        )


def _of_motor(motor: Motor) -> MotorPlate:
    return MotorPlate(
        continuous_power=motor.continuous_power,
        peak_power=motor.peak_power,
        peak_time=motor.peak_time,
        rated_speed=motor.rated_speed,
        gear_ratio=motor.gear_ratio,
    )


def _of_diesel(diesel: Diesel) -> DieselPlate:
    return DieselPlate(diesel.rated_power, diesel.rated_speed, diesel.gear_ratio, diesel.tank)
