"""Section: what does each option cost, what would change that, and what does the climate gain?"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from generator.analyses.option import OptionAnswers
from generator.report.figures.break_even import break_even, maps_that_turn
from generator.report.figures.cost_years import cost_years, last_paid
from generator.report.figures.money_swing import money_swing
from generator.report.page import Page, joined
from generator.report.parts import Figure, Part
from generator.report.sections.item_rows import item_rows
from generator.report.template import pieces
from generator.report.view import View
from generator.sensitivity import MoneySwing

WORDS, TABLES, CARBON = "sections/money.html", "sections/money_tables.html", "sections/carbon.html"
BESIDE = {"keep": "keeping the present diesel", "new diesel": "a new diesel"}
EXTRA = {"keep": "against_keep", "new diesel": "against_new_diesel"}
UNPLUGGED = ("nothing", "own", "genset")  # no electricity is bought


@dataclass(frozen=True)
class Choice:
    """A motor as this section tells it, with what its words turn on."""

    view: View
    called: Markup
    start: Markup  # the same where a sentence begins with it
    hours: Markup
    saves: bool  # is it cheaper to run than the baseline?
    never: bool  # is it the dearer one in every calculation?
    outlasts: bool  # does the battery last longer than the years compared?
    wall: bool  # is there a figure for what the plug supplies?
    corner: bool  # does the answer turn with use and diesel together?
    greener: bool  # does it emit less each year than the diesel?
    sign: bool  # does one input alone turn the answer?
    top: View | None  # most use and dearest diesel that were tried; none where no trip is motored
    widest: View | None  # the input that moves the answer most


def parts(page: Page) -> tuple[Part, ...]:
    """Cost and carbon; in a copy without prices the cost is one sentence."""
    if page.value("case.redacted"):
        body = pieces(WORDS, "redacted")()
        return tuple(part for part in (Part("cost", "", body=body), carbon(page)) if part)
    return tuple(part for part in (_cost(page), carbon(page)) if part)


def swing(page: Page) -> Part | None:
    """For the appendix: what each input does to the answer, where one of them alone turns it."""
    it = {} if page.value("case.redacted") else terms(page)
    motors = [each for each in it.get("motors", ()) if each.widest is not None]
    if not it.get("fair") or not any(each.sign for each in motors):
        return None
    title, note = (pieces(TABLES, f"swing_{name}")(it, motors[0]) for name in ("title", "note"))
    figure = Figure("money-swing", title, note, lambda: money_swing(page))
    return Part("money-swing", pieces(TABLES, "swing_head")(), figures=(figure,))


def _cost(page: Page) -> Part:
    it = terms(page)
    body = [pieces(WORDS, "answer")(it), pieces(TABLES, "costs")(it), pieces(WORDS, "behind")(it)]
    if it["turned"]:
        body.append(pieces(WORDS, "turning")(it))
    figures = (*_years(page, it), *_maps(page, it))
    return Part("cost", "", figures=figures, body=joined(body), closing=pieces(TABLES, "items")(it))


def terms(page: Page) -> Mapping[str, Any]:
    """What words and tables of the cost choose from."""
    options = page.views("options", OptionAnswers)
    motors = [_choice(page, motor) for motor in page.motors]
    fair = page.value("money.fair_baseline") or ""
    keep = next((each for each in options if each.kind == "keep"), None)
    first, later = item_rows(page)
    return {
        "options": options, "motors": motors, "fair": fair, "width": 68 // len(options),
        "baseline": next((each for each in options if each.kind == fair), None),
        "new": next((each for each in options if each.kind == "new diesel"), None)
        if fair == "keep" else None,
        "beside": BESIDE.get(fair, ""), "extra": EXTRA.get(fair, ""),
        "extras": [getattr(each.cost, EXTRA[fair]) for each in options] if fair else [],
        "others": any(page.value(f"{each}.cost.other_yearly_money") for each in page.options),
        "risk": keep.cost.overhaul if keep else None,
        "dying": page.value("engine.condition") == "dying",
        "turned": [each for each in motors if each.view.cost.turn is not None and fair],
        "sources": sorted({each.view.cost.charged_by for each in motors} & set(UNPLUGGED)),
        "assessments": sorted({each.view.cost.assessment for each in motors}),
        "lives": _grouped(
            [each for each in motors if each.view.cost.bank_life.there], lambda it: it.outlasts
        ),
        "lackings": _grouped(
            [each for each in motors if each.view.cost.lacking],
            lambda it: tuple(it.view.cost.lacking),
        ),
        "first_items": first, "later_items": later,
        "terms": page.value("money.terms"),
        "as_quoted": page.value("money.quote_share") == 1.0,
        **_shown(page), **_placed(page),
    }  # fmt: skip


def _shown(page: Page) -> dict[str, Markup]:
    """Numbers of the case and of the terms."""
    forms = {
        "horizon": ("planning.horizon_years", "years"),
        "priced": ("money.price_year", "year"),
        "rate": ("money.discount_rate_pct", "percent"),
        "inflation": ("money.inflation_pct", "percent"),
        "contingency": ("money.contingency_pct", "percent"),
        "quote": ("money.quote_share", "share"),
        "draws": ("study.draws", "count"),
    }
    return {name: page.show(key, form) for name, (key, form) in forms.items()}


def _placed(page: Page) -> dict[str, Any]:
    """Where and when she was first placed on the market, and on which side of the day."""
    brought, sold = page.value("boat.import_date"), page.value("boat.year_on_market")
    late, day = brought or str(sold or ""), page.value("money.directive_date")
    return {
        "market": page.value("boat.market"),
        "imported": page.words("boat.import_date") if brought else "",
        "year": page.show("boat.year_on_market", "year") if sold else "",
        "late": not late or late > day[: len(late)] or late == day[:4],
        "day": page.words("money.directive_date"),
    }


def _choice(page: Page, motor: str) -> Choice:
    view = page.view(motor, OptionAnswers)
    assert view is not None
    cost = f"{motor}.cost"
    rows = page.views(f"{cost}.swing", MoneySwing)
    grid = [] if view.cost.maps is None else view.cost.maps.hours_and_fuel
    life = page.value(f"{cost}.bank_life_years")
    return Choice(
        view=view,
        called=page.text(page.called(motor)),
        start=page.text(page.called(motor, True)),
        hours=page.show(f"{motor}.year.motoring_h", "hours"),
        saves=(page.value(f"{cost}.saving.yearly_money") or 0.0) > 0.0,
        never=not page.value(f"{motor}.worth.cheaper_share"),
        outlasts=life is not None and life >= page.value("planning.horizon_years"),
        wall=bool(page.value(f"{cost}.wall_yearly_kwh")),
        corner=any(
            (row["saving_money"] or 0.0) > 0.0
            for row in page.value(f"{cost}.maps.hours_and_fuel") or ()
        ),
        greener=(page.value(f"{motor}.carbon.saved_yearly_kg") or 0.0) > 0.0,
        sign=_turns(page, cost),
        top=grid[-1] if grid else None,
        widest=rows[0] if rows else None,
    )


def _turns(page: Page, cost: str) -> bool:
    """Whether one input alone turns the answer."""
    best = page.value(f"{cost}.swing_middle_money") or 0.0
    ends = (
        row[f"at_{end}_money"] or 0.0
        for row in page.value(f"{cost}.swing") or ()
        for end in ("low", "high")
    )
    return any(end * best < 0.0 for end in ends)


def _years(page: Page, it: Mapping[str, Any]) -> tuple[Figure, ...]:
    """What is paid year by year; none where no option's energy has a value."""
    paid = {option: page.value(last_paid(page, option)) for option in page.options}
    if all(value is None for value in paid.values()):
        return ()
    base = next((paid[each] for each in page.options if page.value(each)["kind"] == it["fair"]),
                None)  # fmt: skip
    motors = [paid[motor] for motor in page.motors]
    known = base is not None and motors and None not in motors
    dearer = sum(each > base for each in motors) if known else 0
    ahead = "" if not known else "none" if dearer == len(motors) else "some" if dearer else "all"
    title = pieces(TABLES, "years_title")(it, ahead)
    note = pieces(TABLES, "years_note")(it)
    return (Figure("cost-years", title, note, lambda: cost_years(page, height=2.2)),)


def _maps(page: Page, it: Mapping[str, Any]) -> tuple[Figure, ...]:
    """The maps on which the answer turns; where it turns on none, the words say so."""
    if not it["fair"] or not maps_that_turn(page):
        return ()
    title, note = (pieces(TABLES, f"map_{name}")(it) for name in ("title", "note"))
    return (Figure("break-even", title, note, lambda: break_even(page)),)


def carbon(page: Page) -> Part | None:
    """A paragraph and a table; nothing where it was not asked for."""
    motors = [_choice(page, motor) for motor in page.motors]
    motors = [each for each in motors if each.view.carbon is not None]
    if not motors:
        return None
    body = pieces(CARBON, "words")(motors)
    table = pieces(CARBON, "table")(motors, 62 // len(motors))
    return Part("carbon", pieces(CARBON, "title")(), body=body, closing=table)


def _grouped(motors: list[Choice], fact: Callable[[Choice], Any]) -> list[tuple[Any, list[Choice]]]:
    """Motors of which the same holds, together."""
    found: dict[Any, list[Choice]] = {}
    for each in motors:
        found.setdefault(fact(each), []).append(each)
    return list(found.items())
