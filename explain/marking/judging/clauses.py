"""A line of a working as clauses: statements with words, letters and expressions, split wherever one ends and the
next begins.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from .formula import Expr
from .parser import Element, Parser
from .tokens import Token

PREVIOUS = "§before"  # the letter for what the line above came to
_UNIT_WORDS = frozenset(("n", "kg", "cm", "lb", "lbs", "nm", "ncm", "deg", "in"))
_LEADS = frozenset("*/")
_VERBS = frozenset(("gives", "makes", "giving", "means"))


@dataclass(slots=True)
class Side:
    """What stands between two equals signs: at most one expression with the words around it."""

    expr: Expr | None
    before: str = ""
    after: str = ""

    @property
    def words(self) -> str:
        return f"{self.before} {self.after}".strip()


@dataclass(slots=True)
class Clause:
    """One statement of a line. `lead`: it goes on from the line above. `dirty`: a sign was passed over, so it
    accuses nobody of false arithmetic.
    """

    sides: list[Side]
    label: str = ""
    text: str = ""
    lead: str = ""
    dirty: bool = False
    names: list[str] = field(default_factory=list)

    @property
    def words(self) -> str:
        return " ".join(filter(None, (self.label, *(side.words for side in self.sides))))

    @property
    def exprs(self) -> list[Expr]:
        """The expressions that are more than a letter's name."""
        return [
            side.expr
            for side in self.sides
            if side.expr is not None and not (side.expr.letter and side.expr.letter != PREVIOUS)
        ]


def clauses_of(tokens: Sequence[Token], names: frozenset[str]) -> list[Clause]:
    """All clauses of a line, in order."""
    out: list[Clause] = []
    label = ""
    for row in _rows(_parted(tokens, names)):
        while (cut := next((i for i, each in enumerate(row) if each.kind == "colon"), None)) is not None:
            head, row = row[:cut], row[cut + 1 :]
            if any(each.kind in ("eq", "num") for each in head):
                last = max(i for i, each in enumerate(head) if each.kind != "word") + 1
                out += _clauses(head[:last], names, label)
                head = head[last:]
            label = " ".join(each.text for each in head if each.kind == "word")
        out += _clauses(row, names, label)
    return out


def _parted(tokens: Sequence[Token], names: frozenset[str]) -> list[Token]:
    """With a separator where a result ends and the next letter begins, as in "Fx = 5 cos 60 = 2.5 Fy = 5 sin 60"."""
    out: list[Token] = []
    equal = False
    for place, each in enumerate(tokens):
        after = tokens[place + 1] if place + 1 < len(tokens) else None
        starts = (
            each.kind == "word"
            and each.gap
            and each.text in names
            and after is not None
            and after.kind == "eq"
            and bool(out)
            and out[-1].kind == "num"
        )
        if starts and equal and (len(each.text) > 1 or out[-1].unit):
            out.append(Token("sep", ";"))
        equal = (equal or each.kind == "eq") and each.kind not in ("sep", "arrow")
        out.append(each)
    return out


def _rows(tokens: Sequence[Token]) -> Iterator[list[Token]]:
    """The tokens between separators; a comma inside brackets ends nothing."""
    row: list[Token] = []
    depth = 0
    for each in tokens:
        if each.kind == "sep" and each.text.lower() in _VERBS and not any(other.kind == "num" for other in row):
            each = Token("word", each.text, gap=each.gap)  # "the joint gives 204 N": of one piece
        if each.kind == "arrow" or each.kind == "sep" and depth <= 0:
            yield row
            row, depth = [], 0
            continue
        if each.kind == "sep":
            continue
        depth += (each.text == "(") - (each.text == ")") if each.kind == "op" else 0
        row.append(each)
    yield row


