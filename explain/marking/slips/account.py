"""The numbers of a working from the masses to the joint force, in floats, so laid out that a slip can change any step.
Knows no wording, proves nothing.

Values are in kg, m, s, N; angles in degrees. `Account.values` gives every quantity by the key of its letter. Beside the
letters' own keys there are
"*arm X" (perpendicular distance), "*moment X" (counter-clockwise positive), "*turning X" (the part of X that turns, by
its size), "*level X" and
"*upright X" (parts of X, right and up positive), "*alone X" (what X alone asks of the one unknown pull),
"reaction.right", "reaction.up", "reaction"
(size), "*angle reaction" (acute, to the level or to the bone that the parts lie along), "*direction reaction" (from
right, counter-clockwise, -180 to
180) and "total" (moments of all that is known, without the unknown pull).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from math import cos, hypot, radians, sin

from .account_steps import acute, angle_of_arrow, divide, from_right, nearest_root
from .superposition import alone
from .account_items import Impossible, Item, Leg, Share, Turned, Values
from ...exact.linear import solved

__all__ = (
    "Account",
    "Finish",
    "Impossible",
    "Item",
    "Leg",
    "Pair",
    "Share",
    "Spoilt",
    "Turned",
    "Values",
    "Written",
)
Finish = Callable[
    [list[float], float], float
]  # the known terms on the other side, and what the unknown is multiplied by
Pair = tuple[float, float]
BOTH = "level and upright"
Moved = tuple[Sequence[Item], Sequence[Share]]
Written = tuple[str, str]  # a datum as the problem has it: its number and its unit


@dataclass(frozen=True, slots=True)
class Account:
    """A whole working. `data` holds what is given, in SI by key, g too. `stages` say which balance gives which unknown,
    in order; BOTH an angle, whatever
    the size of its force, which comes next.

    `mode` is what the calculator takes an angle for. `finish`, `joint`, `resultant`, `angle` and `heading` are steps
    that a slip may put another way:
    solving for an unknown force, the two parts of the joint force from the sums of the other forces, its size, its
    acute angle, its direction.
    `solves` is a `finish` for one unknown alone. `fixed` are values that stand whatever the steps before would give: a
    student's own.
    `extra` is a further moment (N m) in the balance. What slips look at: `written`, each datum as given; `rows`, by the
    key of a share, what other
    rows of the class's table have in its place; `length`, the class's unit of length in m; `lies`, the direction of the
    first segment in degrees.
    """

    data: Mapping[str, float]
    shares: tuple[Share, ...]
    items: tuple[Item, ...]
    stages: tuple[tuple[str, str], ...]
    roots: Mapping[str, float]  # the true value of every unknown angle, and of each unknown distance and mass
    bone: float | None = None  # degrees: the segment that the parts of the joint force lie along
    reaction: bool = True
    mode: str = "deg"
    finish: Finish = divide
    joint: Callable[[Account, Values], Pair] | None = None
    resultant: Callable[[float, float], float] = hypot
    angle: Callable[[float, float], float] = acute
    extra: Callable[[Values], float] | None = None
    fixed: Mapping[str, float] = field(default_factory=dict)
    heading: Callable[[float, float], float] = from_right
    solves: Mapping[str, Finish] = field(default_factory=dict)
    written: Mapping[str, Written] = field(default_factory=dict)
    rows: Mapping[str, tuple[float, ...]] = field(default_factory=dict)
    length: float = 1.0
    lies: float | None = None
    slips: int = 0  # the sign with which friction times the one part of the push at the pivot is the other part
    grounded: bool = True  # whether that is the level part
    surface: float = 0.0  # degrees
    rubs: bool = False  # whether the friction that is needed is sought

    def with_item(self, name: str, **changes: object) -> Account:
        """The same account with one item changed."""
        items = (replace(each, **changes) if each.name == name else each for each in self.items)  # type: ignore[arg-type]
        return replace(self, items=tuple(items))

    def without(self, name: str) -> Account:
        return replace(self, items=tuple(each for each in self.items if each.name != name))

    def with_data(self, **changes: float) -> Account:
        return replace(self, data={**self.data, **changes})

    def item(self, name: str) -> Item:
        return next(each for each in self.items if each.name == name)

    @property
    def unknowns(self) -> tuple[str, ...]:
        return tuple(key for _, key in self.stages)

    @property
    def pulls(self) -> tuple[Item, ...]:
        """The items whose size is an unknown of the moment balance."""
        return tuple(each for each in self.items if each.key in self.unknowns)

    def values(self) -> Values:
        """Every quantity by key. Raises Impossible."""
        try:
            return self._values()
        except (ZeroDivisionError, OverflowError, ValueError, KeyError, IndexError) as error:
            raise Impossible(str(error)) from error

    def _values(self) -> Values:
        out: Values = {**self.data, **self.fixed}
        sought = self.unknowns
        for key in sought:
            out.setdefault(key, 1.0)  # until its own balance
        self._sizes((self.items, self.shares), out, sought)
        for place, (balance, unknown) in enumerate(self.stages):
            if place + 1 < len(self.stages) and self._together(place, out):
                break
            if unknown not in self.fixed:
                moved = self._moved_by(unknown)
                out[unknown] = self._settle(balance, unknown, moved, out)
                self._sizes(moved, out, sought)
        out["*weights"] = sum(out[each.key] * each.count for each in self.items if each.kind in ("weight", "load"))
        out["total"] = sum(
            out[f"*moment {each.name}"] * each.in_moments
            for each in self.items
            if not {each.key, each.multiple[1]} & {*sought}
        )
        if len(self.pulls) == 1:
            out.update(alone(self.items, self.pulls[0], out, self.fixed))
            self._sizes((self.pulls, ()), out, sought)
        self._reaction(out)
        return out

    def _keep(self, out: Values, key: str, value: float) -> float:
        out[key] = value = self.fixed.get(key, value)
        return value

    def _moved_by(self, unknown: str) -> Moved:
        """The items and shares that change with an unknown."""
        keys, found, shares = {unknown}, [], []
        for share in self.shares:
            if share.part in keys or share.whole in keys:
                keys.add(share.key)
                shares.append(share)
        for item in self.items:
            if item.moved_by(keys):
                found.append(item)
                keys.add(item.key)
        return found, shares

    def _sizes(self, moved: Moved, out: Values, sought: tuple[str, ...]) -> None:
        """Shares, weights, arms, moments and parts, into `out`."""
        items, shares = moved
        for share in shares:
            self._keep(out, share.key, out[share.part] * out[share.whole] * share.times)
        for item in items:
            self._size(item, out, sought)
        for item in items:
            self._moment(item, out)

    def _size(self, item: Item, out: Values, sought: tuple[str, ...]) -> None:
        if item.mass and (item.key in sought or item.mass not in out):
            self._keep(out, item.mass, out[item.key] / out["g"] ** item.powers / item.scale)
        elif item.mass:
            self._keep(out, item.key, out[item.mass] * out["g"] ** item.powers * item.scale)
        elif item.multiple[0]:
            self._keep(out, item.key, out[item.multiple[0]] * out[item.multiple[1]] * item.scale)
        elif item.scale != 1.0 and item.key in self.data and item.key not in self.fixed:
            out[item.key] = self.data[item.key] * item.scale

    def _moment(self, item: Item, out: Values) -> None:
        size = out[item.key] * item.count
        if item.kind == "couple":
            self._keep(out, f"*moment {item.name}", item.turns * size)
            return
        arm = self._keep(out, f"*arm {item.name}", item.terms(out, self.mode))
        made = (
            size * arm
            if item.joined == "times"
            else size / arm * self.length**2
            if item.joined == "over"
            else (size + arm / self.length) * self.length
        )
        self._keep(out, f"*moment {item.name}", item.turns * made)
        if len(item.legs) == 1:
            self._keep(out, f"*turning {item.name}", size * abs(item.legs[0].turned.value(out, self.mode)))
        if item.level is not None:
            self._keep(out, f"*level {item.name}", size * item.level.value(out, self.mode))
        if item.upright is not None:
            self._keep(out, f"*upright {item.name}", size * item.upright.value(out, self.mode))

    def balance(self, name: str, out: Values) -> list[tuple[Item | None, float]]:
        """The terms of one balance: "moments", "level", "upright" (right, up and counter-clockwise positive)."""
        if name.startswith("moments"):
            terms: list[tuple[Item | None, float]] = [
                (each, out[f"*moment {each.name}"] * each.in_moments) for each in self.items
            ]
            return [*terms, (None, self.extra(out))] if self.extra else terms
        if name == "friction":  # what the surface pushes is what the other forces leave over
            return [
                (each, sum(k * out.get(f"*{side} {each.name}", 0.0) for side, k in self._limit(out)) * each.in_forces)
                for each in self.items
            ]
        return [(each, out.get(f"*{name} {each.name}", 0.0) * each.in_forces) for each in self.items]

    def _limit(self, out: Values) -> tuple[tuple[str, float], ...]:
        """How the level and the upright forces count where all friction is used."""
        used = self.slips * out.get("*friction reaction", 0.0)
        return (("level", 1.0), ("upright", -used)) if self.grounded else (("upright", 1.0), ("level", -used))

    def _terms(self, balance: str, trial: Values) -> list[float]:
        if not balance.startswith("moments about "):
            return [value for _, value in self.balance(balance, trial)]
        point = balance.removeprefix("moments about ")
        x, y = trial.get(f"*x {point}", 0.0), trial.get(f"*y {point}", 0.0)
        return [
            trial[f"*moment {each.name}"] * each.in_moments
            + each.in_forces * (y * trial.get(f"*level {each.name}", 0.0) - x * trial.get(f"*upright {each.name}", 0.0))
            for each in self.items
        ]

    def _settle(self, balance: str, unknown: str, moved: Moved, out: Values) -> float:
        """The unknown from one balance: at once where it enters by its first power, else the root nearest the true
        one.
        """
        sought = self.unknowns

        def terms(value: float) -> list[float]:
            out[unknown] = value
            self._sizes(moved, out, sought)
            return self._terms(balance, out)

        if balance == BOTH:
            size = sought[sought.index(unknown) + 1]
            return angle_of_arrow(
                lambda force, angle: self._parts({size: force, unknown: angle}, out), self.roots[unknown]
            )
        if unknown.startswith("*angle "):
            return nearest_root(lambda angle: sum(terms(angle)), self.roots.get(unknown, 45.0))
        nothing, one = terms(0.0), terms(1.0)
        others = [-value for value, after in zip(nothing, one, strict=True) if value or value == after]
        return self.solves.get(unknown, self.finish)(others, sum(one) - sum(nothing))

    def _parts(self, at: Mapping[str, float], out: Values) -> complex:
        """What the level forces, and as i the upright ones, add to."""
        out.update(at)
        self._sizes((self.items, self.shares), out, self.unknowns)
        return complex(*(sum(self._terms(side, out)) for side in ("level", "upright")))

    def _together(self, place: int, out: Values) -> bool:
        """Whether a balance has later unknowns in it; then all from there on are found by elimination, and `finish`
        has no part in it.
        """
        rest = [each for each in self.stages[place:] if each[1] not in self.fixed]
        keys, sought = [unknown for _, unknown in rest], self.unknowns

        def gaps(at: Mapping[str, float]) -> list[float]:
            out.update(at)
            self._sizes((self.items, self.shares), out, sought)
            return [sum(self._terms(balance, out)) for balance, _ in rest]

        ones = dict.fromkeys(keys, 1.0)
        first = gaps(ones)[:1]
        if not any(
            abs(gaps({**ones, later: 2.0})[0] - first[0]) > 1e-12
            for later in keys[1:]
            if not later.startswith("*angle ")
        ):
            out.update(ones)
            return False
        nothing = gaps(dict.fromkeys(keys, 0.0))
        columns = [gaps({**dict.fromkeys(keys, 0.0), key: 1.0}) for key in keys]
        found = solved([[*(column[i] - nothing[i] for column in columns), -nothing[i]] for i in range(len(rest))])
        if not found:
            raise Impossible("the balances do not settle the unknowns")
        gaps(dict(zip(keys, found, strict=True)))
        return True

    def _reaction(self, out: Values) -> None:
        if not self.reaction or any(each.level is None for each in self.items if each.kind != "couple"):
            return
        right, up = self.joint(self, out) if self.joint else self.sums(out)
        right, up = self._keep(out, "reaction.right", right), self._keep(out, "reaction.up", up)
        along, across = right, up
        if self.bone is not None:
            c, s = cos(radians(self.bone)), sin(radians(self.bone))
            along, across = (
                self._keep(out, "reaction.along", right * c + up * s),
                self._keep(out, "reaction.across", up * c - right * s),
            )
        self._keep(out, "reaction", self.resultant(along, across))
        self._keep(out, "*angle reaction", self.angle(along, across))
        self._keep(out, "*direction reaction", self.heading(right, up))
        if self.rubs:
            c, s = cos(radians(self.surface)), sin(radians(self.surface))
            self._keep(out, "*friction reaction", abs((right * c + up * s) / (up * c - right * s)))

    def sums(self, out: Values) -> Pair:
        """What the joint must push with, right and up, for both force balances to hold."""
        right, up = (-sum(value for _, value in self.balance(side, out)) for side in ("level", "upright"))
        return right, up


@dataclass(frozen=True, slots=True)
class Spoilt:
    """An account with one slip in it: the slip's name, the key of the quantity that goes wrong first, the item and
    angle its hints speak of.

    `near` is the account's place in a working where the slip would show: "weight", "arm", "moment", "balance",
    "unknown", "part", "forces", "resultant",
    "direction", "answer". `also` are slips that give the very same values, the likelier first.
    """

    slip: str
    account: Account
    touched: str
    near: str
    item: str = ""
    angle: str = ""
    also: tuple[Spoilt, ...] = ()
