"""Section: which hazards and rules apply, to which number, and who must confirm it?"""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part
from generator.report.template import pieces

TEMPLATE = "sections/cautions.html"


@dataclass(frozen=True)
class Item:
    """One caution, with the one who confirms it."""

    title: Markup
    text: Markup
    confirm: Markup


def lead(_page: Page) -> Markup:
    """What the study does not replace."""
    said: Markup = pieces(TEMPLATE, "lead")()
    return said


def parts(page: Page) -> tuple[Part, ...]:
    """One row for each caution, and whose figures they are."""
    rows = [
        Item(
            page.sentence(f"{key}.title"),
            page.sentence(f"{key}.text"),
            page.sentence(f"{key}.confirm"),
        )
        for key in page.keys("cautions")
    ]
    if not rows:
        return ()
    motor = whose(page)
    name = page.words(f"{motor}.name") if motor else Markup()
    body = pieces(TEMPLATE, "whose")(name, len(page.motors) > 1, motor and _alone(page, motor))
    return (Part("cautions-part", "", body=body, closing=pieces(TEMPLATE, "table")(rows)),)


def whose(page: Page) -> str | None:
    """The motor that the cautions speak of: the one with the battery that they name."""
    fire = page.find("cautions", id="fire")
    if fire is None:
        return None
    nominal = page.value(f"{fire}.nominal_kwh")
    return next(
        (motor for motor in page.motors if page.value(f"{motor}.bank.nominal_kwh") == nominal),
        None,
    )


def _alone(page: Page, motor: str) -> bool:
    """Whether no other motor has as large a battery."""
    sizes = [page.value(f"{each}.bank.nominal_kwh") for each in page.motors]
    return sizes.count(page.value(f"{motor}.bank.nominal_kwh")) == 1
