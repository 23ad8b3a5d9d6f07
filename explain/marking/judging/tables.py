"""Writes the rows of a student's table out as equations: "tin weight = 24.5 N", a moment cell as force times arm, a
total as the sum of its column.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from .spoken import UNIT

_NUMBER = re.compile(r"[~≈]?\s*[-+−–]?\s*(?:\d[\d.,]*|\.\d+)\s*" + UNIT + "?")
_RULE = re.compile(r"[:\-=+\s]*")
_TOTAL = re.compile(r"\s*(?:sum|totals?|all|together|Σ|net|sub-?total|summe|gesamt)\b", re.I)
_HEAD_UNIT = re.compile(
    r"[(\[/,]\s*(?:in )?("
    + UNIT
    + r"|N\s?[·*. ]?\s?c?m|lb[ -]?in|kg ?c?m)\s*[)\]]?\s*$|(?<=\s)("
    + UNIT
    + r"|N c?m|kg c?m|lb[ -]in)\s*$"
)
_ONLY_UNIT = re.compile(r"\s*(kg ?c?m|N ?c?m|lb[ -]in|kg|N|cm|m|lb|in)\s*")


@dataclass(frozen=True, slots=True)
class Head:
    """The head of a column: its words, its unit, the kind of its cells ("" where that is open)."""

    words: str
    unit: str
    kind: str


def tables(lines: Sequence[str], comma: bool = False) -> list[str]:
    """The lines, those of tables written out as equations, one line for each row."""
    out = list(lines)
    cut = [_cells(line, comma) for line in lines]
    at = 0
    while at < len(lines):
        mark, cells = cut[at]
        if not mark or len(cells) < (2 if mark in "|\t" or lines[at][:3].isspace() else 3):
            at += 1
            continue
        end = at
        while (
            end < len(lines)
            and cut[end][0] == mark
            and abs(len(cut[end][1]) - len(cells)) <= (1 if mark != "," else 0) + 3 * (mark == " ")
        ):
            end += 1
        if end - at > 1:
            _write(out, lines, list(range(at, end)), [cut[row][1] for row in range(at, end)], mark)
        at = max(end, at + 1)
    return out


def _cells(line: str, comma: bool) -> tuple[str, list[str]]:
    """What parts the cells of a line that may be a row, and the cells."""
    text = line.strip()
    if text.count("|") >= 2 and (text.startswith("|") or "=" not in text) and not re.search(r"=\s*\||\|\s*=", text):
        return "|", [each.strip() for each in text.strip("|").split("|")]
    if "\t" in line.rstrip():
        return "\t", [each.strip() for each in line.rstrip("\n").split("\t")]
    if "=" in text:
        return "", []
    if text.count("&") >= 2:
        return "&", [each.strip() for each in re.sub(r"\\\\.*$", "", text).split("&")]
    if text.count(";") >= 2:
        return ";", [each.strip() for each in text.split(";")]
    pattern = r",(?=\s|$)|,(?=[A-Za-z])" if comma or re.search(r",\s", text) else r","
    if len(re.findall(pattern, text)) >= 2:
        return ",", [each.strip() for each in re.split(pattern, text)]
    if re.search(r"\S\s{2,}\S", text):
        return " ", re.split(r"\s{2,}", text)
    return "", []


def _is_number(cell: str) -> bool:
    return bool(_NUMBER.fullmatch(cell.replace("**", "").strip()))


def _is_rule(cells: Sequence[str]) -> bool:
    return all(_RULE.fullmatch(each) for each in cells) and any("-" in each or "=" in each for each in cells)


_FORCES = ("N", "lb", "lbf", "kN")
_UP = re.compile(r"up|upwards?|f?_?[yv]|vert|vertical(?:ly)?|↑")
_LEVEL = re.compile(r"right|f?_?[xh]|horiz|horizontal(?:ly)?|level|→")


def head_of(cell: str) -> Head:
    """What a column's head says."""
    text = cell.replace("**", "")
    only, found = _ONLY_UNIT.fullmatch(text), _HEAD_UNIT.search(text)
    unit = only[1] if only else (found[1] or found[2]).strip() if found else ""
    words = "" if only else re.sub(r"[(\[/,].*$", "", text[: found.start()] if found and found[2] else text).strip()
    low = words.lower()
    if re.search(r"moment(?! ?arm)|torque|turning|^m$|^τ|^t$|drehmoment", low) or re.fullmatch(
        r"N ?[·*. ]?c?m|lb[ -]?in|kg ?c?m", unit
    ):
        kind = "moment"
    elif re.search(r"arm|lever|dist|^[dxra]$|from|away|com|cog", low) or unit in ("cm", "m", "in", "mm", "ft"):
        kind = "length"
    elif "mass" in low or unit == "kg":
        kind = "mass"
    else:
        kind = "force" if re.search(r"weight|force|^[wf]$|load|newton", low) or unit in ("N", "lb") else ""
    if _UP.fullmatch(low) and (unit in _FORCES or low.startswith("f")):
        return Head("vertical part", unit, "force")
    if _LEVEL.fullmatch(low) and (unit in _FORCES or low.startswith("f")):
        return Head("horizontal part", unit, "force")
    if kind and not re.search(r"[a-z]{3}", low):
        words = {"length": "arm"}.get(kind, kind)
    return Head(words, unit, kind)


