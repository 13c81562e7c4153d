"""Which files of a report folder did we write, and which are the owner's?

Each folder carries the names and the SHA-256 of its files. What is not on that list, or is no
longer as it was written, is the owner's, and nothing here ever lets it be replaced.
"""

from __future__ import annotations

import json
import os
import re
import stat
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

LIST = ".written"
FOLDERS = frozenset({"tables", "figures"})
LARGEST = 100_000_000  # bytes; no file of a report is a tenth of that
NOT_OURS = (ValueError, LookupError, TypeError, AttributeError, RecursionError)  # of odd JSON

# What versions that wrote no list made a folder of, and how their pages name their maker.
UNLISTED = r"{0}\.(html|pdf)|tables/[^/]+\.csv|figures/[^/]+\.svg"
MAKER = '<meta name="generator" content="study '


@dataclass(frozen=True)
class Manifest:
    """The files of one folder by name, with their hashes, and whether the set is whole."""

    whole: bool
    files: dict[str, str]


def write_manifest(folder: Path, whole: bool) -> None:
    """List all files of a folder that is ready."""
    files = {name: _hash(folder / name) for name in sorted(_entries(folder)) if name[-1] != "/"}
    text = json.dumps({"whole": whole, "files": files}, indent=1, ensure_ascii=False)
    (folder / LIST).write_text(text + "\n", encoding="utf-8", newline="\n")


def owners_files(folder: Path) -> list[str]:
    """What lies in a folder and is not ours, by name; nothing where there is no folder."""
    if not folder.exists():
        return []
    found, manifest = _entries(folder), read_manifest(folder)
    if manifest is None:
        known = _unlisted(folder)
        return sorted(name for name in found if not (known and known.fullmatch(name)))
    return sorted(
        name for name in found if name != LIST and not _as_written(folder, name, manifest)
    )


def read_manifest(folder: Path) -> Manifest | None:
    """The list of a folder; none where there is none that we can have written."""
    try:
        found = json.loads(_content(folder / LIST))
        return Manifest(bool(found["whole"]), {str(k): str(v) for k, v in found["files"].items()})
    except (OSError, *NOT_OURS):
        return None


def _entries(folder: Path, before: str = "") -> set[str]:
    """Names of all that lies in a folder: of ours the files, of others the folder itself."""
    names: set[str] = set()
    with os.scandir(folder) as items:
        for item in items:
            if not item.is_dir(follow_symlinks=False):
                names.add(before + item.name)
            elif before or item.name not in FOLDERS:
                names.add(f"{before}{item.name}/")
            else:
                names |= _entries(Path(item.path), f"{item.name}/")
    return names


def _as_written(folder: Path, name: str, manifest: Manifest) -> bool:
    """Whether a file is on the list and unchanged."""
    try:
        return name in manifest.files and _hash(folder / name) == manifest.files[name]
    except OSError:
        return False


def _hash(path: Path) -> str:
    return sha256(_content(path)).hexdigest()


def _content(path: Path) -> bytes:
    """The bytes of a regular file of a report's size; anything else counts as unreadable."""
    state = path.lstat()
    if not stat.S_ISREG(state.st_mode) or state.st_size > LARGEST:
        raise OSError(f"{path} is no file of a report")
    return path.read_bytes()


def _unlisted(folder: Path) -> re.Pattern[str] | None:
    """Names of files in a report or pack of an older version; none where it is not one."""
    try:
        results = json.loads(_content(folder / "results.json"))
        ours = isinstance(results["schema"], int) and isinstance(results["tool_version"], str)
        return re.compile(r"results\.json|" + UNLISTED.format("report")) if ours else None
    except FileNotFoundError:  # a pack holds no results
        packs = [pack for pack in ("yard", "insurer") if _names_us(folder / f"{pack}.html")]
        return re.compile(UNLISTED.format(packs[0])) if packs else None
    except (OSError, *NOT_OURS):
        return None


def _names_us(page: Path) -> bool:
    try:
        return MAKER in _content(page)[:20_000].decode("utf-8", "replace")
    except OSError:
        return False
