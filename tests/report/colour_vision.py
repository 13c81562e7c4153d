"""How far apart are two colours for readers who see fewer of them?

Simulation matrices for full protanopia and deuteranopia act on linear light.
Source: Machado, Oliveira and Fernandes, IEEE TVCG 15(6), 2009, table for severity 1.0.
"""

from __future__ import annotations

import numpy as np

from generator.arrays import Array

SIGHT = {
    "full": np.eye(3),
    "protanopia": np.array(
        [
            [0.152286, 1.052583, -0.204868],
            [0.114503, 0.786281, 0.099216],
            [-0.003882, -0.048116, 1.051998],
        ]
    ),
    "deuteranopia": np.array(
        [
            [0.367322, 0.860646, -0.227968],
            [0.280085, 0.672501, 0.047413],
            [-0.011820, 0.042940, 0.968881],
        ]
    ),
}
TO_XYZ = np.array(
    [[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]]
) / np.array([[0.9505], [1.0], [1.089]])


def linear(colour: str) -> Array:
    """Linear light of a #rrggbb colour."""
    code = np.array([int(colour[place : place + 2], 16) for place in (1, 3, 5)]) / 255.0
    return np.where(code <= 0.04045, code / 12.92, ((code + 0.055) / 1.055) ** 2.4)


def lab(light: Array) -> Array:
    """CIE L*a*b* of linear light."""
    share = TO_XYZ @ np.clip(light, 0.0, 1.0)
    root = np.where(share > 0.008856, np.cbrt(share), 7.787 * share + 16.0 / 116.0)
    return np.array(
        [116.0 * root[1] - 16.0, 500.0 * (root[0] - root[1]), 200.0 * (root[1] - root[2])]
    )


def contrast(colour: str, other: str = "#ffffff") -> float:
    """Contrast ratio of two colours, 1 to 21."""
    bright, dark = sorted(
        (float(linear(each) @ np.array([0.2126, 0.7152, 0.0722])) for each in (colour, other)),
        reverse=True,
    )
    return (bright + 0.05) / (dark + 0.05)


def apart(colour: str, other: str, sight: str) -> float:
    """Distance in L*a*b* as a reader of that sight sees it."""
    seen = SIGHT[sight]
    return float(np.linalg.norm(lab(seen @ linear(colour)) - lab(seen @ linear(other))))


def lightness(colour: str) -> float:
    """L* of a colour: what is left of it in grey."""
    return float(lab(linear(colour))[0])
