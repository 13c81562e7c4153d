"""What does results.json say of miles over the ground against a stream?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.handling.stream import Gate
from generator.analyses.percentiles import scalar, spread
from generator.arrays import Array
from generator.report.results.suffix import PER_SI, excused, put

Row = dict[str, Any]
STEP = 0.25  # kn between two streams of the analysis
TOO_SLOW = "less than 1 kn over the ground, or above the continuous rating"


def stream_part(found: Findings) -> Row:
    """Energy per mile over the ground by stream, and the gates of the legs."""
    suffix = "kwh_per_nm" if found.option.bank is not None else "l_per_nm"
    flow = found.stream
    rows = [
        {
            "stream_kn": place * STEP,
            **_cost("cruise", flow.cruise[:, [place]], suffix),
            **_cost("least", flow.least[:, [place]], suffix),
            "through_kn": put(flow.through[place], "kn"),
            "over_kn": put(flow.through[place] - place * STEP / PER_SI["kn"], "kn"),
        }
        for place in range(flow.least.shape[1])
    ]
    return {
        "unit": suffix,
        "rows": rows,
        "doubles_kn": _doubling(rows, f"least_{suffix}"),
        "gates": [_gate(gate, suffix) for gate in flow.gates],
    }


def _cost(name: str, values: Array, suffix: str) -> Row:
    """Middle of the draws, none where half of them have no answer."""
    return excused({f"{name}_{suffix}": scalar(spread(values).middle) * PER_SI[suffix]}, TOO_SLOW)


def _doubling(rows: list[Row], name: str) -> float | None:
    """Stream that doubles the least energy for a mile, straight between the rows."""
    costs = [row[name] for row in rows]
    if costs[0] is None:
        return None
    for place, cost in enumerate(costs):
        if cost is None:
            return None
        if cost >= 2.0 * costs[0]:
            share = (2.0 * costs[0] - costs[place - 1]) / (cost - costs[place - 1])
            return float((place - 1 + share) * STEP)
    return None


def _gate(gate: Gate, suffix: str) -> Row:
    margin = spread(gate.margin)
    return {
        "name": gate.leg.name,
        "must_make": gate.must_make,
        "stream_kn": put(gate.stream, "kn"),
        "at_springs": gate.at_springs,
        "margin_kn": scalar(margin.middle) * PER_SI["kn"],
        "margin_low_kn": scalar(margin.low) * PER_SI["kn"],
        **_cost("least", gate.least, suffix),
        "through_kn": put(gate.through, "kn"),
        "through_kn_why": None if np.isfinite(gate.through) else TOO_SLOW,
    }
