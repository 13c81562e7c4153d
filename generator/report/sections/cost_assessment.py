"""Words of the cost: is a post-construction assessment counted, and by which day and market?"""

from __future__ import annotations

from generator.report.page import Page

MARKETS = {"EEA": "in the EEA", "GB": "in Great Britain", "NI": "in Northern Ireland"}
BODIES = {
    "EEA": "a notified body",
    "GB": "an approved body",
    "NI": "a notified body, or an approved body for Northern Ireland,",
}
COUNTED = {
    "in the ledger": "the post-construction assessment is a line of the ledger;",
    "released": "a body has said in writing that no assessment is needed, and none is counted;",
    "not in scope": "by the case her conversion is not in scope of the craft rules, and no "
    "assessment is counted;",
    "done": "the assessment is done, and none is counted;",
}


def assessment(page: Page, cost: str) -> str:
    """What is counted, the day it hangs on, and who may say otherwise."""
    status = page.value(f"{cost}.assessment")
    if status == "owed":
        body = BODIES.get(page.value("boat.market"), "a notified or approved body")
        return (
            f"{_placed(page)}, a post-construction assessment is presumed required and counted, "
            f"until {body} says otherwise in writing;"
        )
    if status == "out of scope":
        return f"{_placed(page)}, no assessment is counted;"
    return COUNTED.get(status, "")


def _placed(page: Page) -> str:
    """Where and when she was first placed on the market, and on which side of the day."""
    market = MARKETS.get(page.value("boat.market"))
    late = page.value("boat.import_date") or str(page.value("boat.year_on_market") or "")
    day = page.value("money.directive_date")
    side = "after" if not late or late > day[: len(late)] or late == day[:4] else "no later than"
    limit = f"{side} {{money.directive_date|given}}, the day of the first directive"
    if page.value("boat.import_date"):
        return f"brought in on {{boat.import_date|given}}, {limit}"
    if market is None:
        return "sold outside the EEA and the UK and not brought in"
    if not late:
        return f"first sold {market} on a day that nobody has given"
    return f"first sold {market} in {{boat.year_on_market|year}}, {limit}"
