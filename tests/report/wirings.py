"""Wirings of any size for the drawing, and what of a drawing can be measured."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise
from typing import Any
from xml.etree.ElementTree import Element

from generator.report.figures.strokes import Written
from generator.report.figures.wiring import Control, Leg, Piece, Wiring
from generator.report.typeface import FOLDER

Box = tuple[float, float, float, float]
TAG = "{http://www.w3.org/2000/svg}"


def said(*lines: str) -> tuple[Written, ...]:
    return tuple(Written(line) for line in lines)


def _cabled(number: int, fuse: str = "square body") -> tuple[Piece, ...]:
    return (
        Piece("fuse", "fuse", f"F{number}", said("500 A", fuse)),
        Piece("cable", "cable", f"C{number}", said("120 mm²", "three a pole")),
    )


def _isolator(number: int) -> Piece:
    return Piece("isolator", "isolator", f"Q{number}", said("1,250 A"))


def _string(number: int) -> Leg:
    battery = Piece("battery", "battery", f"string {number}", said("51.2 V", "flooded"))
    own = Piece("contactor", "contactor", f"K{number}", said("1,250 A", "by S1"))
    return Leg(f"C{number}", f"F{number}", (battery, *_cabled(number), _isolator(number), own))


def _motor(number: int, place: int) -> Leg:
    control = Control(
        (Piece("", "fuse", "", said("40 A")), Piece("", "switch", f"K{place + 20}"),
         Piece("", "resistor", "", said("100 Ω"))),
        (Piece("", "stop", f"S{place}2", said("emergency stop")),),
    )  # fmt: skip
    pieces = (
        *_cabled(number), _isolator(number),
        Piece("contactor", "contactor", f"K{place}", said("1,250 A")),
        Piece("converter", "inverter", "", said("motor controller", f"S{place}3 neutral start")),
        Piece("end", "motor", "", said("motor", "100.0 kW")),
    )  # fmt: skip
    return Leg(f"C{number}", f"F{number}", pieces, control)


def wiring(strings: int, motors: int, house_battery: bool = True) -> Wiring:
    """Every kind of leg there is, with the longest words of each."""
    number = strings + motors
    own = tuple(_motor(strings + place, place) for place in range(1, motors + 1))
    inverter = (Piece("converter", "inverter", "", said("inverter")),
                Piece("end", "load", "", said("AC sockets")))  # fmt: skip
    battery = Piece("end", "battery", "", said("house battery", "12.0 V"))
    house = (Piece("converter", "converter", "", said("DC-DC converter")),)
    end = "load" if house_battery else "sink"
    panel = (*_cabled(number + 3, "terminal post"), _isolator(number + 3),
             Piece("end", end, "", said("house panel")))  # fmt: skip
    fuse, cable = _cabled(number + 5, "terminal post")
    feed = (replace(cable, column="fuse"), replace(fuse, column="cable"), battery)
    feeds = (
        (Leg(f"C{number + 5}", f"F{number + 5}", feed, None, f"C{number + 2}", True),)
        if house_battery
        else ()
    )
    behind = feeds[0].id if feeds else f"C{number + 2}"
    charger = Piece("converter", "charger", "", said("charger", "S4 inhibit"))
    sun = (_isolator(number + 6), Piece("end", "panel", "", said("panels", "1,250 W")),
           Piece("converter", "converter", "", said("sun charger",
                                                     "S5 inhibit")))  # fmt: skip
    # the study knows one motor an option: two of them stand for many legs, without panels
    panels = (Leg(f"C{number + 6}", f"F{number + 6}", (*_cabled(number + 6), *sun)),) * (
        motors == 1
    )
    branches = (
        *own,
        Leg(f"C{number + 1}", f"F{number + 1}", (*_cabled(number + 1), *inverter)),
        Leg(f"C{number + 2}", f"F{number + 2}", (*_cabled(number + 2), *house)),
        *feeds,
        Leg(f"C{number + 3}", f"F{number + 3}", panel, None, behind, not house_battery),
        *panels,
        Leg(f"C{number + 4}", f"F{number + 4}", (*_cabled(number + 4), charger)),
    )
    shore = (
        Piece("shore", "residual", "", said("RCD")), Piece("shore", "breaker", "", said("16 A")),
        Piece("shore", "galvanic", "", said("galvanic isolator")),
        Piece("shore", "socket", "", said("shore inlet", "230 V")),
    )  # fmt: skip
    bonding = said("one bonding point,", "installer to confirm")
    return Wiring(tuple(_string(place + 1) for place in range(strings)), branches, shore, bonding)


@lru_cache(maxsize=2)
def _face(name: str) -> tuple[dict[int, str], Any, int]:
    from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

    font = TTFont(FOLDER / f"{name}.ttf")
    return font.getBestCmap(), font["hmtx"], font["head"].unitsPerEm


def size_of(node: Element) -> float:
    found = re.search(r"font-size: ([\d.]+)px", node.get("style") or "")
    assert found is not None
    return float(found[1])


def text_boxes(root: Element) -> list[tuple[str, Box]]:
    """The place of every line of words, by the widths of the bundled typeface."""
    boxes = []
    for node in root.iter(f"{TAG}text"):
        text, size = node.text or "", size_of(node)
        glyphs, widths, units = _face("bold" if "700" in (node.get("style") or "") else "regular")
        wide = sum(widths[glyphs[ord(sign)]][0] for sign in text) / units * size
        x, y = float(node.get("x") or 0), float(node.get("y") or 0)
        left = x - wide * {"start": 0.0, "middle": 0.5, "end": 1.0}[node.get("text-anchor") or ""]
        boxes.append((text, (left, y - 0.72 * size, left + wide, y + 0.2 * size)))
    return boxes


def wires(root: Element) -> list[Box]:
    """Every straight piece of the wires, as a thin box."""
    found = []
    for node in root.iter(f"{TAG}path"):
        if node.get("class") != "wire":
            continue
        spots = re.findall(r"(-?[\d.]+) (-?[\d.]+)", node.get("d") or "")
        points = [(float(x), float(y)) for x, y in spots]
        for (x, y), (then, low) in pairwise(points):
            found.append((min(x, then), min(y, low) - 0.5, max(x, then), max(y, low) + 0.5))
    return found


def apart(first: Box, second: Box) -> bool:
    """Whether two boxes do not touch."""
    return (
        first[2] <= second[0]
        or second[2] <= first[0]
        or first[3] <= second[1]
        or second[3] <= first[1]
    )
