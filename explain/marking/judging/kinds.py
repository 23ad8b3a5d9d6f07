"""What kind of quantity a key names, and the units that a student may give it in."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

FACTORS: Mapping[str, Mapping[str, float]] = {
    "length": {"m": 1, "cm": 100, "mm": 1000, "in": 39.37007874, "ft": 3.280839895},
    "mass": {"kg": 1, "gram": 1000, "lb": 2.204622622},
    "force": {"N": 1, "lb": 0.2248089431, "kN": 0.001},
    "moment": {
        "Nm": 1,
        "Ncm": 100,
        "Nmm": 1000,
        "kNm": 0.001,
        "lbin": 8.850745792,
        "lbft": 0.7375621493,
        "lbcm": 22.48089431,
    },
    "ratio": {"": 1, "%": 1},
    "angle": {"deg": 1},
    "area": {"cm2": 1e4, "mm2": 1e6, "m2": 1, "in2": 1550.0031},
    "stress": {"N/cm2": 1e-4, "N/mm2": 1e-6, "N/m2": 1, "Pa": 1, "kPa": 1e-3, "MPa": 1e-6, "lb/in2": 1.450377377e-4},
    "g": {"": 1, "acc": 1},
    "per mass": {"": 1},
    "other": {"": 1},
}
KILOGRAMS: Mapping[str, float] = {"kg": 1, "kgf": 1, "kgcm": 100, "kgm": 1}  # a force or moment without its g
UNIT_KIND: Mapping[str, str] = {
    **{unit: kind for kind, units in FACTORS.items() for unit in units if unit},
    "kg": "mass",
    "lb": "force",
    "kgf": "force",
    "kgcm": "moment",
    "kgm": "moment",
}
CUSTOMARY = frozenset(("in", "ft", "lb", "lbin", "lbft", "lbcm"))
POUND = 4.4482216
BY_WEIGHT = "*times "  # before the key of a force: as so many times the body's weight
POUNDS_IN_KG = 2.204622622
_FORCES = (
    "*turning",
    "*level",
    "*upright",
    "*alone",
    "reaction",
    "*weights",
    "*sum",
    "*along",
    "*across",
    "*person.weight",
    "*all ",
    "*rest ",
)
_STARTS = (
    ("stress", ("*stress",)),
    ("area", ("*area",)),
    ("length", ("*arm", "*x ", "*y ", "*line", "*reach", "*leg", "*away", "*short")),
    ("moment", ("*moment", "*summoment", "*turn ")),
    ("angle", ("*angle", "*direction")),
    ("ratio", ("*friction", "*ratio", "*trig", "*part ", BY_WEIGHT)),
    ("mass", ("*mass", "*summass", "*person.mass")),
    ("per mass", ("*per mass",)),
)
_ENDS = (
    ("ratio", ("%", ".factor")),
    ("mass", (".mass", ".hung")),
    ("force", (".force", ".weight", ".limit")),
    ("moment", ("couple", ".moment")),
    ("length", (".com", ".at", ".length", ".arm", ".from", ".to", "height", ".moment_arm", ".across", ".rise")),
)


@lru_cache(maxsize=20_000)
def kind_of(key: str) -> str:
    """The kind of the quantity that a key names."""
    if key in ("g", "total"):
        return "g" if key == "g" else "moment"
    for kind, starts in _STARTS:
        if key.startswith(starts):
            return kind
    if key.startswith(_FORCES):
        return "force"
    return next((kind for kind, ends in _ENDS if key.endswith(ends)), "other")
