"""Offers a checker random lines and keeps those that it certifies though they are false."""
from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from random import Random
from typing import Any, NamedTuple

from attack_judge import Standing, World
from attack_offers import KINDS, Offer, Offers
from random_problems import problems as random_tables
from worked import CONTRACT, EXTRA, SAMPLES, extra, replayed, worked

import rules
from explain.check import Certified, Refused
from explain.claim import Claim
from explain.equation import Equation
from explain.faults import Fault, NoWay
from explain.files import read_problem
from explain.free import cut_free
from explain.solve import Broken, Move, Working, work_through
from explain.write.plain import plain

KEPT = 6                                          # so many true lines more are kept on a board before it is laid anew
STAY = 60                                         # so many offers are made at one place of a working


class Found(NamedTuple):
    """A line that was certified though something about it is false: a finding."""

    kind: str
    fault: str
    how: str
    problem: str
    place: int
    extra: tuple[tuple[Equation, Claim, int | None], ...]
    line: Equation
    claim: Claim
    before: int | None                            # which line of the board, counting from none

    @property
    def text(self) -> str:
        return plain(self.line)


@dataclass
class Tally:
    """What came of the offers, by the kind of ground that was claimed."""

    offered: Counter[str] = field(default_factory=Counter)
    false: Counter[str] = field(default_factory=Counter)
    certified: Counter[str] = field(default_factory=Counter)
    passed: Counter[tuple[str, str]] = field(default_factory=Counter)
    unjudged: Counter[str] = field(default_factory=Counter)
    found: list[Found] = field(default_factory=list)
    odd: list[str] = field(default_factory=list)

    def add(self, other: Tally) -> None:
        for name in ("offered", "false", "certified", "passed", "unjudged"):
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
            line = self.checker.certify(move.line.equation, move.line.claim, self.before(move))
            self.of_move[id(move.line)] = line
            self.keep(line, move.goal.sought)

    def before(self, move: Move) -> Certified | None:
        return None if move.before is None else self.of_move.get(id(move.before))

    def keep(self, line: Certified, sought: str) -> None:
        self.made.append(line)
        self.sought[id(line)] = sought
        self.standing.take(line.equation, line.claim)

    def index(self, line: Certified | None) -> int | None:
        return next((index for index, each in enumerate(self.made) if each is line), None)


class Attack:
    """Random offers at one problem."""

    def __init__(self, name: str, working: Working, draw: Random, world: World | None = None) -> None:
        self.name, self.working, self.draw = name, working, draw
        self.world, self.tally = world or World(working), Tally()
        self.offers = Offers(working, draw, list(working.checker.lines[:5]))

    def real_lines(self) -> Attack:
        """Every line of the working itself is certified again, and is true."""
        board = Board(self.working, self.world, 0)
        for move in self.working.moves:
            offer = Offer(move.line.equation, move.line.claim, board.before(move), "the working's own")
            self._try(board, offer, len(board.made), move.goal.sought)
            try:
                line = board.checker.certify(*offer[:3])
            except Refused as refusal:
                self.tally.odd.append(f"{self.name}: a rule's line refused: {plain(offer.line)} ({refusal})")
                break
            board.of_move[id(move.line)] = line
            board.keep(line, move.goal.sought)
        return self

    def _try(self, board: Board, offer: Offer, place: int, sought: str) -> None:
        fault = self._fault(board, offer)
        if fault:
            self.tally.found.append(Found(type(offer.claim).__name__, fault, offer.how, self.name, place, (), offer.line, offer.claim, board.index(offer.before)))
            self.tally.passed[type(offer.claim).__name__, f"a rule's line: {fault}"] += 1

    def _fault(self, board: Board, offer: Offer) -> str | None:
        """What is false; None where nothing can be said."""
        before = None
        if offer.before is not None and board.index(offer.before) is not None:
            before = (offer.before.equation, board.sought[id(offer.before)])
        try:
            fault = board.standing.fault(offer.line, offer.claim, before)
        except (ArithmeticError, ValueError, LookupError, TypeError, AttributeError):
            return None
        return fault or ("" if self.world.ground_holds(offer.line, offer.claim) else "true, but its ground is not so")

    def run(self, count: int) -> Tally:
        done = 0
        while done < count:
            place = self.draw.randint(1, len(self.working.moves))
            board = Board(self.working, self.world, place)
            for _ in range(min(STAY, count - done)):
                done += 1
                offer = self.offers.one(place, board.made, board.before, board.checker.ledger)
                if self._offered(board, offer):
                    board = Board(self.working, self.world, place)
        return self.tally

    def _offered(self, board: Board, offer: Offer) -> bool:
        """Offer one line; whether the board must be laid anew."""
        kind = type(offer.claim).__name__
        self.tally.offered[kind] += 1
        fault = self._fault(board, offer)
        if fault is None:
            self.tally.unjudged[kind] += 1
        elif fault:
            self.tally.false[kind] += 1
        try:
            line = board.checker.certify(offer.line, offer.claim, offer.before)
        except Refused:
            return False
        except Exception as error:                # a fault of the checker itself
            self.tally.odd.append(f"{type(error).__name__} on {kind}: {str(error).splitlines()[0]} ({self.name})")
            return True
        self.tally.certified[kind] += 1
        if fault:
            self.tally.passed[kind, fault] += 1
            self.tally.found.append(Found(kind, fault, offer.how, self.name, board.place, tuple(board.extra), offer.line, offer.claim, board.index(offer.before)))
            return True
        if fault is None or len(board.extra) >= KEPT or self.draw.random() < 0.3:
            return True
        board.extra.append((offer.line, offer.claim, board.index(offer.before)))
        board.keep(line, self._sought(board, offer))
        return False

    def _sought(self, board: Board, offer: Offer) -> str:
        if offer.before is not None and id(offer.before) in board.sought:
            return board.sought[id(offer.before)]
        move = next((each for each in self.working.moves if each.line.equation == offer.line), None)
        return move.goal.sought if move else ""


# ---------------------------------------------------------------------- problems
def shipped() -> Mapping[str, Any]:
    """Every problem of the samples, of the contract and of the extra ones, by name."""
    return {**{path.stem: path for path in (*SAMPLES, *CONTRACT)}, **{name: name for name in EXTRA}}


@cache
def working_of(name: str) -> Working:
    found = shipped()[name]
    return extra(found) if isinstance(found, str) else worked(found)


@cache
def world_of(name: str) -> World:
    return World(working_of(name))


def random_workings(count: int, seed: int) -> Iterator[tuple[dict[str, Any], Working]]:
    """Random problems that could be worked, each with its table."""
    for table in _tables(count, seed):
        try:
            yield table, work_through(cut_free(read_problem(table)), rules.MOVES)
        except (Fault, NoWay, Broken):
            continue


def _tables(count: int, seed: int) -> list[dict[str, Any]]:
    from hypothesis import HealthCheck, Phase, given, seed as seeded, settings

    out: list[dict[str, Any]] = []

    @seeded(seed)
    @settings(max_examples=count, database=None, phases=(Phase.generate,), deadline=None, suppress_health_check=list(HealthCheck))
    @given(random_tables())
    def collect(table: dict[str, Any]) -> None:
        out.append(table)
    collect()
    return out


def kinds() -> tuple[str, ...]:
    return tuple(each.__name__ for each in KINDS)
