"""A draw without a value lies beyond the cautious end; whoever fills one in instead says why.

The rule stands in `percentiles.py`. A filling is right where the number must stand for more
than itself, as in a sum or in the size of a cable, and then lies on the cautious side: the line
itself or a comment right above it says so behind the mark.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator

import pytest

from tests.structure.source import ROOT, modules

MARK = "# lacking: "
RULE = "generator.analyses.percentiles"
FREE = ("generator.physics.", "generator.money.", "generator.fits.", "generator.tables.")


def fillings(tree: ast.Module) -> Iterator[ast.Call]:
    """Calls that put a number in place of none, or pass over those that have none."""
    for node in ast.walk(tree):
        if not isinstance(node, ast.Call) or not isinstance(node.func, ast.Attribute):
            continue
        name = node.func.attr
        if name.startswith("nan") or (name == "where" and _fills(node)):
            yield node


def _fills(call: ast.Call) -> bool:
    """Whether a choice by being a number has a number on both sides."""
    if len(call.args) != 3 or not _asks(call.args[0]):
        return False
    return not any(ast.unparse(branch) == "np.nan" for branch in call.args[1:])


def _asks(test: ast.expr) -> bool:
    if isinstance(test, ast.UnaryOp):
        return _asks(test.operand)
    return isinstance(test, ast.Call) and ast.unparse(test.func) in ("np.isnan", "np.isfinite")


def unargued(text: str) -> list[int]:
    """Lines of the fillings of a module that have no reason on them or in a comment above."""
    lines = text.splitlines()
    found = []
    for call in fillings(ast.parse(text)):
        first = call.lineno - 1
        above = lines[first - 1].strip() if first else ""
        if not above.startswith(MARK) and MARK not in "\n".join(lines[first : call.end_lineno]):
            found.append(call.lineno)
    return found


def test_no_draw_is_filled_in_without_a_reason() -> None:
    found = [
        f"{module.path.relative_to(ROOT)}:{line}"
        for name, module in modules().items()
        if name != RULE and not name.startswith(FREE)
        for line in unargued(module.path.read_text(encoding="utf-8"))
    ]
    assert found == []


@pytest.mark.parametrize(
    "line",
    [
        "x = np.nan_to_num(need, nan=0.0)",
        "x = scalar(spread(np.nan_to_num(need)).middle)",
        "x = float(np.nanmax(need))",
        "x = np.nanpercentile(need, 10)",
        "x = np.where(np.isnan(need), np.inf, need)",
        "x = np.where(~np.isfinite(need), 9.0, need)",
    ],
)
def test_a_filling_is_seen_and_its_reason_excuses_it(line: str) -> None:
    assert unargued(f"y = 1\n{line}") == [2]
    assert unargued(f"{MARK}a sum must stand\n{line}") == []
    assert unargued(f"{line}  {MARK}a sum must stand") == []
    assert unargued(f"# a sum must stand\n{line}") == [2]


@pytest.mark.parametrize(
    "line", ["x = np.where(np.isnan(saved), np.nan, years)", "x = np.where(good, need, 0.0)"]
)
def test_what_fills_nothing_is_not_seen(line: str) -> None:
    assert unargued(line) == []
