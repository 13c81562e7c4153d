"""Legs from a list beside the case, distances from tracks; every fault at its own line."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.case.files.leg_list import MOST_LEGS
from generator.case.files.track import LARGEST
from tests.unit.case.faulty import changed, faults, line_of, lines, read

HEAD = "name,distance [nm],times_per_year,speed [kn],foul_stream,refuge,sailable\n"
GOOD = "Out,3.5,12,4.5,0.5 kn,TRUE,false\n"
WITH_LIST = changed(("legs:\n", "legs_file: log.csv\nlegs:\n"))
GPX = '<gpx version="1.1" creator="p" xmlns="http://www.topografix.com/GPX/1/1">{}</gpx>'
MERIDIAN = "".join(f'<trkpt lat="{51 + n / 60}" lon="1"/>' for n in range(4))  # 3 minutes: 3 nm
TRACK = GPX.format(f"<trk><trkseg>{MERIDIAN}</trkseg></trk>")


def with_track(folder: Path, content: str | bytes, distance: str = "") -> str:
    data = content.encode() if isinstance(content, str) else content
    (folder / "way.gpx").write_bytes(data)
    row = f"name: By track\n    track: way.gpx\n{distance}    times_per_year: 2\n    speed: 4 kn"
    more = f"  - {row}\n    foul_stream: 0 kn\n    refuge: true\n    sailable: true\n"
    return changed(("legs:\n", f"legs:\n{more}"))


def test_legs_of_a_list_stand_behind_those_of_the_case(tmp_path: Path) -> None:
    (tmp_path / "log.csv").write_text(HEAD + GOOD + "\nHome,7,9,5,,true,true\n", encoding="utf-8")
    case = read(tmp_path, WITH_LIST)
    assert [leg.name for leg in case.legs][-2:] == ["Out", "Home"]
    out, home = case.legs[-2:]
    assert (out.distance, out.speed) == pytest.approx((3.5 * 1852, 4.5 * 1852 / 3600))
    assert out.foul_stream == pytest.approx(0.5 * 1852 / 3600)
    assert home.foul_stream == 0.0  # the register's, for an empty cell
    assert (out.refuge, out.sailable, out.line, home.line) == (True, False, 2, 4)


def test_a_list_may_stand_alone_and_be_parted_by_semicolons(tmp_path: Path) -> None:
    text = WITH_LIST[: WITH_LIST.index("legs:\n")] + WITH_LIST[WITH_LIST.index("house:") :]
    (tmp_path / "log.csv").write_text((HEAD + GOOD).replace(",", ";"), encoding="utf-8-sig")
    assert [leg.name for leg in read(tmp_path, text).legs] == ["Out"]


def test_numbers_of_a_list_move_apart_from_those_of_the_case(tmp_path: Path) -> None:
    """Numbers that share a place move together in the draws."""
    (tmp_path / "log.csv").write_text(HEAD + GOOD, encoding="utf-8")
    given = [item for item in read(tmp_path, WITH_LIST).assumptions if item.origin == "given"]
    listed = {item.draw_key for item in given if item.path.startswith("legs[1]")}
    assert len(listed) == 4
    assert not listed & {item.draw_key for item in given if not item.path.startswith("legs[1]")}


def test_the_list_belongs_to_the_fingerprint_of_the_case(tmp_path: Path) -> None:
    marks = set()
    for row in (GOOD, GOOD.replace("3.5", "3.6")):
        (tmp_path / "log.csv").write_text(HEAD + row, encoding="utf-8")
        marks.add(read(tmp_path, WITH_LIST).file.sha256)
    assert len(marks) == 2


@pytest.mark.parametrize(
    ("rows", "line", "message"),
    [
        (GOOD + "Home,7 km,9,5,,true,true", 3, "distance: `7 km nm`"),
        (GOOD + "Home,7,9,0,,true,true", 3, "speed: is `0 kn`, expected a speed above 0 kn"),
        (GOOD + "Home,7,9,5,,yes,true", 3, "refuge: is `yes`, expected `true` or `false`"),
        (GOOD + "Home,,9,5,,true,true", 3, "distance: is missing"),
        (GOOD + "Home,7,9,5,,true,true,more", 3, "has 8 cells under 7 columns"),
        (GOOD + "=2+2,7,-1,5,,true,true", 3, "times_per_year: is `-1`"),
        ("", 1, "holds no leg"),
        ("x,1,1,1,,true,true\n" * (MOST_LEGS + 1), MOST_LEGS + 2, f"more than {MOST_LEGS} legs"),
        (GOOD + '"Home,7,9,5,,true,true', 3, ""),
    ],
)
def test_a_faulty_line_is_told_at_its_own_file_and_line(
    tmp_path: Path, rows: str, line: int, message: str
) -> None:
    (tmp_path / "log.csv").write_text(HEAD + rows, encoding="utf-8")
    found = faults(tmp_path, WITH_LIST)
    assert found, rows
    told = [fault for fault in found if fault.file == str(tmp_path / "log.csv")]
    assert told == found
    assert told[0].line == line
    assert message in str(told[0])


@pytest.mark.parametrize(
    ("head", "message"),
    [
        (HEAD.replace("speed [kn]", "sped [kn]"), "sped: unknown column, did you mean `speed`?"),
        (HEAD.replace("foul_stream", "speed"), "speed: is given twice"),
        (HEAD.replace("refuge", "depth"), "refuge: is missing, expected a column of that name"),
        (HEAD.replace("distance [nm]", "depth"), "distance: is missing, expected a column of"),
    ],
)
def test_a_faulty_head_is_one_fault(tmp_path: Path, head: str, message: str) -> None:
    (tmp_path / "log.csv").write_text(head + GOOD * 3, encoding="utf-8")
    found = lines(tmp_path, WITH_LIST)
    assert any(message in text and "log.csv:1:" in text for text in found), found
    assert len(found) <= 2


@pytest.mark.parametrize("name", ["../log.csv", "/etc/passwd", "a/log.csv", ".hidden", "none.csv"])
def test_a_list_elsewhere_or_nowhere_is_refused(tmp_path: Path, name: str) -> None:
    text = WITH_LIST.replace("legs_file: log.csv", f"legs_file: {name}")
    found = faults(tmp_path, text)
    assert [fault.line for fault in found] == [line_of(text, "legs_file")]


@pytest.mark.parametrize("content", [b"\xff\xfe\x00", b"name,\x00\n", b"x" * 1_000_001])
def test_a_list_that_is_no_text_is_refused(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "log.csv").write_bytes(content)
    assert len(faults(tmp_path, WITH_LIST)) == 1


def test_a_track_gives_the_distance_of_its_leg(tmp_path: Path) -> None:
    """Three minutes along a meridian are three sea miles, to the earth's own roundness."""
    leg = read(tmp_path, with_track(tmp_path, TRACK)).legs[0]
    assert leg.distance / 1852.0 == pytest.approx(3.0, rel=0.005)
    assert leg.track == "way.gpx"


