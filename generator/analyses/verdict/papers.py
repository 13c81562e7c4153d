"""Which documents may this conversion be held against, what papers and tests does it need?"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import field

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.power import KNOT
from generator.analyses.verdict.spares import SPARES, Spare
from generator.records import number, record
from generator.tables.load import read_table

LITHIUM, LEAD = ("LFP", "NMC"), ("AGM", "flooded")
EUROPE = ("EEA", "GB", "NI")
CONFORMITY_MARKETS = {"EEA": ("EEA", "NI"), "GB": ("GB",), "Europe": EUROPE}


@record
class Document:
    """One document by name; what it asks is never told here."""

    designation: str
    edition: str | None  # the last one heard of; none: not known
    title: str
    concerns: str
    note: str = "verify current edition"


@record
class Certificate:
    """One paper to be obtained: what it shows, and who gives it."""

    paper: str
    shows: str
    by: str


@record
class HandoverTest:
    """One test when the drive is handed over."""

    test: str
    key: str | None  # below the option in the results, of what it is compared with; none: a list
    form: str | None  # how that number is shown
    accept: str
    speed: float | None = number("speed", "speed at which it is read")
    absent: Mapping[str, str] = field(default_factory=lambda: {"speed": "read_at_no_speed"})


@record
class Papers:
    """All lists, as far as they concern this boat."""

    documents: tuple[Document, ...]
    certificates: tuple[Certificate, ...]
    spares: tuple[Spare, ...]
    handover: tuple[HandoverTest, ...]


def papers(options: tuple[Findings, ...], fastest: float) -> Papers:
    """The lists of all battery options together; empty without one.

    ``fastest``: as far as the curves reach [m/s].
    """
    banks = {found.option.bank.chemistry for found in options if found.option.bank is not None}
    if not banks:
        return Papers((), (), (), ())
    market = options[0].case.boat.market

    def holds(when: str) -> bool:
        if when in ("lithium", "lead"):
            return bool(banks & set(LITHIUM if when == "lithium" else LEAD))
        return when == "any" or market in CONFORMITY_MARKETS[when]

    return Papers(_documents(holds), _certificates(holds), SPARES, _tests(fastest))


def _documents(holds: Callable[[str], bool]) -> tuple[Document, ...]:
    table = read_table("rules/documents")
    names = ("designation", "edition", "title", "concerns", "when")
    rows = zip(*(table.text(name) for name in names), strict=True)
    return tuple(
        Document(designation, edition or None, title, concerns)
        for designation, edition, title, concerns, when in rows
        if holds(when)
    )


def _certificates(holds: Callable[[str], bool]) -> tuple[Certificate, ...]:
    table = read_table("rules/certificates")
    rows = zip(*(table.text(name) for name in ("paper", "shows", "by", "when")), strict=True)
    return tuple(Certificate(*row[:3]) for row in rows if holds(row[3]))


def _tests(fastest: float) -> tuple[HandoverTest, ...]:
    """Those whose speed the curves reach."""
    table = read_table("rules/commissioning")
    texts = zip(*(table.text(name) for name in ("test", "key", "form", "accept")), strict=True)
    speeds = (None if np.isnan(speed) else float(speed) * KNOT for speed in table.columns["speed"])
    return tuple(
        HandoverTest(test, key or None, form or None, accept, speed)
        for (test, key, form, accept), speed in zip(texts, speeds, strict=True)
        if speed is None or speed <= fastest
    )
