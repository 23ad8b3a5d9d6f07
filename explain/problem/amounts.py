"""Values that may be more than a number with a unit: "?", per cent, "table", "limit", a share of another force."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Mapping
from decimal import Decimal
from typing import TypeVar

from . import quantity
from ..document.english import weight_of
from ..equation.terms import Quantity
from ..equation.unit_spellings import OFFERED
from ..errors import Fault, shown
from .placeholders import owners
from .toml_table import Fields
from .model import UNKNOWN, Amount, AtLimit, FromTable, Hung, Multiple, Percent, Unknown

T = TypeVar("T")
MOST_SHARE = 3  # a number alone up to this is rather a share of another force than a force
_WHOLE: Mapping[str, str] = {  # what a key's percentage is of
    "mass": "the person's mass",
    "weight": "the person's weight",
    "force": "the person's weight",
    "com": "the segment's length",
    "at": "the segment's length",
}
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
    bare = _bare(fields, key)
    if bare is not None and 0 < bare < 1 and key in _WHOLE:
        share_of, unit = _WHOLE[key], OFFERED[kind][0]
        raise fields.fault(
            key,
            f"{shown(fields.values[key])}, a number without a unit",
            f"a share with %, or a {kind} with its unit",
            f'{key} = "{bare.scaleb(2):f} %"',
            f'A share of {share_of} is written in per cent; a {kind} is written "{bare} {unit}".',
        )
    return known_or_sought(fields, key, kind, least)


def tabled(fields: Fields, key: str, kind: str, least: str = "above zero") -> Amount | FromTable | None:
    """A quantity, "?", a percentage, or "table"."""
    return FromTable() if _word(fields, key) == "table" else amount(fields, key, kind, least)


def spread_weight(fields: Fields, key: str, kind: str) -> Amount | None:
    """The weight of a spread load: the whole, or that of each length."""
    unit = _word(fields, key)
    return fields.quantity(key, "force per length") if "/" in unit or " per " in unit else amount(fields, key, kind)


def heaviness(
    fields: Fields,
    read_mass: Callable[[Fields, str, str], T],
    read_weight: Callable[[Fields, str, str], Amount | None] | None = None,
) -> tuple[T, Amount | None]:
    """The keys `mass` and `weight`, read as they may be written there."""
    key = "mass"
    try:
        mass = read_mass(fields, key, "mass")
        key = "weight"
        return mass, (read_weight or amount)(fields, key, "force")
    except Fault as fault:
        raise _weighed(fields, key, fault) from None


def _weighed(fields: Fields, key: str, fault: Fault) -> Fault:
    """The fault of a mass or weight, with what helps where the one stands for the other, or where it is nothing."""
    kind, other, other_kind = ("mass", "weight", "force") if key == "mass" else ("force", "mass", "mass")
    word = _word(fields, key)
    found = _read(word, kind)
    if found is not None and not found.number:
        name = " ".join(str(fields.values.get("name", "")).split())[:40] or "forearm"
        what = "mass and com" if "com" in fields.values else "this table"
        return fields.fault(
            key,
            fault.found,
            f"a {key} above zero, or none at all",
            f'neglect = ["{weight_of(name)}"]',
            f"What weighs next to nothing is left out: take {what} away, and say so at the top with neglect.",
        )
    if found is None and _read(word, other_kind) is not None:
        advice = (
            "Kilograms and grams tell a mass: give the mass, and its weight is worked out on the page."
            if key == "weight"
            else "Newtons tell a weight; a mass is what a scale shows, in kilograms."
        )
        return fields.fault(key, fault.found, f"the key {other}, or a {kind}", f'{other} = "{word}"', advice)
    return fault


def pull(fields: Fields) -> Quantity | Percent | Multiple | AtLimit | Unknown | None:
    """The key `force` of a muscle or another force."""
    word = _word(fields, "force")
    if word == "limit":
        return AtLimit()
    if "*" in word or "×" in word:
        return fields.read("force", _multiple, "a force", 'force = "0.70 * biceps"')
    bare = _bare(fields, "force")
    if bare is not None and 0 < bare <= MOST_SHARE:
        raise fields.fault(
            "force",
            f"{shown(fields.values['force'])}, a number without a unit",
            "a force with its unit, or a share of another force with its name",
            f'force = "{bare} * {_another(fields)}"',
            f'A share of another force is written with *; a force is written "{bare} N".',
        )
    return amount(fields, "force", "force")


def hung(fields: Fields) -> Hung | None:
    """The key `hung` of a force: the mass at the other end of its cable."""
    try:
        mass = known_or_sought(fields, "hung", "mass")
    except Fault as fault:
        raise _weighed_not(fields, fault) from None
    return None if mass is None else Hung(mass)


def _weighed_not(fields: Fields, fault: Fault) -> Fault:
    """The fault of a hung mass, with the key that takes newtons where newtons stand there."""
    word = _word(fields, "hung")
    if _read(word, "force") is None:
        return fault
    advice = "What hangs is told by its mass; a pull in newtons has the key force."
    return fields.fault("hung", fault.found, "a mass, or the key force", f'force = "{word}"', advice)


def _multiple(text: str) -> Multiple:
    found = _SHARE.fullmatch(text.strip())
    if found is None:
        raise Fault(found=shown(text), expected="a number, * and the name of another force", example='"0.70 * biceps"')
    try:
        factor = quantity.read(found[1], "number")
    except Fault as fault:
        raise fault.placed("", None, "", f'"0.70 * {found[2].strip()}"') from None
    if factor.number <= 0:
        raise Fault(found=shown(text), expected="a share above zero", example=f'"0.70 * {found[2].strip()}"')
    return Multiple(factor, " ".join(found[2].split()))


def _another(fields: Fields) -> str:
    """The name of another force of the same file, for an example."""
    try:
        tables = tomllib.loads(fields.origin.text)
    except tomllib.TOMLDecodeError:
        tables = {}
    own = fields.values.get("name")
    names = [name for name, kind, _ in owners(tables) if kind in ("muscle", "force", "load") and name and name != own]
    return names[0] if names else "biceps"


def _bare(fields: Fields, key: str) -> Decimal | None:
    """The number that stands without a unit, in quotation marks or not."""
    value = fields.values.get(key)
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        return None
    found = _read(shown(value) if not isinstance(value, str) else value, "number")
    return None if found is None else found.number


def _read(text: str, kind: str) -> Quantity | None:
    try:
        return quantity.read(text, kind)
    except Fault:
        return None


def _word(fields: Fields, key: str) -> str:
    value = fields.values.get(key)
    return value.strip() if isinstance(value, str) else ""
