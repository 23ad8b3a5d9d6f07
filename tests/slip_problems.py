"""The problems of the catalogue of slips as problem files: its reference problem, and those of its scenarios that
tests/scenarios does not hold.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any

import rules
from worked import HERE, worked

from explain.marking.slips.account import Account
from explain.marking.slips.account_of_working import account_of
from explain.problem.reader import read_problem
from explain.mechanics.free_body import cut_free
from explain.solve.engine import Working, work_through

ELBOW = {"name": "elbow", "bone": "humerus"}


def _reference(*heavy: Mapping[str, Any], length: str = "38 cm") -> dict[str, Any]:
    """The reference problem: forearm 25 deg below level, 5.0 kg at 34 cm, 1.6 kg at 17 cm of 38 cm, insertion 5.0
    cm, pull at 58 deg to the bone.
    """
    first, *more = heavy or ({"mass": "1.6 kg", "com": "17 cm"},)
    segments = [{"name": "forearm", "length": length, "direction": "25 deg below right", **first}, *more]
    return {
        "title": "The reference problem",
        "ask": ["biceps", "reaction.right", "reaction.up", "reaction"],
        "pivot": ELBOW,
        "segment": segments,
        "load": [{"name": "bag", "mass": "5.0 kg", "at": "34 cm", "on": "forearm"}],
        "muscle": [{"name": "biceps", "on": "forearm", "at": "5.0 cm", "direction": "58 deg from back toward up"}],
    }


PROBLEMS: Mapping[str, Mapping[str, Any]] = {
    "REF": _reference(),
    # The same moment of the segments, 0.4 kg of it in a hand at 34 cm, as the catalogue's example counts a hand once
    # too often.
    "REF with a hand": _reference(
        {"mass": "1.2 kg", "com": "11.33333 cm"},
        {"name": "hand", "length": "12 cm", "direction": "25 deg below right", "mass": "0.4 kg", "com": "8 cm"},
        length="26 cm",
    ),
    # 68 kg; forearm 1.6 % at 43 % of 27 cm, hand 0.6 % at 7.0 cm beyond the wrist. Load and arm are ours, chosen to
    # give its 501.4 N.
    "S03": {
        "title": "Shares of the body",
        "ask": ["flexors"],
        "pivot": ELBOW,
        "person": {"mass": "68 kg", "table": "winter"},
        "segment": [
            {"name": "forearm", "length": "27 cm", "mass": "table", "com": "table"},
            {"name": "hand", "mass": "table", "com": "7.0 cm"},
        ],
        "load": [{"name": "tin", "mass": "4.5 kg", "on": "forearm", "at": "35 cm"}],
        "muscle": [{"name": "flexors", "on": "forearm", "at": "3.6 cm", "direction": "up"}],
    },
    # Both feet bear the body. The data are ours, chosen to give the catalogue's 813.3 N.
    "S13": {
        "title": "On the toes of both feet",
        "ask": ["calf"],
        "pivot": {"name": "ankle", "bone": "shin bone"},
        "person": {"mass": "69.09 kg"},
        "force": [{"name": "floor", "point": ["12 cm", "0 cm"], "direction": "up", "force": "50 %"}],
        "muscle": [{"name": "calf", "moment_arm": "5.0 cm", "turns": "clockwise"}],
    },
    # A jaw whose muscle pulls 203.4 N, as in the catalogue.
    "S17": {
        "title": "A bite",
        "ask": ["masseter"],
        "pivot": {"name": "jaw", "bone": "skull"},
        "force": [{"name": "bite", "point": ["6.0 cm", "0 cm"], "direction": "down", "force": "101.7 N"}],
        "muscle": [{"name": "masseter", "point": ["3.0 cm", "0 cm"], "direction": "up"}],
    },
    "a level cord": {
        "title": "A level cord at the shank",
        "ask": ["quadriceps"],
        "pivot": {"name": "knee", "bone": "femur"},
        "segment": [{"name": "shank", "direction": "35 deg below right", "mass": "3.2 kg", "com": "20 cm"}],
        "force": [{"name": "cord", "at": "38 cm", "direction": "left", "force": "60 N"}],
        "muscle": [{"name": "quadriceps", "moment_arm": "4.2 cm", "turns": "counter-clockwise"}],
    },
    "a leaning trunk": {
        "title": "A leaning trunk",
        "ask": ["back muscles"],
        "pivot": {"name": "hip", "bone": "pelvis"},
        "segment": [{"name": "trunk", "direction": "40 deg above right", "mass": "38 kg", "com": "26 cm"}],
        "load": [{"name": "crate", "mass": "15 kg", "point": ["45 cm", "0 cm"]}],
        "muscle": [{"name": "back muscles", "moment_arm": "5.5 cm", "turns": "counter-clockwise"}],
    },
    "in grams": {
        "title": "Grams",
        "ask": ["biceps"],
        "pivot": ELBOW,
        "segment": [{"name": "forearm", "mass": "1600 g", "com": "17 cm"}],
        "load": [{"name": "apple", "mass": "180 g", "at": "34 cm"}],
        "muscle": [{"name": "biceps", "at": "5.0 cm", "direction": "up"}],
    },
    "two in pounds": {
        "title": "A mass in pounds",
        "ask": ["biceps"],
        "pivot": ELBOW,
        "segment": [{"name": "forearm"}],
        "load": [{"name": "jar", "mass": "6.0 lb", "at": "12 in"}],
        "muscle": [{"name": "biceps", "at": "1.6 in", "direction": "up"}],
    },
}
FILED = {"S14": "S14-a", "S04": "S04-a"}


@cache
def working(name: str) -> Working:
    """A problem of PROBLEMS, or of tests/scenarios, worked through."""
    if name in PROBLEMS:
        return work_through(cut_free(read_problem(PROBLEMS[name])), rules.MOVES)
    return worked(HERE / "scenarios" / f"{FILED.get(name, name)}.toml")


def account(name: str) -> Account:
    """The account of a problem."""
    return account_of(working(name))
