"""Which of the known words did somebody mean?"""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches


def nearest_word(word: str, known: Iterable[str]) -> str:
    """The known word that is spelled most alike, or nothing."""
    lowered = {name.lower(): name for name in known}
    close = get_close_matches(word.lower()[:64], list(lowered), n=1, cutoff=0.6)
    return lowered[close[0]] if close else ""


def nearest(word: str, known: Iterable[str]) -> str:
    """The question that a message ends with, or nothing."""
    close = nearest_word(word, known)
    return f"did you mean `{close}`?" if close else ""
