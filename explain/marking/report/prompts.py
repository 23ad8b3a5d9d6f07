"""What the keys of a working are about, in words: what to look at in a line, a check to do there, what is right in
it already. Gives no value.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from ...document.english import counted, listed, noun_of, the, weight_of
from ...solve.outcome import Outcome
from ..marks.scheme import Scheme
from ..slips.verdict import Given, LineVerdict

# Generic checks of common practice; none of them tells what is wrong or what comes out.
CHECKS: Mapping[str, str] = {
    "weight": "Write the unit beside each number of the line. Which unit does the product have?",
    "distance": "Lay a finger on both ends of each distance in the drawing. Does it begin at {pivot}, and end where "
    "the force acts?",
    "arm": "Try the two ends: a force along the bone has no lever arm, one straight across it has the whole distance. "
    "Does the line agree with both?",
    "moment": "Read the units of each product. Is each one a force times a length?",
    "moments": "Count the arrows in your drawing that do not pass through {pivot}, then the terms of the line. "
    "There is one for each, and its sign is the way it turns.",
    "unknown": "Put the number back into the line it was found from. Do both sides come to the same?",
    "part": "Sketch the force with its two parts. Which side of the triangle lies along the direction of the line?",
    "forces": "Count all the arrows in your drawing, the one at {pivot} too, then the terms of the line. "
    "There is one for each, and its sign is the way it points.",
    "joint": "Lay the two parts at right angles. The whole is longer than either and shorter than both in a row. Is "
    "it?",
    "direction": "Sketch the two parts to scale and lay the angle on the sketch. From which line is it measured, "
    "and which way?",
    "stress": "Read the units: a force over an area.",
    "": "Work the line out once more from the one before it, a step at a time.",
}
LOOK: Mapping[str, str] = {
    "weight": "how each weight is found",
    "distance": "each distance, and where it begins",
    "arm": "how the lever arm is found",
    "moment": "each product, and its unit",
    "moments": "the balance of {word}s, term by term",
    "unknown": "the step from the line before",
    "part": "how the force is taken apart",
    "forces": "the balance of forces, term by term",
    "joint": "how the two parts are put together",
    "direction": "the angle, and the line it is measured from",
    "stress": "the step from the line before",
    "": "the step from the line before",
}
_ORDER = ("direction", "joint", "stress", "forces", "unknown", "moments", "moment", "arm", "part", "weight", "distance")
_NOUNS: Mapping[str, str] = {
    "weight": "weight",
    "distance": "distance",
    "arm": "lever arm",
    "moment": "{word}",
    "part": "turning part",
}


def kind(key: str, scheme: Scheme) -> str:
    """What sort of quantity a key is."""
    if key in scheme.unknowns:
        return "unknown"
    head, _, name = key.partition(" ")
    last = key.rpartition(".")[2]
    if name and head in ("*arm", "*reach", "*moment", "*turning", "*level", "*upright"):
        return {"*arm": "arm", "*reach": "arm", "*moment": "moment"}.get(head, "part")
    if key in ("total", "moments", "*sum"):
        return "moments"
    if key == "*angle reaction":
        return "direction"
    if key == "reaction":
        return "joint"
    if key.startswith("reaction.") or key in ("level", "upright"):
        return "forces"
    return {
        "weight": "weight",
        "mass": "weight",
        "stress": "stress",
        "at": "distance",
        "com": "distance",
        "moment_arm": "distance",
    }.get(last, "")


def chief(uses: Iterable[str], scheme: Scheme) -> str:
    """What a line is about, told by the last thing that it finds."""
    kinds = {kind(each, scheme) for each in uses}
    if "moments" in kinds and "unknown" in kinds:
        return "moments"
    return next((each for each in _ORDER if each in kinds), "")


PART_OF = {  # the joint force's own, in words
    "reaction.right": "horizontal part of",
    "reaction.up": "vertical part of",
    "reaction.along": "part along the limb of",
    "reaction.across": "part across the limb of",
}


def rights(lines: Sequence[LineVerdict], answers: Sequence[Given], outcome: Outcome, scheme: Scheme) -> tuple[str, ...]:
    """What is right by lines that hold and answers that are right, in words: "both weights are there"."""
    out = []
    used = dict.fromkeys(key for each in lines for key in each.uses)
    weighed = {_name(key) for key in used if kind(key, scheme) == "weight"}
    for each in ("weight", "arm", "part", "moment"):
        names = list(
            dict.fromkeys(_name(key) for key in used if kind(key, scheme) == each and not key.endswith(".mass"))
        )
        if each == "part":  # the part of an upright weight across a level bone is the weight itself
            names = [name for name in names if name not in weighed]
        every = _every(each, outcome, scheme)
        if names and len(names) >= len(every) > 1:
            out.append(f"{_count(len(every))} {_NOUNS[each].format(word=outcome.word)}s are there")
        elif names and names != [""]:
            out.append(
                f"{listed([_of(each, name, outcome.word) for name in names])} {'is' if len(names) == 1 else 'are'} "
                "right"
            )
    if any(kind(key, scheme) == "moments" for key in used):
        out.append(f"the {outcome.word}s are balanced about {the(outcome.pivot)}")
    told = [each.name.partition(".")[0] for each in answers]
    for key in used:
        if kind(key, scheme) == "unknown" and _name(key) not in told:
            out.append(
                f"the equation for {the(_name(key))} in line "
                f"{next(each.number for each in lines if key in each.uses)} is right"
            )
    out += [f"the value of {each} is right" for each in _values_told(answers, outcome)]
    if "reaction" not in told and any(kind(key, scheme) == "forces" for key in used):
        out.append("the forces are balanced, the one at the pivot with them")
    return tuple(out)


def _values_told(answers: Sequence[Given], outcome: Outcome) -> list[str]:
    """The pulls, and the joint force or, where not all of it is told, its part."""
    given = {each.name for each in answers}
    whole = "reaction" in given or {name for name, _ in outcome.working.asked if name in PART_OF} <= given
    joint = f"the force at {the(outcome.pivot)}"
    out = []
    for each in answers:
        if each.name.startswith("reaction"):
            out.append(joint if whole or each.name not in PART_OF else f"the {PART_OF[each.name]} {joint}")
        else:
            out.append(the(each.name.partition(".")[0]))
    return list(dict.fromkeys(out))


def _name(key: str) -> str:
    return key.partition(" ")[2] if key.startswith("*") else key.rpartition(".")[0] or key


def _every(each: str, outcome: Outcome, scheme: Scheme) -> list[str]:
    if each == "weight":
        return [force.name for force in outcome.weights if force.size.name not in scheme.unknowns]
    return [force.name for force in outcome.body.forces] if each == "moment" else []


def _count(count: int) -> str:
    return "both" if count == 2 else f"all {counted(count)}"


def _of(each: str, name: str, word: str) -> str:
    return weight_of(name) if each == "weight" else noun_of(_NOUNS[each].format(word=word), name)
