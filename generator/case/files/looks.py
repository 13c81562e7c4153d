"""What kind of file is it by its first bytes, whatever its name says?"""

from __future__ import annotations

JPEG, PNG = "a JPEG picture", "a PNG picture"  # what a page can show as it is
_BEGINNINGS = {
    b"\xff\xd8\xff": JPEG,
    b"\x89PNG\r\n\x1a\n": PNG,
    b"GIF87a": "a GIF picture",
    b"GIF89a": "a GIF picture",
    b"II*\x00": "a TIFF picture",
    b"MM\x00*": "a TIFF picture",
    b"%PDF-": "a PDF",
    b"PK\x03\x04": "a workbook or an archive",
    b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1": "a workbook of an older office",
    b"\x1f\x8b": "an archive",
    b"7z\xbc\xaf\x27\x1c": "an archive",
}


def looks_like(content: bytes) -> str:
    """What its beginning says it is; nothing where it may be text."""
    if content[4:12] in (b"ftypheic", b"ftypheix", b"ftypmif1"):
        return "a HEIC picture"
    if content[:4] == b"RIFF" and content[8:12] == b"WEBP":
        return "a WebP picture"
    return next((kind for start, kind in _BEGINNINGS.items() if content.startswith(start)), "")
