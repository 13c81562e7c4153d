"""Where do the files of one report go, so that a folder is always whole?"""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, TypeVar

from generator.report.csv_tables import csv_tables
from generator.report.manifest import owners_files, read_manifest, write_manifest
from generator.report.packs import TABLES, Pack
from generator.report.pdf import Attached, PdfResult, make_pdf
from generator.report.render import Pages, make_pack, make_pages, make_summary, shipped
from generator.report.results_file import to_json

PARTS = ("tables", "figures")
INCOMPLETE = "-incomplete"
NAMED = 3  # of the owner's files, in one message
Made = TypeVar("Made")


@dataclass(frozen=True)
class Lack:
    """What could not be made, and what stood against it."""

    what: str
    reason: Exception


@dataclass(frozen=True)
class Written:
    """What became of one report."""

    folder: Path
    engine_log: tuple[str, ...]  # anything the drawing engine complained of
    lacks: tuple[Lack, ...]  # what is not in it; nothing when it is whole


@dataclass
class Net:
    """Goes on with the next stage where one breaks down, and keeps what it broke down with.

    The one place that catches everything. Minutes of study stand in the results before the first
    chart is drawn, and a defect in showing them must not take them along. Nothing is hidden: each
    lack is told, the exit code says so, and `python -X dev` shows its traceback.
    """

    lacks: list[Lack] = field(default_factory=list)

    def stage(self, what: str, make: Callable[[], Made], /) -> Made | None:
        """What a stage makes, or nothing."""
        try:
            return make()
        except Exception as error:
            self.lacks.append(Lack(what, error))
            return None


Act = Callable[[Path, Net], tuple[str, ...]]


def write_report(
    results: dict[str, Any], folder: Path, case_file: bytes | None = None, attach: bool = False
) -> Written:
    """Write all files beside the folder first, then swap them in whole.

    A set that lacks anything goes to a folder of its own, and leaves an older report of the same
    name as it was. ``attach`` puts the results into the PDF, and the case file where one is given.
    """
    inside = _attached(results, case_file) if attach else ()
    return _written(folder, lambda staging, net: _report(results, staging, net, inside))


def write_summary(results: dict[str, Any], folder: Path) -> Written:
    """Page 1 alone, for the client's hand."""
    return _written(folder, lambda staging, net: _summary(results, staging, net))


def _summary(results: dict[str, Any], staging: Path, net: Net) -> tuple[str, ...]:
    pages = net.stage("summary.html and summary.pdf", lambda: make_summary(results, net.stage))
    return write_pages("summary", pages, {}, staging, net)


def _attached(results: dict[str, Any], case_file: bytes | None) -> tuple[Attached, ...]:
    """What a reader can compute with: the results, and the case that they come from."""
    case, day = results["case"], str(results["case"]["date"])
    found = [
        Attached("results.json", to_json(results).encode(), "All results", "Data", day),
    ]
    if case_file is not None:
        found.insert(0, Attached(case["file"], case_file, "The case file", "Source", day))
    return tuple(found)


def write_pack(results: dict[str, Any], pack: Pack, folder: Path) -> Written:
    """The files of one pack, likewise; the results themselves stay away, they hold prices."""
    return _written(folder, lambda staging, net: _pack(results, pack, staging, net))


def _report(
    results: dict[str, Any], staging: Path, net: Net, inside: tuple[Attached, ...]
) -> tuple[str, ...]:
    write_texts({"results.json": to_json(results)}, staging)
    tables = net.stage("tables", lambda: csv_tables(results))
    pages = net.stage("report.html and report.pdf", lambda: make_pages(results, net.stage))
    return write_pages("report", pages, tables or {}, staging, net, inside)


def _pack(results: dict[str, Any], pack: Pack, staging: Path, net: Net) -> tuple[str, ...]:
    every = net.stage("tables", lambda: csv_tables(results, batteries_only=True)) or {}
    tables = {name: text for name, text in every.items() if name.startswith(TABLES)}
    what = f"{pack.name}.html and {pack.name}.pdf"
    pages = net.stage(what, lambda: make_pack(results, pack, net.stage))
    return write_pages(pack.name, pages, tables, staging, net)


