"""Problems about one limb or joint with the pull sought, as files state them, with believable data. Knows no
working.
"""

from __future__ import annotations

from random import Random
from typing import Any

Table = dict[str, Any]


def n_of(random: Random, low: float, high: float, step: float) -> float:
    count = round((high - low) / step)
    return round(low + step * random.randint(0, count), 4)


def kg_of(random: Random, low: float, high: float, step: float = 0.1) -> str:
    return f"{n_of(random, low, high, step):g} kg"


def cm_of(random: Random, low: float, high: float, step: float = 0.5) -> str:
    return f"{n_of(random, low, high, step):g} cm"


def angle_of(random: Random, low: int = 15, high: int = 75) -> int:
    """An angle in degrees, not so near to 45 that sine and cosine are one."""
    return random.choice([each for each in range(low, high + 1) if abs(each - 45) > 4])


def level_elbow(random: Random) -> Table:
    out: Table = {
        "title": "A level forearm",
        "ask": ["biceps", "reaction"],
        "pivot": {"name": "elbow", "bone": "humerus"},
        "segment": [
            {
                "name": "forearm",
                "length": cm_of(random, 24, 28, 0.5),
                "mass": kg_of(random, 1, 2),
                "com": cm_of(random, 10, 16),
            }
        ],
        "load": [{"name": "can", "mass": kg_of(random, 1.5, 8, 0.5), "at": cm_of(random, 29, 36)}],
        "muscle": [{"name": "biceps", "at": cm_of(random, 3.5, 5.5, 0.1), "direction": "up"}],
    }
    if random.random() < 0.3:
        out["segment"][0].pop("mass"), out["segment"][0].pop("com")
    return out


def oblique_elbow(random: Random) -> Table:
    out = level_elbow(random)
    out["title"] = "A level forearm, oblique pull"
    out["muscle"][0]["direction"] = f"{angle_of(random, 55, 80)} deg from back toward up"
    return out


def sloping_elbow(random: Random) -> Table:
    out = level_elbow(random)
    out["segment"][0]["direction"] = f"{angle_of(random, 15, 60)} deg {random.choice(('below', 'above'))} right"
    muscle = out["muscle"][0]
    if random.random() < 0.6:
        muscle["direction"] = f"{angle_of(random, 50, 80)} deg from back toward up"
    else:
        muscle |= {"moment_arm": cm_of(random, 2.5, 4.5, 0.1), "turns": "counter-clockwise"}
        out["ask"] = ["biceps"]
        muscle.pop("direction")
    return out


def knee(random: Random) -> Table:
    muscle: Table = {
        "name": "quadriceps",
        "at": cm_of(random, 5, 8, 0.5),
        "direction": f"{angle_of(random, 15, 30)} deg from back toward right",
    }
    return {
        "title": "A cuff at the ankle",
        "ask": ["quadriceps", "reaction"],
        "pivot": {"name": "knee", "bone": "femur"},
        "segment": [
            {
                "name": "shank",
                "length": "40 cm",
                "direction": f"{angle_of(random, 20, 70)} deg right of down",
                "mass": kg_of(random, 3, 5),
                "com": cm_of(random, 16, 24),
            }
        ],
        "load": [{"name": "cuff", "mass": kg_of(random, 2, 9, 0.5), "at": cm_of(random, 32, 40)}],
        "muscle": [muscle],
    }


def shoulder(random: Random) -> Table:
    return {
        "title": "An arm held out",
        "ask": ["deltoid", "reaction"],
        "pivot": {"name": "shoulder", "bone": "scapula"},
        "segment": [{"name": "arm", "length": "60 cm", "mass": kg_of(random, 3, 4.5), "com": cm_of(random, 24, 30)}],
        "load": [{"name": "dumbbell", "mass": kg_of(random, 1, 5, 0.5), "at": cm_of(random, 50, 62)}],
        "muscle": [
            {
                "name": "deltoid",
                "at": cm_of(random, 11, 16),
                "direction": f"{angle_of(random, 12, 24)} deg from back toward up",
            }
        ],
    }


