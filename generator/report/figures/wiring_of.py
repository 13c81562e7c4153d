"""Which legs has the installation of an option, read from its schedules?"""

from __future__ import annotations

from dataclasses import replace

from generator.report.figures.strokes import Written
from generator.report.figures.wiring import Control, Leg, Piece, Wiring
from generator.report.page import Page

CONVERTERS = {"motor": "inverter", "charger": "charger", "converter": "converter",
              "inverter": "inverter", "sun": "converter"}  # fmt: skip
# from top to bottom
ORDER = ("motor", "inverter", "converter", "house feed", "panel", "sun", "charger")
LOCKS = {"neutral start": "neutral start", "charge inhibit": "inhibit"}
HOUSE_BATTERY = "house battery"  # as the list of circuits names it
SEVERAL = {2: "two a pole", 3: "three a pole", 4: "four a pole"}
SHORE = (
    ("residual", "RCD", None), ("breaker", "breaker", ("berth.breaker_a", "current")),
    ("galvanic", "galvanic isolator", None), ("socket", "shore inlet", ("berth.voltage_v",
                                                                        "voltage")),
)  # fmt: skip
BONDING = (Written("one bonding point,"), Written("installer to confirm"))


def wiring_of(page: Page, motor: str) -> Wiring:
    """The wiring of one battery option."""
    own = f"{motor}.installation"
    circuits = page.keys(f"{own}.circuits")
    kinds = {kind: [key for key in circuits if page.value(key)["kind"] == kind]
             for kind in ("string", *ORDER)}  # fmt: skip
    ids = {kind: next((page.value(key)["id"] for key in kinds[kind]), "") for kind in ORDER}
    behind = {"house feed": ids["converter"], "panel": ids["house feed"] or ids["converter"]}
    return Wiring(
        tuple(_string(page, motor, key) for key in kinds["string"]),
        tuple(
            _branch(page, motor, key, kind, behind.get(kind, ""))
            for kind in ORDER
            for key in kinds[kind]
        ),
        _shore(page) if kinds["charger"] and page.value("berth.shore_power") else (),
        BONDING,
    )


def number(page: Page, key: str, form: str) -> Written:
    """A number of the results as it is written into a drawing."""
    return Written(page.plain(key, form), key, form)


def _string(page: Page, motor: str, key: str) -> Leg:
    said = (
        number(page, f"{motor}.installation.voltages.nominal_v", "voltage"),
        Written(str(page.value(f"{motor}.bank.chemistry"))),
    )
    battery = Piece("battery", "battery", str(page.value(key)["source"]), said)
    own = (battery, _fuse(page, motor, key), *_switches(page, motor, key), _cable(page, key))
    return Leg(page.value(key)["id"], page.value(key)["device"], own)


def _branch(page: Page, motor: str, key: str, kind: str, behind: str) -> Leg:
    row = page.value(key)
    if kind == "house feed":
        return _feed(page, motor, key, behind)
    pieces = (_fuse(page, motor, key), *_switches(page, motor, key), _cable(page, key),
              *_ends(page, motor, key, kind))  # fmt: skip
    back = kind == "panel" and row["source"] != HOUSE_BATTERY
    control = _control(page, motor, key)
    return Leg(row["id"], row["device"], pieces, control, behind, back, row["source"])


def _feed(page: Page, motor: str, key: str, behind: str) -> Leg:
    """From the converter back to the house battery, where its fuse stands."""
    row = page.value(key)
    house = number(page, f"{motor}.installation.voltages.house_v", "voltage")
    pieces = (
        replace(_cable(page, key), column="fuse"), replace(_fuse(page, motor, key), column="cable"),
        Piece("end", "battery", "", (Written(HOUSE_BATTERY), house)),
    )  # fmt: skip
    return Leg(row["id"], row["device"], pieces, None, behind, True, row["target"])


def _fuse(page: Page, motor: str, key: str) -> Piece:
    name = page.value(key)["device"]
    found = page.find(f"{motor}.installation.devices", id=name)
    kind = page.value(f"{found}.fuse_class")
    said = Written(kind.split(",")[0] if kind else "no class holds")  # the schedule has the rest
    return Piece("fuse", "fuse", name, (number(page, f"{found}.rating_a", "current"), said))


def _cable(page: Page, key: str) -> Piece:
    several = SEVERAL.get(page.value(f"{key}.conductor.side_by_side") or 1)
    said = (number(page, f"{key}.conductor.area_mm2", "section"),)
    return Piece("cable", "cable", page.value(key)["id"],
                 (*said, Written(several)) if several else said)  # fmt: skip


