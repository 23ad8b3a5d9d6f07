"""A working as text with what each line states, and what is true of an account: which line is the first untrue one.
Knows no style.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from math import cos, radians, sin

from explain.marking.slips.account import Account, Impossible, Turned


@dataclass(frozen=True, slots=True)
class Claim:
    """A value stated for a key, in SI; `scale`: what a gap is compared with where the value itself may be small;
    `size`: the sign is not stated.
    """

    key: str
    value: float
    scale: float = 0.0
    size: bool = False


@dataclass(frozen=True, slots=True)
class Side:
    text: str
    claims: tuple[Claim, ...] = ()


@dataclass(slots=True)
class Statement:
    """An equation, chain or words before layout. `group`: what may stand on one line with others."""

    sides: list[Side]
    group: str = ""
    remark: str = ""
    kind: str = "equation"  # equation, words, heading, replaced


@dataclass(frozen=True, slots=True)
class Line:
    text: str
    claims: tuple[Claim, ...] = ()


@dataclass(frozen=True, slots=True)
class Working:
    """What a student hands in. `answers` are what it states at its end, by key."""

    lines: tuple[Line, ...]

    @property
    def text(self) -> str:
        return "\n".join(each.text for each in self.lines) + "\n"

    @property
    def keys(self) -> frozenset[str]:
        return frozenset(claim.key for line in self.lines for claim in line.claims)


@dataclass(slots=True)
class Truth:
    """What an account makes of every key, those of terms and totals too, with the unknown at its true root where a
    term needs it.
    """

    account: Account
    known: dict[str, float] = field(default_factory=dict)
    with_root: dict[str, float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.known = self.account.values()
        unknown = self.account.unknowns[0] if self.account.unknowns else ""
        fixed = {unknown: self.account.roots[unknown]} if unknown else {}
        self.with_root = replace(self.account, fixed=fixed).values()

    def moved(self, at: float) -> float:
        """The sum of the moments with the unknown at a value."""
        values = replace(self.account, reaction=False, fixed={self.account.unknowns[0]: at}).values()
        return sum(values[f"*moment {each.name}"] * each.in_moments for each in self.account.items)

    def of(self, key: str) -> float | None:
        what, _, name = key.partition(" ")
        if what == "term":
            return sum(
                self.with_root[f"*moment {each.name}"] * each.in_moments
                for each in self.account.items
                if each.name == name
            )
        if what == "side":
            value = self.of(f"term {name}") or 0.0
            return float((value > 1e-12) - (value < -1e-12))
        if what == "coefficient":
            return self.moved(1.0) - self.moved(0.0)
        if what == "heading":
            at = radians(self.known.get("*direction reaction", 0.0))
            return 1.0 if (cos(at) if name == "right" else sin(at)) > 0 else -1.0
        if what == "extra":
            return self.account.extra(self.known) if self.account.extra else 0.0
        if what == "ratio":
            function, _, angle = name.partition(" ")
            return Turned(1, function, self.known[angle]).value({})
        if what == "function":
            function, _, angle = name.partition(" ")
            return Turned(1, function, float(angle)).value({}, self.account.mode)
        if what == "push":
            side, _, item = name.partition(" ")
            return sum(
                self.known.get(f"*{side} {item}", 0.0) * each.in_forces
                for each in self.account.items
                if each.name == item
            )
        if what == "total":
            return -sum(
                self.with_root[f"*moment {each.name}"] * each.in_moments
                for each in self.account.items
                if not _moving(each, self.account)
            )
        return self.known.get(key)


def _moving(item: object, account: Account) -> bool:
    """Whether the term of an item has the unknown in it."""
    unknown = account.unknowns[0] if account.unknowns else ""
    return unknown in (
        item.key,
        item.mass,
        item.arm,
        item.multiple[1],
        *(leg.key for leg in item.legs),  # type: ignore[attr-defined]
        *(name for leg in item.legs for name, _ in leg.turned.unknown),
    )  # type: ignore[attr-defined]


moving = _moving


def gap(claim: Claim, truth: Truth) -> float:
    """How far a claim is from an account, as a share."""
    exact = truth.of(claim.key)
    if exact is None:
        return 0.0
    value = claim.value
    if claim.size:
        exact, value = abs(exact), abs(value)
    scale = max(claim.scale, abs(exact), 1e-12) if claim.scale else max(abs(exact), abs(value), 1e-12)
    return abs(value - exact) / scale


def noise(working: Working, truth: Truth) -> dict[str, float]:
    """How far rounding alone takes each key in a right working."""
    out: dict[str, float] = {}
    for line in working.lines:
        for claim in line.claims:
            out[claim.key] = max(out.get(claim.key, 0.0), gap(claim, truth))
    return out


def stated(line: Line) -> tuple[Claim, ...]:
    """What a line states. A moment on a line of its own may have either sign, since that is the student's to choose."""
    free = not balances(line)
    return tuple(
        replace(each, size=each.size or free and each.key.startswith(("*moment ", "term "))) for each in line.claims
    )


def balances(line: Line) -> bool:
    """Whether a line adds moments up."""
    return any(claim.key in ("extra", "total") or claim.key.startswith("coefficient") for claim in line.claims)


def first_untrue(
    working: Working, truth: Truth, spread: Mapping[str, float], counts: Callable[[Line], bool] = lambda line: True
) -> int | None:
    """The number of the first line that is plainly untrue of an account; None where there is none, or where one before
    it is in doubt.

    Lines that `counts` leaves out can be true as they are typed.
    """
    for number, line in enumerate(working.lines, 1):
        worst = 0.0
        for claim in stated(line) if counts(line) else ():
            allowed = max(spread.get(claim.key, 0.01), 0.002)
            far = gap(claim, truth)
            if far > 3 * allowed + 0.025:
                worst = 2.0
            elif far > 1.5 * allowed + 0.008:
                worst = max(worst, 1.0)
        if worst == 2.0:
            return number
        if worst == 1.0:
            return None
    return None


__all__ = (
    "Claim",
    "balances",
    "Impossible",
    "Line",
    "Side",
    "Statement",
    "Truth",
    "Working",
    "first_untrue",
    "gap",
    "moving",
    "noise",
    "stated",
)
