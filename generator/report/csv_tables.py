"""Which tables does a spreadsheet get out of the results?"""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping
from typing import Any

from generator.analyses.wiring.set_values import Settings
from generator.records import key_of, numbers_of, records_of
from generator.report.declared import PLACES
from generator.report.page import PLACEHOLDER, Page, bare_text
from generator.report.tree import dictionary
from generator.units.kinds import KINDS
from generator.verbatim import as_typed

Rows = list[dict[str, Any]]


def csv_tables(results: Mapping[str, Any], batteries_only: bool = False) -> dict[str, str]:
    """Every list of records in the results as one CSV text, by the name of its key.

    Lists that each option has become one table, with the option's id in the first column;
    ``batteries_only`` leaves out what the diesels have in them.
    """
    tables: dict[str, Rows] = {}
    collect(tables, results, {})
    for option in results.get("options", []):
        if not batteries_only or option.get("kind") == "battery":
            collect(tables, option, {"option": option.get("id")})
            tables.setdefault("installation_settings", []).extend(settings(option))
    tables.pop("options", None)
    page = Page(dict(results))
    texts = {name: csv_text(_told(page, rows)) for name, rows in tables.items() if rows}
    return texts if batteries_only else {**texts, "data_dictionary": csv_text(described())}


def described() -> Rows:
    """Key, unit and meaning of every declared number of the results."""
    rows = [row for place, kinds in PLACES for kind in kinds for row in dictionary(kind, place)]
    once = {
        key: {"key": key.lstrip("."), "unit": unit, "meaning": meaning}
        for key, unit, meaning in rows
    }
    return list(once.values())


def settings(option: Mapping[str, Any]) -> Rows:
    """What is set in each device of an option, with the reason; one row for each value."""
    made = (option.get("installation") or {}).get("settings") or {}
    return [
        {
            "option": option.get("id"),
            "device": made[device]["device"],
            "setting": said.label,
            "value": made[device][key_of(name, said.kind)],
            "unit": KINDS[said.kind].metric.unit,
            "reason": made[device][f"words_{name}"],
        }
        for device, (record,) in records_of(Settings).items()
        if made.get(device)
        for name, said in numbers_of(record).items()
    ]


def _told(page: Page, rows: Rows) -> Rows:
    """Rows whose sentences carry their numbers in place of the keys of them."""
    return [
        {
            key: bare_text(page.text(value))
            if isinstance(value, str) and PLACEHOLDER.search(value)
            else value
            for key, value in row.items()
        }
        for row in rows
    ]


def collect(tables: dict[str, Rows], part: Mapping[str, Any], first: Mapping[str, Any]) -> None:
    """Add the lists of records found in one part, and one level below it."""
    for key, value in part.items():
        if is_records(value):
            tables.setdefault(key, []).extend({**first, **flat(record)} for record in value)
        elif isinstance(value, dict):
            for inner, records in value.items():
                if is_records(records):
                    rows = tables.setdefault(f"{key}_{inner}", [])
                    rows.extend({**first, **flat(record)} for record in records)


def is_records(value: Any) -> bool:
    """Whether a value is a list of mappings."""
    return isinstance(value, list) and bool(value) and all(isinstance(row, dict) for row in value)


def flat(record: Mapping[str, Any], before: str = "") -> dict[str, Any]:
    """One row: mappings inside a record become columns with dotted names."""
    row: dict[str, Any] = {}
    for key, value in record.items():
        if isinstance(value, dict):
            row.update(flat(value, f"{before}{key}."))
        elif isinstance(value, list):
            row[before + key] = "; ".join(_in_cell(item) for item in value)
        else:
            row[before + key] = value
    return row


def _in_cell(item: Any) -> str:
    """One entry of a list: a record by its words."""
    return str(item.get("words", item) if isinstance(item, dict) else item)


def csv_text(rows: Rows) -> str:
    """The rows with one line of names; a name missing in a row is an empty cell."""
    names = list(dict.fromkeys(name for row in rows for name in row))
    sheet = io.StringIO()
    writer = csv.DictWriter(sheet, names, lineterminator="\n")
    writer.writeheader()
    writer.writerows({name: cell(value) for name, value in row.items()} for row in rows)
    return sheet.getvalue()


def cell(value: Any) -> Any:
    """A value that no spreadsheet program takes for a formula."""
    if not isinstance(value, str):
        return value
    text = as_typed(value)
    return f"'{text}" if text.startswith(("=", "+", "-", "@", "\t", "\r")) else text
