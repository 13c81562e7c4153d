"""What is no plain file beside the case is refused before it is read, and nothing waits for it."""

from __future__ import annotations

import os
import resource
import signal
import socket
import stat
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from generator.case.open import read_case
from generator.case.read import file_bytes
from generator.errors import CaseError
from tests.unit.case.faulty import ROOT, SMALL, changed, faults, line_of, read
from tests.unit.case.test_leg_list import GOOD, HEAD, TRACK
from tests.unit.case.weather_text import energyplus

SECONDS = 60  # a whole check takes one; a pipe that is opened waits for ever
MEMORY = 2_000_000_000  # bytes; a device without end would take them all
DATUM = "  datum: aft end of the waterline\n"
LINES = (ROOT / "cases" / "fieldfare_lines.csv").read_text(encoding="utf-8")
LEG = (
    "  - name: By track\n    track: it.gpx\n    times_per_year: 2\n    speed: 4 kn\n"
    "    foul_stream: 0 kn\n    refuge: true\n    sailable: true\n"
)
# key of the case: its file's name, the case that names it, what a sound file of that kind holds
KEYS = {
    "boat.offsets": ("it.csv", changed((DATUM, DATUM + "  offsets: it.csv\n")), LINES),
    "waters.weather_file": (
        "it.epw",
        changed(("country: DK", "country: NL\n  weather_file: it.epw")),
        energyplus(),
    ),
    "legs_file": ("it.csv", changed(("legs:\n", "legs_file: it.csv\nlegs:\n")), HEAD + GOOD),
    "legs[0].track": ("it.gpx", changed(("legs:\n", f"legs:\n{LEG}")), TRACK),
}


def pipe(place: Path, sound: Path) -> None:
    os.mkfifo(place)


def folder(place: Path, sound: Path) -> None:
    place.mkdir()


def door(place: Path, sound: Path) -> None:
    """A socket; its name may not be long."""
    before = Path.cwd()
    os.chdir(place.parent)
    try:
        with socket.socket(socket.AF_UNIX) as made:
            made.bind(place.name)
    finally:
        os.chdir(before)


def endless(place: Path, sound: Path) -> None:
    place.symlink_to("/dev/zero")


def link_out(place: Path, sound: Path) -> None:
    """To a file that would do, in another folder."""
    place.symlink_to(sound)


def link_beside(place: Path, sound: Path) -> None:
    other = place.with_name(f"other{place.suffix}")
    other.write_bytes(sound.read_bytes())
    place.symlink_to(other.name)


def link_to_a_pipe(place: Path, sound: Path) -> None:
    os.mkfifo(place.with_name("pipe"))
    place.symlink_to("pipe")


def loop(place: Path, sound: Path) -> None:
    place.symlink_to("round")
    place.with_name("round").symlink_to(place.name)


def own_name(place: Path, sound: Path) -> None:
    place.symlink_to(place.name)


def sparse(place: Path, sound: Path) -> None:
    """Far larger than memory, and no block of it on the disk."""
    with place.open("wb") as stream:
        stream.truncate(8 * MEMORY)


def nothing(place: Path, sound: Path) -> None:
    pass


Make = Callable[[Path, Path], None]
KINDS: dict[str, tuple[Make, str]] = {
    "a pipe": (pipe, "is a pipe, a socket or a device"),
    "a socket": (door, "is a pipe, a socket or a device"),
    "a folder": (folder, "is a folder"),
    "a link to a device": (endless, "is a link"),
    "a link to a pipe": (link_to_a_pipe, "is a link"),
    "a link out of the folder": (link_out, "is a link"),
    "a link within the folder": (link_beside, "is a link"),
    "a loop of links": (loop, "is a link"),
    "a link to itself": (own_name, "is a link"),
    "no file": (nothing, "there is no such file"),
    "a file without end": (sparse, "is larger than"),
}


def limited() -> None:
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))


def study(*arguments: str, folder: Path) -> subprocess.CompletedProcess[str]:
    """The command, ended with a failure where it hangs or eats memory."""
    return subprocess.run(
        [sys.executable, "-m", "generator", *arguments],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT), "OPENBLAS_NUM_THREADS": "1"},
        capture_output=True,
        text=True,
        check=False,
        timeout=SECONDS,
        preexec_fn=limited,
    )


