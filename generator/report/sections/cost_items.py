"""Table of the cost: what is paid for what, by whose word, in every option?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Row, Table, numbers, words

ORDER = (
    "motor", "engine", "battery", "electrics", "propeller", "labour", "haul-out", "survey",
    "assessment", "overhaul", "insurance", "winter", "other", "grant", "sale",
)  # fmt: skip


def items(page: Page) -> Table:
    """A row a part, a column an option; every line under its own name is in a CSV."""
    rows = [key for option in page.options for key in page.keys(f"{option}.cost.items")]
    parts = [part for part in ORDER if any(page.value(f"{key}.part") == part for key in rows)]
    width = 84 // len(page.options)
    columns = [numbers(page.words(f"{option}.name"), width) for option in page.options]
    table = tuple(
        Row(Markup.escape(part), tuple(_cell(page, option, part) for option in page.options))
        for part in parts
    )
    note = page.text(
        "As given; first payments, if no year stands beside them. Contingency of "
        "{money.contingency_pct|percent} is added to estimates. In the middle of the draws, which "
        "totals are, it is {money.contingency_middle_pct|percent} and a quote comes to "
        "{money.quote_middle_share|share}. Each line: tables/cost_items.csv."
    )
    caption = page.text("Items of cost by part and origin, in money of {money.price_year|year}")
    return Table("items", caption, (words("Part", 16), *columns), table, (note,))


def _cell(page: Page, option: str, part: str) -> Markup:
    lines = [
        key for key in page.keys(f"{option}.cost.items") if page.value(f"{key}.part") == part
    ]  # fmt: skip
    return Markup("<br>").join(_line(page, key) for key in lines)


def _line(page: Page, key: str) -> Markup:
    """The amount and who says so, with its year and the year of its price; its band below."""
    said, band = [page.words(f"{key}.source")], Markup("")
    low, high = (page.value(f"{key}.amount_{end}_money") for end in ("low", "high"))
    if low != high:
        band = Markup('<br><span class="spread">{}</span>').format(
            page.span(f"{key}.amount_low_money", f"{key}.amount_high_money", "money:bare")
        )
    if page.value(f"{key}.price_year"):
        said.append(page.text(f"of {{{key}.price_year|year}}"))
    if page.value(f"{key}.when") == "yearly":
        said.append(Markup("each year"))
    if page.value(f"{key}.year"):
        said.append(page.text(f"year {{{key}.year|count}}"))
    beside = Markup(' <span class="spread">{}</span>').format(Markup(" ").join(said))
    return page.show(f"{key}.amount_money", "money") + beside + band
