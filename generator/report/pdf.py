"""How does the HTML become a tagged PDF, with whatever the drawing engine had to say?"""

from __future__ import annotations

import ctypes.util
import gc
import logging
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING, Any

from generator.errors import EngineError
from generator.report.typeface import face

if TYPE_CHECKING:
    from weasyprint.urls import URLFetcher

HINT = (
    "the PDF needs Pango: on Debian or Ubuntu `apt-get install libpango-1.0-0 "
    "libpangoft2-1.0-0 libharfbuzz-subset0`"
)
DRAFT = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 210 297" width="210mm" height="297mm">'
    '<text x="105" y="160" text-anchor="middle" transform="rotate(-54 105 148)" '
    "style=\"font-family: 'Fairlead Sans'; font-size: 66px; font-weight: 700\" "
    'fill="#f2f5f7">DRAFT</text></svg>'
)


@dataclass(frozen=True)
class PdfResult:
    """The PDF, each line that the drawing engine logged, and the number of pages."""

    bytes: bytes
    log_lines: tuple[str, ...]
    pages: int


@dataclass(frozen=True)
class Attached:
    """A file inside the PDF: its name, what it is, and what it is to the report."""

    name: str
    content: bytes
    said: str
    relationship: str  # Source, Data
    day: str  # ISO 8601: no clock enters the paper


def make_pdf(
    html_print: str, charts: dict[str, str], attached: tuple[Attached, ...] = ()
) -> PdfResult:
    """Set the print HTML as a PDF made to PDF/UA-1; nothing is fetched but from memory."""
    engine = _engine()
    with _logged() as lines, _no_collection():
        document = engine(string=html_print, url_fetcher=_memory(charts)).render()
        document.metadata.attachments += [_attachment(each) for each in attached]
        packed = document.write_pdf(pdf_variant="pdf/ua-1", finisher=_finish)
    return PdfResult(packed, tuple(lines), len(document.pages))


def _attachment(each: Attached) -> Any:
    from weasyprint import Attachment

    day = datetime.fromisoformat(each.day)
    return Attachment(
        string=each.content, name=each.name, description=each.said, created=day, modified=day,
        relationship=each.relationship,
    )  # fmt: skip


def _engine() -> Any:
    try:
        with _no_search():
            from weasyprint import HTML
    except OSError as cause:
        raise EngineError(HINT) from cause
    return HTML


@contextmanager
def _no_search() -> Iterator[None]:
    """Without a search for libraries by half a name while the engine is imported.

    It asks for each by several names, and on Linux every name that no file bears starts two
    compilers and a linker to look for it; the full name, which it asks for as well, needs none.
    Elsewhere the search is cheap and needed.
    """
    searched = ctypes.util.find_library
    if sys.platform == "linux":
        ctypes.util.find_library = lambda name: None
    try:
        yield
    finally:
        ctypes.util.find_library = searched


def _memory(charts: dict[str, str]) -> URLFetcher:
    """A fetcher that knows charts, faces and the draft mark, and refuses all else."""
    from weasyprint.urls import URLFetcher, URLFetcherResponse

    def held(url: str) -> tuple[bytes, str] | None:
        kind, _, name = url.partition(":")
        if kind == "chart" and name in charts:
            return charts[name].encode(), "image/svg+xml"
        if kind == "font":
            return face(name), "font/ttf"
        return (DRAFT.encode(), "image/svg+xml") if url == "mark:draft" else None

    class Memory(URLFetcher):  # type: ignore[misc,unused-ignore]
        def fetch(self, url: str, headers: dict[str, str] | None = None) -> Any:
            found = held(url)
            if found is None:
                return super().fetch(url, headers)
            return URLFetcherResponse(url, found[0], {"Content-Type": found[1]})

    return Memory(allowed_protocols=set(), fail_on_errors=True)


def _finish(_document: Any, pdf: Any) -> None:
    """Say what WeasyPrint leaves out: which way a header points, and that links print."""

    def target(reference: str) -> Any:
        return pdf.objects[int(reference.split()[0])]

    for entry in pdf.objects:
        if not isinstance(entry, dict):
            continue
        if entry.get("S") == "/TH":
            group = target(target(entry["P"])["P"])
            entry["A"]["Scope"] = "/Column" if group.get("S") == "/THead" else "/Row"
        if entry.get("Subtype") == "/Link":
            entry["F"] = 4


class _Lines(logging.Handler):
    """Keeps every line of a logger."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.lines: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.lines.append(f"{record.levelname}: {record.getMessage()}")


@contextmanager
def _logged() -> Iterator[list[str]]:
    """The lines of the drawing engine, kept from the user's terminal."""
    handler, loggers = _Lines(), [logging.getLogger(name) for name in ("weasyprint", "fontTools")]
    before = [(logger.propagate, logger.handlers) for logger in loggers]
    for logger in loggers:
        logger.propagate, logger.handlers = False, [handler]
    try:
        yield handler.lines
    finally:
        for logger, (propagate, handlers) in zip(loggers, before, strict=True):
            logger.propagate, logger.handlers = propagate, handlers


@contextmanager
def _no_collection() -> Iterator[None]:
    """Without the garbage collector, which costs a tenth of the time here and frees nothing."""
    running = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if running:
            gc.enable()