@pytest.fixture(scope="module")
def said(tmp_path_factory: pytest.TempPathFactory) -> subprocess.CompletedProcess[str]:
    """One check of a case for each key and each kind of odd file."""
    place = tmp_path_factory.mktemp("odd")
    for key, (name, text, content) in KEYS.items():
        (place / "sound" / key).mkdir(parents=True)
        sound = place / "sound" / key / name
        sound.write_text(content, encoding="utf-8")
        for kind, (make, _) in KINDS.items():
            beside = place / kind / key
            beside.mkdir(parents=True)
            (beside / "boat.yaml").write_text(text, encoding="utf-8")
            make(beside / name, sound)
    cases = [f"{kind}/{key}/boat.yaml" for kind in KINDS for key in KEYS]
    return study("check", *cases, folder=place)


@pytest.mark.parametrize("key", KEYS)
@pytest.mark.parametrize("kind", KINDS)
def test_an_odd_file_beside_the_case_is_one_fault(
    said: subprocess.CompletedProcess[str], kind: str, key: str
) -> None:
    assert said.returncode == 2
    lines = [line for line in said.stderr.splitlines() if line.startswith(f"{kind}/{key}/")]
    name, text, _ = KEYS[key]
    at = line_of(text, f" {name}" if key != "legs_file" else "legs_file")
    assert len(lines) == 1, lines
    assert lines[0].startswith(f"{kind}/{key}/boat.yaml:{at}: {key}: names {name}"), lines
    assert KINDS[kind][1] in lines[0]


@pytest.mark.parametrize("key", KEYS)
def test_the_same_file_is_read_where_it_is_a_plain_one(tmp_path: Path, key: str) -> None:
    """So that the faults above are those of the file; the folder itself may lie behind a link."""
    name, text, content = KEYS[key]
    (tmp_path / "real").mkdir()
    (tmp_path / "link").symlink_to("real")
    (tmp_path / "real" / name).write_text(content, encoding="utf-8")
    (tmp_path / "real" / "boat.yaml").write_text(text, encoding="utf-8")
    assert read_case(tmp_path / "link" / "boat.yaml").assumptions


def test_the_same_fault_of_two_files_is_told_of_both(tmp_path: Path) -> None:
    both = changed((DATUM, DATUM + "  offsets: a.csv\n"), ("legs:\n", "legs_file: b.csv\nlegs:\n"))
    for name in ("a.csv", "b.csv"):
        (tmp_path / name).write_bytes(b"\xff")
    files = [Path(fault.file).name for fault in faults(tmp_path, both)]
    assert files == ["a.csv", "b.csv"]


@pytest.mark.parametrize("key", KEYS)
def test_every_file_beside_the_case_belongs_to_its_fingerprint(tmp_path: Path, key: str) -> None:
    name, text, content = KEYS[key]
    marks = set()
    for version in (content, content + "\n"):
        (tmp_path / name).write_text(version, encoding="utf-8")
        marks.add(read(tmp_path, text).file.sha256)
    assert len(marks) == 2


@pytest.mark.parametrize("name", ["..", ".", "a/it.csv", "/dev/zero", "it\\u0007.csv", ".it.csv",
                                  "it\\u200b.csv"])  # fmt: skip
def test_a_name_that_leads_elsewhere_is_one_printable_fault(tmp_path: Path, name: str) -> None:
    (tmp_path / "a").mkdir()
    for place in ("a/it.csv", ".it.csv", "it\u200b.csv"):
        (tmp_path / place).write_text(HEAD + GOOD, encoding="utf-8")
    text = changed(("legs:\n", f'legs_file: "{name}"\nlegs:\n'))
    (found,) = faults(tmp_path, text)
    assert (found.path, found.line) == ("legs_file", line_of(text, "legs_file"))
    assert str(found).isprintable()


# What stands in the place of the case file itself; a link to a plain file is one.
CASES: dict[str, tuple[Make, str]] = {
    "a pipe": (pipe, "is a pipe, a socket or a device"),
    "a socket": (door, "is a pipe, a socket or a device"),
    "a folder": (folder, "is a folder"),
    "a link to a device": (endless, "is a pipe, a socket or a device"),
    "a link to a pipe": (link_to_a_pipe, "is a pipe, a socket or a device"),
    "a link to itself": (own_name, "cannot be read"),
    "a loop of links": (loop, "cannot be read"),
    "no file": (nothing, "there is no such file"),
    "a file without end": (sparse, "is larger than 1 MB"),
}


@pytest.mark.parametrize("verb", ["check", "report"])
def test_an_odd_case_file_is_one_fault(tmp_path: Path, verb: str) -> None:
    for kind, (make, _) in CASES.items():
        (tmp_path / kind).mkdir()
        make(tmp_path / kind / f"{kind}.yaml", tmp_path)
    names = [f"{kind}/{kind}.yaml" for kind in CASES]
    done = study(verb, *names, "/dev/zero", folder=tmp_path)
    assert done.returncode == 2
    told = done.stderr.splitlines()
    assert len(told) == len(CASES) + 1
    for name, (_, message), line in zip(names, CASES.values(), told, strict=False):
        assert line.startswith(f"{name}:1: " if message != "is larger than 1 MB" else name)
        assert message in line
    assert told[-1].startswith("/dev/zero:1: is a pipe, a socket or a device")
    assert not (tmp_path / "out").exists()


