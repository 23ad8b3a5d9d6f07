"""Segment tables: what share of the body a segment is and where its centre of mass lies. Knows no problem and does no
sums.

Every row counts from the segment's near end: of a limb the end by the trunk, of the trunk and its parts and of the
head the lower end, of the foot the heel or the ankle.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from decimal import Decimal
from functools import cache, lru_cache
from pathlib import Path
from typing import NamedTuple

from ..errors import MISSPELT, Fault, nearest, shown
from ..table import Table, table_lines


_OWN = Table(
    "segment table",
    1_000_000,
    "cells with commas between them, and quotation marks round a cell that has a comma",
    'forearm,1.6,43.0,"Winter, Table 4.1"',
)


class Row(NamedTuple):
    """One row: both shares in per cent, as written, the centre of mass from the near end; `source` names the ends
    too.
    """

    mass_percent: Decimal
    com_percent: Decimal
    source: str
    table: str
    segment: str


class _Line(NamedTuple):
    """A line of a table's file: its number in the file, and its cells by column."""

    number: int
    cells: Mapping[str, str]


PUBLISHED: Mapping[str, str] = {
    "winter": "dempster-winter",
    "dempster": "dempster-winter",
    "dempster winter": "dempster-winter",
    "de leva": "de-leva-1996",
    "deleva": "de-leva-1996",
    "de leva 1996": "de-leva-1996",
    "plagenhoef": "plagenhoef-1983",
    "plagenhoef 1983": "plagenhoef-1983",
    "clauser": "clauser-1969",
    "clauser 1969": "clauser-1969",
}
COLUMNS = ("segment", "mass_percent", "com_percent", "source")
NEEDED = COLUMNS[:3]  # a table without sources is said to name none
SEGMENTS: Mapping[str, tuple[str, ...]] = {
    "head_neck": ("head and neck", "head", "neck and head"),
    "trunk": ("trunk", "torso", "whole trunk"),
    "trunk_head_neck": ("trunk head and neck", "head neck and trunk", "head and trunk", "trunk and head"),
    "hat_head_arms_trunk": ("head arms and trunk", "hat", "upper body", "trunk head and arms", "trunk arms and head"),
    "thorax": ("thorax", "chest"),
    "abdomen": ("abdomen",),
    "pelvis": ("pelvis",),
    "thorax_abdomen": ("thorax and abdomen",),
    "abdomen_pelvis": ("abdomen and pelvis",),
    "upper_trunk": ("upper trunk",),
    "middle_trunk": ("middle trunk",),
    "lower_trunk": ("lower trunk",),
    "upper_arm": ("upper arm", "upperarm"),
    "forearm": ("forearm", "lower arm"),
    "hand": ("hand",),
    "forearm_hand": ("forearm and hand", "hand and forearm", "lower arm and hand"),
    "total_arm": (
        "whole arm",
        "arm",
        "total arm",
        "entire arm",
        "upper limb",
        "upper extremity",
        "upper arm forearm and hand",
    ),
    "thigh": ("thigh", "upper leg"),
    "leg_shank": ("shank", "lower leg", "leg", "shin"),
    "foot": ("foot",),
    "foot_leg": ("shank and foot", "foot and shank", "lower leg and foot", "leg and foot", "shin and foot"),
    "total_leg": ("whole leg", "total leg", "entire leg", "lower limb", "lower extremity", "thigh shank and foot"),
}
_CANONICAL: Mapping[str, str] = {
    said: name for name, many in SEGMENTS.items() for said in (name.replace("_", " "), *many)
}
LIMBS = (
    ("upper_arm", "forearm", "hand", "forearm_hand", "total_arm"),
    ("thigh", "leg_shank", "foot", "foot_leg", "total_leg"),
    (
        "head_neck",
        "trunk",
        "trunk_head_neck",
        "hat_head_arms_trunk",
        "thorax",
        "abdomen",
        "pelvis",
        "thorax_abdomen",
        "abdomen_pelvis",
    ),
)
_SEXES: Mapping[str, str] = {"male": "men", "female": "women"}
_FIGURE = re.compile(r"[0-9]{1,3}(?:\.[0-9]{1,6})?")


