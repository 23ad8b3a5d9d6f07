"""A sweep on its page: what must come out, the plot, the table, and where the answer is greatest and least. Decides
no look.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from ..document.english import sentence, the
from ..equation.terms import Quantity
from ..solve.outcome import Outcome, number
from ..document.passage import Axis, Curve, Heading, Line, Paragraph, Passage, Plot, Strong, Table, Text
from ..wording.phrases import way
from ..walkthrough.answer_sentences import pretty
from .balance import Balance, balance_of
from .comparison_words import called
from .worked_steps import Point, Worked

_ROWS = 13  # a longer table is thinned; the file of values has every angle
_ORDINALS = {2: "second", 3: "third"}


def swept(each: Worked) -> Iterator[Passage]:
    """Everything about the whole range, after the one angle that was worked in full."""
    sweep = each.step.sweep
    assert sweep is not None
    first, last = each.points[0].angle, each.points[-1].angle
    yield Heading(2, (Text(f"Through all angles, {first:f}° to {last:f}°"),))
    said = foreseen(each)
    if said:
        yield Paragraph((Strong("Before you look at the plot. "), Text(said)))
    yield plot(each)
    yield _table(each)
    yield Paragraph((Text(_extremes(each)),))


def curves_of(each: Worked) -> tuple[str, ...]:
    """The answers that are plotted: the one that is followed, and others of its kind and unit."""
    first = each.outcome.answers[each.follow]
    return tuple(
        dict.fromkeys(
            (
                each.follow,
                *(
                    name
                    for name, answer in each.outcome.answers.items()
                    if answer.unit == first.unit and "." not in name and name != "reaction"
                ),
            )
        )
    )


def _known(each: Worked) -> list[tuple[Point, Outcome]]:
    return [(point, point.outcome) for point in each.points if point.outcome is not None]


# ---------------------------------------------------------------------- what must come out
def foreseen(each: Worked) -> str:
    """How the answer must move through the range, from the lever arms alone; an honest word where they do not tell."""
    known = _known(each)
    found = [balance_of(outcome.body, outcome.working.truth, each.follow) for _, outcome in known]
    balances = [one for one in found if one is not None]
    noun = called(each.outcome.body, each.follow)
    if len(balances) < len(found) or len(found) < 2:
        return ""
    if all(one.parallel for one in balances) and _same_size(balances):
        return (
            "All forces are parallel and act along one straight line through the pivot, so the angle stands as the "
            "same factor in every lever arm: "
            f"{noun} must be the same at every angle."
        )
    if _steady(balances) and _one_sided(balances):
        return _by_the_arms(known, balances, noun)
    return (
        "More than one lever arm changes with the angle, those of the weights and that of the pull, so signs alone "
        "do not tell where "
        f"{noun} is greatest: only the numbers can."
    )


def _same_size(balances: Sequence[Balance]) -> bool:
    return all(one.turners.keys() == other.turners.keys() for one, other in pairwise(balances))


def _steady(balances: Sequence[Balance]) -> bool:
    """Whether what is sought has the same lever arm throughout, so that the answer follows the other moments alone."""
    return all(abs(one.per - balances[0].per) <= 1e-12 * abs(balances[0].per) for one in balances)


def _one_sided(balances: Sequence[Balance]) -> bool:
    """Whether the other moments turn the same way at every angle where they turn at all."""
    least = 1e-9 * max(abs(one.held) for one in balances)
    return len({one.held > 0 for one in balances if abs(one.held) > least}) == 1


def _by_the_arms(known: Sequence[tuple[Point, Outcome]], balances: Sequence[Balance], noun: str) -> str:
    held = [abs(one.held) for one in balances]
    most, least = (known[held.index(value)][0].angle for value in (max(held), min(held)))
    return (
        f"The lever arm of what is sought stays the same, so {noun} can only follow the moments of the rest: it "
        "must be largest where their lever arms are "
        f"longest, at {most:f}°, and smallest where they are shortest, at {least:f}°."
    )


# ---------------------------------------------------------------------- plot and table
def plot(each: Worked) -> Plot:
    """The answers against the angle."""
    names, first = curves_of(each), each.outcome.answers[each.follow]
    curves = tuple(
        Curve(
            name,
            tuple(
                (float(point.angle), point.outcome.answers[name].value if point.outcome else None)
                for point in each.points
            ),
        )
        for name in names
    )
    noun = called(each.outcome.body, each.follow).removeprefix("the ") if len(names) == 1 else "pull"
    figures = each.problem.course.figures
    return Plot(
        "lines",
        f"{sentence(noun).rstrip('.')} against the angle",
        f"{_axis(each)} runs from {each.points[0].angle:f} to {each.points[-1].angle:f} degrees. {_extremes(each)}",
        Axis(_axis(each), "°"),
        Axis(noun, first.unit),
        curves,
        tabled=True,
        figures=figures,
        caption=(Text(sentence(f"{noun} at each angle, every point worked and certified")),),
    )


def _axis(each: Worked) -> str:
    """ "angle of the forearm below the level"."""
    assert each.step.sweep is not None
    owner = each.step.sweep.owner
    problem = each.outcome.body.problem
    direction = next((each.direction for each in problem.segments if each.name == owner), None) or next(
        (each.direction for each in problem.pulls if each.name == owner), None
    )
    if direction is None or not isinstance(direction.turn, Quantity):
        return f"angle of {the(owner)}"
    words = way(direction, owner).partition("° ")[2] or way(direction, owner)
    return f"angle of {the(owner)}, {words}"


def _table(each: Worked) -> Table:
    names = curves_of(each)
    arms = each.step.sweep.arms if each.step.sweep else ()
    header = [
        "Angle",
        *(f"Moment arm of {the(arm.muscle)}" for arm in arms),
        *(sentence(called(each.outcome.body, name)).rstrip(".") for name in names),
    ]
    every = -(-len(each.points) // _ROWS)
    rows = []
    for point in each.points[::every]:
        found = [arm.at(point.angle) for arm in arms]
        cells = [
            f"{point.angle:f}°",
            *(f"{number(float(arm.number), 3)} {arm.unit[0][0]}" if arm else "–" for arm in found),
            *(_cell(point, name) for name in names),
        ]
        rows.append(tuple((Text(cell),) for cell in cells))
    heads: tuple[Line, ...] = tuple((Text(cell),) for cell in header)
    thinned = f", every {_ORDINALS.get(every, f'{every}th')} one of those that were worked" if every > 1 else ""
    return Table(f"Angle by angle{thinned}", heads, tuple(rows), frozenset(range(len(header))))


def _cell(point: Point, name: str) -> str:
    if point.outcome is None:
        return "no balance"
    answer = point.outcome.answers[name]
    return pretty(answer) + (
        " (would have to push)" if answer.value < 0 and any(each.name == name for each in point.outcome.muscles) else ""
    )


def _extremes(each: Worked) -> str:
    """Where the answer is greatest and where least, as worked."""
    known = [(point, outcome.answers[each.follow]) for point, outcome in _known(each)]
    noun = called(each.outcome.body, each.follow)
    most, least = max(known, key=lambda pair: pair[1].value), min(known, key=lambda pair: pair[1].value)
    if most[1].value - least[1].value <= 1e-9 * max(abs(most[1].value), abs(least[1].value)):
        return sentence(f"{noun} is the same at every angle: {pretty(most[1])}")
    ratio = (
        f", {number(most[1].value / least[1].value, 3)} times as much" if least[1].value > 1e-9 * most[1].value else ""
    )
    return sentence(
        f"{noun} is largest at {most[0].angle:f}°, {pretty(most[1])}{ratio}, and smallest at {least[0].angle:f}°, "
        f"{pretty(least[1])}"
    )


def values(each: Worked) -> list[list[str]]:
    """The sweep as rows for a file of values: angle, arms, answers, unrounded."""
    arms = each.step.sweep.arms if each.step.sweep else ()
    names = curves_of(each)
    unit = {name: each.outcome.answers[name].unit for name in names}
    rows = [
        [
            "angle (deg)",
            *(f"moment arm of {arm.muscle} ({arm.pairs[0][1].unit[0][0]})" for arm in arms),
            *(f"{name} ({unit[name]})" for name in names),
        ]
    ]
    for point in each.points:
        found = [arm.at(point.angle) for arm in arms]
        rows.append(
            [
                f"{point.angle:f}",
                *(f"{arm.number:f}" if arm else "" for arm in found),
                *(repr(point.outcome.answers[name].value) if point.outcome else "" for name in names),
            ]
        )
    return rows
