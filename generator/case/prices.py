"""Prices: currency, energy, interest, years, and one line of a cost ledger."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from generator.arrays import Numbers

# What a payment is for; the words by which a name tells it, where the case does not say.
PARTS = {
    "sale": ("sale of", "sold", "resale"),
    "grant": ("grant", "subsidy"),
    "assessment": ("assessment", "post-construction", "notified body", "approved body"),
    "overhaul": ("overhaul", "rebuild"),
    "labour": ("labour", "labor", "installer", "yard work"),
    "haul-out": ("haul", "crane", "lift out", "launch"),
    "survey": ("survey",),
    "insurance": ("insurance", "premium"),
    "winter": ("winter", "lay-up"),
    "battery": ("battery", "batteries", "bank"),
    "motor": ("motor",),
    "electrics": ("cable", "fuse", "charger", "isolator", "converter", "panel"),
    "propeller": ("propeller", "shaft"),
    "engine": ("engine", "diesel"),
    "other": (),
}
# What charges beside the plug; the words by which a line of a ledger names it.
SOURCES = {
    "panels": ("panel", "solar"),
    "genset": ("genset", "charging machine", "diesel generator"),
    "wind generator": ("wind",),
}
CREDITS = ("sale", "grant")  # money that comes in: negative in the ledger
HARDWARE = ("engine", "motor")  # worth a share of their price at the end
BANK = "battery"


def part_by_name(name: str) -> str:
    """What a payment is for by the words of its name; the table of cost prints what was read."""
    said = name.lower()
    found = (part for part, words in PARTS.items() if any(word in said for word in words))
    return next(found, "other")


def parts_by_name(name: str) -> set[str]:
    """All that the words of a name speak of: an enquiry and survey is a survey too."""
    said = name.lower()
    return {part for part, words in PARTS.items() if any(word in said for word in words)}


def sources_without(sources: Iterable[str], names: Iterable[str]) -> tuple[str, ...]:
    """The sources of energy, words of SOURCES, of which no line of a ledger bears the name."""
    said = [name.lower() for name in names]
    return tuple(
        source
        for source in sources
        if not any(word in name for name in said for word in SOURCES[source])
    )


@dataclass(frozen=True)
class CostItem:
    """One payment: ``first`` now, ``yearly``, or ``once`` in a year; credits are negative."""

    name: str
    amount: Numbers  # currency of the case
    when: str  # first, yearly, once
    year: Numbers | None  # for once
    source: str  # quote, estimate, register
    part: str  # what it pays for: a word of PARTS
    price_year: int | None  # of the money it is given in; absent: the year of the study
    vat: str  # included, to add
    doubted: bool  # has it a plus_minus of its own?
    line: int


@dataclass(frozen=True)
class Prices:
    """What energy and money cost. Currency of the case per J or m3; years."""

    currency: str
    diesel: Numbers  # per m3
    electricity: Numbers  # per J at the wall
    terms: str  # real: money of the year of the study; nominal: money of each year
    discount_rate: Numbers  # per year, in the same terms
    horizon: int  # years
    charging_efficiency: Numbers  # wall to battery terminals, and the battery's own loss
    diesel_service: Numbers  # per year
    electric_service: Numbers  # per year
    contingency: Numbers  # share of estimated first costs
    inflation: Numbers  # per year, of prices at large
    vat_rate: Numbers  # on amounts that are given without it
    quote_scale: Numbers  # what is paid over what was quoted
    diesel_trend: Numbers  # mean price over the horizon over today's
    electricity_trend: Numbers  # the same for electricity
    energy_correlation: Numbers  # of the two trends
    use_scale: Numbers  # engine hours of a year over those of the legs
    assessment: Numbers  # post-construction assessment
    overhaul: Numbers  # one overhaul of a diesel, when its time has come
    battery_later: Numbers  # price of a replaced bank over today's
    residual_share: Numbers  # worth of engine or motor at the end, of its price
