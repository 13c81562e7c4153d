"""What is left of the results for a reader who should not see prices?

By one rule: no number of a kind of money, and no words that name one. Which kinds these are,
``units/kinds.py`` says; which number is of which kind, its declaration, and the end of its key.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from generator.report.declared import records_in
from generator.report.numbers import Display, currency_sign
from generator.report.page import PLACEHOLDER
from generator.report.template import numbers_said
from generator.report.view import View
from generator.units.kinds import KINDS

WITHOUT = "-no-prices"
LEFT_OUT = "left out of this copy"
Tree = dict[str, Any]


def without_prices(results: Tree) -> Tree:
    """The same study with every amount, price and sentence on money taken out, and said so."""
    case = results["case"]
    display = Display(case["units"], case["currency"])
    sign, code = re.escape(currency_sign(display).strip()), re.escape(display.currency)
    copy = _Copy(
        currency=display.currency,
        amount=re.compile(rf"{sign}\s?\d|\b{code}\b"),
        sentences=frozenset(text.casefold() for text in _sentences_on_money(results, display)),
    )
    tree: Tree = copy.of(results)
    tree["case"]["redacted"] = True
    return tree


def of_money(key: str) -> bool:
    """Does a key of the results end as those of an amount or a price do?"""
    name = key.rpartition(".")[2]
    return any(name == end or name.endswith(f"_{end}") for end in ENDS)


ENDS = tuple({kind.suffix for kind in KINDS.values() if kind.of_money})


def _sentences_on_money(results: Tree, display: Display) -> Iterator[str]:
    """Words of records in which a number of money stands."""
    for key, node, kind in records_in(results):
        if hasattr(kind, "SAID_BY"):
            view = View(node, kind, key, display)
            for part in ("", *getattr(kind, "SAYS_ALSO", ())):
                if any(of_money(number) for number in numbers_said(view, part)):
                    yield node[f"words_{part}".strip("_")]


@dataclass(frozen=True)
class _Copy:
    """Takes out of a part of the results what names money."""

    currency: str
    amount: re.Pattern[str]  # as somebody typed it, or as a sentence prints it
    sentences: frozenset[str]  # words of records that name an amount, in small letters

    def of(self, node: Any) -> Any:
        """The part without it."""
        if isinstance(node, dict):
            return {key: self._entry(node, key) for key in node}
        if isinstance(node, list):
            return [self.of(item) for item in node if not self._on_money(item)]
        return LEFT_OUT if self._on_money(node) else node

    def _entry(self, node: Tree, key: str) -> Any:
        """A number of money is nothing, with its reason; a further sentence says nothing."""
        if of_money(key):
            return None
        if key.endswith("_why") and _excuses_money(node, key.removesuffix("_why")):
            return LEFT_OUT
        if key.startswith("words_") and self._on_money(node[key]):
            return ""
        return self.of(node[key])

    def _on_money(self, item: Any) -> bool:
        """A text that names an amount, or an entry of a list whose own number is one."""
        if isinstance(item, dict):
            unit, form = str(item.get("unit") or ""), str(item.get("form") or "")
            return unit.partition("/")[0] == self.currency or _priced(form)
        if not isinstance(item, str) or item == self.currency:
            return False
        small = item.casefold()
        return (
            any(of_money(key) or _priced(form) for key, form in PLACEHOLDER.findall(item))
            or bool(self.amount.search(item))
            or any(sentence in small for sentence in self.sentences)
        )


def _priced(form: str) -> bool:
    """Is a number shown in this form an amount or a price?"""
    kind = KINDS.get(form.partition(":")[0])
    return kind is not None and kind.of_money


def _excuses_money(node: Tree, stem: str) -> bool:
    """Does a reason of this name speak of a number of money?"""
    return of_money(stem) or any(f"{stem}_{end}" in node for end in ENDS)
