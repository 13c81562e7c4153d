"""How much is never planned for?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

import numpy as np

from generator.analyses.motion.demand import Scale, Weather
from generator.analyses.motion.plant import Store
from generator.analyses.motion.power import Curve, Power, at_points
from generator.analyses.percentiles import scalar, side_by_side, spread
from generator.analyses.store.bank_state import taken
from generator.arrays import Array, Numbers
from generator.case.case import Case
from generator.case.option import Option
from generator.records import number, record

# What has no number where the aged bank cannot give the power at all.
CANNOT_HOLD = (
    "manoeuvring", "holding", "demand", "of_new", "of_aged", "hold_thrust", "hold_shaft_power",
)  # fmt: skip


@record
class Reserve:
    """Reserve of one option, J of the bank or m3 of fuel, per draw.

    The demand part (harbour manoeuvres, then holding on against the wind) asks for the same
    thrust from every option; only its own losses differ. ``of_new`` and ``of_aged`` are the
    larger of that and the stated share of what is usable.
    """

    kept_in: str
    by: str  # share or demand: which of the two is the larger, as new
    by_aged: str
    beyond_limit: bool
    manoeuvring: Array = number("stored", "reserve for manoeuvring in harbour", cautious="high")
    holding: Array = number("stored", "reserve for holding her head to wind", cautious="high")
    demand: Array = number("stored", "reserve for manoeuvring and holding", cautious="high")
    share: Numbers = number("stored", "reserve by share of the usable, new", cautious="high")
    share_aged: Numbers = number("stored", "reserve by share of the usable, aged", cautious="high")
    of_new: Array = number("stored", "reserve taken, new", cautious="high")
    of_aged: Array = number("stored", "reserve taken, aged", cautious="high")
    hold_thrust: Array = number("force", "thrust to hold her head to wind", cautious="high")
    hold_shaft_power: Array = number(
        "power", "shaft power to hold her head to wind", cautious="high"
    )
    absent: Mapping[str, str] = field(default_factory=dict)


def reserve(case: Case, option: Option, found: Power, scale: Scale, held: Store) -> Reserve:
    """The larger of a share of what is usable, and harbour manoeuvres plus holding on."""
    plan = case.planning
    speed = side_by_side(plan.manoeuvring_speed, plan.hold_speed)
    weather = Weather(side_by_side(0.0, plan.hold_wind), case.waters.fetch)
    curve: Curve = at_points(case, option, found, scale, speed, weather)
    drain = np.atleast_2d(taken(option.bank, held.aged, curve.output.drain))
    if option.bank is not None:
        # lacking: what cannot be held leaves nothing to plan with: it needs more than any bank
        drain = np.where(np.isnan(drain), np.inf, drain)
    manoeuvring = drain[:, :1] * np.asarray(plan.manoeuvring_time)
    holding = drain[:, 1:] * np.asarray(plan.hold_time)
    demand = np.asarray(manoeuvring + holding)
    new, aged = (
        np.asarray(usable * plan.reserve_share) for usable in (held.usable, held.usable_aged)
    )
    return Reserve(
        kept_in="tank" if option.bank is None else "bank",
        by=_larger(demand, new),
        by_aged=_larger(demand, aged),
        beyond_limit=bool(np.atleast_2d(curve.demand.beyond_limit)[0, 1]),
        manoeuvring=manoeuvring,
        holding=holding,
        demand=demand,
        share=new,
        share_aged=aged,
        of_new=np.maximum(demand, new),
        of_aged=np.maximum(demand, aged),
        hold_thrust=np.atleast_2d(curve.demand.thrust)[:, 1:],
        hold_shaft_power=np.atleast_2d(curve.demand.shaft_power)[:, 1:],
        absent=dict.fromkeys(CANNOT_HOLD, "cannot_hold"),
    )


def _larger(demand: Array, share: Array) -> str:
    """Which of the two is the larger in the middle of the draws."""
    return "demand" if scalar(spread(demand - share).middle) > 0.0 else "share"
