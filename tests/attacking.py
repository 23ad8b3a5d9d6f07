"""Offers a checker random lines and keeps those that it certifies though they are false."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field
from functools import cache
from random import Random
from typing import NamedTuple

from attack_built import Offer, Seen
from attack_judge import Standing
from attack_offers import KINDS, Offers
from attack_world import World
from worked import SAMPLES, replayed, worked

from explain.check.checker import Certified, Refused
from explain.check.claim import Claim
from explain.equation.terms import Equation
from explain.solve.engine import Move, Working
from explain.formula.plain import plain

KEPT = 15  # so many true lines more are kept on a board before it is laid anew
STAY = 120  # so many offers are made at one place of a working
SHARE = 5  # of the lines refused one in so many is judged, and counts for all
ITS_OWN = "the working's own"
UNREADABLE = (ArithmeticError, ValueError, LookupError, TypeError, AttributeError)


class Found(NamedTuple):
    """A line that was certified though something about it is false: a finding."""

    kind: str
    fault: str
    how: str
    problem: str
    place: int  # so many lines of the working are certified, then the extra ones
    extra: tuple[tuple[Equation, Claim, int | None], ...]
    line: Equation
    claim: Claim
    before: int | None  # which line of the board, counting from none

    @property
    def text(self) -> str:
        return plain(self.line)


@dataclass
class Tally:
    """What came of the offers, by the ground claimed. `false` is estimated; `odd` are faults of the program."""

    offered: Counter[str] = field(default_factory=Counter)
    false: Counter[str] = field(default_factory=Counter)
    certified: Counter[str] = field(default_factory=Counter)
    unjudged: Counter[str] = field(default_factory=Counter)
    found: list[Found] = field(default_factory=list)
    odd: list[str] = field(default_factory=list)

    def add(self, other: Tally) -> None:
        for name in ("offered", "false", "certified", "unjudged"):
            getattr(self, name).update(getattr(other, name))
        self.found += other.found
        self.odd += other.odd


class Board:
    """One checker at one place of a working, with what is true there."""

    def __init__(self, working: Working, world: World, place: int) -> None:
        self.working, self.place = working, place
        self.checker = replayed(working, 0)[0]
        self.standing = Standing(world)
        self.made: list[Certified] = []
        self.sought: dict[int, str] = {}
        self.of_move: dict[int, Certified] = {}
        self.extra: list[tuple[Equation, Claim, int | None]] = []
        for move in working.moves[:place]:
            self.take(move)

    def take(self, move: Move) -> None:
        """Certify the next line of the working itself."""
        line = self.checker.certify(move.line.equation, move.line.claim, self.before(move))
        self.of_move[id(move.line)] = line
        self.keep(line, move.goal.sought)

    def before(self, move: Move) -> Certified | None:
        return None if move.before is None else self.of_move.get(id(move.before))

    def keep(self, line: Certified, sought: str) -> None:
        self.made.append(line)
        self.sought[id(line)] = sought
        self.standing.take(line.equation, line.claim)

    def keep_extra(self, line: Certified, offer: Offer) -> None:
        """Keep a true line that the working does not have."""
        own = next((move.goal.sought for move in self.working.moves if move.line.equation == offer.line), "")
        self.extra.append((offer.line, offer.claim, self.index(offer.before)))
        self.keep(line, self.sought.get(id(offer.before), own))

    def index(self, line: Certified | None) -> int | None:
        return next((index for index, each in enumerate(self.made) if each is line), None)

    def fault(self, offer: Offer) -> str | None:
        """What is false about an offer, empty where nothing is; None where that cannot be said."""
        before = None
        if offer.before is not None and self.index(offer.before) is not None:
            before = (offer.before.equation, self.sought[id(offer.before)])
        try:
            fault = self.standing.fault(offer.line, offer.claim, before)
        except UNREADABLE:
            return None
        holds = self.standing.world.ground_holds(offer.line, offer.claim)
        return fault or ("" if holds else "true, but its ground is not so")


@cache
def elsewhere() -> list[Certified]:
    """Lines that another checker certified of another problem, in which some letters have other values."""
    lines: list[Certified] = []
    for path in SAMPLES[:2]:
        lines += worked(path).checker.lines
    return lines


class Attack:
    """Random offers at one problem."""

    def __init__(self, name: str, working: Working, draw: Random, world: World | None = None) -> None:
        self.name, self.working, self.draw = name, working, draw
        self.world, self.tally = world or World(working), Tally()
        self.offers = Offers(working, draw, [*working.checker.lines[:5], *elsewhere()])

    def own_lines(self) -> Attack:
        """Every line of the working itself is certified once more, and should be true."""
        board = Board(self.working, self.world, 0)
        for move in self.working.moves:
            offer = Offer(move.line.equation, move.line.claim, board.before(move), ITS_OWN)
            fault = board.fault(offer)
            if fault:
                self._find(board, offer, fault)
            try:
                board.take(move)
            except Refused as refusal:
                self.tally.odd.append(f"a rule's line refused: {plain(offer.line)}: {refusal} ({self.name})")
                break
            board.place += 1
        return self

    def run(self, count: int) -> Tally:
        """Make so many offers, at random places of the working."""
        done = 0
        while done < count:
            place = self.draw.randint(1, len(self.working.moves))
            board = Board(self.working, self.world, place)
            for _ in range(min(STAY, count - done)):
                done += 1
                offer = self.offers.one(place, Seen(board.made, board.checker.ledger), board.before)
                if self._offered(board, offer):
                    board = Board(self.working, self.world, place)
        return self.tally

    def _offered(self, board: Board, offer: Offer) -> bool:
        """Make one offer; whether the board must be laid anew."""
        kind = type(offer.claim).__name__
        self.tally.offered[kind] += 1
        try:
            line = board.checker.certify(offer.line, offer.claim, offer.before)
        except Refused:
            self._judge(kind, board.fault(offer) if self.draw.random() < 1 / SHARE else "", SHARE)
            return False
        except Exception as error:  # a checker refuses, whatever it is handed
            first = (str(error).splitlines() or [""])[0]
            self.tally.odd.append(f"{type(error).__name__} on {kind}: {first} ({self.name})")
            return True
        fault = board.fault(offer)
        self.tally.certified[kind] += 1
        self._judge(kind, fault, 1)
        if fault:
            self._find(board, offer, fault)
        if fault or fault is None or len(board.extra) >= KEPT:
            return True
        board.keep_extra(line, offer)
        return False

    def _judge(self, kind: str, fault: str | None, count: int) -> None:
        self.tally.unjudged[kind] += count * (fault is None)
        self.tally.false[kind] += count * bool(fault)

    def _find(self, board: Board, offer: Offer, fault: str) -> None:
        line, claim, before, how = offer
        kind, at, extra = type(claim).__name__, board.index(before), tuple(board.extra)
        self.tally.found.append(Found(kind, fault, how, self.name, board.place, extra, line, claim, at))


def kinds() -> tuple[str, ...]:
    return tuple(each.__name__ for each in KINDS)
