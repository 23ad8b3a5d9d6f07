"""Knows every key of a course and draws them in any combination."""

from __future__ import annotations

from .body import Pull
from .draw import Draw, Table

KEYS: dict[str, tuple[object, ...]] = {
    "word": ("moment", "torque"),
    "letter": ("M", "tau", "T"),
    "positive": ("counter-clockwise", "clockwise", "clockwise", "up"),
    "g": ("9.81 m/s^2", "9.8 m/s^2", "10 m/s^2", "32.2 ft/s^2"),
    "lengths": ("as given", "metres", "cm", "mm", "in", "ft"),
    "forces": ("N", "lb"),
    "method": ("perpendicular distance", "turning component"),
    "order": ("multiply first", "divide first", "letters first"),
    "figures": (1, 2, 3, 4, 5, 6),
    "ties": ("up", "even"),
    "carry": ("unrounded", "as shown"),
    "force_letter": ("F", "P", "T"),
    "distance_letter": ("d", "r", "s", "x"),
    "resultant": ("size and direction", "parts", "both", ["parts", "size and direction"]),
    "axes": ("level and upright", "along"),
    "reaction_on": ("the body cut free", "the other bone"),
    "detail": ("full", "brief"),
    "person": ("we", "you"),
    "balance": ("sum is zero", "sum is zero", "two sides"),
    "first": ("products", "products", "moments"),
    "signs": ("in the equation", "in the equation", "with the numbers"),
    "level_words": ("horizontal and vertical", "level and upright"),
    "spelling": ("British", "American"),
    "decimal": ("point", "comma"),
}


def course(draw: Draw, problem: Table) -> Table:
    """A course for a problem: each key is there in three problems of five."""
    drawn: Table = {key: draw.pick(*choices) for key, choices in KEYS.items() if draw.chance(0.6)}
    if drawn.get("positive") == "up" and not draw.chance(0.3):
        drawn["positive"] = "clockwise"
    if drawn.get("positive") == "up" and draw.chance(0.5):
        drawn["signs"] = "with the numbers"  # each letter has its sign then
        drawn.pop("balance", None)
    if drawn.get("axes") == "along":
        drawn["axes"] = (
            f"along and across the {problem['segment'][-1]['name']}" if problem.get("segment") else "level and upright"
        )
    if draw.chance(0.6):
        drawn["working_figures"] = min(9, int(drawn.get("figures", 3)) + draw.pick(0, 1, 2, 3))
    elif int(drawn.get("figures", 3)) > 5:
        drawn["working_figures"] = int(drawn["figures"])
    if {"reaction.right", "reaction.up"} & set(problem.get("ask", [])) or "slips" in problem["pivot"]:
        drawn["axes"] = "level and upright"  # parts are asked in the axes of the course
    if drawn.get("balance") == "two sides":
        drawn.pop("signs", None)  # these do not go together
    if drawn.get("balance") == "two sides" and any(name.endswith(".moment") for name in problem.get("ask", [])):
        drawn.pop("first", None)  # a moment's letter is a size there, and is not asked
    muscles = problem.get("muscle", [])
    if muscles and draw.chance(0.2):
        drawn["symbols"] = {muscles[0]["name"]: draw.pick("Q", "Z_1", "P_Q")}
    drawn |= problem.get("course", {})
    return drawn


def letters_have_signs(problem: Table) -> bool:
    """Whether a force's letter stands for its part upwards."""
    course = problem["course"]
    return (course.get("positive"), course.get("signs")) == ("up", "with the numbers")


def all_vertical(pulls: list[Pull]) -> bool:
    """Whether no force has a part to the side, so that each has one sign."""
    return all(each.right is not None and abs(float(each.right[0])) < 1e-12 for each in pulls)


def up_is_valid(problem: Table, pulls: list[Pull]) -> bool | None:
    """Whether "up is positive" holds: no level force turns, all that turns is on one side, no couple. None: either."""
    if problem.get("couple") or any("moment_arm" in entry for entry in problem.get("muscle", [])):
        return False
    reach = max(abs(float(part[0])) for pull in pulls if pull.place for part in pull.place) or 1.0
    sides = set()
    for pull in pulls:
        assert pull.place is not None and pull.right is not None and pull.up is not None
        x, y, right, up = (float(each[0]) for each in (*pull.place, pull.right, pull.up))
        level, upright = abs(y * right) / reach, abs(x * up) / reach
        if 1e-12 < level < 1e-6 or 1e-12 < upright < 1e-6:
            return None
        if level > 1e-9:
            return False
        if upright > 1e-9:
            sides.add(x > 0)
    return len(sides) < 2
