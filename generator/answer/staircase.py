"""Which motor with which bank, at which speed, is suitable? A map of three staircases."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import ClassVar

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.percentiles import best, scalar
from generator.analyses.verdict.criteria.catalogue import criteria
from generator.analyses.verdict.verdict import WORD_CONDITIONS, WORD_GO, WORD_NO
from generator.answer.bank_steps import MOVED, Column, columns
from generator.answer.desk import FAILS, Desk, Look
from generator.answer.grow import LADDER, matched_motor
from generator.answer.motor_look import OF_POWER, MotorLook, motor_look
from generator.answer.offers import LEAST_OVER, LEAST_THROUGH
from generator.answer.remedy import HABIT, Change, Remedy
from generator.arrays import Places
from generator.case.usage import Leg
from generator.records import number, record

KNOT = 1852.0 / 3600.0
SLOWER = (0.0, 0.5 * KNOT, 1.0 * KNOT)
WORDS = (WORD_GO, WORD_CONDITIONS, WORD_NO)
BESIDE = (2, 2)  # motors of the ladder below and above the option's own
TOO_SMALL = (1, 3)  # and where that is too small
TENTHS = (*range(3, 16), *range(16, 21, 2), 22, 25, 28, 30)  # of the bank: sizes that are tried
SHOWN = (3, 4, 6, 8, 10, 12, 15, 20, 25, 30)  # and those that are printed


@record
class Cell:
    """One motor with one bank at one speed: its word, and the row that binds; 0 where none does."""

    word: str
    binding: int
    row: str
    motor: float = number("power", "continuous power of the motor")
    bank: float = number("energy", "nominal energy of the battery")
    slower: float = number("speed", "by which every passage is slower")
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class Smallest:
    """The smallest motor, and its smallest bank, that reach a word at one speed.

    What neither motor nor bank moves is left out here; the map says which rows those are.
    ``binds`` are the rows that keep the nearest from it, empty where one reaches it.
    """

    word: str
    there: bool
    own_speed: bool  # not slower than the owner's
    binds: tuple[str, ...]
    motor: float | None = number("power", "smallest motor")
    bank: float | None = number("energy", "smallest battery behind it")
    slower: float = number("speed", "by which every passage is slower")
    absent: Mapping[str, str] = field(
        default_factory=lambda: dict.fromkeys(("motor", "bank"), "none_on_the_map")
    )


@record
class Staircase:
    """The map of one option. ``asks`` and ``fails``: rows that neither motor nor bank moves."""

    SAID_BY: ClassVar[str] = "staircase"
    SAID_IN: ClassVar[str] = "advice"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("apart", "note")
    option: str
    asks: tuple[str, ...]
    fails: tuple[str, ...]
    smallest: tuple[Smallest, ...]
    cells: tuple[Cell, ...]
    most_motor: float = number("power", "largest motor of the map")
    most_bank: float = number("energy", "largest battery of the map")
    own_motor: float = number("power", "motor as specified")
    own_bank: float = number("energy", "battery as specified")
    absent: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, eq=False)
class Stairs:
    """The ranks behind a map: by motor and speed a column over all sizes of bank."""

    motors: tuple[float, ...]
    sizes: tuple[float, ...]  # J, every one that is tried
    shown: tuple[int, ...]  # places of those that are printed
    columns: list[list[Column]]
    others: Mapping[int, int]  # rank of each row that neither motor nor bank moves

    def worst(self, motor: int, speed: int) -> Places:
        """How bad the worst row of motor and bank is, over the sizes."""
        ranks: Places = np.max(list(self.columns[motor][speed].ranks.values()), axis=0)
        return ranks

    def binding(self, motor: int, speed: int, size: int) -> tuple[int, int]:
        """Rank and row of what binds a cell: the first of the worst rows."""
        own = {row: int(each[size]) for row, each in self.columns[motor][speed].ranks.items()}
        every = {**self.others, **own}
        worst = max(every.values())
        return worst, min(row for row, rank in every.items() if rank == worst) if worst else 0

    def smallest(self, speed: int, rank: int) -> tuple[int, int] | None:
        """The smallest motor with a bank that is no worse, and the smallest such bank."""
        for motor in range(len(self.motors)):
            able = np.flatnonzero(self.worst(motor, speed) <= rank)
            if able.size:
                return motor, int(able[0])
        return None

    def nearest(self, speed: int, rank: int) -> tuple[int, ...]:
        """The rows that are too bad where the fewest are, with the smallest motor and bank."""
        short = [
            tuple(sorted(row for row, ranks in column[speed].ranks.items() if ranks[size] > rank))
            for column in self.columns
            for size in range(len(self.sizes))
        ]
        return min(short, key=len)


def staircase(desk: Desk, place: int) -> Staircase | None:
    """The map of an option on the draws of a desk; none without motor and bank."""
    option = desk.ground.case.options[place]
    if option.motor is None or option.bank is None:
        return None
    base = desk.look(place)
    return told(climbed(desk, base), base.findings)


def climbed(desk: Desk, base: Look, mass_held: bool = False) -> Stairs:
    """One look for each motor, the largest first, and what their banks do to them.

    What is smaller than a motor that is too small is not looked at: it is too small as well.
    """
    found = base.findings
    slower = [slower_by(found, by) for by in SLOWER]
    looks: list[MotorLook] = []
    small = any(base.ranks.get(row) == FAILS for row in OF_POWER)
    motors = _motors(found, TOO_SMALL if small else BESIDE)
    for power, change in reversed(motors.items()):
        smaller = bool(looks) and bool(looks[0].short)
        looks.insert(
            0,
            replace(looks[0], power=power) if smaller else motor_look(desk, base, change, slower),
        )
    sizes, shown = _sizes(found)
    others = {row: rank for row, rank in base.ranks.items() if row not in MOVED}
    return Stairs(tuple(motors), sizes, shown, columns(looks, sizes, mass_held), others)


def slower_by(found: Findings, by: float) -> Change:
    """Every passage slower through the water, as far as she still makes way and is steered."""
    speeds = {} if by == 0.0 else {n: _speed(leg, by) for n, leg in enumerate(found.case.legs)}
    fields: dict[tuple[str, ...], float] = {
        ("legs", str(n), "speed"): speed for n, speed in speeds.items()
    }
    return Change(Remedy("slower", HABIT, slower=by), fields, ())


def _speed(leg: Leg, by: float) -> float:
    own, stream = scalar(best(leg.speed)), scalar(best(leg.stream))
    return min(own, max(own - by, LEAST_THROUGH, stream + LEAST_OVER))


def _motors(found: Findings, beside: tuple[int, int]) -> dict[float, Change | None]:
    """The option's own motor among its neighbours of the ladder, by power; None is its own."""
    motor = found.option.motor
    assert motor is not None
    own = scalar(best(motor.continuous_power))
    below = [power for power in LADDER if power < 0.9 * own][-beside[0] :]
    above = [power for power in LADDER if power > 1.1 * own][: sum(beside) - len(below)]
    made: dict[float, Change | None] = {
        power: matched_motor(found, found.place, motor, power) for power in (*below, *above)
    }
    return dict(sorted({**made, own: None}.items()))


