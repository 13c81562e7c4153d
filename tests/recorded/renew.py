"""Which numbers of our own making are written down anew, on purpose?

    python -m tests.recorded.renew [CASE [PART]]

Without a case all of them, without a part all of the case. A number that moved belongs into the
change list of DEVELOPERS.md.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Collection

from tests.recorded.stored_numbers import NAMES, PARTS, computed, stored_file


def main(case: str | None = None, part: str | None = None) -> None:
    """Compute and write; tells which files have changed."""
    _known(case, NAMES)
    _known(part, PARTS)
    for name in (case,) if case else NAMES:
        for piece in (part,) if part else PARTS:
            _renew(name, piece)


def _renew(name: str, part: str) -> None:
    path = stored_file(name, part)
    text = json.dumps(computed(name, part), indent=1) + "\n"
    if path.exists() and path.read_text(encoding="utf-8") == text:
        return
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    sys.stdout.write(f"{path} renewed\n")


def _known(word: str | None, words: Collection[str]) -> None:
    if word is not None and word not in words:
        raise SystemExit(f"{word}: there is none, expected one of: {', '.join(words)}")


if __name__ == "__main__":
    main(*sys.argv[1:])
