"""What does an option take over from an earlier one, and from the boat as she is?"""

from __future__ import annotations

import re
from typing import TypeVar

from generator.case.key_kinds import ID_FORM
from generator.case.plant_keys import EngineKeys, PropellerKeys
from generator.case.read import Hole
from generator.case.said import Keys, Said, path_text
from generator.case.schema import CaseKeys, OptionKeys
from generator.errors import Fault

OWN = ("id", "from", "name")  # an option says these itself
OF_ONE_ENGINE = ("fuel_scale", "year", "hours", "condition")  # a new engine has its own
OF_ONE_BLADE = (
    "area_ratio",
    "thrust_scale",
    "torque_scale",
    "astern_share",
)  # another propeller has its own

OF_ONE_STERN = (
    "shaft_diameter",
    "shaft_run",
    "shaft_run_share",
    "stern_gear_area",
    "stern_gear_share",
    "stern_gear_drag",
)  # another leg or shaft has its own

INSTEAD = (("charge", "energy"), ("energy", "charge"))  # the one said anew replaces the other

GroupKeys = TypeVar("GroupKeys", EngineKeys, PropellerKeys)


def inherit_options(root: Keys, file: str, faults: list[Fault]) -> dict[int, int]:
    """Fill each option that starts from an earlier one; tells which came from which."""
    found = root.get("options")
    options: list[object] = found if isinstance(found, list) else []
    parents: dict[int, int] = {}
    seen: dict[str, int] = {}
    unreadable = False
    for place, option in enumerate(options):
        if not isinstance(option, Keys):
            continue
        start = option.get("from")
        if isinstance(start, Said) and start.text in seen:
            parents[place] = seen[start.text]
            options[place] = _merged(options[parents[place]], option, OWN)
        elif isinstance(start, Said) and not unreadable:
            path = path_text(("options", place, "from"))
            hope = f"expected one of: {', '.join(seen)}" if seen else "expected none in the first"
            faults.append(
                Fault(file, start.line, path, f"`{start.text[:64]}` is no earlier option", hope)
            )
        if isinstance(start, Said) and start.text not in seen:
            option["from"] = Hole(start.line)
        name = option.get("id")
        if isinstance(name, Said) and re.fullmatch(ID_FORM, name.text):
            seen.setdefault(name.text, place)
        else:
            unreadable = True  # it may be the one that a later option starts from
    return parents


def own_engine(case: CaseKeys, option: OptionKeys) -> EngineKeys:
    """The diesel of an option: that of the boat, with what the option says of a new one."""
    if option.kind != "new diesel":
        return case.engine
    engine = _overlaid(case.engine, option.engine, OF_ONE_ENGINE)
    return engine.model_copy(update={"condition": engine.condition or "good"})


def own_propeller(case: CaseKeys, option: OptionKeys) -> PropellerKeys:
    """The propeller of an option: that of the boat, with what the option changes."""
    said = option.propeller.model_fields_set
    blades = OF_ONE_BLADE if {"kind", "blades"} & said else ()
    stern = OF_ONE_STERN if "installation" in said else ()
    return _overlaid(case.propeller, option.propeller, (*blades, *stern))


def _merged(base: object, over: Keys, own: tuple[str, ...] = ()) -> Keys:
    """One section over another, key by key; lists and values are replaced whole."""
    values = dict(over)
    lines = dict(over.lines)
    own = (*own, *(other for key, other in INSTEAD if key in values))
    for key, value in base.items() if isinstance(base, Keys) else ():
        above = values.get(key)
        if isinstance(above, Keys) and isinstance(value, Keys):
            values[key] = _merged(value, above)
        elif key not in values and key not in own:
            values[key] = value
            lines[key] = base.lines.get(key, base.line) if isinstance(base, Keys) else over.line
    return Keys(values, lines, over.line)


def _overlaid(base: GroupKeys, over: GroupKeys, dropped: tuple[str, ...]) -> GroupKeys:
    """The fields of the one that are said, before those of the other that still hold."""
    said = {name: getattr(over, name) for name in over.model_fields_set}
    gone = {name: None for name in dropped}
    return base.model_copy(update={**gone, **said})
