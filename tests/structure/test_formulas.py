"""Every formula says what it computes, in which units, where it holds and who published it."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator

import pytest

from tests.structure.source import Module, module, names, source_keys

FOLDERS = ("generator.physics.", "generator.money.")
NUMBERS = re.compile(r"\b(Numbers|float|int|Array)\b")
UNIT = re.compile(r"\[[^\]\n]+\]")


def formula_modules() -> list[Module]:
    return [module(name) for name in names() if name.startswith(FOLDERS)]


def formulas() -> Iterator[object]:
    """Public functions of the formula folders, those that are methods left out."""
    for each in formula_modules():
        for node in each.tree.body:
            if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
                yield pytest.param(node, id=f"{each.name}.{node.name}")


FORMULAS = list(formulas())


def numeric_arguments(node: ast.FunctionDef) -> list[str]:
    arguments = [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]
    return [
        argument.arg
        for argument in arguments
        if argument.annotation and NUMBERS.search(ast.unparse(argument.annotation))
    ]


def sources_named(docstring: str) -> list[str]:
    """Keys after `Source:`; several sources are parted by semicolons."""
    found = re.search(r"^\s*Source:\s*(.+?)(?:\n\s*\n|\n\s*[A-Z]\w+:|\Z)", docstring, re.M | re.S)
    if not found:
        return []
    return [part.strip().split(",")[0].strip() for part in found[1].split(";")]


def test_formulas_are_found() -> None:
    assert len(FORMULAS) > 20


@pytest.mark.parametrize("node", FORMULAS)
def test_formula_names_a_known_source(node: ast.FunctionDef) -> None:
    keys = sources_named(ast.get_docstring(node) or "")
    assert keys, "no `Source:` in the docstring"
    assert [key for key in keys if key not in source_keys()] == []


@pytest.mark.parametrize("node", FORMULAS)
def test_formula_says_where_it_is_valid(node: ast.FunctionDef) -> None:
    assert re.search(r"^\s*Valid:", ast.get_docstring(node) or "", re.M)


@pytest.mark.parametrize("node", FORMULAS)
def test_formula_gives_each_number_a_unit(node: ast.FunctionDef) -> None:
    docstring = ast.get_docstring(node) or ""
    lacking = [
        name
        for name in numeric_arguments(node)
        if not re.search(rf"\b{name}\b[^\[\n]*\[[^\]\n]+\]", docstring)
    ]
    assert lacking == []


@pytest.mark.parametrize("node", FORMULAS)
def test_formula_gives_its_result_a_unit(node: ast.FunctionDef) -> None:
    returns = ast.unparse(node.returns) if node.returns else ""
    if not NUMBERS.search(returns):
        pytest.skip("the result is no bare number; its class says the units")
    docstring = ast.get_docstring(node) or ""
    result = re.search(r"^\s*(?:Returns?|Result)\b.*", docstring, re.M | re.S)
    assert result, "no result in the docstring"
    assert UNIT.search(result[0])


@pytest.mark.parametrize("module", [pytest.param(m, id=m.name) for m in formula_modules()])
def test_formula_modules_open_no_case_and_no_file(module: Module) -> None:
    """Numbers in, numbers out; the one file a formula may read is its own table."""
    calls = {
        node.func.id
        for node in ast.walk(module.tree)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
    }
    assert calls & {"open", "print", "input"} == set()
