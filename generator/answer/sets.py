"""Which few changes together make an option suitable, the cheapest for the owner first?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from itertools import combinations
from typing import ClassVar

from generator.answer.desk import FAILS, Desk, Look
from generator.answer.offers import offers
from generator.answer.remedy import PARTS, STAGES, Change, Offer, Remedy, Typed
from generator.records import number, record, working

MOST_MEMBERS, MOST_SETS = 3, 3
LAST = len(STAGES) - 1
HEAVY = (16, 17)  # rows that a larger bank or motor makes worse, never better
ADD_UP = (1, 2)  # rows to which several changes add up


@record
class RemedySet:
    """Changes that together give the word beside them, none of which can be left out."""

    SAID_BY: ClassVar[str] = "remedy_set"
    SAID_IN: ClassVar[str] = "advice"
    SAYS_ALSO: ClassVar[tuple[str, ...]] = ("needs",)
    remedies: tuple[Remedy, ...]
    word: str
    mends: tuple[int, ...]  # rows that it lifts
    asks: tuple[int, ...]  # rows that passed and then pass with conditions
    asks_named: tuple[str, ...]
    free: bool  # nothing in it is bought
    price: float | None = number("money", "price of them all at the ledger's own rates")
    typed: tuple[Typed, ...] = working()
    changes: tuple[Change, ...] = working()
    look: Look = working()
    absent: Mapping[str, str] = field(default_factory=lambda: {"price": "no_price"})


@dataclass(frozen=True)
class _Search:
    """One option on few draws, its offers and what was looked at already.

    ``lenient``: a row that passes may come to pass with conditions, and the set says which.
    """

    desk: Desk
    full: Desk
    place: int
    base: Look
    whole: Look  # the base on all draws
    seen: dict[tuple[tuple[str, int], ...], Look]
    asked: dict[tuple[int, ...], Look]  # the same on all draws, by their changes
    lenient: bool = False

    def look(self, members: Mapping[Offer, int]) -> Look:
        """The option with each offer at a level."""
        key = tuple(sorted((offer.kind, level) for offer, level in members.items()))
        if key not in self.seen:
            changes = [offer.levels[level] for offer, level in members.items()]
            self.seen[key] = self.desk.look(self.place, changes)
        return self.seen[key]

    def confirm(self, changes: tuple[Change, ...]) -> Look:
        """The option with changes, on all draws."""
        key = tuple(sorted(map(id, changes)))
        if key not in self.asked:
            self.asked[key] = self.full.look(self.place, changes)
        return self.asked[key]

    def does(self, members: Mapping[Offer, int], worst: int, leaving: tuple[int, ...] = ()) -> bool:
        """Whether it reaches the word without making a deciding row worse."""
        return self.passes(self.look(members), self.base, worst, leaving)

    def passes(self, found: Look, base: Look, worst: int, leaving: tuple[int, ...] = ()) -> bool:
        """The same of a look against what was there before."""
        before = base.ranks
        return all(
            rank <= worst and (rank <= before.get(row, 0) or (self.lenient and rank < FAILS))
            for row, rank in found.ranks.items()
            if row not in leaving
        )


def remedy_sets(few: Desk, full: Desk, place: int, whole: Look) -> tuple[RemedySet, ...]:
    """Up to three sets: to conditions at the first stage that does it, then to suitable.

    ``whole`` is the option as the study found it, on all draws. Where no set keeps every row as
    good as it was, sets that turn a pass into one with conditions.
    """
    base = few.look(place)
    if base.worst == 0 or few.ground.case.options[place].bank is None:
        return ()
    search = _Search(few, full, place, base, whole, {}, {})
    pool = offers(whole, place, base)
    for each in (search, replace(search, lenient=True)):
        found = _sets(each, pool)
        if found:
            return found
    return ()


def _sets(search: _Search, pool: tuple[Offer, ...]) -> tuple[RemedySet, ...]:
    """One stage on from what makes it pass with conditions; all, where it does already."""
    found: list[RemedySet] = []
    last = LAST
    if search.base.worst == FAILS:
        stage, found = _first_stage(search, pool, 1, LAST)
        if not found:
            return ()
        last = min(stage + 1, LAST)
    _, better = _first_stage(search, pool, 0, last)
    done = {each.typed for each in better}
    found = [each for each in found if each.typed not in done]
    kept = found[: MOST_SETS - min(len(better), 1)]
    return (*kept, *better[: MOST_SETS - len(kept)])


def _first_stage(
    search: _Search, pool: tuple[Offer, ...], worst: int, last: int
) -> tuple[int, list[RemedySet]]:
    """The sets of the first stage that has any, those of fewer and of cheaper members first."""
    bad = {row for row, rank in search.base.ranks.items() if rank > worst}
    if not bad <= {row for offer in pool if offer.stage <= last for row in offer.rows}:
        return last, []
    lifts = {offer: _lifts(search, offer, bad, worst) for offer in pool if offer.stage <= last}
    for stage in range(last + 1):
        sets = []
        done: list[frozenset[str]] = []
        for members in _combinations(lifts, stage, bad):
            kinds = frozenset(offer.kind for offer in members)
            if any(smaller <= kinds for smaller in done):
                continue
            sized = _sized(search, members, worst)
            if sized is None:
                continue
            done.append(kinds)  # with more members it would be no better than next to it
            confirmed = None if _idle(search, sized) else _confirmed(search, sized, worst)
            if confirmed is not None:
                sets.append(confirmed)
            if len(sets) == MOST_SETS:
                break
        if sets:
            return stage, sets
    return last, []


def _lifts(search: _Search, offer: Offer, bad: set[int], worst: int) -> set[int]:
    """Bad rows that an offer lifts by itself at its strongest, and those to which several add up.

    A habit, a battery or a motor may add to such a row beside another alone; a part shows by itself
    whether it does anything there.
    """
    touched = set(offer.rows) & bad
    adding = touched & set(ADD_UP)
    if touched == adding and offer.stage != PARTS:
        return touched
    look = search.look({offer: len(offer.levels) - 1})
    if offer.stage == PARTS:
        adding &= _moved(search.base, look)
    return adding | {row for row in touched if look.ranks.get(row, 0) <= worst}


def _moved(base: Look, look: Look) -> set[int]:
    before = {row.criterion.id: (row.value, row.pessimistic) for row in base.rows}
    return {
        row.criterion.id
        for row in look.rows
        if (row.value, row.pessimistic) != before[row.criterion.id]
    }


def _combinations(
    lifts: Mapping[Offer, set[int]], stage: int, bad: set[int]
) -> Iterator[tuple[Offer, ...]]:
    """Of one to three offers up to a stage, with one of it, that together lift every bad row."""
    usable = [offer for offer in lifts if offer.stage <= stage and lifts[offer]]
    for size in range(1, MOST_MEMBERS + 1):
        for members in combinations(usable, size):
            lifted = set().union(*(lifts[offer] for offer in members))
            if bad <= lifted and any(offer.stage == stage for offer in members):
                yield members


def _sized(search: _Search, members: tuple[Offer, ...], worst: int) -> dict[Offer, int] | None:
    """The weakest levels that do it: all at their strongest first, then the dearest is eased.

    What grows adds mass, so that mass and trim are looked at only when all is as small as may be.
    """
    levels = {offer: len(offer.levels) - 1 for offer in members}
    if not search.does(levels, worst, HEAVY):
        return None
    for offer in sorted(members, key=lambda each: -each.stage):
        low, high = 0, levels[offer]
        while low < high:
            middle = (low + high) // 2
            if search.does(levels | {offer: middle}, worst, HEAVY):
                high = middle
            else:
                low = middle + 1
        levels[offer] = high
    return levels if search.does(levels, worst) else None


def _idle(search: _Search, levels: dict[Offer, int]) -> bool:
    """Whether few draws already tell that one member can be left out."""
    if len(levels) < 2:
        return False
    reached = search.look(levels).worst
    rests = ({each: levels[each] for each in levels if each is not left} for left in levels)
    return any(search.look(rest).worst <= reached for rest in rests)


def _confirmed(search: _Search, levels: dict[Offer, int], worst: int) -> RemedySet | None:
    """The set on all draws, one step stronger where few draws were too kind; none if it fails."""
    for _ in range(2):
        changes = tuple(offer.levels[level] for offer, level in levels.items())
        found = search.confirm(changes)
        if search.passes(found, search.whole, worst):
            return _minimal(search, changes, found)
        grown = {
            offer: level + 1 for offer, level in levels.items() if level + 1 < len(offer.levels)
        }
        if not grown:
            return None
        levels = levels | grown
    return None


def _minimal(search: _Search, changes: tuple[Change, ...], found: Look) -> RemedySet | None:
    """None where one member can be left out."""
    for left in range(len(changes) if len(changes) > 1 else 0):
        rest = changes[:left] + changes[left + 1 :]
        if search.confirm(rest).worst <= found.worst:
            return None
    told = tuple(change.told for change in changes)
    prices = [remedy.price for remedy in told]
    before = search.whole.ranks
    after = found.ranks
    asks = tuple(row for row, rank in after.items() if rank > before.get(row, 0))
    return RemedySet(
        remedies=told,
        word=found.word,
        mends=tuple(row for row, rank in after.items() if rank < before.get(row, 0)),
        asks=asks,
        asks_named=tuple(row.criterion.name for row in found.rows if row.criterion.id in asks),
        free=all(price == 0.0 for price in prices),
        price=None if None in prices else sum(price for price in prices if price is not None),
        typed=tuple(typed for change in changes for typed in change.typed),
        changes=changes,
        look=found,
    )
