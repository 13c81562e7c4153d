"""Carbon: what fuel, electricity and the making of things emit."""

from __future__ import annotations

from dataclasses import dataclass

from generator.arrays import Numbers


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
