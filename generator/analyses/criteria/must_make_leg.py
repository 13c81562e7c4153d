"""Criterion 1: does the worst leg that must be made under engine fit?"""

from __future__ import annotations

import numpy as np

from generator.analyses.criteria.criterion import GO, Criterion, Judgement
from generator.analyses.findings import Findings
from generator.analyses.leg_energy import wanted_usable
from generator.analyses.legs import LegResult
from generator.analyses.power import KNOT
from generator.analyses.spread import scalar, spread

KWH = 3.6e6
LITRE = 1e-3


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Usable energy above reserve over the need of the worst leg without refuge or sail."""
    place = found.key.worst_leg
    if place is None:
        why = "no leg of this boat is without refuge and without wind to sail it"
        return Judgement(criterion, None, None, "-", GO, why, "")
    worst = found.legs.results[place]
    ratio = spread(worst.ratio)
    low = scalar(ratio.low)
    result = criterion.judge(low)
    key = f"options.{found.place}.legs.{place}"
    unit, when = ("kwh|energy", " at the end of the horizon") if found.bank else ("l|fuel", "")
    why = (
        f"{worst.leg.name}: needs {{{key}.need_{unit}}} (one in ten: above "
        f"{{{key}.need_high_{unit}}}), has {{{key}.available_{unit}}} above the reserve{when}"
        f"{_start(worst, key, unit)}"
    )
    if scalar(ratio.middle) == 0.0:
        why = f"{worst.leg.name}: {_impossible(found, worst, key)}"
    elif low == 0.0:
        why = f"{worst.leg.name}: in one draw of ten {_impossible(found, worst, key)}"
    flip, numbers = ("", {}) if result == GO else _flip(criterion, found, worst)
    return Judgement(
        criterion, scalar(ratio.middle), low, "-", result, why, flip, "", numbers, worst.ratio
    )


def _start(worst: LegResult, key: str, unit: str) -> str:
    """What the legs before it on the outing have taken."""
    if worst.leg.follows is None or not np.all(np.isfinite(worst.before)):
        return ""
    return f", {{{key}.before_{unit}}} gone on the way before it"


def _impossible(found: Findings, worst: LegResult, key: str) -> str:
    if worst.beyond_limit:
        return f"the sea at {{{key}.wind_kn|speed}} of wind is too steep for engine alone"
    if worst.bank_short:
        return "the aged, cold bank does not give the current it takes"
    if found.bank is not None and scalar(spread(worst.available).low) <= 0.0:
        return "the aged, cold bank has nothing above its reserve"
    return f"warm, continuous power does not hold it against {{{key}.wind_kn|speed}} of wind"


def _flip(criterion: Criterion, found: Findings, worst: LegResult) -> tuple[str, dict[str, float]]:
    """What carries it, all else kept: as slowly as pays, a larger bank, less wind."""
    ways, numbers = _slower(criterion, found)
    wanted = wanted_usable(
        worst.need, criterion.go, found.reserve.demand, found.case.planning.reserve_share,
        worst.before,
    )  # fmt: skip
    nominal = scalar(spread(found.use.sizes.nominal_for(wanted)).high)
    if np.isfinite(nominal) and found.option.bank is None:
        ways.append("a tank of {here.flip_l|fuel}")
        numbers["flip_l"] = nominal / LITRE
    elif np.isfinite(nominal):
        ways.append("a bank of {here.flip_kwh|energy} nominal, its own mass left out")
        numbers["flip_kwh"] = nominal / KWH
    if not ways:
        return _calmer(found)
    return ", or ".join(ways), numbers


def _slower(criterion: Criterion, found: Findings) -> tuple[list[str], dict[str, float]]:
    """The least-energy speed over the ground, where it is enough."""
    assert found.key.worst_leg is not None
    slow = found.use.slow[found.key.worst_leg]
    ratio = scalar(spread(slow.ratio).low)
    speed = scalar(spread(np.nan_to_num(slow.sheltered_speed)).middle) / KNOT
    if ratio < criterion.go or speed <= 0.0:
        return [], {}
    text = (
        "{here.slow_kn|speed} in shelter and slower outside, {here.slow_ratio|ratio} times the need"
    )
    return [text], {"slow_kn": speed, "slow_ratio": ratio}


def _calmer(found: Findings) -> tuple[str, dict[str, float]]:
    """More power, or the wind with which the bank and the motor do it."""
    mend = next((item for item in found.use.help if item.place == found.key.worst_leg), None)
    if mend is None or mend.wind is None:
        return "more continuous power, or this leg only with the wind below that stated", {}
    text = "more continuous power, or no more than {here.flip_wind_kn|wind} on the nose"
    return text, {"flip_wind_kn": mend.wind / KNOT}
