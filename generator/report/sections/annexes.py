"""Section: which papers and files belong to this report and are not printed in it?"""

from __future__ import annotations

from generator.report.page import Page
from generator.report.parts import Part
from generator.report.template import pieces

TEMPLATE = "sections/annexes.html"


def parts(page: Page) -> tuple[Part, ...]:
    """The annexes for yard and insurer, and the files beside the report."""
    body = pieces(TEMPLATE, "annexes")(bool(page.motors))
    counted = pieces(TEMPLATE, "files")(
        page.show("input_count.given", "count"), page.show("input_count.defaults", "count")
    )
    return (Part("annex-list", "", body=body + counted),)
