"""Criterion 1: does the worst leg that must be made under engine fit?"""

from __future__ import annotations

import numpy as np

from generator.analyses.criteria.criterion import GO, Criterion, Judgement
from generator.analyses.findings import Findings
from generator.analyses.legs import LegResult
from generator.analyses.spread import scalar, spread
from generator.arrays import Array

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
    )
    if scalar(ratio.middle) == 0.0:
        why = f"{worst.leg.name}: {_impossible(found, worst, key)}"
    elif low == 0.0:
        why = f"{worst.leg.name}: in one draw of ten {_impossible(found, worst, key)}"
    flip, numbers = ("", {}) if result == GO else _flip(criterion, found, worst)
    return Judgement(
        criterion, scalar(ratio.middle), low, "-", result, why, flip, "", numbers, worst.ratio
    )


def _impossible(found: Findings, worst: LegResult, key: str) -> str:
    if worst.beyond_limit:
        return f"the sea at {{{key}.wind_kn|speed}} of wind is too steep for engine alone"
    if worst.bank_short:
        return "the aged, cold bank does not give the current it takes"
    if found.bank is not None and scalar(spread(worst.available).low) <= 0.0:
        return "the aged, cold bank has nothing above its reserve"
    return f"warm, continuous power does not hold it against {{{key}.wind_kn|speed}} of wind"


def _flip(criterion: Criterion, found: Findings, worst: LegResult) -> tuple[str, dict[str, float]]:
    """The bank that would carry it, all else kept; its own mass is left out."""
    need = np.where(np.isfinite(worst.need), worst.need, np.nan)
    if not np.isfinite(need).mean() > 0.9:
        return "more continuous power, or this leg only with the wind below that stated", {}
    wanted = criterion.go * np.nan_to_num(need, nan=float(np.nanmax(need)))
    wanted = wanted + found.reserve.of_aged
    nominal = scalar(spread(wanted / _share(found)).high)
    if found.option.bank is None:
        return "a tank of {here.flip_l|fuel}", {"flip_l": nominal / LITRE}
    text = "a bank of {here.flip_kwh|energy} nominal, a slower leg, or a charge on the way"
    return text, {"flip_kwh": nominal / KWH}


def _share(found: Findings) -> Array:
    """What a larger store gives of its nominal: of a bank down to its planned depth."""
    store = found.store
    if store.aged is None:
        return np.asarray(store.usable_aged / np.asarray(store.nominal))
    return np.asarray(store.aged.capacity * (1.0 - np.asarray(store.aged.planned_floor)))
