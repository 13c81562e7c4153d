"""A fault is one printable line of bearable length, and a file's faults are some dozens."""

from __future__ import annotations

from generator.errors import LONGEST, MOST, CaseError, Fault, first_of_each_file


def test_fault_is_one_printable_line_whatever_its_parts_hold() -> None:
    fault = Fault("a\nb.yaml", 3, "x\x1b[31m", "is `\u202e\x00`\r\n", "expected\tless")
    assert str(fault) == "a?b.yaml:3: x?[31m: is `??`??, expected?less"


def test_fault_is_cut_where_it_goes_on_and_on() -> None:
    fault = Fault("a.yaml", 1, "p" * 10_000, "is " + "x" * 10_000, "y" * 10_000)
    assert len(str(fault)) < 3 * LONGEST + 40
    assert str(fault).count(" ...") == 3


def test_first_of_each_file_tells_how_many_more_there_are() -> None:
    here = [Fault("a.yaml", line, "key", f"fault {line}", "") for line in range(1, MOST + 6)]
    there = [Fault("b.csv", 1, "", "is empty", "")]
    found = first_of_each_file([*here, *there])
    assert found[:MOST] == here[:MOST]
    assert str(found[MOST]) == (
        f"a.yaml:{MOST}: and 5 more, expected the first ones mended before them"
    )
    assert found[MOST + 1 :] == there
    assert first_of_each_file(here[:MOST]) == here[:MOST]
    assert CaseError(here).faults == found[: MOST + 1]