def _of_circuit(page: Page, motor: str, key: str, *kinds: str) -> list[str]:
    circuit = page.value(key)["id"]
    return [
        each for each in page.keys(f"{motor}.installation.switches")
        if page.value(each)["circuit"] == circuit and page.value(each)["kind"] in kinds
    ]  # fmt: skip


def _switches(page: Page, motor: str, key: str) -> tuple[Piece, ...]:
    """Isolator and contactor of a circuit."""
    found = _of_circuit(page, motor, key, "isolator", "contactor")
    string = page.value(key)["kind"] == "string"
    by = page.find(f"{motor}.installation.switches", kind="remote disconnect")
    said = (Written(f"by {page.value(by)['id']}"),) if by and string else ()
    return tuple(
        Piece(page.value(each)["kind"], page.value(each)["kind"], page.value(each)["id"],
              (number(page, f"{each}.current_a", "current"),
               *(said if page.value(each)["kind"] == "contactor" else ())))
        for each in found
    )  # fmt: skip


def _control(page: Page, motor: str, key: str) -> Control | None:
    """What opens the contactor by hand, and what fills the controller before it closes."""
    relays = _of_circuit(page, motor, key, "pre-charge relay")
    if not relays:
        return None
    filling = f"{motor}.installation.precharge"
    stops = _of_circuit(page, motor, key, "emergency stop")
    path = (
        Piece("", "fuse", "", (number(page, f"{filling}.fuse_a", "current"),)),
        Piece("", "switch", page.value(relays[0])["id"]),
        Piece("", "resistor", "", (number(page, f"{filling}.resistance_ohm", "ohms"),)),
    )
    return Control(
        path,
        tuple(Piece("", "stop", page.value(each)["id"], (Written(page.value(each)["kind"]),))
              for each in stops),
    )  # fmt: skip


def _ends(page: Page, motor: str, key: str, kind: str) -> tuple[Piece, ...]:
    """What stands between the cable and the far end of a leg."""
    if kind == "panel":
        symbol = "load" if page.value(key)["source"] == HOUSE_BATTERY else "sink"
        return (Piece("end", symbol, "", (Written(page.value(key)["target"]),)),)
    locks = _of_circuit(page, motor, key, "neutral start", "charge inhibit")
    name = page.value(key)["target"]
    said = (Written(name), *(Written(f"{page.value(lock)['id']} {LOCKS[page.value(lock)['kind']]}")
                             for lock in locks))  # fmt: skip
    converter = Piece("converter", CONVERTERS[kind], "", said)
    if kind == "motor":
        power = number(page, f"{motor}.particulars.motor.continuous_power_kw", "power")
        return (converter, Piece("end", "motor", "", (Written("motor"), power)))
    if kind == "sun":
        power = number(page, f"{motor}.installation.sun_power_w", "watts")
        return (converter, Piece("end", "panel", "", (Written("panels"), power)))
    if kind == "inverter":
        return (converter, Piece("end", "load", "", (Written("AC sockets"),)))
    return (converter,)


def _shore(page: Page) -> tuple[Piece, ...]:
    """From the charger back to the quay; none of it is in the schedules."""
    return tuple(
        Piece("shore", symbol, "", (Written(name), *((number(page, *key),) if key else ())))
        for symbol, name, key in SHORE
    )


def described(wiring: Wiring) -> str:
    """The diagram in words, for those who cannot see it: every leg with all that is on it."""
    legs = [f"{_chain(leg.pieces)} to the main busbar" for leg in wiring.strings]
    for leg in wiring.branches:
        legs.append(f"from the {leg.start} through {_chain(leg.pieces)}{_held(leg.control)}")
    if wiring.shore:
        legs.append(f"the charger is fed through {_chain(wiring.shore)}")
    return "; ".join(legs) + "."


def _chain(pieces: tuple[Piece, ...]) -> str:
    return ", ".join(_named(piece) for piece in pieces)


def _named(piece: Piece) -> str:
    kind = piece.symbol if piece.column in ("fuse", "isolator", "contactor", "cable") else ""
    return " ".join(part for part in (kind, piece.tag, *(each.text for each in piece.said)) if part)


def _held(control: Control | None) -> str:
    if control is None:
        return ""
    by = " and ".join(_named(piece) for piece in control.stops)
    path = ", ".join(" ".join((piece.symbol, _named(piece))) for piece in control.precharge)
    filled = f", bridged before it closes by {path}" if path else ""
    return f" (contactor opened by {by}{filled})"
