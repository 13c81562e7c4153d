"""Section: how sure is the study, and what should be measured before an order?"""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from generator.analyses.motion.trial_table import TrialTable
from generator.report.figures.tornado import tornado
from generator.report.page import Page, joined
from generator.report.parts import Figure, Part
from generator.report.sections.criteria import form_of
from generator.report.template import pieces
from generator.report.view import View

TEMPLATE = "sections/certainty.html"
MUST_MAKE = 1  # the criterion of the worst leg
FEW = 5  # inputs to measure
# What the value of a criterion is, on the axis of its chart.
AXES = {
    1: "energy available over energy needed", 2: "share of the yearly trips",
    4: "speed made good into the wind", 5: "speed held over planned cruise",
    6: "speed made good into the wind", 7: "calm speed over what is wanted",
    11: "hours to recharge a usual day", 12: "yield of the sun over use",
    14: "current over what is allowed",
}  # fmt: skip


@dataclass(frozen=True)
class Rests:
    """What the power curve rests on; an empty number is not known."""

    grade: str
    fitted: bool  # a factor on resistance was found from the runs
    refused: bool  # a run was not used
    used: Markup
    given: Markup
    cruise: Markup
    low: Markup
    high: Markup
    prior: Markup
    posterior: Markup
    lowest: Markup
    highest: Markup
    by_law: Markup
    law_more: bool
    turns: Markup
    turns_below: bool
    outside: Markup
    one_outside: bool


@dataclass(frozen=True)
class Fixed:
    """A motor whose tightest criterion no input moves."""

    motor: Markup
    criterion: Markup


@dataclass(frozen=True)
class Input:
    """What to measure, how, and between what the result then lies."""

    what: Markup
    low: Markup
    high: Markup
    how: Markup


@dataclass(frozen=True)
class Swing:
    """The chart of one motor, and what its words name."""

    motor: Markup
    criterion: Markup
    first: Markup
    best: Markup
    limit: Markup
    share: Markup
    axis: str
    unit: str
    rows: tuple[Input, ...]


@dataclass(frozen=True)
class Measuring:
    """Whether there is a chart, and the motors for which there can be none."""

    charted: bool
    fixed: tuple[Fixed, ...]


@dataclass(frozen=True)
class Beyond:
    """A proportion outside the range of a source."""

    quantity: Markup
    span: Markup
    share: Markup
    done: Markup
    source: Markup


def parts(page: Page) -> tuple[Part | None, ...]:
    """What the power curve rests on, and what to measure first."""
    return (_curve(page), measuring(page))


def _curve(page: Page) -> Part:
    trial = page.view("trial", TrialTable)
    it = _rests(page, trial)
    table = pieces(TEMPLATE, "runs")(it, trial) if trial is not None and trial.rows else Markup()
    body = pieces(TEMPLATE, "curve")(it, trial)
    return Part("curve", _head("curve_head"), body=body, closing=table)


def _head(name: str) -> Markup:
    said: Markup = pieces(TEMPLATE, name)()
    return said


def _rests(page: Page, trial: View | None) -> Rests:
    outside = [page.words(f"{key}.quantity") for key in page.keys("range_warnings")]
    rows = page.value("trial.rows") or []
    return Rests(
        grade=str(page.value("evidence.grade")),
        fitted=trial is not None and trial.reference.there,
        refused=any(not row["used"] for row in rows),
        used=page.show("trial.used_rows" if trial else "evidence.used_rows", "count"),
        given=_known(page, "evidence.given_rows", "count") if rows else Markup(),
        cruise=page.show("planning.cruise_speed_kn", "speed"),
        low=_known(page, "evidence.curve_low_pct", "percent"),
        high=_known(page, "evidence.curve_high_pct", "percent:signed"),
        prior=_known(page, "evidence.prior_share", "share"),
        posterior=_known(page, "evidence.posterior_share", "share"),
        lowest=_apart(page, "evidence.others_low_share"),
        highest=_apart(page, "evidence.others_high_share"),
        by_law=_known(page, "trial.law_over_fuel_share", "share:size"),
        law_more=(page.value("trial.law_over_fuel_share") or 0.0) > 0.0,
        turns=_known(page, "trial.turns_over_model_share", "share:size"),
        turns_below=(page.value("trial.turns_over_model_share") or 0.0) < 0.0,
        outside=_listed(outside),
        one_outside=len(outside) == 1,
    )


def _known(page: Page, key: str, form: str) -> Markup:
    """A number, or nothing where there is none."""
    return Markup() if page.value(key) is None else page.show(key, form)


def _apart(page: Page, key: str) -> Markup:
    """How far another curve is away, or nothing where that prints as none."""
    none = page.value(key) is None or page.plain(key, "share:bare").strip("0.") == ""
    return Markup() if none else page.show(key, "share:signed")


def _listed(names: list[Markup]) -> Markup:
    if len(names) < 2:
        return joined(names)
    return joined(names[:-1], ", ") + Markup(" and ") + names[-1]


