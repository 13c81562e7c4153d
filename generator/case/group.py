"""What do all sections of a case file share?"""

from __future__ import annotations

from dataclasses import replace
from typing import Any, get_origin

from pydantic import BaseModel, ConfigDict, Field, model_validator

from generator.case.read import Hole, Scalar
from generator.case.said import Keys, Said


def needed(empty: Any = None) -> Any:
    """The mark of a key without which there is no study; ``empty`` stands in for it."""
    return Field(default=empty, json_schema_extra={"needed": True})


NEEDED = needed()
NEEDED_LIST = needed(())


class Group(BaseModel):
    """A section of the file; a refused one counts as empty."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    @model_validator(mode="before")
    @classmethod
    def _nothing_in_a_hole(cls, data: object) -> object:
        if isinstance(data, Hole):
            return {}
        if not isinstance(data, Keys):
            return data
        lists = {key for key, value in data.items() if isinstance(value, Hole)} & _lists(cls)
        if not lists:
            return data
        return Keys({**data, **{key: [] for key in lists}}, data.lines, data.line)


def _lists(model: type[BaseModel]) -> set[str]:
    """The keys of a section that hold lists."""
    fields = model.model_fields.items()
    return {name for name, field in fields if get_origin(field.annotation) is tuple}


def with_neighbours(data: object, amount: str) -> object:
    """A list item whose ``from`` and ``plus_minus`` belong to its amount."""
    main = data.get(amount) if isinstance(data, Keys) else None
    if not isinstance(data, Keys) or not isinstance(main, Said):
        return data
    origin, doubt = data.get("from"), data.get("plus_minus")
    moved = replace(
        main,
        origin=main.origin or _scalar(origin),
        doubt=main.doubt or _scalar(doubt),
        beside=main.origin is None and main.doubt is None,
    )
    return Keys({**data, amount: moved}, data.lines, data.line)


def _scalar(said: object) -> Scalar | None:
    return Scalar(said.text, said.line, said.column) if isinstance(said, Said) else None
