"""Criterion 9: does she get through the gate of a leg that must be made?"""

from __future__ import annotations

from generator.analyses.findings import Findings
from generator.analyses.motion.power import KNOT
from generator.analyses.percentiles import best, scalar, spread
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    GO,
    NOT_APPLICABLE,
    Criterion,
    Judgement,
)


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Speed on the continuous rating above the stream of the worst must-make leg.

    The limit is for springs: on a mean stream alone it is never a plain go.
    """
    gates = [gate for gate in found.stream.gates if gate.must_make]
    if not gates:
        why = "no leg that must be made has a stream against her"
        return Judgement(criterion, None, None, "kn", NOT_APPLICABLE, why, "")
    worst = min(gates, key=lambda gate: scalar(spread(gate.margin).low))
    told = spread(worst.margin / KNOT)
    low = scalar(told.low)
    result = criterion.judge(low)
    against = scalar(best(worst.stream)) / KNOT
    numbers = {
        "stream_kn": against,
        "top_kn": scalar(spread(found.stream.top).middle) / KNOT,
        "margin_kn": low,
    }
    which = "at springs" if worst.at_springs else "on the mean, for no spring stream is given"
    why = (
        f"{worst.leg.name}: {{here.top_kn|speed}} on the continuous rating against "
        f"{{here.stream_kn|speed}} {which}, {{here.margin_kn|speed}} to spare at the pessimistic "
        "end"
    )
    condition, flip = "", ""
    if result == GO and not worst.at_springs:
        result = CONDITIONAL
        flip = "the spring stream of that leg, from the tidal atlas"
        condition = f"{worst.leg.name}: read its spring stream; only the mean is known"
    elif result != GO:
        numbers["flip_kn"] = against + criterion.go
        flip = "{here.flip_kn|speed} on the continuous rating, or another tide"
        if result == CONDITIONAL:
            condition = f"{worst.leg.name}: the tide is to be worked"
    return Judgement(
        criterion,
        scalar(told.middle),
        low,
        "kn",
        result,
        why,
        flip,
        condition,
        numbers=numbers,
    )
