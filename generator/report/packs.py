"""Which packs can be written alone, and what does each hold? None of them a price or a reason."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from generator.report.page import Page
from generator.report.parts import Part, Section
from generator.report.sections import (
    bounds,
    cautions,
    change,
    failing,
    handover,
    insurer,
    manual,
    propeller,
    weight,
    wiring,
    yard,
)

# of results.json, for the spreadsheet tables beside a pack: names that hold no money
TABLES = ("weight_", "installation_", "failures", "spares", "documents", "certificates", "handover")

Parts = tuple[Part | None, ...]


@dataclass(frozen=True)
class Pack:
    """A pack: its name on the command line, its title, its reader, and what is in it."""

    name: str
    title: str
    reader: str
    sections: Callable[[Page], tuple[Section, ...]]


def packs() -> dict[str, Pack]:
    """All packs by name."""
    every = (
        Pack("yard", "Yard pack", "For the yard that quotes", _yard),
        Pack("insurer", "Insurer pack", "For insurer and surveyor", _insurer),
    )
    return {pack.name: pack for pack in every}


def _yard(page: Page) -> tuple[Section, ...]:
    if not page.motors:
        return _nothing(page)
    return (
        _titled(page, "scope", "Scope", (change.part(page), *yard.parts(page))),
        _titled(page, "wiring", "Direct-current installation", wiring.parts(page)),
        _titled(page, "masses", "Masses and drive", (weight.part(page), propeller.part(page))),
        _titled(page, "risks", "Single failures", failing.annex(page)),
        _titled(page, "tests", "Tests and manuals", (handover.part(page), manual.part(page))),
        _titled(page, "limits", "Limits", (bounds.part(page),)),
    )


def _insurer(page: Page) -> tuple[Section, ...]:
    if not page.motors:
        return _nothing(page)
    papers = insurer.parts(page)
    return (
        _titled(page, "scope", "What changes, and what is asked", (change.part(page), *papers)),
        _titled(page, "wiring", "Direct-current installation", wiring.parts(page)),
        _titled(page, "risks", "Single failures", failing.annex(page)),
        _titled(page, "cautions", "Cautions", cautions.parts(page)),
        _titled(page, "tests", "Tests and manuals", (handover.part(page), manual.part(page))),
        _titled(page, "limits", "Limits", (bounds.part(page),)),
    )  # fmt: skip


def _nothing(page: Page) -> tuple[Section, ...]:
    lead = page.text("No option of {boat.name|given} has a propulsion battery: nothing to quote.")
    return (Section("scope", "Scope", (), lead),)


def _titled(page: Page, name: str, title: str, parts: Parts) -> Section:
    return Section(name, title, tuple(part for part in parts if part), page.text(""))
