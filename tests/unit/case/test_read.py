"""What the reader makes of YAML: texts with lines, and nothing guessed."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.case.read import Hole, Items, Scalar, Section, read_document
from generator.errors import CaseError


def section(folder: Path, text: str) -> Section:
    path = folder / "boat.yaml"
    path.write_text(text, encoding="utf-8")
    return read_document(path).root


def problems(folder: Path, text: str) -> list[tuple[int, str, str]]:
    path = folder / "boat.yaml"
    path.write_text(text, encoding="utf-8")
    try:
        found = read_document(path).faults
    except CaseError as error:
        found = tuple(error.faults)
    return [(fault.line, fault.path, fault.problem) for fault in found]


@pytest.mark.parametrize(
    "word", ["NO", "Off", "yes", "12:30", "0o12", "1e3", "~", "null", "2026-05-17", "1_000", ".inf"]
)
def test_read_document_guesses_no_types(tmp_path: Path, word: str) -> None:
    node = section(tmp_path, f"a: {word}\n").nodes["a"]
    assert isinstance(node, Scalar)
    assert node.text == word


def test_read_document_remembers_lines(tmp_path: Path) -> None:
    root = section(tmp_path, "a: 1\n\nb:\n  c: 2\n  d:\n    - 3\n    - {e: 4}\n")
    b = root.nodes["b"]
    assert isinstance(b, Section)
    d = b.nodes["d"]
    assert isinstance(d, Items)
    last = d.nodes[1]
    assert isinstance(last, Section)
    e = last.nodes["e"]
    assert isinstance(e, Scalar)
    assert (root.lines["b"], b.lines["c"], b.lines["d"], last.line) == (3, 4, 5, 7)
    assert (e.line, e.column) == (7, 11)


def test_read_document_takes_a_byte_order_mark_and_foreign_line_ends(tmp_path: Path) -> None:
    root = section(tmp_path, "\ufeffa: ä\r\nb: 2\r\n")
    assert list(root.nodes) == ["a", "b"]
    assert root.lines["b"] == 2


def test_an_alias_leaves_a_hole(tmp_path: Path) -> None:
    assert problems(tmp_path, "a: &x 1\nb: *x\n") == [(2, "b", "is the alias `*x`")]
    path = tmp_path / "boat.yaml"
    assert isinstance(read_document(path).root.nodes["b"], Hole)


def test_every_fault_of_form_is_told_at_once(tmp_path: Path) -> None:
    text = "a: &x {b: 1}\nc: *x\nd: !!str NO\nd: 2\ne:\n  <<: *x\n? [f]\n: 1\n"
    assert problems(tmp_path, text) == [
        (2, "c", "is the alias `*x`"),
        (3, "d", "has the tag `!!str`"),
        (4, "d", "is given twice"),
        (6, "e", "has a merge key"),
        (7, "", "has a key that is not plain text"),
    ]


@pytest.mark.parametrize(
    ("text", "line", "problem"),
    [
        ("", 1, "is empty"),
        ("# nothing\n", 2, "is empty"),
        ("- 1\n", 1, "holds no keys"),
        ("word\n", 1, "holds no keys"),
        ("a: 1\n---\nb: 2\n", 2, "a second document starts"),
        ("a: 1\n b: 2\n", 2, "is not YAML: mapping values are not allowed in this context"),
        ("a: [1\n", 2, "is not YAML: did not find expected ',' or ']'"),
        ("a: 1\nb: \x07\n", 2, "holds the control character U+0007"),
        ("a: 1\nb: c\u202ed\n", 2, "holds the control character U+202E"),
    ],
)
def test_read_document_refuses(tmp_path: Path, text: str, line: int, problem: str) -> None:
    found = problems(tmp_path, text)
    assert len(found) == 1
    assert (found[0][0], found[0][2]) == (line, problem)


def test_twelve_levels_are_read_and_thirteen_refused(tmp_path: Path) -> None:
    def nested(levels: int) -> str:
        return "a: " + "[" * (levels - 1) + "1" + "]" * (levels - 1)

    assert problems(tmp_path, nested(12)) == []
    assert problems(tmp_path, nested(13))[0][2] == "goes deeper than 12 levels"


def test_a_missing_file_is_a_fault(tmp_path: Path) -> None:
    with pytest.raises(CaseError, match="there is no such file"):
        read_document(tmp_path / "none.yaml")
    with pytest.raises(CaseError, match="is a folder"):
        read_document(tmp_path)
