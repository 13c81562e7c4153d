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
    return {
        key: None
        if key.endswith("_why") and _stands(node, key.removesuffix("_why"))
        else without_idle_reasons(value)
        for key, value in node.items()
    }


def _stands(row: dict[str, Any], stem: str) -> bool:
    """Are all values there that a reason of this name speaks of, and is there one at all?"""
    stems = (stem, f"{stem}_low", f"{stem}_high")
    names = [name for name in row if name in stems or name.rpartition("_")[0] in stems]
    values = [row[name] for name in names if not name.endswith("_why")]
    return bool(values) and all(value is not None for value in values)


def plain(node: Any) -> Any:
    """The same tree in plain Python types, floats to nine significant digits, no NaN."""
    if node is None or isinstance(node, str):
        return node
    if isinstance(node, float | np.floating):
        return float(f"{float(node):.{DIGITS}g}") if math.isfinite(node) else None
    if isinstance(node, dict):
        return {str(key): plain(value) for key, value in node.items()}
    if isinstance(node, list | tuple):
        return [plain(value) for value in node]
    if isinstance(node, np.bool_):
        return bool(node)
    return int(node) if isinstance(node, np.integer) else node
