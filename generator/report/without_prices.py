"""What is left of the results for a reader who should not see prices?"""

from __future__ import annotations

import re
from typing import Any

from generator.report.numbers import Display, currency_sign

WITHOUT = "-no-prices"
LEFT_OUT = "left out of this copy"
MONEY_KEY = re.compile(r"(^|_)money(_|$)")
MONEY_FORM = re.compile(r"\{[a-z0-9_.]+\|(money|price)[a-z_:,]*\}")
PATHS = ("prices.", "boat.worth")
COST = re.compile(r"^options\[\d+\]\.costs|^options\.costs")


def without_prices(results: dict[str, Any]) -> dict[str, Any]:
    """The same study with every amount, price and sentence on money taken out, and said so."""
    tree: dict[str, Any] = _stripped(results, _amount(results["case"]))
    tree["case"] = {**tree["case"], "redacted": True}
    tree["money"] = {"reasons": results["money"]["reasons"]}
    for option in tree["options"]:
        option["cost"] = {"priced": False, "items": [], "cumulative": []}
        option["worth"] = None  # its words hold amounts
    currency = results["case"]["currency"]  # the only one that a case may use
    for name in ("inputs", "assumptions"):
        tree[name] = [row for row in tree[name] if not _priced(row, currency)]
    rows = tree["comparison"]["differences"]
    tree["comparison"]["differences"] = [row for row in rows if not row["money"]]
    tree["warnings"] = [text for text in tree["warnings"] if not _of_money(text, currency)]
    return tree


def _amount(case: dict[str, Any]) -> re.Pattern[str]:
    """An amount as the words of records print it: the sign of the currency and a digit."""
    sign = currency_sign(Display(case["units"], case["currency"]))
    return re.compile(rf"{re.escape(sign)}\d")


def _stripped(node: Any, amount: re.Pattern[str]) -> Any:
    """Money keys without their value; sentences with money in them without their words."""
    if isinstance(node, dict):
        return {
            key: None if MONEY_KEY.search(key) else _stripped(value, amount)
            for key, value in node.items()
        }
    if isinstance(node, list):
        return [_stripped(item, amount) for item in node if not _says_money(item, amount)]
    return LEFT_OUT if _says_money(node, amount) else node


def _says_money(node: Any, amount: re.Pattern[str]) -> bool:
    return isinstance(node, str) and bool(MONEY_FORM.search(node) or amount.search(node))


def _priced(row: dict[str, Any], currency: str) -> bool:
    path = str(row["path"])
    named = path.startswith(PATHS) or bool(COST.match(path))
    return named or str(row["unit"]).partition("/")[0] == currency


def _of_money(text: str, currency: str) -> bool:
    return bool(re.search(rf"\b{currency}\b", text)) or "prices" in text
