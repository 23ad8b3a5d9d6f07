"""What [vary] says: for a key of a problem file, the values it may take. Knows tables and how values are written,
works nothing out.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import Any, NamedTuple

from ..errors import nearest, shown
from ..problem.toml_table import Fields
from ..problem.placeholders import NUMBER, owners, slots, told

KEYS = ("from", "to", "step")
MOST_VALUES = 10_000
FIGURES = 3  # of round data; as many as the author's own value has, where that has more
EXAMPLE = '"jug.mass" = { from = "2.0 kg", to = "4.0 kg", step = "0.1 kg" }'
NEVER = ("name", "on", "from", "table", "sex", "reaction", "turns", "bone", "range")
Tables = Mapping[str, Any]


class Range(NamedTuple):
    """The values of one key of one owner, as a file has them, in order."""

    owner: str
    key: str
    values: tuple[Any, ...]

    @property
    def name(self) -> str:
        return f"{self.owner}.{self.key}"

    def __str__(self) -> str:
        first, last = (printed(each) for each in (self.values[0], self.values[-1]))
        return (
            f"{self.name} ({first})"
            if len(self.values) == 1
            else f"{self.name} ({first} to {last}, {len(self.values)} values)"
        )


def printed(value: object) -> str:
    """A value as it is said in a sentence, and with its sign: "−3 cm", "(−6 cm, 0 cm)"."""
    if isinstance(value, list | tuple):
        return f"({', '.join(map(printed, value))})"
    return f"−{told(value)}" if isinstance(value, str) and value.lstrip().startswith("-") else told(value)


def read_ranges(top: Fields) -> tuple[Range, ...]:
    """The ranges of a problem file. Raises Fault for a key that is not there and for a range without values."""
    table = top.table("vary")
    if table is None or not table.values:
        raise top.missing("vary", "the values that some of its keys may take", f"[vary]\n{EXAMPLE}")
    known = {name: values for name, _, values in owners(top.values)}
    found = tuple(_range(known, *each) for each in _entries(table))
    _use_slots(top, found)
    return found


def _entries(table: Fields) -> Iterator[tuple[str, str, str, object, Fields]]:
    """(owner, key, the key as written, value, its table) of every entry, written with quotation marks or without."""
    for word, value in table.values.items():
        owner, dot, key = word.rpartition(".")
        if not dot and isinstance(value, Mapping) and not set(value) & set(KEYS):
            inner = Fields(value, table.origin, (*table.path, word))
            yield from ((" ".join(word.split()), each, each, found, inner) for each, found in value.items())
        else:
            yield " ".join(owner.split()), key.strip(), word, value, table


def _range(known: Mapping[str, Tables], owner: str, key: str, word: str, value: object, at: Fields) -> Range:
    if owner not in known:
        near = nearest(owner or key, known) or next(iter(known), "jug")
        raise at.fault(
            word,
            f"{shown(owner or key)}, which is not in this problem",
            "a name of the problem, a dot and one of its keys: " + ", ".join(f'"{each}"' for each in list(known)[:12]),
            _entry(near, key if owner else "mass"),
        )
    there = [each for each in known[owner] if each not in NEVER]
    if key not in there:
        near = nearest(key, there) or (there[0] if there else "mass")
        raise at.fault(
            word,
            f'"{owner}.{key}", a key that {shown(owner)} does not have',
            f"a key that it has: {', '.join(there) or 'none can be varied'}",
            _entry(owner, near),
        )
    base = known[owner][key]
    if isinstance(base, str) and "?" in base:
        raise at.fault(word, f'"{owner}.{key}", which is sought', "something that is given", _entry(owner, key))
    if isinstance(value, Mapping):
        return Range(owner, key, _stepped(Fields(value, at.origin, (*at.path, word)), base))
    if not isinstance(value, list | tuple) or not value or len(value) > MOST_VALUES:
        raise at.wrong(word, f"a list of one to {MOST_VALUES:,} values, or from, to and step", _entry(owner, key))
    for each in value:
        _is_round(at, word, each, base)
    return Range(owner, key, tuple(dict.fromkeys(tuple(each) if isinstance(each, list) else each for each in value)))


def _entry(owner: str, key: str) -> str:
    return f'"{owner}.{key}" = {{ from = ..., to = ..., step = ... }}'


def _stepped(fields: Fields, base: object) -> tuple[str, ...]:
    """From one value to another in steps: each in the unit that `from` has, with what the author's own value says
    behind it.
    """
    fields.only(KEYS)
    (first, unit), (last, _), (step, _) = (_number(fields, each) for each in KEYS)
    if last < first:
        raise fields.wrong("to", f"a value not below from, {first:f} {unit}".rstrip(), f'to = "{first:f} {unit}"')
    if step <= 0:
        raise fields.wrong("step", "a step above zero", f'step = "1 {unit}"')
    count = int((last - first) / step) + 1
    if count > MOST_VALUES:
        raise fields.fault(
            "step",
            f"{count:,} values",
            f"at most {MOST_VALUES:,}: a larger step",
            f'step = "{(last - first) / 100:f} {unit}"',
        )
    places = max(0, -min(int(each.as_tuple().exponent) for each in (first, step)))
    behind = _behind(fields, base, unit)
    values = tuple(f"{first + step * place:.{places}f}{behind}" for place in range(count))
    for each in values:
        _is_round(fields, "step", each, base)
    return values


def _number(fields: Fields, key: str) -> tuple[Decimal, str]:
    """The number and the unit of an end or a step; the unit must be that of `from`."""
    found = NUMBER.fullmatch(fields.text(key, "2.0 kg", 80) or "")
    if found is None:
        if fields.has(key):
            raise fields.wrong(key, "a number and its unit", f'{key} = "2.0 kg"')
        raise fields.missing(key, "from, to and step", EXAMPLE)
    unit = found[2].strip()
    own = NUMBER.fullmatch(str(fields.values.get("from", "")))
    if own and own[2].strip() != unit:
        raise fields.wrong(
            key, f"the unit that from has, {own[2].strip() or 'none'}", f'{key} = "{found[1]} {own[2].strip()}"'
        )
    return Decimal(found[1]), unit


def _behind(fields: Fields, base: object, unit: str) -> str:
    """What stands behind the number: the unit, and of a direction or a share the author's own words."""
    found = NUMBER.fullmatch(base) if isinstance(base, str) else None
    if found is None:
        raise fields.fault(
            "",
            f"a range, where the problem has {shown(base)}",
            "a number in the problem, or here a list of whole values",
            'a list such as ["up", "70 deg from back toward up"]',
        )
    rest = found[2].strip()
    if re.match(r"(?:deg(?:rees?)?\b|°)", unit):
        rest = re.sub(r"^(?:deg(?:rees?)?\b|°)", "", rest)
        return f" deg{rest}"
    if rest.startswith(("*", "×")) and not unit:
        return f" {rest}"
    return f" {unit}" if unit else ""