def test_a_route_does_as_well_as_a_track(tmp_path: Path) -> None:
    route = GPX.format(f"<rte>{MERIDIAN.replace('trkpt', 'rtept')}</rte>")
    assert read(tmp_path, with_track(tmp_path, route)).legs[0].distance > 3 * 1840.0


def test_a_distance_beside_its_track_stands_and_is_compared(tmp_path: Path) -> None:
    text = with_track(tmp_path, TRACK, "    distance: 4 nm\n")
    case = read(tmp_path, text)
    assert case.legs[0].distance == pytest.approx(4 * 1852.0)
    assert any("is 4 nm where its track is 3.0 nm long" in str(w) for w in case.warnings)
    close = read(tmp_path, with_track(tmp_path, TRACK, "    distance: 3.2 nm\n"))
    assert not any("track" in str(warning) for warning in close.warnings)


@pytest.mark.parametrize(
    ("content", "message"),
    [
        ("", "cannot be read as GPX"),
        ("not xml", "cannot be read as GPX"),
        (TRACK[:-20], "cannot be read as GPX"),
        (b"\xff\xfe" + TRACK.encode("utf-16-le"), "cannot be read as GPX"),
        (TRACK.replace('lat="51.0"', 'lat="north"'), "cannot be read as GPX"),
        (GPX.format(""), "holds no track that leads anywhere"),
        (GPX.format('<trk><trkseg><trkpt lat="1" lon="1"/></trkseg></trk>'), "holds no track"),
        ('<!DOCTYPE gpx [<!ENTITY a "b">]>' + TRACK, "declares entities of its own"),
        (b" " * (LARGEST + 1), "is larger than 20 MB"),
    ],
)
def test_a_broken_track_is_one_fault(tmp_path: Path, content: str | bytes, message: str) -> None:
    text = with_track(tmp_path, content)
    found = faults(tmp_path, text)
    assert [(f.path, f.line) for f in found] == [("legs[0].track", line_of(text, "track:"))]
    assert message in found[0].problem


def test_a_breaker_without_voltage_is_a_fault(tmp_path: Path) -> None:
    text = changed(("shore_power: false\n", "shore_power: true\n  breaker: 16 A\n"))
    assert any("berth.voltage: is missing" in line for line in lines(tmp_path, text))
