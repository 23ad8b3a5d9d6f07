"""Which offered lines are true: each letter at its true value, to fifty digits. Shares no code with the checker."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from attack_world import Known, World
from fifty_digits import ODD, SI, Base, balances, mp, shown_numbers, worth

from explain.mechanics.body import Body
from explain.check.claim import Claim, Converted, Divided, Premise, Put, Rounded
from explain.equation.terms import Equation, Letter, Quantity, Quotient, Shown, Term, Terms, leaves, letters, lone
from explain.equation.terms import settled

ODD_SIZE = mp.sqrt(mp.mpf(7) / 3)  # no line comes to be true by this number
ALONE = (*Premise, Rounded)  # what stands on no line before


class Standing:
    """What has been said so far on one board: the letters that lines defined, and the numbers a class goes on with."""

    def __init__(self, world: World) -> None:
        self.world = world
        self.meanings: dict[str, tuple[Any, Any]] = {}
        self.told: dict[str, Terms] = {each.letter.name: (Term(1, (each.value,)),) for each in world.body.givens}
        self._now: Known | None = None
        self._after: dict[Any, tuple[Any, Known]] = {}

    def take(self, line: Equation, claim: Claim) -> None:
        """Take in a line that was certified and is true."""
        self._now = None
        self._after.clear()
        letter = lone(line.left)
        if not isinstance(letter, Letter) or line.rounded:
            return
        if letter.name not in self.meanings:
            self.meanings |= {name: two for name, two in self.world.meaning(claim).items() if name == letter.name}
        if isinstance(claim, Converted) or letter.name not in self.told or not _plain(self.told[letter.name]):
            self.told[letter.name] = settled(line.right) if self.world.as_shown else line.right

    def _letters(self, claim: Claim) -> Known:
        """The worth of every letter; one that no line defined so far means what this claim makes of it."""
        if self._now is None:
            self._now = self.world.known.with_(self.meanings)
        new = {name: two for name, two in self.world.meaning(claim).items() if name not in self.meanings}
        if not new:
            return self._now
        return self._now.with_(new)

    def fault(self, line: Equation, claim: Claim, before: tuple[Equation, str] | None) -> str:
        """What is false about a line, in a word; empty where it is true. `before` is a line and its sought letter."""
        known = exact = self._letters(claim)
        before = None if isinstance(claim, ALONE) else before
        if self.world.as_shown and (before is not None or isinstance(claim, Rounded | Converted)):
            put = claim.names if isinstance(claim, Put) else ()
            known = self._carried_twice(known, before, put)
        if not _lettered(line, self.world.body):
            return "a letter that is not the problem's"
        if self.world.as_shown and _in_letters(line) and _true(line, _with_any(exact, line)):
            return ""  # no number stands in it: what it says is said of the problem, not of what was shown
        known = _with_any(known, line)
        if self.world.as_shown and isinstance(claim, Divided) and before is not None:
            return "" if _side_by_side(line, before[0], claim.by, known) else "not one line over the other"
        if not _true(line, known):
            return self._apart(line, known.si, claim)
        least = self.world.course.figures if isinstance(claim, Rounded) else self.world.course.working_figures
        return next(filter(None, (self.world.rounding(shown, least) for shown in shown_numbers(line))), "")

    def _apart(self, line: Equation, values: Mapping[str, Any], claim: Claim) -> str:
        """How far two sides are from equal: numbers as shown that are put back differ by what rounding leaves."""
        if self.world.as_shown and isinstance(claim, Put):
            both = [worth((each,), values) for each in (*line.left, *(each.flipped() for each in line.right))]
            largest = max((abs(each) for each in both), default=mp.mpf(0))
            if abs(mp.fsum(both)) <= largest * mp.mpf(10) ** (2 - self.world.course.working_figures):
                return "not equal, by what rounding leaves"
        return "not equal"

    def _carried_twice(self, known: Known, before: tuple[Equation, str] | None, put: tuple[str, ...]) -> Known:
        key = None if before is None else (id(before[0]), before[1], put)
        if known is self._now and key in self._after:
            return self._after[key][1]
        both = Known(self._carried(known.si, SI, before, put), self._carried(known.odd, ODD, before, put))
        if known is self._now:  # else a ground defines a letter of its own
            self._after[key] = before, both  # the line is kept with it, so that no other takes its place in memory
        return both

    def _carried(
        self, values: Mapping[str, Any], base: Base, before: tuple[Equation, str] | None, put: tuple[str, ...]
    ) -> dict[str, Any]:
        """For a class that carries what is shown: numbers as shown, and the sought letter by the line before;
        where that has no such letter, or its value is put in, another of its letters.
        """
        out = dict(values)
        here = out.keys() & (letters(before[0].left) | letters(before[0].right)) if before else set()
        stay = here - set(put)
        sought = before[1] if before and (before[1] in stay or not stay) else min(stay, default="")
        told = {name: terms for name, terms in self.told.items() if name != sought}
        _tell(out, told, base)
        if before is None or sought not in here:
            return out
        first = Equation(settled(before[0].left), settled(before[0].right))
        shares = {name: terms for name, terms in told.items() if letters(terms)}

        def rest(value: Any) -> Any:
            out[sought] = value
            _tell(out, shares, base)
            return worth(first.left, out, base) - worth(first.right, out, base)

        start = out[sought]
        step = abs(start) / 10**6 or mp.mpf(1)
        rest(mp.findroot(rest, (start, start + step), tol=mp.mpf(10) ** -60, maxsteps=30, verify=False))
        return out


def _in_letters(line: Equation) -> bool:
    """Whether a line is of letters alone, each side with one."""
    return all(side and all(isinstance(each, Letter) for each in leaves(side)) for side in (line.left, line.right))


def _true(line: Equation, known: Known) -> bool:
    return balances(line, known.si) and balances(line, known.odd, ODD)


def _side_by_side(line: Equation, top: Equation, bottom: Equation, known: Known) -> bool:
    """For a class that carries what is shown, where each line has numbers of its own: whether each side is one over the
    other.

    Where the right side is nothing, the left one is as good as nothing.
    """
    if not line.right and not top.right:
        return abs(worth(line.left, known.si)) < mp.mpf("0.01") and worth(settled(bottom.right), known.si) != 0
    over = [
        (Term(1, (Quotient(*each),)),)
        for each in ((top.left, bottom.left), (settled(top.right), settled(bottom.right)))
    ]
    pairs = [Equation(line.left, over[0]), Equation(line.right, over[1])]
    return all(balances(each, known.si) and balances(each, known.odd, ODD) for each in pairs)


def _plain(terms: Terms) -> bool:
    """Whether a sum is one written number, or nothing."""
    factors = [factor for each in terms for factor in each.factors]
    return not terms or len(terms) == len(factors) == 1 and isinstance(factors[0], Quantity | Shown)


def _tell(values: dict[str, Any], told: Mapping[str, Terms], base: Base) -> None:
    for _ in range(2):  # a share of a share needs a second look
        for name, terms in told.items():
            values[name] = worth(terms, values, base)


def _lettered(line: Equation, body: Body) -> bool:
    """Whether every letter is written as this problem writes it."""
    known = body.letters.known
    return all(
        not isinstance(leaf, Letter) or leaf.name in known and known[leaf.name].text == leaf.text
        for leaf in (*leaves(line.left), *leaves(line.right))
    )


def _with_any(known: Known, line: Equation) -> Known:
    """A letter that has no worth in this world has any."""
    wanting = sorted((letters(line.left) | letters(line.right)) - known.si.keys())
    if not wanting:
        return known
    return known.with_({name: (ODD_SIZE + place, ODD_SIZE * (2 + place)) for place, name in enumerate(wanting)})
