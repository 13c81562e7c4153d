"""What do the published bare-hull polynomials say, with the keel's waves beside them?"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.arrays import Array, Numbers
from generator.physics.hull.form import HullForm, beam_draught
from generator.physics.hull.interpolation import between, cubics
from generator.physics.hull.residuary import froude_number
from generator.physics.validity import Caution, outside
from generator.physics.water import GRAVITY
from generator.tables.load import read_table

HULL_1998, HULL_2008 = "hull/ks1998_bare_hull", "hull/kk2008_bare_hull"
KEEL = "hull/keel_residuary"
# Beyond these midship coefficients the form of 2008 jumps about: 14 against 20 thousandths of
# the weight by other forms at Fn 0.40 for a coefficient of 0.55.
MIDSHIP_LOW, MIDSHIP_HIGH = 0.63, 0.80
# The polynomial was made on fins. For long keels it falls from Fn 0.25 to 0.30, to nothing for
# heavy ones, and rises at least twelvefold to 0.35. A power of Fn through 0.20 and 0.35 meets the
# node at 0.25 within a fifth, and that at 0.30 is a sixth of it or less.
DENT = 0.30
FIN_CHORDS = (0.12, 0.22)  # of the waterline: fins of the register
FINS_ONLY = "fins_only"  # what is said outside the range
REFUSED = "The form of 2008 gives no answer: it is erratic at such midship coefficients."


@dataclass(frozen=True)
class KeelBody:
    """The keel as a body under the hull; m3, m, m."""

    volume: Numbers
    centre_depth: Numbers  # of its buoyancy below the bottom of the canoe body
    total_draught: Numbers
    along: bool = False  # runs along most of the hull, as a long keel does


def keuning1998_share(form: HullForm, froude: Array) -> Array:
    """Residuary resistance of the bare hull over its displacement weight, form of 1998.

    f = a0 + [a1 xb/L + a2 Cp + a3 V^(2/3)/Aw + a4 B/L] V^(1/3)/L
    + [a5 V^(2/3)/Sc + a6 xb/xf + a7 (xb/L)^2 + a8 Cp^2] V^(1/3)/L, xb and xf from the forward
    perpendicular; below 0 is 0; between the nodes by monotone cubic from rest

    Args:
        form: the canoe body
        froude: Fn [-]

    Returns:
        f [-]; NaN above Fn 0.60

    Valid: L/B 2.73 to 5.00, B/Tc 2.46 to 19.4, LV 4.34 to 8.50, LCB 0 to -8.2 %, LCF -1.8 to
        -9.5 %, Cp 0.52 to 0.60, Cm 0.65 to 0.78; no keel, no rudder
    Source: keuning1998, bare hull polynomial
    """
    xb, xf, area, slender = _places(form)
    Cp = form.prismatic_coefficient
    terms: list[Numbers] = [
        *(xb, Cp, area / form.waterplane_area, form.waterline_beam / form.waterline_length),
        *(area / form.canoe_wetted_area, xb / xf, xb**2, np.square(Cp)),
    ]
    return _curve(HULL_1998, [1.0, *(term * slender for term in terms)], froude)


def keuning2008_share(form: HullForm, froude: Array) -> Array:
    """Residuary resistance of the bare hull over its displacement weight, form of 2008.

    f = a0 + [a1 xb/L + a2 Cp + a3 V^(2/3)/Aw + a4 B/L + a5 xb/xf + a6 B/Tc + a7 Cm] V^(1/3)/L,
    xb and xf from the forward perpendicular; below 0 is 0; between by monotone cubic from rest

    Args:
        form: the canoe body
        froude: Fn [-]

    Returns:
        f [-]; NaN above Fn 0.75 and for a midship coefficient outside 0.63 to 0.80

    Valid: as the form of 1998, L/B to 5.88, Cm 0.65 to 0.79; no keel, no rudder
    Source: keuning2008, bare hull polynomial
    """
    xb, xf, area, slender = _places(form)
    Cm = np.asarray(form.midship_coefficient)
    terms: list[Numbers] = [
        *(xb, form.prismatic_coefficient, area / form.waterplane_area),
        *(form.waterline_beam / form.waterline_length, xb / xf, beam_draught(form), Cm),
    ]
    share = _curve(HULL_2008, [1.0, *(term * slender for term in terms)], froude)
    return np.asarray(np.where((Cm < MIDSHIP_LOW) | (Cm > MIDSHIP_HIGH), np.nan, share))


def keel_residuary(form: HullForm, keel: KeelBody, speed: Numbers, density: Numbers) -> Numbers:
    """Residuary resistance of the keel: belongs to the bare-hull forms, never to the appended.

    Rrk / (ρ g Vk) = A0 + A1 T/B + A2 (Tc + zk)/Vk^(1/3) + A3 V/Vk; below 0 is 0; between the
    nodes by monotone cubic from rest

    Args:
        form: the canoe body
        keel: Vk, zk, T
        speed: v [m/s]
        density: ρ of the water [kg/m3]

    Returns:
        Rrk [N]; NaN above Fn 0.60

    Valid: fin keels with a volume; single signs are odd (A0 at Fn 0.40); of a long keel the node
        at Fn 0.30 is read between its neighbours
    Source: keuning1998, keel polynomial
    """
    froude = np.asarray(froude_number(speed, form.waterline_length))
    return density * GRAVITY * keel.volume * keel_share_at(keel_curve(form, keel), froude)


def keel_curve(form: HullForm, keel: KeelBody) -> Array:
    """The keel's share at the nodes, made once for all speeds.

    A0 + A1 T/B + A2 (Tc + zk)/Vk^(1/3) + A3 V/Vk at each node; below 0 is 0; rest is a node; of a
    keel along the hull the value at Fn 0.30 is that of the cubic through all other nodes

    Args:
        form: the canoe body
        keel: Vk, zk, T

    Returns:
        cubics between the nodes, for ``keel_share_at`` [-]

    Valid: as ``keel_residuary``
    Source: keuning1998, keel polynomial
    """
    depth = (form.canoe_draught + keel.centre_depth) / np.cbrt(keel.volume)
    draught = keel.total_draught / form.waterline_beam
    values = _values(KEEL, [1.0, draught, depth, form.canoe_volume / keel.volume])
    return cubics(_nodes(KEEL), _bridged(values) if keel.along else values)


def _bridged(values: Array) -> Array:
    """The keel's shares with the node of the dent read between the others."""
    nodes = _nodes(KEEL)
    others = ~np.isclose(nodes, DENT)
    elsewhere = cubics(nodes[others], values[..., others])
    across = between(nodes[others], elsewhere, np.asarray(DENT))
    return np.where(others, values, across[..., np.newaxis])


