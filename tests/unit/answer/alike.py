"""In what do two drawn cases differ?"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from typing import Any

import numpy as np

ASIDE = ("line", "assumptions", "warnings", "file", "name")  # where things stand and are called
SLACK = 2e-3  # what is typed has few figures


def differences(one: Any, other: Any, path: str = "") -> Iterator[str]:
    """Every field in which they do, with both values; those that name places are left aside."""
    if dataclasses.is_dataclass(one) and type(one) is type(other):
        for part in dataclasses.fields(one):
            if part.name not in ASIDE:
                below = getattr(one, part.name), getattr(other, part.name)
                yield from differences(*below, f"{path}.{part.name}")
    elif isinstance(one, tuple) and isinstance(other, tuple) and len(one) == len(other):
        for place, pair in enumerate(zip(one, other, strict=True)):
            yield from differences(*pair, f"{path}.{place}")
    elif _numbers(one) and _numbers(other):
        if not _near(np.asarray(one), np.asarray(other)):
            yield f"{path}: {np.ravel(one)[:2]} and {np.ravel(other)[:2]}"
    elif one != other:
        yield f"{path}: {one} and {other}"


def _numbers(value: Any) -> bool:
    return isinstance(value, (int, float, np.ndarray)) and not isinstance(value, bool)


def _near(one: Any, other: Any) -> bool:
    if one.shape != other.shape and 1 not in (one.size, other.size):
        return False
    return bool(np.allclose(one, other, rtol=SLACK, atol=1e-9, equal_nan=True))
