"""The three things worth teaching again: families of slips by how many students have them, told as ideas. Says so
where there is too little to go by.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from ..document.english import listed
from .counts import SlipCount, Tally
from .first_step import Steps

MOST = 3
LEAST = 3.0  # students: fewer are a talk with each of them, and no lesson (common practice, no source)
LEAST_LINES = 2.0  # of workings, where the line itself has been seen

IDEAS: Mapping[str, tuple[str, str]] = {
    "weight and mass": (
        "A scale gives a mass, and what pulls is a force.",
        "Multiply every mass by g once, at the start and with units, and count all forces of one balance in newtons "
        "(or all in pounds).",
    ),
    "missing or extra terms": (
        "Every force on the body cut free belongs in the balance, and each once.",
        "Draw the body alone, count the arrows that miss the pivot, and count the terms of the line: the two "
        "numbers are the same.",
    ),
    "distances": (
        "A lever arm begins at the pivot and ends at the line of the force.",
        "Put a finger on both ends of each distance in the drawing, and bring all of them to one unit before they "
        "go into a line.",
    ),
    "angles and trigonometry": (
        "Only the distance across the line of pull counts; the angle, and the line it is measured from, decide "
        "between sine and cosine.",
        "Try the two limits: a pull along the bone has no arm, a pull straight across it has the whole. A formula "
        "that fails there is wrong.",
    ),
    "signs and equilibrium": (
        "A moment's sign is the way it turns about the pivot, not the way its force points.",
        "Say for every force which way it alone would turn the limb, write the sign, and only then the numbers.",
    ),
    "joint reaction": (
        "The joint pushes too: all forces add to zero, part by part, with the pull among them.",
        "After the moments, write both balances of forces for the same drawing; the parts of the joint force are "
        "put together at right angles.",
    ),
    "algebra and arithmetic": (
        "What is done to one side is done to the whole of the other.",
        "Estimate with round numbers first, do one move a line, and keep all figures until the last line.",
    ),
    "answer and communication": (
        "An answer is a number, a unit, a direction, and the body it acts on.",
        "End with a sentence that has all four, and put the number back into the balance.",
    ),
}


class Lesson(NamedTuple):
    """One family: how many students it comes to, the idea, what to do, where in the walkthrough, and the slips seen
    of it.
    """

    family: str
    students: float
    idea: str
    exercise: str
    step: str
    slips: tuple[SlipCount, ...]

    @property
    def evidence(self) -> str:
        """Who shows it, in words."""
        seen = [
            f"{each.sort.title} ({each.alone}{f' to {each.students}' if each.among else ''})" for each in self.slips[:3]
        ]
        return f"about {self.students:.0f} students: {listed(seen)}"


def lessons(tally: Tally, steps: Steps) -> tuple[Lesson, ...]:
    """At most three, the most frequent first; none where too few students show any."""
    return tuple(_lessons(tally, steps))[:MOST]


def _lessons(tally: Tally, steps: Steps) -> Iterator[Lesson]:
    least = LEAST_LINES if tally.lines else LEAST
    for family, weight in tally.weights.items():
        slips = tuple(
            sorted((each for each in tally.slips if each.sort.family == family), key=lambda each: -each.weight)
        )
        if weight >= least and family in IDEAS:
            yield Lesson(family, weight, *IDEAS[family], step_of(slips, steps), slips)


def step_of(slips: tuple[SlipCount, ...], steps: Steps) -> str:
    """The step at which most of these slips first show."""
    return next((step for each in slips for key in each.keys if (step := steps.of(key))), "")


def too_little(tally: Tally) -> str:
    """What is said where no family, or fewer than three, has enough students."""
    least = LEAST_LINES if tally.lines else LEAST
    return (
        f"Not enough evidence for more: an idea is named here where at least {least:.0f} students show slips of its "
        "family, "
        "each student counted once for a slip, and what several slips explain shared out by how common they are."
    )
