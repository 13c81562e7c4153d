"""The modules of the package as the tests of this folder see them: read, not imported."""

from __future__ import annotations

import ast
import csv
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "generator"


@dataclass(frozen=True)
class Import:
    """One import statement: the module it loads and the names it takes from there."""

    module: str
    name: str  # empty for a plain `import module`
    line: int


@dataclass(frozen=True)
class Module:
    """One file of the package."""

    name: str
    path: Path
    tree: ast.Module
    imports: tuple[Import, ...]

    @property
    def place(self) -> str:
        """The path as a reader would type it."""
        return str(self.path.relative_to(ROOT))


@lru_cache
def names() -> dict[str, Path]:
    """The file of every module of the package by its dotted name."""
    return {dotted(path): path for path in sorted(PACKAGE.rglob("*.py"))}


@cache
def module(name: str) -> Module:
    """One module, read when it is first asked for."""
    return read(name, names()[name], frozenset(names()))


def modules() -> dict[str, Module]:
    """Every module of the package by its dotted name."""
    return {name: module(name) for name in names()}


def dotted(path: Path) -> str:
    """The name that an import statement uses for the file."""
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def read(name: str, path: Path, known: frozenset[str]) -> Module:
    """Parse one file and list its imports, those inside functions and type checks too."""
    tree = ast.parse(path.read_text(encoding="utf-8"), str(path))
    imports: list[Import] = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            imports += [Import(alias.name, "", node.lineno) for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}:{node.lineno}: relative import"
            source = node.module or ""
            for alias in node.names:
                inner = f"{source}.{alias.name}"
                found = Import(inner, "", node.lineno) if inner in known else None
                imports.append(found or Import(source, alias.name, node.lineno))
    return Module(name, path, tree, tuple(imports))


def top_level_imports(module: Module) -> set[str]:
    """First names of what is loaded as soon as the module is."""
    loaded: set[str] = set()
    for node in module.tree.body:
        if isinstance(node, ast.Import):
            loaded |= {alias.name.partition(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            loaded.add((node.module or "").partition(".")[0])
    return loaded


@lru_cache
def source_keys() -> frozenset[str]:
    """Keys of the bibliography."""
    text = (PACKAGE / "tables" / "sources.csv").read_text(encoding="utf-8")
    rows = list(csv.reader(line for line in text.splitlines() if not line.startswith("#")))
    column = rows[0].index("key")
    return frozenset(row[column] for row in rows[2:])
