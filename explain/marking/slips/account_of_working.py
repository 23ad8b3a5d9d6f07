"""A worked problem as an account: its data, items and stages as the class writes them. Knows geometry, no slip."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from math import atan2, degrees, hypot

from ...equation.terms import Group, Letter, Quantity, Term, Trig
from ...mechanics.body import RIGHT, UP, Bearing, Body, Force
from ...mechanics.geometry import lever, part
from ...mechanics.settlement import Stage
from ...problem.model import FromTable, Unknown
from ...problem.quantity import convert
from ...reference.gravity import IN_CLASSES
from ...reference.segment_tables import other_rows
from ...solve.engine import Working
from .account import BOTH, Account, Item, Leg, Share, Turned

METRE = (("m", 1),)
MADE = ("middle", "third", "per length", "ratio")  # what follows from other data at once stands among the data


def account_of(working: Working) -> Account:
    """The account of a working. Its values are those of the truth (a test compares them)."""
    body, values = working.body, working.sizes
    data = {each.letter.name: values[each.letter.name] for each in body.givens}
    shares = tuple(
        Share(each.letter.name, each.of[0].name, each.of[1].name) for each in body.relations if each.kind == "share"
    )
    data |= {each.letter.name: values[each.letter.name] for each in body.relations if each.kind in MADE}
    items = tuple(_item(body, force, values, data) for force in body.forces)
    couples = tuple(Item(each.name, "couple", each.size.name, turns=each.turns) for each in body.twists)
    stages = tuple(
        each
        for stage in working.settled.stages
        for each in _pairs(working, stage)
        if not each[1].startswith("reaction.")
    )
    used = next((each for each in body.relations if each.kind == "slips"), None)
    if used is not None:
        stages = tuple((each if each.startswith("moments") else "friction", key) for each, key in stages)
    roots = {unknown: values[unknown] for _, unknown in stages}
    bone = body.problem.course.axes
    slope = None if not bone else _degrees(body.bearings[bone], values)
    data |= {key: value for key, value in _places(working).items()}
    data.setdefault("g", values.get("g", IN_CLASSES[0]))
    _masses(working, data)
    first = next(iter(body.bearings.values()), None)
    return Account(
        data,
        shares,
        (*items, *couples),
        stages,
        roots,
        slope,
        body.problem.pivot.reaction,
        written={each.letter.name: (str(each.value.number), _unit(each.value)) for each in body.givens},
        rows=_rows(body),
        length=float(convert(Quantity(Decimal(1), ((body.length_unit, 1),)), METRE).number),
        lies=None if first is None else _degrees(first, values),
        slips=0 if used is None else int(used.parts[0][0]),
        grounded=used is None or used.letter.name == "reaction.right",
        surface=float(body.problem.pivot.surface),
        rubs=isinstance(body.problem.pivot.friction, Unknown),
    )


def _pairs(working: Working, stage: Stage) -> tuple[tuple[str, str], ...]:
    """Each unknown of a stage with what gives it; of one force first the angle, then the size, from the part that
    the working took.
    """
    if not stage.polar:
        return ((stage.balance, stage.unknown), *stage.partners)
    back = next(
        (move.goal.key for move in working.moves if move.goal.kind == "back" and move.goal.sought == stage.unknown),
        stage.balance,
    )
    return ((BOTH, stage.partners[0][1]), (back, stage.unknown))


def _unit(value: Quantity) -> str:
    return value.unit[0][0] if len(value.unit) == 1 and value.unit[0][1] == 1 else ""


def _rows(body: Body) -> dict[str, tuple[float, ...]]:
    """What the other rows of the class's table have where a share was looked up, of segments of the same limb."""
    person = body.problem.person
    if person is None or not person.table:
        return {}
    out = {}
    for segment in body.problem.segments:
        rows = other_rows(person.table, segment.name, person.sex, person.own)
        for end, written, found in (
            ("mass%", segment.mass, [each.mass_percent for each in rows]),
            ("com%", segment.com, [each.com_percent for each in rows]),
        ):
            if isinstance(written, FromTable) and found:
                out[f"{segment.name}.{end}"] = tuple(dict.fromkeys(float(each) / 100 for each in found))
    return out


def _masses(working: Working, data: dict[str, float]) -> None:
    """A body's weight that shares are taken of is mass times g; lengths of segments that no place needs."""
    for each in working.body.relations:
        if each.kind == "weight" and each.letter.name == "*person.weight":
            data["*person.weight"] = working.settled.values["*person.weight"]
    for segment in working.body.problem.segments:
        if segment.length is not None:
            data.setdefault(f"{segment.name}.length", float(convert(segment.length, METRE).number))


