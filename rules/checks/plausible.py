"""How the numbers compare with people: notes with their source, never verdicts."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import cos, radians, sin

from explain.document.english import sentence, the
from explain.solve.outcome import SILENT, Finding, Outcome
from explain.reference.body_ranges import (
    CENTIMETRE,
    FOOT_POUND,
    INCH,
    NEWTON,
    NEWTON_METRE,
    NEWTON_PER_CM2,
    POUND,
    Measure,
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
_NEWTONS: Mapping[str, float] = {"N": NEWTON.size, "lb": POUND.size}
_SQUARES: Mapping[str, float] = {  # in square centimetres
    "cm^2": 1.0,
    "mm^2": 1e-2,
    "m^2": 1e4,
    "in^2": INCH.size**2,
    "ft^2": (12 * INCH.size) ** 2,
}
LABELS: Mapping[str, str] = {
    "pull": "Pull of {}",
    "moment arm": "Moment arm of {}",
    "stress": "Stress in {}",
    "mass": "Mass of {}",
    "load": "Load on {}",
    "bite": "Bite on {}",
    "moment": "{1} at {0}",
}


def look(outcome: Outcome) -> tuple[Finding, ...]:
    found = [note for note in _notes(outcome) if note is not None]
    if not found:
        return (SILENT,)
    return tuple(
        Finding(
            "holds" if note.inside else "warns",
            note.says,
            _label(outcome, *note.of),
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
            arm_note(muscle.name, outcome.pivot, outcome.arm(muscle), INCH if _in_inches(outcome) else CENTIMETRE)
            if pull and outcome.possible and outcome.arm(muscle) > 0
            else None
        )
        yield muscle_force_note(muscle.name, pull, _force_measure(outcome)) if pull > 0 else None
    yield from _stresses(outcome)
    yield from _segments(outcome)
    yield from _joint(outcome)


def _stresses(outcome: Outcome) -> Iterator[Note | None]:
    """One note for all muscles whose stress is the same to three figures."""
    stresses = {each.name: outcome.values.get(f"{each.name}.stress", -1.0) / 1e4 for each in outcome.muscles}
    left = {name: each for name, each in stresses.items() if each >= 0}
    while left:
        one = next(iter(left.values()))
        alike = [name for name, each in left.items() if f"{each:.3g}" == f"{one:.3g}"]
        yield stress_note(alike, one, _stress_measure(outcome, alike[0]))
        left = {name: each for name, each in left.items() if name not in alike}


def _stress_measure(outcome: Outcome, muscle: str) -> Measure:
    """The unit of a stress as its answer has it, "lb/in²", else that of the ranges."""
    answer = outcome.answers.get(f"{muscle}.stress")
    unit = answer.unit if answer is not None else "N/cm^2"
    force, _, area = unit.partition("/")
    if unit == "N/cm^2":
        return NEWTON_PER_CM2
    return Measure(f"{force}/{area.replace('^2', '²')}", _NEWTONS[force] / _SQUARES[area])


def _label(outcome: Outcome, owner: str, what: str) -> str:
    """What a note is about: "Pull of the biceps"."""
    return sentence(LABELS[what].format(the(owner), outcome.word)).rstrip(".")


def _in_inches(outcome: Outcome) -> bool:
    return outcome.body.length_unit in ("in", "ft")


def _force_measure(outcome: Outcome) -> Measure:
    return NEWTON if outcome.body.force_unit == "N" else POUND


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
        measure = NEWTON_METRE if outcome.body.force_unit == "N" else FOOT_POUND
        yield joint_moment_note(outcome.pivot, turning, outcome.word, measure)
    for force in outcome.body.forces:
        if force.kind == "force" and outcome.size(force) > 0:
            yield bite_note(outcome.pivot, force.name, outcome.size(force), _force_measure(outcome))
    if not outcome.joint_asked or outcome.joint is None:
        return
    joint = (outcome.joint[0] ** 2 + outcome.joint[1] ** 2) ** 0.5
    bone = next(iter(outcome.body.bearings.values()), None)
    if bone is not None:
        turn = radians(float(bone.degrees) + sum(k * outcome.values[letter.name] for letter, k in bone.unknown))
        push = outcome.joint[0] * cos(turn) + outcome.joint[1] * sin(turn)
        yield disc_note(outcome.pivot, push, _force_measure(outcome))
    if "*person.mass" in outcome.values and "g" in outcome.values:
        yield hip_load_note(outcome.pivot, joint, outcome.values["*person.mass"] * outcome.values["g"])
