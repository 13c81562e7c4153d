"""Which tables does a spreadsheet get out of the results?"""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping
from typing import Any

from generator.analyses.option import OptionAnswers
from generator.analyses.verdict.criteria.after_one_fault import AfterOneFault
from generator.analyses.verdict.criteria.against_wind import AgainstWind
from generator.analyses.verdict.criteria.battery_currents import BatteryCurrents
from generator.analyses.verdict.criteria.boat_value import BoatValue
from generator.analyses.verdict.criteria.calm_speed import CalmSpeed
from generator.analyses.verdict.criteria.charge_ceiling import ChargeCeiling
from generator.analyses.verdict.criteria.cold import Cold
from generator.analyses.verdict.criteria.compartment import Space
from generator.analyses.verdict.criteria.continuous_power import HeldCruise
from generator.analyses.verdict.criteria.conversion import Conversion
from generator.analyses.verdict.criteria.design_area import DesignArea
from generator.analyses.verdict.criteria.evidence import Evidence
from generator.analyses.verdict.criteria.foul_gate import FoulGate
from generator.analyses.verdict.criteria.healthy_engine import PresentEngine
from generator.analyses.verdict.criteria.house_supply import HouseSupply
from generator.analyses.verdict.criteria.insurer import Insurer
from generator.analyses.verdict.criteria.legs_covered import LegsCovered
from generator.analyses.verdict.criteria.mass_change import MassChange
from generator.analyses.verdict.criteria.mooring import Mooring
from generator.analyses.verdict.criteria.must_make_leg import MustMakeLeg
from generator.analyses.verdict.criteria.payback import Payback
from generator.analyses.verdict.criteria.power_per_tonne import PowerPerTonne
from generator.analyses.verdict.criteria.propeller_match import PropellerMatch
from generator.analyses.verdict.criteria.recharge import Recharge
from generator.analyses.verdict.criteria.reserve_kept import ReserveKept
from generator.analyses.verdict.criteria.stopping import Stopping
from generator.analyses.verdict.criteria.trim_and_list import TrimAndList
from generator.analyses.year.climate import Climate
from generator.analyses.year.house import HouseLoads
from generator.report.page import PLACEHOLDER, Page, bare_text
from generator.report.tree import dictionary
from generator.verbatim import as_typed

Rows = list[dict[str, Any]]
FACTS: Mapping[int, Any] = {  # by the number of the criterion
    1: MustMakeLeg, 2: LegsCovered, 3: ReserveKept, 4: AgainstWind, 5: HeldCruise, 6: AgainstWind,
    7: CalmSpeed, 8: PowerPerTonne, 9: FoulGate, 10: AfterOneFault, 11: Recharge, 12: Mooring,
    13: HouseSupply, 14: BatteryCurrents, 15: Cold, 16: MassChange, 17: TrimAndList,
    18: DesignArea, 19: Space, 20: Insurer, 21: Conversion, 22: ChargeCeiling, 23: PropellerMatch,
    24: Stopping, 25: Payback, 26: BoatValue, 27: PresentEngine, 28: Evidence,
}  # fmt: skip


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
    tables.pop("options", None)
    page = Page(dict(results))
    texts = {name: csv_text(_told(page, rows)) for name, rows in tables.items() if rows}
    return texts if batteries_only else {**texts, "data_dictionary": csv_text(described())}


def described() -> Rows:
    """Key, unit and meaning of every declared number of the results."""
    rows = [*dictionary(OptionAnswers, "options.*")]
    rows += [*dictionary(Climate, "weather"), *dictionary(HouseLoads, "house_loads")]
    for number, facts in FACTS.items():
        rows += dictionary(facts, f"options.*.verdict.criteria.{number - 1}.facts")
    return [{"key": key, "unit": unit, "meaning": meaning} for key, unit, meaning in rows]


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
            row[before + key] = "; ".join(str(item) for item in value)
        else:
            row[before + key] = value
    return row


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
