"""Which questions does the report answer, in which order, and what stands under each?"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Section
from generator.report.sections import (
    annexes,
    appendix,
    bank,
    bank_ages,
    berth,
    boat,
    carbon,
    cautions,
    chemistries,
    cost,
    criteria,
    cruising_range,
    docking,
    duty,
    floating,
    headwind,
    installation,
    known,
    legs,
    losses,
    low_speed,
    one_fault,
    options,
    placement,
    power,
    propeller,
    risks,
    stream,
    tornado,
    under_sail,
    weight,
    year,
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
    Question("trips", lambda page: (cruising_range.part(page), legs.part(page))),
    Question("wind", lambda page: (headwind.part(page), docking.part(page), stream.gates(page))),
    Question("charge", lambda page: (berth.part(page), year.part(page))),
    Question("aboard", lambda page: (weight.part(page), floating.part(page), placement.part(page))),
    Question("money", lambda page: (cost.part(page), carbon.part(page))),
    Question("failing", lambda page: (*risks.parts(page), *one_fault.parts(page)), risks.lead),
    Question(
        "certainty",
        lambda page: (installation.trial(page), known.part(page), tornado.part(page)),
    ),
    Question("conditions", criteria.parts),
    Question("cautions", cautions.parts, cautions.lead),
    Question("annexes", annexes.parts),
)
TECHNICAL = Question(
    "technical",
    lambda page: (
        power.part(page),
        low_speed.part(page),
        installation.service(page),
        propeller.part(page),
        stream.part(page),
        bank.part(page),
        *bank_ages.parts(page),
        *chemistries.parts(page),
        *duty.parts(page),
        *losses.parts(page),
        under_sail.part(page),
        criteria.every(page),
        *appendix.parts(page),
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
