"""Can every reader tell the options apart, in colour, with colour blindness, and in grey?"""

from __future__ import annotations

import re
from itertools import combinations

import pytest

from generator.report.figures.look import INK, KEEP, MOTORS, NEW_DIESEL, QUIET
from generator.report.template import templates_folder
from tests.report.colour_vision import SIGHT, apart, contrast, lightness

SHOWN_TOGETHER = (KEEP, NEW_DIESEL, *MOTORS[:3])  # more motors differ by dash and marker as well
CLEAR = 20.0  # L*a*b*: about ten times what is just seen side by side; common practice
GREY_STEP = 15.0  # L* between the two motors that every chart compares


@pytest.mark.parametrize("sight", SIGHT)
def test_options_differ_in_colour_for_every_sight(sight: str) -> None:
    for first, second in combinations(SHOWN_TOGETHER, 2):
        assert apart(first.colour, second.colour, sight) >= CLEAR, (first, second)


def test_the_two_motors_differ_in_grey() -> None:
    first, second = MOTORS[:2]
    assert abs(lightness(first.colour) - lightness(second.colour)) >= GREY_STEP


def test_options_differ_without_any_colour() -> None:
    traits = (KEEP, NEW_DIESEL, *MOTORS)
    for name in ("dash", "marker", "hatch"):
        assert len({getattr(each, name) for each in traits}) == len(traits)


def test_no_more_than_six_hues() -> None:
    assert len({each.colour for each in (KEEP, NEW_DIESEL, *MOTORS)}) <= 6


def test_lines_and_text_stand_out_from_paper() -> None:
    for each in (KEEP, NEW_DIESEL, *MOTORS):
        assert contrast(each.colour) >= 3.0  # WCAG 2.2, 1.4.11: graphical objects
    for text in (INK, QUIET):
        assert contrast(text) >= 4.5  # WCAG 2.2, 1.4.3: text


def test_chips_are_read_by_word_on_a_ground_of_their_own() -> None:
    css = (templates_folder() / "style" / "tables.css").read_text()
    grounds = {}
    for name in ("go", "conditional", "no"):
        rule = re.search(rf"\.chip\.{name} {{(.*?)}}", css)
        assert rule is not None
        ground, text = (
            re.search(rf"(?<![-\w]){part}: (#\w+)", rule[1]) for part in ("background", "color")
        )
        assert ground is not None
        assert text is not None
        ink = text[1] if len(text[1]) == 7 else "#ffffff"
        assert contrast(ground[1], ink) >= 4.5
        grounds[name] = lightness(ground[1])
    assert grounds["go"] > grounds["conditional"] > grounds["no"]  # the darker the worse, in grey
