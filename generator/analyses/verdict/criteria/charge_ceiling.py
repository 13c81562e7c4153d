"""Criterion 22: does the bank stay below the touch limit, and its cables within their rules?"""

from __future__ import annotations

from generator.analyses.findings import Findings
from generator.analyses.verdict.criteria.criterion import (
    CONDITIONAL,
    NO,
    NOT_APPLICABLE,
    Criterion,
    Judgement,
)
from generator.analyses.wiring.installation import Installation


def judge(criterion: Criterion, found: Findings) -> Judgement:
    """The voltage at the end of charge; then everything that the lists say does not hold."""
    made, wiring = found.installation, found.option.installation
    if made is None or wiring is None:
        return Judgement(criterion, None, None, "-", NOT_APPLICABLE, "no propulsion battery", "")
    ceiling = made.voltages.ceiling
    result, flip = criterion.judge(ceiling), ""
    key = f"options.{found.place}.installation"
    why = (
        f"{{{key}.voltages.cells|count}} cells reach {{{key}.voltages.ceiling_v|voltage}} on "
        f"charge; short circuits of up to {{{key}.fault.bank_most_ka|short_circuit}} are to be "
        "broken" + ("" if made.fault.by_maker else ", for the maker to confirm")
    )
    if result == NO:
        expert = bool(wiring.specialist_design and wiring.insulation_monitor)
        result = CONDITIONAL if expert else NO
        flip = "one cell fewer in series" if expert else (
            "fewer cells in series, or a specialist's design with insulation monitor"
        )  # fmt: skip
    if made.problems:
        result = NO if result == NO else CONDITIONAL
        why += f"; {made.problems[0]}{_more(made)}"
        flip = "; ".join(
            part for part in (flip, "the cables and fuses that the lists name") if part
        )
    numbers = {"problems": float(len(made.problems))}
    return Judgement(criterion, ceiling, ceiling, "v", result, why, flip, "", numbers)


def _more(made: Installation) -> str:
    return " ({here.problems|count} in all)" if len(made.problems) > 1 else ""
