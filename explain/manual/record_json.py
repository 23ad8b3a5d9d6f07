"""Worked problems as JSON and back, record by record. Makes passages, formulas and their parts, and nothing else."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from decimal import Decimal
from typing import Any

from ..document import passage
from ..equation import terms
from .task import Facts, Topic, Worked

_DATA = {name: each for part in (passage, terms) for name, each in vars(part).items() if is_dataclass(each)}
_KINDS: Mapping[str, Any] = {**_DATA, "Facts": Facts, "Topic": Topic, "Worked": Worked}
_COMPARED = {*_KINDS, "Part"}


def written(worked: Worked) -> bytes:
    """A worked problem as JSON: a record is an object that says what it `is`, a tuple an array."""
    return json.dumps(_packed(worked), separators=(",", ":")).encode()


def packed(value: object) -> bytes:
    """Anything that is made of such records, to be compared."""
    return json.dumps(_packed(value), separators=(",", ":")).encode()


def read(data: bytes) -> Worked:
    """A worked problem from its JSON. Raises ValueError where it is none."""
    try:
        found = _unpacked(json.loads(data))
    except (KeyError, TypeError, ArithmeticError, RecursionError) as error:
        raise ValueError("no record") from error
    if not isinstance(found, Worked):
        raise ValueError("no worked problem")
    return found


def _packed(value: Any) -> Any:
    if isinstance(value, Decimal):
        return {"is": "Decimal", "of": str(value)}
    if isinstance(value, frozenset):
        return {"is": "frozenset", "of": sorted(value)}
    if type(value) is tuple:
        return [_packed(each) for each in value]
    kind = type(value)
    if kind.__name__ not in _COMPARED:
        return value
    names = [each.name for each in fields(kind)] if is_dataclass(kind) else kind._fields
    return {"is": kind.__name__, **{name: _packed(getattr(value, name)) for name in names}}


def _unpacked(value: Any) -> Any:
    match value:
        case list():
            return tuple(_unpacked(each) for each in value)
        case {"is": "Decimal", "of": str(number)}:
            return Decimal(number)
        case {"is": "frozenset", "of": list(items)}:
            return frozenset(items)
        case {"is": str(name), **parts}:
            return _KINDS[name](**{str(key): _unpacked(each) for key, each in parts.items()})
        case dict():
            raise KeyError("is")
    return value
