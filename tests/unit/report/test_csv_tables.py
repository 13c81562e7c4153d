"""Spreadsheet tables hold every list of the results, one row a record."""

from __future__ import annotations

from generator.report.csv_tables import cell, csv_tables

RESULTS = {
    "schema": 1,
    "inputs": [{"path": "boat.beam", "value": 3.02, "from": None}],
    "cautions": [],
    "options": [
        {
            "id": "keep",
            "legs": [{"name": "home", "need_kwh": 4.5}],
            "verdict": {"word": "go", "criteria": [{"id": 1, "why": "a, b"}]},
        },
        {"id": "a", "legs": [{"name": "home", "fits": True, "bank": {"new": 1, "aged": 2}}]},
    ],
}


def test_csv_tables_gives_one_table_for_each_list_of_records() -> None:
    assert set(csv_tables(RESULTS)) == {
        "data_dictionary", "inputs", "legs", "verdict_criteria",
    }  # fmt: skip


def test_csv_tables_puts_the_option_first_and_joins_all_columns() -> None:
    assert csv_tables(RESULTS)["legs"].splitlines() == [
        "option,name,need_kwh,fits,bank.new,bank.aged",
        "keep,home,4.5,,,",
        "a,home,,True,1,2",
    ]


def test_csv_tables_quotes_commas_and_leaves_the_absent_empty() -> None:
    tables = csv_tables(RESULTS)
    assert tables["verdict_criteria"] == 'option,id,why\nkeep,1,"a, b"\n'
    assert tables["inputs"] == "path,value,from\nboat.beam,3.02,\n"


def test_cell_disarms_text_that_a_spreadsheet_would_compute() -> None:
    assert cell("=1+1") == "'=1+1"
    assert cell(-4.5) == -4.5
    assert cell("a-b") == "a-b"