def _is_round(fields: Fields, key: str, value: object, base: object) -> None:
    """Refuse data with more figures than anyone would measure: three, or as many as the author's own value has."""
    texts = value if isinstance(value, list | tuple) else (value,)
    own = base if isinstance(base, list | tuple) else (base,)
    most = max([FIGURES, *(_figures(each) for each in own)])
    for each in texts:
        if _figures(each) > most:
            raise fields.fault(
                key,
                f"{shown(each)}, a value of {_figures(each)} figures",
                f"round data, of at most {most} figures: a larger step, or values with fewer decimals",
                EXAMPLE,
            )


def _figures(text: object) -> int:
    found = NUMBER.fullmatch(text) if isinstance(text, str) else None
    return len(found[1].lstrip("+-0.").replace(".", "")) if found else 0


def _use_slots(top: Fields, ranges: tuple[Range, ...]) -> None:
    """Refuse a statement whose numbers would stay what they are while the problem's own change."""
    statement = top.text("statement", "") or ""
    used = slots(statement) + slots(top.text("title", "") or "")
    known = {name: table for name, _, table in owners(top.values)}
    for owner, key in used:
        if key not in known.get(owner, {}):
            names = [f"{name}.{each}" for name, table in known.items() for each in table if each != "name"]
            near = nearest(f"{owner}.{key}", names) or names[0]
            raise top.fault(
                "statement",
                f"the slot {{{owner}.{key}}}, which nothing in the problem fills",
                f"a slot such as {{{near}}}",
                f"{{{near}}}",
            )
    absent = [each.name for each in ranges if (each.owner, each.key) not in used]
    if statement and absent:
        missing = ", ".join(f"{{{each}}}" for each in absent)
        raise top.fault(
            "statement",
            f"a statement without a place for {missing}, so that it would be the same for every student",
            "a slot in the statement for each key of [vary], or no statement: it is then composed from each "
            "student's numbers",
            f'statement = "... {{{absent[0]}}} ..."',
        )
