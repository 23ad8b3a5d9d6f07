"""What cannot be: a mass, a weight or a moment arm below nothing, a centre of mass outside of its segment."""

from __future__ import annotations

from collections.abc import Iterator

from explain.equation import key as keys
from explain.document.english import the, verb
from explain.solve.comparable_numbers import growing
from explain.solve.outcome import SILENT, Finding, Outcome

LABEL = "Impossible"
BLUR = 1e-9


def look(outcome: Outcome) -> Finding:
    said = list(_impossible(outcome)) if outcome.body.problem.balanced else []
    return Finding("fails", " ".join(said), LABEL) if said else SILENT


def _impossible(outcome: Outcome) -> Iterator[str]:
    for each in outcome.body.sought:
        owner, what = keys.of(each.letter.name).owner, keys.of(each.letter.name).what
        value = outcome.sizes.get(each.letter.name, 0.0)
        exact = outcome.working.sizes.get(each.letter.name, value)
        if what != "com" and exact > 0:
            continue  # only roundings took it below nothing, and another check tells of these
        match what:
            case "hung" if value < -BLUR * outcome.largest_force:
                yield (
                    f"Nothing hung from {the(owner)} can hold the body: a cable can only pull, and here it would have "
                    "to push. Look again at its direction, at where it acts, and at the other forces."
                )
            case "mass" | "weight" if value < -BLUR * outcome.largest_force:
                yield _below_nothing(owner, what)
            case "moment_arm" if value < 0:
                yield (
                    "A moment arm is a distance and cannot be negative: with the force and the turning sense that "
                    f"were given, {the(owner)} "
                    f"{verb(owner, 'turn')} the same way as what has to be balanced. Look again at turns, and at "
                    "the loads."
                )
            case "com":
                yield from _outside(outcome, owner, exact)


def _below_nothing(owner: str, what: str) -> str:
    return (
        f"{the(owner).capitalize()} cannot have a {what} below nothing: the other forces already act the way its "
        "weight would, and no weight "
        "balances that. Look again at their sizes, at where they act and at the way each turns, and at the units."
    )


def _outside(outcome: Outcome, segment: str, value: float) -> Iterator[str]:
    length = outcome.values.get(f"{segment}.length")
    if value < 0:
        yield (
            f"The centre of mass of {the(segment)} cannot lie outside of it, behind its near end. Look again at the "
            "sizes of the forces, at where "
            "they act and at the way each turns."
        )
    elif length is not None and value > length * (1 + BLUR):
        end, far = outcome.compared((length, value), outcome.one_length, growing).texts
        unit = outcome.body.length_unit
        yield (
            f"The centre of mass of {the(segment)} cannot lie beyond its end: {far} {unit} is more than its length of "
            f"{end} {unit}. Look again at the sizes of the forces, at where they act, and at the units."
        )
