"""One table of a file with its place, and its keys read as what they must be. Knows no key by name and no mechanics."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TypeVar

from . import quantity
from ..input import SHUT, TABLE, Door, Kind
from ..equation.terms import Quantity
from ..errors import MISSPELT, Fault, nearest, shown
from .magnitudes import a_kind
from .other_words import Meant
from .toml_lines import Path, line_of, written

T = TypeVar("T")
NO_WORDS: Mapping[str, Meant] = MappingProxyType({})
LONGEST_TEXT = 20_000
_OTHERS: Mapping[str, tuple[str, ...]] = {"length": ("40 cm", "50 cm"), "angle": ("90 deg", "120 deg")}  # in a pair
MOST = 100  # tables of one kind, and entries of one list


@dataclass(frozen=True, slots=True)
class Origin:
    """Where values came from: the file's name ("" for none), its text where there is one, and the door to the files
    that they name.

    `named` says that another file named this one, which need not be what was expected: what is strange in it is not
    quoted.
    """

    file: str = ""
    text: str = field(default="", repr=False)
    door: Door = SHUT
    named: bool = False

    @property
    def told(self) -> str:
        return self.file or "the problem as given"

    def line(self, path: Path) -> int | None:
        return line_of(self.text, path) if self.text else None


def _two(one: str, kind: str) -> str:
    """A list of a quantity in quotation marks and another one of its kind."""
    another = next(each for each in (*_OTHERS.get(kind, ()), quantity.EXAMPLES[kind]) if f'"{each}"' != one)
    return f'[{one}, "{another}"]'


@dataclass(frozen=True, slots=True)
class Fields:
    """The keys of one table. Every reading method gives None where the key is absent, and raises Fault where it is
    wrong.
    """

    values: Mapping[str, object]
    origin: Origin
    path: Path = ()

    def fault(self, key: str, found: str, expected: str, example: str, advice: str = "") -> Fault:
        return self.placed(key, Fault(found=found, expected=expected, example=example, advice=advice))

    def placed(self, key: str, fault: Fault, example: str = "") -> Fault:
        path = (*self.path, key) if key else self.path
        return fault.placed(self.origin.told, self.origin.line(path), written(path), example)

    def wrong(self, key: str, expected: str, example: str) -> Fault:
        """The fault for a value that cannot stand for this key."""
        return self.fault(key, shown(self.values.get(key)), expected, example)

    def missing(self, key: str, expected: str, example: str) -> Fault:
        return self.fault(key, "nothing, the key is missing", expected, example)

    def only(self, known: Sequence[str], other_words: Mapping[str, Meant] = NO_WORDS) -> None:
        """Refuse the first key that is not among the known ones; `other_words` are what people call a key."""
        for key in self.values:
            if key not in known:
                meant = None if self.origin.named else other_words.get(str(key).casefold())
                if meant:
                    found = f"the key {shown(str(key))}, which is not known here"
                    example = meant.example_for(self.values[key])
                    raise self.fault(str(key), found, meant.expected, example, meant.advice)
                near = nearest(str(key), known, MISSPELT if self.origin.named else 0.6)
                if self.origin.named and not near:
                    raise self._strange(str(key), known)
                keys = f"the key {near}" if near else f"one of the keys {', '.join(known)}"
                raise self.fault(
                    str(key),
                    f"the key {shown(str(key))}, which is not known here",
                    keys,
                    f"{near} in place of {str(key)[:60]}" if near else known[0],
                )

    def _strange(self, key: str, known: Sequence[str]) -> Fault:
        """The fault for a key that is not even like a known one, in a file that need not be what was expected: its
        line, not the key.
        """
        return Fault(
            self.origin.told,
            self.origin.line((*self.path, key)),
            written(self.path),
            "a key that no file of this kind has",
            f"keys among {', '.join(known)}",
            known[0],
        )

    def file(self, key: str, name: str, kind: Kind, example: str, advice: str = "") -> bytes:
        """What the file holds that a key names. Raises Fault."""
        try:
            return self.origin.door.read(name, kind)
        except Fault as fault:
            raise self.fault(key, fault.found, fault.expected, example, advice) from None

    def table_text(self, key: str, name: str, example: str, advice: str) -> str:
        """The text of the CSV file that a key names. Raises Fault."""
        try:
            return self.file(key, name, TABLE, example, advice).decode("utf-8-sig")
        except UnicodeDecodeError:
            found = f"{shown(name)}, which is not plain text in UTF-8"
            raise self.fault(key, found, "a CSV file beside the problem", example, advice) from None

    def has(self, key: str) -> bool:
        return self.values.get(key) is not None

    def text(self, key: str, example: str, most: int = LONGEST_TEXT) -> str | None:
        value = self.values.get(key)
        if value is None:
            return None
        if not isinstance(value, str) or len(value) > most:
            raise self.wrong(key, f"a text in quotation marks, of at most {most} characters", f'{key} = "{example}"')
        return value.strip()

    def flag(self, key: str) -> bool | None:
        value = self.values.get(key)
        if value is None or isinstance(value, bool):
            return value
        raise self.wrong(key, "true or false, without quotation marks", f"{key} = false")

    def whole(self, key: str, least: int, most: int) -> int | None:
        value = self.values.get(key)
        if value is None:
            return None
        if isinstance(value, bool) or not isinstance(value, int) or not least <= value <= most:
            raise self.wrong(
                key, f"a whole number from {least} to {most}, without quotation marks", f"{key} = {max(least, 2)}"
            )
        return value

    def texts(self, key: str, example: str) -> tuple[str, ...] | None:
        value = self.values.get(key)
        if value is None:
            return None
        if isinstance(value, list | tuple) and len(value) <= MOST:
            listed = tuple(" ".join(each.split()) for each in value if isinstance(each, str) and each.strip())
            if len(listed) == len(value):
                return listed
        raise self.wrong(key, f"a list of at most {MOST} texts in quotation marks", f'{key} = ["{example}"]')

    def choice(self, key: str, meanings: Mapping[str, T]) -> T | None:
        """What one of a closed set of words means."""
        word = self.text(key, next(iter(meanings)))
        if word is None:
            return None
        if word in meanings:
            return meanings[word]
        near = nearest(word, meanings) or next(iter(meanings))
        raise self.wrong(key, "one of " + ", ".join(f'"{each}"' for each in meanings), f'{key} = "{near}"')

    def quantity(self, key: str, kind: str, least: str = "above zero") -> Quantity | None:
        """A quantity with its unit; `least` is "above zero", "zero" or "any"."""
        value = self.values.get(key)
        return None if value is None else self._quantity(key, value, kind, least, lambda example: f"{key} = {example}")

    def pair(self, key: str, kind: str, least: str) -> tuple[Quantity, Quantity] | None:
        value = self.values.get(key)
        if value is None:
            return None
        if not isinstance(value, list | tuple) or len(value) != 2:
            example = _two(f'"{quantity.EXAMPLES[kind]}"', kind)
            raise self.wrong(key, f"a list of two of the kind {kind}", f"{key} = {example}")
        first, second = (
            self._quantity(key, each, kind, least, lambda one: f"{key} = {_two(one, kind)}") for each in value
        )
        return first, second

    def table(self, key: str) -> Fields | None:
        value = self.values.get(key)
        if value is None:
            return None
        if isinstance(value, Mapping):
            return Fields(value, self.origin, (*self.path, key))
        raise self.wrong(key, f"one table, headed [{key}]", f"[{key}]")

    def tables(self, key: str) -> tuple[Fields, ...]:
        """The tables headed [[key]]; none where the key is absent."""
        value = self.values.get(key, ())
        if isinstance(value, list | tuple) and len(value) <= MOST and all(isinstance(each, Mapping) for each in value):
            return tuple(Fields(each, self.origin, (*self.path, key, place)) for place, each in enumerate(value))
        raise self.wrong(key, f"at most {MOST} tables, each headed [[{key}]] with two brackets", f"[[{key}]]")

    def read(self, key: str, reader: Callable[[str], T], expected: str, example: str) -> T | None:
        """What a reader of texts makes of the value; its fault is given the place."""
        value = self.values.get(key)
        if value is None:
            return None
        if not isinstance(value, str):
            raise self.wrong(key, expected, example)
        try:
            return reader(value)
        except Fault as fault:
            raise self.placed(key, fault, f"{key} = {fault.example}" if fault.example else example) from None

    def _quantity(self, key: str, value: object, kind: str, least: str, example: Callable[[str], str]) -> Quantity:
        try:
            found = quantity.read(_as_text(value, kind), kind, lambda: quantity.usual_unit(self.origin.text, kind))
            _enough(found, kind, least)
        except Fault as fault:
            raise self.placed(key, fault, example(fault.example)) from None
        return found


def _as_text(value: object, kind: str) -> str:
    """The text of a value; a bare number becomes a text without a unit, so that the message can complete it."""
    if isinstance(value, str):
        return value
    if (
        isinstance(value, float)
        and not math.isfinite(value)
        or isinstance(value, bool)
        or not isinstance(value, int | float)
    ):
        example = f'"{quantity.EXAMPLES[kind]}"'
        raise Fault(found=shown(value), expected="a number and a unit, in quotation marks", example=example)
    return shown(value)


def _enough(found: Quantity, kind: str, least: str) -> None:
    if least == "any" or found.number > 0 or (least == "zero" and found.number == 0):
        return
    what = "zero" if found.number == 0 else "a negative number"
    told = "Which side or which way is given by direction, turns, or the sign of at, com, point and toward."
    raise Fault(
        found=f'"{found.number} {quantity.written_unit(found.unit)}'.rstrip() + f'", {what}',
        expected=f"{a_kind(kind)} {'above zero' if least == 'above zero' else 'of zero or more'}",
        example=f'"{quantity.EXAMPLES[kind]}"',
        advice=told if found.number < 0 else "",
    )