def segment_row(table: str, segment_name: str, sex: str, own: str | None = None) -> Row:
    """The row of a published table, or of a class's own (the path of a CSV file, `own` being what it says), for a
    segment.

    `sex` is "female", "male" or "", which is enough for a table that does not tell them apart. Raises Fault.
    """
    known = PUBLISHED.get(plain_name(table))
    if known is not None:
        return _row(table, known, _published(known), segment_name, sex)
    if own is not None:
        return _row(table, table, _own(table, own), segment_name, sex)
    names = tuple(sorted(set(PUBLISHED.values())))
    near = nearest(table, PUBLISHED)
    raise Fault(
        key="person.table",
        found=f"the table {shown(table)}, which is not known",
        expected=f"one of {', '.join(names)}, or the path of a CSV file",
        example=f'table = "{PUBLISHED[near] if near else names[0]}"',
    )


def plain_name(name: str) -> str:
    """A name in small letters with single spaces, "&" and "with" read as "and", without "left", "right" or "the"
    before it.
    """
    spaced = re.sub(r"[-_,\s]+", " ", re.sub(r"\s*[&+/]\s*|\bwith\b", " and ", name.casefold()))
    return re.sub(r"^(?:(?:the|left|right|her|his|their|my) )+", "", spaced.strip())


def canonical(segment_name: str) -> str:
    """The name that the tables have for a segment, or its plain name where it is none of theirs."""
    plain = plain_name(segment_name)
    return _CANONICAL.get(plain, plain)


def com_span(segment_name: str) -> tuple[float, float] | None:
    """The least and the greatest share, in per cent of the length, at which a published table has the centre of mass
    of a segment.
    """
    wanted = canonical(segment_name)
    found = [
        float(line.cells["com_percent"])
        for name in sorted(set(PUBLISHED.values()))
        for line in _published(name)
        if line.cells["segment"] == wanted
    ]
    return (min(found), max(found)) if found else None


def other_rows(table: str, segment_name: str, sex: str, own: str | None = None) -> tuple[Row, ...]:
    """The rows of the same table for other segments of the same limb, () for a segment that is of none: what might
    be taken by mistake.
    """
    wanted = canonical(segment_name)
    kin = next((each for each in LIMBS if wanted in each), ())
    found = []
    for name in kin:
        if name != wanted:
            try:
                found.append(segment_row(table, SEGMENTS[name][0], sex, own))
            except Fault:  # this table has no such row
                continue
    return tuple(found)


def _row(said: str, table: str, lines: Sequence[_Line], segment_name: str, sex: str) -> Row:
    wanted = canonical(segment_name)
    found = [each for each in lines if canonical(each.cells["segment"]) == wanted]
    if not found:
        raise _missing(said, table, lines, segment_name)
    divided = any(each.cells["sex"] for each in found)
    if divided and not sex:
        raise Fault(
            key="person.sex",
            found="nothing, the key is missing",
            expected=f"female or male, since {said} has a row for each",
            example='sex = "female"',
        )
    found = [each for each in found if each.cells["sex"] in ("", sex)]
    if not found:
        raise Fault(
            file=table,
            found=f"no row for {segment_name} of {_SEXES[sex]}",
            expected=f"a row whose sex is {sex} or left open, as for the other segments",
            advice="Put one into the table, or give this segment's mass and com as numbers in the problem.",
        )
    if len(found) != 1:
        where = " and ".join(str(each.number) for each in found)
        raise Fault(
            file=table,
            found=f"{len(found)} rows for {segment_name} (lines: {where})",
            expected="one row for each segment",
            advice="Leave one of them out, or give them names that are not the same segment.",
        )
    (line,) = found
    mass, com = _share(table, line, "mass_percent"), _share(table, line, "com_percent")
    return Row(mass, com, _source(table, line), table, line.cells["segment"])


