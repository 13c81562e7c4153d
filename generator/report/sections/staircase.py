"""Part of the verdict: which motor with which battery would do, at which speed?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.staircase import staircase
from generator.report.page import Page, joined
from generator.report.parts import Figure, Part


def parts(page: Page) -> tuple[Part, ...]:
    """The map of the option that the advice names; none where the study was not asked for it."""
    option = next((each for each in page.motors if page.value(f"{each}.map")), None)
    if option is None:
        return ()
    key = f"{option}.map"
    said = [page.sentence(f"{key}.{each}") for each in ("words", "words_apart")]
    finding = joined(each for each in said if each)
    figure = Figure(
        "staircase", finding, page.sentence(f"{key}.words_note"), lambda: staircase(page, option)
    )
    title = Markup("Motor against battery: ") + page.words(f"{option}.name")
    return (Part("staircase-part", title, (), (figure,)),)
