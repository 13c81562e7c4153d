"""Part of the results: what does it cost to buy and to own?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.break_even import break_even
from generator.report.figures.cost_years import cost_years
from generator.report.figures.money_swing import money_swing
from generator.report.page import Page
from generator.report.parts import Figure, Part, Row, Table, numbers, reasons, words

LINES = (
    ("first_money", "money", "First cost"),
    ("contingency_money", "money", "of which contingency"),
    ("yearly_money", "money", "Each year"),
    ("energy_yearly_money", "money", "of which energy"),
    ("service_yearly_money", "money", "of which service"),
    ("other_yearly_money", "money:signed", "of which insurance, winter and other"),
    ("residual_money", "money", "Worth at the end"),
    ("present_value_money", "money", "Cost of ownership, present value"),
    ("equal_yearly_money", "money", "the same as equal payments a year"),
    ("per_mile_money", "money", "per mile motored"),
    ("per_hour_money", "money", "per engine hour"),
    ("against_keep_money", "money:signed", "Dearer than to keep the diesel"),
    ("against_new_diesel_money", "money:signed", "Dearer than a new diesel"),
    ("saving.simple_payback_years", "years", "Payback without interest, fair baseline"),
    ("saving.discounted_payback_years", "years", "Payback with interest, fair baseline"),
)
INSET = ("of which", "the same", "per ")
SPREAD = ("first", "present_value", "equal_yearly", "per_mile", "per_hour", "against_keep",
          "against_new_diesel")  # fmt: skip
BASELINES = {"new diesel": "a new diesel", "keep": "keeping the diesel"}


def part(page: Page) -> Part:
    """The terms, the chart of years, the summary, what moves it, and the items behind it."""
    if page.value("case.redacted"):
        return Part("cost", "Cost", (page.text(
            "This copy of the study of {boat.name|given} is without prices; the signed report "
            "holds them, under the same reference."
        ),))  # fmt: skip
    text = [page.text(_terms(page))]
    text += [page.text(_against(page, motor)) for motor in page.motors]
    text += [page.text(said) for said in (_engine(page), *_bank_words(page)) if said]
    figures = [_figure(page)]
    for motor in page.motors:
        figures += _turning(page, motor)
    return Part("cost", "Cost", tuple(text), tuple(figures), (_items(page),), (_summary(page),))


def _terms(page: Page) -> str:
    """In which money, at which interest, against what."""
    fair = page.value("money.fair_baseline")
    baseline = (
        f" The fair baseline is {BASELINES[fair]}: the engine is {{engine.condition|given}}."
        if fair
        else ""
    )
    real = page.value("money.terms") == "real"
    money = (
        "All amounts are real, in money of {money.price_year|year}, discounted at a real rate of "
        if real
        else "Later amounts are nominal, raised by {money.inflation_pct|percent} a year, "
        "discounted at a nominal rate of "
    )
    return (
        f"{money}{{money.discount_rate_pct|percent}} a year, tax included.{baseline} The trends "
        "of diesel and electricity move together in the draws (correlation "
        "{money.correlation|ratio})."
    )


def _against(page: Page, motor: str) -> str:
    cost = f"{motor}.cost"
    sure = (
        f" It is the cheaper one in {{{cost}.saving.cheaper_share|share}} of the draws."
        if page.value(f"{cost}.saving")
        else ""
    )
    return (
        f"{{{motor}.name|given}} costs {{{cost}.first_money|money}} to fit and, over "
        f"{{planning.horizon_years|years}}, {_dearer(page, f'{cost}.against_keep_money')} keeping "
        f"the diesel and {_dearer(page, f'{cost}.against_new_diesel_money')} a new one, in present "
        f"value.{sure}"
    )


def _engine(page: Page) -> str:
    """What the present engine still has in it."""
    option = page.find("options", kind="keep")
    risk = f"{option}.cost.overhaul"
    if option is None or page.value(risk) is None:
        return ""
    last = page.keys(f"{risk}.chance")[-1]
    counted = (
        f"its price of {{{risk}.price_money|money}} is counted by that chance, year by year"
        if page.value(f"{risk}.counted")
        else "the overhauls of the ledger are counted, not this chance"
    )
    return (
        f"The present diesel has used {{{risk}.wear_share|share}} of the life until an overhaul; "
        f"one is as likely as not within {{{risk}.left_years|years}}, and has a chance of "
        f"{{{last}.chance_share|share}} within {{{last}.within_years|years}}; {counted}."
    )


def _bank_words(page: Page) -> list[str]:
    """Bank life, assessment, and what the ledger forgets; motors of which the same holds as one."""
    said: dict[str, list[str]] = {}
    for motor in page.motors:
        said.setdefault(_of_bank(page, motor), []).append(f"{{{motor}.name|given}}")
    return [f"{' and '.join(names)}: {text}" for text, names in said.items()]


def _of_bank(page: Page, motor: str) -> str:
    cost, life = f"{motor}.cost", page.value(f"{motor}.cost.bank_life_years")
    first = f"{page.motors[0]}.cost.bank_life_years"
    key = first if page.value(first) == life else f"{cost}.bank_life_years"
    parts = [f"the bank is replaced after {{{key}|years}};"]
    if life >= page.value("planning.horizon_years"):
        parts = [
            "the horizon of {planning.horizon_years|years} ends before the bank's life of "
            f"{{{key}|years}}, so no replacement falls in it and the rest of the life counts as "
            "worth;"
        ]
    lacking = page.value(f"{cost}.lacking")
    parts += [
        ASSESSMENT.get(page.value(f"{cost}.assessment"), ""),
        f"no line of the ledger names {' or '.join(lacking)}."
        if lacking
        else "the ledger names labour, haul-out and survey.",
    ]
    return " ".join(each for each in parts if each)


ASSESSMENT = {
    "owed": "a post-construction assessment is presumed required and counted, until a notified "
    "or approved body says otherwise in writing;",
    "in the ledger": "the post-construction assessment is a line of the ledger;",
    "released": "a body has said in writing that no assessment is needed, and none is counted;",
    "done": "the assessment is done, and none is counted;",
    "out of scope": "by the day of first placing on the market no assessment is counted;",
}


def _turning(page: Page, motor: str) -> list[Figure]:
    """The tornado and the maps of one motor."""
    rows, own = page.keys(f"{motor}.cost.swing"), page.value(motor)["id"]
    if not rows:
        return []
    fair = BASELINES[page.value("money.fair_baseline")]
    turns = any(
        page.value(f"{row}.low_money") * page.value(f"{row}.high_money") < 0 for row in rows
    )
    word = "one alone can turn the sign" if turns else "none alone turns the sign"
    swing = Figure(
        f"money-swing-{own}",
        page.text(
            f"{{{motor}.name|given}} against {fair}: {{{rows[0]}.meaning|given}} moves the money "
            f"most, by {{{rows[0]}.size_money|money}}; {word}."
        ),
        page.text(
            "Each assumption moved alone from end to end of its range, all others at their best "
            "estimate; dashed: the best estimate, "
            f"{{{motor}.cost.swing_middle_money|money:signed}} saved."
        ),
        money_swing(page, motor),
    )
    maps = Figure(
        f"break-even-{own}",
        page.text(_break_even(page, motor, fair)),
        page.text(
            f"Sand: {{{motor}.name|given}} is the dearer one over "
            "{planning.horizon_years|years}; green, "
            "beyond a heavy line: the cheaper one. Thin lines: money saved, all else at its best "
            "estimate."
        ),
        break_even(page, motor),
    )
    return [swing, maps]


def _break_even(page: Page, motor: str, fair: str) -> str:
    """Where on the maps the answer turns, in numbers of this boat."""
    turn, year = f"{motor}.cost.turn", f"{motor}.year.motoring_h"
    hours = (
        f"breaks even with {fair} at {{{turn}.hours_h|hours}} a year"
        if page.value(f"{turn}.hours_h") is not None
        else f"does not break even with {fair} at {{{turn}.most_hours_h|hours}} a year"
    )
    bank = (
        f"with the bank at {{{turn}.bank_money|money}}"
        if page.value(f"{turn}.bank_money") is not None
        else f"not even with the bank at {{{turn}.least_bank_money|money}}"
    )
    if not page.value(f"{motor}.cost.maps.price_and_life"):
        bank = "the ledger names no price of a bank"
    return f"{{{motor}.name|given}} {hours} (today {{{year}|hours}}); {bank}."


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
            "inset" if label.startswith(INSET) else "",
        )
        for name, form, label in LINES
    )
    caption = page.text("Cost to buy and to own over {planning.horizon_years|years}")
    return Table(
        "cost-table", caption, (words("Quantity", 32), *columns), rows, reasons(page, keys)
    )


def _cell(page: Page, own: str, name: str, form: str) -> Markup:
    middle = page.show(f"{own}.{name}", form)
    stem = name.removesuffix("_money")
    if stem not in SPREAD or page.value(f"{own}.{stem}_low_money") is None:
        return middle
    spread = page.span(f"{own}.{stem}_low_money", f"{own}.{stem}_high_money", "money:bare")
    return middle + Markup(f'<br><span class="spread">{spread}</span>')


def _items(page: Page) -> Table:
    keys = [key for option in page.options for key in page.keys(f"{option}.cost.items")]
    columns = (words("Item", 30), words("Option", 20), words("Part", 12), numbers("Amount", 14),
               words("When", 8), numbers("Year", 6), words("Source", 10))  # fmt: skip
    caption = page.text("Items of cost of every option")
    return Table("items", caption, columns, tuple(_item(page, key) for key in keys), (), "long")


def _item(page: Page, key: str) -> Row:
    option = key.split(".cost.")[0]
    cells = (
        page.words(f"{option}.name"),
        page.words(f"{key}.part"),
        _amount(page, key),
        page.words(f"{key}.when"),
        page.show(f"{key}.year", "year") if page.value(f"{key}.year") else Markup(""),
        page.words(f"{key}.source") + _price_year(page, key),
    )
    return Row(page.words(f"{key}.name"), cells, "group" if key.endswith(".0") else "")


def _amount(page: Page, key: str) -> Markup:
    """The amount, with its band where it has one."""
    middle = page.show(f"{key}.amount_money", "money")
    low, high = (page.value(f"{key}.amount_{end}_money") for end in ("low", "high"))
    if low == high:
        return middle
    spread = page.span(f"{key}.amount_low_money", f"{key}.amount_high_money", "money:bare")
    return middle + Markup(f'<br><span class="spread">{spread}</span>')


def _price_year(page: Page, key: str) -> Markup:
    """The year of an older price, raised to the year of the study."""
    if page.value(f"{key}.price_year") is None:
        return Markup("")
    return Markup(" of ") + page.show(f"{key}.price_year", "year")
