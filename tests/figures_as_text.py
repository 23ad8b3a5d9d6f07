"""Writes figures as text, kept in tests/cases/figures: each stroke and each label with its place, its pen and the part
that it belongs to. After a wanted change, run it, look at the figures and read what changed.

python tests/figures_as_text.py
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from itertools import zip_longest
from pathlib import Path
from typing import Any

from drawings import DRAWINGS, limb
from worked import EXTRA

from explain import work
from explain.document.passage import Axis, Curve, Plot
from explain.walkthrough.diagram import draw
from explain.write.figure.board_figure import BOARD
from explain.write.figure.free_body import Layout, layout
from explain.write.figure.plot import plotted
from explain.write.figure.shapes import Arc, Disc, Line, Patch, Pen, Shape

KEPT = Path(__file__).parent / "cases" / "figures"
WEIGHTS = ";".join(f"load W_{number} {number / 50:.2f} 270" for number in range(1, 17))
CROWD = limb("elbow", 0.3333, 20.0, f"muscle F_B 0.04 130;{WEIGHTS}")
UPWARDS = limb("toe", 1.0, 90.0, ";".join(f"force F_{number} {number / 30:.3f} 0" for number in range(1, 31)))
BARS = Plot(
    "bars",
    "Slips of two classes",
    "",
    Axis("slip"),
    Axis("change", "%"),
    (
        Curve("Monday", ((0.0, 3.25), (1.0, -12.0), (2.0, None))),
        Curve("Thursday, in the second half", ((0.0, 0.0), (1.0, 1250.0), (2.0, 7.5))),
    ),
    ("a sign", "a weight left out of the balance of moments about the elbow", "no answer"),
    figures=3,
    comma=True,
)
ONE_BAR = Plot("bars", "-", "", Axis(""), Axis("students"), (Curve("", ((0.0, 2.0),)),), ("a sign",), figures=0)
LINES = Plot(
    "lines",
    "Pull against angle",
    "",
    Axis("angle of the forearm", "°"),
    Axis("pull", "N"),
    (
        Curve("biceps", ((0.0, 300.0), (45.0, 210.0), (90.0, -20.0))),
        Curve("brachialis", ((0.0, 100.0), (30.0, None), (60.0, 80.0), (90.0, -25.0))),
        Curve("third", ((0.0, None), (90.0, None))),
        Curve("fourth", tuple((float(at), 2.0 * at) for at in range(0, 91, 2))),
    ),
)
NEAR = Plot(
    "lines", "-", "", Axis("load", "kg"), Axis("pull", "N"), (Curve("", ((1.0, 150.5), (2.0, 180.0), (2.5, 250.0))),)
)

# diagrams of whole problems: loads that are spread, rough ground, letters with counts, points, several bones
PROBLEMS: Mapping[str, Mapping[str, Any]] = {
    **{
        name: EXTRA[name]
        for name in (
            "mirror images",
            "a mass over a pulley that holds",
            "pulls by cross-sections",
            "the least friction on a slope",
            "friction beside the bone",
            "a bracket about to slip down a wall",
            "sand spread evenly",
            "a drift that grows to one end",
            "a ring between mirror images",
            "a stay at a sloping plank",
            "a line of five",
            "a rope straight up",
            "a cord in line with the elbow",
            "a cord aslant and a muscle",
            "a turning part",
            "moments alone",
        )
    },
    "two loads that are spread": {
        "title": "-",
        "pivot": {"name": "log"},
        "segment": [{"name": "plank", "direction": "20 deg above left"}],
        "load": [
            {"name": "sand", "weight": "1 N/cm", "spread": ["5 cm", "90 cm"]},
            {"name": "snow", "weight": "10 N", "spread": ["-30 cm", "60 cm"], "spread_to": "one end"},
            {"name": "crate", "weight": "12 N", "at": "44 cm"},
        ],
        "force": [{"name": "rope", "count": 2, "at": "40 cm", "direction": "up", "force": "?"}],
    },
    "points and a pull toward one": {
        "title": "-",
        "pivot": {"name": "hip"},
        "ask": ["abductors", "reaction"],
        "load": [{"name": "trunk", "weight": "400 N", "point": ["10 cm", "45 cm"]}],
        "muscle": [{"name": "abductors", "point": ["-5 cm", "-3 cm"], "direction": "80 deg below left"}],
        "force": [{"name": "rope", "point": ["-5 cm", "0 cm"], "toward": ["1 cm", "-3 cm"], "force": "3 N"}],
    },
    "two bones, a couple and a bone's axes": {
        "title": "-",
        "pivot": {"name": "shoulder"},
        "course": {"axes": "along and across the arm", "positive": "clockwise"},
        "ask": ["deltoid", "reaction"],
        "segment": [
            {"name": "arm", "length": "30 cm", "mass": "2 kg", "com": "40 %", "direction": "60 deg below right"},
            {"name": "hand", "length": "20 cm", "direction": "45 deg from out toward up"},
        ],
        "load": [{"name": "jug", "weight": "20 N", "at": "20 cm"}],
        "couple": [{"name": "spring", "moment": "1 N m", "turns": "clockwise"}],
        "muscle": [{"name": "deltoid", "on": "arm", "at": "10 cm", "direction": "80 deg above left"}],
    },
    "a pull known by its arm, back along the bone": {
        "title": "-",
        "pivot": {"name": "hip"},
        "ask": ["back", "reaction"],
        "segment": [
            {"name": "trunk", "length": "50 cm", "mass": "30 kg", "com": "60 %", "direction": "30 deg right of up"}
        ],
        "muscle": [
            {"name": "back", "moment_arm": "5 cm", "turns": "counter-clockwise", "direction": "back"},
            {
                "name": "side",
                "at": "20 cm",
                "moment_arm": "7 cm",
                "turns": "counter-clockwise",
                "direction": "10 deg from back toward left",
                "force": "20 N",
            },
        ],
    },
}
FIGURES: Mapping[str, Callable[[], Layout]] = {
    **{name: lambda drawing=drawing: layout(drawing) for name, drawing in DRAWINGS.items()},  # type: ignore[misc]
    **{name: lambda problem=problem: layout(draw(work(problem).outcome)) for name, problem in PROBLEMS.items()},  # type: ignore[misc]
    "a crowd": lambda: layout(CROWD),
    "a crowd upwards": lambda: layout(UPWARDS),
    "leg-raise on a board": lambda: layout(DRAWINGS["leg-raise"], BOARD),
    "trunk on a board": lambda: layout(DRAWINGS["trunk"], BOARD),
    "bars": lambda: plotted(BARS),
    "low bars": lambda: plotted(BARS, low=True),
    "one bar": lambda: plotted(ONE_BAR),
    "lines": lambda: plotted(LINES),
    "low lines": lambda: plotted(LINES, low=True),
    "lines far from zero": lambda: plotted(NEAR),
}


def as_text(laid: Layout) -> str:
    """A line for the view, for each shape in painting order, and for each label."""
    parts = zip_longest(laid.shapes, laid.drawn, fillvalue="")
    labels = zip_longest(laid.labels, laid.lettered, fillvalue="")
    said = [f"view {_numbers(*laid.view)}"]
    said += [_joined(_shape(shape), part, "positive" * (shape in laid.mark)) for shape, part in parts]
    said += [_joined(f"label {_numbers(*each.box)} {each.ink}", part) for each, part in labels]
    said += [_joined(f"{each.kind} {each.name}", _numbers(*each.about, *each.end)) for each in laid.parts]
    return "\n".join(said) + "\n"


def _joined(*words: str) -> str:
    return " ".join(filter(None, words))


def _numbers(*values: float) -> str:
    return " ".join(f"{round(value, 1) + 0.0:g}" for value in values)


def _shape(shape: Shape) -> str:
    match shape:
        case Line(start, end, pen):
            return f"line {_numbers(*start, *end)} {_pen(pen)}"
        case Disc(centre, radius, pen):
            return f"disc {_numbers(*centre, radius)} {_pen(pen)}"
        case Patch(corners, pen):
            return f"patch {_numbers(*(each for corner in corners for each in corner))} {_pen(pen)}"
        case Arc(centre, radius, start, sweep, pen):
            return f"arc {_numbers(*centre, radius, start, sweep)} {_pen(pen)}"


def _pen(pen: Pen) -> str:
    return _joined(pen.ink, f"{pen.width:g}", f"[{pen.dash}]" * bool(pen.dash), pen.fill, "round" * pen.round)


def main() -> None:
    KEPT.mkdir(exist_ok=True)
    for name, laid in FIGURES.items():
        (KEPT / f"{name}.txt").write_text(as_text(laid()), encoding="utf-8")


if __name__ == "__main__":
    main()
