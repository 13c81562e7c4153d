"""What are the results of some cases, by the code of one tree? Run as a script, by compare.py.

    python -P trees.py TREE JOBS OUT

TREE comes first on the path, so that its package is imported and no other. JOBS is a list of
name, case file, draws and whether the searches are made; OUT gets the outcome of each by its name.
The script knows nothing else of the project, for TREE may be any older state of it.
"""

from __future__ import annotations

import importlib
import json
import sys
import time
import traceback
from collections.abc import Callable
from pathlib import Path
from types import ModuleType
from typing import Any

# Where each thing has stood, the newest place first: a module that moves gets a second place.
PLACES = {
    "read_case": ("generator.case.open",),
    "make_draws": ("generator.draws",),
    "run": ("generator.study",),
    "build": ("generator.report.results_file", "generator.report.tree"),
    "tornadoes": ("generator.sensitivity",),
    "smallest": ("generator.search",),
    "CaseError": ("generator.errors",),
    "DIGITS": ("generator.report.results.suffix", "generator.report.tree"),
}
ALL_DIGITS = 16  # so that a difference is one of the study, and not of its rounding


def module_of(name: str) -> ModuleType:
    """The module that has it in this tree."""
    for place in PLACES[name]:
        try:
            module = importlib.import_module(place)
        except ModuleNotFoundError as error:
            if error.name is None or not place.startswith(error.name):
                raise  # the module is there, and what it needs is not
            continue
        if hasattr(module, name):
            return module
    raise SystemExit(f"{name} stands in none of {', '.join(PLACES[name])}: add its place")


def the(name: str) -> Callable[..., Any]:
    """The function of that name in this tree."""
    found: Callable[..., Any] = getattr(module_of(name), name)
    return found


def outcome(file: str, draws: int, searches: bool) -> dict[str, Any]:
    """The tree, or how it came to none, and the processor time of it."""
    began = time.process_time()
    refusal: Any = the("CaseError")
    try:
        case = the("read_case")(Path(file))
        study = the("run")(case, the("make_draws")(case, draws))
        further = [the(name)(case, study) for name in ("tornadoes", "smallest")] if searches else []
        found: dict[str, Any] = {"tree": the("build")(case, study, *further)}
    except refusal as error:
        found = {"refused": [str(fault) for fault in error.faults]}
    except Exception as error:  # whatever it is, it is the finding
        last = traceback.extract_tb(error.__traceback__)[-1]
        found = {"crash": f"{type(error).__name__}: {error} ({Path(last.filename).name})"}
    return {**found, "seconds": time.process_time() - began}


def without_rounding() -> bool:
    """Whether this tree could be told to give its numbers with all digits."""
    try:
        module_of("DIGITS").DIGITS = ALL_DIGITS  # type: ignore[attr-defined]
    except SystemExit:
        return False
    return True


def main(tree: str, jobs: str, out: str) -> None:
    """Every job in turn."""
    sys.path.insert(0, tree)
    package = importlib.import_module("generator")
    if Path(str(package.__file__)).resolve().parents[1] != Path(tree).resolve():
        raise SystemExit(f"{package.__file__} is not of {tree}")
    exact = without_rounding()
    found = {name: outcome(*job) for name, *job in json.loads(Path(jobs).read_text("utf-8"))}
    text = json.dumps({"exact": exact, "outcomes": found})
    Path(out).write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main(*sys.argv[1:])
