"""Which limits of the rules do the pages name beside a result?"""

from __future__ import annotations

from generator.analyses.handling.docking import STOPS
from generator.analyses.handling.headwind import LEAST_WAY
from generator.analyses.handling.stream import LEAST_OVER, LEAST_THROUGH
from generator.analyses.motion.power import KNOT
from generator.analyses.verdict.criteria.catalogue import criteria
from generator.records import number, record

GATE, STOPPING = 9, 24  # ids of the criteria


@record
class LimitsOfPractice:
    """Rows of the tables of rules, as analyses and criteria use them."""

    least_way: float = number("speed", "least way off a lee shore")
    stop_from: float = number("speed", "speed from which she stops")
    stop_from_more: float = number("speed", "higher speed from which she stops")
    stop_lengths: float = number("lengths", "way to stop over length")
    gate_go: float = number("speed", "speed over ground that passes")
    gate_tide: float = number("speed", "speed over ground, tide worked")
    least_through: float = number("speed", "slowest planned speed through water")
    least_over: float = number("speed", "slowest planned speed over ground")

    @classmethod
    def told(cls) -> LimitsOfPractice:
        """From the tables of rules."""
        rows = {row.id: row for row in criteria()}
        return cls(
            least_way=LEAST_WAY,
            stop_from=min(STOPS),
            stop_from_more=max(STOPS),
            stop_lengths=rows[STOPPING].go,
            gate_go=rows[GATE].go * KNOT,
            gate_tide=rows[GATE].conditional * KNOT,
            least_through=LEAST_THROUGH,
            least_over=LEAST_OVER,
        )
