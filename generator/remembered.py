"""What was computed of the same numbers a moment ago, that it need not be computed again?"""

from __future__ import annotations

from collections.abc import Callable, Hashable
from functools import wraps
from typing import ParamSpec, TypeVar

import numpy as np

from generator.arrays import Array

LAST = 64  # results kept of each function: the options of a case, with a few changes each
Asked = ParamSpec("Asked")
Made = TypeVar("Made", bound="Array | tuple[object, ...]")


def remembered(make: Callable[Asked, Made]) -> Callable[Asked, Made]:
    """A pure function that keeps its last results.

    Numbers and words are the same where they are equal, records where they are the same one. The
    arrays of a result cannot be written to, for the next who asks gets them too.
    """
    held: dict[Hashable, tuple[object, Made]] = {}

    @wraps(make)
    def known(*asked: Asked.args, **named: Asked.kwargs) -> Made:
        key: Hashable = (*map(_mark, asked), *((name, _mark(each)) for name, each in named.items()))
        if key not in held:
            made = make(*asked, **named)
            for part in made if isinstance(made, tuple) else (made,):
                if isinstance(part, np.ndarray):
                    part.setflags(write=False)
            if len(held) >= LAST:
                del held[next(iter(held))]
            # With what was asked, so that no later record can be taken for this one.
            held[key] = ((asked, named), made)
        return held[key][1]

    return known


def _mark(thing: object) -> Hashable:
    """By what an argument is told from others."""
    if isinstance(thing, np.ndarray):
        return thing.dtype.char, thing.shape, thing.tobytes()
    return thing if isinstance(thing, float | int | str | None) else id(thing)
