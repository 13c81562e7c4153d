"""What is told of the places of the battery's blocks?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from generator.analyses.percentiles import best, scalar
from generator.analyses.weight.placement import Berth, Placement
from generator.analyses.weight.weight import Weight
from generator.arrays import Numbers
from generator.records import number, record


@record
class SpaceResult:
    """One space, and what of the battery stands in it."""

    name: str
    bound_by: str  # mass, volume
    blocks: int = number("count", "blocks that stand there")
    room: int = number("count", "blocks that there is room for")
    mass: float = number("mass", "mass that stands there")
    max_mass: Numbers = number("mass", "mass that its sole may carry", expected=True)
    volume: Numbers = number("fuel", "volume of the space", expected=True)
    above_bilge: Numbers | None = number("length_small", "height above bilge water", expected=True)
    x: Numbers = number("length", "centre forward of the datum", expected=True)
    y: Numbers = number("length", "centre to starboard", expected=True)
    z: Numbers = number("length", "centre above the waterline", expected=True)
    absent: Mapping[str, str] = field(default_factory=dict)


@record
class PlacementResult:
    """Blocks on their best places; ``unplaced`` masses are why they are not shared out."""

    fits: bool
    level: bool
    volume_known: bool
    unplaced: str | None
    spaces: tuple[SpaceResult, ...]
    blocks: int = number("count", "blocks of the battery")
    block_mass: float = number("mass", "mass of a block")
    trim_share: float | None = number("percent", "trim by the bow, of length")
    trim: float | None = number("length_small", "trim by the bow, blocks as placed")
    list: float | None = number("angle", "list to starboard, blocks as placed")
    shift_forward: float = number("mass", "mass to shift forward a metre besides")
    shift_aft: float = number("mass", "mass to shift aft a metre besides")
    shift_starboard: float = number("mass", "mass to shift to starboard besides")
    shift_port: float = number("mass", "mass to shift to port besides")
    absent: Mapping[str, str] = field(default_factory=dict)


def placement_result(placed: Placement | None, weight: Weight) -> PlacementResult | None:
    """None without spaces or a battery."""
    if placed is None:
        return None
    forward, starboard = placed.to_shift()
    length = scalar(best(weight.change.before.waterline_length))
    why = "mass_without_place" if placed.fits else "blocks_do_not_fit"
    return PlacementResult(
        fits=placed.fits,
        level=placed.level,
        volume_known=placed.volume_known,
        unplaced=", ".join(weight.ledger.unplaced) or None,
        spaces=tuple(_space(berth, placed.block_mass) for berth in placed.berths),
        blocks=placed.blocks,
        block_mass=placed.block_mass,
        trim_share=placed.trim,
        trim=None if placed.trim is None else placed.trim * length,
        list=placed.list,
        shift_forward=max(forward, 0.0),
        shift_aft=max(-forward, 0.0),
        shift_starboard=max(starboard, 0.0),
        shift_port=max(-starboard, 0.0),
        absent=dict.fromkeys(("trim_share", "trim", "list"), why),
    )


def _space(berth: Berth, block_mass: float) -> SpaceResult:
    space = berth.space
    return SpaceResult(
        name=space.name,
        bound_by=berth.bound_by,
        blocks=berth.blocks,
        room=berth.room,
        mass=berth.blocks * block_mass,
        max_mass=space.max_mass,
        volume=space.volume,
        above_bilge=space.above_bilge,
        x=space.x,
        y=space.y,
        z=space.z,
        absent={"above_bilge": "bilge_not_measured"},
    )