def write_pages(
    name: str,
    pages: Pages | None,
    tables: dict[str, str],
    staging: Path,
    net: Net,
    inside: tuple[Attached, ...] = (),
) -> tuple[str, ...]:
    """Tables, charts, page and paper, as far as they could be made; what the engine said."""
    for part in PARTS:
        (staging / part).mkdir()
    write_texts({f"tables/{key}.csv": text for key, text in tables.items()}, staging)
    if pages is None:
        return ()
    write_texts({f"figures/{key}.svg": text for key, text in pages.charts.items()}, staging)
    write_texts({f"{name}.html": shipped(pages.html_screen)}, staging)
    paper = f"{name}.pdf"
    made = net.stage(paper, lambda: make_pdf(pages.html_print, pages.charts, inside))
    if made is None:
        return ()
    (staging / paper).write_bytes(made.bytes)
    net.lacks += _not_set(made, paper)
    return made.log_lines


def _not_set(made: PdfResult, paper: str) -> list[Lack]:
    """Charts that the drawing engine left out, which it only logs."""
    lines = [line for line in made.log_lines if line.startswith("ERROR") and "chart:" in line]
    return [Lack(f"a chart in {paper}", ValueError(line)) for line in lines]


def _written(folder: Path, act: Act) -> Written:
    refuse_foreign(folder)
    folder.parent.mkdir(parents=True, exist_ok=True)
    staging = folder.parent / f".{folder.name}-{os.getpid()}"
    shutil.rmtree(staging, ignore_errors=True)  # left by a killed run that had the same number
    staging.mkdir()
    net = Net()
    incomplete = folder.with_name(folder.name + INCOMPLETE)
    try:
        log = act(staging, net)
        write_manifest(staging, whole=not net.lacks)
        place = incomplete if net.lacks else folder
        swap_in(staging, place, whole=not net.lacks)
    finally:
        shutil.rmtree(staging, ignore_errors=True)
    if not net.lacks:
        drop_incomplete(incomplete)
    return Written(place, log, tuple(net.lacks))


def refuse_foreign(folder: Path) -> None:
    """Stop before replacing anything that we did not write, or that its owner changed since."""
    if folder.is_symlink() or (folder.exists() and not folder.is_dir()):
        raise FileExistsError(f"{folder} is there and is not a folder")
    foreign = [_printable(name) for name in owners_files(folder)]
    if foreign:
        more = f" and {len(foreign) - NAMED} more" if len(foreign) > NAMED else ""
        raise FileExistsError(
            f"{folder} holds what this tool did not write, or what was changed since: "
            f"{', '.join(foreign[:NAMED])}{more}; move that away or choose another --out"
        )


def _printable(name: str) -> str:
    return "".join(letter if letter.isprintable() else "?" for letter in name)


def write_texts(texts: dict[str, str], folder: Path) -> None:
    """The texts by file name."""
    for name, text in texts.items():
        (folder / name).write_text(text, encoding="utf-8", newline="\n")


def swap_in(staging: Path, folder: Path, whole: bool) -> None:
    """Put the new folder in the place of the old one; the old one returns if that fails."""
    refuse_foreign(folder)  # again: time has passed since
    if not whole and is_whole(folder):
        raise FileExistsError(f"{folder} holds a whole report, of a case of that name")
    old = staging.with_name(f"{staging.name}-old")
    if folder.exists():
        shutil.rmtree(old, ignore_errors=True)
        folder.rename(old)
    try:
        staging.rename(folder)
    except OSError:
        if old.exists():
            old.rename(folder)
        raise
    shutil.rmtree(old, ignore_errors=True)


def is_whole(folder: Path) -> bool:
    """Whether a folder holds a set that is not marked as lacking something."""
    manifest = read_manifest(folder)
    return manifest.whole if manifest else folder.is_dir() and any(folder.iterdir())


def drop_incomplete(folder: Path) -> None:
    """Remove what an earlier run could not make whole, if nothing else lies there."""
    ours = folder.is_dir() and not folder.is_symlink() and not owners_files(folder)
    if ours and not is_whole(folder):
        shutil.rmtree(folder, ignore_errors=True)
