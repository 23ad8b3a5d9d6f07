"""Knows how people write quantities and directions, drawn at random; no mechanics."""

from __future__ import annotations

import random
from typing import Any

Table = dict[str, Any]
SLANTS = (
    "{} deg above right",
    "{} deg above left",
    "{} deg below right",
    "{} deg below left",
    "{} deg left of up",
    "{} deg right of up",
    "{} deg left of down",
    "{} deg right of down",
)
LIMBS = (
    ("elbow", "humerus", ("forearm and hand", "ruler", "glove"), ("biceps", "brachialis", "elbow flexors")),
    ("knee", "femur", ("shank", "boot", "skate"), ("quadriceps", "patellar tendon", "vasti")),
    ("shoulder", "scapula", ("upper arm", "forearm", "hand"), ("deltoid", "supraspinatus", "shoulder flexors")),
    ("hip", "pelvis", ("thigh", "shank", "foot"), ("iliopsoas", "hip flexors", "rectus femoris")),
    ("ankle", "tibia", ("foot", "flipper", "fin"), ("soleus", "tibialis anterior", "calf")),
)
LOADS = ("bucket", "kettle", "parcel of kelp", "lantern", "bell", "oar", "crate", "sack")
PLANKS = ("plank", "gangway", "bench", "beam")
ROPES = ("bow rope", "stern rope", "stay", "halyard")


