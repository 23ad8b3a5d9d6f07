"""A sweep on its page: what must come out, the plot, the table, and where the answer is greatest and least. Decides
no look.
"""

from __future__ import annotations

from collections.abc import Iterator

from ..document.english import sentence, the
from ..equation.terms import Quantity
from ..solve.outcome import number
from ..document.passage import Axis, Curve, Heading, Line, Paragraph, Passage, Plot, Strong, Table, Text
from ..wording.phrases import way
from ..walkthrough.answer_sentences import pretty
from .comparison_words import called
from .sweep_prediction import foreseen, known_points, swept_noun
from .sweep import printed
from .worked_steps import Point, Worked

_ROWS = 13  # a longer table is thinned; the file of values has every angle
_ORDINALS = {2: "second", 3: "third"}


def swept(each: Worked) -> Iterator[Passage]:
    """Everything about the whole range, after the one angle that was worked in full."""
    sweep = each.step.sweep
    assert sweep is not None
    first, last = (sweep.told(each.points[place].value) for place in (0, -1))
    all_of = "angles" if sweep.is_angle else f"values of {swept_noun(each)}"
    yield Heading(2, (Text(f"Through all {all_of}, {first} to {last}"),))
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


# ---------------------------------------------------------------------- plot and table
def plot(each: Worked) -> Plot:
    """The answers against the angle."""
    names, first, sweep = curves_of(each), each.outcome.answers[each.follow], each.step.sweep
    assert sweep is not None
    curves = tuple(
        Curve(
            name,
            tuple(
                (float(point.value), point.outcome.answers[name].value if point.outcome else None)
                for point in each.points
            ),
        )
        for name in names
    )
    noun = called(each.outcome.body, each.follow).removeprefix("the ") if len(names) == 1 else "pull"
    figures = each.problem.course.figures
    return Plot(
        "lines",
        f"{sentence(noun).rstrip('.')} against {swept_noun(each)}",
        f"{_axis(each)} runs from {sweep.told(each.points[0].value)} to "
        f"{sweep.told(each.points[-1].value)}. {_extremes(each)}",
        Axis(_axis(each), "°" if sweep.is_angle else printed(sweep.unit)),
        Axis(noun, first.unit),
        curves,
        tabled=True,
        figures=figures,
        caption=(Text(sentence(f"{noun} at each {word_of(each)}, every point worked and certified")),),
    )


def _axis(each: Worked) -> str:
    """ "angle of the forearm below the level", "mass of the jug"."""
    assert each.step.sweep is not None
    if not each.step.sweep.is_angle:
        return swept_noun(each).removeprefix("the ")
    owner = each.step.sweep.owner
    problem = each.outcome.body.problem
    direction = next((each.direction for each in problem.segments if each.name == owner), None) or next(
        (each.direction for each in problem.pulls if each.name == owner), None
    )
    if direction is None or not isinstance(direction.turn, Quantity):
        return f"angle of {the(owner)}"
    words = way(direction, owner).partition("° ")[2] or way(direction, owner)
    return f"angle of {the(owner)}, {words}"


def word_of(each: Worked) -> str:
    """What a sweep goes through: "angle", "value"."""
    return "angle" if each.step.sweep and each.step.sweep.is_angle else "value"


def _table(each: Worked) -> Table:
    names, sweep = curves_of(each), each.step.sweep
    assert sweep is not None
    arms, what = sweep.arms, sentence(swept_noun(each).removeprefix("the ")).rstrip(".")
    header = [
        "Angle" if sweep.is_angle else what if what != "G" else "g",
        *(f"Moment arm of {the(arm.muscle)}" for arm in arms),
        *(sentence(called(each.outcome.body, name)).rstrip(".") for name in names),
    ]
    every = -(-len(each.points) // _ROWS)
    rows = []
    for point in each.points[::every]:
        found = [arm.at(point.value) for arm in arms]
        cells = [
            sweep.told(point.value),
            *(f"{number(float(arm.number), 3)} {arm.unit[0][0]}" if arm else "–" for arm in found),
            *(_cell(point, name) for name in names),
        ]
        rows.append(tuple((Text(cell),) for cell in cells))
    heads: tuple[Line, ...] = tuple((Text(cell),) for cell in header)
    thinned = f", every {_ORDINALS.get(every, f'{every}th')} one of those that were worked" if every > 1 else ""
    return Table(
        f"{word_of(each).capitalize()} by {word_of(each)}{thinned}", heads, tuple(rows), frozenset(range(len(header)))
    )


def _cell(point: Point, name: str) -> str:
    if point.outcome is None:
        return "no balance"
    answer = point.outcome.answers[name]
    return pretty(answer) + (
        " (would have to push)" if answer.value < 0 and any(each.name == name for each in point.outcome.muscles) else ""
    )


def _extremes(each: Worked) -> str:
    """Where the answer is greatest and where least, as worked."""
    sweep = each.step.sweep
    assert sweep is not None
    known = [(point, outcome.answers[each.follow]) for point, outcome in known_points(each)]
    noun = called(each.outcome.body, each.follow)
    most, least = max(known, key=lambda pair: pair[1].value), min(known, key=lambda pair: pair[1].value)
    if most[1].value - least[1].value <= 1e-9 * max(abs(most[1].value), abs(least[1].value)):
        return sentence(f"{noun} is the same at every {word_of(each)}: {pretty(most[1])}")
    ratio = (
        f", {number(most[1].value / least[1].value, 3)} times as much" if least[1].value > 1e-9 * most[1].value else ""
    )
    return sentence(
        f"{noun} is largest at {sweep.told(most[0].value)}, {pretty(most[1])}{ratio}, and smallest at "
        f"{sweep.told(least[0].value)}, "
        f"{pretty(least[1])}"
    )


def values(each: Worked) -> list[list[str]]:
    """The sweep as rows for a file of values: angle or other number, arms, answers, unrounded."""
    sweep = each.step.sweep
    assert sweep is not None
    arms = sweep.arms
    names = curves_of(each)
    unit = {name: each.outcome.answers[name].unit for name in names}
    rows = [
        [
            "angle (deg)" if sweep.is_angle else f"{sweep.owner}.{sweep.key} ({sweep.unit})",
            *(f"moment arm of {arm.muscle} ({arm.pairs[0][1].unit[0][0]})" for arm in arms),
            *(f"{name} ({unit[name]})" for name in names),
        ]
    ]
    for point in each.points:
        found = [arm.at(point.value) for arm in arms]
        rows.append(
            [
                f"{point.value:f}",
                *(f"{arm.number:f}" if arm else "" for arm in found),
                *(repr(point.outcome.answers[name].value) if point.outcome else "" for name in names),
            ]
        )
    return rows
