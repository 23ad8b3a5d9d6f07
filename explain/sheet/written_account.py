"""An account as the lines of a page: what each step says, in letters and numbers, whether or not a slip is in it.

Knows how a working is set out; not which slips there are, nor what is true.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import Decimal
from fractions import Fraction

from ..document.passage import Row
from ..equation.terms import DEGREE, Factor, Group, Inverse, Letter, Power, Quantity, Quotient, Root, Term, Terms, Trig
from ..equation.terms import Unit, term
from ..exact.interval import to_figures
from ..exact.prime_field import scale
from ..marking.slips.account import Account, Item, Leg, Turned
from ..marking.slips.account_steps import acute, divide
from ..solve.outcome import Outcome

_KINDS = {"mass": "mass", "weight": "force", "force": "force"}


class Unwritten(Exception):
    """A working of this kind is not set out here."""


class Writer:
    """Writes one account of one problem with the letters, units and figures of its class."""

    def __init__(self, outcome: Outcome, account: Account, true: Account) -> None:
        self.outcome, self.account, self.true = outcome, account, true
        self.body, self.course = outcome.body, outcome.body.problem.course
        self.values: Mapping[str, float] = account.values()
        self.units: Mapping[str, Unit] = {
            "length": ((self.body.length_unit, 1),),
            "force": ((self.body.force_unit, 1),),
            "mass": ((self.body.mass_unit, 1),),
            "moment": ((self.body.force_unit, 1), (self.body.length_unit, 1)),
            "number": (),
        }
        self.unknown = _one_pull(account)

    def rows(self) -> tuple[Row, ...]:
        """The lines in order: weights, arms, the balance of moments, the unknown, the joint force. Raises Unwritten."""
        return tuple((*self._shares(), *self._weights(), *self._arms(), *self._balance(), *self._joint()))

    # ------------------------------------------------------------------ numbers
    def _number(self, value: float, kind: str) -> Quantity:
        """The size of a value in the class's unit, to the figures of the working."""
        unit = self.units[kind]
        size = abs(value) / float(scale(unit)) if unit else abs(value)
        figures = self.course.working_figures
        shown = to_figures(Fraction(f"{size:.14g}"), figures, self.course.ties) if size > 1e-12 else Decimal(0)
        shown = shown.normalize()
        return Quantity(shown if shown.as_tuple().exponent <= 0 else Decimal(f"{shown:f}"), unit)  # type: ignore[operator]

    def _term(self, value: float, kind: str) -> Terms:
        found = self._number(value, kind)
        return (Term(-1 if value < 0 and found.number else 1, (found,)),)

    def _datum(self, key: str, kind: str) -> Quantity:
        """A given value as it was written where it is in the class's unit, else worked out in it."""
        written = self.account.written.get(key)
        same = abs(self.values[key] - self.true.data.get(key, self.values[key] + 1)) < 1e-12
        if written and same and self.units[kind] == ((written[1], 1),):
            return Quantity(abs(Decimal(written[0])), self.units[kind])
        return self._number(self.values[key], kind)

    def _letter(self, key: str) -> Letter:
        return self.body.letters(key)

    # ------------------------------------------------------------------ weights
    def _shares(self) -> Iterator[Row]:
        for share in self.account.shares:
            kind = _KINDS.get(share.key.rpartition(".")[2], "length")
            product = term(self._number(self.values[share.part], "number"), self._datum(share.whole, kind))
            right: list[tuple[str, Terms]] = [] if share.times != 1.0 else [("=", (product,))]
            yield self._found(share.key, right, self.values[share.key], kind)

    def _weights(self) -> Iterator[Row]:
        for item in self.account.items:
            if not item.mass or item.key == self.unknown.key or item.mass not in self.values:
                continue
            if not item.powers:  # a mass goes into the balance as it is
                continue
            right: list[tuple[str, Terms]] = []
            if item.powers in (1, 2) and item.scale == 1.0 and self.body.force_unit == "N":
                g = (self.course.g,) * item.powers
                right = [("=", (term(self._datum(item.mass, "mass"), *g),))]
            yield self._found(item.key, right, self.values[item.key], "force")

    def _found(self, key: str, right: list[tuple[str, Terms]], value: float, kind: str) -> Row:
        found = self._term(value, kind)
        if right and right[-1][1] == found:  # one number that is the value already
            right = []
        return Row((term(self._letter(key)),), (*right, ("≈" if right else "=", found)))

    # ------------------------------------------------------------------ arms
    def _arms(self) -> Iterator[Row]:
        for item in self.account.items:
            if item.kind == "couple" or item.arm or not item.in_moments:
                continue
            if len(item.legs) < 2 and not any(leg.turned.function for leg in item.legs):
                continue
            value = self.values[f"*arm {item.name}"]
            right: list[tuple[str, Terms]] = [("=", tuple(map(self._leg, item.legs)))] if item.legs else []
            yield self._found(f"*arm {item.name}", right, value, "length")

    def _leg(self, leg: Leg) -> Term:
        value, turned = self.values[leg.key] * leg.times, leg.turned
        distance = self._datum(leg.key, "length") if leg.times == 1.0 else self._number(value, "length")
        sign = -turned.sign if value < 0 else turned.sign
        if not turned.function:
            return Term(sign, (distance,))
        wave = self._wave(turned)
        if turned.over:
            return Term(sign, (Quotient((term(distance),), (term(wave),)),))
        return Term(sign, (distance, wave))

    def _wave(self, turned: Turned) -> Trig:
        if turned.unknown:
            raise Unwritten
        return Trig(turned.function, Quantity(Decimal(f"{turned.degrees:.6f}").normalize() + 0, DEGREE))

    # ------------------------------------------------------------------ moments
    def _balance(self) -> Iterator[Row]:
        if self.account.extra is not None:
            raise Unwritten
        items = [each for each in self.account.items if each.in_moments]
        signed = [(each, self._sense(each)) for each in items]
        first = next((sign for each, sign in signed if each is self.unknown), 0)
        if not first:
            raise Unwritten
        yield Row(tuple(Term(sign, self._moment(each)) for each, sign in signed), (("=", ()),))
        by = self._arm(self.unknown)
        letter, value = (term(self._letter(self.unknown.key)),), self.values[self.unknown.key]
        plain = self.account.finish is divide and not self.account.solves and self.unknown.joined == "times"
        if not plain:
            yield Row(letter, (("=", self._term(value, "force")),))
            return
        others = tuple(Term(-first * sign, self._moment(each)) for each, sign in signed if each is not self.unknown)
        if not others:
            raise Unwritten
        times = (Quantity(Decimal(self.unknown.count)),) if self.unknown.count > 1 else ()
        whole = Quotient(others, (term(*times, by),))
        yield Row(letter, (("=", (term(whole),)), ("≈", self._term(value, "force"))))

    def _sense(self, item: Item) -> int:
        """The sign of its term as the class counts."""
        arm = self.values.get(f"*arm {item.name}", 1.0)
        return (1 if item.turns * item.in_moments * arm > 0 else -1) * self.course.sense

    def _arm(self, item: Item) -> Quantity:
        if item.arm and item.arm in self.account.written:
            return self._datum(item.arm, "length")
        if len(item.legs) == 1 and not item.legs[0].turned.function and item.legs[0].times == 1.0:
            return self._datum(item.legs[0].key, "length")
        return self._number(self.values[f"*arm {item.name}"], "length")

    def _size(self, item: Item) -> tuple[Factor, ...]:
        times = (Quantity(Decimal(item.count)),) if item.count > 1 else ()
        if item is self.unknown:
            return (*times, self._letter(item.key))
        if item.multiple[0]:
            raise Unwritten
        if item.mass and not item.powers:
            return (*times, self._datum(item.mass, "mass"))
        known = item.key in self.account.written and item.scale == 1.0
        return (*times, self._datum(item.key, "force") if known else self._number(self.values[item.key], "force"))

    def _moment(self, item: Item) -> tuple[Factor, ...]:
        often = (self._number(item.in_moments, "number"),) if abs(item.in_moments) != 1.0 else ()
        if item.kind == "couple":
            return (*often, self._number(self.values[item.key], "moment"))
        size, arm = self._size(item), self._arm(item)
        match item.joined:
            case "over":
                return (*often, Quotient((term(*size),), (term(arm),)))
            case "plus":
                return (*often, Group((term(*size), term(arm))))
        return (*often, *size, arm)

    # ------------------------------------------------------------------ the joint force
    def _joint(self) -> Iterator[Row]:
        if not self.outcome.joint_asked or "reaction.up" not in self.values or self.account.bone is not None:
            return
        parts = [("level", "reaction.right"), ("upright", "reaction.up")]
        for side, key in parts:
            pushes = [] if self.account.joint is not None else list(self._pushes(side))
            if not pushes and abs(self.values[key]) < 1e-9:
                continue
            right: list[tuple[str, Terms]] = [("=", tuple(pushes))] if pushes else []
            yield self._found(key, right, self.values[key], "force")
        across, up = self.values["reaction.right"], self.values["reaction.up"]
        if abs(across) < 1e-9 or "reaction" not in self.values or "reaction" not in self.outcome.answers:
            return
        squares = tuple(term(Power(self._number(each, "force"), 2)) for each in (across, up))
        plain = abs(self.values["reaction"] - (across**2 + up**2) ** 0.5) < 1e-9 * abs(self.values["reaction"])
        root: list[tuple[str, Terms]] = [("=", (term(Root(squares)),))] if plain else []
        yield self._found("reaction", root, self.values["reaction"], "force")
        if abs(self.values["*angle reaction"] - acute(across, up)) > 1e-9:
            ratio: tuple[Terms, Terms] = (self._term(abs(across), "force"), self._term(abs(up), "force"))
        else:
            ratio = (self._term(abs(up), "force"), self._term(abs(across), "force"))
        angle = Inverse("tan", (term(Quotient(*ratio)),))
        degrees = to_figures(Fraction(f"{self.values['*angle reaction']:.12g}"), self.course.figures, self.course.ties)
        found: tuple[tuple[str, Terms], ...] = (("=", (term(angle),)), ("≈", (term(Quantity(degrees, DEGREE)),)))
        yield Row((term(self._letter("*angle reaction")),), found)

    def _pushes(self, side: str) -> Iterator[Term]:
        for item in self.account.items:
            turned = item.level if side == "level" else item.upright
            if item.kind == "couple" or turned is None or not turned.sign or not item.in_forces:
                continue
            times: tuple[Factor, ...] = (Quantity(Decimal(item.count)),) if item.count > 1 else ()
            often = (self._number(item.in_forces, "number"),) if abs(item.in_forces) != 1.0 else ()
            size = self._number(self.values[item.key], "force")
            sign = -turned.sign * (1 if item.in_forces > 0 else -1) * (1 if self.values[item.key] >= 0 else -1)
            yield Term(sign, (*often, *times, size, *([self._wave(turned)] if turned.function else [])))


def _one_pull(account: Account) -> Item:
    """The one force that the balance of moments is to give. Raises Unwritten where it gives anything else."""
    if len(account.stages) != 1 or not account.stages[0][0].startswith("moments"):
        raise Unwritten
    found = next((each for each in account.items if each.key == account.stages[0][1]), None)
    if found is None or found.kind == "couple" or any(each.multiple[0] for each in account.items):
        raise Unwritten
    return found
