"""Part of the results: what does it cost to buy and to own?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.cost_years import cost_years, last_paid
from generator.report.page import Page
from generator.report.parts import Figure, Part, Row, Table, numbers, reasons, words
from generator.report.sections.cost_assessment import assessment
from generator.report.sections.cost_items import items
from generator.report.sections.cost_turning import BASELINES, turning

LINES = (
    ("yearly_money", "money_whole", "Each year"),
    ("energy_yearly_money", "money_whole", "of which energy"),
    ("service_yearly_money", "money_whole", "of which service"),
    ("other_yearly_money", "money_whole", "of which insurance, winter and other"),
    ("first_money", "money_whole", "First cost"),
    ("contingency_money", "money_whole", "of which contingency"),
    ("yearly_worth_money", "money_whole", "All years, at today's worth"),
    ("later_worth_money", "money_whole", "Later payments, at today's worth"),
    ("end_worth_money", "money_whole", "Left at the end, at today's worth"),
    ("present_value_money", "money_whole", "Cost of ownership, sum of these four"),
    ("equal_yearly_money", "money", "the same as equal payments a year"),
    ("per_mile_money", "money", "per mile motored"),
    ("per_hour_money", "money", "per engine hour"),
    ("against_keep_money", "money_whole:signed", "Dearer than to keep the diesel"),
    ("against_new_diesel_money", "money_whole:signed", "Dearer than a new diesel"),
    ("saving.simple_payback_years", "years", "Payback without interest"),
    ("saving.discounted_payback_years", "years", "Payback with interest"),
)
NOTE = (
    "Every line is that of the best estimate, so that lines add; below a sum stand the middle "
    "eight tenths of {study.draws|count} draws. Later payments are overhauls and banks."
)
UNPLUGGED = {
    "nothing": "Nothing charges her bank, no plug, panels, genset or wind generator: its energy "
    "has no figure and counts as nothing.",
    "own": "No energy is bought: there is no plug, and sun and wind charge her.",
    "genset": "There is no plug: her energy is counted as diesel of the genset.",
}
INSET = ("of which", "the same", "per ")
SPREAD = ("first", "present_value", "against_keep", "against_new_diesel")


def part(page: Page) -> Part:
    """The terms, the summary, the chart of years, what moves it, and the items behind it."""
    if page.value("case.redacted"):
        return Part("cost", "Cost", (page.text(
            "This copy of the study of {boat.name|given} is without prices; the signed report "
            "holds them, under the same reference."
        ),))  # fmt: skip
    motors = " ".join(_against(page, motor) for motor in page.motors)
    engine = " ".join(said for said in (_engine(page), *_bank_words(page)) if said)
    text = tuple(page.text(said) for said in (_terms(page), motors, engine) if said)
    figures = (*_figure(page), *turning(page))
    return Part("cost", "Cost", text, figures, (), (_summary(page), items(page)))


def _terms(page: Page) -> str:
    """In which money, at which interest, against what."""
    fair = page.value("money.fair_baseline")
    baseline = (
        f" Savings and paybacks stand against {BASELINES[fair]}, over "
        f"{{planning.horizon_years|years}}{_needs(page, fair)}."
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


def _needs(page: Page, fair: str) -> str:
    """What the present diesel needs if it stays, whatever its condition."""
    if fair != "keep":
        return ""
    state = ", with what it needs: the engine is {engine.condition|given}, and "
    risk = f"{page.find('options', kind='keep')}.cost.overhaul"
    if page.value(risk) and page.value(f"{risk}.counted"):
        return f"{state}its overhaul is counted by its chance"
    return f"{state}the overhauls of its ledger are counted"


def _against(page: Page, motor: str) -> str:
    cost = f"{motor}.cost"
    sure = (
        f" It is the cheaper one in {{{cost}.saving.cheaper_share|share}} of the draws."
        if page.value(f"{cost}.saving")
        else ""
    )
    if page.value(f"{cost}.first_money") is None:
        return f"For fitting {{{motor}.name|given}} no price is given: no word on its money."
    first = f"{{{motor}.name|given}} costs {{{cost}.first_money|money}} to fit"
    others = " and ".join(
        f"{_dearer(page, f'{cost}.against_{name}_money')} {other}"
        for name, other in (("keep", "keeping the diesel"), ("new_diesel", "a new one"))
        if page.value(f"{cost}.against_{name}_money") is not None
    )
    if not others:
        return f"{first}."
    return f"{first} and, over {{planning.horizon_years|years}}, {others}, in present value.{sure}"


def _engine(page: Page) -> str:
    """What the present engine still has in it."""
    option = page.find("options", kind="keep")
    risk = f"{option}.cost.overhaul"
    if option is None or page.value(risk) is None:
        return ""
    if page.value("engine.condition") == "dying":
        return (
            "The present diesel is dying: to keep it an overhaul is due in the first year, "
            f"{_due(page, risk)}."
        )
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


def _due(page: Page, risk: str) -> str:
    """At which price the overhaul of a dying engine is counted."""
    if page.value(f"{risk}.counted"):
        return f"counted at {{{risk}.price_money|money}}"
    return "and those of the ledger are counted"


def _bank_words(page: Page) -> list[str]:
    """Bank life, assessment, and what the ledger forgets; motors of which the same holds as one."""
    said: dict[str, list[str]] = {}
    for motor in page.motors:
        said.setdefault(_of_bank(page, motor), []).append(f"{{{motor}.name|given}}")
    again = " and ".join(
        f"{{{motor}.cost.bank_again_share|share}} ({{{motor}.name|given}})" for motor in page.motors
    )
    told = [f"{' and '.join(names)}: {text}" for text, names in said.items()]
    if again:
        told.append(f"A first bank is replaced within the horizon in {again} of the draws.")
    told += [said for said in [_wall(page)] if said]
    return told


def _wall(page: Page) -> str:
    """The energy counted is the motor's; what the plug gives in a year is more."""
    unplugged = {UNPLUGGED.get(page.value(f"{motor}.cost.charged_by"), "") for motor in page.motors}
    wall = " and ".join(
        f"{{{motor}.cost.wall_yearly_kwh|energy}}, {{{motor}.cost.wall_yearly_money|money}} "
        f"({{{motor}.name|given}})"
        for motor in page.motors
        if page.value(f"{motor}.cost.wall_yearly_kwh")
    )
    counted = "Energy is the motor's alone; with the house the plug gives"
    said = [f"{counted} {wall} a year."] if wall else []
    return " ".join([*said, *sorted(each for each in unplugged if each)])


