"""How the numbers compare with people: notes with their source, never verdicts."""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, radians, sin

from explain.solve.outcome import SILENT, Finding, Outcome
from explain.reference.body_ranges import (
    Note,
    arm_note,
    bite_note,
    disc_note,
    hip_load_note,
    joint_moment_note,
    muscle_force_note,
    segment_mass_note,
    stress_note,
)

LABEL = "Note"


def look(outcome: Outcome) -> tuple[Finding, ...]:
    found = [note for note in _notes(outcome) if note is not None]
    if not found:
        return (SILENT,)
    return tuple(
        Finding(
            "holds" if note.inside else "warns",
            note.says,
            LABEL,
            note.source,
            note.inside and not note.telling,
            "note",
            note.of,
        )
        for note in found
    )


def _notes(outcome: Outcome) -> Iterator[Note | None]:
    if not outcome.body.problem.balanced:
        return
    for muscle in outcome.muscles:
        pull = outcome.size(muscle)
        yield (
            arm_note(muscle.name, outcome.pivot, outcome.arm(muscle))
            if pull and outcome.possible and outcome.arm(muscle) > 0
            else None
        )
        yield muscle_force_note(muscle.name, pull, _written(outcome, pull)) if pull > 0 else None
        stress = outcome.values.get(f"{muscle.name}.stress")
        yield stress_note(muscle.name, stress / 1e4) if stress is not None and stress >= 0 else None
    yield from _segments(outcome)
    yield from _joint(outcome)


def _written(outcome: Outcome, newtons: float) -> str:
    """A force in the class's own unit, where that is not the newton."""
    return "" if outcome.body.force_unit == "N" else outcome.force(newtons)


def _segments(outcome: Outcome) -> Iterator[Note | None]:
    body_mass = outcome.values.get("*person.mass")
    for segment in outcome.body.problem.segments:
        mass = outcome.values.get(f"{segment.name}.mass")
        if body_mass and mass:
            yield segment_mass_note(segment.name, 100 * mass / body_mass)


def _joint(outcome: Outcome) -> Iterator[Note | None]:
    moments = [outcome.moments[each.name] for each in outcome.muscles]
    turning = sum(moments)
    if abs(turning) > outcome.moved * sum(map(abs, moments)):  # muscles against each other leave what was rounded away
        yield joint_moment_note(outcome.pivot, turning, outcome.word)
    for force in outcome.body.forces:
        if force.kind == "force" and outcome.size(force) > 0:
            yield bite_note(outcome.pivot, force.name, outcome.size(force), _written(outcome, outcome.size(force)))
    if not outcome.joint_asked or outcome.joint is None:
        return
    joint = (outcome.joint[0] ** 2 + outcome.joint[1] ** 2) ** 0.5
    bone = next(iter(outcome.body.bearings.values()), None)
    if bone is not None:
        turn = radians(float(bone.degrees) + sum(k * outcome.values[letter.name] for letter, k in bone.unknown))
        push = outcome.joint[0] * cos(turn) + outcome.joint[1] * sin(turn)
        yield disc_note(outcome.pivot, push, _written(outcome, push))
    if "*person.mass" in outcome.values and "g" in outcome.values:
        yield hip_load_note(outcome.pivot, joint, outcome.values["*person.mass"] * outcome.values["g"])
