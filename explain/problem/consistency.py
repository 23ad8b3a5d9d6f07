"""What the tables of one problem must say alike: segments, shares, percentages, directions. Knows no equation."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from . import directions
from ..errors import Fault, nearest, shown
from .toml_table import Fields
from .model import Direction, FromTable, Multiple, Percent, Problem, Pull, Segment
from .source_tables import Sheet, unknown_name


def agree(sheet: Sheet) -> None:
    """Raise Fault at the first thing that one table says and another contradicts."""
    for segment in sheet.problem.segments:
        _starts_somewhere(sheet, segment)
    for segment in sheet.problem.segments:
        _out(sheet, segment)
    for fields in sheet.tables.values():
        _acts_on_a_segment(sheet, fields)
    for name, place, key, value in _amounts(sheet.problem):
        _share_has_a_whole(sheet, sheet.tables[name], place, key, value)
    _slips_along_an_axis(sheet)
    sharing = [pull.name for pull in sheet.problem.pulls if pull.share]
    if len(sharing) == 1:
        raise sheet.tables[sharing[0]].fault(
            "share",
            f'share = "area" on {shown(sharing[0])} alone',
            "two or more muscles with it, which pull equally hard for each square centimetre",
            'share = "area" on another muscle too',
        )
    for pull in sheet.problem.pulls:
        _share_of_a_known_force(sheet, pull)
        _has_a_way(sheet, pull)


def _slips_along_an_axis(sheet: Sheet) -> None:
    axes = sheet.problem.course.axes
    if axes and sheet.problem.pivot.slips:
        raise sheet.top.fault(
            "course",
            f"axes along and across the {axes}, and slips at the pivot",
            "horizontal and vertical axes, in which the push along the surface is one of the two parts",
            'axes = "level and upright"',
        )


def _starts_somewhere(sheet: Sheet, segment: Segment) -> None:
    """Follow the chain from a segment back to the pivot."""
    order = [each.name for each in sheet.problem.segments]
    here, met = segment, {segment.name}
    while before := sheet.before[here.name]:
        fields = sheet.tables[here.name]
        if before not in sheet.segments:
            raise unknown_name(fields, "from", before, order)
        if before in met:
            raise fields.fault(
                "from",
                f"a chain of segments that comes back to {shown(before)}",
                "a chain that begins at the pivot",
                f'from = "{order[0]}"',
            )
        met.add(before)
        if sheet.segments[before].length is None:
            why = f"the length of {shown(before)}, since {shown(here.name)} starts at its far end"
            raise sheet.tables[before].missing("length", why, 'length = "30 cm"')
        here = sheet.segments[before]


def _acts_on_a_segment(sheet: Sheet, fields: Fields) -> None:
    on = " ".join(str(fields.values.get("on") or "").split())
    if on and on not in sheet.segments:
        raise unknown_name(fields, "on", on, list(sheet.segments))
    key = "spread" if fields.has("spread") else "at"
    if fields.has(key) and not sheet.segments:
        raise fields.fault(
            key,
            "a distance along a segment, but no segment",
            "a [[segment]] for the distance to lie along, or point in place of at",
            '[[segment]] with name = "plank"',
            "A bar, plank or lever is a segment too; without a mass it is weightless.",
        )


def _amounts(problem: Problem) -> Iterator[tuple[str, str, str, object]]:
    """Every value that may be a share: the name of its table, the segment it lies on, its key, and itself."""
    for segment in problem.segments:
        yield from (
            (segment.name, segment.name, key, value)
            for key, value in (("mass", segment.mass), ("weight", segment.weight), ("com", segment.com))
        )
    for load in problem.loads:
        yield from (
            (load.name, load.place.on, key, value)
            for key, value in (("mass", load.mass), ("weight", load.weight), ("at", load.place.at))
        )
    for pull in problem.pulls:
        yield from (
            (pull.name, pull.place.on, key, value) for key, value in (("force", pull.force), ("at", pull.place.at))
        )


def _share_has_a_whole(sheet: Sheet, fields: Fields, on: str, key: str, value: object) -> None:
    if not isinstance(value, Percent | FromTable):
        return
    said, person = fields.values.get(key), sheet.problem.person
    segment = sheet.segment(on)
    if key in ("com", "at"):
        if segment is not None and segment.length is None:
            why = f"the length of {shown(segment.name)}, since {key} is {shown(said)} of it"
            raise sheet.tables[segment.name].missing("length", why, 'length = "30 cm"')
    elif person is None or person.mass is None:
        raise fields.fault(
            key,
            f"{shown(said)}, but no mass of the person it is a share of",
            "a person with a mass",
            '[person] with mass = "70 kg"',
        )
    if isinstance(value, FromTable) and (person is None or not person.table):
        raise fields.fault(
            key, '"table", but no table is named', "a person with a table", '[person] with table = "winter"'
        )


def _share_of_a_known_force(sheet: Sheet, pull: Pull) -> None:
    met = [pull.name]
    here = pull
    while isinstance(here.force, Multiple):
        other = here.force.of
        if other not in sheet.forces:
            raise _no_such_force(sheet, here.name, other)
        met.append(other)
        if other in met[:-1]:
            raise sheet.tables[pull.name].fault(
                "force",
                "shares in a circle: " + ", of ".join(met),
                'at least one of these forces given, or sought with "?"',
                'force = "?"',
            )
        if other not in sheet.pulls:
            return
        here = sheet.pulls[other]


def _no_such_force(sheet: Sheet, name: str, other: str) -> Fault:
    known = [each for each in sheet.forces if each != name]
    fault = unknown_name(sheet.tables[name], "force", other, known, "the name of another force after *")
    near = nearest(other, known) or (known[0] if known else "")
    return fault.placed(fault.file, fault.line, fault.key, f'force = "0.70 * {near}"' if near else 'force = "?"')


def _has_a_way(sheet: Sheet, pull: Pull) -> None:
    """Refuse a direction that its segment leaves without meaning, and a pull towards the point where it acts."""
    fields = sheet.tables[pull.name]
    if pull.toward is not None and pull.toward == pull.place.point:
        raise fields.wrong("toward", "another point than the one where the force acts", 'toward = ["2.0 cm", "28 cm"]')
    if pull.direction is None:
        return
    segment = sheet.segment(pull.place.on)
    _bearing(fields, pull.direction, _out(sheet, segment) if segment else None, segment is not None)


def _bearing(fields: Fields, direction: Direction, along: Fraction | None, has_line: bool) -> Fraction | None:
    if directions.needs_segment(direction) and not has_line:
        raise fields.wrong(
            "direction",
            "up, down, left and right, since there is no segment that out and back could follow",
            'direction = "30 deg above left"',
        )
    try:
        return directions.bearing(direction, along)
    except Fault as fault:
        raise fields.placed("direction", fault, f"direction = {fault.example}") from None


def _out(sheet: Sheet, segment: Segment) -> Fraction | None:
    """The bearing of a segment; out and back in its own direction follow the segment it starts from."""
    before = sheet.segments.get(sheet.before[segment.name])
    along = _out(sheet, before) if before else None
    return _bearing(sheet.tables[segment.name], segment.direction, along, before is not None)
