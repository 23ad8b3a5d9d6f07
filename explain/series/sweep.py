"""A sweep as it is written: one given number taken through a range; of an angle, with moment arms that may change on
the way. Works no problem.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise

from ..problem import quantity
from ..problem.placeholders import NUMBER
from ..equation.terms import Quantity
from ..errors import Fault, shown
from ..problem.toml_table import Fields
from ..table import Table, table_lines

KEYS = ("of", "direction", "from", "to", "step", "show", "arms")
MOST_VALUES = 181
USUAL = 10  # steps of a range where nothing is said; an angle goes in steps of 5 deg
DEGREES = "deg"
MOST_PAIRS = 500
_OR_PAIRS = "The pairs may stand here as well."
_PAIRS = '[["0 deg", "2.0 cm"], ["90 deg", "4.5 cm"]]'
_ARMS = Table("table of arms", 1_000_000, "two columns with their units in a header", "angle (deg),arm (cm)")


@dataclass(frozen=True, slots=True)
class Arms:
    """The moment arms of one muscle: angles in degrees that grow, with the arm at each; in between they are taken as
    straight lines.
    """

    muscle: str
    pairs: tuple[tuple[Decimal, Quantity], ...]

    def at(self, angle: Decimal) -> Quantity | None:
        """The arm at an angle, to four figures where it lies between two pairs; None outside the table."""
        for (first, arm), (last, other) in pairwise(self.pairs):
            if first <= angle <= last:
                end = quantity.convert(other, arm.unit)
                share = (angle - first) / (last - first)
                value = arm.number + (end.number - arm.number) * share
                exact = end.number if share == 1 else arm.number if share == 0 else Decimal(f"{value:.4g}")
                return Quantity(Decimal(f"{exact:f}"), arm.unit)
        return None


@dataclass(frozen=True, slots=True)
class Sweep:
    """`owner` and `key` name the number, `values` are what it takes, in `unit`; of an angle `direction` is the
    direction with "?" for it ("" for the one it has).

    `show` is the value that is worked in full, None for one in the middle.
    """

    owner: str
    key: str
    direction: str
    values: tuple[Decimal, ...]
    unit: str
    show: Decimal | None
    arms: tuple[Arms, ...]

    @property
    def is_angle(self) -> bool:
        return self.key == "direction"

    @property
    def word(self) -> str:
        """What it goes through, one of them."""
        return "angle" if self.is_angle else "value"

    def told(self, value: Decimal) -> str:
        """A value with its unit, as it is printed."""
        return f"{value:f}°" if self.is_angle else f"{value:f}\u00a0{printed(self.unit)}".strip()


def printed(unit: str) -> str:
    """A unit with the signs of print."""
    return unit.replace("^2", "²").replace("N m", "N·m").replace("N cm", "N·cm")


def read_sweep(fields: Fields) -> Sweep:
    """The sweep of a step. Raises Fault."""
    fields.only(KEYS)
    of = fields.text("of", "jug.mass")
    owner, _, key = (of or "").rpartition(".")
    if not of or not key.strip() or not owner.strip():
        raise fields.wrong(
            "of", "a name of the problem, a dot and the key of one of its numbers", 'of = "forearm.direction"'
        )
    name, word = " ".join(owner.split()), key.strip()
    return _of_angle(fields, name) if word == "direction" else _of_number(fields, name, word)


def _of_angle(fields: Fields, owner: str) -> Sweep:
    direction = fields.text("direction", "? below right") or ""
    if direction and direction.count("?") != 1:
        raise fields.wrong(
            "direction", 'a direction with one "?" where the angle stands', 'direction = "? below right"'
        )
    first, last, by = _angle(fields, "from") or Decimal(0), _angle(fields, "to"), fields.quantity("step", "angle")
    if last is None:
        raise fields.missing("to", "the last angle of the sweep", 'to = "90 deg"')
    values = _range(fields, first, last, Decimal(5) if by is None else by.number, DEGREES)
    return Sweep(owner, "direction", direction, values, DEGREES, _shown(fields, values, DEGREES), _arms(fields))


def _angle(fields: Fields, key: str) -> Decimal | None:
    found = fields.quantity(key, "angle", "zero")
    if found is not None and found.number > 180:
        raise fields.wrong(key, "an angle from 0 to 180 deg", f'{key} = "90 deg"')
    return None if found is None else found.number


def _of_number(fields: Fields, owner: str, key: str) -> Sweep:
    for word in ("direction", "arms"):
        if fields.has(word):
            raise fields.fault(
                word,
                f"{word} in a sweep of {owner}.{key}",
                "it only in the sweep of an angle",
                'of = "forearm.direction"',
            )
    (first, unit), (last, _) = _number(fields, "from"), _number(fields, "to")
    by = _number(fields, "step")[0] if fields.has("step") else (last - first) / USUAL
    values = _range(fields, first, last, by, unit)
    return Sweep(owner, key, "", values, unit, _shown(fields, values, unit), ())


def _number(fields: Fields, key: str) -> tuple[Decimal, str]:
    """The number and the unit of an end, a step or the value shown; the unit must be that of `from`."""
    if not fields.has(key):
        raise fields.missing(key, "the first and the last value of the sweep", 'from = "10 cm"\nto = "40 cm"')
    found = NUMBER.fullmatch(fields.text(key, "10 cm", 80) or "")
    if found is None:
        raise fields.wrong(key, "a number and its unit", f'{key} = "10 cm"')
    own = NUMBER.fullmatch(str(fields.values.get("from", "")))
    unit, first = found[2].strip(), own[2].strip() if own else found[2].strip()
    if unit != first:
        raise fields.wrong(key, f"the unit that from has, {first or 'none'}", f'{key} = "{found[1]} {first}"')
    return Decimal(found[1]), unit


def _range(fields: Fields, first: Decimal, last: Decimal, by: Decimal, unit: str) -> tuple[Decimal, ...]:
    """From the first value to the last; the last is among them wherever the steps come out even, and put behind them
    where not.
    """
    if last <= first:
        raise fields.wrong(
            "to", f"a value above the first one, {first:f} {unit}".rstrip(), f'to = "{first + 90:f} {unit}"'
        )
    if by <= 0:
        raise fields.wrong("step", "a step above zero", f'step = "{(last - first) / USUAL:f} {unit}"')
    count, word = int((last - first) / by) + 1, "angle" if unit == DEGREES else "value"
    if count > MOST_VALUES:
        usual = f"{(last - first) / USUAL:f} {unit}".rstrip()
        raise fields.fault(
            "step", f"{count} {word}s", f"at most {MOST_VALUES} {word}s: a larger step", f'step = "{usual}"'
        )
    values = tuple(first + by * place for place in range(count))
    return values if values[-1] == last else (*values, last)


def _shown(fields: Fields, values: Sequence[Decimal], unit: str) -> Decimal | None:
    if not fields.has("show"):
        return None
    show = _angle(fields, "show") if unit == DEGREES else _number(fields, "show")[0]
    if show is not None and not values[0] <= show <= values[-1]:
        raise fields.wrong(
            "show",
            f"a value of the sweep, from {values[0]:f} to {values[-1]:f} {unit}".rstrip(),
            f'show = "{values[0]:f} {unit}"',
        )
    return show


def _arms(fields: Fields) -> tuple[Arms, ...]:
    table = fields.table("arms")
    return tuple(_of_one(table, str(name)) for name in table.values) if table else ()


def _of_one(table: Fields, name: str) -> Arms:
    """One muscle's arms: a list of pairs, or the path of a CSV file with angle and arm in its columns."""
    value = table.values[name]
    rows = _file(table, name, value) if isinstance(value, str) else value
    if not isinstance(rows, list | tuple) or not 2 <= len(rows) <= MOST_PAIRS:
        raise table.wrong(
            name,
            f"from 2 to {MOST_PAIRS} pairs of an angle and a moment arm, or the path of a CSV file",
            f"{name} = {_PAIRS}",
        )
    pairs = tuple(_pair(table, name, row) for row in rows)
    for (first, _), (last, _) in pairwise(pairs):
        if last <= first:
            raise table.fault(
                name, f"{last:f} deg behind {first:f} deg", "angles that grow from pair to pair", f"{name} = {_PAIRS}"
            )
    return Arms(" ".join(name.split()), pairs)


