"""Lines that a person accepted, against what was found of a working: by their text, and by the formulas they come to.
Judges nothing anew.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from ...problem.model import Accept
from .patterns import pattern
from .passes import Judged, alike
from .values import Claim

CLOSE = 0.006  # what rounding to three figures can do
_SCALES = (1.0, 0.01, 100.0, 0.001, 1000.0)
_SIGNS = str.maketrans({"×": "*", "·": "*", "⋅": "*", "∙": "*", "−": "-", "–": "-", "÷": "/"})


@dataclass(frozen=True, slots=True, eq=False)
class Accepted:
    """One accepted line, and what it comes to that is not true of the problem. `values` are by key what the slip that
    explains it makes of the problem's quantities, empty where none does.
    """

    accept: Accept
    claims: tuple[Claim, ...]
    values: Mapping[str, float]


def prepared(accept: Accept, judged: Callable[[str], Judged]) -> Accepted:
    """An accepted line, read behind the lines it rests on."""
    found = judged("\n".join((*accept.after, accept.line)))
    last, state = len(accept.after) + 1, found.state
    worlds = [min(each.worlds) for each in state.guilty() if each.line == last and each.worlds]
    rows = state.known.slips[worlds[0]].rows if worlds else {}
    return Accepted(accept, _wrong(found, last), {key: float(row[0]) for key, row in rows.items()})


def overruled(judged: Judged, accepted: Sequence[Accepted]) -> Judged:
    """With the suspicions against accepted lines, and the same slips again, laid aside."""
    for line in judged.state.lines:
        found = next((each.accept for each in accepted if _is(judged, line.number, line.text, each)), None)
        if found is not None:
            judged.accepted[line.number] = found
    laid = [each for each in judged.state.guilty() if each.line in judged.accepted]
    again = [each for each in judged.state.suspects if each.state == "again" and any(alike(each, one) for one in laid)]
    for each in (*laid, *again):
        each.state = "accepted"
    return judged


def rests_on(judged: Judged, line: int) -> tuple[int, ...]:
    """The numbers of the lines that a line rests on, in order."""
    deps = frozenset[int]().union(*(each.value.deps for each in judged.state.on(line)))
    return tuple(sorted(each for each in deps if 0 < each < line))


def bare(text: str) -> str:
    """A line without spaces and with the plainest signs: what two people type alike is the same."""
    return re.sub(r"\s+", "", unicodedata.normalize("NFKC", text).translate(_SIGNS))


def _is(judged: Judged, line: int, text: str, accepted: Accepted) -> bool:
    """Whether a line is the accepted one: letter for letter, or wrong by itself and by the same formula."""
    if bare(text) == bare(accepted.accept.line):
        return True
    wrong = _wrong(judged, line)
    return (
        bool(wrong)
        and not _follows(judged, line, wrong)
        and all(any(_same(each, other) for other in accepted.claims) for each in wrong)
    )


def _wrong(judged: Judged, line: int) -> tuple[Claim, ...]:
    """What a line comes to that is not true of the problem."""
    return tuple(each for each in judged.state.on(line) if each.status != "true")


def _follows(judged: Judged, line: int, wrong: Sequence[Claim]) -> bool:
    """Whether a line is wrong by another one alone."""
    guilty = {each.line for each in judged.state.guilty()}
    return line not in guilty and any(each.value.blames for each in wrong)


def _same(one: Claim, other: Claim) -> bool:
    """Whether two claims are of one thing by one formula: they agree in the problem and all its twins, in some unit."""
    if (one.meaning.role, one.meaning.axis) != (other.meaning.role, other.meaning.axis):
        return False
    if one.meaning.items and other.meaning.items and one.meaning.items != other.meaning.items:
        return False
    if one.meaning.kinds and other.meaning.kinds and not one.meaning.kinds & other.meaning.kinds:
        return False
    size, its = float(one.value.f[0]), float(other.value.f[0])
    if not its or pattern(one.value.f) is None or pattern(one.value.f) != pattern(other.value.f):
        return False
    return any(abs(size / its / scale - 1) < CLOSE for scale in _SCALES) and _off(one, other)


def _off(one: Claim, other: Claim) -> bool:
    """Whether the numbers as typed are as far from their formulas."""
    sizes = [each.value.number / float(each.value.f[0]) for each in (one, other)]
    return abs(sizes[0] - sizes[1]) <= CLOSE * abs(sizes[1])
