"""Which keys and values of a case file are wrong, all of them, and what is left that is right?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from pydantic import BaseModel, ValidationError
from pydantic.fields import FieldInfo

from generator.case.leaf import Leaf, Spot
from generator.case.nearest import nearest_word
from generator.case.read import Hole
from generator.case.said import Keys, Place, Said, line_of, path_text
from generator.case.schema import CaseKeys, OptionKeys
from generator.errors import Fault

_MANY = 14  # more keys than this are not listed in a message


@dataclass(frozen=True)
class Checked:
    """What validated, and what did not."""

    case: CaseKeys
    faults: tuple[Fault, ...]


def validate(root: Keys, file: str, parents: dict[int, int]) -> Checked:
    """The keys of the file by the schema; holes stand where something was refused."""
    faults: list[Fault] = []
    try:
        case = CaseKeys.model_validate(root)
    except ValidationError as error:
        for item in error.errors(include_url=False):
            faults.extend(_faults(item, root, file))
        _dig(root, [item["loc"] for item in error.errors(include_url=False)])
        case = CaseKeys.model_validate(root)
    faults.extend(_missing_faults(case, root, file, parents))
    return Checked(case, tuple(faults))


def _faults(item: Any, root: Keys, file: str) -> Iterator[Fault]:
    """The faults that one error of pydantic stands for."""
    place: Place = item["loc"]
    line, path = line_of(root, place), path_text(place)
    if item["type"] == "refused":
        for spot in item["ctx"]["spots"]:
            yield _spot_fault(spot, item["input"], place, Fault(file, line, path, "", ""))
    elif item["type"] == "extra_forbidden":
        yield Fault(file, line, path, "unknown key", _known(place))
    elif not isinstance(item["input"], Hole):
        yield Fault(file, line, path, *_shape(item, place))


def _spot_fault(spot: Spot, said: object, place: Place, at: Fault) -> Fault:
    """A fault of a value, or of the origin or doubt that stands in it or beside it."""
    if spot.part and isinstance(said, Said):
        mark = said.origin if spot.part == "from" else said.doubt
        path = path_text((*(place[:-1] if said.beside else place), spot.part))
        at = replace(at, path=path, line=mark.line if mark else at.line)
    return replace(at, problem=spot.problem, expected=spot.expected)


def _known(place: Place) -> str:
    """What was meant by an unknown key, or what may stand there."""
    names = list(_fields(_model(place[:-1])))
    close = nearest_word(str(place[-1]), names)
    if close:
        return f"did you mean `{close}`?"
    listed = f"{', '.join(names[:_MANY])}{', ...' if len(names) > _MANY else ''}"
    return f"expected one of: {listed}"


def _shape(item: Any, place: Place) -> tuple[str, str]:
    """A value, a list or a section where another of the three belongs."""
    found = "a list" if isinstance(item["input"], list | tuple) else "a section"
    found = found if isinstance(item["input"], list | dict) else "a single value"
    if item["type"] == "tuple_type":
        return f"is {found}", "expected a list, one `- ` line for each item"
    return f"is {found}", f"expected a section with {', '.join(list(_fields(_model(place)))[:6])}"


def _model(place: Place) -> type[BaseModel]:
    """The model that describes a section of the file."""
    model: type[BaseModel] = CaseKeys
    for part in place:
        if isinstance(part, str):
            model = _inner(_fields(model)[part]) or model
    return model


def _inner(field: FieldInfo) -> type[BaseModel] | None:
    """The model of a field that is a section or a list of sections."""
    kinds = [field.annotation, *getattr(field.annotation, "__args__", ())]
    return next((k for k in kinds if isinstance(k, type) and issubclass(k, BaseModel)), None)


def _fields(model: type[BaseModel]) -> dict[str, FieldInfo]:
    """The fields of a model by the key of the file."""
    return {field.alias or name: field for name, field in model.model_fields.items()}


def _dig(root: Keys, places: list[Place]) -> None:
    """Put a hole at each refused place; an unknown key becomes one under its likely name."""
    for place in places:
        said: Any = root
        for part in place[:-1]:
            said = said[part]
        last = place[-1]
        names = _fields(_model(place[:-1])) if isinstance(last, str) else {}
        if isinstance(last, str) and last not in names:
            said.pop(last, None)  # options that inherit it share the section
            last = nearest_word(last, names)
            if not last or last in said:
                continue
        said[last] = Hole(1)


def _missing_faults(
    case: CaseKeys, root: Keys, file: str, parents: dict[int, int]
) -> Iterator[Fault]:
    """Keys that must be there; an option is not blamed for what its origin lacks."""
    missing = list(_missing(case, root, ()))
    for place in missing:
        number = place[1] if len(place) > 1 and place[0] == "options" else None
        parent = parents.get(number) if isinstance(number, int) else None
        origin: Place = () if parent is None else ("options", parent, *place[2:])
        if origin and (origin in missing or _refused(root, origin)):
            continue
        if isinstance(_option(root, place).get("from"), Hole) or _useless(case, place):
            continue
        field = _fields(_model(place[:-1]))[str(place[-1])]
        problem = "is empty" if _holds(root, place) else "is missing"
        yield Fault(file, line_of(root, place), path_text(place), problem, _hope(field))


def _missing(model: BaseModel, said: object, place: Place) -> Iterator[Place]:
    """The places of needed keys that are not there, section by section."""
    for name, field in type(model).model_fields.items():
        key, value = field.alias or name, getattr(model, name)
        extra = field.json_schema_extra if isinstance(field.json_schema_extra, dict) else {}
        inner = said.get(key) if isinstance(said, Keys) else None
        if isinstance(inner, Hole):
            continue
        if name not in model.model_fields_set or value == ():
            if extra.get("needed"):
                yield (*place, key)
        elif isinstance(value, BaseModel) and extra.get("overrides"):
            yield from _power_of_new_engine(model, (*place, key))
        elif isinstance(value, BaseModel):
            yield from _missing(value, inner, (*place, key))
        elif isinstance(value, tuple) and isinstance(inner, list):
            for number, (item, below) in enumerate(zip(value, inner, strict=True)):
                if isinstance(item, BaseModel) and not isinstance(below, Hole):
                    yield from _missing(item, below, (*place, key, number))


def _power_of_new_engine(option: BaseModel, place: Place) -> Iterator[Place]:
    """All else of a new diesel may be as in the old one."""
    if not isinstance(option, OptionKeys) or option.kind != "new diesel":
        return
    if place[-1] == "engine" and "rated_power" not in option.engine.model_fields_set:
        yield (*place, "rated_power")


def _refused(root: Keys, place: Place) -> bool:
    """Whether something on the way to a place was refused."""
    said: Any = root
    for part in place:
        if isinstance(said, Keys) and part not in said:
            return False
        said = said[part]
        if isinstance(said, Hole):
            return True
    return False


def _useless(case: CaseKeys, place: Place) -> bool:
    """Inside a motor or bank that an option of this kind has no use for."""
    if len(place) < 4 or place[0] != "options" or place[2] not in ("motor", "bank"):
        return False
    return isinstance(place[1], int) and case.options[place[1]].kind in ("keep", "new diesel")


def _option(root: Keys, place: Place) -> Keys:
    """The option that a place lies in, empty where there is none."""
    options = root.get("options") if place[0] == "options" else None
    number = place[1] if len(place) > 1 else None
    option = options[number] if isinstance(options, list) and isinstance(number, int) else None
    return option if isinstance(option, Keys) else Keys({}, {}, 1)


def _holds(root: Keys, place: Place) -> bool:
    said: Any = root
    for part in place[:-1]:
        said = said[part]
    return place[-1] in said


def _hope(field: FieldInfo) -> str:
    """What a missing key would hold."""
    model = _inner(field)
    leaf = next((mark for mark in field.metadata if isinstance(mark, Leaf)), None)
    if leaf:
        return leaf.wanted()
    keys = ", ".join(list(_fields(model))[:6]) if model else ""
    return f"expected keys such as {keys}"
