"""How do the tests run: in how many processes, with what kept, and with how much collecting?"""

from __future__ import annotations

import gc
import os
import shutil
import sys
import tempfile

import pytest

from tests.once import FOLDER
from tests.sketch import sketched

__all__ = ["sketched"]  # a fixture of all tests

WORKERS = 2  # of a run of all tests; a file or a folder of them needs no second set of imports

# Modules are compiled once and not again by every command that the tests start.
sys.dont_write_bytecode = False
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
# Two processes on two cores: threads of the matrix library would only wait for each other.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
# Studies and pages are millions of objects that live on; looking through them frees nothing.
gc.set_threshold(100_000, 50, 50)


def pytest_xdist_auto_num_workers(config: pytest.Config) -> int:
    """Two for all tests; none for a part, which stays in this process, where it can be stepped."""
    return WORKERS if config.args == config.getini("testpaths") else 0


def pytest_configure(config: pytest.Config) -> None:
    """The folder of `once`, made by the process that starts the others."""
    if not hasattr(config, "workerinput"):
        os.environ[FOLDER] = tempfile.mkdtemp(prefix="tests-shared-")


def pytest_unconfigure(config: pytest.Config) -> None:
    """The folder goes with the run."""
    if not hasattr(config, "workerinput"):
        shutil.rmtree(os.environ.pop(FOLDER), ignore_errors=True)


def pytest_collection_finish() -> None:
    """What was loaded so far stays to the end: no collection looks at it again."""
    gc.collect()
    gc.freeze()
