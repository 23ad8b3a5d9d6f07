"""Problems in pounds, with shares, with two pulls, with another unknown, with other forces: variations on a limb.
Knows no working.
"""

from __future__ import annotations

from random import Random

from .limbs import Table, angle_of, cm_of, kg_of, level_elbow, n_of, sloping_elbow


def us_foot(random: Random) -> Table:
    inches = lambda low, high: f"{n_of(random, low, high, 0.1):g} in"  # noqa: E731
    return {
        "title": "Foot lifting a bag",
        "ask": ["tibialis", "reaction"],
        "course": {"forces": "lb"},
        "pivot": {"name": "ankle", "bone": "tibia"},
        "segment": [{"name": "foot", "weight": f"{n_of(random, 1.8, 3.2, 0.1):g} lb", "com": inches(1.8, 3)}],
        "load": [{"name": "bag", "weight": f"{n_of(random, 4, 12, 0.5):g} lb", "at": inches(5, 7)}],
        "muscle": [
            {
                "name": "tibialis",
                "at": inches(1.3, 2),
                "direction": random.choice(("up", "65 deg from back toward up", "70 deg from back toward up")),
            }
        ],
    }


def us_elbow(random: Random) -> Table:
    inches = lambda low, high: f"{n_of(random, low, high, 0.1):g} in"  # noqa: E731
    return {
        "title": "A pail in the hand",
        "ask": ["biceps", "reaction"],
        "course": {"forces": "lb"},
        "pivot": {"name": "elbow", "bone": "humerus"},
        "segment": [{"name": "forearm", "weight": f"{n_of(random, 2.5, 4.5, 0.1):g} lb", "com": inches(4.5, 6.5)}],
        "load": [{"name": "pail", "weight": f"{n_of(random, 5, 20, 0.5):g} lb", "at": inches(11, 14)}],
        "muscle": [{"name": "biceps", "at": inches(1.4, 2.2), "direction": "up"}],
    }


def shared_elbow(random: Random) -> Table:
    out = level_elbow(random)
    out |= {"title": "Two flexors", "ask": ["biceps", "brachialis", "reaction"]}
    out["muscle"].append(
        {
            "name": "brachialis",
            "at": cm_of(random, 2.4, 3.4, 0.1),
            "direction": "up",
            "force": f"{n_of(random, 0.5, 0.9, 0.05):g} * biceps",
        }
    )
    return out


def both_arms(random: Random) -> Table:
    """Two equal pulls."""
    out = level_elbow(random)
    out |= {"title": "Both arms under one tray"}
    out["muscle"][0]["count"] = 2
    out["load"][0]["name"] = "tray"
    out["segment"][0]["name"] = "forearms"
    return out


def shares_of_body(random: Random) -> Table:
    out = level_elbow(random)
    out["person"] = {"mass": f"{random.randint(50, 95)} kg"}
    out["segment"] = [
        {
            "name": "forearm",
            "length": cm_of(random, 24, 28),
            "mass": f"{n_of(random, 1.4, 2.2, 0.1):g} %",
            "com": f"{n_of(random, 40, 46, 0.5):g} %",
        }
    ]
    return out


def sought_mass(random: Random) -> Table:
    out = level_elbow(random)
    out |= {"title": "What can he hold?", "ask": ["can.mass"]}
    out["load"][0]["mass"] = "?"
    out["muscle"][0]["force"] = f"{random.randint(30, 70) * 10} N"
    return out


def sought_distance(random: Random) -> Table:
    out = level_elbow(random)
    out |= {"title": "How far out?", "ask": ["can.at"]}
    out["load"][0]["at"] = "?"
    out["muscle"][0]["force"] = f"{random.randint(30, 60) * 10} N"
    return out


def sought_angle(random: Random) -> Table:
    return {
        "title": "How steep?",
        "ask": ["shank.direction"],
        "pivot": {"name": "knee", "bone": "femur"},
        "segment": [
            {
                "name": "shank",
                "length": "43 cm",
                "direction": "? right of down",
                "mass": kg_of(random, 3, 5),
                "com": cm_of(random, 17, 24),
            }
        ],
        "load": [{"name": "boot", "mass": kg_of(random, 1.5, 3), "at": cm_of(random, 34, 42)}],
        "muscle": [
            {
                "name": "quadriceps",
                "at": "5.8 cm",
                "moment_arm": cm_of(random, 3.4, 4.4, 0.1),
                "turns": "counter-clockwise",
                "force": f"{random.randint(15, 36) * 10} N",
            }
        ],
    }


def scale_push(random: Random) -> Table:
    """A hand that presses down: a known force pushes up on it."""
    return {
        "title": "Pressing down on a scale",
        "ask": ["triceps", "reaction"],
        "pivot": {"name": "elbow", "bone": "humerus"},
        "segment": [{"name": "forearm", "length": "27 cm", "mass": kg_of(random, 1, 2), "com": cm_of(random, 10, 16)}],
        "force": [
            {
                "name": "scale",
                "at": cm_of(random, 26, 33),
                "direction": "up",
                "force": f"{random.randint(8, 20) * 10} N",
            }
        ],
        "muscle": [{"name": "triceps", "at": f"-{n_of(random, 1.8, 2.8, 0.1):g} cm", "direction": "up"}],
    }


def cable(random: Random) -> Table:
    """A sloping forearm with a cable that pulls on the hand at an angle to the bone."""
    out = sloping_elbow(random)
    force = {
        "name": "cable",
        "at": cm_of(random, 24, 30),
        "direction": f"{angle_of(random, 30, 80)} deg from out toward down",
        "force": f"{random.randint(3, 12) * 10} N",
    }
    return out | {"title": "A cable at the hand", "force": [force]}


def rows_of_a_table(random: Random) -> Table:
    """Forearm and hand with their shares from a published table."""
    out = level_elbow(random)
    out["person"] = {
        "mass": f"{random.randint(50, 95)} kg",
        "sex": random.choice(("female", "male")),
        "table": random.choice(("de-leva-1996", "plagenhoef-1983")),
    }
    out["segment"] = [
        {"name": "forearm", "length": cm_of(random, 24, 28), "mass": "table", "com": "table"},
        {"name": "hand", "length": cm_of(random, 17, 20), "mass": "table", "com": "table"},
    ]
    out["load"][0] |= {"on": "hand", "at": cm_of(random, 6, 9)}
    out["muscle"][0]["on"] = "forearm"
    return out
