"""How a mass at the other end of a cable is put into words."""

from __future__ import annotations

from ..document.english import each_of, the
from .phrases import told
from ..problem.model import Hung, Pull, Unknown


def hung(pull: Pull) -> str:
    """What pulls at the other end of a cable: ", over a smooth pulley with 6 kg at its other end"."""
    if not isinstance(pull.force, Hung):
        return ""
    mass = "an unknown mass" if isinstance(pull.force.mass, Unknown) else told(pull.force.mass)
    return f", over a smooth pulley with {mass} at its other end"


def hung_meaning(pull: Pull) -> str:
    """What the letter of a hung mass means: "mass at the other end of the cable"."""
    return f"mass at the other end of {each_of(pull.name) if pull.count > 1 else the(pull.name)}"
