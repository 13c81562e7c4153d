"""Which factors, masses and carbon figures hold for every option?"""

from __future__ import annotations

from dataclasses import dataclass

from generator.arrays import Numbers


@dataclass(frozen=True)
class Factors:
    """Named parts of what a boat in service needs above a clean hull in a tank, all [-]."""

    hull_model: Numbers  # doubt of scale, appendages and real boats, on calm resistance
    residuary_deviate: Numbers  # standard normal: how far the hull lies from the regression
    fouling: Numbers  # scales the friction added by the bottom's state
    propeller_condition: Numbers  # on propeller torque: rough or fouled blades
    wind_and_chop: Numbers  # on calm resistance where wind blows: the least that a sea costs
    steering_and_trim: Numbers  # on calm resistance where wind blows
    wave_resistance: Numbers  # on the added resistance in waves
    pitching_loss: Numbers  # share of thrust lost by pitching, sea at the limit of its formula
    motor_loss: Numbers  # on the motor and controller losses
    trial_error: Numbers  # on shaft power reduced by propeller law
    fuel_error: Numbers  # on shaft power reduced from metered fuel
    trial_level_deviate: Numbers  # standard normal: the rows' own noise, as a level
    trial_growth_deviate: Numbers  # the same, as growth with speed
    prior_sigma: Numbers  # 1 sigma of the curve without trial, log
    prior_growth: Numbers  # 1 sigma of its growth: ln resistance over ln speed
    trial_sigma: Numbers  # 1 sigma of the propeller law from full throttle, log


@dataclass(frozen=True)
class Masses:
    """Aggregate masses for what the ledgers leave out. kg, kg/W, [-]."""

    diesel_fixed: Numbers
    diesel_per_kilowatt: Numbers  # kg/W inside
    diesel_fittings: Numbers
    motor_per_kilowatt: Numbers  # kg/W inside
    battery_fastening: Numbers  # share of battery mass
    cabling: Numbers
    starter_battery: Numbers
    tank_share: Numbers  # of the mass of the fuel that fills it
    shock_allowance: Numbers  # on the weight of battery boxes, times its size


@dataclass(frozen=True)
class Carbon:
    """Carbon dioxide and its equal in other gases. kg/m3, kg/J, kg/kg."""

    diesel_burnt: Numbers  # kg/m3 out of the exhaust
    diesel_upstream: Numbers  # kg/m3 from the well to the tank
    grid: Numbers | None  # kg/J generated; absent: the table, by the country of the waters
    grid_trend: Numbers  # mean over the years over the table's year
    network_loss: Numbers  # of what is generated, on its way to the berth
    motor_made: Numbers  # kg per kg of motor and controller
    engine_made: Numbers  # kg per kg of diesel and gear
