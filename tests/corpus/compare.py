"""Which results move from the code of an older commit to the working tree, over all variants?

    python -m tests.corpus.compare BASE [--searches] [--only NAME ...] [--draws 60] [--all]

Both codes compute the same case files, in this run and on this machine; nothing is stored. The
exit code is 0 if whatever moved or is missing stands in expected_moves.csv, else 1.
"""

from __future__ import annotations

import argparse
import io
import json
import os
import subprocess
import sys
import tarfile
import tempfile
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

from tests.corpus.leaves import Difference, differences, read_renames, rounded, table
from tests.corpus.tell import judged, moves, told
from tests.corpus.variants import Variant, variants, write_variants

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
OLD_KEYS = ROOT / "generator" / "report" / "old_keys.csv"
EXPECTED = HERE / "expected_moves.csv"
DRAWS = 60
WORKERS = 2
PARTS = 2  # of the variants in each tree: the workers end together
SEARCHED = ("sloop", "ketch")
# One thread each: two workers share the machine, and sums keep their order.
QUIET = {"OMP_NUM_THREADS": "1", "OPENBLAS_NUM_THREADS": "1", "MKL_NUM_THREADS": "1"}

Outcomes = dict[str, dict[str, Any]]


def main(arguments: list[str]) -> int:
    """Compute both, compare, tell."""
    asked = _asked(arguments)
    began = time.monotonic()
    chosen = _chosen(asked.only)
    with tempfile.TemporaryDirectory(prefix="corpus_") as folder:
        place = Path(folder)
        base, cases = place / "base", place / "cases"
        unpack(asked.base, base)
        cases.mkdir()
        write_variants(cases)
        jobs = [_job(variant, cases, asked) for variant in chosen]
        old, new = computed((base, ROOT), jobs, place)
    equal, found = compared(old, new)
    not_run = [
        f"not compared: {name}, {why(one)}" for name, one in old.items() if "tree" not in one
    ]
    broken = [line for one in chosen for line in events(one, new[one.name])]
    verdict = judged(moves(found), table(EXPECTED))
    _say(f"{len(chosen)} variants, {asked.base} against the working tree")
    _say(f"{equal:,} leaves are equal; {time.monotonic() - began:.0f} s")
    for line in (*not_run, *broken, *told(verdict, None if asked.all else 40)):
        _say(line)
    return 0 if verdict.passed and not broken else 1


def unpack(commit: str, folder: Path) -> None:
    """The files of a commit, without touching the repository."""
    packed = subprocess.run(["git", "archive", commit], cwd=ROOT, check=True, capture_output=True)
    with tarfile.open(fileobj=io.BytesIO(packed.stdout)) as archive:
        archive.extractall(folder, filter="data")


def computed(
    trees: tuple[Path, Path], jobs: list[list[Any]], folder: Path
) -> tuple[Outcomes, Outcomes]:
    """The outcome of every job by each tree, two processes at a time."""
    runs = [(tree, part) for part in range(PARTS) for tree in trees]
    with ThreadPoolExecutor(WORKERS) as pool:
        asked = [pool.submit(_run, tree, jobs[part::PARTS], part, folder) for tree, part in runs]
        parts = [one.result() for one in asked]
    exact = all(part["exact"] for part in parts)
    old: Outcomes = {}
    new: Outcomes = {}
    for (tree, _), part in zip(runs, parts, strict=True):
        whole = part["outcomes"] if exact else rounded(part["outcomes"])
        (old if tree == trees[0] else new).update(whole)
    return old, new


def compared(old: Outcomes, new: Outcomes) -> tuple[int, list[tuple[str, Difference]]]:
    """How many leaves are equal, and every difference with its variant."""
    renames = read_renames(OLD_KEYS)
    equal, found = 0, []
    for name, before in old.items():
        if "tree" in before and "tree" in new[name]:
            count, moved = differences(before["tree"], new[name]["tree"], renames)
            equal += count
            found += [(name, item) for item in moved]
    return equal, found


def events(variant: Variant, after: dict[str, Any]) -> list[str]:
    """A study that breaks down or is refused now, or breaks down no more against its mark."""
    if "tree" in after:
        stale = f"STALE  {variant.name} breaks down no more: take its `crashes` away"
        return [stale] if variant.crashes else []
    known = variant.crashes and "crash" in after
    return [] if known else [f"BROKEN {variant.name}: {why(after)}"]


def why(outcome: dict[str, Any]) -> str:
    """Why there is no tree."""
    return str(outcome.get("crash") or "; ".join(outcome["refused"]))


def _run(tree: Path, jobs: list[list[Any]], part: int, folder: Path) -> dict[str, Any]:
    """One process over some of the jobs."""
    name = f"{'new' if tree == ROOT else 'old'}_{part}"
    asked, out = folder / f"jobs_{name}.json", folder / f"out_{name}.json"
    asked.write_text(json.dumps(jobs), encoding="utf-8")
    command = [sys.executable, "-P", str(HERE / "trees.py"), str(tree), str(asked), str(out)]
    kept = {key: value for key, value in os.environ.items() if key != "PYTHONPATH"}
    done = subprocess.run(command, cwd=folder, env=kept | QUIET, capture_output=True, text=True)
    if done.returncode:
        raise SystemExit(f"{name}: {done.stderr}")
    found: dict[str, Any] = json.loads(out.read_text(encoding="utf-8"))
    return found


def _job(variant: Variant, cases: Path, asked: argparse.Namespace) -> list[Any]:
    draws = asked.draws if variant.draws is None else variant.draws
    searches = asked.searches and variant.name in SEARCHED
    return [variant.name, str(cases / variant.file), draws, searches]


def _chosen(only: list[str]) -> list[Variant]:
    known = variants()
    unknown = sorted(set(only) - set(known))
    if unknown:
        raise SystemExit(f"no such variant: {', '.join(unknown)}")
    return [variant for name, variant in known.items() if not only or name in only]


def _asked(arguments: list[str]) -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.corpus.compare")
    parser.add_argument("base", help="commit whose code computes the old results")
    parser.add_argument("--searches", action="store_true", help="both demos with their searches")
    parser.add_argument("--only", nargs="+", default=[], metavar="NAME", help="these variants")
    parser.add_argument("--draws", type=int, default=DRAWS)
    parser.add_argument("--all", action="store_true", help="every pattern, not the first ones")
    return parser.parse_args(arguments)


def _say(line: str) -> None:
    sys.stdout.write(line + "\n")


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