def _places(working: Working) -> dict[str, float]:
    out = {}
    for force in working.body.forces:
        if force.arm is None:
            x, y = working.truth.place[force.name]
            try:
                out[f"*x {force.name}"], out[f"*y {force.name}"] = (
                    working.truth.size(each, working.settled.values) for each in (x, y)
                )
            except KeyError:
                continue
    return out


def _item(body: Body, force: Force, values: Mapping[str, float], data: dict[str, float]) -> Item:
    key = force.size.name
    weight = next((each for each in body.relations if each.kind == "weight" and each.letter == force.size), None)
    multiple = next((each for each in body.relations if each.kind == "multiple" and each.letter == force.size), None)
    turns, legs, arm = _legs(body, force, values, data)
    level, upright = _parts(body, force, values)
    segment = next((each for each in body.problem.segments if each.name == force.segment), None)
    return Item(
        force.name,
        force.kind,
        key,
        weight.of[0].name if weight else "",
        1,
        (multiple.of[0].name, multiple.of[1].name) if multiple else ("", ""),
        legs,
        arm,
        turns,
        level,
        upright,
        force.count,
        segment=force.segment,
        length=f"{segment.name}.length" if segment and segment.length else "",
    )


def _legs(
    body: Body, force: Force, values: Mapping[str, float], data: dict[str, float]
) -> tuple[int, tuple[Leg, ...], str]:
    if force.arm is not None:
        return force.turns, (), force.arm.name
    found = lever(body, force, values)
    if force.toward is not None:
        data[f"*line {force.name}"] = hypot(values[force.toward.across.name], values[force.toward.rise.name])
        x, y = data_place(force, values)
        right, up = (
            force.toward.right * values[force.toward.across.name],
            force.toward.up * values[force.toward.rise.name],
        )
        data[f"*reach {force.name}"] = abs(x * up - y * right) / data[f"*line {force.name}"]
        return found.sense, (), f"*reach {force.name}"
    return found.sense, tuple(_leg(each) for each in found.terms), ""


def data_place(force: Force, values: Mapping[str, float]) -> tuple[float, float]:
    """Where a force acts, right and up of the pivot, in m."""
    from math import cos, radians, sin

    turns = [(values[step.distance.name], radians(_degrees(step.bearing, values))) for step in force.steps]
    return sum(s * cos(a) for s, a in turns), sum(s * sin(a) for s, a in turns)


def _leg(written: Term) -> Leg:
    distance = next(each for each in written.factors if isinstance(each, Letter))
    trig = next((each for each in written.factors if isinstance(each, Trig)), None)
    return Leg(distance.name, _turned(written.sign, trig))


def _turned(sign: int, trig: Trig | None) -> Turned:
    match trig:
        case None:
            return Turned(sign)
        case Trig(function, Quantity(number)):
            return Turned(sign, function, float(number))
        case Trig(function, Letter(name)):
            return Turned(sign, function, 0.0, ((name, 1),))
        case Trig(function, Group(terms)):
            return Turned(sign, function, *_sum(terms))
    raise TypeError(f"a lever arm with {trig}")


def _sum(terms: tuple[Term, ...]) -> tuple[float, tuple[tuple[str, int], ...]]:
    total, unknown = 0.0, []
    for each in terms:
        numbers = [float(f.number) for f in each.factors if isinstance(f, Quantity)]
        letters = [f.name for f in each.factors if isinstance(f, Letter)]
        size = each.sign * (numbers[0] if numbers else 1.0)
        if letters:
            unknown.append((letters[0], int(size)))
        else:
            total += size
    return total, tuple(unknown)


def _parts(body: Body, force: Force, values: Mapping[str, float]) -> tuple[Turned | None, Turned | None]:
    """The parts of a force to the right and up, as a class writes them."""
    if not force.directed:
        return None, None
    if force.toward is not None:
        right, up = (
            force.toward.right * values[force.toward.across.name],
            force.toward.up * values[force.toward.rise.name],
        )
        angle = degrees(atan2(abs(up), abs(right)))
        return Turned(force.toward.right, "cos", angle), Turned(force.toward.up, "sin", angle)
    assert force.bearing is not None
    if force.bearing.unknown:
        return Turned(1, "cos", float(force.bearing.degrees), _unknown(force.bearing)), Turned(
            1, "sin", float(force.bearing.degrees), _unknown(force.bearing)
        )
    sides = [part(body, force, axis, axis is RIGHT) for axis in (RIGHT, UP)]
    out = [
        Turned(0) if not each.sign else _turned(each.sign, next((f for f in each.factors if isinstance(f, Trig)), None))
        for each in sides
    ]
    return out[0], out[1]


def _unknown(bearing: Bearing) -> tuple[tuple[str, int], ...]:
    return tuple((letter.name, k) for letter, k in bearing.unknown)


def _degrees(bearing: Bearing, values: Mapping[str, float]) -> float:
    return float(bearing.degrees) + sum(k * values[letter.name] for letter, k in bearing.unknown)
