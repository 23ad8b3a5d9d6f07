"""What is refused because it cannot be settled, cut free or counted: the key, what was found and what is expected."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from explain import Fault, work

FOREARM = {"name": "forearm", "length": "30 cm"}
REFUSED: Mapping[str, tuple[dict[str, Any], str, str]] = {
    "a pull toward a point while the slope is sought": (
        {
            "segment": [{"name": "forearm", "direction": "? above right"}],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [{"name": "rope", "at": "10 cm", "force": "20 N", "toward": ["0 cm", "30 cm"]}],
        },
        ("rope.toward: a pull towards a fixed point, while the slope of its bone is sought"),
        (
            "a direction that is given: the pull would turn with the slope, and no step of algebra gives the "
            "slope then Give the slope and ask for the pull; a series with a sweep shows it at many slopes."
        ),
    ),
    "a pull toward its own grip": (
        {
            "segment": [],
            "load": [{"name": "jug", "weight": "40 N", "point": ["20 cm", "0 cm"]}],
            "force": [{"name": "rope", "point": ["4 cm", "2 cm"], "toward": ["4 cm", "2 cm"], "force": "?"}],
        },
        ("force[1].toward: a list of 2"),
        ("another point than the one where the force acts"),
    ),
    "a pull toward a point from a place sought": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [{"name": "rope", "at": "?", "toward": ["4 cm", "20 cm"], "force": "200 N"}],
        },
        ('rope.at: "?" where the direction of a pull depends on it'),
        ("a number, or a direction in degrees"),
    ),
    "a share of the body without a mass": (
        {
            "segment": [{"name": "forearm", "mass": "2 %", "com": "10 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ('segment[1].mass: "2 %", but no mass of the person it is a share of'),
        ("a person with a mass"),
    ),
    "a share of the weight without a mass": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
            "force": [{"name": "rope", "at": "10 cm", "direction": "up", "force": "5 %"}],
        },
        ('force[1].force: "5 %", but no mass of the person it is a share of'),
        ("a person with a mass"),
    ),
    "out without a segment": (
        {
            "segment": [],
            "load": [{"name": "jug", "weight": "40 N", "point": ["20 cm", "0 cm"]}],
            "force": [
                {"name": "rope", "point": ["4 cm", "2 cm"], "direction": "20 deg from out toward up", "force": "?"}
            ],
        },
        ('force[1].direction: "20 deg from out toward up"'),
        ("up, down, left and right, since there is no segment that out and back could follow"),
    ),
    "two directions on one line": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "20 deg from out toward right"}],
        },
        (
            'muscle[1].direction: "20 deg from out toward right": out and right lie on one line, so the way '
            "to turn is not told"
        ),
        ("two directions that are neither the same nor opposite"),
    ),
    "a share of a length that is not given": (
        {
            "segment": [{"name": "forearm"}],
            "load": [{"name": "jug", "weight": "40 N", "at": "50 %"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ("segment[1].length: nothing, the key is missing"),
        ('the length of "forearm", since at is "50 %" of it'),
    ),
    "no table": (
        {
            "segment": [{"name": "forearm", "length": "30 cm", "mass": "table", "com": "table"}],
            "person": {"mass": "70 kg"},
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ('segment[1].mass: "table", but no table is named'),
        ("a person with a table"),
    ),
    "parts in other axes": (
        {
            "ask": ["reaction.right", "reaction"],
            "course": {"axes": "along and across the forearm"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ("ask: horizontal and vertical parts of the joint force, and axes along a segment"),
        ("parts in the axes of the course"),
    ),
    "a pull where nothing need be at rest": (
        {
            "ask": ["biceps"],
            "balanced": False,
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "200 N"}],
        },
        ("ask: biceps, where nothing has to be at rest"),
        ("moments only: NAME.moment or total.moment"),
    ),
    "a moment among sizes": (
        {
            "ask": ["jug.moment", "biceps"],
            "course": {"balance": "two sides", "first": "moments"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ("ask: jug.moment, in a class whose letters of moments are sizes on two sides"),
        ("the products first, so that the letter of a moment may have its sign"),
    ),
    "up, and a couple": (
        {
            "course": {"positive": "up"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
            "couple": [{"name": "spring", "moment": "1 N m", "turns": "clockwise"}],
        },
        ('course.positive: "up", but the couple spring has a turning sense but no force that points up or down'),
        (
            'a turning sense: "up is positive" holds for moments only where upward and downward parts alone '
            "turn, all on one side of the pivot"
        ),
    ),
    "up, and an arm": (
        {
            "course": {"positive": "up"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "moment_arm": "4 cm", "turns": "counter-clockwise"}],
        },
        ('course.positive: "up", but of biceps the arm and the turning sense are given, not where it acts'),
        (
            'a turning sense: "up is positive" holds for moments only where upward and downward parts alone '
            "turn, all on one side of the pivot"
        ),
    ),
    "up, and a level force": (
        {
            "segment": [],
            "course": {"positive": "up"},
            "load": [{"name": "jug", "weight": "40 N", "point": ["20 cm", "0 cm"]}],
            "force": [{"name": "rope", "point": ["4 cm", "2 cm"], "direction": "30 deg above left", "force": "?"}],
        },
        (
            'course.positive: "up", but rope is not vertical, and its horizontal part, at another height than'
            " the pivot, turns too"
        ),
        (
            'a turning sense: "up is positive" holds for moments only where upward and downward parts alone '
            "turn, all on one side of the pivot"
        ),
    ),
    "up, and both sides": (
        {
            "course": {"positive": "up"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}, {"name": "tin", "weight": "3 N", "at": "-5 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        (
            'course.positive: "up", but forces act on both sides of the pivot, and an upward force behind it '
            "turns the same way as a downward force in front"
        ),
        (
            'a turning sense: "up is positive" holds for moments only where upward and downward parts alone '
            "turn, all on one side of the pivot"
        ),
    ),
    "signs, and a slanting force": (
        {
            "course": {"positive": "up", "signs": "with the numbers"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "20 deg left of up"}],
        },
        ('course.signs: "with the numbers" and "up is positive", but biceps is not vertical'),
        ("vertical forces alone, each of which has one sign, or the signs in the equation"),
    ),
    "no direction and no reaction": (
        {
            "pivot": {"name": "elbow", "reaction": False},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "moment_arm": "4 cm", "turns": "counter-clockwise"}],
        },
        ("muscle[1].direction: nothing, the key is missing"),
        (
            'the direction of "biceps" beside its moment arm, since the balance without a reaction needs the '
            "sum of all forces"
        ),
    ),
    "muscles against each other": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [
                {"name": "biceps", "at": "4 cm", "direction": "up", "area": "4 cm^2", "share": "area"},
                {"name": "triceps", "at": "-2 cm", "direction": "up", "area": "4 cm^2", "share": "area"},
            ],
        },
        ('triceps.share: share = "area", where the biceps turns counter-clockwise and the triceps turns clockwise'),
        ("muscles that all turn the same way: what pulls against them needs a force of its own"),
    ),
    "a muscle that does not turn": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [
                {"name": "biceps", "at": "4 cm", "direction": "up", "area": "4 cm^2", "share": "area"},
                {"name": "supinator", "at": "4 cm", "direction": "back", "area": "4 cm^2", "share": "area"},
            ],
        },
        (
            'supinator.share: share = "area", where the biceps turns counter-clockwise and the supinator '
            "turns neither way"
        ),
        ("muscles that all turn the same way: what pulls against them needs a force of its own"),
    ),
    "no friction holds": (
        {
            "pivot": {"name": "foot", "friction": "?"},
            "ask": ["rope", "reaction.friction"],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [{"name": "rope", "at": "5 cm", "direction": "up", "force": "?"}],
        },
        ("pivot.friction: no friction that holds: at rest the surface would have to pull the body with 120 N"),
        (
            "forces that press the body on its surface, which lies on the other side of it The body lies a "
            "quarter turn counter-clockwise of the direction of surface."
        ),
    ),
    "slips, and nothing to settle": (
        {
            "pivot": {"name": "foot", "friction": "0.3", "slips": "left"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [
                {"name": "rope", "at": "30 cm", "direction": "up", "force": "?"},
                {"name": "wind", "at": "20 cm", "direction": "left", "force": "2 N"},
            ],
        },
        ("pivot.slips: slips, and no unknown for it to settle: with all of the friction used the body is not at rest"),
        ("one unknown more beside slips; or no slips, and the friction is checked"),
    ),
    "nothing is left for a force": (
        {
            "pivot": {"name": "ring", "reaction": False},
            "segment": [],
            "force": [
                {"name": "a", "point": ["0 cm", "0 cm"], "direction": "left", "force": "2 N"},
                {"name": "b", "point": ["0 cm", "0 cm"], "direction": "right", "force": "2 N"},
                {"name": "c", "point": ["0 cm", "0 cm"], "direction": "? above right", "force": "?"},
            ],
        },
        ("c.direction: every angle balances: the other forces balance without this one, so it is zero"),
        ("forces that leave something over for it to hold"),
    ),
    "outside its range": (
        {
            "segment": [{"name": "forearm", "direction": "? above right", "range": ["0 deg", "20 deg"]}],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "flexors", "moment_arm": "4 cm", "turns": "counter-clockwise", "force": "100 N"}],
        },
        ("forearm.range: balance at 60 degrees and 300 degrees only"),
        ("an angle between 0 and 20 degrees"),
    ),
    "too strong": (
        {
            "segment": [{"name": "forearm", "direction": "? above right"}],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "flexors", "moment_arm": "4 cm", "turns": "counter-clockwise", "force": "300 N"}],
        },
        ("forearm.direction: an angle whose sine or cosine would be 1.5"),
        (
            "a sine between -1 and 1: no angle has one beyond that, so this balance cannot be reached at any "
            "angle Try a smaller pull, or a larger load; or give the angle, and ask for a force."
        ),
    ),
    "too weak": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "? above right", "force": "10 N"}],
        },
        ("biceps.direction: an angle whose sine or cosine would be 20"),
        (
            "a sine between -1 and 1: no angle has one beyond that, so this balance cannot be reached at any "
            "angle Try a larger pull, or a smaller load; or give the angle, and ask for a force."
        ),
    ),
    "every angle": (
        {
            "segment": [{"name": "forearm", "direction": "? above right"}],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "200 N"}],
        },
        ("forearm.direction: every angle balances"),
        (
            "a problem in which the angle matters: where all forces stay parallel, or keep their angle to the"
            " bone, the angle cancels"
        ),
    ),
    "along the bone": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "back"}],
        },
        ("biceps: a line of pull of biceps that passes through the pivot: no arm, no moment"),
        ("a pull that passes the pivot at some distance, so that it can balance anything"),
    ),
    "two of one": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [
                {"name": "biceps", "at": "4 cm", "direction": "up"},
                {"name": "brachialis", "at": "3 cm", "direction": "up"},
            ],
        },
        ("2 unknowns that the balances cannot settle: the pull of the biceps and the pull of the brachialis"),
        (
            "no more unknowns than conditions: a value for one of them, or how they share (a force as a "
            "stated multiple of another)"
        ),
    ),
    "three": (
        {
            "load": [{"name": "jug", "weight": "?", "at": "20 cm"}],
            "muscle": [
                {"name": "biceps", "at": "4 cm", "direction": "up"},
                {"name": "brachialis", "at": "3 cm", "direction": "up"},
            ],
        },
        (
            "3 unknowns that the balances cannot settle: the pull of the biceps, the pull of the brachialis "
            "and the weight of the jug"
        ),
        (
            "no more unknowns than conditions: a value for one of them, or how they share (a force as a "
            "stated multiple of another)"
        ),
    ),
    "angle and force": (
        {
            "segment": [{"name": "forearm", "direction": "? above right"}],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ("2 unknowns that the balances cannot settle: the angle of the forearm and the pull of the biceps"),
        (
            "a value for one of them: only the moments about the elbow are free of the force there, and one "
            "balance settles one unknown. With reaction = false, horizontal and vertical forces count too"
        ),
    ),
    "angle and two forces": (
        {
            "segment": [{"name": "forearm", "direction": "? above right"}],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [
                {"name": "biceps", "at": "4 cm", "direction": "up"},
                {"name": "brachialis", "at": "3 cm", "direction": "up"},
            ],
        },
        (
            "3 unknowns that the balances cannot settle: the angle of the forearm, the pull of the biceps and"
            " the pull of the brachialis"
        ),
        (
            "a value for all but one of them: only the moments about the elbow are free of the force there, "
            "and one balance settles one unknown. With reaction = false, horizontal and vertical forces count"
            " too"
        ),
    ),
    "nothing adds": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "100 N"}],
            "ask": ["reaction"],
        },
        (
            "conditions that contradict each other: the moments about the pivot add to -4 N m, and no unknown"
            " is left that could balance them"
        ),
        ('forces that balance, or an unknown ("?") in place of one of the numbers'),
    ),
    "upright free": (
        {
            "pivot": {"name": "hook", "reaction": False},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [
                {"name": "rope", "at": "20 cm", "direction": "up", "force": "30 N"},
                {"name": "wind", "at": "20 cm", "direction": "left", "force": "?"},
            ],
        },
        (
            "conditions that contradict each other: the moments about the pivot add to -2 N m, and no unknown"
            " is left that could balance them"
        ),
        ('forces that balance, or an unknown ("?") in place of one of the numbers'),
    ),
    "letters": (
        {
            "course": {"symbols": {"biceps": "W_J"}},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ("course.symbols: W_J for 'biceps.force' and for 'jug.weight'"),
        ("a letter of its own for each quantity"),
    ),
    "no matter": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "200 N"}],
            "force": [{"name": "rope", "at": "?", "direction": "out", "force": "20 N"}],
        },
        ("rope.at: every value balances: the distance from the elbow to the rope does not matter"),
        ("an unknown that the balances depend on"),
    ),
    "no matter none": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "100 N"}],
            "force": [{"name": "rope", "at": "?", "direction": "out", "force": "20 N"}],
        },
        ("rope.at: no value balances: the distance from the elbow to the rope does not matter"),
        ("an unknown that the balances depend on"),
    ),
}


@pytest.mark.parametrize("name", REFUSED)
def test_it_is_refused_with_what_was_found_and_what_is_expected(name: str) -> None:
    problem, found, expected = REFUSED[name]
    start = {"title": "-", "pivot": {"name": "elbow"}, "segment": [FOREARM]}
    fault = pytest.raises(Fault, work, {**start, **problem}).value
    assert (found, expected) == (
        ": ".join(filter(None, (fault.key, fault.found))),
        " ".join(filter(None, (fault.expected, fault.advice))),
    )
