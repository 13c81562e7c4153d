"""What does results.json say of carbon: made, emitted, saved, and when repaid?"""

from __future__ import annotations

from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.money.emissions import Emissions
from generator.analyses.percentiles import lacking_share, scalar
from generator.report.results.suffix import NEVER_CHARGED, NOT_MOTORED, excused, told_of

Row = dict[str, Any]
G_PER_KWH = 3.6e9  # per kg/J
NEVER = "never at this use"
NO_PLUG = "no electricity is bought: she has no plug"


def carbon_part(found: Findings) -> Row | None:
    """Carbon dioxide of one option, against the diesel that would run otherwise."""
    made = found.emissions
    if made is None:
        return None
    row: Row = {
        "charged_by": made.charged_by,
        "country": made.mix.country or None,
        "country_why": NO_PLUG,
        "table_year": made.mix.year,
        "grid_g_per_kwh": None
        if made.mix.intensity is None
        else scalar(made.mix.intensity) * G_PER_KWH,
        "grid_g_per_kwh_why": _no_grid(made),
        **told_of("bank_made", made.bank_made, "1", "kg"),
        **told_of("drive_made", made.drive_made, "1", "kg"),
    }
    if made.yearly is None:
        row |= {"yearly_kg": None, "yearly_kg_why": _no_grid(made)}
    else:
        row |= excused(told_of("yearly", made.yearly, "1", "kg"), NOT_MOTORED)
    return row | _against(found, made)


def _no_grid(made: Emissions) -> str | None:
    """Why there is no figure of the electricity that is bought."""
    if made.charged_by == "nothing":
        return NEVER_CHARGED
    if made.charged_by in ("own", "genset"):
        return NO_PLUG
    if made.mix.intensity is not None:
        return None
    return f"no figure for the electricity of {made.mix.country}: set carbon.grid"


def _against(found: Findings, made: Emissions) -> Row:
    """Saved each year, and the year in which the making is repaid, with its band."""
    if made.payback is None or made.diesel_yearly is None or made.extra_made is None:
        known = made.yearly is not None
        why = "nothing to hold it against" if known else _no_grid(made)
        return {"payback_years": None, "payback_years_why": why, "saved_yearly_kg": None,
                "saved_yearly_kg_why": why}  # fmt: skip
    assert made.yearly is not None
    saved = made.diesel_yearly - made.yearly
    row = told_of("saved_yearly", saved, "1", "kg", cautious="low")
    row |= told_of("diesel_yearly", made.diesel_yearly, "1", "kg")
    row |= told_of("extra_made", made.extra_made, "1", "kg")
    row = excused(row, NOT_MOTORED)
    never = f"{NEVER}, or {NOT_MOTORED}" if np.isnan(made.payback).any() else NEVER
    row |= excused(told_of("payback", made.payback, "years"), never)
    rows = made.payback[1:] if made.payback.shape[0] > 1 else made.payback
    row["never_share"] = lacking_share(made.payback)
    bank = found.option.bank
    life = np.inf if bank is None else np.asarray(bank.lasts)
    row["within_life_share"] = float((rows <= _draws(life, made.payback.shape[0])).mean())
    return row


def _draws(life: object, rows: int) -> Any:
    values = np.atleast_2d(np.asarray(life, dtype=np.float64))
    return values[1:] if values.shape[0] > 1 and rows > 1 else values
