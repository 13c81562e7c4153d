"""What must hold of every single-line diagram, read from the drawing itself."""

from __future__ import annotations

from typing import Any
from xml.etree.ElementTree import Element, fromstring

import pytest

from generator.report.figures.single_line import single_line
from generator.report.figures.wiring_of import described, wiring_of
from generator.report.page import Page
from tests.report.conftest import studied

CASES = ["ketch_34_two_motors", "sloop_30_weekend", "every_key"]
TAG = "{http://www.w3.org/2000/svg}"


def legs(root: Element) -> list[Element]:
    return [node for node in root.iter(f"{TAG}g") if node.get("data-leg")]


def unprotected(root: Element, fuses: dict[str, str]) -> list[str]:
    """Positive legs without a drawn fuse that the schedule has for that very circuit."""
    found = []
    for leg in legs(root):
        circuit, device = leg.get("data-leg") or "", leg.get("data-device") or ""
        drawn = [part.get("data-tag") for part in leg.iter(f"{TAG}g")
                 if part.get("data-symbol") == "fuse"]  # fmt: skip
        if fuses.get(device) != circuit or device not in drawn:
            found.append(circuit)
    return found


def stray_wires(root: Element) -> int:
    """Wires of the drawing that belong to no leg."""
    every = [node for node in root.iter(f"{TAG}path") if node.get("class") == "wire"]
    held = {id(node) for leg in legs(root) for node in leg.iter(f"{TAG}path")}
    return sum(id(node) not in held for node in every)


def diagrams(name: str) -> list[tuple[dict[str, Any], Element, str]]:
    """The installation of every motor, its drawing, and the drawing in words."""
    page = Page(studied(name))
    found = []
    for motor in page.motors:
        wiring = wiring_of(page, motor)
        root = fromstring(single_line("x", wiring).svg)
        found.append((page.value(f"{motor}.installation"), root, described(wiring)))
    return found


@pytest.mark.parametrize("name", CASES)
def test_every_positive_leg_has_its_device_of_the_schedule(name: str) -> None:
    for installation, root, _ in diagrams(name):
        fuses = {row["id"]: row["circuit"] for row in installation["devices"]}
        assert unprotected(root, fuses) == []
        assert stray_wires(root) == 0
        assert len(list(root.iter(f"{TAG}path"))) > 40


@pytest.mark.parametrize("name", CASES)
def test_every_circuit_of_the_schedule_is_a_leg_once(name: str) -> None:
    for installation, root, _ in diagrams(name):
        drawn = sorted(leg.get("data-leg") or "" for leg in legs(root))
        assert drawn == sorted(row["id"] for row in installation["circuits"])


@pytest.mark.parametrize("name", CASES)
def test_words_for_those_who_cannot_see_it_name_every_device(name: str) -> None:
    for installation, root, said in diagrams(name):
        spoken = said.replace(",", " ").replace(";", " ").replace("(", " ").split()
        tags = {row["id"] for part in ("circuits", "devices", "switches")
                for row in installation[part]}  # fmt: skip
        assert [tag for tag in sorted(tags) if tag not in spoken] == []
        drawn = " ".join(node.text or "" for node in root.iter(f"{TAG}text")).split()
        assert [tag for tag in sorted(tags) if tag not in drawn] == []


def test_the_law_sees_a_leg_without_its_device() -> None:
    """A leg whose fuse is not drawn, or not in the schedule, must be found."""
    installation, root, _ = diagrams(CASES[0])[0]
    fuses = {row["id"]: row["circuit"] for row in installation["devices"]}
    leg = legs(root)[0]
    lost = {device: circuit for device, circuit in fuses.items()
            if device != leg.get("data-device")}  # fmt: skip
    assert unprotected(root, lost) == [leg.get("data-leg")]
    for part in list(leg):
        if part.get("data-symbol") == "fuse":
            leg.remove(part)
    assert unprotected(root, fuses) == [leg.get("data-leg")]