def test_a_case_file_may_be_a_link_to_a_plain_one(tmp_path: Path) -> None:
    (tmp_path / "boat.yaml").write_text(SMALL, encoding="utf-8")
    (tmp_path / "link.yaml").symlink_to("boat.yaml")
    assert read_case(tmp_path / "link.yaml").assumptions


@contextmanager
def guarded(seconds: int) -> Iterator[None]:
    """Fail where the body takes longer."""

    def ring(_signal: int, _frame: object) -> None:
        raise AssertionError(f"took more than {seconds} s")

    before = signal.signal(signal.SIGALRM, ring)
    signal.alarm(seconds)
    try:
        yield
    finally:
        signal.alarm(0)
        signal.signal(signal.SIGALRM, before)


@pytest.mark.parametrize("make", [pipe, endless, link_out])
def test_a_file_exchanged_after_the_first_look_is_refused(
    make: Make, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The first look sees a plain file; what is opened a moment later is none."""
    plain = tmp_path / "plain.csv"
    plain.write_text("x", encoding="utf-8")
    look = plain.lstat()
    assert stat.S_ISREG(look.st_mode)
    make(tmp_path / "it.csv", plain)
    monkeypatch.setattr(Path, "lstat", lambda self: look)
    with guarded(10), pytest.raises(CaseError, match=r"is a pipe|cannot be read"):
        file_bytes(tmp_path / "it.csv", "it.csv", "CSV", 100, links=False)


WEATHER = energyplus().splitlines()


@pytest.mark.parametrize(
    ("key", "content", "message"),
    [
        ("boat.offsets", LINES.encode() + b"\xff", f"it.csv:{LINES.count(chr(10)) + 1}: is not"),
        ("boat.offsets", LINES.replace("0.", "\x07", 1).encode(), "holds the control character"),
        ("boat.offsets", LINES.encode() + b'"' + b"x" * 200_000, "is no table: field larger"),
        ("boat.offsets", "\n".join(
            line if line[:1] in "#x" else f"{line.rpartition(',')[0]},0"
            for line in LINES.splitlines()).encode(), "has no breadth in the water"),
        ("waters.weather_file", "\n".join([*WEATHER[:99], "x" * 200_000]).encode(),
         "cannot be read in line 100"),
        ("waters.weather_file", "\n".join([*WEATHER[:99], "2001,1"]).encode(),
         "cannot be read in line 100"),
        ("waters.weather_file", energyplus().replace("51.6", "nan", 1).encode(),
         "names no place on earth"),
        ("legs[0].track", TRACK.replace('lat="51.0"', 'lat="inf"').encode(), "cannot be read"),
        ("legs[0].track", TRACK.replace('lat="51.0"', 'lat="1e300"').encode(), "is not on earth"),
        ("legs[0].track", TRACK.replace('lon="1"', 'lon="200"').encode(), "is not on earth"),
    ],
)  # fmt: skip
def test_an_odd_content_is_a_fault(tmp_path: Path, key: str, content: bytes, message: str) -> None:
    name, text, _ = KEYS[key]
    (tmp_path / name).write_bytes(content)
    found = [str(fault) for fault in faults(tmp_path, text)]
    assert len(found) == 1, found
    assert message in found[0]


def test_the_place_of_a_weather_file_is_printable(tmp_path: Path) -> None:
    (tmp_path / "it.epw").write_text(energyplus().replace("Quay", "Q\x1b\x00uay", 1), "utf-8")
    weather = read(tmp_path, KEYS["waters.weather_file"][1]).weather
    assert weather is not None
    assert weather.place == "Quay"


@pytest.mark.parametrize("word", ['"a\\b"', '"a\\e[31m"', '"\\0"', '"\\N"', '"\\u202e"'])
@pytest.mark.parametrize("place", ["name: Wren", "name: Keep"])
def test_a_control_character_written_as_an_escape_is_one_fault(
    tmp_path: Path, word: str, place: str
) -> None:
    if place not in SMALL:
        place = next(row.strip() for row in SMALL.splitlines() if " name: " in row)
    text = SMALL.replace(place, f"name: {word}", 1)
    (found,) = [str(fault) for fault in faults(tmp_path, text)]
    assert "holds the control character U+" in found
    assert found.isprintable()
