"""Which documents may this conversion be held against, what papers and tests does it need?"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.motion.power import KNOT
from generator.tables.load import read_table

LITHIUM, LEAD = ("LFP", "NMC"), ("AGM", "flooded")
EUROPE = ("EEA", "GB", "NI")
CONFORMITY_MARKETS = {"EEA": ("EEA", "NI"), "GB": ("GB",), "Europe": EUROPE}


@dataclass(frozen=True)
class Document:
    """One document by name; what it asks is never told here."""

    designation: str
    edition: str  # the last one heard of; empty: not known
    title: str
    concerns: str


@dataclass(frozen=True)
class Certificate:
    """One paper to be obtained: what it shows, and who gives it."""

    paper: str
    shows: str
    by: str


@dataclass(frozen=True)
class HandoverTest:
    """One test when the drive is handed over."""

    test: str
    key: str  # below the option in the results, of what it is compared with; empty: a list
    form: str  # how that number is shown
    speed: float | None  # m/s at which a curve is read
    accept: str


@dataclass(frozen=True)
class Papers:
    """All lists, as far as they concern this boat."""

    documents: tuple[Document, ...]
    certificates: tuple[Certificate, ...]
    tests: tuple[HandoverTest, ...]


def papers(options: tuple[Findings, ...]) -> Papers:
    """The lists of all battery options together; empty without one."""
    banks = {found.option.bank.chemistry for found in options if found.option.bank is not None}
    if not banks:
        return Papers((), (), ())
    market = options[0].case.boat.market

    def holds(when: str) -> bool:
        if when in ("lithium", "lead"):
            return bool(banks & set(LITHIUM if when == "lithium" else LEAD))
        return when == "any" or market in CONFORMITY_MARKETS[when]

    return Papers(_documents(holds), _certificates(holds), _tests())


def _documents(holds: Callable[[str], bool]) -> tuple[Document, ...]:
    table = read_table("rules/documents")
    names = ("designation", "edition", "title", "concerns", "when")
    rows = zip(*(table.text(name) for name in names), strict=True)
    return tuple(Document(*row[:4]) for row in rows if holds(row[4]))


def _certificates(holds: Callable[[str], bool]) -> tuple[Certificate, ...]:
    table = read_table("rules/certificates")
    rows = zip(*(table.text(name) for name in ("paper", "shows", "by", "when")), strict=True)
    return tuple(Certificate(*row[:3]) for row in rows if holds(row[3]))


def _tests() -> tuple[HandoverTest, ...]:
    table = read_table("rules/commissioning")
    texts = zip(*(table.text(name) for name in ("test", "key", "form", "accept")), strict=True)
    return tuple(
        HandoverTest(test, key, form, None if np.isnan(speed) else float(speed) * KNOT, accept)
        for (test, key, form, accept), speed in zip(texts, table.columns["speed"], strict=True)
    )
