"""Page 1: what should the client do, and why?"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import zip_longest

from markupsafe import Markup

from generator.analyses.option import OptionAnswers
from generator.analyses.verdict.criteria.against_wind import AgainstWind
from generator.analyses.verdict.criteria.must_make_leg import MustMakeLeg
from generator.analyses.verdict.verdict import WORD_CONDITIONS, WORD_GO, WORD_NO
from generator.answer.sets import RemedySet
from generator.answer.subjects import Subject
from generator.report.declared import FACTS
from generator.report.figures.bad_day import bad_day
from generator.report.figures.front_bars import front_bars
from generator.report.page import Page, bare_text, joined
from generator.report.parts import Figure, Row
from generator.report.sections.trips import must_make_row, row_at_cruise
from generator.report.template import pieces
from generator.report.view import View

LOOKS = {WORD_GO: "go", WORD_CONDITIONS: "conditional", WORD_NO: "no"}
MUST, AGAINST = 1, 4  # criteria: the leg that must be made, and holding off a shore
MOST_REASONS = 2  # of a motor that fails; all of them stand with the conditions
MOST_OPTIONS = 7  # columns of the table


@dataclass(frozen=True)
class Reason:
    """A row that an option fails: the name of its words, and its facts."""

    said_by: str
    facts: View


@dataclass(frozen=True)
class Choice:
    """One option as page 1 tells it."""

    view: View
    called: Markup
    whole: Markup
    look: str
    word: Markup
    battery: bool
    fails: tuple[Reason, ...]
    more_fails: bool
    advised: bool  # the advice names it, with what mends it
    mend: View | None  # the first set of changes, with the word that it gives
    until: Markup
    leg: View | None
    wind: View | None
    range: Markup
    calm: Markup
    weight: Markup

    @property
    def on_leg(self) -> bool:
        """Whether there are two figures of energy for the leg that must be made."""
        it = self.leg
        return bool(it is not None and it.outcome == "makes" and it.leg and it.leg.available.there
                    and it.leg.need.there)  # fmt: skip


@dataclass(frozen=True)
class Condition:
    """What must be met, and for which motors."""

    motors: Markup
    text: Markup


@dataclass(frozen=True)
class Front:
    """All that page 1 shows."""

    about: tuple[Row, ...]
    advice: Markup
    rests: Markup
    comparison: Markup
    choices: tuple[Choice, ...]
    asked: tuple[View, ...]
    leg: Markup
    figure: Figure | None
    on_leg: bool
    conditions: tuple[Condition, ...]
    age: Markup
    horizon: Markup
    cruise: Markup
    wind: Markup
    validity: Markup
    signatory: Markup
    priced: bool
    sure: Markup

    @property
    def motors(self) -> list[Choice]:
        """Options with a battery."""
        return [each for each in self.choices if each.battery]

    @property
    def any_suits(self) -> bool:
        """Whether a motor is suitable, with or without conditions."""
        return any(each.look != "no" for each in self.motors)

    @property
    def one_motor(self) -> bool:
        """Whether all conditions are those of one motor among several."""
        whom = {str(each.motors) for each in self.conditions}
        return len(self.motors) > 1 and len(whom) == 1 and whom <= {
            str(each.called) for each in self.motors
        }  # fmt: skip

    @property
    def dearer(self) -> list[Choice]:
        """Motors that cost more than keeping the diesel."""
        return [
            each
            for each in self.motors
            if each.view.worth is not None
            and each.view.worth.outcome == "costs_more"
            and each.view.worth.baseline == "keep"
        ]

    @property
    def density(self) -> str:
        """How closely page 1 is set, by about how many lines it has to hold."""
        lead = (self.advice * 2, self.rests, self.comparison, *(each.until for each in self.motors))
        lines = sum(_lines(bare_text(text), LEAD_LETTERS) for text in lead) + 3 * len(self.motors)
        lines += sum(
            max(_lines(each.asked, ASKED_LETTERS), _lines(each.words, ANSWER_LETTERS))
            for each in self.asked
        )
        conditions = sum(_lines(bare_text(each.text), LIST_LETTERS) for each in self.conditions)
        lines += max(conditions, LINES_OF_CHART) + (3 if len(self.choices) > WIDE else 0)
        return "dense" if lines > LINES_AT_MOST else ""

    @property
    def named_leg(self) -> View | None:
        """The leg that must be made, as any motor has it."""
        return next((each.leg.leg for each in self.motors if each.leg and each.leg.leg), None)


# Letters of a line, and lines that page 1 holds beside its table at the usual size of type.
LEAD_LETTERS, ASKED_LETTERS, ANSWER_LETTERS, LIST_LETTERS = 105, 42, 70, 62
LINES_OF_CHART, LINES_AT_MOST = 10, 31
WIDE = 4  # options from which on their names take more lines


def _lines(text: str, letters: int) -> int:
    """How many lines a text takes."""
    return -(-len(text) // letters)


def front(page: Page) -> Front:
    """What to do, why, the owner's questions, all options, conditions, and how sure."""
    chart = _chart(page)
    return Front(
        about=about(page),
        advice=page.sentence("answer.advice.words"),
        rests=_sentence(page, "answer.advice.words_rests"),
        comparison=(
            page.sentence("answer.comparison.words") if page.value("answer.comparison")
            else Markup("")
        ),
        choices=tuple(_choice(page, option) for option in _in_order(page)),
        asked=tuple(page.views("answer.subjects", Subject)),
        leg=page.words(f"{page.must_make}.name") if page.must_make else Markup(""),
        figure=chart,
        on_leg=chart is not None and chart.name == "bad-day",
        conditions=_conditions(page),
        age=page.show(_age(page), "years"),
        horizon=page.show("planning.horizon_years", "years"),
        cruise=page.show("planning.cruise_speed_kn", "speed:whole"),
        wind=page.show("planning.hold_wind_kn", "wind"),
        validity=_validity(page),
        signatory=signatory(page),
        priced=not page.value("case.redacted"),
        sure=pieces("sections/sure.html", "sure")(
            str(page.value("evidence.grade")), _sure(page)
        ),
    )  # fmt: skip


