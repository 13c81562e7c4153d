"""Broken and malicious files are refused, with a line, before anything is built from them."""

from __future__ import annotations

import contextlib
from pathlib import Path

import pytest

from generator.case.open import read_case
from generator.errors import CaseError
from tests.unit.case.faulty import SMALL, line_of

BOMB = "a0: &a0 [x, x]\n" + "".join(
    f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]\n" for n in range(1, 9)
)
OBJECT = "a: !!python/object/apply:os.system ['true']\n"

# name, bytes, line of the fault told first, what it says
FILES = {
    "over_a_megabyte": (b"# " + b"x" * 1_000_000 + b"\n", 1, "larger than 1 MB"),
    "a_megabyte_of_lines": (b"a: 1\n" * 250_000, 200_001, "larger than 1 MB"),
    "latin_1": ("a: 1\nname: Möwe\n".encode("latin-1"), 2, "not UTF-8"),
    "utf_16": ("a: 1\n".encode("utf-16"), 1, "not UTF-8"),
    "truncated_utf_8": (b"a: 1\n\nb: \xe2\x82", 3, "not UTF-8"),
    "overlong_utf_8": (b"a: \xc0\xaf\n", 1, "not UTF-8"),
    "nul": (b"a: 1\nb: \x00\n", 2, "U+0000"),
    "escape": (b"a: \x1b[31m\n", 1, "U+001B"),
    "delete": (b"a: 1\nb: 2\nc: \x7f\n", 3, "U+007F"),
    "direction_mark": ("a: 1\nb: 1\u202e2\n".encode(), 2, "U+202E"),
    "line_separator": ("a: 1\u2028b: 2\n".encode(), 1, "U+2028"),
    "bomb_of_aliases": (BOMB.encode(), 2, "is the alias `*a0`"),
    "alias_of_itself": (b"a: &a [*a]\n", 1, "is the alias `*a`"),
    "merge_key": (b"a: &a {b: 1}\nc:\n  <<: *a\n", 3, "has a merge key"),
    "merge_of_plain_keys": (b"a:\n  <<: {b: 1}\n", 2, "has a merge key"),
    "tag_of_an_object": (OBJECT.encode(), 1, "has the tag"),
    "tag_of_a_type": (b"a: 1\nb: !!float 2\n", 2, "has the tag"),
    "tag_of_nothing": (b"a: ! 1\n", 1, "has the tag `!`"),
    "tag_of_binary": (b"a: !!binary aGk=\n", 1, "has the tag"),
    "tag_of_a_set": (b"a: !!set {b, c}\n", 1, "has the tag"),
    "thirteen_levels": (b"a: " + b"[" * 12 + b"]" * 12, 1, "deeper than 12"),
    "a_thousand_levels": (b"a: " + b"[" * 900, 1, "deeper than 12"),
    "a_hundred_thousand_levels": (b"a: " + b"[" * 100_000, 1, "deeper than 12"),
    "levels_of_sections": (b"{a: " * 500, 1, "deeper than 12"),
    "levels_of_blocks": (b"- " * 100_000, 1, "deeper than 12"),
    "keys_of_keys": (b"? " * 100_000, 1, "deeper than 12"),
    "duplicate_key": (b"version: 1\nversion: 1\n", 1, "is missing"),
    "second_document": (b"version: 1\n---\nversion: 1\n", 1, "is missing"),
    "many_values": (b"a: [" + b"x," * 400_000 + b"]", 1, "more than 5000 keys"),
    "many_keys": (b"".join(b"k%d: 1\n" % n for n in range(60_000)), 2_500, "more than 5000 keys"),
    "a_long_text": (b"version: '" + b"1" * 900_000 + b"'\n", 1, "version: is `111"),
    "a_long_key": (b"k" * 900 + b": 1\n", 1, "unknown key"),
    "a_long_number": (b"version: 1\nlegs: " + b"9" * 500_000 + b"\n", 1, "is missing"),
    "a_list": (b"- version\n", 1, "holds no keys"),
    "nothing": (b"", 1, "is empty"),
    "an_open_quote": (b"a: 'b\nc: d\n", 3, "not YAML"),
    "a_tab": (b"a:\n\tb: 1\n", 2, "not YAML"),
}


