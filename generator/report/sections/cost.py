"""Part of the results: what does it cost to buy and to own?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.cost_years import cost_years
from generator.report.page import Page
from generator.report.parts import Figure, Part, Row, Table, numbers, reasons, words

LINES = (
    ("first_money", "money", "First cost"),
    ("yearly_money", "money", "Each year"),
    ("energy_yearly_money", "money", "of which energy"),
    ("service_yearly_money", "money", "of which service"),
    ("present_value_money", "money", "Cost of ownership, present value"),
    ("against_keep_money", "money:signed", "Dearer than to keep the diesel"),
    ("against_new_diesel_money", "money:signed", "Dearer than a new diesel"),
)
SPREAD = {"first_money": "first", "present_value_money": "present_value"}


def part(page: Page) -> Part:
    """The chart of years, the summary, and the items behind it."""
    text = tuple(page.text(_against(page, motor)) for motor in page.motors)
    return Part("cost", "Cost", text, (_figure(page),), (_items(page),), (_summary(page),))


def _against(page: Page, motor: str) -> str:
    cost = f"{motor}.cost"
    return (
        f"{{{motor}.name|given}} costs {{{cost}.first_money|money}} to fit and, over "
        f"{{planning.horizon_years|years}}, {_dearer(page, f'{cost}.against_keep_money')} keeping "
        f"the diesel and {_dearer(page, f'{cost}.against_new_diesel_money')} a new one, in present "
        "value."
    )


def _dearer(page: Page, key: str) -> str:
    word = "more" if (page.value(key) or 0) >= 0 else "less"
    return f"{{{key}|money:size}} {word} than"


def _figure(page: Page) -> Figure:
    ends = ", ".join(
        f"{{{option}.name|given}} {{{_last(page, option)}|money}}"
        for option in page.options if page.keys(f"{option}.cost.cumulative")
    )  # fmt: skip
    finding = page.text(f"Paid after {{planning.horizon_years|years}}: {ends}.")
    note = page.text(
        "Money as paid, not discounted; bands are the middle eight tenths of {study.draws|count} "
        "draws. Lines that never cross are left not crossing."
    )
    return Figure("cost-years", finding, note, cost_years(page))


def _last(page: Page, option: str) -> str:
    return f"{page.keys(f'{option}.cost.cumulative')[-1]}.middle_money"


def _summary(page: Page) -> Table:
    keys = [f"{option}.cost.{name}" for option in page.options for name, _, _ in LINES]
    columns = [numbers(page.words(f"{option}.name"), 68 // len(page.options))
               for option in page.options]  # fmt: skip
    rows = tuple(
        Row(
            Markup.escape(label),
            tuple(_cell(page, f"{option}.cost", name, form) for option in page.options),
            "inset" if label.startswith("of which") else "",
        )
        for name, form, label in LINES
    )
    caption = page.text("Cost to buy and to own over {planning.horizon_years|years}")
    return Table(
        "cost-table", caption, (words("Quantity", 32), *columns), rows, reasons(page, keys)
    )


def _cell(page: Page, own: str, name: str, form: str) -> Markup:
    middle = page.show(f"{own}.{name}", form)
    stem = SPREAD.get(name)
    if stem is None or page.value(f"{own}.{stem}_low_money") is None:
        return middle
    spread = page.span(f"{own}.{stem}_low_money", f"{own}.{stem}_high_money", "money:bare")
    return middle + Markup(f'<br><span class="spread">{spread}</span>')


def _items(page: Page) -> Table:
    keys = [key for option in page.options for key in page.keys(f"{option}.cost.items")]
    columns = (words("Item", 34), words("Option", 24), numbers("Amount", 12), words("When", 11),
               numbers("Year", 7), words("Source", 12))  # fmt: skip
    caption = page.text("Items of cost of every option")
    return Table("items", caption, columns, tuple(_item(page, key) for key in keys), (), "long")


def _item(page: Page, key: str) -> Row:
    option = key.split(".cost.")[0]
    cells = (
        page.words(f"{option}.name"),
        page.show(f"{key}.amount_money", "money"),
        page.words(f"{key}.when"),
        page.show(f"{key}.year", "year") if page.value(f"{key}.year") else Markup(""),
        page.words(f"{key}.source"),
    )
    return Row(page.words(f"{key}.name"), cells, "group" if key.endswith(".0") else "")