def _pair(table: Fields, name: str, row: object) -> tuple[Decimal, Quantity]:
    if not isinstance(row, list | tuple) or len(row) != 2 or not all(isinstance(each, str) for each in row):
        raise table.fault(
            name, shown(row), "a pair of an angle and a length, each in quotation marks", f"{name} = {_PAIRS}"
        )
    try:
        angle, arm = quantity.read(str(row[0]), "angle"), quantity.read(str(row[1]), "length")
    except Fault as fault:
        raise table.placed(name, fault, f"{name} = {_PAIRS}") from None
    if arm.number <= 0:
        raise table.fault(name, f"an arm of {shown(row[1])}", "moment arms above zero", f"{name} = {_PAIRS}")
    return angle.number, arm


def _file(table: Fields, name: str, said: str) -> Sequence[Sequence[str]]:
    """The rows of a CSV file whose header tells the units: "angle (deg),arm (cm)"."""
    text = table.table_text(name, said, f"{name} = {_PAIRS}", _OR_PAIRS)
    try:
        lines = table_lines(text, said, _ARMS)
    except Fault as fault:
        raise table.placed(name, fault, f"{name} = {_PAIRS}") from None
    rows = [(line, [cell.strip() for cell in row]) for line, row in lines]
    units = [_unit(cell) for cell in rows[0][1]] if rows else []
    if len(units) < 2 or not _is_pair([f"1 {unit}" for unit in units]):
        raise table.fault(
            name,
            f"{shown(said)} without a header that names an angle and a length with their units",
            "a header with two columns and their units",
            "angle (deg),arm (cm)",
        )
    pairs = [
        (line, [f"{cell} {unit}" for cell, unit in zip(row[:2], units[:2], strict=False)]) for line, row in rows[1:]
    ]
    wrong = next((line for line, pair in pairs if not _is_pair(pair)), None)
    if wrong:
        raise table.fault(
            name,
            f"{shown(said)} with no two numbers in its line {wrong}",
            "an angle and a moment arm in every row",
            "30,2.4",
        )
    return [pair for _, pair in pairs]


def _is_pair(row: Sequence[str]) -> bool:
    """Whether a row is an angle and a length."""
    try:
        return len(row) > 1 and all(quantity.read(*each) for each in zip(row[:2], ("angle", "length"), strict=True))
    except Fault:
        return False


def _unit(cell: str) -> str:
    """ "cm" of "arm (cm)"."""
    _, bracket, rest = cell.rpartition("(")
    return rest.partition(")")[0].strip() if bracket else ""
