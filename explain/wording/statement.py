"""A problem told in a few plain sentences, for an author who gave only its data. Works nothing out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from ..document.english import (
    a,
    counted,
    each_of,
    is_a_weight,
    is_of_the_body,
    is_plural,
    it,
    its,
    listed,
    noun_of,
    sentence,
    the,
    verb,
    weight_of,
)
from ..equation.terms import Quantity
from .phrases import (
    acts,
    along,
    before,
    from_table,
    left_out,
    once,
    place,
    point,
    segment_of,
    share_of_mass,
    share_of_weight,
    square_of,
    stands,
    told,
    turned_body,
    way,
)
from ..problem.model import AtLimit, Couple, FromTable, Load, Multiple, Percent, Problem, Pull, Segment, Unknown
from .pivot_words import rough
from .questions import question
from .hung_words import hung
from .spread_words import spread

_POSTURES: Mapping[str, str] = {
    "right": "horizontal",
    "left": "horizontal",
    "up": "vertical",
    "down": "hanging straight down",
}
_TURNS: Mapping[int, str] = {1: "counter-clockwise", -1: "clockwise"}
_POUND = (("lb", 1),)


def compose(problem: Problem) -> str:
    """The statement in two to five sentences: loads, body, pulls, what is left out, and the question. Plain text, no
    markup.

    Where the body is one limb the loads come first, so that "it" in the pulls is the limb; a plank comes before its
    loads.
    """
    limb = len(problem.segments) == 1 and is_of_the_body(problem.segments[0].name)
    loads, body = _loads(problem), _body(problem)
    told_first = (loads, body) if limb else (body, loads)
    said = (*told_first, _pulls(problem, limb), _rough_and_left_out(problem), question(problem))
    return once(" ".join(part for part in said if part), problem)


# ---------------------------------------------------------------------- the body
def _body(problem: Problem) -> str:
    parts = [_segment(problem, index) for index in range(len(problem.segments))]
    return sentence("; ".join(parts)) if parts else ""


def _segment(problem: Problem, index: int) -> str:
    segment = problem.segments[index]
    facts = [f"{told(segment.length)} long"] if segment.length else []
    facts += _heaviness_and_centre(problem, segment)
    bracket = f" ({', '.join(facts)})" if facts else ""
    return f"{_beginning(problem, index)}{a(segment.name)}{bracket} {_posture(problem, segment, bool(index))}"


def _heaviness_and_centre(problem: Problem, segment: Segment) -> list[str]:
    if not segment.mass and not segment.weight:
        return []
    if isinstance(segment.mass, FromTable) and isinstance(segment.com, FromTable):
        return [f"mass and centre of mass {from_table(problem)}"]
    return [_heaviness(problem, segment), f"centre of mass {along(problem, segment.com, segment.name, itself=True)}"]


def _beginning(problem: Problem, index: int) -> str:
    near = before(problem, problem.segments[index].name)
    if not near:
        return ""
    return (
        f"at {its(near)} far end, "
        if near == problem.segments[index - 1].name
        else f"also at the far end of {the(near)}, "
    )


def _posture(problem: Problem, segment: Segment, later: bool) -> str:
    name, direction = segment.name, segment.direction
    still = "at rest" if problem.balanced and not later else ""
    if direction.turn is not None:
        return f"{verb(name, 'be')} {still}{still and ', '}{way(direction, before(problem, name))}"
    aligned = "in line with" if direction.start == "out" else "folded back along"
    posture = _POSTURES.get(direction.start) or f"{aligned} {the(before(problem, name))}"
    pointing = ", pointing left" if direction.start == "left" else ""
    return f"{verb(name, 'be')} {posture}{still and f' and {still}'}{pointing}"


# ---------------------------------------------------------------------- its loads
def _heaviness(problem: Problem, item: Segment | Load) -> str:
    """Mass or weight as a fact in brackets, or what it is a share of."""
    word, amount = ("mass", item.mass) if item.mass else ("weight", item.weight)
    match amount:
        case Quantity():
            return f"{_kind(item)}{told(amount)}"
        case Percent():
            return share_of_mass(problem, amount) if item.mass else share_of_weight(problem, amount)
        case FromTable():
            return f"{word} {from_table(problem)}"
    return f"unknown {word}"


def _kind(item: Segment | Load) -> str:
    """The word that a number needs: a kilogram is a mass by itself, a pound may be either, a newton is what
    something weighs.
    """
    if isinstance(item.mass, Quantity):
        return "mass " if item.mass.unit == _POUND else ""
    return "weighing " if not is_a_weight(item.name) else ""


def _loads(problem: Problem) -> str:
    parts = [_load(problem, load) for load in problem.loads]
    mark = "; " if len(parts) > 2 or any(" and " in part or "," in part for part in parts) else " and "
    return sentence(mark.join(parts)) if parts else ""


def _load(problem: Problem, load: Load) -> str:
    on = next((segment for segment in problem.segments if segment.name == segment_of(problem, load.place)), None)
    level = on is not None and on.direction.turn is None and on.direction.start in ("left", "right")
    if load.spread is not None:
        laden = a(load.name) if load.spread.growing and load.per_length else _laden(problem, load)
        return f"{laden} {spread(problem, load)}"
    return f"{_laden(problem, load)} {verb(load.name, stands(load, level))} {place(problem, load.place)}"


def _laden(problem: Problem, load: Load) -> str:
    """ "a rock of 6.0 kg", "a crate weighing 41 N"; "Leo (47 kg)", "the head (4.3 kg)" where the name is known
    already.
    """
    heavy, name = _heaviness(problem, load), a(load.name)
    if isinstance(load.mass or load.weight, Percent) or name == the(load.name):
        return f"{name} ({heavy})"
    return f"{name} {heavy}" if heavy.startswith("weighing") else f"{name} of {heavy}"


# ---------------------------------------------------------------------- what pulls
def _pulls(problem: Problem, limb: bool) -> str:
    parts = [_pull(problem, pull, limb) for pull in problem.pulls] + [
        _couple(problem, couple) for couple in problem.couples
    ]
    sharing = [pull for pull in problem.pulls if pull.share]
    if sharing:
        square = square_of(sharing[0].area)
        parts.append(f"each {square} of {listed([the(pull.name) for pull in sharing])} pulls equally hard")
    return sentence("; ".join(parts)) if parts else ""


def _pull(problem: Problem, pull: Pull, limb: bool) -> str:
    facts = (
        ([f"{counted(pull.count)} alike"] if pull.count > 1 else [])
        + ([f"cross-section {told(pull.area)}"] if pull.area else [])
        + ([f"at most {told(pull.limit)}"] if isinstance(pull.limit, Quantity) else [])
    )
    named = (each_of if pull.count > 1 else the)(pull.name) + (f" ({', '.join(facts)})" if facts else "")
    segment, where = segment_of(problem, pull.place), place(problem, pull.place)
    ways = _ways(problem, pull, segment)
    does, how = _does(pull, acts(pull)), _joined(_size(problem, pull), ways)
    how += hung(pull)
    if not where:
        return f"{named} {does}{how}"
    if pull.kind != "muscle":
        return f"{named} {does}{_at_a_place(segment, acts(pull), where, how, not ways or _is_plain(ways[0]))}"
    meets = f"{_does(pull, 'meet')} {it(segment) if limb else the(segment)}" if segment else _does(pull, "attach")
    return f"{named} {meets} {where}{',' if ',' in where else ''} and {does}{how}"


def _at_a_place(segment: str, stem: str, where: str, how: str, plain: bool) -> str:
    """ " straight up with 95 N, 29 cm from the elbow"; an oblique force has its place first, since its direction is
    long.
    """
    if plain:
        return f"{how} {where}" if where.startswith("at ") and "," not in where else f"{how}, {where}"
    on = f" on {the(segment)}" if segment else "" if stem == "act" or where.startswith("at ") else " from"
    return f"{on} {where}{',' if ',' in where or how[1:2].isdigit() else ''}{how}"


def _does(pull: Pull, stem: str) -> str:
    return verb("one", stem) if pull.count > 1 else verb(pull.name, stem)


def _joined(size: str, ways: Sequence[str]) -> str:
    """How hard and which way: " straight up with 95 N", " with 150 N, 75° above the level, to the right"."""
    if not ways:
        return size
    first, *more = ways
    comma = "," if size and not first.startswith(("toward", "at a")) else ""
    said = f" {first}{size}" if _is_plain(first) else f"{size}{comma} {first}"
    return "".join((said, *(f"{',' if ',' in said else ''} {other}" for other in more)))


def _is_plain(words: str) -> bool:
    return words.startswith(("straight", "horizontally", "back along", "out along"))


def _ways(problem: Problem, pull: Pull, segment: str) -> list[str]:
    ways = []
    if pull.direction:
        ways.append(way(pull.direction, segment, pull.kind == "muscle"))
    if pull.toward:
        ways.append(f"toward the point {point(problem, pull.toward)}")
    if pull.moment_arm:
        arm = (
            "an unknown moment arm"
            if isinstance(pull.moment_arm, Unknown)
            else f"a moment arm of {told(pull.moment_arm)}"
        )
        turning = f"turning {turned_body(problem, pull.place.on)} {_TURNS[pull.turns]}"
        ways.append(f"at {arm} about {the(problem.pivot.name)}, {turning}")
    return ways


def _size(problem: Problem, pull: Pull) -> str:
    match pull.force:
        case Quantity():
            return f" with {told(pull.force)}"
        case Percent():
            return f" with {share_of_weight(problem, pull.force)}"
        case Multiple(factor, other):
            return f" with {told(factor)} times {_other_force(problem, other)}"
        case AtLimit():
            return " as hard as they can" if is_plural(pull.name) else " as hard as it can"
    return ""


def _other_force(problem: Problem, name: str) -> str:
    muscles = {pull.name: pull.kind == "muscle" for pull in problem.pulls}
    return weight_of(name) if name not in muscles else noun_of("pull" if muscles[name] else "force", name)


def _couple(problem: Problem, couple: Couple) -> str:
    size = "" if isinstance(couple.moment, Unknown) else f" with a {problem.course.word} of {told(couple.moment)}"
    return f"{the(couple.name)} {verb(couple.name, 'turn')} {turned_body(problem)} {_TURNS[couple.turns]}{size}"


def _rough_and_left_out(problem: Problem) -> str:
    """What there is of friction and what is left out, in one sentence."""
    said = [each.rstrip(".") for each in (rough(problem), _left_out(problem)) if each]
    return sentence("; ".join([*said[:1], *(each[:1].lower() + each[1:] for each in said[1:])])) if said else ""


def _left_out(problem: Problem) -> str:
    phrases = left_out(problem)
    return sentence(f"leave out {listed(phrases)}") if phrases else ""
