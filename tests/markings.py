"""Workings as an engine would judge them, made by hand, and the problems they belong to: for tests of reports, marks
and files.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

from explain import Walkthrough, work
from explain.marking.slips.verdict import Cost, Given, Kind, LineVerdict, Marking, Named

HERE = Path(__file__).parent
TIN = HERE.parent / "samples" / "02-treacle-tin-again.toml"
ROCK = HERE / "contract" / "rock-oblique.toml"


@cache
def worked(path: Path) -> Walkthrough:
    return work(path)


def slip(name: str, title: str, keys: tuple[str, ...] = (), costs: Cost = "", says: str = "Said of the slip.") -> Named:
    return Named(name, title, says, ("The light hint.", "The medium hint.", "The strong hint."), keys, costs)


def line(number: int, text: str, verdict: Kind = "holds", uses: str = "", *slips: Named, **more: object) -> LineVerdict:
    """`uses` are keys parted by commas."""
    keys = tuple(filter(None, (each.strip() for each in uses.split(","))))
    return LineVerdict(number, text, str(more.pop("read_as", text)), verdict, slips=slips, uses=keys, **more)  # type: ignore[arg-type]


LEFT_OUT = Named(
    "segment-left-out",
    "Segment weight left out",
    "The weight of the forearm and hand has no term in this line.",
    (
        "How many things pull down on the part you drew?",
        "Everything with mass inside your boundary has a weight. Is each of them in the line?",
        "One number from the data list has not been used yet.",
    ),
    ("total",),
)

# A working of the tin with its arm: the arm's weight is not in the balance. Its answer is the one of the tin alone,
# 172.8 N; the true one is 239.0 N.
ARM_LEFT_OUT = Marking(
    "The same tin, and the arm that holds it",
    (
        line(1, "W = 2.5*9.81 = 24.525 N", "holds", "tin.weight", read_as="W = 2.5 × 9.81 = 24.525 N"),
        line(2, "Sum of moments about the elbow, ccw +", "aside"),
        line(
            3,
            "F*4.4 - 24.525*31 = 0",
            "slips",
            "elbow flexors.force, *moment tin, total",
            LEFT_OUT,
            read_as="F × 4.4 − 24.525 × 31 = 0",
        ),
        line(4, ""),
        line(
            5, "F = 760.3/4.4 = 172.8 N", "carried", "elbow flexors.force", since=3, read_as="F = 760.3 / 4.4 = 172.8 N"
        ),
        line(
            6,
            "R = 172.8 + 24.5 = 197.3 N up",
            "slips",
            "reaction.up, reaction",
            slip("reaction-wrong-sense", "Joint force with the wrong sense", ("reaction.up",)),
        ),
    ),
    (Given("elbow flexors", 172.8, "N", False, True, 5), Given("reaction", 197.3, "N", False, False, 6)),
)

ALL_RIGHT = Marking(
    "The same tin, and the arm that holds it",
    (
        line(1, "Wt = 24.5 N, Wa = 17.7 N", "holds", "tin.weight, forearm and hand.weight"),
        line(
            2,
            "F = (24.5*31 + 17.7*16.5)/4.4 = 239 N",
            "holds",
            "elbow flexors.force, total",
            note="One step for three: all of it holds.",
        ),
        line(3, "R = 239 - 42.2 = 197 N, down", "holds", "reaction, reaction.up"),
    ),
    (Given("elbow flexors", 239, "N", True, line=2), Given("reaction", 197, "N", True, line=3)),
)
