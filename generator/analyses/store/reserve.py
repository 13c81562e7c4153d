"""How much is never planned for?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np

from generator.analyses.motion.demand import Scale, Weather
from generator.analyses.motion.plant import Store, peak_lasts
from generator.analyses.motion.power import Curve, Power, at_points
from generator.analyses.motion.pull import drain_of, greatest_pull
from generator.analyses.percentiles import best, scalar, side_by_side, spread
from generator.analyses.store.bank_state import taken
from generator.arrays import Array, Flags, Numbers
from generator.case.case import Case
from generator.case.option import Option
from generator.case.register import usual_value
from generator.case.usage import Planning
from generator.records import number, record

# What has no number where the aged bank gives no power at all.
FROM_BANK = ("manoeuvring", "holding", "demand", "of_new", "of_aged", "by_rule")
PARTS = ("manoeuvring_speed", "manoeuvring_time", "hold_speed", "hold_wind", "hold_time")


@record
class Reserve:
    """Reserve of one option, J of the bank or m3 of fuel, per draw.

    The demand part is harbour manoeuvres, then holding on against the wind of these waters; of
    each no more than the option can draw in that time, for what it cannot deliver no store can be
    kept. ``of_new`` and ``of_aged`` are the larger of that and the stated share of what is usable;
    ``by_rule`` is what the usual rule keeps of the aged store, ``lowered`` where the owner keeps
    less.
    """

    kept_in: str
    by: str  # share or demand: which of the two is the larger, as new
    by_aged: str
    beyond_limit: bool
    lowered: tuple[str, ...]
    manoeuvring: Array = number("stored", "reserve for manoeuvring in harbour", cautious="high")
    holding: Array = number("stored", "reserve for holding her head to wind", cautious="high")
    demand: Array = number("stored", "reserve for manoeuvring and holding", cautious="high")
    share: Numbers = number("stored", "reserve by share of the usable, new", cautious="high")
    share_aged: Numbers = number("stored", "reserve by share of the usable, aged", cautious="high")
    of_new: Array = number("stored", "reserve taken, new", cautious="high")
    of_aged: Array = number("stored", "reserve taken, aged", cautious="high")
    by_rule: Array = number("stored", "reserve by the usual rule, aged", cautious="high")
    held: float = number("share", "chance that she is held as the reserve plans")
    hold_thrust: Array = number("force", "thrust to hold her head to wind", cautious="high")
    hold_shaft_power: Array = number(
        "power", "shaft power to hold her head to wind", cautious="high"
    )
    absent: Mapping[str, str] = field(default_factory=dict)


def reserve(case: Case, option: Option, found: Power, scale: Scale, held: Store) -> Reserve:
    """The larger of a share of what is usable, and harbour manoeuvres plus holding on."""
    boat = Outline(case, option, found, scale, held)
    plan, rule = case.planning, rule_of(case)
    lowered = _lowered(plan, rule)
    asked = _asked(boat, plan)
    new, aged = (
        np.asarray(usable * plan.reserve_share) for usable in (held.usable, held.usable_aged)
    )
    ruled = asked if not lowered else _asked(boat, rule)
    by_rule = np.maximum(ruled.demand, np.asarray(held.usable_aged * rule.reserve_share))
    return Reserve(
        kept_in="tank" if option.bank is None else "bank",
        by=_larger(asked.demand, new),
        by_aged=_larger(asked.demand, aged),
        beyond_limit=bool(np.atleast_2d(asked.curve.demand.beyond_limit)[0, 1]),
        lowered=lowered,
        manoeuvring=asked.manoeuvring,
        holding=asked.holding,
        demand=asked.demand,
        share=new,
        share_aged=aged,
        of_new=np.maximum(asked.demand, new),
        of_aged=np.maximum(asked.demand, aged),
        by_rule=by_rule,
        held=asked.held,
        hold_thrust=np.atleast_2d(asked.curve.demand.thrust)[:, 1:],
        hold_shaft_power=np.atleast_2d(asked.curve.demand.shaft_power)[:, 1:],
        absent=dict.fromkeys(("hold_thrust", "hold_shaft_power"), "screw_cannot_hold")
        | dict.fromkeys(FROM_BANK, "cannot_hold"),
    )


@dataclass(frozen=True)
class Outline:
    """What of an option its reserve hangs on."""

    case: Case
    option: Option
    found: Power
    scale: Scale
    store: Store


@dataclass(frozen=True)
class _Asked:
    """What the two parts of a plan take out of the store, per draw."""

    curve: Curve
    manoeuvring: Array
    holding: Array
    held: float  # share of draws in which she is held as planned

    @property
    def demand(self) -> Array:
        return np.asarray(self.manoeuvring + self.holding)


def _asked(boat: Outline, plan: Planning) -> _Asked:
    """What the drain at both speeds takes out of the store in its time."""
    option = boat.option
    curve, asked, holds = _drains(boat, plan)
    drain = np.atleast_2d(taken(option.bank, boat.store.aged, asked))
    # lacking: a bank that gives no power at all has nothing to plan with
    drain = np.where(np.isnan(drain), np.inf, drain)
    rows = holds[1:, 1] if holds.shape[0] > 1 else holds[:, 1]
    return _Asked(
        curve=curve,
        manoeuvring=drain[:, :1] * np.asarray(plan.manoeuvring_time),
        holding=drain[:, 1:] * np.asarray(plan.hold_time),
        held=float(rows.mean()),
    )


def reserve_power(boat: Outline) -> Array:
    """What manoeuvring and holding off draw at the terminals as the owner plans them [W]."""
    return _drains(boat, boat.case.planning)[1]


def _drains(boat: Outline, plan: Planning) -> tuple[Curve, Array, Flags]:
    """What manoeuvring and holding draw at the terminals [W], and whether the pull holds them.

    Capped at the greatest that the option can draw there.
    """
    case, option, found = boat.case, boat.option, boat.found
    speed = side_by_side(plan.manoeuvring_speed, plan.hold_speed)
    weather = Weather(side_by_side(0.0, plan.hold_wind), case.waters.fetch)
    curve = at_points(case, option, found, boat.scale, speed, weather)
    pull = greatest_pull(
        option, found, case.factors, speed, peak=peak_lasts(option, plan.hold_time)
    )
    most = drain_of(option, pull, case.factors)
    if boat.store.aged is not None:
        most = np.minimum(most, boat.store.aged.given_half)
    holds = np.atleast_2d(curve.demand.thrust <= pull.thrust)
    # lacking: a drain that the screw cannot take up has no value, and is the greatest there is
    wanted = np.where(np.isfinite(curve.output.drain), curve.output.drain, np.inf)
    return curve, np.atleast_2d(np.minimum(wanted, most)), holds


def rule_of(case: Case) -> Planning:
    """The owner's plan where it keeps more than the usual one, the usual one where it is less."""
    plan = case.planning
    raised: dict[str, Any] = {
        name: usual(case, name)
        for name in (*PARTS, "reserve_share")
        if _below(getattr(plan, name), usual(case, name))
    }
    return replace(plan, **raised)


def usual(case: Case, name: str) -> float:
    """What the register plans with in such waters."""
    return usual_value(f"planning.{name}", (case.waters.exposure,))


def _below(own: Numbers, rule: float) -> bool:
    return scalar(best(own)) < rule - 1e-9


def _lowered(plan: Planning, rule: Planning) -> tuple[str, ...]:
    return tuple(
        name for name in (*PARTS, "reserve_share") if getattr(plan, name) is not getattr(rule, name)
    )


def _larger(demand: Array, share: Array) -> str:
    """Which of the two is the larger in the middle of the draws."""
    return "demand" if scalar(spread(demand - share).middle) > 0.0 else "share"