def keel_share_at(coefficients: Array, froude: Array) -> Array:
    """Residuary resistance of the keel over the weight of water it displaces.

    f of ``keel_curve``, between its nodes by monotone cubic

    Args:
        coefficients: of ``keel_curve`` [-]
        froude: Fn [-]

    Returns:
        f [-]; NaN above Fn 0.60

    Valid: as ``keel_residuary``
    Source: keuning1998, keel polynomial
    """
    return _read(KEEL, coefficients, froude)


def keel_cautions(keel: KeelBody, chord_share: Numbers) -> tuple[Caution, ...]:
    """Where the keel is none of those that its polynomial was made on.

    chord over waterline of a keel along the hull against 0.12 to 0.22

    Args:
        keel: whether it runs along the hull
        chord_share: mean chord over waterline length [-]

    Returns:
        a caution, or none; its ends in [-]

    Valid: any keel
    Source: practice, chords of fins
    """
    if not keel.along:
        return ()
    words = "mean chord of the keel over the waterline"
    found = outside(words, chord_share, *FIN_CHORDS, "practice", FINS_ONLY)
    return () if found is None else (found,)


def cautions_2008(form: HullForm) -> tuple[Caution, ...]:
    """Where the form of 2008 refuses to answer.

    midship coefficient against 0.63 to 0.80

    Args:
        form: the canoe body

    Returns:
        a caution, or none; its ends in [-]

    Valid: any hull
    Source: keuning2008, range of the tested models
    """
    Cm, ends = form.midship_coefficient, (MIDSHIP_LOW, MIDSHIP_HIGH)
    found = outside("midship-section coefficient", Cm, *ends, "keuning2008", REFUSED)
    return () if found is None else (found,)


def _places(form: HullForm) -> tuple[Array, Array, Array, Array]:
    """xb/L, xf/L from the forward perpendicular, V^(2/3), V^(1/3)/L."""
    side = np.cbrt(form.canoe_volume)
    xb, xf = 0.5 - np.asarray(form.lcb), 0.5 - np.asarray(form.lcf)
    return xb, xf, np.asarray(side**2), np.asarray(side / form.waterline_length)


def _curve(name: str, terms: list[Numbers], froude: Array) -> Array:
    """The polynomial at its Froude numbers, no thrust from waves, read between them."""
    return _read(name, cubics(_nodes(name), _values(name, terms)), froude)


def _nodes(name: str) -> Array:
    return np.concatenate([[0.0], read_table(name).column("froude_number")])


def _values(name: str, terms: list[Numbers]) -> Array:
    """The polynomial at rest and at its Froude numbers; below 0 is 0."""
    table = read_table(name)
    coefficients = table.matrix(*table.names[1:])
    values = np.maximum(np.stack(np.broadcast_arrays(*terms), axis=-1) @ coefficients.T, 0.0)
    still = np.zeros((*values.shape[:-1], 1))
    return np.concatenate([still, values], axis=-1)


def _read(name: str, coefficients: Array, froude: Array) -> Array:
    nodes = _nodes(name)
    share = between(nodes, coefficients, froude)
    return np.asarray(np.where(froude > nodes[-1] + 1e-9, np.nan, share))