def _sure(page: Page) -> dict[str, Markup]:
    """What the words on certainty name."""
    return {
        "runs": page.show("evidence.used_rows", "count"),
        "low": page.show("evidence.curve_low_pct", "percent"),
        "high": page.show("evidence.curve_high_pct", "percent:signed"),
        "sure": page.show("input_count.sure", "count"),
        "given": page.show("input_count.given", "count"),
        "defaults": page.show("input_count.defaults", "count"),
    }


def signatory(page: Page) -> Markup:
    """Who signs."""
    return page.words("case.prepared_by") if page.value("case.prepared_by") else Markup("Signatory")


def about(page: Page, evidence: bool = True) -> tuple[Row, ...]:
    """For whom, by whom, when."""
    named = (("For", "case.client"), ("Prepared by", "case.prepared_by"), ("Date", "case.date"),
             ("Reference", "case.reference"), ("Evidence", "evidence.grade"))  # fmt: skip
    return tuple(
        Row(Markup.escape(name), (page.words(key),))
        for name, key in named
        if page.value(key) and (evidence or name != "Evidence")
    )


def _choice(page: Page, option: str) -> Choice:
    view = page.view(option, OptionAnswers)
    assert view is not None
    failed = _failed(page, option)
    return Choice(
        view=view,
        called=page.text(page.called(option)) if page.value(f"{option}.kind") == "battery"
        else page.words(f"{option}.name"),
        whole=page.words(f"{option}.name"),
        look=LOOKS.get(str(page.value(f"{option}.verdict.word")), "open"),
        word=page.words(f"{option}.verdict.word"),
        battery=option in page.motors,
        fails=tuple(failed[:MOST_REASONS]),
        more_fails=len(failed) > MOST_REASONS,
        advised=_advised(page, option),
        mend=next(iter(page.views(f"{option}.remedies", RemedySet)), None),
        until=_sentence(page, f"{option}.until.words"),
        leg=page.view(f"{_row(page, option, MUST)}.facts", MustMakeLeg),
        wind=page.view(f"{_row(page, option, AGAINST)}.facts", AgainstWind),
        range=_range(page, option),
        calm=page.show(f"{option}.top_speed.continuous_kn", "speed"),
        weight=page.show(f"{option}.weight.net_kg", "mass:signed"),
    )  # fmt: skip


def _advised(page: Page, option: str) -> bool:
    """Whether the advice says already what mends this option."""
    if not page.value("answer.asked") or page.value("answer.advice.remedies") is None:
        return False
    said = str(page.value("answer.advice.option"))
    name = page.name(option)
    return said in (name, name.partition(",")[0]) or said == "the electric motor"


def _row(page: Page, option: str, number: int) -> str:
    return page.find(f"{option}.verdict.criteria", id=number) or "none"


