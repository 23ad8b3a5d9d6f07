"""Numbers with a comma for a decimal point, as classes of many countries write them. Knows no formula and no page's
order.
"""

from __future__ import annotations

from dataclasses import fields, is_dataclass, replace
from decimal import Decimal
from typing import Any, TypeVar, cast

Anything = TypeVar("Anything")
POINT = r"(?<=[0-9])\.(?=[0-9])"  # between two digits


class CommaNumber(Decimal):
    """A number that is written with a comma; worth what any other is."""

    def __abs__(self) -> CommaNumber:
        return CommaNumber(super().__abs__())


def with_commas(of: Anything) -> Anything:
    """Terms, an equation, a drawing, rows: the same with every number in a formula written with a comma."""
    return cast(Anything, _with_commas(of))


def _with_commas(of: Any) -> Any:
    match of:
        case Decimal():
            return CommaNumber(of)
        case tuple() if not hasattr(of, "_fields"):
            return tuple(map(_with_commas, of))
    if not is_dataclass(of) or isinstance(of, type):
        return of
    return replace(of, **{each.name: _with_commas(getattr(of, each.name)) for each in fields(of) if each.init})