def measuring(page: Page) -> Part | None:
    """The chart of the motor that is advised, and the inputs that move it most."""
    motors = [motor for motor in in_order(page) if page.keys(f"{motor}.tornado.rows")]
    if not motors:
        return None
    fixed = [motor for motor in motors if _is_fixed(page, motor)]
    charted = next((motor for motor in motors if motor not in fixed), None)
    named = tuple(
        Fixed(page.text(page.called(motor)), page.words(f"{motor}.tornado.criterion_name"))
        for motor in fixed
    )
    body = pieces(TEMPLATE, "measuring")(Measuring(charted is not None, named))
    head = _head("measuring_head")
    if charted is None:
        return Part("measuring", head, body=body)
    it = _swing(page, charted)
    figure = _figure(page, charted, it)
    table = pieces(TEMPLATE, "inputs")(it)
    return Part("measuring", head, (), (figure,), body=body, closing=table)


def in_order(page: Page) -> list[str]:
    """The motors, the one that the advice names first, then those that may go."""
    said = page.value("answer.advice.option") if page.value("answer.asked") else None

    def rank(motor: str) -> tuple[bool, bool]:
        name = page.name(motor)
        advised = said in (name, name.partition(",")[0])
        fails = str(page.value(f"{motor}.verdict.word")).startswith("Not")
        return (not advised, fails)

    return sorted(page.motors, key=rank)


def _is_fixed(page: Page, motor: str) -> bool:
    """Whether the result prints alike whatever input is varied."""
    own = f"{motor}.tornado"
    form = form_of(page.value(f"{own}.criterion"))
    ends = [f"{row}.{end}" for row in page.keys(f"{own}.rows") for end in ("at_low", "at_high")]
    return len({page.plain(key, form) for key in (f"{own}.best", *ends)}) == 1


def _swing(page: Page, motor: str) -> Swing:
    own = f"{motor}.tornado"
    number = page.value(f"{own}.criterion")
    form = form_of(number)
    known = [row for row in page.keys(f"{own}.rows") if page.value(f"{row}.how")]
    return Swing(
        motor=page.text(page.called(motor)),
        criterion=page.words(f"{own}.criterion_name"),
        first=page.words(f"{own}.rows.0.what"),
        best=page.show(f"{own}.best", form),
        limit=page.show(f"{own}.limit_go", form),
        share=_made_at_all(page, motor),
        axis=AXES.get(number, page.value(f"{own}.criterion_name")),
        unit=page.unit(form).strip(),
        rows=tuple(_input(page, row, form) for row in known[:FEW]),
    )


def _made_at_all(page: Page, motor: str) -> Markup:
    """In how many calculations the worst leg is made at all, where some do not make it."""
    worst = page.value(f"{motor}.worst_leg")
    key = f"{motor}.legs.{worst}.feasible_share"
    share = None if worst is None else page.value(key)
    if page.value(f"{motor}.tornado.criterion") != MUST_MAKE or share is None or share >= 1.0:
        return Markup()
    return page.show(key, "share")


def _input(page: Page, row: str, form: str) -> Input:
    """One input, the result from its lower to its higher end; an end without a value is empty."""
    ends = [key for key in (f"{row}.at_low", f"{row}.at_high") if page.value(key) is not None]
    ends.sort(key=page.value)
    low, *rest = [page.show(key, f"{form}:bare") for key in ends] or [Markup()]
    return Input(page.words(f"{row}.what"), low, rest[0] if rest else Markup(),
                 page.words(f"{row}.how"))  # fmt: skip


def _figure(page: Page, motor: str, it: Swing) -> Figure:
    name = f"tornado-{motor.split('.')[1]}"
    form = form_of(page.value(f"{motor}.tornado.criterion"))
    return Figure(
        name,
        pieces(TEMPLATE, "swing_title")(it),
        pieces(TEMPLATE, "swing_note")(it),
        lambda: tornado(page, motor, name, form, it.axis),
    )


def counted(page: Page) -> Markup:
    """How many of the given values were measured or weighed, and how many values are standard."""
    names = ("sure", "given", "defaults")
    said: Markup = pieces(TEMPLATE, "counted")(
        *(page.show(f"input_count.{name}", "count") for name in names)
    )
    return said


def outside(page: Page) -> Part | None:
    """For the technical appendix: proportions outside the range of the measured hulls."""
    keys = page.keys("range_warnings")
    if not keys:
        return None
    rows = [
        Beyond(
            quantity=page.words(f"{key}.quantity"),
            span=page.span(f"{key}.low", f"{key}.high", "ratio"),
            share=page.show(f"{key}.share_outside_pct", "percent"),
            done=page.sentence(f"{key}.message"),
            source=page.words(f"{key}.source"),
        )
        for key in keys
    ]
    return Part("outside", _head("outside_head"), body=pieces(TEMPLATE, "outside")(rows))
