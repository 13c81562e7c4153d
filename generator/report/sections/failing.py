"""Section: what does each single fault leave, and what is carried against it?"""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from generator.analyses.option import OptionAnswers
from generator.analyses.verdict.spares import Spare
from generator.report.page import Page, joined
from generator.report.parts import Part
from generator.report.template import pieces
from generator.report.view import View

TEMPLATE = "sections/failing.html"
MANY = 0.1  # of the calculations: as often a fault counts as one that follows


@dataclass(frozen=True)
class Motor:
    """A motor as this section tells it."""

    view: View
    called: Markup
    start: Markup  # the same where a sentence begins with it
    charge: Markup
    single: bool  # has the battery one string?
    cascade: bool  # do the other strings trip at cruise when one is out?
    throttled: bool  # do they at full power?


@dataclass(frozen=True)
class FaultRow:
    """A fault as each motor has it; none where it cannot have it."""

    of: list[View | None]

    @property
    def first(self) -> View:
        """As the first motor that can have it."""
        return next(each for each in self.of if each is not None)

    @property
    def same(self) -> bool:
        """Whether all motors are left the same."""
        return None not in self.of and len({str(each.words_left) for each in self.of if each}) == 1

    @property
    def across(self) -> str:
        """Over how many columns one cell goes then."""
        return str(len(self.of))


def lead(page: Page) -> Markup:
    """How many faults stop each motor."""
    motors = _motors(page)
    return pieces(TEMPLATE, "counted")(motors) if motors else pieces(TEMPLATE, "nothing")(
        page.words("boat.name"))  # fmt: skip


def parts(page: Page) -> tuple[Part, ...]:
    """The table of faults, a lost string, the diesel beside it and the spares."""
    motors = _motors(page)
    if not motors:
        return ()
    left = 40 if len(motors) > 1 else 26
    widths = [24, *[left // len(motors)] * len(motors), 76 - left // len(motors) * len(motors)]
    body = _table(motors, widths, effects=False)
    return (Part("failures", "", body=joined((body, _beside(page, motors)))),)


def annex(page: Page) -> tuple[Part, ...]:
    """The same for those who survey the installation, with what each fault does."""
    motors = _motors(page)
    if not motors:
        return ()
    left = (38 if len(motors) > 1 else 26) // len(motors)
    widths = [16, 60 - left * len(motors), *[left] * len(motors), 24]
    table = _table(motors, widths, effects=True)
    return (Part("failures", "", body=joined((table, _beside(page, motors)))),)


def string_lost(page: Page) -> Part | None:
    """For the appendix: power and currents with one string out."""
    motors = [each for each in _motors(page) if each.view.one_fault is not None]
    if not motors:
        return None
    table = pieces(TEMPLATE, "string_table")(motors, 52 // len(motors))
    return Part("one-fault", pieces(TEMPLATE, "string_title")(), closing=table)


def _motors(page: Page) -> list[Motor]:
    return [_motor(page, key) for key in page.motors if page.value(f"{key}.failures")]


def _motor(page: Page, key: str) -> Motor:
    view = page.view(key, OptionAnswers)
    assert view is not None
    trips = [page.value(f"{key}.one_fault.{at}_trips_share") or 0.0 for at in ("cruise", "peak")]
    cruise, peak = (share > MANY for share in trips)
    return Motor(
        view=view,
        called=page.text(page.called(key)),
        start=page.text(page.called(key, True)),
        charge=page.show(f"{key}.bank.charge_ah", "charge"),
        single=page.value(f"{key}.one_fault.strings") == 1,
        cascade=cruise,
        throttled=peak and not cruise,
    )


def _rows(motors: list[Motor]) -> list[FaultRow]:
    """The faults of all motors, each once; one that not all can have stands last."""
    by_name = [{str(each.id): each for each in motor.view.failures} for motor in motors]
    names = dict.fromkeys(name for found in by_name for name in found)
    return [FaultRow([found.get(name) for found in by_name]) for name in names]


def _table(motors: list[Motor], widths: list[int], effects: bool) -> Markup:
    return pieces(TEMPLATE, "table")(_rows(motors), motors, widths, effects)


def _beside(page: Page, motors: list[Motor]) -> Markup:
    said = [
        pieces(TEMPLATE, "strings")([each for each in motors if each.view.one_fault is not None]),
        pieces(TEMPLATE, "diesel")(page.value("engine.condition")),
        pieces(TEMPLATE, "spares")(page.views("spares", Spare)),
    ]
    return joined(said)