def faults(folder: Path, content: bytes) -> list[tuple[int, str]]:
    path = folder / "boat.yaml"
    path.write_bytes(content)
    with pytest.raises(CaseError) as caught:
        read_case(path)
    return [(fault.line, str(fault)) for fault in caught.value.faults]


@pytest.mark.parametrize("name", FILES)
def test_a_hostile_file_is_refused_with_its_line(tmp_path: Path, name: str) -> None:
    content, line, message = FILES[name]
    found = faults(tmp_path, content)
    assert any(at == line and message in text for at, text in found), found[:3]


@pytest.mark.parametrize("name", FILES)
def test_a_message_holds_no_control_character_and_is_short(tmp_path: Path, name: str) -> None:
    for _, text in faults(tmp_path, FILES[name][0]):
        assert text.isprintable()
        assert len(text) < 1500


@pytest.mark.parametrize(
    ("exchange", "message"),
    [
        (("name: Wren", "name: Wren\n  name: Robin"), "boat.name: is given twice"),
        (("blades: 3", "blades: &b 3\n  pitch: *b"), "propeller.pitch: is the alias `*b`"),
        (("tank: 60 l", "tank: !!str 60 l"), "engine.tank: has the tag"),
        (("options:\n", "options: !x\n"), "options: has the tag `!x`"),
    ],
)
def test_a_refused_place_in_a_good_file_is_the_only_fault(
    tmp_path: Path, exchange: tuple[str, str], message: str
) -> None:
    text = SMALL.replace(*exchange, 1)
    found = faults(tmp_path, text.encode())
    shown = [line for _, line in found if message in line]
    assert len(shown) == 1
    # where the refused value came first, the good one is then told as given twice
    assert all(message in line or "given twice" in line for _, line in found)


def test_a_second_document_is_the_only_fault_of_a_good_file(tmp_path: Path) -> None:
    text = SMALL + "---\nversion: 1\n"
    assert [line for line, _ in faults(tmp_path, text.encode())] == [line_of(text, "---")]


def test_quantities_of_hostile_text_are_refused(tmp_path: Path) -> None:
    for words in ("9**9**9**9", "1e999 m", "(" * 60, "a" * 60, "__import__('os').system('true')"):
        text = SMALL.replace("draught: 1.60 m", f'draught: "{words}"')
        found = faults(tmp_path, text.encode())
        assert len(found) == 1
        assert "boat.hull.draught" in found[0][1]


@pytest.mark.parametrize(
    "bad", ["@", "[1, 2]", "{a: b}", "!!x 1", "''", "9e99", "-1e9 m", "-", "*q"]
)
def test_any_line_of_a_good_file_may_be_broken(tmp_path: Path, bad: str) -> None:
    """Whatever stands at a key, the answer is faults or a case, never a breakdown."""
    path = tmp_path / "boat.yaml"
    rows = SMALL.splitlines()
    for number, row in enumerate(rows):
        key = row.partition(":")[0]
        path.write_text("\n".join([*rows[:number], f"{key}: {bad}", *rows[number + 1 :]]), "utf-8")
        with contextlib.suppress(CaseError):
            assert read_case(path).assumptions


def test_any_misspelled_key_is_one_fault(tmp_path: Path) -> None:
    for row in SMALL.splitlines():
        key = row.strip().removeprefix("- ").partition(":")[0]
        if row.startswith("      - "):
            continue  # a whole item of a ledger on one line
        text = SMALL.replace(row, row.replace(key, f"{key}x", 1), 1)
        assert len(faults(tmp_path, text.encode())) == 1, row
