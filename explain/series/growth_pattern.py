"""The pattern by which a series grows: what a problem can do without at the start, in what order it comes back, and
what to vary at the end.

The order is that of the elbow ladder of our own (one weight, the limb's weight, more weights, the joint force, a slope,
an oblique pull, a load,
a distance and an angle sought); what an idea is called is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from typing import Any, NamedTuple

from ..problem import directions
from ..document.english import sentence, the, weight_of
from ..equation.terms import Quantity
from ..solve.outcome import Outcome
from ..problem.model import Load, Pull, Segment
from ..problem.quantity import written_unit
from .steps import Tables

Change = dict[str, Any]
LEVEL = ("right", "left")


class Rung(NamedTuple):
    """What can be left out of a problem: how the start does without it, and the step that brings it back."""

    without: Change
    back: Change


def rungs(tables: Tables, kept: Sequence[str]) -> Iterator[Rung]:
    """Everything that may be left out, in the order in which it comes back; what is `kept` stays: the largest load,
    and what the answer is of.
    """
    for table in tables.get("segment", []):
        if table["name"] not in kept and (keys := [key for key in ("mass", "weight", "com") if key in table]):
            yield Rung(
                {"remove": [f"{table['name']}.{key}" for key in keys]},
                {
                    "title": sentence(weight_of(table["name"])).rstrip("."),
                    "idea": "a segment has a weight of its own, at its centre of mass",
                    "set": {f"{table['name']}.{key}": table[key] for key in keys},
                },
            )
    ideas = {
        "load": "one term more in the same balance",
        "force": "another force takes part",
        "couple": "a couple turns wherever it acts",
        "muscle": "how the pulls share must be given",
    }
    for kind, idea in ideas.items():
        for table in tables.get(kind, []):
            if table["name"] not in kept:
                yield Rung(
                    {"remove": [table["name"]]},
                    {"title": sentence(f"{the(table['name'])} too").rstrip("."), "idea": idea, "add": {kind: [table]}},
                )
    yield from _slopes(tables)
    for table in tables.get("muscle", []):
        yield from _oblique(table)


def _slopes(tables: Tables) -> Iterator[Rung]:
    for table in tables.get("segment", []):
        said = str(table.get("direction", "right"))
        way = directions.read(said)
        if way.turn is not None and (level := next((word for word in (way.start, way.toward) if word in LEVEL), "")):
            key = f"{table['name']}.direction"
            yield Rung(
                {"set": {key: level}},
                {
                    "title": sentence(f"{the(table['name'])} at a slope").rstrip("."),
                    "set": {key: said},
                    "idea": "which lever arms a slope changes, and which it leaves alone",
                },
            )


def _oblique(table: Tables) -> Iterator[Rung]:
    muscle = table["name"]
    own = {f"{muscle}.{key}": table[key] for key in ("direction", "toward") if key in table}
    if own and "moment_arm" not in table and table.get("direction") not in ("up", "down"):
        for straight in ("up", "down"):
            yield Rung(
                {"set": {f"{muscle}.direction": straight}},
                {"title": "The pull at an angle", "set": own, "idea": "a lever arm is a distance times a sine"},
            )


def questions(outcome: Outcome, goal: str) -> Iterator[Change]:
    """Asking for the joint force: whole where all forces are parallel, in parts where they are not."""
    if outcome.body.problem.pivot.reaction and outcome.directed:
        yield {
            "title": "What the joint carries",
            "idea": "a balance of forces after the balance of moments",
            "ask": [goal, "reaction"],
        }


def variations(outcome: Outcome, main: str, goal: str) -> Iterator[Change]:
    """What may be varied once the whole problem stands: a heavier load, a load, a distance and an angle sought, and a
    sweep.

    Where no pull was sought, the problem is turned round and one is.
    """
    load = next((each for each in outcome.body.problem.loads if each.name == main), None)
    pull = next((each for each in outcome.body.problem.pulls if each.name == goal), None)
    if pull is None:
        yield from _turned_round(outcome, goal)
        return
    if load is not None:
        yield from _of_load(outcome, load, pull)
    if len(outcome.body.problem.segments) == 1:
        yield from _of_slope(outcome, outcome.body.problem.segments[0], pull)


def _turned_round(outcome: Outcome, goal: str) -> Iterator[Change]:
    """What was sought is given as it came out, and a pull that was given is sought."""
    answer, known = outcome.answers[goal], {each.letter.name for each in outcome.body.givens}
    if answer.unit == "deg" or "." not in goal:
        return
    for pull in outcome.body.problem.pulls:
        if f"{pull.name}.force" in known:
            yield {
                "title": sentence(f"turned round: the pull of {the(pull.name)}").rstrip("."),
                "idea": "the same balance, solved for another of its letters",
                "set": {goal: answer.shown, f"{pull.name}.force": "?"},
                "ask": [pull.name],
            }


def _of_load(outcome: Outcome, load: Load, pull: Pull) -> Iterator[Change]:
    key, amount = ("mass", load.mass) if load.mass else ("weight", load.weight)
    if isinstance(amount, Quantity) and not load.per_length:
        yield {
            "title": sentence(f"{the(load.name)}, half as heavy again").rstrip("."),
            "idea": "the same equation, a new number",
            "ask": [pull.name],
            "set": {f"{load.name}.{key}": _half_again(amount)},
        }
    known = {f"{pull.name}.force": _strong(outcome, pull.name)}
    yield {
        "title": "The greatest load",
        "idea": "the same balance, solved for a load",
        "set": known | {f"{load.name}.{key}": "?"},
        "ask": [f"{load.name}.{key}"],
    }
    if load.place.at is not None:
        yield {
            "title": "The greatest distance",
            "idea": "the same balance, solved for a distance",
            "set": known | {f"{load.name}.at": "?"},
            "ask": [f"{load.name}.at"],
        }


def _of_slope(outcome: Outcome, segment: Segment, pull: Pull) -> Iterator[Change]:
    side = "left" if "left" in (segment.direction.start, segment.direction.toward) else "right"
    height = "above" if "up" in (segment.direction.start, segment.direction.toward) else "below"
    force = outcome.body.force(pull.name)
    turns = {
        f"{pull.name}.moment_arm": f"{outcome.length(outcome.arm(force))}",
        f"{pull.name}.turns": _sense(outcome, pull.name),
    }
    arm: Mapping[str, str] = {} if pull.moment_arm is not None else turns
    stale = [
        f"{pull.name}.{key}"
        for key, value in (("direction", pull.direction), ("toward", pull.toward))
        if value is not None
    ]
    gone = {"remove": stale} if stale else {}
    yield {
        "title": sentence(f"{the(segment.name)} through its angles").rstrip("."),
        "idea": "muscle force against joint angle",
        **gone,
        "set": dict(arm),
        "ask": [pull.name],
        "sweep": {
            "of": f"{segment.name}.direction",
            "direction": f"? {height} {side}",
            "from": "0 deg",
            "to": "90 deg",
            "step": "5 deg",
        },
    }
    yield {
        "title": "The angle sought",
        "idea": "the same balance, solved for an angle",
        "ask": [f"{segment.name}.direction"],
        **gone,
        "set": {
            **arm,
            f"{pull.name}.force": _weak(outcome, pull.name),
            f"{segment.name}.direction": f"? {height} {side}",
        },
    }


def _sense(outcome: Outcome, name: str) -> str:
    return "counter-clockwise" if outcome.moments[name] > 0 else "clockwise"


def _half_again(amount: Quantity) -> str:
    """One and a half times as much, with the decimals it has or, where these do not hold it, those it needs."""
    more = amount.number * Decimal("1.5")
    short = more.quantize(amount.number)
    return f"{short if short == more else more:f} {written_unit(amount.unit)}"


def _strong(outcome: Outcome, name: str) -> str:
    """A round pull somewhat above the one that came out."""
    return _round(outcome, name, 1.1)


def _weak(outcome: Outcome, name: str) -> str:
    """A round pull well below the one that came out."""
    return _round(outcome, name, 0.6)


def _round(outcome: Outcome, name: str, times: float) -> str:
    answer = outcome.answers[name]
    return f"{Decimal(f'{answer.value * times:.2g}'):f} {answer.unit}"
