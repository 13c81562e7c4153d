"""What is made once for all tests, whichever of their processes asks first?"""

from __future__ import annotations

import fcntl
import os
import pickle
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import wraps
from pathlib import Path
from typing import ParamSpec, TypeVar

FOLDER = "TESTS_SHARED_FOLDER"  # the variable by which the workers know it; set in conftest.py
Asked = ParamSpec("Asked")
Made = TypeVar("Made")


def shared_folder() -> Path:
    """The folder that all processes of this run share."""
    return Path(os.environ[FOLDER])


def once(make: Callable[Asked, Made]) -> Callable[Asked, Made]:
    """Made by the first process that asks; the others wait for it and read what it kept.

    The arguments are plain words and numbers; what is made can be pickled. Nobody may change it:
    within a process all get the same object.
    """
    held: dict[str, Made] = {}

    @wraps(make)
    def kept(*asked: Asked.args, **named: Asked.kwargs) -> Made:
        words = [make.__module__, make.__name__, *map(str, asked), *map(str, named.values())]
        name = "-".join(words)
        if name not in held:
            held[name] = _shared(name, lambda: make(*asked, **named))
        return held[name]

    return kept


def _shared(name: str, make: Callable[[], Made]) -> Made:
    """What another process kept, or what this one makes while the others wait."""
    path = shared_folder() / name
    with _alone(path):
        if path.exists():
            found: Made = pickle.loads(path.read_bytes())
            return found
        made = make()
        path.write_bytes(pickle.dumps(made))
        return made


@contextmanager
def _alone(path: Path) -> Iterator[None]:
    """No other process makes the same meanwhile."""
    with path.with_name(f"{path.name}.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        yield
