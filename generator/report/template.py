"""Where do the templates lie, and with what may they be filled?

Sentences stand in templates alone. `said` renders the words of a record once as plain text, for
page, results.json, CSV and alternative texts alike; whoever sets that text on a page escapes it.
"""

from __future__ import annotations

import os
import re
import sys
from collections.abc import Callable
from contextlib import suppress
from functools import cache, lru_cache, partial
from importlib.util import cache_from_source
from pathlib import Path
from typing import TYPE_CHECKING, Any

from markupsafe import Markup

from generator.errors import EngineError
from generator.report.view import (
    Fact,
    Quantity,
    View,
    cautious,
    label_of,
    unit_in,
    whys,
    with_flag,
)
from generator.verbatim import guarded

if TYPE_CHECKING:
    from jinja2 import BytecodeCache, Environment
    from jinja2.bccache import Bucket

BREAKS = re.compile(r"[ \n]+")  # not str.split: a no-break space stands between number and unit
MARKED = re.compile("\ue000([^\ue000-\ue002]*)\ue001")
MARK = "\ue000{}\ue001{}\ue002"  # never shipped; private signs pass escaping


def templates_folder() -> Path:
    """The templates: beside the modules in a wheel, beside the package in a checkout."""
    package = Path(__file__).resolve().parent.parent
    for folder in (package / "templates", package.parent / "templates"):
        if (folder / "report.html").is_file():
            return folder
    raise EngineError("the report's templates are missing; install the package again")


@lru_cache(maxsize=3)
def environment(page: bool = True, marked: bool = False) -> Environment:
    """``page``: HTML, escaped, each number in an element that names its key; else plain text.

    ``marked`` puts private signs around the numbers of plain text, by which tests find them.
    """
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    made = Environment(
        loader=FileSystemLoader(templates_folder()), autoescape=page, undefined=StrictUndefined,
        trim_blocks=True, lstrip_blocks=True,
        finalize=_on_page if page else (_marked if marked else _in_words),
        bytecode_cache=compiled("page" if page else "marked" if marked else "words"),
    )  # fmt: skip
    made.filters["cautious"] = cautious
    for flag in ("bare", "size", "signed", "whole"):
        made.filters[flag] = partial(with_flag, flag=flag)
    made.filters["label"] = label_of
    made.filters["unit"] = unit_in
    made.filters["whys"] = whys
    made.filters["start"] = start
    return made


@cache
def compiled(use: str) -> BytecodeCache:
    """The compiled templates of one ``use``, for each use has code of its own.

    From one run to the next they lie where Python keeps compiled modules, if it may keep any. A
    template that was changed is compiled again, for its text stands beside what is kept.
    """
    from jinja2 import BytecodeCache, __version__

    ending = "".join(letter for letter in f"{use}{__version__}" if letter.isalnum())

    class Beside(BytecodeCache):
        def get_cache_key(self, name: str, filename: str | None = None) -> str:
            return filename or name

        def load_bytecode(self, bucket: Bucket) -> None:
            with suppress(OSError), _beside(bucket, ending).open("rb") as kept:
                bucket.load_bytecode(kept)

        def dump_bytecode(self, bucket: Bucket) -> None:
            if sys.dont_write_bytecode:
                return
            place = _beside(bucket, ending)
            whole = place.with_suffix(f".{os.getpid()}")
            with suppress(OSError):  # as Python does in a folder that it may not write to
                place.parent.mkdir(parents=True, exist_ok=True)
                with whole.open("wb") as new:
                    bucket.write_bytecode(new)
                whole.replace(place)

    return Beside()


def _beside(bucket: Bucket, ending: str) -> Path:
    return Path(cache_from_source(bucket.key, optimization=ending))


def _on_page(value: Any) -> Any:
    """What jinja sets for each printed value."""
    return value.element if isinstance(value, Quantity | Fact) else _declared(value)


def _in_words(value: Any) -> Any:
    return value.text if isinstance(value, Quantity) else _declared(value)


def _marked(value: Any) -> Any:
    if not isinstance(value, Quantity):
        return _declared(value)
    return MARK.format(value.full_key, value.text)


def _declared(value: Any) -> Any:
    """Anything but a number that no field declares."""
    if isinstance(value, float | bool):
        raise TypeError("a number without a declaration, or a condition, cannot be printed")
    return value


def start(name: str) -> str:
    """A name at the beginning of a sentence."""
    return f"{name[:1].upper()}{name[1:]}"


def said(view: View, part: str = "", file: str = "criteria", marked: bool = False) -> str:
    """The words of a record as plain text on one line, its braces guarded.

    They stand in ``words/<file>.html`` under the name that the record gives; ``part`` is a
    further sentence on the same record.
    """
    name = "_".join(each for each in (view._record.SAID_BY, part) if each)
    return _plain(_macro(f"words/{file}.html", name, False, marked)(view))


def numbers_said(view: View, part: str = "") -> list[str]:
    """Keys of the numbers that the words of a record name."""
    return MARKED.findall(said(view, part, getattr(view._record, "SAID_IN", "criteria"), True))


def reason(word: str) -> str:
    """Why a number is absent, in words."""
    return _plain(_macro("words/absent.html", word, False, False)())


def pieces(template: str, name: str) -> Callable[..., Markup]:
    """A part of a page: a macro of a template of pages."""
    made: Callable[..., Markup] = _macro(template, name, True, False)
    return made


def _macro(template: str, name: str, page: bool, marked: bool) -> Callable[..., Any]:
    module = _module(template, page, marked)
    made: Callable[..., Any] = getattr(module, name)
    return made


@lru_cache(maxsize=64)
def _module(template: str, page: bool, marked: bool) -> Any:
    return environment(page, marked).get_template(template).module


def _plain(text: str) -> str:
    return guarded(BREAKS.sub(" ", str(text)).strip())
