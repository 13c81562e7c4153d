"""How much is never planned for?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.analyses.bank_state import taken
from generator.analyses.demand import Scale, Weather
from generator.analyses.plant import Store
from generator.analyses.power import Curve, Power, at_points
from generator.analyses.spread import side_by_side
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.option import Option


@dataclass(frozen=True)
class Reserve:
    """Reserve of one option, J of the bank or m3 of fuel, per draw.

    The demand part (harbour manoeuvres, then holding on against the wind) asks for the same
    thrust from every option; only its own losses differ. ``of_new`` and ``of_aged`` are the
    larger of that and the stated share of what is usable.
    """

    manoeuvring: Array
    holding: Array
    share_new: Numbers
    share_aged: Numbers
    hold_thrust: Array
    hold_shaft_power: Array
    beyond_limit: bool

    @property
    def demand(self) -> Array:
        """Energy or fuel for manoeuvring and holding."""
        return np.asarray(self.manoeuvring + self.holding)

    @property
    def of_new(self) -> Array:
        """Reserve with the bank as new, or of the tank."""
        return np.asarray(np.maximum(self.demand, np.asarray(self.share_new)))

    @property
    def of_aged(self) -> Array:
        """Reserve with the bank at the end of the horizon."""
        return np.asarray(np.maximum(self.demand, np.asarray(self.share_aged)))


def reserve(case: Case, option: Option, found: Power, scale: Scale, held: Store) -> Reserve:
    """The larger of a share of what is usable, and harbour manoeuvres plus holding on."""
    plan = case.planning
    speed = side_by_side(plan.manoeuvring_speed, plan.hold_speed)
    weather = Weather(side_by_side(0.0, plan.hold_wind), case.waters.fetch)
    curve: Curve = at_points(case, option, found, scale, speed, weather)
    drain = np.atleast_2d(taken(option.bank, held.aged, curve.output.drain))
    if option.bank is not None:
        drain = np.nan_to_num(drain, nan=np.inf)  # what cannot be held leaves nothing to plan with
    return Reserve(
        manoeuvring=drain[:, :1] * np.asarray(plan.manoeuvring_time),
        holding=drain[:, 1:] * np.asarray(plan.hold_time),
        share_new=np.asarray(held.usable * plan.reserve_share),
        share_aged=np.asarray(held.usable_aged * plan.reserve_share),
        hold_thrust=np.atleast_2d(curve.demand.thrust)[:, 1:],
        hold_shaft_power=np.atleast_2d(curve.demand.shaft_power)[:, 1:],
        beyond_limit=bool(np.atleast_2d(curve.demand.beyond_limit)[0, 1]),
    )
