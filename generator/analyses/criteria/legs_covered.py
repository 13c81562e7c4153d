"""Criterion 2: what share of the owner's legs lies inside the range to the reserve?"""

from __future__ import annotations

from generator.analyses.criteria.criterion import (
    GO,
    NOT_APPLICABLE,
    Criterion,
    Judgement,
)
from generator.analyses.findings import Findings
from generator.analyses.leg_help import LegHelp
from generator.analyses.power import KNOT
from generator.analyses.spread import scalar, spread

KWH, LITRE = 3.6e6, 1e-3
MOST_NAMED = 2  # legs named in a reason; all stand in the table


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """Passages of a year whose energy above the reserve is at least their need."""
    covered = found.use.coverage
    if covered is None:
        why = "no passage of this boat is motored"
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, why, "")
    told = spread(covered.legs)
    low = scalar(told.low)
    result = criterion.judge(low)
    numbers = {
        "low_share": low,
        "miles_share": scalar(spread(covered.miles).low),
        "slow_share": scalar(spread(covered.legs_slow).low),
        "passages": covered.passages,
    }
    why = (
        "{here.low_share|share} of {here.passages|count} passages a year and "
        "{here.miles_share|share} of their miles fit at the owner's speed, at the pessimistic "
        "end; {here.slow_share|share} at the most economical speed"
    )
    if result != GO:
        names = [found.legs.results[item.place].leg.name for item in found.use.help]
        more = f" and {len(names) - MOST_NAMED} more" if len(names) > MOST_NAMED else ""
        why += f"; not {', '.join(names[:MOST_NAMED])}{more}"
    flip = ""
    if result != GO:
        flip, numbers = _flip(found, numbers)
    return Judgement(
        criterion,
        scalar(told.middle),
        low,
        "-",
        result,
        why,
        flip,
        numbers=numbers,
        per_draw=covered.legs,
    )


def _flip(found: Findings, numbers: dict[str, float]) -> tuple[str, dict[str, float]]:
    """The cheapest way of the failing leg that is made most often."""
    if not found.use.help:
        return "", numbers
    often = max(found.use.help, key=lambda item: _times(found, item))
    text, more = way(found, often)
    return f"{found.legs.results[often.place].leg.name}: {text}", numbers | more


def _times(found: Findings, item: LegHelp) -> float:
    return scalar(spread(found.legs.results[item.place].leg.times_per_year).middle)


def way(found: Findings, item: LegHelp) -> tuple[str, dict[str, float]]:
    """The cheapest way in words, with its number."""
    if item.cheapest == "slower" and item.slower is not None:
        return "at {here.flip_kn|speed} through the water", {"flip_kn": item.slower / KNOT}
    if item.cheapest == "tide" and item.stream is not None:
        text = "with no more than {here.flip_kn|speed} of foul stream"
        return text, {"flip_kn": item.stream / KNOT}
    if item.cheapest == "wind" and item.wind is not None:
        return "with no more than {here.flip_kn|wind} on the nose", {"flip_kn": item.wind / KNOT}
    if item.cheapest == "charge" and item.charge is not None:
        return "{here.flip_kwh|energy} charged on the way", {"flip_kwh": item.charge / KWH}
    if item.cheapest == "bank" and item.nominal is not None:
        if found.option.bank is None:
            return "a tank of {here.flip_l|fuel}", {"flip_l": item.nominal / LITRE}
        return "a bank of {here.flip_kwh|energy} nominal", {"flip_kwh": item.nominal / KWH}
    return "more continuous power", {}