class Draw:
    """Draws the parts of a problem file, in metric or in pounds and inches."""

    def __init__(self, seed: int | str) -> None:
        self.random = random.Random(seed)
        self.pounds = self.chance(0.15)

    def chance(self, share: float) -> bool:
        return self.random.random() < share

    def pick(self, *choices: Any) -> Any:
        return self.random.choice(choices)

    def number(self, low: float, high: float, figures: int = 0) -> str:
        figures = figures or self.pick(2, 2, 3, 3, 4)
        value = f"{self.random.uniform(low, high):.{figures}g}"
        return f"{float(value):g}" if "e" in value else value

    def length(self, low_cm: float, high_cm: float) -> str:
        if self.pounds:
            return self.number(low_cm / 2.54, high_cm / 2.54) + " in"
        word, times = self.pick(("cm", 1.0), ("cm", 1.0), ("mm", 10.0), ("m", 0.01))
        return f"{self.number(low_cm * times, high_cm * times)} {word}"

    def side(self, text: str) -> str:
        """A distance, now and then on the other side."""
        return "-" + text if self.chance(0.25) else text

    def force(self, low: float, high: float) -> str:
        return self.number(low / 4.45, high / 4.45) + " lb" if self.pounds else self.number(low, high) + " N"

    def heft(self, low: float, high: float) -> Table:
        """A mass or a weight, in kilograms of `low` to `high`."""
        if self.pounds:
            return {"weight": self.number(low * 2.2, high * 2.2) + " lb"}
        if self.chance(0.2):
            return {"weight": self.number(low * 9.81, high * 9.81) + " N"}
        return {"mass": self.number(low, high) + " kg"}

    def angle(self) -> str:
        return str(self.pick(30, 45, 60)) if self.chance(0.2) else self.number(8, 82)

    def slant(self) -> str:
        return str(self.pick(*SLANTS)).format(self.angle())

    def slope(self) -> str:
        """Which way a segment lies."""
        return str(self.pick("right", "left", "down", "up", "right")) if self.chance(0.3) else self.slant()

    def oblique(self) -> str:
        """A pull told by the bone."""
        start, goal = self.pick("back", "back", "out"), self.pick("up", "up", "right", "left", "down")
        return f"{self.angle()} deg from {start} toward {goal}"

    def heading(self) -> str:
        return str(self.pick("up", "left", self.slant(), self.slant(), self.oblique(), self.oblique()))

    def turns(self) -> str:
        return str(self.pick("counter-clockwise", "clockwise"))

    def limb(self, segments: int = 1) -> Table:
        """A pivot and one to three segments; nothing that holds them yet."""
        joint, bone, names, muscles = self.pick(*LIMBS)
        pivot = {"name": joint, "bone": bone} if self.chance(0.8) else {"name": joint}
        bones = [
            {"name": name, "length": self.length(20, 45), "direction": self.slope(), **self.segment_heft()}
            for name in names[:segments]
        ]
        if segments == 1 and self.chance(0.3):
            bones[0]["direction"] = "right"
        return {
            "title": f"A trial of the {joint}",
            "pivot": pivot,
            "segment": bones,
            "muscle": [],
            "spare": list(muscles),
        }

    def segment_heft(self) -> Table:
        if self.chance(0.15):
            return {}
        com = self.pick(self.number(35, 60, 3) + " %", self.length(8, 20))
        return {**self.heft(0.8, 5), "com": com}

    def load(self, problem: Table, many: int = 1) -> None:
        names = self.random.sample(LOADS, many)
        problem["load"] = [
            {"name": name, **self.heft(0.5, 9), "on": self.pick(*problem["segment"])["name"], "at": self.length(15, 40)}
            for name in names
        ]

    def spread(self, low_cm: float, high_cm: float) -> Table:
        """Two distances between which a load is spread, the second now and then the nearer one."""
        ends = [self.length(low_cm, (low_cm + high_cm) / 2), self.length((low_cm + high_cm) / 2, high_cm)]
        if self.chance(0.2):
            ends.reverse()
        return {"spread": ends} | ({"spread_to": "one end"} if self.chance(0.4) else {})

    def per_length(self, low: float, high: float) -> str:
        """The weight of each length, in newtons for each centimetre of `low` to `high`."""
        if self.pounds:
            return self.number(low * 6.85, high * 6.85) + " lb/ft"
        return self.pick(self.number(low, high) + " N/cm", self.number(low * 100, high * 100) + " N/m")

    def muscle(self, problem: Table, how: str = "", **more: Any) -> Table:
        """A muscle that grips the first segment or the last; or is known by its arm alone."""
        entry: Table = {"name": problem["spare"].pop(0)}
        how = how or self.pick("direction", "direction", "toward", "arm", "arm and direction")
        if how.startswith("arm"):
            entry |= {"moment_arm": self.length(2, 7), "turns": self.turns()}
            if how != "arm":
                entry["direction"] = self.heading()
        else:
            entry |= {"on": self.pick(*problem["segment"])["name"], "at": self.side(self.length(3, 9))}
            if how == "toward":
                entry["toward"] = [self.side(self.length(1, 20)), self.side(self.length(12, 40))]
            else:
                entry["direction"] = self.heading()
        entry |= more
        problem["muscle"].append(entry)
        return entry

    def plank(self, level: bool = True, held: bool = False) -> Table:
        """A plank of about three metres with a load or two, its supports still missing."""
        slope = (
            "right" if level else f"{self.number(8, 40)} deg {self.pick('above', 'below')} {self.pick('right', 'left')}"
        )
        plank = {
            "name": self.pick(*PLANKS),
            "length": self.length(250, 400),
            "direction": slope,
            **self.heft(8, 30),
            "com": "50 %",
        }
        problem: Table = {
            "title": "On the quay",
            "pivot": {"name": "first post"} | (self.stand() if held else {"reaction": False}),
            "segment": [plank],
            "force": [],
        }
        problem["load"] = [
            {"name": name, **self.heft(5, 80), "at": self.length(30, 240)}
            for name in self.random.sample(LOADS, self.pick(1, 1, 2))
        ]
        return problem

    def stand(self) -> Table:
        """What a plank rests on, where it is told."""
        return {"support": self.pick("trestle", "quay", "log")} if self.chance(0.4) else {}

    def support(self, problem: Table, name: str, at: str, heading: str = "up", force: str = "?", **more: Any) -> Table:
        entry: Table = {"name": name, "at": at, "direction": heading, "force": force} | more
        problem["force"].append(entry)
        return entry
