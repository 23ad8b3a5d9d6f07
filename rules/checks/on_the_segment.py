"""Grips, loads and typed centres of mass lie on their segment, and a body's centre of mass lies where tables have
it.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.mechanics.body import Force
from explain.document.english import the, verb
from explain.equation.terms import Quantity
from explain.solve.outcome import SILENT, Finding, Outcome
from explain.reference.body_ranges import com_note
from explain.solve.comparable_numbers import growing
from explain.problem.magnitudes import in_metres
from explain.problem.model import Load, Percent, Segment

LABEL = "On the segment"


def look(outcome: Outcome) -> tuple[Finding, ...]:
    beyond = [force for force in outcome.body.forces if _is_beyond(outcome, force)]
    names = {force.name for force in beyond}
    found = [_told(outcome, force) for force in beyond]
    found += [each for load in outcome.body.problem.loads for each in _spread(outcome, load) if load.name not in names]
    found += [
        each
        for segment in outcome.body.problem.segments
        if segment.name not in names
        for each in _centre(outcome, segment)
    ]
    return tuple(found) or (SILENT,)


def _is_beyond(outcome: Outcome, force: Force) -> bool:
    """Whether a place along a segment, stated and not sought, is farther than the segment is long."""
    length = outcome.values.get(f"{force.segment}.length")
    if length is None or not force.steps or f"{force.name}.at" in outcome.answers:
        return False
    last = force.steps[-1]
    along = (
        last.distance.name in (f"{force.name}.at", f"{force.name}.com")
        and last.bearing == outcome.body.bearings[force.segment]
    )
    return along and outcome.values[last.distance.name] > length * (1 + 1e-9)


def _told(outcome: Outcome, force: Force) -> Finding:
    keys = (f"{force.segment}.length", force.steps[-1].distance.name)
    length, at = (
        f"{each} {outcome.body.length_unit}"
        for each in outcome.compared([outcome.values[key] for key in keys], outcome.one_length, growing).texts
    )
    what = (
        f"the centre of mass of {the(force.name)} lies"
        if force.kind == "weight"
        else f"{the(force.name)} {verb(force.name, 'act')}"
    )
    return Finding(
        "warns",
        f"{what[0].upper()}{what[1:]} {at} along {the(force.segment)}, which {verb(force.segment, 'be')} only "
        f"{length} long. The working is right for these numbers; check that they are meant.",
        LABEL,
        of=(force.name,),
    )


def _spread(outcome: Outcome, load: Load) -> Iterator[Finding]:
    """That a load is spread beyond the far end of its segment, where its middle lies on it."""
    segment = outcome.body.force(load.name).segment
    length = outcome.values.get(f"{segment}.length")
    if load.spread is None or length is None:
        return
    far = max(float(in_metres(each)) for each in load.spread.ends)
    if far > length * (1 + 1e-9):
        long, end = outcome.compared((length, far), outcome.one_length, growing).texts
        unit = outcome.body.length_unit
        name = the(load.name)
        yield Finding(
            "warns",
            f"{name[0].upper()}{name[1:]} {verb(load.name, 'be')} spread as far as {end} {unit} along {the(segment)}, "
            f"which {verb(segment, 'be')} only {long} {unit} long. The working is right for these numbers; check that "
            "they are meant.",
            LABEL,
            of=(load.name,),
        )


def _centre(outcome: Outcome, segment: Segment) -> Iterator[Finding]:
    """What is unusual about a centre of mass that the author typed."""
    length = outcome.values.get(f"{segment.name}.length")
    if isinstance(segment.com, Percent):
        share = float(segment.com.number.number)
    elif isinstance(segment.com, Quantity) and length is not None:
        share = 100 * (1 if segment.com.number > 0 else -1) * outcome.values[f"{segment.name}.com"] / length
    else:
        return
    note = com_note(segment.name, share)
    if note is not None and not note.inside:
        yield Finding("warns", note.says, LABEL, note.source, of=note.of)
