"""Writes the pages of the samples, kept in samples/pages, and those of problems that show what no sample does, kept
as text in tests/cases/pages: after a wanted change, run it and read what changed.

python tests/pages_of_samples.py
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from worked import EXTRA, HERE

from explain import Walkthrough, work

SAMPLES = Path(__file__).parents[1] / "samples"
PAGES = SAMPLES / "pages"
TEXTS = HERE / "cases" / "pages"


def _in_class(stem: str, **course: Any) -> Mapping[str, Any]:
    """A problem of the contract in a class of its own."""
    problem = tomllib.loads((HERE / "contract" / f"{stem}.toml").read_text("utf-8"))
    return {**problem, "course": {**problem.get("course", {}), **course}}


OTHERS: Mapping[str, Mapping[str, Any] | Path] = {
    **{
        name: EXTRA[name]
        for name in (
            "letters with their signs",
            "three and four",
            "a cosine",
            "nothing at the joint",
            "a level push only",
            "a mass over a pulley",
            "pulls by cross-sections",
            "the least friction on a slope",
            "a bracket about to slip down a wall",
            "a drift that grows to one end",
            "a ring between mirror images",
            "a stay at a sloping plank",
            "a rope straight up",
            "as shown, in inches",
            "a turning part",
            "moments alone",
        )
    },
    "brief, on two sides": _in_class("rock-oblique", detail="brief", balance="two sides", first="moments"),
    "brief, one is told": _in_class("leg-raise", detail="brief", person="you", resultant=["parts"]),
    "moments first": _in_class(
        "two-flexors",
        first="moments",
        person="you",
        reaction_on="the other bone",
        decimal="comma",
        order="letters first",
    ),
    "moments as numbers": _in_class("scale-push", first="moments", signs="with the numbers", spelling="American"),
    "moments as sizes": _in_class("two-links", first="moments", balance="two sides", word="torque"),
    "parts beside the whole": _in_class(
        "leg-raise", axes="along and across the shank", resultant=["parts", "size and direction"], carry="as shown"
    ),
    **{
        name: HERE / folder / f"{name}.toml"
        for folder, names in (
            (
                "cases/engine",
                ("b-toward-out", "crash-diving", "crash-zero-percent", "negative-mass", "seed-0039-refused"),
            ),
            ("scenarios", ("S11", "S18", "S20-b")),
            ("published", ("UP-EX10.6a",)),
        )
        for name in names
    },
}


def problems() -> list[Path]:
    """The problem files of the samples, in order."""
    return sorted(SAMPLES.glob("[0-9]*.toml"))


def markdown_with_figure(walkthrough: Walkthrough, stem: str) -> str:
    """The page in Markdown, its diagram as a file beside it."""
    from explain.write.markdown.pages import markdown

    return markdown(walkthrough.page, figure=lambda _: f"{stem}.svg")


def text_of(name: str) -> str:
    """The page of one of the others as text."""
    return work(OTHERS[name]).text(110)


def main() -> None:
    for name in OTHERS:
        (TEXTS / f"{name}.txt").write_text(text_of(name), encoding="utf-8")
    PAGES.mkdir(exist_ok=True)
    for path in problems():
        walkthrough = work(path)
        (PAGES / f"{path.stem}.md").write_text(markdown_with_figure(walkthrough, path.stem), encoding="utf-8")
        (PAGES / f"{path.stem}.svg").write_text(walkthrough.figure(), encoding="utf-8")


if __name__ == "__main__":
    main()
