"""Who may import whom: only from a lower line of the table, never sideways or up."""

from __future__ import annotations

import re
import sys
import tomllib

import pytest

from tests.structure import source
from tests.structure.source import ROOT, Import, Module, modules, names, top_level_imports

# Folder or module -> what it may import of ours. The longest matching name on the left rules.
MAY_IMPORT = {
    "generator.cli": ("generator",),
    "generator.__main__": ("generator.cli",),
    "generator.report": (
        "generator.report",
        "generator.answer",
        "generator.search",
        "generator.sensitivity",
        "generator.study",
        "generator.draws",
        "generator.analyses",
        "generator.case",
        "generator.tables.method",
        "generator.tables.sources",
        "generator.units.grammar",
    ),
    "generator.answer": (
        "generator.answer",
        "generator.one_option",
        "generator.study",
        "generator.draws",
        "generator.analyses",
        "generator.case",
        "generator.tables",
    ),
    "generator.sensitivity": ("generator.study", "generator.draws", "generator.case"),
    "generator.search": ("generator.study", "generator.draws", "generator.case"),
    "generator.alternatives": ("generator.study", "generator.draws", "generator.case"),
    "generator.one_option": ("generator.analyses", "generator.case", "generator.draws"),
    "generator.study": (
        "generator.analyses",
        "generator.case",
        "generator.draws",
        "generator.one_option",
        "generator.turning",
    ),
    "generator.turning": ("generator.analyses", "generator.case", "generator.draws"),
    "generator.draws": ("generator.analyses", "generator.case"),
    "generator.analyses": (
        "generator.analyses",
        "generator.case",
        "generator.physics",
        "generator.money",
        "generator.tables",
    ),
    "generator.case": (
        "generator.case",
        "generator.tables",
        "generator.units.families",
        "generator.units.grammar",
    ),
    "generator.physics.hull": (
        "generator.physics.hull",
        "generator.physics.water",
        "generator.physics.validity",
        "generator.tables",
    ),
    "generator.physics.drive": (
        "generator.physics.drive",
        "generator.physics.water",
        "generator.physics.validity",
        "generator.tables",
    ),
    "generator.physics.energy": (
        "generator.physics.energy",
        "generator.physics.water",
        "generator.physics.validity",
        "generator.tables",
    ),
    "generator.physics": ("generator.physics.validity", "generator.tables"),
    "generator.money": ("generator.money", "generator.tables"),
    "generator.fits": ("generator.fits", "generator.physics", "generator.tables"),
    "generator.tables": ("generator.tables", "generator.units.grammar"),
    "generator.units.grammar": ("generator.units.families",),
    "generator.units.families": (),
    "generator.units": (),
    "generator.errors": (),
    "generator.units.kinds": (),
    "generator.verbatim": (),
    "generator.records": ("generator.units.kinds",),
    "generator.arrays": (),
    "generator.remembered": ("generator.arrays",),
    "generator.version": (),
    "generator": (),
}
# The bottom line: names for errors and for arrays of numbers, free to all but one another.
FREE = (
    "generator.errors",
    "generator.arrays",
    "generator.units.kinds",
    "generator.records",
    "generator.remembered",
    "generator.verbatim",
    "generator.version",
)

# The analyses that all others stand on: vessel, floating and ledger, demand, plant and power at
# given speeds, and how a spread of draws is read. Of any other analysis only the result class may
# be taken.
SHARED_STEPS = tuple(
    f"generator.analyses.{name}"
    for name in (
        "handling.docking",
        "handling.headwind",
        "handling.holding",
        "handling.yardstick",
        "motion.as_set",
        "motion.bench",
        "motion.demand",
        "motion.engine_space",
        "motion.hull",
        "motion.plant",
        "motion.power",
        "motion.pull",
        "motion.sea_trial",
        "percentiles",
        "store.bank_state",
        "store.limits",
        "store.cold_months",
        "store.outfit",
        "use.exposed_part",
        "use.leg_energy",
        "verdict.criteria",
        "weight.floating",
        "weight.mass_ledger",
        "wiring",
    )
)

# Libraries that have one door: one module, or the few that share the work of one.
ONE_DOOR = {
    "pint": ("generator.units.grammar",),
    "pydantic": tuple(
        f"generator.case.{name}" for name in ("key_kinds", "leaf", "schema", "validate")
    ),
    "yaml": ("generator.case.read",),
    "weasyprint": ("generator.report.pdf",),
    "matplotlib": (
        "generator.report.canvas",
        "generator.report.drawings",
        "generator.report.figures",
        "generator.report.typeface",
    ),
    "jinja2": ("generator.report.template",),
    "pvlib": ("generator.physics.energy.sun",),
    "typer": ("generator.cli",),
}
# What a library is called in an import statement, or brings along from the same makers.
PARTS = {"pyyaml": "yaml", "jinja2": "markupsafe", "pydantic": "pydantic_core"}
# `study --help`, `study --version` and a refused case must not wait for these.
SLOW = {"matplotlib", "pandas", "pint", "pvlib", "scipy", "weasyprint"}


