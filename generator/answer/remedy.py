"""What is one change that might mend an option, on the study's case and in the case file?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, ClassVar

from generator.answer.values import changed
from generator.case.case import Case
from generator.records import number, record

Path = tuple[str | int, ...]
STAGES = (
    "facts", "settings", "habit", "small parts", "bank", "motor", "second means",
)  # fmt: skip
FACTS, SETTINGS, HABIT, PARTS, BANK, MOTOR, SECOND = range(len(STAGES))


@dataclass(frozen=True)
class Typed:
    """One key of the case file and what is typed there; None takes the key out.

    In a list of the path an item is told by its place or by its name.
    """

    path: Path
    text: str | None


ABSENT: Mapping[str, str] = dict.fromkeys(
    (
        "speed",
        "slower",
        "ratio",
        "diameter",
        "nominal",
        "extra",
        "power",
        "peak",
        "count",
        "current",
    ),
    "not_of_this_kind",
) | {"price": "no_price"}


@record
class Remedy:
    """One change, cheapest stage first: facts, settings, habit, small parts, bank, motor.

    ``kind`` is what is changed; a number that does not belong to its kind is absent.
    """

    SAID_BY: ClassVar[str] = "remedy"
    SAID_IN: ClassVar[str] = "advice"
    kind: str
    stage: int
    names: tuple[str, ...] = ()  # legs, parts, works or option that it speaks of
    speed: float | None = number("speed", "new speed through the water", default=None)
    slower: float | None = number("speed", "by which she goes slower", default=None)
    ratio: float | None = number("ratio", "new reduction", default=None)
    diameter: float | None = number("length_small", "new diameter", default=None)
    nominal: float | None = number("energy", "new nominal energy of the battery", default=None)
    extra: float | None = number("mass", "mass that it adds", default=None)
    power: float | None = number("power", "new power", default=None)
    peak: float | None = number("power", "new peak power", default=None)
    current: float | None = number("current", "what it lets through for good", default=None)
    count: int | None = number("count", "strings side by side", default=None)
    price: float | None = number("money", "price at the ledger's own rates", default=None)
    absent: Mapping[str, str] = field(default_factory=lambda: dict(ABSENT))


@dataclass(frozen=True)
class Change:
    """A remedy with what it does to the drawn case, and to the file that the owner types.

    A value of ``fields`` may be made anew for a case of so many draws: see ``values.py``.
    """

    told: Remedy
    fields: Mapping[tuple[str, ...], Any]  # of the frozen case, in SI
    typed: tuple[Typed, ...]

    def applied(self, case: Case, count: int) -> Case:
        """A case of ``count`` draws with the change made; what is typed anew has no doubt."""
        return changed(case, self.fields, count)


@dataclass(frozen=True, eq=False)
class Offer:
    """One kind of change in several strengths, the weakest first, and the rows it may mend."""

    kind: str
    stage: int
    rows: tuple[int, ...]
    levels: tuple[Change, ...]


def one(told: Remedy, path: Path, value: Any, text: str | None) -> Change:
    """A change of a single key that is called alike in case and file."""
    return Change(told, {tuple(map(str, path)): value}, (Typed(path, text),))
