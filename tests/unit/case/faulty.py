"""A small and a full valid case, and the same with pieces of text exchanged."""

from __future__ import annotations

from pathlib import Path

from generator.case.case import Case
from generator.case.open import read_case
from generator.errors import CaseError, Fault

ROOT = Path(__file__).parents[3]
FULL = (Path(__file__).parent / "full.yaml").read_text(encoding="utf-8")
SMALL = (Path(__file__).parent / "small.yaml").read_text(encoding="utf-8")


def changed(*exchanges: tuple[str, str], text: str = SMALL) -> str:
    """The text with each piece exchanged; a piece must stand in it exactly once."""
    for old, new in exchanges:
        assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
        text = text.replace(old, new)
    return text


def read(folder: Path, text: str) -> Case:
    """The case that a text holds."""
    path = folder / "boat.yaml"
    path.write_text(text, encoding="utf-8")
    return read_case(path)


def faults(folder: Path, text: str) -> list[Fault]:
    """What is wrong with a text."""
    try:
        read(folder, text)
    except CaseError as error:
        return error.faults
    return []


def lines(folder: Path, text: str) -> list[str]:
    """What is wrong, as printed, without the folder."""
    return [str(fault).removeprefix(f"{folder}/") for fault in faults(folder, text)]


def line_of(text: str, piece: str) -> int:
    """The line in which a piece stands first."""
    return text[: text.index(piece)].count("\n") + 1


# What the owner of the small case leaves open: no leg that must be made, nothing that charges her.
LEFT_OPEN = ("legs", "options[2].supply", "options[3].supply")


def doubts(folder: Path, text: str) -> tuple[Fault, ...]:
    """The warnings of a case, without those that the small case has already."""
    return tuple(
        warning
        for warning in read(folder, text).warnings
        if warning.path != LEFT_OPEN[0] and warning.problem != "has no way to charge the bank"
    )
