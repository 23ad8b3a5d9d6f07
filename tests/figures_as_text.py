"""Writes figures as text, kept in tests/cases/figures: each stroke and each label with its place, its pen and the part
that it belongs to. After a wanted change, run it, look at the figures and read what changed.

python tests/figures_as_text.py
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from itertools import zip_longest
from pathlib import Path

from drawings import DRAWINGS, limb

from explain.document.passage import Axis, Curve, Plot
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


FIGURES: Mapping[str, Callable[[], Layout]] = {
    **{name: lambda drawing=drawing: layout(drawing) for name, drawing in DRAWINGS.items()},  # type: ignore[misc]
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
