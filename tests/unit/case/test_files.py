"""What a file beside the case is by its bytes, and how long the way of a track is."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.case.files.looks import JPEG, PNG, looks_like
from generator.case.files.track import UselessTrackError, passage_length
from tests.unit.case.faulty import changed, faults

LIST = changed(("legs:\n", "legs_file: it.csv\nlegs:\n"))


@pytest.mark.parametrize(
    ("content", "kind"),
    [
        (b"\xff\xd8\xff\xe0rest", JPEG),
        (b"\x89PNG\r\n\x1a\nrest", PNG),
        (b"\x89PNG", ""),
        (b"\x00\x00\x00\x18ftypheicrest", "a HEIC picture"),
        (b"RIFF1234WEBPrest", "a WebP picture"),
        (b"PK\x03\x04rest", "a workbook or an archive"),
        (b"%PDF-1.7", "a PDF"),
        (b"name,speed", ""),
        (b"", ""),
    ],
)
def test_looks_like_goes_by_the_first_bytes(content: bytes, kind: str) -> None:
    assert looks_like(content) == kind


def test_a_workbook_under_the_name_of_a_table_is_told_as_one(tmp_path: Path) -> None:
    (tmp_path / "it.csv").write_bytes(b"PK\x03\x04" + bytes(100))
    (found,) = [str(fault) for fault in faults(tmp_path, LIST)]
    assert "names it.csv, which is a workbook or an archive, expected a CSV file" in found


def test_a_head_of_endless_columns_is_one_fault(tmp_path: Path) -> None:
    (tmp_path / "it.csv").write_bytes(b"," * 900_000)
    (found,) = [str(fault) for fault in faults(tmp_path, LIST)]
    assert found.endswith("it.csv:1: has 900001 columns, expected at most 60")


def test_the_faults_of_a_long_table_are_some_dozens(tmp_path: Path) -> None:
    text = changed(("  datum:", "  offsets: it.csv\n  datum:"))
    (tmp_path / "it.csv").write_text("x_m,z_m,half_breadth_m\n" + "a,b\n" * 5000)
    found = faults(tmp_path, text)
    assert len(found) == 41
    assert found[-1].problem == "and 4960 more"


def test_a_tag_is_told_by_its_beginning(tmp_path: Path) -> None:
    (found, *_) = faults(tmp_path, f"a: !{'x' * 900_000} b\n")
    assert "has the tag" in str(found)
    assert len(str(found)) < 300


def gpx(inside: str) -> bytes:
    return f'<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1">{inside}</g:gpx>'.encode()


def points(name: str, *places: tuple[float, float]) -> str:
    return "".join(f'<g:{name} lat="{lat}" lon="{lon}"/>' for lat, lon in places)


def test_passage_length_is_that_of_the_globe_along_each_segment() -> None:
    """A degree is 6378137 m x pi / 180 = 111319.5 m; at 60 degrees, of longitude half of that.

    The step from segment to segment is not sailed. By the chord formula a degree along the
    parallel of 60 degrees is cut by 2 asin(cos 60 sin 0.5) = 0.99999 of half a degree.
    """
    north = points("trkpt", (50.0, 4.0), (50.5, 4.0), (51.0, 4.0))
    east = points("trkpt", (60.0, 4.0), (60.0, 5.0))
    track = f"<g:trk><g:trkseg>{north}</g:trkseg><g:trkseg>{east}</g:trkseg></g:trk>"
    route = f"<g:rte>{points('rtept', (0.0, 0.0), (9.0, 0.0))}</g:rte>"
    assert passage_length(gpx(track + route)) == pytest.approx(1.5 * 111_319.5, rel=2e-5)
    assert passage_length(gpx(route)) == pytest.approx(9.0 * 111_319.5, rel=1e-6)


@pytest.mark.parametrize(
    ("inside", "problem"),
    [
        ("<g:rte><g:rtept lat='1'/></g:rte>", "cannot be read as GPX: lacks 'lon'"),
        ("<g:rte><g:rtept lat='a' lon='1'/></g:rte>", "cannot be read as GPX"),
        ("<g:rte><g:rtept lat='nan' lon='1'/></g:rte>", "cannot be read as GPX"),
        ("<g:rte><g:rtept lat='91' lon='1'/></g:rte>", "holds a point that is not on earth"),
        ("<g:trkpt lat='1' lon='1'/>", "holds no track that leads anywhere"),
        ("<g:rte>&amp;&other;</g:rte>", "cannot be read as GPX"),
    ],
)
def test_a_useless_track_says_why(inside: str, problem: str) -> None:
    with pytest.raises(UselessTrackError, match=problem):
        passage_length(gpx(inside))
