"""Criterion 14: are the battery's currents within what it should give?"""

from __future__ import annotations

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import scalar, spread
from generator.analyses.store.bank import BankResult
from generator.analyses.verdict.criteria.criterion import (
    GO,
    NOT_APPLICABLE,
    Criterion,
    Judgement,
    stated,
)
from generator.analyses.wiring.installation import PEAK_LEFT
from generator.arrays import Numbers
from generator.tables.method import method

HELD = method("wiring.held_share")
PEAK_SHARE = method("bank.peak_share")


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """The worse of cruise C rate over its limit and peak current over 0.8 of the bank's."""
    bank = found.bank
    if bank is None:
        why = "no propulsion battery"
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, why, "")
    cruise = bank.cruise_rate / np.asarray(bank.rate_limit)
    peak = bank.peak_current / (
        PEAK_SHARE * np.asarray(bank.discharge_limit)
    )  # nan: it cannot give it
    worst = np.maximum(cruise, peak)  # nan where either is
    worse = spread(worst)
    high = scalar(worse.high)
    result = criterion.judge(high)
    key = f"options.{found.place}.bank"
    why = (
        f"old and at {{{key}.coldest_c|temperature}}, cruise takes "
        f"{{{key}.cruise_current_a|current}} ({{{key}.cruise_rate_c|rate}}); "
        f"peak takes {{{key}.peak_current_a|current}} of {{{key}.discharge_limit_a|current}}"
    )
    lacking = _lacking(found, bank)
    if lacking:
        why = f"old and at {{{key}.coldest_c|temperature}}, {lacking}"
    heights = scalar(spread(peak).high), scalar(spread(cruise).high)
    flip, numbers = ("", {}) if result == GO else _flip(found, *heights)
    left = None if found.installation is None else found.installation.setting(PEAK_LEFT)
    if left is not None and left < HELD * 1e-3 * scalar(_peak_power(found)):
        numbers["left_kw"] = left
        why += (
            "; held within its limit, the motor gives {here.left_kw|power} of "
            f"{{options.{found.place}.particulars.motor.peak_power_kw|power}}"
        )
    return Judgement(
        criterion, stated(scalar(worse.middle)), stated(high), "-", result, why, flip, "",
        numbers, worst,
    )  # fmt: skip


def _lacking(found: Findings, bank: BankResult) -> str:
    """Why one of the two currents is no number in more than half of the draws."""
    cruise, drain, peak = (
        np.isfinite(scalar(spread(values).middle))
        for values in (bank.cruise_current, found.key.cruise_drain, bank.peak_current)
    )
    if not drain:
        return "planned cruise is more than the hull form or the propeller series can tell"
    if not (peak and cruise):
        return f"the bank cannot give {'planned cruise' if peak else 'peak power'}"
    return ""


def _peak_power(found: Findings) -> Numbers:
    """Peak power of the motor on its plate [W]."""
    return 0.0 if found.option.motor is None else found.option.motor.peak_power


def _flip(found: Findings, peak: float, cruise: float) -> tuple[str, dict[str, float]]:
    bank = found.bank
    assert bank is not None
    parts: list[str] = []
    numbers: dict[str, float] = {}
    if not np.isfinite([peak, cruise]).all():
        return "more cells side by side, or less power asked of them", numbers
    if peak > 1.0:
        numbers["flip_a"] = scalar(spread(bank.peak_current).high) / PEAK_SHARE
        parts.append("a discharge limit of {here.flip_a|current}, or a lower peak")
    if cruise > 1.0 and found.option.bank is not None:
        charge = float(np.asarray(found.option.bank.charge).flat[0]) / 3600.0
        numbers["flip_ah"] = charge * cruise
        parts.append("{here.flip_ah|charge}, or a slower cruise")
    return "; ".join(parts), numbers
