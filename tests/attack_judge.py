"""Which offered lines are true in the world of a problem: fifty digits, letters at their true values. Shares no code with the checker."""
from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from typing import Any, NamedTuple

from fifty_digits import NEAR, ODD, SI, Base, Worthless, balances, mp, over, rightly_rounded, shown_numbers, unit_size, worth
from true_values import SUMS, TrueValues

from explain.body import Body
from explain.claim import Arm, Balance, Between, Claim, Converted, Moment, Premise, Put, Rounded, Turning
from explain.equation import Equation, Letter, Quantity, Shown, Term, Terms, leaves, letters, lone
from explain.replace import settled
from explain.solve import Working

FINEST = -6                                       # a class that carries what is shown writes no finer angle
ENDLESS = 99
HERE = (mp.mpf(0), mp.mpf(0))
ALONE = (*Premise, Rounded)                       # what stands on no line before
UNTOLD = (LookupError, AttributeError, TypeError, StopIteration, ValueError, ArithmeticError)


class Known(NamedTuple):
    """What the letters are worth in kg, m, s and in the base of odd sizes."""

    si: dict[str, Any]
    odd: dict[str, Any]


class World:
    """One problem as it is: the worth of every letter by its definition, and of every ground by the free body."""

    def __init__(self, working: Working) -> None:
        self.body, self.course = working.body, working.body.problem.course
        self.as_shown = self.course.carry == "as shown"
        self.sense = self.course.sense if self.course.positive != "up" else _sense_told(working)
        self.true = (TrueValues(working, SI), TrueValues(working, ODD))
        for each in self.true:
            self._sums(each)
            self._arms(each)
        self._looked_at: dict[int, tuple[Shown, int]] = {}
        self.known = Known(self.true[0].letters(), self.true[1].letters())

    def _sums(self, true: TrueValues) -> None:
        """Sums vanish only of a body at rest, and only those that the problem has."""
        values, problem = true.values, self.body.problem
        gone = {name for name in (*SUMS, "total") if not problem.balanced}
        gone |= {"along", "across"} if not self.course.axes else set()
        gone |= {"*moment reaction"} if not problem.pivot.reaction else set()
        for name in gone:
            values.pop(name, None)
        if self.sense is None:
            return
        for force in self.body.forces:
            if force.size.name in values:
                values[f"*moment {force.name}"] = self.sense * true._turning(force, values, HERE)
        if not problem.balanced:
            values["total"] = self.sense * true.moments(values)

    def _arms(self, true: TrueValues) -> None:
        """An arm has a letter for each point it is measured from; that of the pivot says so by saying nothing."""
        for about in ("", *(each.name for each in self.body.forces if each.arm is None)):
            for force in self.body.forces:
                with suppress(*UNTOLD):
                    true.values[f"*arm {force.name}" + (f" *about {about}" if about else "")] = self._arm(true, force.name, about)

    def rounding(self, shown: Shown, least: int) -> str:
        """What is wrong with a rounded number where at least so many figures are wanted."""
        known = self._looked_at.get(id(shown))
        if known is None or known[0] is not shown:
            figures = -1 if not rightly_rounded(shown, self.course.ties) else figures_of(shown, self.as_shown)
            known = self._looked_at[id(shown)] = (shown, figures)
        return "wrongly rounded" if known[1] < 0 else "rounded too coarsely" if known[1] < least else ""

    # ------------------------------------------------------------------ what a claim says
    def meaning(self, claim: Claim) -> Mapping[str, tuple[Any, Any]]:
        """The letter that a claim defines, and its worth in both bases; nothing where the claim defines none."""
        try:
            match claim:
                case Between(name, first, second):
                    acute = self._twice(lambda true: self._acute(true, first, second) * mp.mpf(true.base.deg))
                    return {f"*fold {name}": acute, f"*inclination {name}": acute}
        except UNTOLD:
            pass
        return {}

    def _twice(self, ask: Any) -> tuple[Any, Any]:
        return ask(self.true[0]), ask(self.true[1])

    def _point(self, true: TrueValues, about: str) -> Any:
        if not about or about == "reaction" and self.body.problem.pivot.reaction:
            return HERE
        return true._walk(self.body.force(about).steps, true.values)

    def _arm(self, true: TrueValues, name: str, about: str) -> Any:
        force = self.body.force(name)
        unit = {**true.values, force.size.name: mp.mpf(1)}
        return abs(true._turning(force, unit, self._point(true, about))) / force.count

    def _acute(self, true: TrueValues, first: Any, second: Any) -> Any:
        apart = (true._turn(first, true.values) - true._turn(second, true.values)) % 180
        return min(apart, 180 - apart)

    def ground_holds(self, line: Equation, claim: Claim) -> bool:
        """Whether the sense, the point, the axis and the forces that a ground names are so, whatever the line says."""
        try:
            match claim:
                case Arm(name, sense, about):
                    return sense in (1, -1) and sense * self._turns(name, about) >= 0
                case Turning(name, sense):
                    return sense in (1, -1) and sense * self._turns(name, "") >= 0
                case Moment(_, sense):
                    return sense in (1, -1) and self.sense in (None, sense)
                case Balance():
                    return self._balanced(line, claim)
        except UNTOLD:
            return False
        return True

    def _turns(self, name: str, about: str) -> int:
        true, force = self.true[0], self.body.force(name)
        turning = true._turning(force, {**true.values, force.size.name: mp.mpf(1)}, self._point(true, about))
        return 0 if abs(turning) < NEAR else int(mp.sign(turning))

    def _balanced(self, line: Equation, claim: Balance) -> bool:
        """Every force with just what it adds, term by term, counted in the class's sense."""
        if claim.sense not in (1, -1) or claim.axis is None and self.sense not in (None, claim.sense):
            return False
        written: dict[str, list[Term]] = {}
        for each in line.right if claim.total else line.left:
            written.setdefault(each.source, []).append(each)
        for name in {*written, *(each.name for each in (*self.body.forces, *self.body.twists)), "reaction"}:
            found = worth(tuple(written.get(name, ())), self.known.si)
            added = claim.sense * self._adds(name, claim)
            if abs(found - added) > NEAR * max(1, abs(added)):
                return False
        return True

    def _adds(self, name: str, claim: Balance) -> Any:
        true = self.true[0]
        right, up = true.values.get("reaction.right", mp.mpf(0)), true.values.get("reaction.up", mp.mpf(0))
        if claim.axis is not None:
            axis = true._unit(claim.axis, true.values)
            push = (right, up) if name == "reaction" else HERE if self._twist(name) else true._push(self.body.force(name), true.values)
            return push[0] * axis[0] + push[1] * axis[1]
        x, y = self._point(true, claim.about)
        if name == "reaction":
            return y * right - x * up
        twist = self._twist(name)
        if twist is not None:
            return twist.turns * true.values[twist.size.name]
        return true._turning(self.body.force(name), true.values, (x, y))

    def _twist(self, name: str) -> Any:
        return next((each for each in self.body.twists if each.name == name), None)


