"""Random problems of the trade's kinds, with believable data, worked through: a level elbow, a knee from vertical, a shallow shoulder pull, and so on."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from random import Random
from typing import Any

from explain.account import Account
from explain.accounting import account_of
from explain.faults import Fault, NoWay
from explain.join import Walkthrough, work

Table = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Worked:
    """A problem as a mapping, its walkthrough and its account."""

    kind: str
    table: Table
    walkthrough: Walkthrough
    account: Account

    @property
    def us(self) -> bool:
        return self.kind.startswith("us")

    @property
    def joint(self) -> str:
        return str(self.table["pivot"]["name"])

    @property
    def bone(self) -> str:
        return str(self.table["pivot"].get("bone", ""))


def _n(random: Random, low: float, high: float, step: float) -> float:
    count = round((high - low) / step)
    return round(low + step * random.randint(0, count), 4)


def _kg(random: Random, low: float, high: float, step: float = 0.1) -> str:
    return f"{_n(random, low, high, step):g} kg"


def _cm(random: Random, low: float, high: float, step: float = 0.5) -> str:
    return f"{_n(random, low, high, step):g} cm"


def _angle(random: Random, low: int = 15, high: int = 75) -> int:
    """An angle in degrees, not so near to 45 that sine and cosine are one."""
    return random.choice([each for each in range(low, high + 1) if abs(each - 45) > 4])


def level_elbow(random: Random) -> Table:
    out: Table = {
        "title": "A level forearm",
        "ask": ["biceps", "reaction"],
        "pivot": {"name": "elbow", "bone": "humerus"},
        "segment": [{"name": "forearm", "length": _cm(random, 24, 28, 0.5), "mass": _kg(random, 1, 2), "com": _cm(random, 10, 16)}],
        "load": [{"name": "can", "mass": _kg(random, 1.5, 8, 0.5), "at": _cm(random, 29, 36)}],
        "muscle": [{"name": "biceps", "at": _cm(random, 3.5, 5.5, 0.1), "direction": "up"}],
    }
    if random.random() < 0.3:
        out["segment"][0].pop("mass"), out["segment"][0].pop("com")
    return out


def oblique_elbow(random: Random) -> Table:
    out = level_elbow(random)
    out["title"] = "A level forearm, oblique pull"
    out["muscle"][0]["direction"] = f"{_angle(random, 55, 80)} deg from back toward up"
    return out


def sloping_elbow(random: Random) -> Table:
    out = level_elbow(random)
    out["segment"][0]["direction"] = f"{_angle(random, 15, 60)} deg {random.choice(('below', 'above'))} right"
    muscle = out["muscle"][0]
    if random.random() < 0.6:
        muscle["direction"] = f"{_angle(random, 50, 80)} deg from back toward up"
    else:
        muscle |= {"moment_arm": _cm(random, 2.5, 4.5, 0.1), "turns": "counter-clockwise"}
        out["ask"] = ["biceps"]
        muscle.pop("direction")
    return out


def knee(random: Random) -> Table:
    muscle: Table = {"name": "quadriceps", "at": _cm(random, 5, 8, 0.5), "direction": f"{_angle(random, 15, 30)} deg from back toward right"}
    return {
        "title": "A cuff at the ankle",
        "ask": ["quadriceps", "reaction"],
        "pivot": {"name": "knee", "bone": "femur"},
        "segment": [
            {
                "name": "shank",
                "length": "40 cm",
                "direction": f"{_angle(random, 20, 70)} deg right of down",
                "mass": _kg(random, 3, 5),
                "com": _cm(random, 16, 24),
            }
        ],
        "load": [{"name": "cuff", "mass": _kg(random, 2, 9, 0.5), "at": _cm(random, 32, 40)}],
        "muscle": [muscle],
    }


def shoulder(random: Random) -> Table:
    return {
        "title": "An arm held out",
        "ask": ["deltoid", "reaction"],
        "pivot": {"name": "shoulder", "bone": "scapula"},
        "segment": [{"name": "arm", "length": "60 cm", "mass": _kg(random, 3, 4.5), "com": _cm(random, 24, 30)}],
        "load": [{"name": "dumbbell", "mass": _kg(random, 1, 5, 0.5), "at": _cm(random, 50, 62)}],
        "muscle": [{"name": "deltoid", "at": _cm(random, 11, 16), "direction": f"{_angle(random, 12, 24)} deg from back toward up"}],
    }


def two_segments(random: Random) -> Table:
    return {
        "title": "A tray held out",
        "ask": ["flexors"],
        "pivot": {"name": "shoulder", "bone": "scapula"},
        "segment": [
            {
                "name": "upper arm",
                "length": _cm(random, 27, 32),
                "direction": f"{_angle(random, 25, 60)} deg right of down",
                "mass": _kg(random, 1.5, 2.4),
                "com": _cm(random, 11, 15),
            },
            {"name": "forearm", "length": "25 cm", "direction": "right", "mass": _kg(random, 0.9, 1.6), "com": _cm(random, 10, 13)},
        ],
        "load": [{"name": "tray", "mass": _kg(random, 1, 5, 0.5), "on": "forearm", "at": _cm(random, 28, 36)}],
        "muscle": [{"name": "flexors", "on": "upper arm", "at": "8 cm", "moment_arm": _cm(random, 2.5, 4, 0.1), "turns": "counter-clockwise"}],
    }


def ankle(random: Random) -> Table:
    return {
        "title": "A bag on the foot",
        "ask": ["tibialis", "reaction"],
        "pivot": {"name": "ankle", "bone": "tibia"},
        "segment": [{"name": "foot", "length": "20 cm", "mass": _kg(random, 0.8, 1.3), "com": _cm(random, 5, 8)}],
        "load": [{"name": "bag", "mass": _kg(random, 2, 6, 0.5), "at": _cm(random, 13, 17)}],
        "muscle": [{"name": "tibialis", "at": _cm(random, 3.5, 5, 0.1), "direction": f"{_angle(random, 55, 80)} deg from back toward up"}],
    }


def neck(random: Random) -> Table:
    """A lever of the first class: the head in front of the joint, the muscle behind it."""
    return {
        "title": "A head bent forward",
        "ask": ["extensors", "reaction"],
        "pivot": {"name": "neck joint", "bone": "atlas"},
        "load": [
            {"name": "head", "mass": _kg(random, 4, 5.5), "point": [_cm(random, 2, 4, 0.1), "0 cm"]},
            {"name": "helmet", "mass": _kg(random, 0.8, 2), "point": [_cm(random, 5, 8, 0.5), "0 cm"]},
        ],
        "muscle": [{"name": "extensors", "point": [f"-{_n(random, 4, 6, 0.1):g} cm", "0 cm"], "direction": "down"}],
    }


def back(random: Random) -> Table:
    lean = _angle(random, 20, 65)
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
                "mass": f"{_n(random, 45, 55, 0.5):g} %",
                "com": _cm(random, 26, 32),
            }
        ],
        "load": [{"name": "crate", "mass": _kg(random, 8, 20, 1), "at": _cm(random, 42, 50)}],
        "muscle": [
            {
                "name": "erector",
                "on": "trunk",
                "at": "25 cm",
                "moment_arm": _cm(random, 4.5, 6.5, 0.1),
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
        "force": [{"name": "nut", "point": [_cm(random, 7, 11, 0.5), "0 cm"], "direction": "down", "force": "?"}],
        "muscle": [
            {"name": "masseter", "point": [_cm(random, 2, 4, 0.1), "0 cm"], "direction": "up", "force": f"{random.randint(20, 45) * 10} N"},
            {"name": "temporalis", "point": [_cm(random, 3, 5, 0.1), "0 cm"], "direction": "up", "force": f"{random.randint(10, 30) * 10} N"},
        ],
    }


def us_foot(random: Random) -> Table:
    inches = lambda low, high: f"{_n(random, low, high, 0.1):g} in"  # noqa: E731
    return {
        "title": "Foot lifting a bag",
        "ask": ["tibialis", "reaction"],
        "course": {"forces": "lb"},
        "pivot": {"name": "ankle", "bone": "tibia"},
        "segment": [{"name": "foot", "weight": f"{_n(random, 1.8, 3.2, 0.1):g} lb", "com": inches(1.8, 3)}],
        "load": [{"name": "bag", "weight": f"{_n(random, 4, 12, 0.5):g} lb", "at": inches(5, 7)}],
        "muscle": [
            {"name": "tibialis", "at": inches(1.3, 2), "direction": random.choice(("up", "65 deg from back toward up", "70 deg from back toward up"))}
        ],
    }


def us_elbow(random: Random) -> Table:
    inches = lambda low, high: f"{_n(random, low, high, 0.1):g} in"  # noqa: E731
    return {
        "title": "A pail in the hand",
        "ask": ["biceps", "reaction"],
        "course": {"forces": "lb"},
        "pivot": {"name": "elbow", "bone": "humerus"},
        "segment": [{"name": "forearm", "weight": f"{_n(random, 2.5, 4.5, 0.1):g} lb", "com": inches(4.5, 6.5)}],
        "load": [{"name": "pail", "weight": f"{_n(random, 5, 20, 0.5):g} lb", "at": inches(11, 14)}],
        "muscle": [{"name": "biceps", "at": inches(1.4, 2.2), "direction": "up"}],
    }


def shared_elbow(random: Random) -> Table:
    out = level_elbow(random)
    out |= {"title": "Two flexors", "ask": ["biceps", "brachialis", "reaction"]}
    out["muscle"].append(
        {"name": "brachialis", "at": _cm(random, 2.4, 3.4, 0.1), "direction": "up", "force": f"{_n(random, 0.5, 0.9, 0.05):g} * biceps"}
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
        {"name": "forearm", "length": _cm(random, 24, 28), "mass": f"{_n(random, 1.4, 2.2, 0.1):g} %", "com": f"{_n(random, 40, 46, 0.5):g} %"}
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
        "segment": [{"name": "shank", "length": "43 cm", "direction": "? right of down", "mass": _kg(random, 3, 5), "com": _cm(random, 17, 24)}],
        "load": [{"name": "boot", "mass": _kg(random, 1.5, 3), "at": _cm(random, 34, 42)}],
        "muscle": [
            {
                "name": "quadriceps",
                "at": "5.8 cm",
                "moment_arm": _cm(random, 3.4, 4.4, 0.1),
                "turns": "counter-clockwise",
                "force": f"{random.randint(15, 36) * 10} N",
            }
        ],
    }


KINDS: Mapping[str, Callable[[Random], Table]] = {
    each.__name__: each
    for each in (
        level_elbow,
        oblique_elbow,
        sloping_elbow,
        knee,
        shoulder,
        two_segments,
        ankle,
        neck,
        back,
        jaw,
        us_foot,
        us_elbow,
        shared_elbow,
        both_arms,
        shares_of_body,
        sought_mass,
        sought_distance,
        sought_angle,
    )
}


def random_problem(random: Random, kinds: tuple[str, ...] = ()) -> Worked:
    """One problem worked through; data for which there is no way are drawn again. Every answer is positive."""
    kind = random.choice(kinds or tuple(KINDS))
    while True:
        table = KINDS[kind](random)
        try:
            walkthrough = work(table)
        except (Fault, NoWay):
            continue
        account = account_of(walkthrough.outcome.working)
        values = account.values()
        if all(values.get(key, 1.0) > 0 for key in account.unknowns):
            return Worked(kind, table, walkthrough, account)
