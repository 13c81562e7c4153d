"""Which arguments does `study` take, and which exit code does it give?

Libraries that are slow to import are imported inside the commands that need them.
"""

from __future__ import annotations

import gc
import os
import sys
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Annotated

import typer
from typer.main import get_command

from generator.errors import CaseError, Fault, StudyError
from generator.version import VERSION

# Before numpy is loaded: on arrays as small as these its threads cost a third of the time.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

if TYPE_CHECKING:
    from generator.case.case import Case
    from generator.report.write import Lack

DRAWS = 2000  # the 10th percentile then stands still to about one per cent
DONE, FAILED, CASE_AT_FAULT = 0, 1, 2
PARTS = ("yard", "insurer", "summary")  # what can be written alone

Cases = Annotated[list[Path], typer.Argument(metavar="CASE...", help="Case files (YAML).")]
Out = Annotated[Path, typer.Option("--out", metavar="DIR", help="Folder of the report folders.")]
Strict = Annotated[bool, typer.Option("--strict", help="Treat warnings as faults.")]
NoPrices = Annotated[
    bool, typer.Option("--no-prices", help="Write DIR/<case>-no-prices/, a copy without prices.")
]
Part = Annotated[
    str, typer.Option("--part", metavar="PACK", help="That alone: yard, insurer or summary.")
]
NoAttachments = Annotated[
    bool, typer.Option("--no-attachments", help="Leave case and results out of the PDF.")
]
Version = Annotated[bool, typer.Option("--version", help="Print the version and stop.")]

app = typer.Typer(
    add_completion=False,
    rich_markup_mode=None,  # plain help needs no further import
    pretty_exceptions_enable=False,
)


@app.callback(invoke_without_command=True)
def study(context: typer.Context, version: Version = False) -> None:
    """Should a sailing boat's diesel auxiliary go electric, with which motor and bank?"""
    if version:
        typer.echo(f"study {VERSION}")
    elif context.invoked_subcommand is None:
        typer.echo(context.get_help())


@app.command()
def report(
    cases: Cases,
    out: Out = Path("out"),
    strict: Strict = False,
    no_prices: NoPrices = False,
    part: Part = "",
    no_attachments: NoAttachments = False,
) -> None:
    """Write DIR/<case>/ with report.html, report.pdf, results.json, tables and figures.

    With --part yard or --part insurer, DIR/<case>-yard/ or DIR/<case>-insurer/ with that annex
    alone, without prices; with --part summary, DIR/<case>-summary/ with page 1 alone.
    """
    if part not in ("", *PARTS):
        say(f"study: --part {part}: there is no such pack, expected {' or '.join(PARTS)}")
        raise typer.Exit(CASE_AT_FAULT)
    stems = Counter(stem for _, stem in {(os.path.realpath(path), path.stem) for path in cases})
    shared = sorted(stem for stem, count in stems.items() if count > 1)
    if shared:
        say(f"study: more than one case would be written to {out / shared[0]}: run them apart")
        raise typer.Exit(FAILED)
    wanted = Wanted(out, strict, no_prices, part, not no_attachments)
    raise typer.Exit(for_each(cases, lambda path: report_one(path, wanted)))


@app.command()
def check(cases: Cases, strict: Strict = False) -> None:
    """Print the faults and warnings of case files, and write nothing."""
    raise typer.Exit(for_each(cases, lambda path: check_one(path, strict)))


@dataclass(frozen=True)
class Wanted:
    """What a report is asked to be."""

    out: Path
    strict: bool = False
    no_prices: bool = False
    part: str = ""
    attach: bool = True


def report_one(path: Path, wanted: Wanted) -> int:
    """Read, study, write; the exit code of one case."""
    case = accepted_case(path, wanted.strict)
    case_file = path.read_bytes()

    from generator.answer.answer import answer
    from generator.draws import make_draws
    from generator.report.packs import packs
    from generator.report.results_file import build
    from generator.report.without_prices import WITHOUT, without_prices
    from generator.report.write import refuse_foreign, write_pack, write_report, write_summary
    from generator.search import smallest
    from generator.sensitivity import tornadoes
    from generator.study import run

    part, no_prices = wanted.part, wanted.no_prices
    ending = f"-{part}" if part else WITHOUT if no_prices else ""
    folder = wanted.out / f"{path.stem}{ending}"
    refuse_foreign(folder)  # before the minute that a study takes
    study = run(case, make_draws(case, DRAWS))
    led = answer(case, study)
    if part == "summary":
        results = build(case, study, led=led)
        written = write_summary(without_prices(results) if no_prices else results, folder)
    elif part:
        written = write_pack(build(case, study, led=led), packs()[part], folder)
    else:
        moved, sizes = tornadoes(case, study), smallest(case, study)
        results = build(case, study, moved, sizes, led=led)
        written = (
            write_report(without_prices(results), folder, attach=wanted.attach)
            if no_prices
            else write_report(results, folder, case_file, wanted.attach)
        )
    for line in written.engine_log:
        say(f"{path}: warning: drawing engine: {line}")
    typer.echo(f"{path}: written to {written.folder}")
    for lack in written.lacks:
        tell_lack(path, lack)
    return FAILED if written.lacks else DONE


