"""A marking scheme: its points with the quantities each looks for, from the problem file or made from the
walkthrough. Judges no working.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from ..slips.account import Account, Item
from ..slips.account_of_working import account_of
from ...equation.key import FRICTION
from ...document.english import counted, listed, noun_of, the
from ...problem.mark_rows import keys
from ...solve.outcome import Outcome
from ...problem.model import BURDENS

UNIT, DIRECTION, DIAGRAM = "unit", "direction", "diagram"


@dataclass(frozen=True, slots=True)
class Point:
    """One row: `kind` method, accuracy, independent or communication; what it is for; how many marks; the keys that
    a working shows for it.
    """

    kind: str
    what: str
    marks: int
    needs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Scheme:
    """All rows. `unknowns` are the keys that the balances settle, `asked` those of the answers; `own`: the author
    wrote the scheme.
    """

    points: tuple[Point, ...]
    unknowns: frozenset[str] = frozenset()
    asked: frozenset[str] = frozenset()
    burden: str = BURDENS[0]
    own: bool = False

    @property
    def total(self) -> int:
        return sum(each.marks for each in self.points)

    @property
    def strict(self) -> bool:
        """Whether key lines must be shown."""
        return self.burden == BURDENS[1]

    def rank(self, key: str) -> int:
        """How far along a working a quantity stands: a higher one is found from lower ones."""
        if key in self.unknowns:
            return 5
        if key in (UNIT, DIRECTION, DIAGRAM):
            return 9
        if key in ("reaction", "*angle reaction"):
            return 7
        if key.startswith("reaction.") or key in ("level", "upright"):
            return 6
        if key in ("moments", "total", "*sum"):
            return 4
        head = key.partition(" ")[0]
        if head == "*moment":
            return 3
        if head in ("*arm", "*reach", "*turning", "*level", "*upright"):
            return 2
        if key.endswith(".stress") or key == FRICTION:
            return 8
        return 1 if key.endswith(".weight") else 0


def scheme_of(outcome: Outcome) -> Scheme:
    """The scheme of the problem file, or one made from the walkthrough where it has none."""
    problem = outcome.body.problem
    account = account_of(outcome.working)
    unknowns = frozenset((*account.unknowns, *(each.letter.name for each in outcome.body.sought)))
    asked = frozenset(key for _, key in outcome.working.asked)
    if problem.marks:
        points = tuple(Point(each.kind, each.what, each.marks, keys(each, problem)) for each in problem.marks)
    else:
        points = tuple(_made(outcome, account, unknowns))
    return Scheme(points, unknowns, asked, problem.burden, bool(problem.marks))


def _made(outcome: Outcome, account: Account, unknowns: frozenset[str]) -> Iterator[Point]:
    """A scheme in public examination vocabulary: a method mark for each principle, an accuracy mark for what it
    leads to.
    """
    word, pivot = outcome.word, the(outcome.pivot)
    heavy = [each for each in account.items if each.mass and each.key not in unknowns and each.mass not in unknowns]
    yield Point("method", f"{word}s about {pivot} with {_all(len(account.items))}", 1, ("moments",))
    if heavy:
        unit = "pounds" if outcome.body.force_unit == "lbf" else "newtons"
        yield Point(
            "accuracy",
            f"{'the weight' if len(heavy) == 1 else 'the weights'} in {unit}",
            1,
            tuple(each.key for each in heavy),
        )
    yield from _arms(outcome, account, unknowns)
    told = {key for key in outcome.working.asked if key[1].startswith("reaction")}
    for name, key in outcome.working.asked:
        if not key.startswith("reaction"):
            yield Point("accuracy", f"the value of {_named(name, key)}", 1, (key,))
    if told:
        yield from _joint(outcome, account)
    yield Point("communication", "a unit with every answer", 1, (UNIT,))


def _all(count: int) -> str:
    return {1: "its one term", 2: "both terms"}.get(count, f"all {counted(count)} terms")


def _arms(outcome: Outcome, account: Account, unknowns: frozenset[str]) -> Iterator[Point]:
    """Method marks for arms that are not simply a distance: of the unknown pulls, and of the rest together."""
    oblique = [
        each
        for each in account.items
        if each.arm.startswith("*reach") or any(leg.turned.function or len(each.legs) > 1 for leg in each.legs)
    ]
    word = "turning part" if outcome.body.problem.course.method == "turning component" else "lever arm"
    pulls = [each for each in oblique if each.key in unknowns]
    others = [each for each in oblique if each.key not in unknowns]
    for item in pulls:
        yield Point("method", noun_of(word, item.name), 1, (f"*arm {item.name}",))
    if others:
        yield Point(
            "method",
            noun_of(word, others[0].name) if len(others) == 1 else f"the {word}s of {_names(others)}",
            1,
            tuple(f"*arm {each.name}" for each in others),
        )


def _names(items: list[Item]) -> str:
    return listed([the(each.name) for each in items])


def _named(name: str, key: str) -> str:
    if key.startswith("*angle "):
        return f"the angle of {the(key.removeprefix('*angle '))}"
    if key == "total":
        return "the total"
    if key == FRICTION:
        return "the coefficient of friction"
    owner, _, part = name.rpartition(".")
    words = {
        "mass": "mass",
        "hung": "hung mass",
        "weight": "weight",
        "at": "distance",
        "moment": "moment",
        "moment_arm": "moment arm",
        "limit": "limit",
    }
    if part == "stress":
        return f"the stress in {the(owner)}"
    return noun_of(words[part], owner) if owner and part in words else the(name)


def _joint(outcome: Outcome, account: Account) -> Iterator[Point]:
    """The force at the pivot: by balances in two directions, or in one where all forces are parallel."""
    forces = sum(each.kind != "couple" for each in account.items) + 1
    axes = (
        ("reaction.along", "reaction.across") if outcome.body.problem.course.axes else ("reaction.right", "reaction.up")
    )
    right, up = outcome.joint or (1.0, 1.0)
    if not outcome.body.problem.course.axes and abs(right) < 1e-6 * max(abs(up), outcome.largest_force):
        yield Point("method", f"the balance of vertical forces with all {counted(forces)} forces", 1, ("upright",))
        yield Point("accuracy", "the force at the joint, and which way it pushes", 1, ("reaction",))
        return
    along = bool(outcome.body.problem.course.axes)
    names = (
        ("the balance along the bone", "the balance across the bone")
        if along
        else ("the balance of horizontal forces", "the balance of vertical forces")
    )
    yield Point("method", names[0], 1, axes[:1])
    yield Point("method", f"{names[1]}, with every force in it", 1, axes[1:])
    yield Point("accuracy", "both parts of the force at the joint", 1, axes)
    if any(name == "reaction" for name, _ in outcome.working.asked):
        yield Point("method", "size and direction from the two parts", 1, ("reaction",))
        yield Point("accuracy", "the size of the force at the joint", 1, ("reaction",))
        yield Point("accuracy", "its direction: the angle, from which line, and which way", 1, ("*angle reaction",))
