"""What a right answer still wants: a direction, a line its angle starts from, fewer figures. Judges no number: each
is a comment that costs nothing here.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from ..reading import Chain, Number, Reading
from ..slips.slip import SlipRule
from .piece_verdict import Found
from .piece_test import alone, unsigned

MOST_FIGURES = 6  # no datum of a class has more (common practice, no source)
_PARTS = {"reaction.right", "reaction.up"}
_ANGLES = ("*angle reaction", "*direction reaction", "reaction.direction")
Lines = Sequence[tuple[Reading, Sequence[Found]]]


def wants(lines: Lines, asked: Sequence[str], rules: Sequence[SlipRule]) -> Mapping[int, str]:
    """By line number what is said of an answer that holds; the slip's own words, nothing of its hints."""
    says = {rule.SLIP: rule.SAYS.says for rule in rules}
    found = dict(_figures(lines, asked)) | dict(_angle(lines))
    if "reaction" in asked:
        found |= dict(_direction(lines))
    return {line: says[slip] for line, slip in found.items() if slip in says}


def _held(lines: Lines) -> Iterator[tuple[int, Found, Chain]]:
    for reading, found in lines:
        for each in found:
            if each.verdict == "holds" and each.chain is not None:
                yield reading.number, each, each.chain


def _ways(chain: Chain) -> tuple[str, ...]:
    return tuple(way for each in chain.remarks if each for way in each.directions)


def _direction(lines: Lines) -> Iterator[tuple[int, str]]:
    """The size of the joint force, where no line has its parts, an angle or a word for where it points."""
    held = list(_held(lines))
    told = any(_ways(chain) and any(key.startswith("reaction") for key in found.states) for _, found, chain in held)
    keys = {key for _, found, _ in held for key in found.states}
    sizes = [line for line, found, chain in held if "reaction" in found.states and alone(chain.sides[0]) is not None]
    if sizes and not told and not keys & {*_ANGLES} and not keys >= _PARTS:
        yield sizes[-1], "direction-missing"


def _angle(lines: Lines) -> Iterator[tuple[int, str]]:
    """The last angle of the joint force, where no line says from where it is counted."""
    held = [(line, chain) for line, found, chain in _held(lines) if any(key in _ANGLES for key in found.states)]
    if held and not any(_ways(chain) for _, chain in held):
        yield held[-1][0], "angle-reference-not-stated"


def _figures(lines: Lines, asked: Sequence[str]) -> Iterator[tuple[int, str]]:
    for line, found, chain in _held(lines):
        number = unsigned(chain.sides[-1])
        if isinstance(number, Number) and number.figures > MOST_FIGURES and {*found.states} & {*asked}:
            yield line, "figures-overstated"
