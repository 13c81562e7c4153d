"""Does a whole run stay near what the drawing engine needs by itself? And is help at once there?"""

from __future__ import annotations

import statistics
import sys

from tests.bench.floor import compare, seconds

RATIO_LIMIT = 1.25  # whole run over the floor measured in the same turns
HELP_LIMIT = 0.15  # s


def test_whole_run_stays_near_the_floor() -> None:
    comparison = compare()
    sys.stderr.write(f"\n{comparison}\n")
    assert comparison.ratio <= RATIO_LIMIT


def test_help_is_quick() -> None:
    spent = [seconds(sys.executable, "-m", "generator", "--help") for _ in range(9)][2:]
    median = statistics.median(spent)
    sys.stderr.write(f"\nstudy --help {median:.3f} s\n")
    assert median < HELP_LIMIT
