"""Knows what a written quantity is worth in SI units, from the definitions of the units alone."""

from __future__ import annotations

import re

INCH, POUND, STANDARD_G = (
    0.0254,
    0.45359237,
    9.80665,
)  # international inch and pound (1959); standard gravity (CGPM 1901)
LENGTHS = {"m": 1.0, "cm": 0.01, "mm": 0.001, "in": INCH, "ft": 12 * INCH}
MASSES = {"kg": 1.0, "g": 0.001, "lb": POUND}
FORCES = {"N": 1.0, "kN": 1000.0, "lb": POUND * STANDARD_G, "lbf": POUND * STANDARD_G}
OTHERS = {
    "deg": 1.0,
    "°": 1.0,
    "%": 0.01,
    "": 1.0,
    "m/s^2": 1.0,
    "ft/s^2": 12 * INCH,
    "m/s²": 1.0,
    "ft/s²": 12 * INCH,
    "cm^2": 1e-4,
    "cm²": 1e-4,
}
NUMBER = re.compile(r"([-+−]?[0-9.]+)\s*(.*)")


def unit(text: str, kind: str) -> float:
    """What one of a unit is worth in SI; `kind` says whether a pound is a force or a mass."""
    table = {"length": LENGTHS, "mass": MASSES, "force": FORCES}.get(kind, {})
    if text in table:
        return table[text]
    if text in OTHERS:
        return OTHERS[text]
    if kind == "force per length":
        above, below = text.split("/")
        return FORCES[above] / LENGTHS[below]
    if kind == "stress":
        above, below = text.split("/")
        return FORCES[above] / (OTHERS[below] if below in OTHERS else LENGTHS[below.rstrip("²")] ** 2)
    worth = 1.0
    for part in re.split(r"[·\s]+", text):  # a moment: a force and a length in either order
        worth *= LENGTHS[part] if part in LENGTHS else FORCES[part]
    return worth


def split(text: str) -> tuple[float, str]:
    found = NUMBER.fullmatch(text.strip())
    assert found is not None, text
    return float(found[1].replace("−", "-")), found[2].strip()


def si(text: str, kind: str) -> float:
    """A written quantity in SI units."""
    number, word = split(text)
    return number * unit(word, kind)
