"""What a chain is taken for before it is judged: where it goes on from, whose letter it has, what a letter cannot
be. Judges nothing.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from ..slips.account import Account
from ..reading import Call, Chain, Expr, Measured, Name, Number, UnknownName, within
from .arithmetic import bare
from .piece_test import Holds, alone, unsigned
from .label_words import label_keys
from .alternatives import World

_ALONE = frozenset(("alone", "only", "itself", "due"))


@dataclass(slots=True)
class Meant:
    """One working being read. `before` is the chain before."""

    account: Account
    holds: Holds
    before: Chain | None = None

    def by(self, chain: Chain, truth: World) -> Chain:
        """The chain as it is meant. Raises TooMany."""
        return _of_an_angle(self._by_itself(self._led(_with_units(chain)), truth))

    def _led(self, chain: Chain) -> Chain:
        """A piece that begins with = goes on from the piece before."""
        if not chain.leads or self.before is None:
            return chain
        left = self.before.sides[0] if not bare(self.before.sides[0]) else self.before.sides[-1]
        others = tuple(claim(each, left) for each in chain.otherwise)
        return replace(
            claim(chain, left), label=chain.label or (self.before.label if bare(left) else ""), otherwise=others
        )

    def _by_itself(self, chain: Chain, truth: World) -> Chain:
        """What one load alone asks of the pull: F2 = 5.0 x 31 / 4 by its value, can alone: F2 = 450 N by its words a
        letter of the student's own.
        """
        if (share := self._of_one(chain, truth)) is not None:
            return share
        said = " ".join([chain.label, *(each.text for each in chain.remarks if each)]).casefold().split()
        name = alone(chain.sides[0])
        named = chain.label and label_keys(chain.label, self.account, truth.values)
        shared = bool(named) and name is not None and name.text[-1:].isdigit()
        if name is None or not (shared or _ALONE & set(said)):
            return chain
        letter = UnknownName(name.text)
        others = tuple(
            replace(each, sides=(letter, *each.sides[1:]), label="")
            for each in chain.otherwise
            if alone(each.sides[0]) == name
        )
        return replace(chain, sides=(letter, *chain.sides[1:]), label="", otherwise=others)

    def _of_one(self, chain: Chain, truth: World) -> Chain | None:
        """The chain with its numbered letter as what one force alone asks of the pull, where that and nothing else
        is its value.
        """
        name = alone(chain.sides[0])
        keys = tuple(key for key in truth.values if key.startswith("*alone "))
        if name is None or not keys or not name.text[-1:].isdigit() or name.text in self.holds.own:
            return None
        scales = self.holds.scales(truth, chain, {})
        letter = Name(keys, name.text)
        known, share = (
            any(scales.agree(each, side) for side in chain.sides[1:] if bare(side)) for each in (name, letter)
        )
        if not share or known and isinstance(name, Name):
            return None
        return replace(chain, sides=(letter, *chain.sides[1:]), label="", otherwise=())


def _with_units(chain: Chain) -> Chain:
    """Where a result has its unit written, or units of two kinds stand in a line, what looks like a unit is one:
    0.07 m is no product with a mass.
    """
    last = chain.sides[-1]
    units = {each.unit for side in chain.sides for each in within(side) if isinstance(each, Measured)} - {(("deg", 1),)}
    if len(units) < 2 and not (isinstance(last, Measured) and isinstance(unsigned(last), Number)):
        return chain
    return replace(chain, otherwise=tuple(each for each in chain.otherwise if each.choice != "letter"))


def _of_an_angle(chain: Chain) -> Chain:
    """What is worked out with a sine is no distance along the bone: d = 4.5 sin 70 is the arm, where d could be
    either.
    """
    name = alone(chain.sides[0])
    turned = any(
        isinstance(each, Call) and each.function in ("sin", "cos", "tan")
        for side in chain.sides[1:]
        for each in within(side)
    )
    if not turned or not isinstance(name, Name) or chain.sides[0] != name:
        return chain
    keys = tuple(key for key in name.keys if not key.endswith((".at", ".com", ".x", ".y", ".length")))
    return replace(chain, sides=(Name(keys, name.text), *chain.sides[1:])) if keys else chain


def claim(chain: Chain, name: Expr) -> Chain:
    """A chain that begins with another side."""
    return replace(
        chain,
        sides=(name, *chain.sides),
        relations=("=", *chain.relations),
        remarks=(None, *chain.remarks),
        leads=None,
        otherwise=(),
    )
