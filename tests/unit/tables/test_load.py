"""A table is refused when its header, names, units or cells are missing."""

from __future__ import annotations

import numpy as np
import pytest

from generator.errors import TableError
from generator.tables.load import parse_table, read_table
from generator.tables.sources import sources

HEADER = ["# title: Ropes", "# source: practice", "# valid: dry", "# confidence: memory"]
BODY = ["name,load,note", "-,N,-", "thin,1.5,", "thick,,old"]


def text(lines: list[str]) -> str:
    return "\n".join(lines) + "\n"


def test_parse_table_keeps_header_numbers_and_text() -> None:
    table = parse_table(text(HEADER + BODY), "ropes")
    assert (table.title, table.source, table.valid) == ("Ropes", "practice", "dry")
    assert table.confidence == "memory"
    assert table.names == ("name", "load", "note")
    assert table.units == ("-", "N", "-")
    assert table.column("load")[0] == 1.5
    assert np.isnan(table.column("load")[1])
    assert table.text("note") == ("", "old")
    assert table.row_of("name", "thick") == 1


@pytest.mark.parametrize("missing", range(4))
def test_parse_table_refuses_a_missing_header_line(missing: int) -> None:
    lines = HEADER[:missing] + HEADER[missing + 1 :] + BODY
    with pytest.raises(TableError, match="line"):
        parse_table(text(lines), "ropes")


def test_parse_table_refuses_an_empty_header_line() -> None:
    with pytest.raises(TableError, match="title"):
        parse_table(text(["# title:", *HEADER[1:], *BODY]), "ropes")


@pytest.mark.parametrize(
    ("body", "words"),
    [
        ([], "names"),
        (["1,2", "-,N"], "names"),
        (["load,load", "N,N", "1,2"], "twice"),
        (["name,load"], "units"),
        (["name,load", "thin,1.5"], "units"),
        (["name,load", "-,", "thin,1.5"], "units"),
        (["name,load", "-", "thin,1.5"], "1 units for 2 names"),
        (["name,load", "-,N", "thin"], "row 1 has 1 cells"),
    ],
)
def test_parse_table_refuses_a_faulty_body(body: list[str], words: str) -> None:
    with pytest.raises(TableError, match=words):
        parse_table(text(HEADER + body), "ropes")


def test_table_names_what_it_lacks() -> None:
    table = parse_table(text(HEADER + BODY), "ropes")
    with pytest.raises(TableError, match="ropes: no numeric column 'name'"):
        table.column("name")
    with pytest.raises(TableError, match="no column 'mass'"):
        table.text("mass")
    with pytest.raises(TableError, match="no 'middling' in column 'name': thin, thick"):
        table.row_of("name", "middling")


def test_read_table_refuses_a_name_without_file() -> None:
    with pytest.raises(TableError, match="hull/none"):
        read_table("hull/none")


def test_read_table_is_read_once_and_cannot_be_changed() -> None:
    table = read_table("hull/gko1993_low")
    assert read_table("hull/gko1993_low") is table
    with pytest.raises(ValueError, match="read-only"):
        table.column("a0")[0] = 1.0


def test_matrix_puts_columns_side_by_side() -> None:
    assert read_table("hull/gko1993_low").matrix("a0", "a9").shape == (14, 2)


def test_sources_are_found_by_key() -> None:
    found = sources()["schultz2007"]
    assert found.text.startswith("Schultz, M. P. (2007): Effects of coating roughness")
    assert found.text.endswith("doi 10.1080/08927010701461974")


def test_source_without_author_is_its_title() -> None:
    assert sources()["practice"].text == "Common practice of the trade, no published source"
