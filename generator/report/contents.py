"""Which questions does the report answer, in which order, and what stands under each?"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Section
from generator.report.sections import (
    aboard,
    annexes,
    boat,
    cautions,
    certainty,
    charge,
    conditions,
    criteria,
    failing,
    money,
    options,
    propeller,
    technical,
    technical_store,
    trips,
    wind,
)
from generator.report.template import pieces

TITLES = "sections/titles.html"


@dataclass(frozen=True)
class Question:
    """A section of the report: its name, by which its title is found, and its parts."""

    name: str
    parts: Callable[[Page], Iterable[Part | None]]
    lead: Callable[[Page], Markup] = lambda _page: Markup("")


BODY = (
    Question("boat", boat.parts, boat.lead),
    Question("options", options.parts, options.lead),
    Question("trips", trips.parts),
    Question("wind", wind.parts),
    Question("charge", charge.parts),
    Question("aboard", aboard.parts),
    Question("money", money.parts),
    Question("failing", failing.parts),
    Question("certainty", certainty.parts),
    Question("conditions", conditions.parts),
    Question("cautions", cautions.parts, cautions.lead),
    Question("annexes", annexes.parts),
)
TECHNICAL = Question(
    "technical",
    lambda page: (
        *technical.motion(page),
        propeller.part(page),
        technical.stream(page),
        technical_store.bank(page),
        technical_store.duty(page),
        technical_store.chemistries(page),
        technical_store.losses(page),
        failing.string_lost(page),
        technical.under_sail(page),
        technical.forms(page),
        technical_store.whole_bank(page),
        money.swing(page),
        certainty.outside(page),
        criteria.every(page),
        *technical.closing(page),
    ),
)


def sections(page: Page) -> tuple[Section, ...]:
    """All sections after the front page, in reading order; the technical appendix is the last."""
    return tuple(_section(page, each) for each in (*BODY, TECHNICAL))


def _section(page: Page, question: Question) -> Section:
    parts = tuple(each for each in question.parts(page) if each is not None and _holds(each))
    title = str(pieces(TITLES, question.name)()).strip()
    return Section(question.name, title, parts, question.lead(page))


def _holds(part: Part) -> bool:
    """Whether there is anything in a part."""
    return bool(part.text or part.figures or part.tables or part.opening or part.body
                or part.closing)  # fmt: skip
