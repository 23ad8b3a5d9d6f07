"""Statements of small problems, whole and word for word: one for each way in which a load, a body, a pull or a question
is told.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from explain.equation.terms import Quantity
from explain.problem.model import Direction, Load, Place, Problem, Pull, Unknown
from explain.problem.reader import read_problem
from explain.wording.direction_words import counted_words, direction_words, plain_degrees, sought_words, turned_words
from explain.wording.hung_words import hung_meaning
from explain.wording.phrases import acts, factor_meaning, force_meaning, square_of, stands, told
from explain.wording.pivot_words import has_joint, is_joint, pivot_force, pusher, pushes
from explain.wording.statement import compose

WHOLE: Mapping[str, tuple[dict[str, Any], str]] = {
    "a woman of one table": (
        {
            "title": "-",
            "pivot": {"name": "elbow", "bone": "humerus"},
            "person": {"mass": "61 kg", "sex": "female", "table": "de-leva-1996"},
            "segment": [{"name": "forearm", "length": "25 cm", "mass": "table", "com": "table"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        (
            "The forearm (25 cm long, mass and centre of mass from de Leva's table for a woman of 61 kg) is "
            "horizontal and at rest. The biceps meets it 4 cm from the elbow and pulls straight up. How hard does"
            " the biceps pull on the forearm?"
        ),
    ),
    "a man of another": (
        {
            "title": "-",
            "pivot": {"name": "elbow", "bone": "humerus"},
            "person": {"mass": "80 kg", "sex": "male", "table": "dempster-winter"},
            "segment": [{"name": "forearm", "length": "25 cm", "mass": "table", "com": "11 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        (
            "The forearm (25 cm long, mass from Winter's table for a man of 80 kg, centre of mass 11 cm from the "
            "elbow) is horizontal and at rest. The biceps meets it 4 cm from the elbow and pulls straight up. How"
            " hard does the biceps pull on the forearm?"
        ),
    ),
    "shares of the body": (
        {
            "title": "-",
            "pivot": {"name": "elbow", "bone": "humerus"},
            "person": {"mass": "70 kg"},
            "segment": [{"name": "forearm", "length": "30 cm", "mass": "1.6 %", "com": "40 %"}],
            "load": [
                {"name": "trunk", "mass": "50 %", "at": "20 cm"},
                {"name": "head", "weight": "8 %", "at": "25 cm"},
            ],
            "muscle": [{"name": "biceps", "at": "10 %", "direction": "up"}],
        },
        (
            "The trunk (50 % of the body mass of 70 kg) acts 20 cm from the elbow and the head (8 % of the body "
            "weight (body mass 70 kg)) acts 25 cm from the elbow. The forearm (30 cm long, 1.6 % of the body "
            "mass, centre of mass at 40 % of its length from the elbow) is horizontal and at rest. The biceps "
            "meets it at 10 % of the length of the forearm from the elbow and pulls straight up. How hard does "
            "the biceps pull on the forearm?"
        ),
    ),
    "a weight at the joint": (
        {
            "title": "-",
            "pivot": {"name": "elbow", "bone": "humerus"},
            "segment": [{"name": "forearm", "length": "30 cm", "weight": "18 N", "com": "0 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        (
            "The forearm (30 cm long, weighing 18 N, centre of mass at the elbow) is horizontal and at rest. The "
            "biceps meets it 4 cm from the elbow and pulls straight up. How hard does the biceps pull on the "
            "forearm?"
        ),
    ),
    "a whole body": (
        {
            "title": "-",
            "pivot": {"name": "toes"},
            "person": {"mass": "71 kg"},
            "segment": [{"name": "body", "length": "1.70 m", "mass": "100 %", "com": "0.98 m"}],
            "force": [{"name": "floor", "at": "1.4 m", "direction": "up", "force": "?"}],
        },
        (
            "The body (1.70 m long, 71 kg, centre of mass 0.98 m from the toes) is horizontal and at rest. The "
            "floor pushes straight up, 1.4 m from the toes. How hard does the floor push on the body?"
        ),
    ),
    "spread loads": (
        {
            "title": "-",
            "pivot": {"name": "log"},
            "segment": [{"name": "plank", "length": "4 m"}],
            "load": [
                {"name": "sand", "weight": "1.2 N/cm", "spread": ["10 cm", "40 cm"]},
                {"name": "snow", "mass": "3 kg", "spread": ["-40 cm", "-10 cm"]},
            ],
            "force": [{"name": "rope", "at": "2 m", "direction": "up", "force": "?"}],
        },
        (
            "A plank (4 m long) is horizontal and at rest. The sand (weighing 1.2 N/cm) is spread evenly between "
            "10 cm and 40 cm from the log; the snow (3 kg) is spread evenly between 40 cm and 10 cm on the other "
            "side of the log. The rope pulls straight up, 2 m from the log. Leave out the weight of the plank. "
            "How hard does the rope pull on the plank?"
        ),
    ),
    "loads that grow": (
        {
            "title": "-",
            "pivot": {"name": "log"},
            "segment": [{"name": "plank", "length": "4 m"}],
            "load": [
                {"name": "bricks", "mass": "30 kg", "spread": ["10 cm", "40 cm"], "spread_to": "one end"},
                {"name": "drift", "weight": "15 N/m", "spread": ["-40 cm", "40 cm"], "spread_to": "one end"},
            ],
            "force": [{"name": "rope", "at": "2 m", "direction": "up", "force": "?"}],
        },
        (
            "A plank (4 m long) is horizontal and at rest. Bricks of 30 kg grow evenly from nothing at 10 cm to "
            "their heaviest at 40 cm from the log and a drift grows evenly from nothing at 40 cm on the other "
            "side of the log to 15 N/m at 40 cm from the log. The rope pulls straight up, 2 m from the log. Leave"
            " out the weight of the plank. How hard does the rope pull on the plank?"
        ),
    ),
    "a weight that grows as a whole": (
        {
            "title": "-",
            "pivot": {"name": "log"},
            "segment": [{"name": "plank", "mass": "5 kg", "com": "1 m"}],
            "load": [{"name": "gravel", "weight": "90 N", "spread": ["40 cm", "10 cm"], "spread_to": "one end"}],
            "force": [{"name": "rope", "at": "2 m", "direction": "up", "force": "?"}],
        },
        (
            "A plank (5 kg, centre of mass 1 m from the log) is horizontal and at rest. The gravel (weighing 90 N) "
            "grows evenly from nothing at 40 cm to its heaviest at 10 cm from the log. The rope pulls straight up, 2 m "
            "from the log. How hard does the rope pull on the plank?"
        ),
    ),
    "a load spread on a second segment": (
        {
            "title": "-",
            "pivot": {"name": "log"},
            "segment": [{"name": "plank", "length": "4 m"}, {"name": "board", "length": "1 m"}],
            "load": [{"name": "sand", "mass": "3 kg", "on": "board", "spread": ["10 cm", "40 cm"]}],
            "force": [{"name": "rope", "on": "board", "at": "50 cm", "direction": "up", "force": "?"}],
        },
        (
            "A plank (4 m long) is horizontal and at rest; at its far end, a board (1 m long) is horizontal. The "
            "sand (3 kg) is spread evenly between 10 cm and 40 cm from the near end of the board. The rope pulls "
            "straight up, 50 cm along the board. Leave out the weight of the plank and the weight of the board. "
            "How hard does the rope pull on the board?"
        ),
    ),
    "muscles that share by their areas": (
        {
            "title": "-",
            "pivot": {"name": "elbow", "bone": "humerus"},
            "segment": [{"name": "forearm", "length": "30 cm", "mass": "1.6 kg", "com": "40 %"}],
            "muscle": [
                {"name": "biceps", "at": "4 cm", "direction": "up", "area": "4.6 cm^2", "share": "area"},
                {"name": "brachialis", "at": "3 cm", "direction": "up", "area": "7 cm^2", "share": "area"},
            ],
        },
        (
            "The forearm (30 cm long, 1.6 kg, centre of mass at 40 % of its length from the elbow) is horizontal "
            "and at rest. The biceps (cross-section 4.6 cm²) meets it 4 cm from the elbow and pulls straight up; "
            "the brachialis (cross-section 7 cm²) meets it 3 cm from the elbow and pulls straight up; each square"
            " centimetre of the biceps and the brachialis pulls equally hard. How hard do the biceps and the "
            "brachialis pull on the forearm?"
        ),
    ),
    "areas in inches": (
        {
            "title": "-",
            "pivot": {"name": "elbow", "bone": "humerus"},
            "segment": [{"name": "forearm", "length": "30 cm", "mass": "1.6 kg", "com": "40 %"}],
            "muscle": [
                {"name": "biceps", "at": "4 cm", "direction": "up", "area": "0.7 in^2", "share": "area"},
                {"name": "brachialis", "at": "3 cm", "direction": "up", "area": "1.1 in^2", "share": "area"},
            ],
        },
        (
            "The forearm (30 cm long, 1.6 kg, centre of mass at 40 % of its length from the elbow) is horizontal "
            "and at rest. The biceps (cross-section 0.7 in²) meets it 4 cm from the elbow and pulls straight up; "
            "the brachialis (cross-section 1.1 in²) meets it 3 cm from the elbow and pulls straight up; each "
            "square inch of the biceps and the brachialis pulls equally hard. How hard do the biceps and the "
            "brachialis pull on the forearm?"
        ),
    ),
    "as hard as they can": (
        {
            "title": "-",
            "pivot": {"name": "elbow", "bone": "humerus"},
            "segment": [{"name": "forearm", "length": "30 cm", "mass": "1.6 kg", "com": "40 %"}],
            "load": [{"name": "jug", "mass": "?", "at": "30 cm"}],
            "muscle": [{"name": "flexors", "at": "4 cm", "direction": "up", "force": "limit", "limit": "400 N"}],
        },
        (
            "A jug of unknown mass rests 30 cm from the elbow. The forearm (30 cm long, 1.6 kg, centre of mass at"
            " 40 % of its length from the elbow) is horizontal and at rest. The flexors (at most 400 N) meet it 4"
            " cm from the elbow and pull straight up as hard as they can. What is the mass of the jug?"
        ),
    ),
    "a moment arm that is sought": (
        {
            "title": "-",
            "pivot": {"name": "elbow", "bone": "humerus"},
            "segment": [{"name": "forearm", "length": "30 cm", "mass": "1.6 kg", "com": "40 %"}],
            "muscle": [{"name": "biceps", "moment_arm": "?", "turns": "clockwise", "force": "30 N"}],
        },
        (
            "The forearm (30 cm long, 1.6 kg, centre of mass at 40 % of its length from the elbow) is horizontal "
            "and at rest. The biceps pulls with 30 N at an unknown moment arm about the elbow, turning the "
            "forearm clockwise. What is the moment arm of the biceps about the elbow?"
        ),
    ),
    "a pull toward a point below": (
        {
            "title": "-",
            "pivot": {"name": "log"},
            "segment": [],
            "load": [{"name": "jug", "weight": "40 N", "point": ["10 cm", "-3 cm"]}],
            "force": [{"name": "rope", "point": ["4 cm", "0 cm"], "toward": ["0 cm", "-5 cm"], "force": "?"}],
        },
        (
            "A jug weighing 40 N acts 10 cm to the right of and 3 cm below the log. The rope pulls from 4 cm to "
            "the right of the log toward the point 5 cm below the log. How hard does the rope pull on the jug?"
        ),
    ),
    "multiples of other forces": (
        {
            "title": "-",
            "pivot": {"name": "log"},
            "segment": [{"name": "plank"}],
            "load": [{"name": "crate", "weight": "40 N", "at": "1 m"}],
            "force": [
                {"name": "left hand", "at": "1 m", "direction": "up", "force": "?"},
                {"name": "right hand", "at": "2 m", "direction": "up", "force": "0.5 * left hand"},
                {"name": "wind", "at": "2 m", "direction": "left", "force": "0.25 * crate"},
            ],
        },
        (
            "A plank is horizontal and at rest. A crate weighing 40 N rests 1 m from the log. The left hand lifts"
            " straight up, 1 m from the log; the right hand lifts straight up with 0.5 times the force of the "
            "left hand, 2 m from the log; the wind pushes horizontally to the left with 0.25 times the weight of "
            "the crate, 2 m from the log. Leave out the weight of the plank. How hard does the left hand lift the"
            " plank?"
        ),
    ),
    "a mass that is sought over a pulley": (
        {
            "title": "-",
            "pivot": {"name": "log"},
            "segment": [{"name": "plank", "mass": "3 kg", "com": "1 m"}],
            "force": [{"name": "cable", "count": 2, "at": "1 m", "direction": "up", "hung": "?"}],
        },
        (
            "A plank (3 kg, centre of mass 1 m from the log) is horizontal and at rest. Each cable (two alike) "
            "pulls straight up, over a smooth pulley with an unknown mass at its other end, 1 m from the log. "
            "What is the mass at the other end of each cable?"
        ),
    ),
    "two couples": (
        {
            "title": "-",
            "pivot": {"name": "log"},
            "segment": [{"name": "plank", "mass": "3 kg", "com": "1 m"}],
            "couple": [
                {"name": "springs", "moment": "12 N m", "turns": "clockwise"},
                {"name": "brake", "moment": "?", "turns": "counter-clockwise"},
            ],
        },
        (
            "A plank (3 kg, centre of mass 1 m from the log) is horizontal and at rest. The springs turn the "
            "plank clockwise with a moment of 12 N·m; the brake turns the plank counter-clockwise. What is the "
            "moment of the brake?"
        ),
    ),
    "a force at the pivot and one behind it": (
        {
            "title": "-",
            "pivot": {"name": "log"},
            "segment": [{"name": "plank", "direction": "20 deg above left"}],
            "load": [{"name": "weight", "weight": "40 N", "at": "0 m"}],
            "force": [
                {"name": "rope", "at": "-2 m", "direction": "30 deg left of up", "force": "?"},
                {"name": "stay", "at": "0 m", "direction": "15 deg below left", "force": "20 N"},
            ],
        },
        (
            "A plank is at rest, 20° above the horizontal, to the left. A weight of 40 N acts at the log. The "
            "rope pulls on the plank 2 m from the log, on the other side, 30° to the left of straight up; the "
            "stay pulls on the plank at the log with 20 N, 15° below the horizontal, to the left. Leave out the "
            "weight of the plank. How hard does the rope pull on the plank?"
        ),
    ),
    "ways along a mast": (
        {
            "title": "-",
            "pivot": {"name": "log"},
            "segment": [{"name": "mast", "direction": "up", "length": "3 m"}],
            "force": [
                {"name": "stay", "at": "2 m", "direction": "40 deg from back toward left", "force": "?"},
                {"name": "shore", "at": "1 m", "direction": "90 deg from out toward right", "force": "5 N"},
                {"name": "peg", "at": "1 m", "direction": "back", "force": "5 N"},
                {"name": "lug", "at": "1 m", "direction": "120 deg from back toward right", "force": "5 N"},
            ],
        },
        (
            "A mast (3 m long) is vertical and at rest. The stay pulls on the mast 2 m from the log at 40° to the"
            " mast, back and to the left; the shore pushes on the mast 1 m from the log with 5 N, at 90° to the "
            "mast, to the right; the peg acts back along the mast with 5 N, 1 m from the log; the lug acts on the"
            " mast 1 m from the log with 5 N, at 120° to the line back along the mast, turned toward the "
            "horizontal line to the right. Leave out the weight of the mast. How hard does the stay pull on the "
            "mast?"
        ),
    ),
    "nothing need be at rest": (
        {
            "title": "-",
            "pivot": {"name": "log"},
            "balanced": False,
            "ask": ["total.moment"],
            "segment": [{"name": "planks", "direction": "10 deg above right"}],
            "force": [{"name": "rope", "at": "2 m", "direction": "up", "force": "5 N"}],
        },
        (
            "Planks are 10° above the horizontal, to the right. The rope pulls straight up with 5 N, 2 m from the"
            " log. Leave out the weight of the planks. What is the total moment about the log?"
        ),
    ),
    "what is left out already": (
        {
            "title": "-",
            "pivot": {"name": "log"},
            "neglect": ["the weight of the plank", "friction"],
            "segment": [{"name": "plank", "length": "2 m"}, {"name": "board"}],
            "force": [{"name": "rope", "on": "board", "at": "2 m", "direction": "up", "force": "?"}],
        },
        (
            "A plank (2 m long) is horizontal and at rest; at its far end, a board is horizontal. The rope pulls "
            "straight up, 2 m along the board. Leave out the weight of the plank, friction and the weight of the "
            "board. How hard does the rope pull on the board?"
        ),
    ),
    "a rough slope": (
        {
            "title": "-",
            "pivot": {"name": "feet", "support": "deck", "friction": "0.4", "surface": "12 deg below right"},
            "segment": [
                {"name": "ladder", "mass": "9 kg", "com": "2 m", "direction": "60 deg above right", "length": "4 m"}
            ],
            "force": [
                {"name": "wall", "at": "4 m", "direction": "left", "force": "?"},
                {"name": "rope", "at": "4 m", "direction": "up", "force": "?"},
            ],
        },
        (
            "A ladder (4 m long, 9 kg, centre of mass 2 m from the feet) is at rest, 60° above the horizontal, to"
            " the right. The wall pushes horizontally to the left, 4 m from the feet; the rope pulls straight up,"
            " 4 m from the feet. The deck at the feet, 12° below the horizontal, to the right, is rough, with a "
            "coefficient of friction of 0.4. How hard does the wall push on the ladder, and how hard does the "
            "rope pull on the ladder?"
        ),
    ),
    "feet about to slip": (
        {
            "title": "-",
            "pivot": {"name": "feet", "friction": "0.4", "slips": "right"},
            "segment": [
                {"name": "ladder", "mass": "9 kg", "com": "2 m", "direction": "60 deg above right", "length": "4 m"}
            ],
            "force": [
                {"name": "wall", "at": "4 m", "direction": "left", "force": "?"},
                {"name": "rope", "at": "4 m", "direction": "up", "force": "?"},
            ],
        },
        (
            "A ladder (4 m long, 9 kg, centre of mass 2 m from the feet) is at rest, 60° above the horizontal, to"
            " the right. The wall pushes horizontally to the left, 4 m from the feet; the rope pulls straight up,"
            " 4 m from the feet. The surface at the feet is rough, with a coefficient of friction of 0.4; the "
            "feet are about to slip to the right. How hard does the wall push on the ladder, and how hard does "
            "the rope pull on the ladder?"
        ),
    ),
    "an end about to slip upwards": (
        {
            "title": "-",
            "pivot": {"name": "end", "support": "wall", "surface": "down", "friction": "0.4", "slips": "up"},
            "segment": [{"name": "arm", "mass": "9 kg", "com": "2 m", "length": "4 m"}],
            "force": [
                {"name": "cord", "at": "4 m", "direction": "35 deg above left", "force": "?"},
                {"name": "push", "at": "4 m", "direction": "up", "force": "?"},
            ],
        },
        (
            "The arm (4 m long, 9 kg, centre of mass 2 m from the end) is horizontal and at rest. The cord pulls "
            "on the arm 4 m from the end, 35° above the horizontal, to the left; the push acts straight up, 4 m "
            "from the end. The wall at the end, vertical, is rough, with a coefficient of friction of 0.4; the "
            "end is about to slip upwards. How hard does the cord pull on the arm, and with what force does the "
            "push act on the arm?"
        ),
    ),
    "a table and no mass of a person": (
        {
            "title": "-",
            "pivot": {"name": "elbow", "bone": "humerus"},
            "person": {"table": "clauser-1969"},
            "segment": [{"name": "forearm", "length": "25 cm", "mass": "1.5 kg", "com": "table"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        (
            "The forearm (25 cm long, 1.5 kg, centre of mass from Clauser's table for a person) is horizontal and"
            " at rest. The biceps meets it 4 cm from the elbow and pulls straight up. How hard does the biceps "
            "pull on the forearm?"
        ),
    ),
    "three things to find": (
        {
            "title": "-",
            "pivot": {"name": "log"},
            "ask": ["left rope.at", "right rope.direction", "crate.at"],
            "segment": [{"name": "plank", "length": "4 m"}],
            "load": [{"name": "crate", "at": "?", "mass": "4 kg"}],
            "force": [
                {"name": "left rope", "at": "?", "direction": "up", "force": "4 N"},
                {"name": "right rope", "at": "2 m", "direction": "? above right", "force": "5 N"},
            ],
        },
        (
            "A plank (4 m long) is horizontal and at rest. A crate of 4 kg rests at an unknown distance from the "
            "log. The left rope pulls straight up with 4 N at an unknown distance from the log; the right rope "
            "pulls on the plank 2 m from the log with 5 N at an unknown angle above the horizontal, to the right."
            " Leave out the weight of the plank. Find the distance of the left rope from the log, the angle above"
            " the horizontal, to the right, at which the right rope pulls and the distance of the crate from the "
            "log."
        ),
    ),
    "a part, its direction and a moment": (
        {
            "title": "-",
            "pivot": {"name": "elbow", "bone": "humerus"},
            "ask": ["reaction.up", "reaction.direction", "biceps.moment"],
            "segment": [{"name": "forearm", "length": "30 cm", "mass": "1.6 kg", "com": "40 %"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        (
            "The forearm (30 cm long, 1.6 kg, centre of mass at 40 % of its length from the elbow) is horizontal "
            "and at rest. The biceps meets it 4 cm from the elbow and pulls straight up. With what force does the"
            " humerus push on the forearm (its upward part and its direction), and what is the moment of the "
            "biceps about the elbow?"
        ),
    ),
    "a centre of mass and a stress": (
        {
            "title": "-",
            "pivot": {"name": "elbow", "bone": "humerus"},
            "ask": ["forearm.com", "biceps.stress"],
            "segment": [{"name": "forearm", "length": "30 cm", "mass": "1.6 kg", "com": "?"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "50 N", "area": "9 cm^2"}],
        },
        (
            "The forearm (30 cm long, 1.6 kg, centre of mass at an unknown distance from the elbow) is horizontal"
            " and at rest. The biceps (cross-section 9 cm²) meets it 4 cm from the elbow and pulls straight up "
            "with 50 N. What is the distance of the centre of mass of the forearm from the elbow, and what is the"
            " stress in the biceps?"
        ),
    ),
    "a weight, three ropes and a sum": (
        {
            "title": "-",
            "pivot": {"name": "log"},
            "ask": ["crate.weight", "rope", "total.moment"],
            "segment": [{"name": "plank"}],
            "load": [{"name": "crate", "at": "1 m", "mass": "4 kg"}],
            "force": [{"name": "rope", "count": 3, "at": "2 m", "direction": "up", "force": "?"}],
        },
        (
            "A plank is horizontal and at rest. A crate of 4 kg rests 1 m from the log. Each rope (three alike) "
            "pulls straight up, 2 m from the log. Leave out the weight of the plank. Find the weight of the "
            "crate, the force of each rope on the plank and the total moment about the log."
        ),
    ),
    "a slope from the bone before": (
        {
            "title": "-",
            "pivot": {"name": "elbow", "bone": "humerus"},
            "segment": [
                {"name": "upper arm", "length": "30 cm", "direction": "down"},
                {"name": "forearm", "direction": "? from out toward right", "mass": "1 kg", "com": "10 cm"},
            ],
            "couple": [{"name": "brake", "moment": "1 N m", "turns": "clockwise"}],
        },
        (
            "The upper arm (30 cm long) is hanging straight down and at rest; at its far end, the forearm (1 kg, "
            "centre of mass 10 cm along it) is at an unknown angle to the upper arm, outward and to the right. "
            "The brake turns the whole limb clockwise with a moment of 1 N·m. Leave out the weight of the upper "
            "arm. At what angle to the upper arm, outward and to the right, is the forearm?"
        ),
    ),
    "friction before the force at the pivot": (
        {
            "title": "-",
            "pivot": {"name": "foot", "friction": "?"},
            "ask": ["reaction.friction", "reaction"],
            "segment": [{"name": "ladder", "length": "4 m", "mass": "9 kg", "com": "2 m", "direction": "up"}],
            "force": [{"name": "wall", "at": "4 m", "direction": "left", "force": "?"}],
        },
        (
            "A ladder (4 m long, 9 kg, centre of mass 2 m from the foot) is vertical and at rest. The wall pushes "
            "horizontally to the left, 4 m from the foot. The surface at the foot is rough. What is the least "
            "coefficient of friction at the foot that holds the ladder, and how hard and which way is the ladder "
            "pushed at the foot?"
        ),
    ),
    "the least friction": (
        {
            "title": "-",
            "pivot": {"name": "foot", "friction": "?"},
            "segment": [
                {"name": "ladder", "mass": "9 kg", "com": "2 m", "direction": "60 deg above right", "length": "4 m"}
            ],
            "force": [{"name": "wall", "at": "4 m", "direction": "left", "force": "?"}],
        },
        (
            "A ladder (4 m long, 9 kg, centre of mass 2 m from the foot) is at rest, 60° above the horizontal, to"
            " the right. The wall pushes horizontally to the left, 4 m from the foot. The surface at the foot is "
            "rough. How hard does the wall push on the ladder, and what is the least coefficient of friction at "
            "the foot that holds the ladder?"
        ),
    ),
}


@pytest.mark.parametrize("name", WHOLE)
def test_a_statement_says_all_of_it_word_for_word(name: str) -> None:
    problem, told_whole = WHOLE[name]
    assert compose(read_problem(problem)) == told_whole


# ---------------------------------------------------------------------- words for things
PULLING = "elastic band, cable, chain, cord, halyard, mooring line, rope, two ropes, sling, stay, strap, string, wire"
PUSHING = (
    "armrest, bench, counter, deck, floor, ground, hull, pad, pier, scale, seat, shore, slope, step, stream, support, "
    "table, far trestle, wall, water, wheel, both wheels, wind"
)


def named(words: str) -> list[str]:
    return words.split(", ")


def force(name: str, **more: Any) -> Pull:
    return Pull("force", name, **more)


@pytest.mark.parametrize(
    ("names", "sideways", "upwards"),
    [
        (PULLING, "pull", "pull"),
        (PUSHING, "push", "push"),
        ("left hand, both hands, carrier, two carriers", "push", "lift"),
        ("pin, hook, first", "act", "act"),
    ],
)
def test_what_a_force_does_follows_from_its_name(names: str, sideways: str, upwards: str) -> None:
    left, up, aslant = Direction("left"), Direction("up"), Direction("up", Quantity.of("20", "deg"), "left")
    assert {sideways} == {acts(force(name, direction=way)) for name in named(names) for way in (left, aslant)}
    assert {upwards} == {acts(force(name, direction=up)) for name in named(names)}
    assert {sideways} == {acts(force(name)) for name in named(names)}
    assert {"pull"} == {acts(Pull("muscle", name)) for name in named(names)}


@pytest.mark.parametrize(
    ("names", "level", "sloping"),
    [
        ("Leo, child, friend, person, boy, girl, man, woman, rider", "be", "be"),
        ("painter, walker, worker, car, truck, van", "stand", "stand"),
        ("lantern, bucket, pail, basket, hanging block", "hang", "hang"),
        ("crate, jug", "rest", "act"),
        ("load, weight, trunk", "act", "act"),
    ],
)
def test_where_a_load_is_follows_from_its_name(names: str, level: str, sloping: str) -> None:
    loads = [Load(name, Place()) for name in named(names)]
    assert ({level}, {sloping}) == ({stands(each, True) for each in loads}, {stands(each, False) for each in loads})


JOINTS = (
    "ankle, atlas, lowest disc, elbow, finger joint, hip, jaw joint, knee, lumbar spine, base of the neck, shoulder, "
    "thumb, toe, vertebra, wrist, both knees, L5/S1, C7, T12-L1, L4–5, Elbow, hip."
)
NO_JOINTS = "trestle, axle, foot of the ladder, hinge, A, L, S123, hipster, ring"


def test_a_joint_is_known_by_its_name() -> None:
    assert ([True] * 23, [False] * 9) == (
        [is_joint(name) for name in [*named(JOINTS), "finger"]],
        [is_joint(name) for name in named(NO_JOINTS)],
    )


def at(pivot: dict[str, Any], muscle: bool = True, **course: Any) -> Problem:
    kind = "muscle" if muscle else "force"
    pull = {"name": "biceps", "at": "4 cm", "direction": "up", "force": "?"}
    return read_problem(
        {"title": "-", "pivot": pivot, "segment": [{"name": "bar"}], kind: [pull], "course": {**course}}
    )


@pytest.mark.parametrize(
    ("pivot", "muscle", "joint", "what", "stem"),
    [
        ({"name": "elbow"}, False, True, "the elbow", "pushes"),
        ({"name": "tip of the toe"}, False, False, "the support at the tip of the toe", "pushes"),
        ({"name": "tip of the toe"}, True, True, "the tip of the toe", "pushes"),
        ({"name": "hinge"}, True, False, "the support at the hinge", "pushes"),
        ({"name": "hinge", "bone": "ulna"}, True, True, "the ulna", "pushes"),
        ({"name": "hinge", "bone": "ulna"}, False, False, "the ulna", "pushes"),
        ({"name": "hip", "support": "two pegs"}, True, False, "two pegs", "push"),
        ({"name": "spine", "bone": "vertebrae"}, True, True, "the vertebrae", "push"),
        ({"name": "knees"}, True, True, "the knees", "push"),
    ],
)
def test_what_pushes_at_the_pivot(pivot: dict[str, Any], muscle: bool, joint: bool, what: str, stem: str) -> None:
    problem = at(pivot, muscle)
    name = "joint force" if joint else "support force"
    assert (joint, name, what, stem) == (has_joint(problem), pivot_force(problem), pusher(problem), pushes(problem))


def test_of_a_joint_whose_bone_has_no_name_the_other_bone_is_pushed() -> None:
    problem = at({"name": "knees"}, reaction_on="the other bone")
    assert ("the other bone at the knees", "pushes") == (pusher(problem), pushes(problem))
    assert "the ulna" == pusher(at({"name": "elbow", "bone": "ulna"}, reaction_on="the other bone"))


# ---------------------------------------------------------------------- quantities and letters in words
@pytest.mark.parametrize(
    ("number", "unit", "words"),
    [
        ("6.0", "kg", "6.0 kg"),
        ("-6.0", "kg", "6.0 kg"),
        ("70", "deg", "70°"),
        ("0.70", "", "0.70"),
        ("50", "%", "50 %"),
        ("12", "N m", "12 N·m"),
        ("3", "lb ft", "3 lb·ft"),
        ("-1.2", "N/cm", "1.2 N/cm"),
        ("30", "cm^2", "30 cm²"),
    ],
)
def test_a_quantity_is_told_as_it_was_written(number: str, unit: str, words: str) -> None:
    assert words == told(Quantity.of(number, unit))


def test_an_area_is_a_square_of_its_unit() -> None:
    told_units = [square_of(Quantity.of("2", f"{unit}^2")) for unit in ("cm", "mm", "m", "in", "ft")]
    assert [f"square {each}" for each in ("centimetre", "millimetre", "metre", "inch", "foot")] == told_units
    assert "square centimetre" == square_of(None)


def test_what_the_letter_of_a_force_means() -> None:
    assert [
        "pull of the brachialis",
        "force of the rope",
        "force of each hand (two alike)",
        "pull of each flexor (three alike)",
    ] == [
        force_meaning(each)
        for each in (
            Pull("muscle", "brachialis"),
            force("rope"),
            force("hand", count=2),
            Pull("muscle", "flexor", count=3),
        )
    ]
    assert ["mass at the other end of the cable", "mass at the other end of each cable"] == [
        hung_meaning(force("cable", count=count)) for count in (1, 2)
    ]


def test_a_factor_compares_two_forces() -> None:
    pulls = (Pull("muscle", "biceps"), Pull("muscle", "brachialis", count=2), force("rope"), force("hand"))
    problem = Problem("-", pulls=pulls)
    muscle, other, rope = pulls[0], pulls[1], pulls[2]
    assert [
        "pull of the brachialis compared with that of the biceps",
        "pull of the biceps compared with the force of the rope",
        "force of the rope compared with the pull of the biceps",
        "force of the rope compared with the force of the hand",
        "force of the rope compared with the weight of the jug",
    ] == [
        factor_meaning(problem, other, "biceps"),
        factor_meaning(problem, muscle, "rope"),
        factor_meaning(problem, rope, "biceps"),
        factor_meaning(problem, rope, "hand"),
        factor_meaning(problem, rope, "jug"),
    ]


# ---------------------------------------------------------------------- directions in words
@pytest.mark.parametrize(
    ("turn", "words"),
    [
        (0.0, "straight to the right"),
        (1e-7, "straight to the right"),
        (359.9999999, "straight to the right"),
        (45.0, "45° above the horizontal, to the right"),
        (89.5, "89.5° above the horizontal, to the right"),
        (90.0, "straight up"),
        (135.0, "45° above the horizontal, to the left"),
        (180.0, "straight to the left"),
        (225.25, "45.2° below the horizontal, to the left"),
        (270.0, "straight down"),
        (315.0, "45° below the horizontal, to the right"),
    ],
)
def test_a_direction_is_told_by_its_angle_to_the_horizontal(turn: float, words: str) -> None:
    written = words if words.startswith("straight") else f"45.0°{words[words.index('°') + 1 :]}"
    assert (words, written) == (direction_words(turn), direction_words(turn, "45.0°"))


@pytest.mark.parametrize(
    ("start", "toward", "turn", "words"),
    [
        ("right", "up", 0, "straight to the right"),
        ("right", "up", 30, "30° above the horizontal, to the right"),
        ("right", "up", 90, "straight up"),
        ("right", "up", 120, "60° above the horizontal, to the left"),
        ("right", "up", 200, "20° below the horizontal, to the left"),
        ("left", "down", 30, "30° below the horizontal, to the left"),
        ("left", "down", 300, "60° above the horizontal, to the left"),
        ("up", "right", 30, "30° to the right of straight up"),
        ("up", "right", 120, "60° to the right of straight down"),
        ("down", "left", 300, "60° to the right of straight down"),
        ("out", "up", 120, "120° from the line of the arm, toward straight up"),
        ("out", "up", 200, "160° from the line of the arm, toward straight down"),
        ("back", "left", 30, "30° from the line back along the arm, toward the left"),
        ("back", "left", 300, "60° from the line back along the arm, toward the right"),
        ("up", "out", 30, "30° from straight up, toward the way out along it"),
        ("up", "out", 200, "160° from straight up, toward the way back along it"),
        ("left", "back", 10, "10° from the horizontal, to the left, toward the way back along it"),
        ("right", "out", 200, "160° from the horizontal, to the right, toward the way back along it"),
    ],
)
def test_a_turn_is_told_from_the_nearest_line(start: str, toward: str, turn: float, words: str) -> None:
    assert words == turned_words(Direction(start, Unknown(), toward), turn, along="the arm")


def test_a_turn_is_told_with_the_figures_of_the_page_where_it_is_the_one_written_there() -> None:
    right = Direction("right", Unknown(), "up")
    assert [
        "30.00° above the horizontal, to the right",
        "60° above the horizontal, to the left",
        "30.00° below the horizontal, to the right",
    ] == [
        turned_words(right, 30, "30.00°"),
        turned_words(right, 120, "120.0°"),
        turned_words(right, -30, "−30.00°"),
    ]


def test_an_angle_that_is_sought_is_counted_from_a_line() -> None:
    assert "counted from the line of the arm, toward straight up" == counted_words(
        Direction("out", Unknown(), "up"), "the arm"
    )
    assert "at an angle that is sought, counted from straight down, toward the left" == sought_words(
        Direction("down", Unknown(), "left"), ""
    )


def test_degrees_are_told_to_a_tenth() -> None:
    assert ["30°", "30.0°", "30.1°", "-4.5°"] == list(map(plain_degrees, (30.0, 30.00001, 30.06, -4.5)))
