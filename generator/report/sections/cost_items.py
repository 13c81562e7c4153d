"""Table of the cost: what is paid for what, by whose word, in every option?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Row, Table, numbers, words

ORDER = (
    "motor", "engine", "battery", "electrics", "propeller", "labour", "haul-out", "survey",
    "assessment", "overhaul", "insurance", "winter", "other", "grant", "sale",
)  # fmt: skip
SUMS = (
    ("contingency_money", Markup("contingency of first payments"), ""),
    ("first_money", Markup("first cost"), "strong"),
)


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
    sums = tuple(
        Row(
            label,
            tuple(page.show(f"{option}.cost.{name}", "money_whole") for option in page.options),
            look,
        )
        for name, label, look in SUMS
    )
    note = page.text(
        "As given; first payments, if no year stands beside them; with their contingency they are "
        "the first cost. Contingency of {money.contingency_pct|percent} is added to all that "
        f"is no quote, whenever it is paid{_quotes(page)}. Each line: tables/cost_items.csv."
    )
    caption = page.text("Items of cost by part and origin, in money of {money.price_year|year}")
    return Table("items", caption, (words("Part", 16), *columns), (*table, *sums), (note,))


def _quotes(page: Page) -> str:
    """A quote stands as quoted, unless the case says what is paid over it."""
    if page.value("money.quote_share") == 1.0:
        return "; a quote stands as quoted"
    return "; quotes are taken at {money.quote_share|share}, as the case says"


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
    return page.show(f"{key}.amount_money", "money_whole") + beside + band
