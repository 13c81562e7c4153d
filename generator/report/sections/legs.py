"""Part of the results: which of the owner's legs fit, and what is left after each?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.energy_walk import energy_walk, walked
from generator.report.figures.legs_range import legs_range
from generator.report.page import Page
from generator.report.parts import Figure, Part, Row, Table, numbers, reasons, words

FORMS = (
    ("hours_h", "hours:bare"), ("need_kwh", "energy:bare"), ("available_kwh", "energy:bare"),
    ("ratio", "ratio"), ("ratio_p10", "ratio"), ("slow_ratio_p10", "ratio"),
    ("slow_kn", "speed:bare"),
)  # fmt: skip
MOST_ROWS = 12  # legs of one motor on the page; all of them stand in the table of the folder


def part(page: Page) -> Part:
    """Legs against range, the walk of the worst, and one row per leg and motor."""
    if not page.value("legs"):
        return Part("legs-part", "")
    text = tuple(_words(page, motor) for motor in page.motors if must_make_row(page, motor))
    text += tuple(
        _depth(page, key) for key in page.keys("legs") if page.value(f"{key}.depth_froude")
    )
    figures = (_dots(page), *_walk(page)) if page.motors else ()
    keys = [key for motor in page.motors for key in _told(page, motor)]
    return Part("legs-part", "Legs", text, figures, (_table(page, keys),) if keys else ())


def _told(page: Page, motor: str) -> list[str]:
    """Legs that do not fit first, then those that must be made, then the others."""
    keys = page.keys(f"{motor}.legs")
    if len(keys) <= MOST_ROWS:
        return keys
    return sorted(
        keys, key=lambda key: (page.value(f"{key}.fits"), not page.value(f"{key}.must_make"))
    )[:MOST_ROWS]


def _table(page: Page, keys: list[str]) -> Table:
    used = [f"{key}.{name}" for key in keys for name, _ in FORMS]
    energy, all_keys = page.unit("energy"), sum(len(page.keys(f"{m}.legs")) for m in page.motors)
    caption = "Each leg with the bank aged: energy needed and there, above the reserve"
    if all_keys > len(keys):
        caption += "; the others are in tables/legs.csv"
    return Table(
        "legs-table",
        page.text(caption),
        (
            words("Leg and motor", 29), numbers("Time", 7, page.unit("hours")),
            numbers("Need", 7, energy), numbers("There", 7, energy), numbers("Ratio", 7),
            numbers("One in ten", 7), numbers("Slowly, one in ten", 8),
            numbers("at", 6, page.unit("speed")), words("Fits", 22),
        ),
        tuple(_row(page, key) for key in keys),
        (
            page.text(
                "Slowly: at the speed that asks for least energy over the ground, "
                "{limits.least_through_kn|speed} at least. Gone before it: the legs before it on "
                "the same outing, in a calm, nothing charged between."
            ),
            *reasons(page, used),
        ),
    )  # fmt: skip


def _dots(page: Page) -> Figure:
    finding = " ".join(_covered(page, motor) for motor in page.motors)
    note = page.text(
        "Curves: range to reserve, bank aged, that nine draws of ten reach. Dot size: times a "
        "year. Stream, wind and sea of each leg count in whether it fits, not in its place."
    )
    return Figure("legs-range", page.text(finding), note, lambda: legs_range(page))


def _covered(page: Page, motor: str) -> str:
    key = f"{motor}.use.coverage"
    if page.value(key) is None:
        return f"{{{motor}.name|given}}: no passage is motored."
    said = (
        f"{{{motor}.name|given}}: {{{key}.legs_low_share|share}} of {{{key}.passages|count}} "
        f"passages a year and {{{key}.miles_low_share|share}} of their miles fit"
    )
    if (page.value(f"{key}.legs_low_share") or 0.0) >= 1.0:
        return said + "."
    return said + f", {{{key}.slow_legs_low_share|share}} at the most economical speed."


def _walk(page: Page) -> tuple[Figure, ...]:
    motors = walked(page)
    if not motors:
        return ()
    finding = " ".join(_left(page, motor) for motor in motors)
    note = page.text(
        f"“{{legs.{page.value(f'{motors[0]}.use.walk_leg')}.name|given}}”, best estimate; grey: "
        "never planned with. Red line: what is left in one draw of ten. Wind, sea and stream are "
        "what each adds to the parts above it."
    )
    return (Figure("energy-walk", page.text(finding), note, lambda: energy_walk(page)),)


def _left(page: Page, motor: str) -> str:
    key = f"{motor}.use"
    low = page.value(f"{key}.walk_left_low_kwh")
    said = (
        f"{{{motor}.name|given}}: of {{{key}.walk_nominal_kwh|energy}} on the label "
        f"{{{key}.walk_left_kwh|energy}} are left above the reserve after the leg"
    )
    if low is None:
        return said + "; one draw in ten cannot make it."
    if low < 0:
        return said + f"; in one draw of ten {{{key}.walk_left_low_kwh|energy:size}} are lacking."
    return said + f", {{{key}.walk_left_low_kwh|energy}} in one draw of ten."


def must_make_row(page: Page, option: str) -> str | None:
    """The key of the option's result on its worst must-make leg."""
    worst = page.value(f"{option}.worst_leg")
    rows = f"{option}.legs"
    return page.find(rows, must_make=True) if worst is None else f"{rows}.{worst}"


