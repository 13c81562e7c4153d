"""How does a text pass as it is where a brace would open a place for a number?

Sentences that still stand in Python mark places for numbers by braces. What an owner typed, and
what a template has said already, may hold braces too: there they stand as a private sign until
the text is shown or written.
"""

from __future__ import annotations

BRACE, SIGN = "{", "\ue00f"


def guarded(text: str) -> str:
    """The text with its braces hidden."""
    return text.replace(BRACE, SIGN)


def as_typed(text: str) -> str:
    """The text with its braces back."""
    return text.replace(SIGN, BRACE)