def _sense_told(working: Working) -> int | None:
    """Where "up" is positive: the sense that the working itself declares."""
    for move in working.moves:
        match move.line.claim:
            case Balance(axis=None, sense=sense) | Moment(sense=sense):
                return sense
    return None


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
            si, odd = dict(self.world.known.si), dict(self.world.known.odd)
            si |= {name: two[0] for name, two in self.meanings.items()}
            odd |= {name: two[1] for name, two in self.meanings.items()}
            self._now = Known(si, odd)
        new = {name: two for name, two in self.world.meaning(claim).items() if name not in self.meanings}
        if not new:
            return self._now
        return Known({**self._now.si, **{name: two[0] for name, two in new.items()}}, {**self._now.odd, **{name: two[1] for name, two in new.items()}})

    def fault(self, line: Equation, claim: Claim, before: tuple[Equation, str] | None) -> str:
        """What is false about a line, in a word; empty where it is true. `before` is the line before and the letter sought there."""
        known = self._letters(claim)
        before = None if isinstance(claim, ALONE) else before
        if self.world.as_shown and (before is not None or isinstance(claim, Rounded | Converted)):
            known = self._carried_twice(known, before)
        if not _lettered(line, self.world.body):
            return "a letter that is not the problem's"
        known = _with_any(known, line)
        if not (balances(line, known.si) and balances(line, known.odd, ODD)):
            return self._apart(line, known.si, claim)
        least = self.world.course.figures if isinstance(claim, Rounded) else self.world.course.working_figures
        return next(filter(None, (self.world.rounding(shown, least) for shown in shown_numbers(line))), "")

    def _apart(self, line: Equation, values: Mapping[str, Any], claim: Claim) -> str:
        """In a word, how far two sides are from equal: numbers as shown that are put back differ by what rounding leaves."""
        if self.world.as_shown and isinstance(claim, Put):
            both = [worth((each,), values) for each in (*line.left, *(each.flipped() for each in line.right))]
            largest = max((abs(each) for each in both), default=mp.mpf(0))
            if abs(mp.fsum(both)) <= largest * mp.mpf(10) ** (2 - self.world.course.working_figures):
                return "not equal, by what rounding leaves"
        return "not equal"

    def _carried_twice(self, known: Known, before: tuple[Equation, str] | None) -> Known:
        key = None if before is None else (id(before[0]), before[1])
        if known is not self._now:                # a ground that defines a letter of its own
            return Known(*(self._carried(values, base, before) for values, base in zip(known, (SI, ODD), strict=True)))
        if key not in self._after:                # the line is kept with it, so that no other has its place in memory
            self._after[key] = before, Known(*(self._carried(values, base, before) for values, base in zip(known, (SI, ODD), strict=True)))
        return self._after[key][1]

    def _carried(self, values: Mapping[str, Any], base: Base, before: tuple[Equation, str] | None) -> dict[str, Any]:
        """For a class that carries what is shown: numbers as shown, and the letter that is sought by the line before."""
        out = dict(values)
        told = {name: terms for name, terms in self.told.items() if before is None or name != before[1]}
        _tell(out, told, base)
        if before is None or before[1] not in out or before[1] not in letters(before[0].left) | letters(before[0].right):
            return out
        first, sought = Equation(settled(before[0].left), settled(before[0].right)), before[1]
        shares = {name: terms for name, terms in told.items() if letters(terms)}

        def rest(value: Any) -> Any:
            out[sought] = value
            _tell(out, shares, base)
            return worth(first.left, out, base) - worth(first.right, out, base)
        start = out[sought]
        step = abs(start) / 10**6 or mp.mpf(1)
        rest(mp.findroot(rest, (start, start + step), tol=mp.mpf(10) ** -60, maxsteps=30, verify=False))
        return out


