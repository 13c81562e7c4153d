"""Which typeface is the report set in, and how do page, print and charts get it?"""

from __future__ import annotations

import base64
from functools import lru_cache
from pathlib import Path

FAMILY = "Fairlead Sans"
FOLDER = Path(__file__).parent / "fonts"
FACES = (("regular", 400, "normal"), ("bold", 700, "normal"), ("italic", 400, "italic"))
RULE = (
    "@font-face {{ font-family: '{family}'; font-weight: {weight}; font-style: {style}; "
    "src: url({source}) }}\n"
)


def print_faces() -> str:
    """Style rules for the PDF: the faces come from memory under their own scheme."""
    return _rules({name: f"font:{name}" for name, _, _ in FACES})


def screen_faces() -> str:
    """Style rules for the HTML: the faces travel inside the file."""
    return _rules({name: _inside(name) for name, _, _ in FACES})


def face(name: str) -> bytes:
    """The outline file of one face, for the PDF."""
    return (FOLDER / f"{name}.ttf").read_bytes()


@lru_cache(maxsize=1)
def register_with_charts() -> None:
    """Tell matplotlib of the faces, once."""
    from matplotlib.font_manager import fontManager

    for name, _, _ in FACES:
        fontManager.addfont(FOLDER / f"{name}.ttf")


def _rules(sources: dict[str, str]) -> str:
    return "".join(
        RULE.format(family=FAMILY, weight=weight, style=style, source=sources[name])
        for name, weight, style in FACES
    )


@lru_cache(maxsize=len(FACES))
def _inside(name: str) -> str:
    packed = (FOLDER / f"{name}.woff2").read_bytes()
    return "data:font/woff2;base64," + base64.b64encode(packed).decode()
