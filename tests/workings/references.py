"""In which words a student says from which line an angle counts, and to which side. Knows no balance."""

from __future__ import annotations

from math import cos, radians, sin

from .write import Writer

WAYS = {"right": ("right", "left"), "up": ("up", "down")}


def heading(w: Writer) -> tuple[str, str]:
    """The two ways that the direction lies between."""
    heading = radians(w.values["*direction reaction"])
    return WAYS["right"][cos(heading) < 0], WAYS["up"][sin(heading) < 0]


def reference(w: Writer, upright: bool) -> str:
    """The line that an angle is measured from, in words."""
    level, steep = heading(w)
    below = "below" if steep == "down" else "above"
    if w.style.layout in ("latex", "dollars"):
        said = "from vertical" if upright else f"{below} horizontal"
        return f"\\ \\text{{ {said}}}"
    if w.style.sense == "other bone":
        return " from the vertical" if upright else " to the horizontal"
    if upright:
        return (" from vertical", " from the vertical", f" {level} of vertical", " to the vertical")[w.way % 4]
    if w.style.angle == "compass":
        return (
            f" {'S' if steep == 'down' else 'N'} of {'E' if level == 'right' else 'W'}"
            if w.way % 2
            else f" {'south' if steep == 'down' else 'north'} of {'east' if level == 'right' else 'west'}"
        )
    return (
        f" {below} horizontal",
        f" {below} the horizontal",
        f" ({below} horizontal)",
        " from horizontal",
        f", {steep} and to the {level}",
    )[w.way % 5]
