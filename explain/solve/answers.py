"""The answers of a working: unrounded values from its certified lines, as shown, with direction and words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import atan2, degrees, hypot

from ..equation import key as keys
from ..mechanics.body import Bearing
from ..mechanics.signed_letters import of_force_down
from ..equation.terms import Quantity, Shown, Term, Unit, lone
from ..exact.prime_field import dimension
from ..exact.interval import fraction, in_unit, middle, to_figures
from ..problem.model import Direction
from .engine import Working
from .true_letters import joint_along
from ..wording.direction_words import direction_words, plain_degrees, turned_words
from ..wording.phrases import what_out_is_along


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer. `value` in `unit` is unrounded; `direction` in degrees counter-clockwise from right, 0 to 360, or
    None.

    `others` are the further roots of an angle with the reason each was set aside.
    """

    name: str
    value: float
    unit: str
    shown: str
    direction: float | None = None
    words: str = ""
    others: tuple[float, ...] = ()
    reasons: tuple[str, ...] = ()


def told_short(found: Mapping[str, Answer]) -> str:
    """All answers on one line: "biceps 302 N, reaction 257 N"."""
    return ", ".join(f"{name} {answer.shown}" for name, answer in found.items())


def answers(working: Working) -> dict[str, Answer]:
    """All answers asked for, in order; the parts of the joint force with the whole."""
    out: dict[str, Answer] = {}
    for name, key in working.asked:
        out[name] = _answer(working, name, key)
    if "reaction" in out:
        parts = (
            ("reaction.along", "reaction.across")
            if working.body.problem.course.axes
            else ("reaction.right", "reaction.up")
        )
        for name in parts:
            out.setdefault(name, _answer(working, name, name))
    for pull in working.body.problem.pulls:
        key = f"{pull.name}.stress"
        if pull.area is not None and key in working.checker.ledger:
            out.setdefault(key, _answer(working, key, key))
    return out


def _answer(working: Working, name: str, key: str) -> Answer:
    if keys.of(key).is_angle:
        return _angle(working, name, key)
    value, unit = _value(working, key)
    shown = _shown(working, key, value) if value else "0"
    if value and key in of_force_down(working.body):  # the letter is of the part that points against the force
        value, shown = -value, shown.removeprefix("-") if shown.startswith("-") else f"-{shown}"
    unit_name = spelled(unit)
    if key == "reaction":
        return Answer(name, value, unit_name, f"{shown} {unit_name}", *_joint_direction(working))
    force = next((each for each in working.body.forces if each.size.name == key), None)
    if force is None or not force.directed or not keys.of(key).is_force:
        return Answer(name, value, unit_name, f"{shown} {unit_name}".strip())
    turn = force_direction(working, force.name)
    return Answer(name, value, unit_name, f"{shown} {unit_name}", turn, direction_words(turn))


def _value(working: Working, key: str) -> tuple[float, Unit]:
    """An unrounded value: through the certified lines where they carry it exactly, else by exact replacement of what
    they show.
    """
    unit = unit_of_answer(working, key)
    terms = working.checker.ledger.get(key)
    if working.checker.carry_shown or terms is None:
        size = _float(working, key)
        factor = middle(in_unit(Fraction(1), unit))
        value = float(f"{size * factor:.12g}")  # found in floats
    else:
        value = middle(in_unit(working.checker.sizes.sum(terms), unit))
    if dimension(unit) == (1, 1, -2) and abs(value) < 1e-9 * working.settled.largest_force():
        value = 0.0
    return value, unit


def _float(working: Working, key: str) -> float:
    values = working.settled.values
    if key == "reaction":
        return hypot(values["reaction.right"], values["reaction.up"])
    if key in (keys.ALONG, keys.ACROSS):
        parts = joint_along(working.body.bearings[working.body.problem.course.axes], values)
        return parts[key == keys.ACROSS]
    sense = working.body.problem.course.sense
    if keys.of(key).what == "*moment":
        return sense * working.truth.size(working.truth.moment[keys.of(key).owner], values)
    if key == "total":
        return sense * sum(working.truth.size(each, values) for each in working.truth.moment.values())
    if keys.of(key).what == "stress":
        name = keys.of(key).owner
        return working.sizes[f"{name}.force"] / values[f"{name}.area"]
    return values[key]


def unit_of_answer(working: Working, key: str) -> Unit:
    """The unit an answer is given in."""
    body = working.body
    given, what = next((each.value.unit for each in body.givens if each.letter.name == key), None), keys.of(key).what
    if key == keys.FRICTION:
        return ()
    if keys.of(key).is_joint or what in ("force", "weight"):
        return ((body.force_unit, 1),)
    if what in ("mass", "hung"):
        return ((body.mass_unit, 1),)
    if what in ("*moment", "total", "moment"):
        found = _written_unit(working.checker.ledger.get(key))
        return found or ((body.force_unit, 1), (body.length_unit, 1))
    if what == "stress":
        return _written_unit(working.checker.ledger.get(key)) or ((body.force_unit, 1), ("cm", -2))
    if given is not None and dimension(given) != (0, 1, 0):
        return given
    return ((body.length_unit, 1),)


def _written_unit(terms: tuple[Term, ...] | None) -> Unit:
    match lone(terms) if terms and terms[0].sign > 0 else terms[0].factors[0] if terms and len(terms) == 1 else None:
        case Quantity(unit=unit) | Shown(value=Quantity(unit=unit)):
            return unit
    return ()


