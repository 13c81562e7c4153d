"""What does results.json say of what moves the money, and of where the answer turns?"""

from __future__ import annotations

from typing import Any

from generator.analyses.findings import Findings
from generator.analyses.money.break_even import Grid, Turn
from generator.analyses.percentiles import scalar
from generator.report.results.suffix import PER_SI, put
from generator.report.results.tornado_part import swing_row
from generator.sensitivity import Tornado

Row = dict[str, Any]
NO_BANK = "no propulsion battery"
NO_MAP = "no diesel to hold it against, or at the best estimate a leg of hers cannot be motored"
NOWHERE = "the saving keeps its sign on the whole map"


def turning_part(found: Findings, moved: Tornado | None) -> Row:
    """The tornado of money and the two maps; absent for the diesels themselves."""
    row: Row = {"swing": [], "maps": None}
    row["maps_why"] = NO_MAP if found.bank else NO_BANK
    if moved is not None:
        row["swing_middle_money"] = _expected(found, moved)
        row["swing"] = [swing_row(swing, "_money") for swing in moved.swings]
    if found.break_even is not None:
        row |= _maps(found)
    return row


def _expected(found: Findings, moved: Tornado) -> float:
    """The saving of the best estimate as the tables of the cost have it."""
    saving = found.savings.fairly if found.savings else None
    return moved.best if saving is None else -saving.extra


def _maps(found: Findings) -> Row:
    turning = found.break_even
    assert turning is not None
    hours, price = turning.hours_and_fuel, turning.price_and_life
    return {
        "turn": _turn(turning.turn),
        "maps": {
            "hours_and_fuel": _map(hours, ("fuel_money_per_l", 1e-3), ("hours_h", PER_SI["h"])),
            "price_and_life": _map(price, ("bank_money", 1.0), ("life_years", 1.0)),
        },
    }


def _turn(turn: Turn) -> Row:
    """Where the answer turns, how far it was looked for, and where she is."""
    row: Row = {
        "hours_h": put(turn.hours, "h"),
        "most_hours_h": put(turn.most_hours, "h"),
        "bank_money": turn.bank_price,
        "least_bank_money": turn.least_price,
        "today_bank_money": turn.price_today,
        "today_life_years": turn.life_today,
    }
    row |= {f"{key}_why": NOWHERE for key in ("hours_h", "bank_money") if row[key] is None}
    if turn.price_today is None:
        row["today_bank_money_why"] = "the ledger names no price of a bank"
    return row


def _map(grid: Grid | None, across: tuple[str, float], down: tuple[str, float]) -> list[Row]:
    """One record for each point; names and scales of both axes."""
    if grid is None:
        return []
    return [
        {
            across[0]: scalar(x) * across[1],
            down[0]: scalar(y) * down[1],
            "saving_money": saved,
        }
        for y, line in zip(grid.down, grid.saving, strict=True)
        for x, saved in zip(grid.across, line.tolist(), strict=True)
    ]
