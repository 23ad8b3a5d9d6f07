"""The names of quantities: the one place where they are put together and taken apart.

A key is text, so that it stands in files and tables as it is. Those of a problem file are written with a point,
"biceps.force"; those of what a working finds begin with a star, "*arm biceps". No name of a force has a star in it.
"""

from __future__ import annotations

from functools import lru_cache

_ABOUT = " *about "


class Key(str):
    """`what` of whom (`owner`): "biceps.force" is the "force" of "biceps"; "*arm biceps *about cord" is the "*arm" of
    "biceps" `about` "cord". Of "reaction" or "g" there is no owner.
    """

    def __init__(self, text: str) -> None:
        if text.startswith("*") and " " in text:
            self.what, _, rest = text.partition(" ")
            self.owner, _, self.about = rest.partition(_ABOUT)
        else:
            self.owner, _, self.what = text.rpartition(".")
            self.about = ""

    @property
    def is_angle(self) -> bool:
        return self.what in ("*angle", "*fold", "*inclination")

    @property
    def is_force(self) -> bool:
        """Whether it is the size of a force, not of the joint force."""
        return self.what in ("force", "weight")

    @property
    def is_joint(self) -> bool:
        """Whether it is the joint force, or a part of it."""
        return self.partition(".")[0] == JOINT


of = lru_cache(maxsize=4096)(Key)

# Of a force or a segment: the part of a force across the bone; its moment; the acute angle from its line to another
# one, and a second such angle; an angle that is sought, which of the joint force is the acute one.
turning, moment, fold, inclination, angle = (
    f"*{what} {{}}".format for what in ("turning", "moment", "fold", "inclination", "angle")
)


def arm(name: str, about: str = "") -> str:
    """A perpendicular distance: of a force from the pivot, or from the point where another acts."""
    return f"*arm {name}{_ABOUT}{about}" if about else f"*arm {name}"


JOINT = "reaction"
RIGHT, UP, ALONG, ACROSS = (f"{JOINT}.{part}" for part in ("right", "up", "along", "across"))
JOINT_ANGLE, JOINT_MOMENT, FRICTION = angle(JOINT), moment(JOINT), f"*friction {JOINT}"