def _words(page: Page, motor: str) -> Markup:
    key = must_make_row(page, motor)
    if page.value(f"{key}.need_kwh") is None:
        said = f"{{{motor}.name|given}} on “{{{key}.name|given}}”: {page.value(f'{key}.why')}."
        return page.text(said)
    return page.text(
        f"{{{motor}.name|given}} on “{{{key}.name|given}}”: the leg takes {{{key}.hours_h|hours}} "
        f"and {{{key}.need_kwh|energy}} (one in ten above {{{key}.need_high_kwh|energy}}); "
        f"{{{key}.available_kwh|energy}} is there above the reserve{_start(page, key)}, "
        f"{{{key}.ratio|ratio}} times the need, and {{{key}.ratio_p10|ratio}} times at the "
        "pessimistic end."
    )


def _start(page: Page, key: str | None) -> str:
    """What of the charge is gone when the leg begins."""
    if not page.value(f"{key}.after"):
        return ", starting charged"
    if page.value(f"{key}.before_kwh") is None:
        return f" after “{{{key}.after|given}}”"
    return f" after {{{key}.before_kwh|energy}} for “{{{key}.after|given}}” in a calm"


def _depth(page: Page, key: str) -> Markup:
    """What depth and width of a leg mean for the deep-water curve."""
    said = page.text(
        f"“{{{key}.name|given}}”: {{{key}.speed_kn|speed}} in {{{key}.depth_m|length}} of water is "
        f"a depth Froude number of {{{key}.depth_froude|ratio}}"
    )
    if page.value(f"{key}.blockage_pct") is not None:
        said += page.text(f", and she fills {{{key}.blockage_pct|percent}} of the channel")
    held = page.value(f"{key}.deep_enough") and page.value(f"{key}.wide_enough")
    end = "; the curve of deep water holds." if held else (
        "; the curve of deep water asks for too little there, and plain Go is barred."
    )  # fmt: skip
    return said + page.text(end)


def _row(page: Page, key: str) -> Row:
    motor = key.split(".legs.")[0]
    head = page.words(f"{key}.name") + Markup("<br>") + page.words(f"{motor}.name")
    if page.value(f"{key}.after") and page.value(f"{key}.before_kwh") is not None:
        spent = page.text(f"{{{key}.before_kwh|energy}} gone before it")
        head += Markup('<span class="note">') + spent + Markup("</span>")
    cells = tuple(page.show(f"{key}.{name}", form) for name, form in FORMS)
    fits = page.value(f"{key}.fits")
    passed, failed = (
        Markup('<span class="{0}">{1}</span>').format(*pair)
        for pair in (("pass", "fits"), ("fail", "does not fit"))
    )
    word = passed if fits else failed + Markup("<br>") + _way(page, key)
    return Row(head, (*cells, word))


def _way(page: Page, key: str) -> Markup:
    """The cheapest way in which a leg would fit; what stops it where there is none."""
    motor, _, place = key.partition(".legs.")
    help_row = page.find(f"{motor}.use.failing", leg=int(place))
    if help_row is None or page.value(f"{help_row}.cheapest") == "power":
        return page.sentence(f"{key}.why")
    return Markup("fits ") + page.sentence(f"{help_row}.way")
