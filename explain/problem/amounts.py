"""Values that may be more than a number with a unit: "?", per cent, "table", "limit", a share of another force."""

from __future__ import annotations

import re

from . import quantity
from ..equation.terms import Quantity
from ..errors import Fault, shown
from .toml_table import Fields
from .model import UNKNOWN, Amount, AtLimit, FromTable, Multiple, Percent, Unknown

_SHARE = re.compile(r"([^*×]{1,60}?)\s*[*×]\s*([^*×]{1,80})")


def known_or_sought(fields: Fields, key: str, kind: str, least: str = "above zero") -> Quantity | Unknown | None:
    """A quantity, or "?"."""
    return UNKNOWN if _word(fields, key) == "?" else fields.quantity(key, kind, least)


def amount(fields: Fields, key: str, kind: str, least: str = "above zero") -> Amount | None:
    """A quantity, "?" or a percentage."""
    word = _word(fields, key)
    if word.endswith(("%", " percent")):
        share = fields.quantity(key, "percent", least)
        return Percent(share) if share else None
    return known_or_sought(fields, key, kind, least)


def tabled(fields: Fields, key: str, kind: str, least: str = "above zero") -> Amount | FromTable | None:
    """A quantity, "?", a percentage, or "table"."""
    return FromTable() if _word(fields, key) == "table" else amount(fields, key, kind, least)


def pull(fields: Fields) -> Quantity | Percent | Multiple | AtLimit | Unknown | None:
    """The key `force` of a muscle or another force."""
    word = _word(fields, "force")
    if word == "limit":
        return AtLimit()
    if "*" in word or "×" in word:
        return fields.read("force", _multiple, "a force", 'force = "0.70 * biceps"')
    return amount(fields, "force", "force")


def _multiple(text: str) -> Multiple:
    found = _SHARE.fullmatch(text.strip())
    if found is None:
        raise Fault(found=shown(text), expected="a number, * and the name of another force", example='"0.70 * biceps"')
    factor = quantity.read(found[1], "number")
    if factor.number <= 0:
        raise Fault(found=shown(text), expected="a share above zero", example=f'"0.70 * {found[2].strip()}"')
    return Multiple(factor, " ".join(found[2].split()))


def _word(fields: Fields, key: str) -> str:
    value = fields.values.get(key)
    return value.strip() if isinstance(value, str) else ""
