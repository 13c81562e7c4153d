"""Figures of the cost: which input moves the money, and where does the answer turn?"""

from __future__ import annotations

from generator.report.figures.break_even import break_even
from generator.report.figures.money_swing import money_swing
from generator.report.page import Page
from generator.report.parts import Figure

BASELINES = {"new diesel": "a new diesel", "keep": "keeping the present diesel"}


def turning(page: Page) -> list[Figure]:
    """The tornado and the maps, motor beside motor; none without a baseline."""
    if page.value("money.fair_baseline") is None:
        return []
    swung = [motor for motor in page.motors if page.keys(f"{motor}.cost.swing")]
    mapped = [motor for motor in page.motors if page.value(f"{motor}.cost.maps")]
    return [
        *([_swing(page, swung)] if swung else []),
        *([_maps(page, mapped)] if mapped else []),
    ]


def _swing(page: Page, motors: list[str]) -> Figure:
    fair = BASELINES[page.value("money.fair_baseline")]
    said = "; ".join(_most(page, motor) for motor in motors)
    best = ", ".join(
        f"{{{motor}.name|given}} {{{motor}.cost.swing_middle_money|money:signed}}"
        for motor in motors
    )
    return Figure(
        "money-swing",
        page.text(f"Saved against {fair}: {said}."),
        page.text(
            "Each doubtful input at its one-in-ten point (hatched) and its nine-in-ten point "
            f"(filled), all else at the best estimate, the upright line: {best}. More rows: "
            "tables/cost_swing.csv."
        ),
        lambda: money_swing(page),
    )


def _most(page: Page, motor: str) -> str:
    rows = page.keys(f"{motor}.cost.swing")
    best = page.value(f"{motor}.cost.swing_middle_money")
    turns = any(
        (page.value(f"{row}.at_{end}_money") or 0.0) * best < 0
        for row in rows for end in ("low", "high")
    )  # fmt: skip
    word = "one alone can turn the sign" if turns else "none alone turns the sign"
    if page.value(f"{rows[0]}.swing_money") is None:
        return f"{{{motor}.name|given}} has no value at one end of {{{rows[0]}.what|given}}; {word}"
    return (
        f"{{{motor}.name|given}} moves most with {{{rows[0]}.what|given}}, by "
        f"{{{rows[0]}.swing_money|money}}; {word}"
    )


def _maps(page: Page, motors: list[str]) -> Figure:
    fair = BASELINES[page.value("money.fair_baseline")]
    return Figure(
        "break-even",
        page.text(" ".join(_break_even(page, motor, fair) for motor in motors)),
        page.text(
            "Sand: the motor is the dearer one over {planning.horizon_years|years}; green, beyond "
            "a heavy line: the cheaper one. Thin lines: money saved; the dot: as she is."
        ),
        lambda: break_even(page),
    )


def _break_even(page: Page, motor: str, fair: str) -> str:
    """Where on the maps the answer turns, in numbers of this boat."""
    turn, year = f"{motor}.cost.turn", f"{motor}.year.motoring_h"
    hours = (
        f"breaks even with {fair} at {{{turn}.hours_h|hours}} a year"
        if page.value(f"{turn}.hours_h") is not None
        else f"does not break even with {fair} up to {{{turn}.most_hours_h|hours}} a year"
    )
    if not page.value(f"{motor}.cost.maps.hours_and_fuel"):
        hours = "has no leg that is motored"
    bank = (
        f"at today's hours it would with the bank at {{{turn}.bank_money|money}}"
        if page.value(f"{turn}.bank_money") is not None
        else "at today's hours it would not, even with the bank at "
        f"{{{turn}.least_bank_money|money}}"
    )
    if not page.value(f"{motor}.cost.maps.price_and_life"):
        bank = "the ledger names no price of a bank"
    return f"{{{motor}.name|given}} {hours} (today {{{year}|hours}}); {bank}."
