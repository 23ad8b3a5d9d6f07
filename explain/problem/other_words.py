"""What people call a thing that has another key here, with the advice that a colleague would give. Knows no file."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple


class Meant(NamedTuple):
    """What a word that is no key stands for: what is expected, an example, and why. `{}` in the example is what the
    file says there, where that is a text.
    """

    expected: str
    example: str
    advice: str = ""
    usual: str = "4.0 cm"

    def example_for(self, value: object) -> str:
        """The example with the file's own value in it, else with a usual one."""
        written = isinstance(value, str) and value.isprintable() and 0 < len(value) <= 40 and '"' not in value
        return self.example.replace("{}", str(value) if written else self.usual)


_GRIP = Meant("the key at", 'at = "{}"', "Where a muscle grips is measured along its segment, from the near end.")
_ANGLE = Meant(
    "the angle inside direction",
    'direction = "{} from back toward up"',
    "A direction is said in one text: the angle, where it begins, and the way it opens.",
    "70 deg",
)
_ARM = Meant("the keys moment_arm and turns", 'moment_arm = "{}"', "Beside it, turns says which way the force turns.")
_SIZE = Meant("the key force", 'force = "{}"', usual="95 N")
_RUBS = Meant(
    "a [[force]] for the friction",
    '[[force]] with name = "friction", a place, direction = "left" and force = "?"',
    "Friction is a force like any other; what is left out of account is listed in neglect.",
)
_ROUGH = Meant("the key friction", 'friction = "{}"', "The coefficient at the pivot, or ? for the least.", "0.40")
_COM = Meant("the key com", 'com = "{}"', "The centre of mass, as a distance from the segment's near end.")
_HERE = Meant("the key at", 'at = "{}"', "A place is a distance along the segment, from its near end.")
_SPREAD = Meant(
    "the key spread",
    'spread = ["10 cm", "40 cm"]',
    "A spread load has the two distances between which it lies, in place of at.",
)
_SEGMENT = Meant(
    "the table [[segment]]",
    '[[segment]] with name = "plank"',
    "A bar, beam or plank is a segment; where it has no mass it is weightless.",
)
_BODY: Mapping[str, Meant] = {
    "centre_of_mass": _COM,
    "center_of_mass": _COM,
    "cog": _COM,
    "cg": _COM,
    "cm": _COM,
    "angle": Meant("the key direction", 'direction = "{} below right"', _ANGLE.advice, "30 deg"),
}
_PULL: Mapping[str, Meant] = {
    **dict.fromkeys(("insertion", "attachment", "grip", "inserts"), _GRIP),
    **dict.fromkeys(("distance", "position", "place", "where"), _HERE),
    **dict.fromkeys(("angle", "theta", "orientation", "inclination"), _ANGLE),
    **dict.fromkeys(("arm", "lever_arm", "lever", "moment arm"), _ARM),
    **dict.fromkeys(("size", "magnitude", "value", "newtons"), _SIZE),
    **dict.fromkeys(("friction", "mu", "coefficient"), _RUBS),
    "origin": Meant(
        "the key toward",
        'toward = ["2.0 cm", "28 cm"]',
        "A muscle pulls toward its origin: how far that is from the pivot, right and up.",
    ),
    "mass": Meant(
        "a [[load]] for what has a mass", '[[load]] with mass = "{}"', "A load pulls straight down.", "3.0 kg"
    ),
    "weight": Meant(
        "the key force", 'force = "{}"', "What pulls straight down may be a [[load]] with a weight.", "95 N"
    ),
}
OTHER_WORDS: Mapping[str, Mapping[str, Meant]] = {
    "": {
        **dict.fromkeys(("bar", "beam", "lever", "plank", "rod", "bone", "limb", "body"), _SEGMENT),
        **dict.fromkeys(("friction", "mu"), _RUBS),
        **dict.fromkeys(
            ("joint", "hinge", "fulcrum", "axis"), Meant("the table [pivot]", '[pivot] with name = "elbow"')
        ),
        **dict.fromkeys(("find", "question", "unknown", "unknowns"), Meant("the key ask", 'ask = ["biceps"]')),
        **dict.fromkeys(("gravity", "acceleration"), Meant("the key g", 'g = "9.81 m/s^2"')),
        **dict.fromkeys(
            ("moment", "torque", "brake"),
            Meant("the table [[couple]]", '[[couple]] with name = "brake", moment = "12 N m" and turns = "clockwise"'),
        ),
        "ignore": Meant("the key neglect", 'neglect = ["the weight of the forearm"]'),
        "text": Meant("the key statement", 'statement = "A jug is held level."'),
    },
    "segment": {
        **_BODY,
        "at": _COM,
    },
    "load": {
        **dict.fromkeys(("from", "to", "over", "along", "length", "width", "distributed", "between"), _SPREAD),
        **dict.fromkeys(("distance", "position", "place", "where", "com"), _HERE),
        "force": Meant("the key weight", 'weight = "{}"', "A load pulls straight down with its weight.", "29 N"),
        **dict.fromkeys(
            ("direction", "angle"),
            Meant(
                "a [[force]], which may have a direction",
                '[[force]] with direction = "30 deg below right" and force = "95 N"',
                "A load pulls straight down.",
            ),
        ),
    },
    "muscle": _PULL,
    "force": _PULL,
    "pivot": {
        **dict.fromkeys(("mu", "coefficient", "roughness"), _ROUGH),
        "ground": Meant("the key surface", 'surface = "right"', "The direction along the surface it stands on."),
    },
}
