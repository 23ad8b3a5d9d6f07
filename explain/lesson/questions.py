"""What is put to the class before something is shown: which way, more or less, force or reach. The answers are those of
the checks on signs, sizes and levers.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..document.board import Question
from ..document.english import is_plural, noun_of, sentence, the, weight_of
from ..mechanics.body import Force
from ..solve.outcome import Finding, Outcome
from ..walkthrough.general_words import body_name, joint_pusher

Findings = Sequence[tuple[str, Finding]]
LEVER, SIGN = "lever", "pulls"  # the checks that a question stands before
_ALONE = {"muscle": "pulled", "weight": "pulled", "load": "pulled"}


def which_way(outcome: Outcome, name: str) -> Question | None:
    """Which way the body would turn under one force alone; nothing for one that does not turn it."""
    force = next((each for each in outcome.body.forces if each.name == name), None)
    if force is None or not outcome.moments.get(name):
        return None
    turns = outcome.moments[name] * (-1 if outcome.size(force) < 0 else 1)
    does = _ALONE.get(force.kind, "acted")
    return Question(
        f"Which way would {body_name(outcome)} turn about {the(outcome.pivot)} if only {_named(force)} {does}?",
        "Counter-clockwise." if turns > 0 else "Clockwise.",
    )


def _named(force: Force) -> str:
    return weight_of(force.name) if force.kind in ("weight", "load") else the(force.name)


def before_answer(outcome: Outcome, findings: Findings, name: str) -> Iterator[Question]:
    """What is asked before an answer is worked out."""
    key = dict(outcome.working.asked).get(name, name)
    force = next((each for each in outcome.muscles if each.size.name == key), None)
    if force is not None and (asked := _how_large(outcome, findings, force)):
        yield asked
    if key == "reaction":
        yield Question(
            f"Before we work it out: which way must {joint_pusher(outcome)} push on {body_name(outcome)}, and is it "
            "more or less than the largest force on the figure?"
        )


def _how_large(outcome: Outcome, findings: Findings, muscle: Force) -> Question | None:
    """More or less than what it holds, where the check on sizes has told of it."""
    if not any(check == "size_against_load" and found.result == "holds" for check, found in findings):
        return None
    loads = outcome.weights
    if outcome.arm(muscle) < min(map(outcome.arm, loads)):
        main = max(loads, key=lambda each: abs(outcome.moments[each.name]))
        held, size = weight_of(main.name), outcome.size(main)
    else:
        held, size = "the weight it holds", sum(map(outcome.size, loads))
    more = outcome.pull(muscle) > size
    pull = noun_of("pull", muscle.name)
    why = "it has the shorter arm" if more else "it has the longer arm"
    return Question(
        f"Look at the arms: will {pull} be more or less than {held}?",
        f"{'More' if more else 'Less'}: {why}.",
    )


def before_check(outcome: Outcome, name: str, finding: Finding) -> Question | None:
    """What is asked before a check is told."""
    if name == LEVER:
        muscle = the(outcome.muscles[0].name)
        lies = "do they lie" if is_plural(outcome.muscles[0].name) else "does it lie"
        return Question(
            sentence(
                f"what kind of lever is this: is force gained, or reach and speed? Look at {muscle}: on which side of "
                f"{the(outcome.pivot)} {lies}, and how near"
            ).rstrip(".")
            + "?"
        )
    if name == SIGN and finding.result == "fails":
        return Question("The pull has come out below zero. What does the minus sign tell us about a muscle?")
    return None