def _write(out: list[str], lines: Sequence[str], rows: list[int], cells: list[list[str]], mark: str) -> None:
    """The rows of one table as equations, into `out`."""
    head = cells[0] if not any(_is_number(each) for each in cells[0]) and not _is_rule(cells[0]) else None
    if head is None and mark in (" ", ",", ";") or not any(_is_number(each) for row in cells for each in row):
        return
    heads = [head_of(each) for each in head] if head else []
    width = max(map(len, cells))
    heads += [Head("", "", "")] * (width - len(heads))
    units = next((place for place, each in enumerate(heads) if each.words.lower() in ("unit", "units")), None)
    columns: dict[int, list[str]] = {}
    for number, row in zip(rows, cells, strict=True):
        if row is head or _is_rule(row):
            out[number] = ""
            continue
        row = [each.replace("**", "") for each in row]
        if mark == " " and head and len(row) < len(heads):
            row = _aligned(lines[rows[0]], lines[number])
        row += [""] * (width - len(row))
        shift = head is not None and len(head) + 1 == len(row) and not _is_number(row[0])
        if shift:
            out[number] = _row(row, [Head("", "", ""), *heads], columns, units)
            continue
        out[number] = _row(row, heads, columns, units)


def _aligned(head: str, line: str) -> list[str]:
    """A row with holes in it: each cell below the head that it stands nearest to."""
    starts = [found.start() for found in re.finditer(r"\S+(?: \S+)*", head)]
    out = [""] * len(starts)
    for found in re.finditer(r"\S+(?: \S+)*", line):
        out[min(range(len(starts)), key=lambda place: abs(starts[place] - found.start()))] = found[0]
    return out


def _row(row: list[str], heads: list[Head], columns: dict[int, list[str]], units: int | None) -> str:
    label = next((each for each in row if each and not _is_number(each)), "")
    row = [re.sub(r"\([^()]*\d[^()]*\)", "", each).strip() if each == label else each for each in row]
    label = re.sub(r"\([^()]*\d[^()]*\)", "", label).strip()
    if units is not None:
        value = next((each for each in row if _is_number(each)), None)
        return f"{label} = {value} {row[units]}" if value else label
    total = bool(_TOTAL.match(label))
    parts: list[str] = []
    seen: dict[str, tuple[str, str]] = {}
    lengths: list[tuple[str, str]] = []
    for place, cell in enumerate(row):
        if not cell or cell == label:
            continue
        head = heads[place]
        if not _is_number(cell):
            parts.append(f"{label} {head.words} = {cell}" if re.search(r"\d", cell) and "=" not in cell else cell)
            continue
        cell = re.sub(r"^[~≈]\s*", "", cell).replace("−", "-").replace("–", "-")
        found = re.match(r"[-+]?\s*(?:\d[\d.,]*|\.\d+)", cell)
        number = (found[0] if found else cell).replace(" ", "").rstrip(".,")
        unit = cell[found.end() :].strip() if found and cell[found.end() :].strip() else head.unit
        if not total:
            columns.setdefault(place, []).append(number)
        if head.kind == "length":
            lengths.append((number, unit))
        if head.kind == "moment" and lengths:
            seen["length"] = _arm_of(lengths, seen, number)
        parts.append(_cell(label, head, number, unit, columns.get(place, []) if total else [], seen))
        seen.setdefault(head.kind, (number, unit))
    return " ; ".join(parts) if parts else label


def _cell(label: str, head: Head, number: str, unit: str, column: list[str], seen: dict[str, tuple[str, str]]) -> str:
    name = f"{label} {head.words}".strip()
    if len(column) > 1:
        terms = " + ".join(f"({each})" if each.startswith("-") else each for each in column)
        return f"total {head.words} = {terms} = {number} {unit}"
    if head.kind == "moment" and "length" in seen and {"force", "mass"} & seen.keys():
        force, arm = seen[_factor(seen, number)], seen["length"]
        return f"{name} = {force[0].lstrip('+')} {force[1]} * ({arm[0].lstrip('+')} {arm[1]}) = {number} {unit}"
    return f"{name} = {number} {unit}"


def _arm_of(lengths: Sequence[tuple[str, str]], seen: dict[str, tuple[str, str]], moment: str) -> tuple[str, str]:
    """Which of several lengths a moment was made with: the last that gives it, else the last."""
    for each in reversed(lengths):
        if any(_makes(seen[kind][0], each[0], moment) for kind in ("force", "mass") if kind in seen):
            return each
    return lengths[-1]


def _factor(seen: dict[str, tuple[str, str]], moment: str) -> str:
    """Which of weight and mass a moment was made with."""
    found = (kind for kind in ("force", "mass") if kind in seen and _makes(seen[kind][0], seen["length"][0], moment))
    return next(found, "force" if "force" in seen else "mass")


def _makes(one: str, arm: str, moment: str) -> bool:
    """Whether the product of two numbers is a third, in any units of length."""
    try:
        size, long, made = (abs(float(each.replace(",", ".").lstrip("+"))) for each in (one, arm, moment))
    except ValueError:
        return False
    return any(abs(size * long * scale - made) < 0.02 * made for scale in (1, 0.01, 100))
