"""Splits a line of vectors, in i, j and k or in pairs, into an equation for each component. Knows no forces."""

from __future__ import annotations

import re
from collections.abc import Sequence

AXES = {"i": "x", "j": "y", "k": ""}
MARK = "vec"  # a word behind a component tells its axis: ivec, jvec, kvec
_UNIT = r"(?:N ?c?m|Nm|N|cm|m)"
_PAIR = r"\(\s*([-+]?[\d.]+)\s*,\s*([-+]?)([\d.]+)\s*\)"
_ALONE = re.compile(
    r"\s*[-+]?\s*[A-Za-z]\w{0,3}\s*|\s*[-+]?\s*\(\s*[a-z ]+\)\s*"
)  # the vector by its letter, or in words
_AXIS = re.compile(r"(?:\d|\)|[A-Za-z])\s*\b[ijk]\b")


def has_vectors(lines: Sequence[str]) -> bool:
    """Whether a working counts in unit vectors."""
    text = "\n".join(lines)
    return len(re.findall(rf"(?:\d|\)|N|m)\s*[ijk]\b(?!\w)|\b[ijk]\s*[+\-]\s*\d|[îĵ]|=\s*{_PAIR}", text)) >= 2


def split_vectors(line: str) -> str:
    """The line as equations of its components; as it is where it has none."""
    line = re.sub(r"[îĵ]|k̂", lambda found: {"î": "i", "ĵ": "j"}.get(found[0], "k"), line)
    line = re.sub(r"(?<=[\d)])([ijk])\b", r" \1", line)
    if re.search(r"=\s*\([-+]?[\d.]+\s*,", line):
        line = re.sub(_PAIR, lambda found: f" {found[1]} i {found[2] or '+'} {found[3]} j ", line)
    if not _AXIS.search(line):
        return line
    return "".join(_clause(part) for part in re.split(r"(;|→|,|\b(?:so|and|at|with|then|giving)\b|:)", line))


def _clause(part: str) -> str:
    if not re.search(r"\b[ijk]\b", part):
        return part
    sides = part.split("=")
    sides = sides[:1] + [each for each in sides[1:] if not _ALONE.fullmatch(each)]
    words, name = _name(sides)
    cross = bool(re.search(r"(?<=\w)\s+[x*]\s+[A-Za-z]", sides[0]))
    if cross:
        words, name = "moment ", ""
    found: list[tuple[dict[str, str], str]] = []
    for side in sides[1:] if len(sides) > 1 and (cross or not re.search(r"\b[ijk]\b", sides[0])) else sides:
        lead = re.match(r"^([^\d+\-(]*?)\s*(?=[+-]?\s*[\d.(]|[+-]?\s*(?:sin|cos))", side) if len(sides) == 1 else None
        lead_words = lead[1] if lead and len(lead[1].strip()) > 1 else ""
        got = _components(side[lead.end() :] if lead and lead_words else side)
        if got is None:
            return re.sub(r"(?<=[\d)N])\s*\b[ijk]\b", " ", part)
        words += f"{lead_words} " if lead_words else ""
        found.append(got)
    return _equations(words, name, found)


def _name(sides: list[str]) -> tuple[str, str]:
    name = sides[0].strip() if len(sides) > 1 else ""
    last = re.match(r"^(.*?)([A-Za-zα-ωΣ]\w*)$", name)
    if last and last[1].strip() and not re.search(r"\b[ijk]\b", name):
        return (last[1], last[2]) if len(last[2]) <= 3 or "_" in last[2] else (f"{name} ", "")
    return "", name


def _equations(words: str, name: str, found: list[tuple[dict[str, str], str]]) -> str:
    axes = [axis for axis in AXES if any(axis in each for each, _ in found)]
    unit = next((unit for _, unit in found if unit), "")
    out = []
    for axis in axes:
        left = "" if axis == "k" else f"{name}_{AXES[axis]}" if name and len(axes) > 1 else name
        chain = " = ".join(each[axis] for each, _ in found if axis in each)
        out.append(f" {words}{left}{' = ' if left else ' '}{chain} {unit} {axis}{MARK} ")
    return " ; ".join(out)


def _terms(side: str) -> list[str]:
    """The terms of a sum outside brackets, with their signs."""
    out, depth, now = [], 0, ""
    for sign in side:
        depth += (sign == "(") - (sign == ")")
        if sign in "+-" and depth == 0 and now.strip() and now.strip()[-1] not in "*/^(+-":
            out.append(now)
            now = sign
        else:
            now += sign
    return [*out, now] if now.strip() else out


def _components(side: str) -> tuple[dict[str, str], str] | None:
    """The factor of each axis, and the unit; None where a term has no axis."""
    behind = re.search(rf"(?<=[ijk)])\s*\(?\s*({_UNIT})\s*\)?\s*$", side.strip())
    unit = behind[1] if behind else ""
    side = side.strip()[: behind.start()] if behind else side.strip()
    out: dict[str, str] = {}
    for term in _terms(side):
        plain = re.fullmatch(
            rf"\s*([+-]?.*?[^A-Za-z\s+-]|[+-]?\s*[^+\-]*?)\s*(?:({_UNIT})\s*)?\*?\s*([ijk])\s*({_UNIT})?\s*", term
        )
        bracket = re.fullmatch(r"\s*([+-]?[^()]*)\((.*)\)\s*", term)
        if plain:
            unit = unit or plain[2] or plain[4] or ""
            factor = plain[1].strip()
            factor += "1" if factor in ("", "+", "-") else ""
            out[plain[3]] = f"{out[plain[3]]} + {factor}" if plain[3] in out else factor
        elif bracket and re.search(r"\b[ijk]\b", bracket[2]):
            inner = _components(bracket[2])
            if inner is None:
                return None
            out.update({axis: f"{bracket[1].strip()}({factor})" for axis, factor in inner[0].items()})
        else:
            return None
    return (out, unit) if out else None
