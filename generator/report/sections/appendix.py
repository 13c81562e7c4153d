"""Appendix: inputs as read, defaults used, warnings and sources."""

from __future__ import annotations

import re

from markupsafe import Markup

from generator.report.page import Page
from generator.report.parts import Part, Row, Table, numbers, reasons, without_empty, words
from generator.report.sections import forms
from generator.report.sections.evidence import counted
from generator.report.sections.trips import row_at_cruise

# Inputs with a table of their own that shows value and origin of each.
ELSEWHERE = (".removed[", ".added[", ".costs[", "trial.rows[")
OWNER = re.compile(r"(options|legs)\[(\d+)\]\.")  # of a path that begins with either


def parts(page: Page) -> tuple[Part | None, ...]:
    """Hull forms side by side, warnings on the inputs, and whose formulas were used."""
    return (forms.part(page), _whole_bank(page), _warnings(page), _sources(page))


def inputs(page: Page) -> tuple[Part, ...]:
    """What went in, what was assumed, and what is the same for every boat."""
    return (_inputs(page), _assumptions(page), _method(page))


def _inputs(page: Page) -> Part:
    rows = tuple(
        Row(
            path_words(page, f"{key}.path"),
            (
                page.words(f"{key}.shown"),
                page.show(f"{key}.plus_minus", "plain") if page.value(f"{key}.plus_minus")
                else Markup(""),
                page.words(f"{key}.from") if page.value(f"{key}.from") else Markup("given"),
            ),
        )
        for key in page.keys("inputs")
        if not any(mark in page.value(f"{key}.path") for mark in ELSEWHERE)
    )  # fmt: skip
    columns = (words("Input", 48), numbers("Value", 22),
               numbers("Doubt", 12), words("Origin", 18))  # fmt: skip
    mark = Markup('<span class="note">Read from {}, fingerprint {}</span>')
    text = (counted(page), mark.format(page.words("case.file"), page.words("case.sha256")))
    caption = page.text(
        "Inputs in the order of the case; those of sea trial, weight and cost stand in their own "
        "tables (all, by key: inputs.csv)"
    )
    return Part(
        "inputs",
        "Inputs",
        text,
        (),
        (without_empty(Table("inputs-table", caption, columns, rows, (), "long")),),
    )


def path_words(page: Page, key: str) -> Markup:
    """An input in words: the option or leg it belongs to by name, then what it is."""
    found = OWNER.match(str(page.value(key)))
    said = page.words(key, "path")
    if not found or page.value(f"{found[1]}.{found[2]}.name") is None:
        return said
    name = page.words(f"{found[1]}.{found[2]}.name", "short" if found[1] == "options" else "given")
    return name + Markup("; ") + said


def _assumptions(page: Page) -> Part:
    rows = tuple(
        Row(
            path_words(page, f"{key}.path") + _when(page, key)
            + Markup('<span class="note">') + page.words(f"{key}.meaning") + Markup("</span>"),
            (
                page.words(f"{key}.shown"),
                _range(page, key),
                page.words(f"{key}.mark") + Markup(", ") + page.words(f"{key}.source"),
            ),
        )
        for key in page.keys("assumptions")
    )  # fmt: skip
    columns = (words("Default and meaning", 56), numbers("Value", 11), numbers("Range", 16),
               words("Mark, source", 17))  # fmt: skip
    text = page.text(
        "{input_count.defaults|count} values were not given and took these defaults; each can be "
        "set in the case. Marks: published, common practice, or from memory."
    )
    caption = page.text("Defaults used for {boat.name|given}")
    table = Table("assumptions-table", caption, columns, rows, (), "long")
    return Part("assumptions", "Assumptions", (text,), (), (table,))


def _method(page: Page) -> Part:
    """Two numbers to a line; the mark is said where it is not common practice."""
    keys = page.keys("method_numbers")
    half = (len(keys) + 1) // 2
    rows = []
    for place in range(half):
        pair = [_number(page, key) for key in keys[place::half]]
        cells = [cell for both in pair for cell in both]
        rows.append(Row(cells[0], (*cells[1:], *[Markup("")] * (4 - len(cells)))))
    columns = (words("Number of the method", 38), numbers("Value", 12),
               words("Number of the method", 38), numbers("Value", 12))  # fmt: skip
    caption = page.text(
        "Taken for {boat.name|given} as for every boat, and not to be set in the case; common "
        "practice without a source, unless another mark is told"
    )
    table = Table("method-table", caption, columns, tuple(rows), (), "long")
    return Part("method-numbers", "Numbers of the method", (), (), (table,))


def _number(page: Page, key: str) -> tuple[Markup, Markup]:
    meaning = page.words(f"{key}.meaning")
    if page.value(f"{key}.mark") == "common practice" and page.value(f"{key}.source") == "practice":
        return meaning, page.words(f"{key}.shown")
    mark = Markup(" (") + page.words(f"{key}.mark")
    if page.value(f"{key}.source") != "practice":
        mark += Markup(", ") + page.words(f"{key}.source")
    return meaning + mark + Markup(")"), page.words(f"{key}.shown")


def _when(page: Page, key: str) -> Markup:
    """The condition under which a default holds."""
    if not page.value(f"{key}.when"):
        return Markup("")
    return Markup(" (") + page.words(f"{key}.when") + Markup(")")


def _range(page: Page, key: str) -> Markup:
    low, high = f"{key}.shown_low", f"{key}.shown_high"
    if page.value(low) == page.value(high):
        return Markup("not varied")
    return page.words(low) + Markup(" to\u00a0") + page.words(high)


def _whole_bank(page: Page) -> Part | None:
    keys = [row_at_cruise(page, motor, "calm") for motor in page.motors]
    if not keys:
        return None
    rows = tuple(
        Row(
            page.words(f"{motor}.name"),
            (
                page.at(key, "speed_kn", "speed:bare"),
                page.at(key, "range_nm", "distance:bare"),
                page.at(key, "whole_bank_nm", "distance:bare"),
            ),
        )
        for motor, key in zip(page.motors, keys, strict=True)
    )
    columns = (words("Option", 40), numbers("Speed", 16, page.unit("speed")),
               numbers("To reserve", 20, page.unit("distance")),
               numbers("Whole bank, nothing kept", 24, page.unit("distance")))  # fmt: skip
    absent = reasons(page, [f"{key}.whole_bank_nm" for key in keys if key])
    caption = page.text(
        "Calm range of {boat.name|given} at cruise, bank new, to reserve and, as advertised ranges "
        "often are, to the last drop"
    )
    table = Table("whole-bank", caption, columns, rows, absent)
    return Part("whole-bank-part", "Range without reserve", (), (), (table,))


def _warnings(page: Page) -> Part | None:
    said = tuple(page.words(key) for key in page.keys("warnings"))
    return Part("warnings", "Warnings on the case", said) if said else None


def _sources(page: Page) -> Part:
    said = tuple(
        Markup('<span class="source">') + page.words(f"{key}.key") + Markup("</span> ")
        + page.words(f"{key}.text")
        for key in page.keys("sources")
    )  # fmt: skip
    return Part("sources", "Sources", said)
