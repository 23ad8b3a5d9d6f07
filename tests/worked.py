"""The problem files that tests work through, each worked once, and problems of a line or two for what no file shows."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

import rules
from explain.check.checker import Certified, Checker
from explain.problem.reader import read_problem
from explain.mechanics.free_body import cut_free
from explain.solve.engine import Working, work_through

HERE = Path(__file__).parent
CONTRACT = tuple(sorted((HERE / "contract").glob("*.toml")))
SAMPLES = tuple(sorted((HERE.parent / "samples").glob("[0-9]*.toml")))


def _shared(area: str) -> dict[str, str]:
    return {"area": f"{area} cm^2", "share": "area"}


def ladder(rough: Mapping[str, str], at: str = "3.5 m", **more: Any) -> dict[str, Any]:
    """A ladder on rough ground against a smooth wall, a painter on it."""
    return {
        "title": "A ladder",
        "pivot": {"name": "foot of the ladder", "support": "quay", **rough},
        "segment": [
            {"name": "ladder", "length": "5.0 m", "mass": "12 kg", "com": "50 %", "direction": "65 deg above right"}
        ],
        "load": [{"name": "painter", "mass": "70 kg", "at": at}],
        "force": [{"name": "wall", "at": "5.0 m", "direction": "left", "force": "?"}],
        **more,
    }


# What the files do not show: roots and sines that come out even, forces that cancel, other senses, units and ways of
# rounding.
EXTRA: Mapping[str, Mapping[str, Any]] = {
    "letters with their signs": {
        "title": "On tiptoe, up is positive",
        "ask": ["calf", "calf.stress", "reaction"],
        "course": {"positive": "up", "signs": "with the numbers"},
        "pivot": {"name": "ball of the foot"},
        "segment": [{"name": "foot", "length": "20 cm", "mass": "1.2 kg", "com": "50 %"}],
        "load": [{"name": "body", "weight": "60 lb", "at": "12 cm"}],
        "force": [{"name": "strap", "at": "14 cm", "direction": "down", "force": "0.5 * body"}],
        "muscle": [{"name": "calf", "at": "16 cm", "direction": "up", "area": "30 cm^2"}],
    },
    "three and four": {
        "title": "Parts of three and four",
        "ask": ["reaction"],
        "pivot": {"name": "elbow"},
        "load": [{"name": "jug", "weight": "4 N", "point": ["0 cm", "0 cm"]}],
        "force": [{"name": "cord", "point": ["0 cm", "0 cm"], "direction": "left", "force": "3 N"}],
    },
    "a sine of one half": {
        "title": "A sine of one half",
        "pivot": {"name": "knee"},
        "segment": [{"name": "shank", "direction": "? right of down"}],
        "load": [{"name": "cuff", "weight": "80 N", "at": "10 cm"}],
        "muscle": [{"name": "quadriceps", "moment_arm": "4 cm", "turns": "counter-clockwise", "force": "100 N"}],
    },
    "a cosine": {
        "title": "A cosine",
        "pivot": {"name": "knee"},
        "segment": [{"name": "shank", "direction": "? below right"}],
        "course": {"positive": "clockwise", "figures": 4, "working_figures": 6},
        "load": [{"name": "cuff", "weight": "90 N", "at": "10 cm"}],
        "muscle": [{"name": "quadriceps", "moment_arm": "4 cm", "turns": "counter-clockwise", "force": "101 N"}],
    },
    "nothing at the joint": {
        "title": "Nothing at the joint",
        "ask": ["biceps", "reaction"],
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm"}],
        "load": [{"name": "jug", "weight": "40 N", "at": "10 cm"}],
        "muscle": [{"name": "biceps", "at": "10 cm", "direction": "up"}],
    },
    "mirror images": {
        "title": "Two ropes, mirror images",
        "ask": ["reaction"],
        "pivot": {"name": "ring"},
        "force": [
            {"name": "left rope", "point": ["-5 cm", "0 cm"], "direction": "37 deg above left", "force": "10 N"},
            {"name": "right rope", "point": ["5 cm", "0 cm"], "direction": "37 deg above right", "force": "10 N"},
        ],
    },
    "a level push only": {
        "title": "A level push only",
        "ask": ["reaction"],
        "pivot": {"name": "elbow"},
        "force": [{"name": "cord", "point": ["0 cm", "0 cm"], "direction": "left", "force": "3 N"}],
    },
    "a mass over a pulley": {
        "title": "A mass over a pulley",
        "ask": ["sling", "reaction"],
        "pivot": {"name": "hip"},
        "segment": [{"name": "leg", "mass": "9.0 kg", "com": "38 cm"}],
        "muscle": [
            {"name": "flexors", "moment_arm": "5 cm", "turns": "counter-clockwise", "direction": "60 deg above left"}
        ],
        "force": [{"name": "sling", "at": "70 cm", "direction": "70 deg above right", "hung": "4.0 kg"}],
    },
    "a mass over a pulley that holds": {
        "title": "The mass that holds",
        "pivot": {"name": "hip"},
        "segment": [{"name": "leg", "mass": "9.0 kg", "com": "38 cm", "direction": "15 deg above right"}],
        "force": [{"name": "sling", "at": "70 cm", "direction": "70 deg above right", "hung": "?", "count": 2}],
    },
    "pulls by cross-sections": {
        "title": "Pulls by cross-sections",
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm", "mass": "1.6 kg", "com": "15 cm"}],
        "load": [{"name": "jug", "mass": "3.0 kg", "at": "33 cm"}],
        "muscle": [
            {"name": "biceps", "at": "4.6 cm", "direction": "80 deg from back toward up", **_shared("4.6")},
            {"name": "brachialis", "moment_arm": "3.4 cm", "turns": "counter-clockwise", **_shared("7.0")},
        ],
        "force": [{"name": "wrist strap", "at": "28 cm", "direction": "up", "force": "5.0 N"}],
    },
    "the least friction of a ladder": ladder({"friction": "?"}, "3.5 m"),
    "the least friction on a slope": ladder({"friction": "?", "surface": "12 deg below right"}, "3.5 m"),
    "friction beside the bone": {
        **ladder({"friction": "?"}, "3.5 m"),
        "course": {"axes": "along and across the ladder"},
        "ask": ["reaction.friction", "reaction"],
    },
    "a ladder about to slip": ladder({"friction": "0.35", "slips": "left"}, "?"),
    "a bracket about to slip down a wall": {
        "title": "A bracket about to slip",
        "ask": ["cord", "crate.at"],
        "pivot": {"name": "wall end", "support": "wall", "surface": "down", "friction": "0.45", "slips": "down"},
        "segment": [{"name": "arm", "length": "1.2 m", "mass": "3.0 kg", "com": "50 %"}],
        "load": [{"name": "crate", "weight": "80 N", "at": "?"}],
        "force": [{"name": "cord", "at": "1.2 m", "direction": "35 deg above left", "force": "?"}],
    },
    "sand spread evenly": {
        "title": "Sand spread evenly",
        "ask": ["rope", "sand.at", "reaction"],
        "pivot": {"name": "left trestle"},
        "segment": [
            {"name": "plank", "length": "80 cm", "mass": "4.0 kg", "com": "50 %", "direction": "20 deg above right"}
        ],
        "load": [{"name": "sand", "weight": "1.2 N/cm", "spread": ["10 cm", "40 cm"]}],
        "force": [{"name": "rope", "at": "80 cm", "direction": "up", "force": "?"}],
    },
    "a drift that grows to one end": {
        "title": "A drift that grows to one end",
        "pivot": {"name": "left trestle"},
        "segment": [{"name": "plank"}],
        "load": [
            {"name": "drift", "weight": "15 N/m", "spread": ["70 cm", "20 cm"], "spread_to": "one end"},
            {"name": "gravel", "mass": "4.0 kg", "spread": ["-25 cm", "5 cm"]},
            {"name": "snow", "mass": "3.0 kg", "spread": ["0 cm", "60 cm"], "spread_to": "one end"},
        ],
        "force": [{"name": "rope", "at": "80 cm", "direction": "up", "force": "?"}],
    },
    "two ropes at a ring": {
        "title": "Two ropes at a ring",
        "pivot": {"name": "ring", "reaction": False},
        "load": [{"name": "lantern", "mass": "4.0 kg", "point": ["0 cm", "0 cm"]}],
        "force": [
            {"name": "left rope", "point": ["0 cm", "0 cm"], "direction": "30 deg above left", "force": "25 N"},
            {"name": "right rope", "point": ["0 cm", "0 cm"], "direction": "? above right", "force": "?"},
        ],
    },
    "a ring between mirror images": {
        "title": "A ring between mirror images",
        "pivot": {"name": "ring", "reaction": False},
        "load": [{"name": "lantern", "mass": "4.0 kg", "point": ["0 cm", "0 cm"]}],
        "force": [
            {"name": "left rope", "point": ["0 cm", "0 cm"], "direction": "30 deg above left", "force": "20 N"},
            {"name": "right rope", "point": ["0 cm", "0 cm"], "direction": "30 deg above right", "force": "20 N"},
            {"name": "cord", "point": ["0 cm", "0 cm"], "direction": "? above right", "force": "?"},
        ],
    },
    "a stay at a sloping plank": {
        "title": "A stay at a sloping plank",
        "pivot": {"name": "hook", "reaction": False},
        "segment": [
            {"name": "plank", "length": "2.0 m", "mass": "12 kg", "com": "1.0 m", "direction": "20 deg above right"}
        ],
        "load": [{"name": "sack", "mass": "9.0 kg", "at": "1.6 m"}],
        "force": [
            {"name": "rope", "at": "2.0 m", "direction": "up", "force": "?"},
            {"name": "wind", "at": "1.0 m", "direction": "right", "force": "30 N"},
            {"name": "stay", "at": "0 m", "direction": "? from out toward up", "force": "?"},
        ],
    },
    "a line of five": {
        "title": "A line of five",
        "pivot": {"name": "elbow"},
        "load": [{"name": "jug", "weight": "40 N", "point": ["10 cm", "0 cm"]}],
        "force": [{"name": "rope", "point": ["4 cm", "1 cm"], "toward": ["1 cm", "5 cm"], "force": "?"}],
    },
    "a rope straight up": {
        "title": "A rope straight up",
        "pivot": {"name": "elbow"},
        "load": [{"name": "jug", "weight": "40 N", "point": ["10 cm", "0 cm"]}],
        "force": [{"name": "rope", "point": ["4 cm", "2 cm"], "toward": ["4 cm", "46 cm"], "force": "?"}],
    },
    "a cord in line with the elbow": {
        "title": "A cord in line with the elbow",
        "ask": ["biceps", "reaction"],
        "pivot": {"name": "elbow"},
        "load": [{"name": "jug", "weight": "40 N", "point": ["10 cm", "0 cm"]}],
        "muscle": [{"name": "biceps", "point": ["4 cm", "0 cm"], "direction": "up"}],
        "force": [{"name": "cord", "point": ["2 cm", "2 cm"], "toward": ["30 cm", "30 cm"], "force": "20 N"}],
    },
    "one angle twice": {
        "title": "One angle twice",
        "ask": ["biceps", "reaction"],
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm", "direction": "27.3 deg below right"}],
        "load": [{"name": "jug", "weight": "40 N", "at": "30 cm"}],
        "muscle": [{"name": "biceps", "point": ["5 cm", "0 cm"], "direction": "27.3 deg from back toward up"}],
    },
    "a tangent": {
        "title": "A tangent",
        "pivot": {"name": "knee"},
        "segment": [{"name": "shank", "direction": "? right of down"}],
        "load": [{"name": "cuff", "weight": "60 N", "at": "20 cm"}],
        "force": [{"name": "cord", "at": "30 cm", "direction": "right", "force": "35 N"}],
    },
    "a pull straight up": {
        "title": "A pull straight up",
        "ask": ["biceps.direction", "reaction"],
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm", "direction": "up"}],
        "load": [{"name": "jug", "weight": "40 N", "at": "30 cm"}],
        "muscle": [{"name": "biceps", "at": "4 cm", "direction": "? above right", "force": "300 N"}],
    },
    "a pull found to be upright": {
        "title": "A pull found to be upright",
        "ask": ["biceps.direction", "reaction"],
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm", "direction": "30 deg above right"}],
        "load": [{"name": "jug", "weight": "40 N", "at": "30 cm"}],
        "muscle": [{"name": "biceps", "at": "4 cm", "direction": "? above right", "force": "300 N"}],
    },
    "an angle of nothing": {
        "title": "An angle of nothing",
        "ask": ["biceps.direction", "reaction"],
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm", "direction": "30 deg above right"}],
        "load": [{"name": "jug", "weight": "40 N", "at": "30 cm"}],
        "muscle": [{"name": "biceps", "at": "4 cm", "direction": "? left of up", "force": "300 N"}],
    },
    "a sine of minus one": {
        "title": "A sine of minus one",
        "ask": ["biceps.direction", "reaction"],
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm"}],
        "load": [{"name": "jug", "weight": "40 N", "at": "30 cm"}],
        "muscle": [{"name": "biceps", "at": "4 cm", "direction": "? below right", "force": "300 N"}],
    },
    "a cord aslant": {
        "title": "A cord aslant",
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm", "direction": "? below right"}],
        "load": [{"name": "jug", "weight": "90 N", "at": "30 cm"}],
        "force": [{"name": "cord", "at": "25 cm", "direction": "40 deg above right", "force": "60 N"}],
    },
    "a cord aslant and a muscle": {
        "title": "A cord aslant and a muscle",
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm", "direction": "? below right"}],
        "load": [{"name": "jug", "weight": "90 N", "at": "30 cm"}],
        "force": [{"name": "cord", "at": "25 cm", "direction": "40 deg above right", "force": "60 N"}],
        "muscle": [{"name": "biceps", "moment_arm": "4 cm", "turns": "counter-clockwise", "force": "300 N"}],
    },
    "two ropes, as shown": {
        "title": "Two ropes, as shown",
        "pivot": {"name": "ring", "reaction": False},
        "course": {"carry": "as shown"},
        "load": [{"name": "lamp", "mass": "1 kg", "point": ["0 cm", "0 cm"]}],
        "force": [
            {"name": "left rope", "point": ["0 cm", "0 cm"], "direction": "3 deg above left", "force": "?"},
            {"name": "right rope", "point": ["0 cm", "0 cm"], "direction": "4 deg above right", "force": "?"},
        ],
    },
    "an angle taken away": {
        "title": "An angle taken away",
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm", "direction": "60 deg below right"}],
        "load": [{"name": "jug", "weight": "90 N", "at": "15 cm"}],
        "muscle": [{"name": "biceps", "at": "39 cm", "direction": "? below right", "force": "600 N"}],
    },
    "sine and cosine together": {
        "title": "Sine and cosine together",
        "pivot": {"name": "elbow"},
        "load": [{"name": "jug", "weight": "90 N", "point": ["15 cm", "0 cm"]}],
        "muscle": [{"name": "biceps", "point": ["28 cm", "13 cm"], "direction": "? left of up", "force": "192 N"}],
    },
    "as shown, in inches": {
        "title": "As shown, in inches",
        "ask": ["biceps", "reaction"],
        "pivot": {"name": "elbow"},
        "course": {
            "carry": "as shown",
            "ties": "even",
            "lengths": "in",
            "forces": "lb",
            "order": "letters first",
            "positive": "clockwise",
        },
        "segment": [{"name": "forearm", "mass": "1.6 kg", "com": "15 cm"}],
        "load": [{"name": "jug", "mass": "3.1 kg", "at": "33 cm"}],
        "muscle": [{"name": "biceps", "at": "4.5 cm", "direction": "70 deg from back toward up"}],
    },
    "a turning part": {
        "title": "A turning part",
        "ask": ["biceps", "reaction.along", "reaction.across", "reaction"],
        "pivot": {"name": "elbow"},
        "course": {
            "method": "turning component",
            "order": "divide first",
            "axes": "along and across the forearm",
            "ties": "even",
            "figures": 4,
        },
        "segment": [{"name": "forearm", "mass": "1.6 kg", "com": "15 cm", "direction": "35 deg below right"}],
        "load": [{"name": "jug", "mass": "3.1 kg", "at": "33 cm"}],
        "couple": [{"name": "spring", "moment": "150 N cm", "turns": "clockwise"}],
        "muscle": [{"name": "biceps", "at": "4.5 cm", "direction": "70 deg from back toward up", "area": "8 cm^2"}],
    },
    "two ropes": {
        "title": "A lamp on two ropes",
        "pivot": {"name": "ring", "reaction": False},
        "course": {"order": "letters first"},
        "load": [{"name": "lamp", "mass": "2.4 kg", "point": ["0 cm", "0 cm"]}],
        "force": [
            {"name": "left rope", "point": ["0 cm", "0 cm"], "direction": "40 deg above left", "force": "?"},
            {"name": "right rope", "point": ["0 cm", "0 cm"], "direction": "25 deg above right", "force": "?"},
        ],
    },
    "moments alone": {
        "title": "Moments alone",
        "balanced": False,
        "ask": ["total.moment", "left.moment"],
        "pivot": {"name": "hinge"},
        "course": {"positive": "clockwise"},
        "segment": [{"name": "board"}],
        "force": [
            {"name": "left", "at": "-12 cm", "direction": "50 deg below right", "force": "40 N"},
            {"name": "right", "at": "30 cm", "direction": "up", "force": "25 N"},
        ],
    },
}


@cache
def worked(path: Path) -> Working:
    """A problem file, worked through."""
    return work_through(cut_free(read_problem(path)), rules.MOVES)


@cache
def extra(name: str) -> Working:
    """One of EXTRA, worked through."""
    return work_through(cut_free(read_problem(EXTRA[name])), rules.MOVES)


def replayed(working: Working, upto: int) -> tuple[Checker, list[Certified]]:
    """The first lines of a working certified once more, by a checker of their own."""
    checker = Checker(working.truth, angles=working.checker.angles)
    made: dict[int, Certified] = {}
    for move in working.moves[:upto]:
        before = made[id(move.before)] if move.before is not None else None
        made[id(move.line)] = checker.certify(move.line.equation, move.line.claim, before)
    return checker, list(made.values())