def two_segments(random: Random) -> Table:
    return {
        "title": "A tray held out",
        "ask": ["flexors"],
        "pivot": {"name": "shoulder", "bone": "scapula"},
        "segment": [
            {
                "name": "upper arm",
                "length": cm_of(random, 27, 32),
                "direction": f"{angle_of(random, 25, 60)} deg right of down",
                "mass": kg_of(random, 1.5, 2.4),
                "com": cm_of(random, 11, 15),
            },
            {
                "name": "forearm",
                "length": "25 cm",
                "direction": "right",
                "mass": kg_of(random, 0.9, 1.6),
                "com": cm_of(random, 10, 13),
            },
        ],
        "load": [{"name": "tray", "mass": kg_of(random, 1, 5, 0.5), "on": "forearm", "at": cm_of(random, 28, 36)}],
        "muscle": [
            {
                "name": "flexors",
                "on": "upper arm",
                "at": "8 cm",
                "moment_arm": cm_of(random, 2.5, 4, 0.1),
                "turns": "counter-clockwise",
            }
        ],
    }


def ankle(random: Random) -> Table:
    return {
        "title": "A bag on the foot",
        "ask": ["tibialis", "reaction"],
        "pivot": {"name": "ankle", "bone": "tibia"},
        "segment": [{"name": "foot", "length": "20 cm", "mass": kg_of(random, 0.8, 1.3), "com": cm_of(random, 5, 8)}],
        "load": [{"name": "bag", "mass": kg_of(random, 2, 6, 0.5), "at": cm_of(random, 13, 17)}],
        "muscle": [
            {
                "name": "tibialis",
                "at": cm_of(random, 3.5, 5, 0.1),
                "direction": f"{angle_of(random, 55, 80)} deg from back toward up",
            }
        ],
    }


def neck(random: Random) -> Table:
    """A lever of the first class: the head in front of the joint, the muscle behind it."""
    return {
        "title": "A head bent forward",
        "ask": ["extensors", "reaction"],
        "pivot": {"name": "neck joint", "bone": "atlas"},
        "load": [
            {"name": "head", "mass": kg_of(random, 4, 5.5), "point": [cm_of(random, 2, 4, 0.1), "0 cm"]},
            {"name": "helmet", "mass": kg_of(random, 0.8, 2), "point": [cm_of(random, 5, 8, 0.5), "0 cm"]},
        ],
        "muscle": [{"name": "extensors", "point": [f"-{n_of(random, 4, 6, 0.1):g} cm", "0 cm"], "direction": "down"}],
    }


def back(random: Random) -> Table:
    lean = angle_of(random, 20, 65)
    return {
        "title": "A crate lifted",
        "ask": ["erector", "reaction"],
        "pivot": {"name": "lowest disc", "bone": "pelvis"},
        "person": {"mass": f"{random.randint(55, 95)} kg"},
        "segment": [
            {
                "name": "trunk",
                "length": "50 cm",
                "direction": f"{lean} deg right of up",
                "mass": f"{n_of(random, 45, 55, 0.5):g} %",
                "com": cm_of(random, 26, 32),
            }
        ],
        "load": [{"name": "crate", "mass": kg_of(random, 8, 20, 1), "at": cm_of(random, 42, 50)}],
        "muscle": [
            {
                "name": "erector",
                "on": "trunk",
                "at": "25 cm",
                "moment_arm": cm_of(random, 4.5, 6.5, 0.1),
                "turns": "counter-clockwise",
                "direction": "back",
            }
        ],
    }


def jaw(random: Random) -> Table:
    return {
        "title": "A nut between the teeth",
        "ask": ["nut", "reaction"],
        "pivot": {"name": "jaw joint", "bone": "skull"},
        "force": [{"name": "nut", "point": [cm_of(random, 7, 11, 0.5), "0 cm"], "direction": "down", "force": "?"}],
        "muscle": [
            {
                "name": "masseter",
                "point": [cm_of(random, 2, 4, 0.1), "0 cm"],
                "direction": "up",
                "force": f"{random.randint(20, 45) * 10} N",
            },
            {
                "name": "temporalis",
                "point": [cm_of(random, 3, 5, 0.1), "0 cm"],
                "direction": "up",
                "force": f"{random.randint(10, 30) * 10} N",
            },
        ],
    }