def within(name: str, folder: str) -> bool:
    return name == folder or name.startswith(folder + ".")


def rule_of(name: str) -> tuple[str, ...]:
    return MAY_IMPORT[max((key for key in MAY_IMPORT if within(name, key)), key=len)]


def ours(module: Module) -> list[Import]:
    return [item for item in module.imports if within(item.module, "generator")]


def names_in(folder: str) -> list[str]:
    return [name for name in names() if within(name, folder)]


@pytest.fixture
def module(request: pytest.FixtureRequest) -> Module:
    """Read when its test runs: the process that runs others has no need of it."""
    return source.module(request.param)


@pytest.mark.parametrize("module", names_in("generator"), indirect=True)
def test_imports_point_only_to_lower_lines(module: Module) -> None:
    allowed = rule_of(module.name)
    if module.name not in FREE:
        allowed += FREE
    wrong = [
        f"{module.place}:{item.line}: {item.module}"
        for item in ours(module)
        if not any(within(item.module, folder) for folder in allowed)
    ]
    assert wrong == []


def test_rules_all_belong_to_a_line_of_the_package() -> None:
    """A module that no rule names, but for the bare package, would pass unseen."""
    unruled = [name for name in modules() if name != "generator" and rule_of(name) == ()]
    assert set(unruled) <= {*FREE, "generator.units", "generator.units.families"}


@pytest.mark.parametrize("module", names_in("generator.analyses"), indirect=True)
def test_analyses_take_only_result_classes_of_one_another(module: Module) -> None:
    """So that a stage hands on a frozen result, and no stage calls another."""
    wrong = [
        f"{module.place}:{item.line}: {item.module}.{item.name}"
        for item in ours(module)
        if within(item.module, "generator.analyses")
        and not any(within(item.module, step) for step in SHARED_STEPS)
        and not item.name[:1].isupper()
    ]
    assert wrong == []


@pytest.mark.parametrize("module", names_in("generator.report"), indirect=True)
def test_report_takes_only_result_classes_of_the_study(module: Module) -> None:
    lower = tuple(
        f"generator.{name}" for name in ("analyses", "draws", "search", "sensitivity", "study")
    )
    spread = "generator.analyses.percentiles"  # how draws are read, which decides nothing
    wrong = [
        f"{module.place}:{item.line}: {item.module}.{item.name}"
        for item in ours(module)
        if any(within(item.module, folder) for folder in lower)
        and item.module != spread
        and not item.name[:1].isupper()
    ]
    assert wrong == []


def test_package_has_no_cycles() -> None:
    graph = {name: {item.module for item in ours(module)} for name, module in modules().items()}
    done: set[str] = set()

    def walk(name: str, trail: tuple[str, ...]) -> None:
        assert name not in trail, " -> ".join((*trail[trail.index(name) :], name))
        if name in done or name not in graph:
            return
        for target in sorted(graph[name]):
            walk(target, (*trail, name))
        done.add(name)

    for name in graph:
        walk(name, ())


@pytest.mark.parametrize("library", ONE_DOOR)
def test_library_has_one_door(library: str) -> None:
    wrong = [
        f"{module.place}:{item.line}"
        for module in modules().values()
        for item in module.imports
        if within(item.module, library)
        and not any(within(module.name, door) for door in ONE_DOOR[library])
    ]
    assert wrong == []


@pytest.mark.parametrize("name", ["generator.cli", "generator.__main__", "generator.report.write"])
def test_slow_libraries_are_not_loaded_by_the_way_in(name: str) -> None:
    assert top_level_imports(modules()[name]) & (SLOW | {"numpy"}) == set()


def test_every_library_used_is_declared() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    declared = {
        re.split(r"[ <>=;!~\[]", entry, maxsplit=1)[0].lower().replace("-", "_")
        for entry in project["dependencies"]
    }
    for library, part in PARTS.items():
        declared |= {part} if library in declared else set()
    used = {
        item.module.partition(".")[0] for module in modules().values() for item in module.imports
    }
    assert used - declared - {"generator"} - set(sys.stdlib_module_names) == set()


def test_init_files_are_empty() -> None:
    full = [
        module.place
        for module in modules().values()
        if module.path.name == "__init__.py" and module.path.stat().st_size
    ]
    assert full == []


def test_module_names_come_from_the_trade() -> None:
    vague = {"utils", "util", "helpers", "helper", "common", "misc", "manager", "tools", "base"}
    assert [module.place for module in modules().values() if module.path.stem in vague] == []
