"""Where do the files of one report go, so that a folder is always whole?"""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from generator.errors import EngineError
from generator.report.csv_tables import csv_tables
from generator.report.packs import TABLES, Pack
from generator.report.pdf import make_pdf
from generator.report.render import Pages, make_pack, make_pages
from generator.report.results_file import to_json

OURS = frozenset({"report.html", "report.pdf", "results.json", "tables", "figures"})
OF_PACK = ("tables", "figures")  # beside the two files of a pack, which bear its name


@dataclass(frozen=True)
class Written:
    """What became of one report."""

    folder: Path
    engine_log: tuple[str, ...]  # anything the drawing engine complained of
    lacks: str  # why there is no PDF; empty when there is one


def write_report(results: dict[str, Any], folder: Path) -> Written:
    """Write all files beside the folder first, then swap them in whole.

    Whatever fails on the way leaves an older report of the same name as it was.
    """
    return _written(folder, OURS, lambda staging: _report(results, staging))


def write_pack(results: dict[str, Any], pack: Pack, folder: Path) -> Written:
    """The files of one pack, likewise; the results themselves stay away, they hold prices."""
    ours = frozenset({f"{pack.name}.html", f"{pack.name}.pdf", *OF_PACK})
    return _written(folder, ours, lambda staging: _pack(results, pack, staging))


def _report(results: dict[str, Any], staging: Path) -> tuple[tuple[str, ...], str]:
    pages = make_pages(results)
    texts = {"report.html": pages.html_screen, "results.json": to_json(results)}
    write_texts(texts, csv_tables(results), pages, staging)
    return write_pdf(pages, staging / "report.pdf")


def _pack(results: dict[str, Any], pack: Pack, staging: Path) -> tuple[tuple[str, ...], str]:
    pages = make_pack(results, pack)
    every = csv_tables(results, batteries_only=True)
    tables = {name: text for name, text in every.items() if name.startswith(TABLES)}
    write_texts({f"{pack.name}.html": pages.html_screen}, tables, pages, staging)
    return write_pdf(pages, staging / f"{pack.name}.pdf")


def _written(
    folder: Path, ours: frozenset[str], act: Callable[[Path], tuple[tuple[str, ...], str]]
) -> Written:
    refuse_foreign(folder, ours)
    folder.parent.mkdir(parents=True, exist_ok=True)
    staging = folder.parent / f".{folder.name}-{os.getpid()}"
    shutil.rmtree(staging, ignore_errors=True)  # left by a killed run that had the same number
    staging.mkdir()
    try:
        log, lacks = act(staging)
        swap_in(staging, folder)
    finally:
        shutil.rmtree(staging, ignore_errors=True)
    return Written(folder, log, lacks)


def refuse_foreign(folder: Path, ours: frozenset[str] = OURS) -> None:
    """Stop before replacing anything that no report of ours can be."""
    if folder.is_symlink() or (folder.exists() and not folder.is_dir()):
        raise FileExistsError(f"{folder} is there and is not a folder")
    foreign = sorted(item.name for item in folder.iterdir()) if folder.exists() else []
    foreign = [name for name in foreign if name not in ours]
    if foreign:
        raise FileExistsError(
            f"{folder} holds what no report does: {', '.join(foreign[:3])}; "
            "move that away or choose another --out"
        )


def write_texts(texts: dict[str, str], tables: dict[str, str], pages: Pages, folder: Path) -> None:
    """The texts by file name, the tables and the figures."""
    for part in OF_PACK:
        (folder / part).mkdir()
    texts = {
        **texts,
        **{f"tables/{name}.csv": text for name, text in tables.items()},
        **{f"figures/{name}.svg": text for name, text in pages.charts.items()},
    }
    for name, text in texts.items():
        (folder / name).write_text(text, encoding="utf-8", newline="\n")


def write_pdf(pages: Pages, path: Path) -> tuple[tuple[str, ...], str]:
    """The paper form; without its drawing engine the reason why there is none."""
    try:
        result = make_pdf(pages.html_print, pages.charts)
    except EngineError as error:
        return (), str(error)
    path.write_bytes(result.bytes)
    return result.log_lines, ""


def swap_in(staging: Path, folder: Path) -> None:
    """Put the new folder in the place of the old one; the old one returns if that fails."""
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