def _clauses(row: list[Token], names: frozenset[str], label: str) -> list[Clause]:
    if not row:
        return []
    lead, row = _lead(row)
    if lead in _LEADS and lead:
        row, names = [Token("word", PREVIOUS), *row], names | {PREVIOUS}
    parts: list[list[Token]] = [[]]
    for each in row:
        if each.kind == "eq":
            parts.append([])
        else:
            parts[-1].append(each)
    parts = [*map(_multiplied, parts[:-1]), parts[-1]]
    parsers = [Parser(part, names) for part in parts]
    sides = [each.side() for each in parsers]
    text = " ".join(each.text for each in row)
    dirty = any(each.dirty for each in parsers)
    return [Clause(found, label, text, lead if first else "", dirty) for first, found in _split(sides)]


def _multiplied(part: list[Token]) -> list[Token]:
    """A side before an equals sign in which a number times a named thing is a product: "44.1 times arm of can"."""
    return [
        Token("op", "*", gap=each.gap)
        if each.text == "times"
        and 0 < place < len(part) - 1
        and part[place - 1].kind == "num"
        and part[place + 1].kind == "word"
        else each
        for place, each in enumerate(part)
    ]


def _lead(row: list[Token]) -> tuple[str, list[Token]]:
    """A line that goes on from the one above: "= 12", "/ 4.4 = 24.36 kg", "x 9.81"."""
    first, second = row[0], row[1] if len(row) > 1 else Token("end", "")
    if first.kind == "eq":
        return "=", row[1:]
    if first.kind == "op" and first.text in "*/" and (second.kind in ("num", "func") or second.text == "("):
        return first.text, row
    if first.kind == "word" and first.text == "x" and second.kind == "num":
        return "*", [Token("op", "*"), *row[1:]]
    return "", row


def _split(sides: list[list[Element]]) -> Iterator[tuple[bool, list[Side]]]:
    """The sides of each statement: of several expressions on one side, only the one next to the equals sign belongs
    to it.
    """
    now: list[Side] = []
    first = True
    for place, elements in enumerate(sides):
        pieces = list(_pieces(elements))
        last = place == len(sides) - 1
        if place == 0:
            keep = pieces[-1:] if not last else pieces[:1]
            for each in pieces[:-1] if not last else []:
                yield first, [each]
                first = False
            now = keep
            rest = pieces[1:] if last else []
        else:
            now = [*now, *(pieces[:1] or [Side(None)])]
            rest = pieces[1:]
        if rest and not last:
            yield first, now
            first = False
            for each in rest[:-1]:
                yield False, [each]
            now = rest[-1:]
        elif rest:
            yield first, now
            first, now = False, []
            for each in rest:
                yield False, [each]
    if now:
        yield first, now


def _pieces(elements: list[Element]) -> Iterator[Side]:
    """Each expression with the words before it; what follows the last one belongs to it."""
    words, side = "", None
    for each in elements:
        if isinstance(each, str):
            words = f"{words} {each}".strip()
            continue
        if side is not None:
            yield side
        side, words = Side(each, words), ""
    if side is not None:
        side.after = words
        yield side
    elif words:
        yield Side(None, words)


def declared(lines: Sequence[str]) -> frozenset[str]:
    """The letters and short names that a working puts before an equals sign."""
    names: set[str] = set()
    for line in lines:
        for found in re.finditer(
            r"(?:^|[,;→:(]|\s\s|\bso\b|\band\b|\bthen\b|\bcall\b|\blet\b|=)\s*([A-Za-zα-ω][\w']{0,9})\s*=(?!=)",
            line,
            re.I,
        ):
            word = found[1]
            if word.lower() in _UNIT_WORDS and not re.search(rf"(?:^|[,;])\s*{word}\s*=", line):
                continue
            names.add(word)
        names |= {
            found[1]
            for found in re.finditer(r"(?<=[\d)])(?: ?[A-Za-z]{1,3})? +([A-Z][\w']{1,5}) *=(?!=)", line)
            if found[1].lower() not in _UNIT_WORDS
        }
        names |= {found[1] for found in re.finditer(r"(?<=[a-z] )([A-Z](?:_\w{1,6}|[a-z0-9]?)) *=(?!=)", line)}
    return frozenset(names)
