"""How long must a report take at least? A whole run beside the drawing engine's own share.

The floor imports the libraries that the run imported, draws the same finished charts and sets
the same finished pages, and does nothing else. Both are measured in turns, in fresh processes,
so that a slow hour of the machine slows both.

    python tests/bench/floor.py [CASE] [--runs N]
"""

from __future__ import annotations

import argparse
import gc
import importlib
import io
import json
import marshal
import os
import pickle
import statistics
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path
from types import CellType, FunctionType
from typing import Any

ROOT = Path(__file__).parents[2]
CASE = ROOT / "cases" / "sloop_30_weekend.yaml"
RUNS = 5
LIBRARIES = (
    "babel",
    "jinja2",
    "matplotlib",
    "numpy",
    "numpy_financial",
    "pandas",
    "pint",
    "pvlib",
    "pydantic",
    "rich",
    "scipy",
    "typer",
    "weasyprint",
    "yaml",
)


@dataclass(frozen=True)
class Comparison:
    """Medians of the runs, in seconds."""

    whole: float
    floor: float

    @property
    def ratio(self) -> float:
        """Whole run over floor."""
        return self.whole / self.floor

    def __str__(self) -> str:
        return (
            f"whole run {self.whole:.2f} s, floor {self.floor:.2f} s, ratio {self.ratio:.2f} "
            f"(load {os.getloadavg()[0]:.1f})"
        )


class FigurePickler(pickle.Pickler):
    """Packs a figure with the small functions that format its ticks."""

    def reducer_override(self, thing: Any) -> Any:
        """Functions made inside a function travel as their code; all else as usual."""
        if not isinstance(thing, FunctionType) or "<locals>" not in thing.__qualname__:
            return NotImplemented
        cells = tuple(cell.cell_contents for cell in thing.__closure__ or ())
        code = marshal.dumps(thing.__code__)
        return rebuilt, (code, thing.__module__, thing.__defaults__, cells)


def rebuilt(code: bytes, module: str, defaults: Any, cells: tuple[Any, ...]) -> FunctionType:
    """A function from its packed code."""
    names = vars(importlib.import_module(module))
    return FunctionType(
        marshal.loads(code), names, "packed", defaults, tuple(CellType(cell) for cell in cells)
    )


def packed(figure: Any) -> bytes:
    """A figure before it is drawn."""
    sheet = io.BytesIO()
    FigurePickler(sheet).dump(figure)
    return sheet.getvalue()


def prepare(case: Path, folder: Path) -> None:
    """Run once and keep the finished charts, pages and the list of loaded modules."""
    from matplotlib.figure import Figure

    figures: list[bytes] = []
    save = Figure.savefig

    def keep(figure: Figure, *args: Any, **kwargs: Any) -> None:
        figures.append(packed(figure))
        save(figure, *args, **kwargs)

    Figure.savefig = keep  # type: ignore[method-assign, assignment]
    from generator.case.open import read_case
    from generator.cli import DRAWS
    from generator.draws import make_draws
    from generator.report.pdf import make_pdf
    from generator.report.render import make_pages
    from generator.report.results_file import build
    from generator.study import run

    study = read_case(case)
    pages = make_pages(build(study, run(study, make_draws(study, DRAWS))))
    make_pdf(pages.html_print, pages.charts)
    loaded = [name for name in sys.modules if name.partition(".")[0] in LIBRARIES]
    kept = {"figures": figures, "html": pages.html_print, "charts": pages.charts}
    (folder / "pages.pickle").write_bytes(pickle.dumps(kept))
    (folder / "modules.json").write_text(json.dumps(loaded), encoding="utf-8")


def draw(folder: Path) -> None:
    """The floor itself: import, draw the charts, set the pages."""
    gc.disable()
    for name in json.loads((folder / "modules.json").read_text(encoding="utf-8")):
        importlib.import_module(name)
    from generator.report.figures.look import drawn_in_house_style
    from generator.report.pdf import make_pdf

    kept = pickle.loads((folder / "pages.pickle").read_bytes())
    with drawn_in_house_style():
        for number, figure in enumerate(kept["figures"]):
            pickle.loads(figure).savefig(folder / f"{number}.svg", metadata={"Date": None})
    (folder / "report.html").write_text(kept["html"], encoding="utf-8")
    (folder / "report.pdf").write_bytes(make_pdf(kept["html"], kept["charts"]).bytes)
    os._exit(0)


def seconds(*command: str) -> float:
    """Wall time of one process."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    start = time.perf_counter()
    done = subprocess.run(command, env=environment, capture_output=True, text=True, check=False)
    spent = time.perf_counter() - start
    assert done.returncode == 0, done.stderr
    return spent


def compare(case: Path = CASE, runs: int = RUNS) -> Comparison:
    """Measure whole run and floor in turns; the first turn warms caches and is not counted."""
    with tempfile.TemporaryDirectory() as name:
        seconds(sys.executable, __file__, "--prepare", name, str(case))
        whole = (sys.executable, "-m", "generator", "report", str(case), "--out", f"{name}/out")
        floor = (sys.executable, __file__, "--draw", name)
        turns = [(seconds(*whole), seconds(*floor)) for _ in range(runs + 1)][1:]
    return Comparison(*(statistics.median(column) for column in zip(*turns, strict=True)))


def main() -> None:
    """Print the comparison."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("case", nargs="?", type=Path, default=CASE)
    parser.add_argument("--runs", type=int, default=RUNS)
    parser.add_argument("--prepare", type=Path, help=argparse.SUPPRESS)
    parser.add_argument("--draw", type=Path, help=argparse.SUPPRESS)
    chosen = parser.parse_args()
    if chosen.prepare:
        prepare(chosen.case, chosen.prepare)
    elif chosen.draw:
        draw(chosen.draw)
    else:
        print(compare(chosen.case, chosen.runs))


if __name__ == "__main__":
    main()
