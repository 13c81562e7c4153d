"""Which defaults of an option's motor become others when the motor does?"""

from __future__ import annotations

from dataclasses import fields, replace
from typing import Any

from generator.analyses.findings import Findings
from generator.answer.values import redrawn
from generator.case.option import Motor
from generator.case.register import find_default, sized

KEY = "options.motor"


def refilled(
    found: Findings, place: int, power: float, ratio: float, cooling: str | None
) -> dict[tuple[str, ...], Any]:
    """Fields of the motor that the case leaves to the register, where its row is another now."""
    words = (*(("direct",) if ratio == 1.0 else ()), *((cooling,) if cooling else ()))
    taken = {item.path: item for item in found.case.assumptions}
    changed: dict[tuple[str, ...], Any] = {}
    for part in fields(Motor):
        own = taken.get(f"options[{place}].motor.{part.name}")
        row = find_default(f"{KEY}.{part.name}", words)
        if own is None or own.origin != "default" or row is None:
            continue
        row = sized(row, {"continuous power": power})
        values = {name: getattr(row, name) for name in ("value", "low", "high", "shape")}
        if any(getattr(own, name) != value for name, value in values.items()):
            item = replace(own, draw_key=row.draw_key, **values)
            changed["options", str(place), "motor", part.name] = redrawn(item)
    return changed