def _plain(terms: Terms) -> bool:
    """Whether a sum is one written number, or nothing."""
    return not terms or len(terms) == 1 and len(terms[0].factors) == 1 and isinstance(terms[0].factors[0], Quantity | Shown)


def _tell(values: dict[str, Any], told: Mapping[str, Terms], base: Base) -> None:
    for _ in range(2):                            # a share of a share needs a second look
        for name, terms in told.items():
            values[name] = worth(terms, values, base)


def _lettered(line: Equation, body: Body) -> bool:
    """Whether every letter is written as this problem writes it."""
    known = body.letters.known
    return all(not isinstance(leaf, Letter) or leaf.name in known and known[leaf.name].text == leaf.text
               for leaf in (*leaves(line.left), *leaves(line.right)))


def _with_any(known: Known, line: Equation) -> Known:
    """A letter that has no worth in this world has any."""
    wanting = sorted((letters(line.left) | letters(line.right)) - known.si.keys())
    if not wanting:
        return known
    trial = {name: mp.mpf(f"{1.37 + place * 0.7193:.5f}") * mp.mpf("1.000000000000000000000123") for place, name in enumerate(wanting)}
    return Known({**known.si, **trial}, {**known.odd, **{name: value * mp.mpf("1.61803") for name, value in trial.items()}})


def figures_of(shown: Shown, as_shown: bool) -> int:
    """How many figures a rounded number has; any number of them where it is just the value, none where it is 0 and the value is not."""
    number, unit = shown.value.number, shown.value.unit
    try:
        exact = over(worth((shown.of,), {}), unit_size(unit)) == mp.mpf(str(number))
    except Worthless:
        return 0
    if exact or as_shown and unit == (("deg", 1),) and number.as_tuple().exponent == FINEST:
        return ENDLESS
    return len(number.as_tuple().digits) if number else 0
