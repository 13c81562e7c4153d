"""The words of page 1, as they are set."""

from __future__ import annotations

import re
from collections import defaultdict

from markupsafe import Markup

from generator.report.page import Page
from generator.report.sections.front import front
from generator.report.template import environment

BLANKS = re.compile(r"\s+")


def front_html(page: Page) -> str:
    """Page 1 without its chart."""
    made = environment().get_template("sections/front.html")
    pictures: dict[str, Markup] = defaultdict(lambda: Markup("<i></i>"))
    return made.render(front=front(page), page=page, pictures=pictures, case=page.value("case"))


def front_words(page: Page) -> str:
    """Its text alone, every blank an ordinary one."""
    return BLANKS.sub(" ", Markup(front_html(page)).striptags().replace("\u00a0", " "))
