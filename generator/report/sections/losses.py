"""Part of bank and motor: where does the battery's power go before it reaches the water?"""

from __future__ import annotations

from generator.report.figures.losses_ledger import losses_ledger
from generator.report.page import Page
from generator.report.parts import Figure, Part


def parts(page: Page) -> tuple[Part, ...]:
    """One chart for all battery options."""
    motors = [motor for motor in page.motors if page.value(f"{motor}.losses")]
    if not motors:
        return ()
    finding = page.text(
        "; ".join(_finding(page, motor, motor == motors[0]) for motor in motors) + "."
    )
    note = page.text(
        "Best estimate, bank new, calm, in service. Each bar is the power taken inside the bank "
        "and ends with what tows the hull; speeds: a knot below {planning.cruise_speed_kn|speed}, "
        "that, and the most that the continuous rating holds."
    )
    figure = Figure("losses-ledger", finding, note, lambda: losses_ledger(page, motors))
    return (Part("losses", "Losses from battery to water", (), (figure,)),)


def _finding(page: Page, motor: str, start: bool) -> str:
    rows = page.keys(f"{motor}.losses")
    cruise = rows[min(1, len(rows) - 1)]
    return (
        f"{page.called(motor, start)} at {{{cruise}.speed_kn|speed}}: of "
        f"{{{cruise}.taken_kw|power}} in the bank {{{cruise}.useful_share|share}} tow the hull"
    )
