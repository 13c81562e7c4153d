"""Criterion 14: are the battery's currents within what it may give, the motor as it will be set?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.store.bank import BankResult
from generator.analyses.store.limits import CUSTOMARY
from generator.analyses.verdict.criteria.criterion import (
    GO,
    NO,
    NOT_APPLICABLE,
    Criterion,
    Judgement,
    by_chance,
    stated,
)
from generator.arrays import Array, Numbers
from generator.case.option import Motor
from generator.records import number, numbers_of, record


@record
class BatteryCurrents:
    """Currents at cruise and at continuous power against what the motor may take, old and cold.

    ``outcome``: none (no propulsion battery), unknown (cruise is beyond the formulas), cannot (the
    bank does not give cruise at any current), outside (cruise is outside), hard (lead, cruise
    faster than it is sized at), set_down (cruise is inside, continuous power is set down), inside.
    """

    SAID_BY: ClassVar[str] = "battery_currents"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("mend",)
    outcome: str
    rule: str  # stated or customary: where the limit comes from
    lead: bool
    peak_cut: bool
    shared: bool = False  # the house may draw on the bank beside the motor
    beside: float | None = number("current", "current of the house beside it", default=None)
    coldest: Numbers | None = number("temperature", "coldest in use", cautious="low", default=None)
    cruise: Array | None = number(
        "current", "current of the motor at cruise", cautious="high", default=None
    )
    cruise_rate: Array | None = number("rate", "rate at cruise", cautious="high", default=None)
    continuous: Array | None = number(
        "current", "current of continuous power", cautious="high", default=None
    )
    limit: Array | None = number(
        "current", "current that the motor may take", cautious="low", default=None
    )
    set_to: float | None = number("current", "current that the motor is set to", default=None)
    continuous_power: Array | None = number(
        "power", "continuous power that leaves", cautious="low", default=None
    )
    peak_power: Array | None = number(
        "power", "peak power that leaves", cautious="low", default=None
    )
    plate_peak: Numbers | None = number("power", "peak power on the plate", default=None)
    sized_rate: Numbers | None = number("rate", "rate that lead is sized at", default=None)
    limit_wanted: Array | None = number(
        "current", "limit of the bank that would do", cautious="high", default=None
    )
    charge_wanted: Array | None = number(
        "charge", "charge that would do", cautious="high", default=None
    )
    absent: Mapping[str, str] = field(default_factory=dict)


WHY_ABSENT = {
    "cruise": "cruise_not_given",
    "cruise_rate": "cruise_not_given",
    "continuous": "continuous_not_given",
    "limit_wanted": "does_not_help",
    "charge_wanted": "does_not_help",
}


@dataclass(frozen=True)
class _Shares:
    """Currents over what they may be, per draw; a draw without a current is beyond all limits."""

    cruise: Array
    continuous: Array
    rate: Array  # of lead, over the rate that it is sized at; 0 of lithium

    @property
    def worst(self) -> Array:
        return np.maximum(np.maximum(self.cruise, self.continuous), self.rate)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Cruise and continuous power inside the limit; or cruise inside and the motor set down."""
    bank, motor = found.bank, found.option.motor
    if bank is None or motor is None:
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, facts=_no_bank())
    shares = _shares(bank)
    cruise_inside = (shares.cruise <= 1.0) & (shares.rate <= criterion.conditional)
    inside = cruise_inside & (shares.continuous <= 1.0) & (shares.rate <= criterion.go)
    result = by_chance(inside, cruise_inside)
    told = spread(shares.worst)
    return Judgement(
        criterion,
        stated(scalar(told.middle)),
        stated(scalar(told.high)),
        "-",
        result,
        per_draw=shares.worst,
        facts=_facts(criterion, found, bank, motor, _outcome(found, shares, result)),
    )


def _no_bank() -> BatteryCurrents:
    return BatteryCurrents(
        outcome="none",
        rule=CUSTOMARY,
        lead=False,
        peak_cut=False,
        absent=dict.fromkeys(numbers_of(BatteryCurrents), "no_propulsion_bank"),
    )


def _shares(bank: BankResult) -> _Shares:
    set_to = bank.as_set
    limit = np.asarray(set_to.limit)
    rate = np.asarray(bank.cruise_rate / np.asarray(bank.rate_limit))
    return _Shares(
        cruise=np.atleast_2d(bank.drive_current / limit),
        continuous=np.atleast_2d(set_to.continuous_asked / limit),
        rate=np.atleast_2d(rate) if bank.lead else np.zeros((1, 1)),
    )


def _outcome(found: Findings, shares: _Shares, result: str) -> str:
    """The first thing that is wrong, in the middle of the draws or at the cautious end."""
    if not np.isfinite(scalar(spread(found.key.cruise_drain).middle)):
        return "unknown"
    if not np.isfinite(scalar(spread(shares.cruise).middle)):
        return "cannot"
    if result == GO:
        return "inside"
    high = {name: scalar(spread(getattr(shares, name)).high) for name in ("cruise", "rate")}
    if result == NO or high["cruise"] > 1.0:
        return "outside" if high["cruise"] > 1.0 else "hard"
    return "hard" if high["rate"] > 1.0 else "set_down"


def _facts(
    criterion: Criterion, found: Findings, bank: BankResult, motor: Motor, outcome: str
) -> BatteryCurrents:
    """What the currents are, what the motor is set to, and which bank would bear them."""
    set_to = bank.as_set
    asked = set_to.continuous_asked if outcome == "set_down" else bank.drive_current
    wanted = asked * np.asarray(bank.discharge_limit) / np.asarray(set_to.limit)
    hard = bank.cruise_current / np.asarray(bank.rate_limit) / criterion.go
    return BatteryCurrents(
        outcome=outcome,
        rule=set_to.rule,
        lead=bank.lead,
        peak_cut=set_to.peak_cut,
        shared=bank.aged.limits.beside > 0.0,
        beside=bank.aged.limits.beside,
        coldest=bank.coldest,
        cruise=bank.drive_current,
        cruise_rate=bank.cruise_rate,
        continuous=set_to.continuous_asked,
        limit=set_to.limit,
        set_to=set_to.peak_current,
        continuous_power=set_to.continuous_power,
        peak_power=set_to.peak_power,
        plate_peak=motor.peak_power,
        sized_rate=bank.rate_limit,
        limit_wanted=wanted if outcome in ("outside", "set_down") else None,
        charge_wanted=hard if outcome == "hard" else None,
        absent=WHY_ABSENT,
    )
