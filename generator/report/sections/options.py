"""Section: what is proposed, how do the options compare, and what does the larger motor add?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from markupsafe import Markup

from generator.analyses.key_numbers import KeyNumbers
from generator.analyses.option import OptionAnswers
from generator.analyses.verdict.criteria.against_wind import AgainstWind
from generator.answer.compare import Comparison
from generator.report.page import Page, bare_text
from generator.report.parts import Part
from generator.report.sections.front import AGAINST, LOOKS
from generator.report.sections.option_lines import LINES, MONEY, Cell, Get, Option
from generator.report.sections.trips import row_at_cruise
from generator.report.template import pieces
from generator.report.view import Quantity, with_flag

TEMPLATE = "sections/options.html"
HEADS = {1: 40, 2: 40, 3: 36, 4: 34, 5: 28}  # width of the row heads by the number of options, %
NARROW = 22  # of more
MOST_ON_A_PAGE = 4
EDGES = {"faster": "_kn", "wind": "_kn"}  # differences whose doubt is known


@dataclass(frozen=True)
class Failing:
    """What keeps the word of a diesel from a plain pass."""

    name: Markup
    on: Markup
    result: str


@dataclass(frozen=True)
class Options:
    """All that the section shows, and the facts that choose its words."""

    page: Page
    options: tuple[Option, ...]

    @cached_property
    def priced(self) -> bool:
        """Whether this copy has prices."""
        return not self.page.value("case.redacted")

    @cached_property
    def cells(self) -> dict[str, tuple[Cell, ...]]:
        """The numbers of each line, option by option."""
        lines = LINES | (MONEY if self.priced else {})
        return {name: self._cells(name, *line) for name, line in lines.items()}

    def _cells(self, name: str, get: Get, dress: str) -> tuple[Cell, ...]:
        judged = self.page.find("comparison.differences", id=name)
        better = f"options.{self.page.value(f'{judged}.better')}" if judged else ""
        numbers = {option.key: _dressed(get(option), dress) for option in self.options}
        shown = [
            number.full for key, number in numbers.items()
            if number is not None and key in self.page.motors[:2]
        ]  # fmt: skip
        differ = len({bare_text(text) for text in shown}) > 1  # as rounded
        return tuple(Cell(number, differ and key == better) for key, number in numbers.items())

    @property
    def widths(self) -> list[str]:
        """Columns of a table, per cent: the row heads, then all options alike."""
        count = len(self.options)
        head = HEADS.get(count, NARROW)
        return [str(head)] + [f"{(100 - head) / count:.2f}"] * count

    @cached_property
    def motors(self) -> list[Option]:
        """Options with a battery."""
        return [option for option in self.options if option.bank]

    @property
    def diesels(self) -> bool:
        """Whether an option has none."""
        return len(self.motors) < len(self.options)

    @property
    def several(self) -> bool:
        """Whether motors were judged against one another."""
        return bool(self.page.keys("comparison.differences"))

    @property
    def more_motors(self) -> bool:
        """Whether there are more than the two that were."""
        return len(self.motors) > 2

    @property
    def judged(self) -> list[Markup]:
        """The two that were: the first ones of the case."""
        return [option.name for option in self.motors[:2]]

    @property
    def one_propeller(self) -> bool:
        """Whether every option turns the propeller that is on her now."""
        own = ("kind", "blades", "diameter_mm", "pitch_mm")
        now = [self.page.value(f"propeller.{name}") for name in own]
        return all(
            [self.page.value(f"{option.key}.particulars.propeller.{name}") for name in own] == now
            for option in self.options
        )

    @property
    def baseline(self) -> str:
        """Against which diesel the money of a motor is held."""
        return str(self.page.value("money.fair_baseline") or "")

    @property
    def has_new(self) -> bool:
        """Whether a new diesel is among the options."""
        return self.page.find("options", kind="new diesel") is not None

    @property
    def has_keep(self) -> bool:
        """Whether keeping the diesel is."""
        return self.page.find("options", kind="keep") is not None

    @property
    def open_diesels(self) -> list[Failing]:
        """The points on which a diesel has a condition, or fails."""
        rows = [
            (option, key)
            for option in self.options if not option.bank
            for key in self.page.keys(f"{option.key}.verdict.criteria")
        ]  # fmt: skip
        return [
            Failing(option.name, self.page.words(f"{key}.name"), row["result"])
            for option, key in rows
            if (row := self.page.value(key))["role"] == "decide"
            and row["result"] in ("conditional", "no")
        ]

    @cached_property
    def pair(self) -> list[Option]:
        """The two motors of the comparison, the smaller one first."""
        return sorted(self.motors, key=lambda option: option.motor.continuous_power.value)[:2]

    @property
    def same_power(self) -> bool:
        """Whether neither of them is the larger."""
        return len({option.motor.continuous_power.value for option in self.pair}) == 1

    @property
    def age(self) -> Markup:
        """Age of the battery that the word is for: of the first motor, for they seldom differ."""
        return self.page.show(f"{self.motors[0].key}.bank.ages.1.after_years", "years")

    @property
    def cruise(self) -> Markup:
        """Planned cruising speed."""
        return self.page.show("planning.cruise_speed_kn", "speed:whole")

    @property
    def horizon(self) -> Markup:
        """Years over which costs are compared."""
        return self.page.show("planning.horizon_years", "years")

    @property
    def wind(self) -> Markup:
        """Wind in which she must hold off."""
        return self.page.show("planning.hold_wind_kn", "wind")

    @property
    def wind_of_range(self) -> Markup:
        """Wind of the range against one."""
        return self.page.show(f"{self.page.find('sea_states', id='wind_20')}.wind_kn", "wind")

    @property
    def wind_speed(self) -> Markup:
        """Speed of that range."""
        row = row_at_cruise(self.page, self.options[0].key, "wind_20", "aged")
        return self.page.show(f"{row}.speed_kn", "speed:whole")


def lead(page: Page) -> Markup:
    """On what all options are judged."""
    return pieces(TEMPLATE, "lead")(_options(page))


def parts(page: Page) -> tuple[Part | None, ...]:
    """What is proposed, all options side by side, and the larger motor beside the smaller.

    Of many options the two tables have no room on one page; then that pair stands between them.
    """
    it = _options(page)
    compared = _part("compared", it, pieces(TEMPLATE, "compared")(it))
    rest = (compared, adds(page)) if len(it.options) <= MOST_ON_A_PAGE else (adds(page), compared)
    return (_part("proposed", it, pieces(TEMPLATE, "proposed")(it)), *rest)


def adds(page: Page) -> Part | None:
    """What the larger motor adds; nothing where there are not two, or no answer was asked for."""
    two = page.view("answer.comparison", Comparison) if page.value("answer.asked") else None
    it = _options(page)
    if two is None or len(it.motors) < 2:
        return None
    return _part("adds", it, pieces(TEMPLATE, "adds")(it, two, way(page, it), bool(two.rows)))


def way(page: Page, it: Options) -> dict[str, str]:
    """Which way each difference goes: more, less, same, even within its doubt, or none."""
    key = "answer.comparison"
    found = {
        name: _beyond(page.value(f"{key}.{name}_low{unit}"), page.value(f"{key}.{name}_high{unit}"))
        for name, unit in EDGES.items()
    }
    plain = {"farther": "farther_nm", "heavier": "heavier_kg", "dearer": "dearer_money"}
    found |= {name: _sign(page.value(f"{key}.{tail}")) for name, tail in plain.items()}
    judged = page.find("comparison.differences", id="calm_aged")
    if judged and not it.more_motors and page.value(f"{judged}.even"):
        found["farther"] = "even"
    return found


def _beyond(low: float | None, high: float | None) -> str:
    if low is not None and low > 0:
        return "more"
    return "less" if high is not None and high < 0 else "even"


def _sign(value: float | None) -> str:
    if value is None:
        return "none"
    return "more" if value > 0 else "less" if value < 0 else "same"


def _part(name: str, it: Options, body: Markup) -> Part:
    title = Markup(pieces(TEMPLATE, "title")(name, it).strip())
    return Part(f"{name}-part", title, body=body)


def _dressed(number: Quantity | None, dress: str) -> Quantity | None:
    return with_flag(number, dress) if number is not None and dress else number


def _options(page: Page) -> Options:
    return Options(page, tuple(_option(page, key) for key in page.options))


def _option(page: Page, key: str) -> Option:
    view, numbers = page.view(key, OptionAnswers), page.view(key, KeyNumbers)
    assert view is not None
    assert numbers is not None
    row = page.find(f"{key}.verdict.criteria", id=AGAINST)
    propeller = f"{key}.particulars.propeller"
    return Option(
        key=key,
        name=page.words(f"{key}.name"),
        view=view,
        key_numbers=numbers,
        against=page.view(f"{row}.facts", AgainstWind) if row else None,
        propeller=page.words(f"{propeller}.kind"),
        diameter=page.show(f"{propeller}.diameter_mm", "length_small:bare"),
        pitch=page.show(f"{propeller}.pitch_mm", "length_small"),
        note=page.sentence(f"{key}.note"),
        look=LOOKS.get(str(page.value(f"{key}.verdict.word")), "open"),
        word=page.words(f"{key}.verdict.word"),
    )
