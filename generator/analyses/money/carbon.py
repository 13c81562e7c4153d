"""What do the results say of carbon: made, emitted, saved, and when is the making repaid?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Any

import numpy as np

from generator.analyses.findings import Findings
from generator.analyses.money.emissions import Emissions
from generator.analyses.money.savings import NOT_MOTORED
from generator.analyses.percentiles import held_share, lacking_share
from generator.arrays import Array, Numbers
from generator.records import number, record

UNPLUGGED = ("own", "genset")  # charged by
COMPARED = ("saved_yearly", "diesel_yearly", "extra_made", "payback", "never", "within_life")


@record
class CarbonResult:
    """Carbon dioxide of one option, against the diesel that would run otherwise."""

    charged_by: str  # fuel, wall, genset, own (sun and wind), nothing
    country: str | None  # of the electricity that is bought; none where none is
    table: int | None = number("year", "year of the figure of the grid")
    grid: Numbers | None = number("intensity", "carbon of the electricity", expected=True)
    bank_made: Array = number("mass_about", "to make the battery", "high")
    drive_made: Array = number("mass_about", "to make motor and controller, or engine", "high")
    yearly: Array | None = number("mass_about", "emitted each year", "high")
    saved_yearly: Array | None = number("mass_about", "saved each year", "low")
    diesel_yearly: Array | None = number(
        "mass_about", "emitted each year by the diesel that would run otherwise", "high"
    )
    extra_made: Array | None = number(
        "mass_about", "to make, above what the baseline needs", "high"
    )
    payback: Array | None = number("years", "years until the making is repaid", "high")
    never: float | None = number("share", "share of the draws that never repay it")
    within_life: float | None = number("share", "chance of repaying it within the battery's life")
    absent: Mapping[str, str] = field(default_factory=dict)


def carbon(found: Findings) -> CarbonResult | None:
    """From the emissions; none where they were not asked for."""
    made = found.emissions
    if made is None:
        return None
    return CarbonResult(
        charged_by=made.charged_by,
        country=made.mix.country or None,
        table=made.mix.year,
        grid=made.mix.intensity,
        bank_made=made.bank_made,
        drive_made=made.drive_made,
        yearly=made.yearly,
        **_against(found, made),
        absent=_absent(made),
    )


def _against(found: Findings, made: Emissions) -> dict[str, Any]:
    """Saved each year, and the year in which the making is repaid."""
    if made.payback is None or made.yearly is None or made.diesel_yearly is None:
        return dict.fromkeys(COMPARED)
    bank = found.option.bank
    life = np.inf if bank is None else np.asarray(bank.lasts, dtype=np.float64)
    return {
        "saved_yearly": made.diesel_yearly - made.yearly,
        "diesel_yearly": made.diesel_yearly,
        "extra_made": made.extra_made,
        "payback": made.payback,
        "never": lacking_share(made.payback),
        "within_life": held_share(made.payback <= life),
    }


def _absent(made: Emissions) -> dict[str, str]:
    """Why a number is absent, by its field."""
    grid = _no_grid(made)
    whys = dict.fromkeys(("yearly", *COMPARED), NOT_MOTORED)
    if made.yearly is None:
        whys = dict.fromkeys(whys, grid)
    elif made.payback is None:
        whys |= dict.fromkeys(COMPARED, "nothing_to_hold_against")
    else:
        lacks = np.isnan(made.payback).any()
        whys["payback"] = "never_or_not_motored" if lacks else "never_at_this_use"
    table = grid if made.mix.intensity is None else "figure_of_the_case"
    return whys | {"grid": grid, "table": table}


def _no_grid(made: Emissions) -> str:
    """Why there is no figure of the electricity that is bought."""
    if made.charged_by == "nothing":
        return "never_charged"
    return "no_plug" if made.charged_by in UNPLUGGED else "no_figure_of_the_grid"