def check_one(path: Path, strict: bool) -> int:
    """Read only; the exit code of one case."""
    accepted_case(path, strict)
    return DONE


def accepted_case(path: Path, strict: bool) -> Case:
    """The case, its warnings told; with `strict` a warning is a fault."""
    from generator.case.open import read_case

    refuse_name(path)
    case = read_case(path)
    if strict and case.warnings:
        raise CaseError([replace(warning, warning=False) for warning in case.warnings])
    for warning in case.warnings:
        say(str(warning))
    return case


def refuse_name(path: Path) -> None:
    """Refuse a case file whose name gives its report no folder of its own.

    `..yaml` would name the folder of all reports; names with a dot before them are those of
    folders in the making.
    """
    if path.stem.startswith(".") or not path.stem.isprintable() or not path.stem.strip():
        shown = "".join(letter if letter.isprintable() else "?" for letter in str(path))
        problem = "has a name that no folder can be called after"
        hope = "expected one such as boat.yaml, no dot before it, printable"
        raise CaseError([Fault(shown, 1, "", problem, hope)])


def for_each(cases: list[Path], act: Callable[[Path], int]) -> int:
    """Do every case, whatever became of the one before; the exit code of them all."""
    codes = set()
    for path in cases:
        codes.add(attempt(act, path))
        if len(cases) > 1:
            gc.collect()
    return next((code for code in (FAILED, CASE_AT_FAULT) if code in codes), DONE)


def attempt(act: Callable[[Path], int], path: Path) -> int:
    """The exit code of one case; what went wrong on purpose is told in words."""
    try:
        return act(path)
    except CaseError as error:
        say("\n".join(str(fault) for fault in error.faults))
        return CASE_AT_FAULT
    except (StudyError, OSError) as error:
        say(f"{path}: not written: {error}")
        return FAILED


def say(text: str) -> None:
    """A line for the user, apart from what the command was asked to print."""
    typer.echo(text, err=True)


def tell_lack(path: Path, lack: Lack) -> None:
    """One line about what a report lacks; where a defect is to blame, how to have it mended."""
    if isinstance(lack.reason, StudyError | OSError):
        say(f"{path}: lacks {lack.what}: {lack.reason}")
        return
    if sys.flags.dev_mode:
        sys.__excepthook__(type(lack.reason), lack.reason, lack.reason.__traceback__)
    what = " ".join(f"{type(lack.reason).__name__}: {lack.reason}".split())
    say(
        f"{path}: lacks {lack.what}, by a defect of this tool; please report it with the case "
        f"file: {what}"
    )


def tell_defect(
    kind: type[BaseException], error: BaseException, trace: TracebackType | None
) -> None:
    """One line about a defect of this tool, in place of a traceback."""
    if sys.flags.dev_mode:
        sys.__excepthook__(kind, error, trace)
        return
    what = " ".join(f"{kind.__name__}: {error}".split())
    say(f"study: stopped by a defect of this tool; please report it with the case file: {what}")


def run_command(arguments: list[str]) -> int:
    """The exit code of one command line; a wrong command line is no fault of a case."""
    command = get_command(app)  # called directly, so that the hook of `main` stays in place
    try:
        return int(command(arguments, prog_name="study", standalone_mode=False) or DONE)
    except typer.TyperException as error:
        say(f"study: {error.format_message()} (study --help shows what there is)")
        return FAILED


def main() -> None:
    """The console script."""
    sys.excepthook = tell_defect
    gc.disable()  # a short life with many small objects: collecting costs more than it frees
    code = run_command(sys.argv[1:])
    sys.stdout.flush()
    sys.stderr.flush()
    os._exit(code)  # all files are closed; taking the libraries down costs 0.3 s