def _of_bank(page: Page, motor: str) -> str:
    cost, life = f"{motor}.cost", page.value(f"{motor}.cost.bank_life_years")
    first = f"{page.motors[0]}.cost.bank_life_years"
    key = first if round(page.value(first)) == round(life) else f"{cost}.bank_life_years"
    parts = [f"the bank is replaced after {{{key}|years}};"]
    if life >= page.value("planning.horizon_years"):
        parts = [
            "the horizon of {planning.horizon_years|years} ends before the bank's life of "
            f"{{{key}|years}}, so the rest of the life counts as worth;"
        ]
    lacking = page.value(f"{cost}.lacking")
    parts += [
        assessment(page, cost),
        f"no line of the ledger names {' or '.join(lacking)}."
        if lacking
        else "the ledger names labour, haul-out and survey.",
    ]
    return " ".join(each for each in parts if each)


def _dearer(page: Page, key: str) -> str:
    word = "more" if (page.value(key) or 0) >= 0 else "less"
    return f"{{{key}|money:size}} {word} than"


def _figure(page: Page) -> tuple[Figure, ...]:
    """What is paid year by year; none where no option's energy has a value."""
    ends = ", ".join(
        f"{{{option}.name|given}} {{{last_paid(page, option)}|money}}"
        for option in page.options if page.value(last_paid(page, option)) is not None
    )  # fmt: skip
    if not ends:
        return ()
    finding = page.text(f"Paid after {{planning.horizon_years|years}}: {ends}.")
    note = page.text(
        "Money as paid, not discounted; bands are the middle eight tenths of {study.draws|count} "
        "draws. Lines that never cross are left not crossing."
    )
    return (Figure("cost-years", finding, note, lambda: cost_years(page, height=2.5)),)


def _summary(page: Page) -> Table:
    lines = [line for line in LINES if _told(page, line[0])]
    keys = [f"{option}.cost.{name}" for option in page.options for name, _, _ in lines
            if not name.startswith("saving")]  # fmt: skip
    columns = [numbers(page.words(f"{option}.name"), 68 // len(page.options))
               for option in page.options]  # fmt: skip
    rows = tuple(
        Row(
            Markup.escape(label),
            tuple(_cell(page, f"{option}.cost", name, form) for option in page.options),
            "inset" if label.startswith(INSET) else "",
        )
        for name, form, label in lines
    )
    caption = page.text("Cost to buy and to own over {planning.horizon_years|years}")
    notes = (page.text(NOTE), *reasons(page, keys))
    return Table("cost-table", caption, (words("Quantity", 32), *columns), rows, notes)


def _told(page: Page, name: str) -> bool:
    """Other yearly payments are left out where no ledger names one."""
    if name != "other_yearly_money":
        return True
    return any(page.value(f"{option}.cost.{name}") for option in page.options)


def _cell(page: Page, own: str, name: str, form: str) -> Markup:
    if (
        name.startswith("saving")
        and page.value(f"{own}.saving")
        and not page.value(f"{own}.{name}")
        and page.value(f"{own}.saving.yearly_money") is not None
    ):
        return page.text(f"not within {{{own}.saving.window_years|years}}")
    middle = page.show(f"{own}.{name}", form)
    stem = name.removesuffix("_money")
    low, high = (page.value(f"{own}.{stem}_{end}_money") for end in ("low", "high"))
    if stem not in SPREAD or low == high:
        return middle
    spread = page.span(f"{own}.{stem}_low_money", f"{own}.{stem}_high_money", "money:bare")
    return middle + Markup(f'<br><span class="spread">{spread}</span>')