def _sizes(found: Findings) -> tuple[tuple[float, ...], tuple[int, ...]]:
    """Nominal energies by tenths of the bank as specified, and the places of those printed."""
    own = scalar(best(found.store.nominal))
    shown = tuple(place for place, tenth in enumerate(TENTHS) if tenth in SHOWN)
    return tuple(own * tenth / 10.0 for tenth in TENTHS), shown


def told(stairs: Stairs, found: Findings) -> Staircase:
    """The map as a record."""
    names = {row.id: row.name for row in criteria()}
    motor = found.option.motor
    assert motor is not None
    return Staircase(
        option=found.option.name,
        asks=tuple(names[row] for row, rank in sorted(stairs.others.items()) if rank == 1),
        fails=tuple(names[row] for row, rank in sorted(stairs.others.items()) if rank == 2),
        smallest=tuple(
            _smallest(stairs, speed, rank, names) for speed in range(len(SLOWER)) for rank in (0, 1)
        ),
        cells=tuple(
            _cell(stairs, (place, speed, size), names)
            for speed in range(len(SLOWER))
            for place in range(len(stairs.motors))
            for size in stairs.shown
        ),
        most_motor=stairs.motors[-1],
        most_bank=stairs.sizes[-1],
        own_motor=scalar(best(motor.continuous_power)),
        own_bank=scalar(best(found.store.nominal)),
    )


def _cell(stairs: Stairs, at: tuple[int, int, int], names: Mapping[int, str]) -> Cell:
    motor, speed, size = at
    worst, row = stairs.binding(motor, speed, size)
    return Cell(
        word=WORDS[worst],
        binding=row,
        row=names.get(row, ""),
        motor=stairs.motors[motor],
        bank=stairs.sizes[size],
        slower=SLOWER[speed],
    )


def _smallest(stairs: Stairs, speed: int, rank: int, names: Mapping[int, str]) -> Smallest:
    """What reaches a word, or what keeps the cell that comes nearest from it."""
    reached = stairs.smallest(speed, rank)
    return Smallest(
        word=WORDS[rank],
        there=reached is not None,
        own_speed=speed == 0,
        binds=() if reached else tuple(names[row] for row in stairs.nearest(speed, rank)),
        motor=None if reached is None else stairs.motors[reached[0]],
        bank=None if reached is None else stairs.sizes[reached[1]],
        slower=SLOWER[speed],
    )
