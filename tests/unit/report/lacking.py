"""A hundred draws of which a share has no value, their percentiles by hand, and a study of them.

The draws that have a value are 1, 2, 3 ...: of ``n`` without one, 1 to 100 - n. The middle of a
hundred lies half way between the 50th and the 51st of them in order.

- cautious end "high": 1 ... 100 - n, then n beyond the end: 50 and 51 as long as n is below 50;
- cautious end "low": n beyond the end, then 1 ...: the 50th is 50 - n, the 51st 51 - n.

So the middle is 50.5 and 50.5 - n; above a half there is none. With nothing in their place, the old
filling, "high" would be 50.5 - n as well; left out, it would be (101 - n) / 2.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.arrays import Array
from generator.case.open import read_case
from generator.draws import make_draws
from generator.study import Study, run

CASES = Path(__file__).parents[3] / "cases"
ELECTRIC = 2  # place of the battery option in the case
LACKING = (0, 20, 43, 60)
HIGH = {0: 50.5, 20: 50.5, 43: 50.5, 60: None}
LOW = {0: 50.5, 20: 30.5, 43: 7.5, 60: None}
MIDDLES = [(number, HIGH[number], LOW[number]) for number in LACKING]


def draws(lacking: int) -> Array:
    """A best estimate and a hundred draws, the last of which have no value."""
    values = np.arange(101.0)
    values[0] = 50.0
    values[101 - lacking :] = np.nan
    return values[:, np.newaxis]


@lru_cache(maxsize=1)
def study() -> Study:
    """The sloop with a hundred draws."""
    case = read_case(CASES / "sloop_30_weekend.yaml")
    return run(case, make_draws(case, 100))


def found(**parts: Any) -> Findings:
    """Her battery option, some parts exchanged."""
    return replace(study().options[ELECTRIC].findings, **parts)


def changed(part: str, **values: Any) -> Findings:
    """Her battery option, some numbers of one part exchanged."""
    own = getattr(study().options[ELECTRIC].findings, part)
    return found(**{part: replace(own, **values)})


def close(value: float | None, wanted: float | None) -> bool:
    """Whether both are absent, or the same to nine figures."""
    if value is None or wanted is None:
        return value is wanted
    return bool(np.isclose(value, wanted, rtol=1e-9, atol=0.0))


def excuses(row: dict[str, Any], key: str) -> bool:
    """Whether a number is there, or a reason in its place, under the key or under its field."""
    parts = key.split("_")
    stems = ("_".join(parts[:length]) for length in range(len(parts), 0, -1))
    return row[key] is not None or any(row.get(f"{stem}_why") for stem in stems)
