"""Predictions and comparisons as sentences: data beside logic. Knows what each ground is called, and works nothing
out.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import groupby

from ..mechanics.body import Body
from ..document.english import is_plural, listed, mass_of, noun_of, sentence, the, verb, weight_of
from ..mechanics.asked import key_of
from ..wording.pivot_words import is_joint, is_supported
from ..solve.outcome import number
from .effects import RISES, Effect
from .prediction import LESS, MORE, SAME, Prediction

WAYS: Mapping[str, str] = {MORE: "larger", LESS: "smaller", SAME: "the same"}
_PARTS: Mapping[str, str] = {
    "reaction.right": "the level part of ",
    "reaction.up": "the upright part of ",
    "reaction.along": "the lengthwise part of ",
    "reaction.across": "the crosswise part of ",
    "reaction": "",
    "reaction.direction": "the direction of ",
}
_SIZES: Mapping[str, Mapping[str, tuple[str, str]]] = {
    "weight": {"larger": ("be", "heavier"), "smaller": ("be", "lighter")},
    "load": {"larger": ("be", "heavier"), "smaller": ("be", "lighter")},
    "muscle": {"larger": ("pull", "harder"), "smaller": ("pull", "less hard")},
    "force": {"larger": ("act", "harder"), "smaller": ("act", "less hard")},
    "couple": {"larger": ("turn", "harder"), "smaller": ("turn", "less hard")},
}
_CAUSES: Mapping[str, tuple[str, str]] = {
    "new": ("be", "new"),
    "gone": ("be", "gone"),
    "farther": ("have", "a longer lever arm"),
    "nearer": ("have", "a shorter lever arm"),
    "other side": ("turn", "the other way now"),
    "other": ("be", "given in another way"),
    "shares": ("share", "the work now"),
    "shares no more": ("share", "the work no more"),
    "longer arm": ("have", "a longer lever arm"),
    "shorter arm": ("have", "a shorter lever arm"),
    "turned": ("act", "in another direction"),
    "larger share": ("take", "a larger share"),
    "smaller share": ("take", "a smaller share"),
    "heavier": ("count", "for more"),
    "lighter": ("count", "for less"),
}


def called(body: Body, name: str) -> str:
    """What an answer is: "the pull of the flexors", "the mass of the jug"."""
    owner, _, part = name.rpartition(".")
    if name in _PARTS:
        pivot, at_joint = the(body.problem.pivot.name), is_joint(body.problem.pivot.name)
        at = "the joint force" if at_joint and not is_supported(body.problem) else f"the force at {pivot}"
        return _PARTS[name] + at
    if not owner:
        force = next((each for each in body.forces if each.name == name), None)
        if force is None:
            return noun_of(body.problem.course.word, name)
        return noun_of("pull" if force.kind == "muscle" else "force", name)
    if owner == "total":
        return f"the sum of the {body.problem.course.word}s"
    nouns = {
        "mass": mass_of(owner),
        "weight": weight_of(owner),
        "at": noun_of("distance", owner),
        "direction": noun_of("angle", owner),
        "moment_arm": noun_of("moment arm", owner),
        "moment": noun_of(body.problem.course.word, owner),
        "com": f"the distance of {the(owner)}'s centre of mass",
        "force": noun_of("force", owner),
        "stress": f"the stress in {the(owner)}",
    }
    return nouns.get(part, f"the {part} of {the(owner)}")


def predicted(body: Body, name: str, prediction: Prediction) -> str:
    """What must happen to the answer, with the reason, in a few sentences; "" where there is nothing to set beside
    it.
    """
    noun, owner = called(body, name), _owner(body, name)
    match prediction.way:
        case "more" | "less" if prediction.ground == "weights":
            return f"{sentence(f'{noun} must be {WAYS[prediction.way]}')} {_weights(noun, prediction.factor)}"
        case "more" | "less" if prediction.ground in ("joint", "pull"):
            return (
                f"{sentence(f'{noun} must be {WAYS[prediction.way]}')} {_told(prediction.effects, owner)} "
                f"{_JOINT[prediction.ground]}"
            )
        case "more" | "less":
            return f"{sentence(f'{noun} must be {WAYS[prediction.way]}')} {_told(prediction.effects, owner)}"
        case "same":
            return f"{sentence(f'{noun} must stay the same')} {sentence(why_same(body, prediction))}"
        case "open":
            return _open(noun, owner, prediction)
    return ""


_JOINT: Mapping[str, str] = {
    "joint": "The joint holds against this and against the pull that balances it: the two together tell.",
    "pull": "All that the pull holds is as before; so the change of the pull itself tells.",
}


def _weights(noun: str, factor: float) -> str:
    return sentence(
        f"every weight scales alike, by the factor {number(factor, 3)}, and nothing else acts with a size of its own: "
        f"so every moment scales alike, and {noun} with them"
    )


def why_same(body: Body, prediction: Prediction) -> str:
    """The reason why an answer does not change: each is said only where it was checked."""
    match prediction.ground:
        case "forces kept":
            return "no force on the body has changed, and none of their moments: what holds against them is what it was"
        case "question":
            return "only the question is new; nothing that acts on the body has changed"
        case "no arm":
            return (
                f"what is new acts through {the(body.problem.pivot.name)}: it has no lever arm there, and so no "
                f"{body.problem.course.word}"
            )
        case "slope":
            return (
                "all forces are parallel and act along one straight line through the pivot, so the slope stands as "
                "the same factor in every lever arm "
                "and drops out of the balance"
            )
        case "factor":
            return (
                f"every {body.problem.course.word} changes in the same proportion, and a common factor drops out "
                "of the balance"
            )
    return (
        f"what is new does not turn the body: every {body.problem.course.word} about "
        f"{the(body.problem.pivot.name)} is as before"
    )


def _open(noun: str, owner: str, prediction: Prediction) -> str:
    if prediction.ground == "opposite":
        up = [each for each in prediction.effects if each.sense == RISES]
        down = [each for each in prediction.effects if each.sense != RISES]
        count = "Two effects" if len(_grouped(up)) == len(_grouped(down)) == 1 else "Several effects"
        return (
            f"{count} pull opposite ways. {_told(up, owner)} That asks for more. {_told(down, owner)} That asks for "
            "less. "
            f"Signs alone do not tell which wins, so only the numbers can say whether {noun} is larger or smaller."
        )
    why = {
        "turned over": "what is sought would turn the body the other way now",
        "no single balance": "it does not follow from one balance alone",
        "two parts": "one of its parts grows and the other does not",
        "several": "a size and a lever arm have both changed",
    }.get(prediction.ground, "")
    return (
        f"Signs alone do not tell whether {noun} is larger or smaller{f', since {why}' if why else ''}: only the "
        "numbers can."
    )


def _owner(body: Body, name: str) -> str:
    key = key_of(body, name)
    return the(key.rpartition(".")[0] or key)


def _grouped(effects: Iterable[Effect]) -> list[tuple[tuple[str, bool | None, str], list[str]]]:
    """Effects of one cause together."""

    def cause(each: Effect) -> tuple[str, bool | None, str]:
        return each.cause, each.against, each.kind if each.cause in ("larger", "smaller", "new", "gone") else ""

    ordered = sorted(effects, key=lambda each: str(cause(each)))
    return [(key, [each.name for each in group]) for key, group in groupby(ordered, key=cause)]


def _told(effects: Sequence[Effect], owner: str) -> str:
    return " ".join(
        sentence(_clause(cause, kind, against, names, owner)) for (cause, against, kind), names in _grouped(effects)
    )


def _clause(cause: str, kind: str, against: bool | None, names: list[str], owner: str) -> str:
    """ "the hand is new and turns against the flexors"."""
    stem, rest = _SIZES.get(kind, {}).get(cause) or _CAUSES[cause]
    many = len(names) > 1
    weights = kind == "weight" and cause in ("new", "gone")
    said = (
        f"the {'weights' if many else 'weight'} of {listed([the(name) for name in names])} "
        f"{'are' if many else 'is'} {rest}"
        if weights
        else f"{listed([the(name) for name in names])} {_verb(names[0], stem, many)} {rest}"
    )
    if against is None or cause == "other side":
        return said
    plural = many or is_plural(names[0]) and not weights
    turns = "turned" if cause == "gone" else "turn" if plural else "turns"
    way = f"against {owner}" if against else f"the same way as {owner}"
    mark = ", and" if cause in ("farther", "nearer", "larger", "smaller") else " and"
    return f"{said}{mark} {turns} {way}"


def _verb(name: str, stem: str, many: bool) -> str:
    return {"be": "are"}.get(stem, stem) if many else verb(name, stem)
