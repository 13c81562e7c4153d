"""How does an SI number become the number behind a suffixed key of results.json?"""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from generator.analyses.percentiles import scalar, spread
from generator.arrays import Numbers
from generator.units.kinds import KINDS

PER_SI = {kind.suffix: kind.per_si for kind in KINDS.values() if kind.suffix} | {
    "1": 1.0,
}
DIGITS = 9
# Why numbers are absent, in words that are as true of a tenth percentile as of the middle.
BEYOND = "in too many draws beyond what the hull form or the propeller series allow"
CRUISE_BEYOND = f"planned cruise is {BEYOND}"
NOT_MOTORED = f"a leg of hers is {BEYOND}"


def put(value: Numbers | None, suffix: str) -> float | None:
    """The first (best-estimate) entry of an SI value in the unit of ``suffix``; None if absent."""
    if value is None:
        return None
    first = float(np.asarray(value, dtype=np.float64).flat[0])
    return first * PER_SI[suffix] if math.isfinite(first) else None


def told_of(
    name: str, values: Numbers, suffix: str, tail: str = "", cautious: str = "high"
) -> dict[str, Any]:
    """Middle, low and high under ``name``, each with the suffix."""
    told, factor = spread(values, cautious), PER_SI[suffix]
    end = tail or suffix
    return {
        f"{name}_{end}": scalar(told.middle) * factor,
        f"{name}_low_{end}": scalar(told.low) * factor,
        f"{name}_high_{end}": scalar(told.high) * factor,
    }


def column(values: Numbers, suffix: str) -> list[float | None]:
    """A row of SI numbers in the unit of ``suffix``, None where a number does not exist."""
    row = np.asarray(values, dtype=np.float64).reshape(-1) * PER_SI[suffix]
    return [float(item) if math.isfinite(item) else None for item in row]


def excused(row: dict[str, Any], why: str) -> dict[str, Any]:
    """The row with nothing in place of every number that is none, and why beside it."""
    absent = [
        key for key, value in row.items() if isinstance(value, float) and not math.isfinite(value)
    ]
    return row | dict.fromkeys(absent) | {f"{key}_why": why for key in absent}


def without_idle_reasons(node: Any) -> Any:
    """The tree with every ``_why`` emptied beside which the value that it excuses stands.

    ``range_why`` and ``range_nm_why`` excuse ``range_nm``; ``sun_only_why`` excuses ``sun_only``.
    """
    if isinstance(node, list | tuple):
        return [without_idle_reasons(value) for value in node]
    if not isinstance(node, dict):
        return node
    reasons = [key for key, value in node.items() if value is not None and key.endswith("_why")]
    idle = _idle(node, reasons) if reasons else ()
    return {
        key: None
        if key in idle
        else (without_idle_reasons(value) if isinstance(value, dict | list | tuple) else value)
        for key, value in node.items()
    }


def _idle(row: dict[str, Any], reasons: list[str]) -> set[str]:
    """The reasons all of whose values are there, of which there is one at least."""
    there: dict[str, bool] = {}  # by the name of a value, and by that without its unit
    for name, value in row.items():
        if not name.endswith("_why"):
            for stem in (name, name.rpartition("_")[0]):
                there[stem] = there.get(stem, True) and value is not None
    stems = {key: key.removesuffix("_why") for key in reasons}
    spoken = {key: [there[each] for each in (stem, f"{stem}_low", f"{stem}_high") if each in there]
              for key, stem in stems.items()}  # fmt: skip
    return {key for key, values in spoken.items() if values and all(values)}


def plain(node: Any) -> Any:
    """The same tree in plain Python types, floats to nine significant digits, no NaN."""
    if node is None or isinstance(node, str):
        return node
    if isinstance(node, float | np.floating):
        return float(f"{float(node):.{DIGITS}g}") if math.isfinite(node) else None
    if isinstance(node, dict):
        return {
            str(key): value if value is None or isinstance(value, str) else plain(value)
            for key, value in node.items()
        }
    if isinstance(node, list | tuple):
        return [plain(value) for value in node]
    if isinstance(node, np.bool_):
        return bool(node)
    return int(node) if isinstance(node, np.integer) else node
