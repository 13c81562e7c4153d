"""Section: the options side by side, a better cell marked only beyond its doubt."""

from __future__ import annotations

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, without_empty, words

# Name of a difference where one is judged, label, key under the option, form. A label that begins
# with a space belongs to the row above.
LINES = (
    ("word", "Verdict", "verdict.word", "text"),
    ("continuous", "Continuous power at the shaft, calm", "continuous_shaft_kw", "power"),
    ("shaft_cruise", "Shaft power at planned cruise, in service", "cruise_shaft_kw", "power"),
    ("battery_cruise", "Battery power at planned cruise", "cruise_battery_kw", "power"),
    ("top_continuous", "Calm speed, continuous", "top_speed.continuous_kn", "speed"),
    ("top_peak", "Calm speed, peak", "top_speed.peak_kn", "speed"),
    ("range_new", "Range to reserve at cruise, calm, new", "calm_range_nm", "distance"),
    ("range_aged", "Range to reserve at cruise, calm, aged", "calm_aged_nm", "distance"),
    ("range_wind", "Range to reserve against {wind}, aged", "wind_aged_nm", "distance"),
    ("nominal", "Bank, nominal", "bank.nominal_kwh", "energy"),
    ("available", "Above the reserve, aged", "bank.available_aged_kwh", "energy"),
    ("peak_current", "Battery current at peak", "bank.peak_current_a", "current"),
    ("must_make", "Worst must-make leg: in hand, pessimistic", "worst_leg_ratio", "ratio"),
    ("net", "Net change of mass", "weight.net_kg", "mass:signed"),
    ("sinkage", "Sinkage (positive: deeper)", "weight.sinkage_mm", "length_small:signed"),
    ("trim", "Trim (positive: bow down)", "weight.trim_mm", "length_small:signed"),
    ("first", "First cost", "cost.first_money", "money"),
    ("yearly", "Energy and service a year", "cost.yearly_money", "money"),
    ("present", "Cost over the horizon, present value", "cost.present_value_money", "money"),
    ("keep", "  against keeping the diesel", "cost.against_keep_money", "money:signed"),
    ("new", "  against a new diesel", "cost.against_new_diesel_money", "money:signed"),
)


def part(page: Page) -> Part:
    """One table: all options, one question a row."""
    judged = (
        "Bold marks the better motor, and only where the difference has been judged draw by draw "
        "and is larger than its own doubt; the diesels of {boat.name|given} stand beside them as "
        "references."
    )
    alone = "The diesels of {boat.name|given} stand beside the motor as references."
    said = page.text(judged if len(page.motors) > 1 else alone)
    if page.value("answer.asked") and page.value("answer.comparison"):
        said += Markup(" ") + page.sentence("answer.comparison.words_rows")
    return Part("comparison-part", "Side by side", (said,), (), (_table(page),))


def _table(page: Page) -> Table:
    lines = [line for line in LINES if not (_of_money(line[-1]) and page.value("case.redacted"))]
    keys = [f"{option}.{line[2]}" for line in lines for option in page.options]
    width = 48 // max(len(page.options), 1)
    columns = [numbers(page.words(f"{option}.name"), width) for option in page.options]
    rows = tuple(_row(page, *line) for line in lines)
    caption = page.text("All options on the same legs and at the same prices")
    notes = (*reasons(page, keys), *_diesels(page))
    heads = (words("Quantity", 32), *columns, words("Difference", 20))
    return without_empty(Table("comparison-table", caption, heads, rows, notes))


def _diesels(page: Page) -> tuple[Markup, ...]:
    """What keeps the word of a diesel from a plain go."""
    told = []
    for option in page.options:
        rows = [
            key for key in page.keys(f"{option}.verdict.criteria")
            if option not in page.motors and page.value(key)["role"] == "decide"
            and page.value(key)["result"] in ("conditional", "no")
        ]  # fmt: skip
        for key in rows:
            told.append(f"for {page.called(option)}: {{{key}.id|count}}\u00a0{{{key}.name|given}}")
    if not told:
        return ()
    return (page.text(f"With conditions, or failed, {'; '.join(told)}."),)


def _of_money(form: str) -> bool:
    return form.startswith("money")


def _row(page: Page, name: str, label: str, tail: str, form: str) -> Row:
    judged = page.find("comparison.differences", id=name)
    better = page.value(f"{judged}.better") if judged else None
    cells = [
        _cell(page, f"{option}.{tail}", form, better == int(option.rpartition(".")[2]))
        for option in page.options
    ]
    # A label that stands under the row above is set in.
    look = "inset" if label.startswith(" ") else ""
    wind = page.find("sea_states", id="wind_20")
    head = page.text(label.replace("{wind}", f"{{{wind}.wind_kn|wind}}"))
    return Row(head, (*cells, _judged(page, judged)), look)


def _judged(page: Page, key: str | None) -> Markup:
    if key is None:
        return Markup("")
    return Markup("no real difference" if page.value(f"{key}.even") else "larger than its doubt")


def _cell(page: Page, key: str, form: str, better: bool) -> Markup:
    shown = page.placed(key, form)
    return Markup('<strong class="better">') + shown + Markup("</strong>") if better else shown