def spelled(unit: Unit) -> str:
    """A unit as people write it: "N", "N cm", "lb", "N/cm^2"."""
    top = [("lb" if name == "lbf" else name) + (f"^{power}" if power > 1 else "") for name, power in unit if power > 0]
    bottom = [
        ("lb" if name == "lbf" else name) + (f"^{-power}" if power < -1 else "") for name, power in unit if power < 0
    ]
    if len(top) == 2 and top[0] == "lb":
        top = [top[1], top[0]]
    return " ".join(top) + ("/" + " ".join(bottom) if bottom else "")


def _shown(working: Working, key: str, value: float) -> str:
    """The number as the page shows it: the last line that has the letter alone."""
    for move in reversed(working.moves):
        alone = lone(move.line.equation.left)
        if getattr(alone, "name", None) == key and len(move.line.equation.right) == 1:
            each = move.line.equation.right[0]
            match each.factors:
                case (Quantity(number),) | (Shown(value=Quantity(number)),):
                    return ("-" if each.sign < 0 else "") + _digits(_as_an_answer(working, number, value))
    figures = working.body.problem.course.figures
    return _digits(to_figures(Fraction(value), figures, working.body.problem.course.ties)) if value else "0"


def _as_an_answer(working: Working, number: Decimal, value: float) -> Decimal:
    """A number of a line that was not rounded as an answer, rounded: from the exact value, or from what is carried."""
    course = working.body.problem.course
    if not value:
        return number
    if len(number.as_tuple().digits) <= course.figures:
        return to_figures(Fraction(number), course.figures, course.ties)  # an exact value has the class's figures too
    return to_figures(
        Fraction(number) if working.checker.carry_shown else Fraction(abs(value)), course.figures, course.ties
    )


def _digits(number: Decimal) -> str:
    return f"{number:f}"


# ---------------------------------------------------------------------- directions
def _turn(bearing: Bearing, values: Mapping[str, float]) -> float:
    return float(bearing.at(values) % 360)


def force_direction(working: Working, name: str) -> float:
    """The stated direction of a force in degrees."""
    force, values = working.body.force(name), working.settled.values
    if force.bearing is not None:
        return round(_turn(force.bearing, values), 9) % 360
    assert force.toward is not None
    return (
        degrees(
            atan2(
                force.toward.up * values[force.toward.rise.name], force.toward.right * values[force.toward.across.name]
            )
        )
        % 360
    )


def _joint_direction(working: Working) -> tuple[float | None, str]:
    right, up = (working.settled.values[each] for each in ("reaction.right", "reaction.up"))
    largest = working.settled.largest_force(default=1.0)
    if hypot(right, up) < 1e-9 * largest:
        return None, ""
    right, up = (0.0 if abs(each) < 1e-9 * largest else each for each in (right, up))
    turn = degrees(atan2(up, right)) % 360
    return turn, direction_words(turn, written_angle(working))


def written_angle(working: Working) -> str:
    """The angle of the joint force to the level as the page wrote it; "" where it had no need to, or took it from a
    bone.
    """
    key = keys.JOINT_ANGLE
    if working.body.problem.course.axes or key not in working.checker.ledger:
        return ""
    return f"{_shown(working, key, 0.0)}°"


def _angle(working: Working, name: str, key: str) -> Answer:
    values, owner = working.settled.values, keys.of(key).owner
    terms = working.checker.ledger.get(key)
    exact = terms is not None and not working.checker.carry_shown
    value = float(fraction(working.checker.sizes.sum(terms))) if exact and terms is not None else values[key]
    found = working.settled.roots.get(key, [value])
    bearing = working.body.bearings.get(owner) or next(
        each.bearing for each in working.body.forces if each.name == owner and each.bearing
    )
    turn = _turn(bearing, values)
    shown = _shown(working, key, value)
    others = tuple(round(each, 9) for each in found[1:])
    reasons = tuple(_why_not(working, key, each, value) for each in others)
    return Answer(name, value, "deg", f"{shown} deg", turn, direction_words(turn), others, reasons)


def direction_of(working: Working, owner: str) -> Direction:
    """The direction of a segment or a pull as it was stated."""
    problem = working.body.problem
    stated = {each.name: each.direction for each in problem.segments} | {
        each.name: each.direction for each in problem.pulls if each.direction
    }
    return stated[owner]


def _why_not(working: Working, key: str, root: float, taken: float) -> str:
    """A further root in words, and why it was set aside."""
    bounds = next((each.range for each in working.body.sought if each.letter.name == key), None)
    owner = keys.of(key).owner
    said = turned_words(direction_of(working, owner), root, along=what_out_is_along(working.body.problem, owner))
    turn = f" (a turn of {plain_degrees(root)})" if bounds is not None else ""
    said += f"{turn}, balances too" if "," in said else f"{turn} balances too"
    if bounds is not None:
        low, high = map(float, bounds)
        if any(low - 1e-9 <= each <= high + 1e-9 for each in (root, root - 360)):
            return f"{said}, and lies in the range that was given as well"
        return f"{said}, but lies outside the range that was given ({plain_degrees(low)} to {plain_degrees(high)})"
    if root > 180:
        return f"{said}; the problem counts its angle the other way from there"
    return f"{said}; of the two the smaller turn is taken" if root > taken else said
