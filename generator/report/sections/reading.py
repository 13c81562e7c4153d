"""Page 2: how is this report to be read, on what does it rest, and who may rely on it?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.template import pieces

TEMPLATE = "sections/about.html"


def reading(page: Page) -> Markup:
    """All of page 2 but the contents."""
    age = f"{page.motors[0]}.bank.ages.1.after_years" if page.motors else ""
    shown = {
        "draws": page.show("study.draws", "count"),
        "share": page.show("planning.reserve_share_pct", "percent"),
        "manoeuvring": page.show("planning.manoeuvring_time_min", "minutes"),
        "hold": page.show("planning.hold_time_min", "minutes"),
        "hold_wind": page.show("planning.hold_wind_kn", "wind"),
        "age": page.show(age, "years") if age else Markup(""),
        "horizon": page.show("planning.horizon_years", "years"),
        "given": page.show("input_count.given", "count"),
        "sure": page.show("input_count.sure", "count"),
        "defaults": page.show("input_count.defaults", "count"),
        "date": page.words("case.date"),
        "issue": page.words("case.issue"),
        "file": page.words("case.file"),
        "sha256": page.words("case.sha256"),
    }
    for name in ("prepared_by", "client", "reference", "qualification", "independence"):
        shown[name] = page.words(f"case.{name}") if page.value(f"case.{name}") else Markup("")
    changes = [page.words(key) for key in page.keys("case.changes")]
    made: Markup = pieces(TEMPLATE, "about")(shown, changes)
    return made
