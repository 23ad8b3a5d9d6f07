"""What a row of a marking scheme may look for, by the names of a problem file, and the keys of a working that show
it. Knows no working.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from .toml_table import Fields
from .model import Mark, Problem
from .source_tables import unknown_name

ALWAYS = ("moments", "level", "upright", "unit", "direction", "diagram")
_JOINT = ("reaction", "reaction.right", "reaction.up", "reaction.along", "reaction.across", "reaction.direction")
_PARTS = {
    "arm": "*arm {}",
    "moment": "*moment {}",
    "turning": "*turning {}",
    "level": "*level {}",
    "upright": "*upright {}",
    "direction": "*angle {}",
}


def settled(problem: Problem, tables: Sequence[Fields]) -> tuple[Mark, ...]:
    """The rows with what each looks for: as written, else by the names that stand in its words. Raises Fault at the
    first thing that this problem does not have, and at a row that names nothing.
    """
    known = names(problem)
    return tuple(_settled(mark, fields, problem, known) for mark, fields in zip(problem.marks, tables, strict=True))


def _settled(mark: Mark, fields: Fields, problem: Problem, known: Sequence[str]) -> Mark:
    for each in mark.needs:
        if each not in known:
            raise _unknown(fields, each, known)
    needs = mark.needs or _in_words(mark.what, problem, known)
    if not needs:
        raise fields.missing(
            "needs",
            "the quantities that the working has to show for it, or their names in `for`",
            'needs = ["weights"]',
        )
    return replace(mark, needs=needs)


def _in_words(what: str, problem: Problem, known: Sequence[str]) -> tuple[str, ...]:
    """The quantities that words name, in their order: "moments about the elbow" are the moments."""
    plain = {each.casefold(): each for each in ("moments", "weights", "level", "upright", "reaction") if each in known}
    things = (*(each.name for each in problem.pulls), *(each.name for each in problem.couples), *_heavy(problem))
    plain |= {name.casefold(): name for name in things}
    plain["torques"] = "moments"
    longest = sorted(plain, key=len, reverse=True)
    found = re.findall(rf"(?<!\w)(?:{'|'.join(map(re.escape, longest))})(?!\w)", what.casefold())
    return tuple(dict.fromkeys(plain[each] for each in found))


def _unknown(fields: Fields, need: str, known: Sequence[str]) -> Exception:
    fault = unknown_name(fields, "needs", need, list(known), "what this problem has")
    return fields.fault("needs", fault.found, fault.expected, fault.example.replace('needs = "', 'needs = ["') + "]")


def names(problem: Problem) -> tuple[str, ...]:
    """Everything that `needs` may name in this problem."""
    heavy, pulls = _heavy(problem), tuple(each.name for each in problem.pulls)
    owned = [f"{name}.{part}" for name in (*pulls, *heavy) for part in ("arm", "moment", "turning", "level", "upright")]
    owned += [f"{name}.{part}" for name in heavy for part in ("mass", "weight")] + [
        f"{name}.{part}" for name in pulls for part in ("force", "stress")
    ]
    owned += [f"{each.name}.{part}" for each in problem.segments for part in ("direction", "com")]
    owned += [f"{name}.at" for name in (*pulls, *(each.name for each in problem.loads))]
    joint = _JOINT if problem.pivot.reaction else ()
    weights = ("weights",) if heavy else ()
    couples = tuple(each.name for each in problem.couples)
    return (*ALWAYS, *weights, *joint, *pulls, *heavy, *couples, "total.moment", *owned)


def keys(mark: Mark, problem: Problem) -> tuple[str, ...]:
    """The keys of a working for what a mark needs, in order."""
    return tuple(key for need in mark.needs for key in _keys(need, problem))


def _keys(need: str, problem: Problem) -> tuple[str, ...]:
    heavy = _heavy(problem)
    if need == "weights":
        return tuple(f"{name}.weight" for name in heavy)
    if need in heavy:
        return (f"{need}.weight",)
    if need in {each.name for each in problem.pulls}:
        return (f"{need}.force",)
    if need in {each.name for each in problem.couples}:
        return (f"{need}.moment",)
    if need == "total.moment":
        return ("total",)
    owner, _, part = need.rpartition(".")
    if owner and part in _PARTS:
        return (_PARTS[part].format(owner),)
    return (need,)


def _heavy(problem: Problem) -> tuple[str, ...]:
    return (
        *(each.name for each in problem.segments if each.mass or each.weight),
        *(each.name for each in problem.loads),
    )