def _missing(said: str, table: str, lines: Sequence[_Line], segment_name: str) -> Fault:
    wanted = canonical(segment_name)
    have = tuple(dict.fromkeys(_spoken(each.cells["segment"]) for each in lines))
    others = [
        name
        for name in sorted(set(PUBLISHED.values()))
        if name != table and any(each.cells["segment"] == wanted for each in _published(name))
    ]
    near = nearest(plain_name(segment_name), have)
    elsewhere = f"It is in {' and in '.join(others)}. " if others else ""
    return Fault(
        key=f"segment {segment_name}",
        found=f"{shown(segment_name)}, which the table {said} does not have",
        expected=f"one of its segments: {', '.join(have) or 'none, the table is empty'}",
        example=f'name = "{near}"' if near and not others else 'mass = "1.6 kg"',
        advice=f"{elsewhere}Tables are not mixed: take another for the whole problem, or give mass and com as numbers.",
    )


def _spoken(segment: str) -> str:
    return SEGMENTS[segment][0] if segment in SEGMENTS else segment


def _share(table: str, line: _Line, column: str) -> Decimal:
    written = line.cells[column].removesuffix("%").strip()
    heavy = column == "mass_percent"
    most = 100 if heavy else 200
    if _FIGURE.fullmatch(written) and Decimal(written) <= most and (Decimal(written) or not heavy):
        return Decimal(written)
    advice = "Write a decimal point, not a comma." if "," in written else ""
    if not written:
        advice = "Without it, give this segment's mass and com as numbers in the problem."
    raise Fault(
        file=table,
        line=line.number,
        key=column,
        found=shown(written) if written else "nothing",
        expected=f"a number of per cent, {'above 0 and up' if heavy else 'from 0'} to {most}",
        example="2.2" if heavy else "43.0",
        advice=advice,
    )


def _source(table: str, line: _Line) -> str:
    cells = line.cells
    ends = f"{cells['near_end']} to {cells['far_end']}" if cells["near_end"] and cells["far_end"] else ""
    people = _SEXES.get(cells["sex"], "")
    return "; ".join(
        part
        for part in (cells["source"] or f"the class's own table {table}, which names no source", people, ends)
        if part
    )


@cache
def _published(name: str) -> tuple[_Line, ...]:
    path = Path(__file__).with_name("segments") / f"{name}.csv"
    return _lines(name, path.read_text(encoding="utf-8"))


@lru_cache(maxsize=4)
def _own(table: str, text: str) -> tuple[_Line, ...]:
    return _lines(table, text)


def _lines(table: str, text: str) -> tuple[_Line, ...]:
    (_, first), *rows = table_lines(text, table, _OWN, ",", strict=True) or [(1, list[str]())]
    header = [cell.strip().casefold() for cell in first]
    _check_header(table, header)
    return tuple(_Line(number, _cells(table, number, header, row)) for number, row in rows)


def _check_header(table: str, header: Sequence[str]) -> None:
    for column in NEEDED:
        if column not in header:
            near = nearest(column, header, MISSPELT)
            raise Fault(
                file=table,
                line=1,
                key=column,
                found=f"no column {column}" + (f", but {shown(near)}" if near else ""),
                expected=f"a first line with the columns {', '.join(NEEDED)}, and source where there is one",
                example=",".join(COLUMNS),
                advice="Put commas between the columns, not semicolons." if any(";" in each for each in header) else "",
            )


def _cells(table: str, number: int, header: Sequence[str], row: Sequence[str]) -> Mapping[str, str]:
    if len(row) != len(header):
        raise Fault(
            file=table,
            line=number,
            found=f"{len(row)} cells",
            expected=f"{len(header)}, one for each column",
            example='forearm,1.6,43.0,"Winter, Table 4.1"',
            advice="A cell that has a comma stands in quotation marks.",
        )
    cells = dict.fromkeys(("sex", "near_end", "far_end", "source"), "") | {
        key: cell.strip() for key, cell in zip(header, row, strict=True)
    }
    if cells["sex"] not in ("", *_SEXES):
        raise Fault(
            file=table,
            line=number,
            key="sex",
            found=shown(cells["sex"]),
            expected="female, male, or nothing",
            example="female",
        )
    return cells
