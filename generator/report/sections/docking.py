"""Part of the results: how does she dock and stop, and what does a cross-wind do?"""

from __future__ import annotations

from markupsafe import Markup

from generator.report.figures.stopping import stopping
from generator.report.page import Page
from generator.report.parts import Figure, Part, Row, Table, numbers, words


def part(page: Page) -> Part:
    """Bollard pull, stops and the wind across the bow."""
    if not page.value(f"{page.options[0]}.docking"):
        return Part("docking", "")
    text = (_pull(page), _cross_wind(page))
    return Part("docking", "Docking and stopping", text, (_figure(page),), (_table(page),))


def _pull(page: Page) -> Markup:
    told = []
    for option in page.motors or page.options[:1]:
        key = f"{option}.docking"
        told.append(
            f"Tied up, {page.called(option)} pulls {{{key}.ahead_n|force}} on its continuous "
            f"rating and {{{key}.ahead_peak_n|force}} at peak; there "
            f"{{{key}.bollard_limit|given}} binds and "
            f"the screw takes {{{key}.bollard_power_kw|power}}, "
            f"{{{key}.bollard_power_share|share}} of what the continuous rating gives the shaft."
        )
    return page.text(" ".join(told))


def _cross_wind(page: Page) -> Markup:
    key = f"{page.options[0]}.docking.cross_wind"
    told = [
        f"{{{row}.bow_force_n|force}} in {{{row}.wind_kn|wind}}, held by the rudder from "
        f"{{{row}.steerage_kn|speed}}"
        for row in page.keys(key)[1:3]
    ]
    return page.text(
        "A wind across the berth pushes her forward half and furled headsail sideways with "
        + "; with ".join(told)
        + ". Slower than that her bow falls off and no motor brings it back; the help of the wind "
        "on her after half is left out."
    )


def _figure(page: Page) -> Figure:
    told = [
        f"{page.called(option, option == page.options[0])} stops from "
        f"{{limits.stop_from_kn|speed}} in {{{option}.docking.stops.0.lengths|ratio}} "
        f"boat lengths and {{{option}.docking.stops.0.time_s|seconds}}"
        for option in page.options
    ]
    note = page.text(
        "Astern at peak, from full way ahead, the time to reverse included; displacement as each "
        "option leaves her, a tenth more for the water moved with her. Middle of "
        "{study.draws|count} draws. Pull astern over ahead by the kind of propeller."
    )
    return Figure("stopping", page.text("; ".join(told) + "."), note, lambda: stopping(page))


def _table(page: Page) -> Table:
    force, length = page.unit("force"), page.unit("height")
    slow, fast = (page.text(f"From {{limits.stop_from_{name}kn|speed}}") for name in ("", "more_"))
    columns = (
        words("Option", 24), numbers("Ahead", 10, force), numbers("Ahead, peak", 11, force),
        numbers("Astern", 10, force), numbers(slow, 11, length), numbers("Lengths", 9),
        numbers(fast, 11, length), numbers("Lengths", 9),
    )  # fmt: skip
    rows = tuple(_row(page, option) for option in page.options)
    caption = page.text("Pull tied up, and way from full astern to standstill in still air")
    return Table("docking-table", caption, columns, rows)


def _row(page: Page, option: str) -> Row:
    key = f"{option}.docking"
    pulls = [
        page.show(f"{key}.{name}_n", "force:bare") for name in ("ahead", "ahead_peak", "astern")
    ]
    stops = [
        page.show(f"{row}.{name}", form)
        for row in page.keys(f"{key}.stops")
        for name, form in (("distance_m", "height:bare"), ("lengths", "ratio"))
    ]
    return Row(page.words(f"{option}.name"), (*pulls, *stops))
