"""What did the owner say at each place: a text, where it comes from, and how far to trust it?

Every scalar of the file, written plainly or as ``{value, from, plus_minus}``, is brought to one
shape here, so that the schema knows no alternatives.
"""

from __future__ import annotations

from dataclasses import dataclass

from generator.case.nearest import nearest
from generator.case.read import Hole, Items, Node, Scalar, Section
from generator.errors import Fault

PARTS = ("value", "from", "plus_minus")
Place = tuple[str | int, ...]


@dataclass(frozen=True)
class Said:
    """One value with its origin and its doubt, all still text."""

    text: str
    line: int
    column: int
    origin: Scalar | None = None
    doubt: Scalar | None = None
    beside: bool = False  # origin and doubt stand beside the value, in its list item


class Keys(dict[str, object]):
    """A section with the line of each of its keys."""

    def __init__(self, values: dict[str, object], lines: dict[str, int], line: int) -> None:
        super().__init__(values)
        self.lines = lines
        self.line = line


def path_text(place: Place) -> str:
    """A place as the user wrote it: ``options[1].bank.charge``."""
    text = ""
    for part in place:
        text += f"[{part}]" if isinstance(part, int) else f".{part}"
    return text.removeprefix(".")


def line_of(said: object, place: Place) -> int:
    """The line of a place, or of the section that it is missing from."""
    line = said.line if isinstance(said, Keys) else 1
    for part in place:
        if isinstance(said, Keys) and isinstance(part, str) and part in said:
            line, said = said.lines.get(part, said.line), said[part]
        elif isinstance(said, list) and isinstance(part, int) and part < len(said):
            said = said[part]
            line = said.line if isinstance(said, Keys | Said | Hole) else line
        else:
            break
    return said.line if isinstance(said, Said) else line


def normalise(node: Node, file: str, faults: list[Fault], place: Place) -> object:
    """The tree with every scalar as `Said`; what is wrong with a shape goes to the faults."""
    if isinstance(node, Scalar):
        return Said(node.text, node.line, node.column)
    if isinstance(node, Items):
        return [normalise(item, file, faults, (*place, i)) for i, item in enumerate(node.nodes)]
    if isinstance(node, Section):
        if "value" in node.nodes or set(node.nodes) == {"from", "plus_minus"}:
            return _quantity(node, file, faults, place)
        return normalise_section(node, file, faults, place)
    return node


def normalise_section(node: Section, file: str, faults: list[Fault], place: Place = ()) -> Keys:
    """A section that is no quantity."""
    below = {
        key: normalise(child, file, faults, (*place, key)) for key, child in node.nodes.items()
    }
    return Keys(below, node.lines, node.line)


def _quantity(node: Section, file: str, faults: list[Fault], place: Place) -> Said | Hole:
    """A value written with its origin and doubt."""
    parts: dict[str, Scalar] = {}
    for key, child in node.nodes.items():
        where = path_text((*place, key))
        if key not in PARTS:
            hope = nearest(key, PARTS) or f"expected {', '.join(PARTS)}"
            faults.append(Fault(file, node.lines[key], where, "unknown key", hope))
        elif isinstance(child, Scalar):
            parts[key] = child
        elif not isinstance(child, Hole):
            problem = "is not a single value"
            faults.append(Fault(file, node.lines[key], where, problem, "expected one text"))
    if "value" not in node.nodes:
        where = path_text((*place, "value"))
        faults.append(Fault(file, node.line, where, "is missing", "expected the value itself"))
    if "value" not in parts:
        return Hole(node.line)
    value = parts["value"]
    return Said(value.text, value.line, value.column, parts.get("from"), parts.get("plus_minus"))