def _failed(page: Page, option: str) -> list[Reason]:
    """The rows that decide and fail, in the order of the reasons."""
    found = []
    for key in page.keys(f"{option}.verdict.criteria"):
        row = page.value(key)
        if row["role"] == "decide" and row["result"] == "no":
            record = FACTS[row["id"]]
            facts = page.view(f"{key}.facts", record)
            if facts is not None:
                found.append(Reason(record.SAID_BY, facts))
    return found


def _range(page: Page, option: str) -> Markup:
    """Range in a calm at cruise, the bank as old as the word, with its doubt."""
    key = row_at_cruise(page, option, "calm", "aged")
    if key is None or page.value(f"{key}.range_nm") is None:
        return Markup("cannot hold it")
    said = page.show(f"{key}.range_nm", "distance")
    if option not in page.motors or page.value(f"{key}.range_low_nm") is None:
        return said
    ends = page.span(f"{key}.range_low_nm", f"{key}.range_high_nm", "distance:bare")
    return said + Markup(" <small>(") + ends + Markup(")</small>")


def _chart(page: Page) -> Figure | None:
    """Energy there and needed on the leg that must be made; where there is none, the range."""
    if not page.motors:
        return None
    legs = {motor: must_make_row(page, motor) for motor in page.motors}
    found = {motor: leg for motor, leg in legs.items() if leg is not None}
    if page.must_make is None or not found:
        title, note = (
            pieces("sections/sure.html", name)() for name in ("range_title", "range_note")
        )
        return Figure("range-front", title, note, lambda: front_bars(page))
    name = page.words(f"{page.must_make}.name")
    title = pieces("sections/sure.html", "leg_title")(name)
    note = pieces("sections/sure.html", "leg_note")(name, page.show(_age(page), "years"))
    return Figure("bad-day", title, note, lambda: bad_day(page, found))


def _sentence(page: Page, key: str) -> Markup:
    """Words of a record as a sentence of their own; empty where they say nothing."""
    if page.value(key.rpartition(".")[0]) is None or not page.value(key):
        return Markup("")
    return page.whole_sentence(key)


def _age(page: Page) -> str:
    """Age of the bank that the word is for: of the first motor, for they seldom differ."""
    return f"{page.motors[0]}.bank.ages.1.after_years" if page.motors else "planning.horizon_years"


def _in_order(page: Page) -> list[str]:
    """Motors first: they are what the owner asks about."""
    every = [*page.motors, *(option for option in page.options if option not in page.motors)]
    return every[:MOST_OPTIONS]


def _conditions(page: Page) -> tuple[Condition, ...]:
    """Conditions of the motors that may go, the same text once; where none may, what would mend.

    All conditions of a motor that fails stand with its rows in the section on the criteria.
    """
    able = [motor for motor in page.motors if LOOKS.get(_word(page, motor)) != "no"]
    motors = able or list(page.motors)
    found: dict[str, tuple[list[str], Markup]] = {}
    for row in zip_longest(*(_open(page, motor) for motor in motors)):
        for motor, key in zip(motors, row, strict=True):
            if key is not None:
                text = page.sentence(key)
                found.setdefault(bare_text(text), ([], text))[0].append(motor)
    return tuple(Condition(_whom(page, which), text) for which, text in found.values())


def _open(page: Page, motor: str) -> list[str]:
    """The conditions of a motor that may go; of one that fails what would mend those rows.

    Where sets of changes are told, they say so already.
    """
    every = page.keys(f"{motor}.verdict.conditions")
    rows = [page.value(key) for key in page.keys(f"{motor}.verdict.criteria")]
    failed = [row for row in rows if row["role"] == "decide" and row["result"] == "no"]
    if not failed:
        return every
    return [] if page.keys(f"{motor}.remedies") else every[: len(failed)]


def _word(page: Page, motor: str) -> str:
    return str(page.value(f"{motor}.verdict.word"))


def _whom(page: Page, motors: list[str]) -> Markup:
    if len(motors) == len(page.motors):
        return Markup("either motor" if len(motors) == 2 else "every motor") if (
            len(motors) > 1
        ) else Markup("")  # fmt: skip
    return joined((page.text(page.called(motor)) for motor in motors), ", ")


def _validity(page: Page) -> Markup:
    said: Markup = pieces("sections/sure.html", "valid")(
        page.words("case.valid_until") if page.value("case.valid_until") else "",
        page.words("case.date"),
    )
    return said
