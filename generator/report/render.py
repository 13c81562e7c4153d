"""How do results become one HTML for the screen and one for the PDF?"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Protocol, TypeVar

from markupsafe import Markup

from generator.report.contents import sections
from generator.report.packs import Pack
from generator.report.page import MotorPage, Page, Results
from generator.report.parts import Figure, Row, Section
from generator.report.sections.front import about, front, signatory
from generator.report.sections.reading import reading
from generator.report.template import environment, templates_folder
from generator.report.typeface import print_faces, screen_faces
from generator.verbatim import as_typed

PAPER = ("scale.css", "text.css", "tables.css", "figures.css", "front.css", "page.css")
SCREEN = (
    "scale.css", "text.css", "tables.css", "figures.css", "front.css", "screen.css", "print.css",
)  # fmt: skip
KEYED = re.compile(r'<(data|span) data-key="[^"]*" data-form="[^"]*"[^>]*>([^<]*)</\1>')
MARKS = re.compile(r' data-(?:key|form)="[^"]*"')
SAID = re.compile(r'<span data-key="[^"]*" data-form="sentence">(.*?)</span>', re.DOTALL)
POLICY = (
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; "
    "base-uri 'none'; form-action 'none'"
)


Made = TypeVar("Made")


class Stage(Protocol):
    """How a piece of a report is made: its name, and what makes it; nothing where that fails."""

    def __call__(self, name: str, make: Callable[[], Made], /) -> Made | None:
        """What was made."""


def plainly(_name: str, make: Callable[[], Made], /) -> Made | None:
    """A stage without a net: what fails there fails the whole."""
    return make()


@dataclass(frozen=True)
class Pages:
    """The report as HTML for the screen, as HTML for the drawing engine, and its charts."""

    html_screen: str
    html_print: str
    charts: dict[str, str]


def make_pages(results: Results, stage: Stage = plainly) -> Pages:
    """All pages of a report from its results, and from nothing else; each chart is a stage."""
    page = Page(results)
    cover, body = front(page), sections(page)
    first = (cover.figure,) if cover.figure else ()
    view = {"front": cover, "reading": reading(page), "title": "diesel or electric"}
    return _pages(page, "report.html", view, (body, first), stage)


def make_summary(results: Results, stage: Stage = plainly) -> Pages:
    """Page 1 alone."""
    page = Page(results)
    cover = front(page)
    first = (cover.figure,) if cover.figure else ()
    view = {"front": cover, "title": "diesel or electric"}
    return _pages(page, "summary.html", view, ((), first), stage)


def make_pack(results: Results, pack: Pack, stage: Stage = plainly) -> Pages:
    """The pages of one pack alone, likewise."""
    page = MotorPage(results)
    view = {
        "pack": pack, "about": (Row(Markup("To"), (Markup.escape(pack.reader),)),
                                *about(page, evidence=False)),
        "signatory": signatory(page), "title": pack.title,
    }  # fmt: skip
    return _pages(page, "pack.html", view, (pack.sections(page), ()), stage)


def _pages(
    page: Page,
    template: str,
    view: dict[str, Any],
    shown: tuple[tuple[Section, ...], tuple[Figure, ...]],
    stage: Stage,
) -> Pages:
    """Both copies of a document: for the screen, and for the drawing engine.

    ``shown``: its sections, and the figures that stand before them.
    """
    body, first = shown
    figures = (*first, *(each for section in body for part in section.parts
                         for each in part.figures))  # fmt: skip
    drawn = [(each, stage(f"the chart {each.name}", each.draw)) for each in figures]
    screen = {each.name: made and made.in_page(each.alt) for each, made in drawn}
    paper = {each.name: made and made.as_picture(each.alt) for each, made in drawn}
    view = view | {"sections": {section.name: section for section in body}}
    on_screen = {
        "pictures": screen, "style": screen_faces() + _style(SCREEN), "policy": POLICY,
        "screen": True,
    }  # fmt: skip
    style = print_faces() + _style(PAPER) + _draft(page)
    on_paper = {"pictures": paper, "style": style, "policy": "", "screen": False}
    return Pages(
        _render(page, template, view | on_screen),
        _unkeyed(_render(page, template, view | on_paper)),
        {each.name: made.svg for each, made in drawn if made},
    )


def _render(page: Page, template: str, view: dict[str, Any]) -> str:
    every = view | {
        "page": page, "case": page.value("case"), "boat": page.value("boat"),
        "style": Markup(view["style"]), "policy": Markup(view["policy"]),
        "version": page.value("tool_version"),
    }  # fmt: skip
    return as_typed(environment().get_template(template).render(every))


def _unkeyed(html: str) -> str:
    """Without the keys of the numbers.

    On paper nobody reads them, and the drawing engine breaks a line too early in front of an
    inline element that no longer fits.
    """
    return SAID.sub(r"\1", KEYED.sub(r"\2", html))


def shipped(html: str) -> str:
    """The page for the screen without the marks by which tests find its numbers."""
    return MARKS.sub("", _unkeyed(html))


def _style(names: tuple[str, ...]) -> str:
    folder = templates_folder() / "style"
    return "".join((folder / name).read_text(encoding="utf-8") for name in names)


def _draft(page: Page) -> str:
    return _style(("draft.css",)) if page.value("case.draft") else ""
