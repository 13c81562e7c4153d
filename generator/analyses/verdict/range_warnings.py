"""Where is a formula used outside what it was tested on?"""

from __future__ import annotations

from collections.abc import Iterable
from typing import ClassVar

from generator.physics.validity import Caution
from generator.records import number, record

FEW_OUTSIDE = 0.05  # of the draws; fewer are the tails of a doubt, not the boat


@record
class RangeWarning:
    """An input beyond the range of a source, in its own unit; ``done`` is what is done then."""

    SAID_BY: ClassVar[str] = "range_warning"
    SAID_IN: ClassVar[str] = "cautions"
    quantity: str
    done: str
    source: str
    low: float = number("plain", "low end of the range")
    high: float = number("plain", "high end of the range")
    share_outside: float = number("percent", "draws outside the range")


def range_warnings(every: Iterable[Caution]) -> tuple[RangeWarning, ...]:
    """Each quantity once, as the first that is outside in more than a few draws has it."""
    found: dict[str, RangeWarning] = {}
    for item in every:
        if item.share_outside >= FEW_OUTSIDE:
            warning = RangeWarning(
                item.quantity, item.message, item.source, item.low, item.high, item.share_outside
            )
            found.setdefault(item.quantity, warning)
    return tuple(found.values())
