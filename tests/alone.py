"""The study of one option without the others: a third of the time, and the same numbers.

What is held against another option (its diesels, in money and in carbon) is not there, nor, unless
it is asked for, the year; `tests/unit/test_alone.py` shows that all else is what the whole study
says.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from tempfile import TemporaryDirectory

from generator.case.case import Case
from generator.case.open import read_case
from generator.draws import Draws, make_draws
from generator.study import OptionStudy, run


@lru_cache(maxsize=64)
def case_of(text: str) -> Case:
    """The case that a text holds, read once, so that its studies are made once."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / "boat.yaml"
        path.write_text(text, encoding="utf-8")
        return read_case(path)


@lru_cache(maxsize=32)
def alone(case: Case, place: int, draws: int, year: bool = False) -> OptionStudy:
    """What the study of the whole case finds of the option at a place, by the same draws."""
    during_trial = None if case.trial is None else case.trial.with_option
    kept = [n for n, each in enumerate(case.options) if n == place or each.id == during_trial]
    moved = {f"options[{n}]": f"options[{new}]" for new, n in enumerate(kept)}

    def renamed(path: str) -> str | None:
        head, dot, rest = path.partition(".")
        if not head.startswith("options["):
            return path
        return f"{moved[head]}{dot}{rest}" if head in moved else None

    paths = {path: renamed(path) for path in (item.path for item in case.assumptions)}
    values = make_draws(case, draws).values
    lone = replace(
        case,
        options=tuple(case.options[n] for n in kept),
        assumptions=tuple(
            replace(item, path=name)
            for item in case.assumptions
            if (name := paths[item.path]) is not None
        ),
    )
    columns = {name: values[path] for path, name in paths.items() if name and path in values}
    return run(lone, Draws(draws, 0, columns), year).options[kept.index(place)]
