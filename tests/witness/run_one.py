"""Knows how to hand a problem to the program and what came of it; the only place that imports the program."""

from __future__ import annotations

import csv
import json
import re
import tempfile
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from explain import Fault, NoWay, Walkthrough, work

from .problems import Case, toml


@dataclass
class Outcome:
    """What the program would exit with, its JSON, and its page."""

    exit: int
    message: str = ""
    json: dict[str, Any] = field(default_factory=dict)
    text: str = ""
    markdown: str = ""


def outcome(case: Case, pages: bool = False) -> Outcome:
    try:
        walkthrough = worked(case)
        told = json.loads(walkthrough.json())
        text, markdown = (walkthrough.text(5000), walkthrough.markdown()) if pages else ("", "")
    except Fault as fault:
        return Outcome(2, str(fault))
    except NoWay as stuck:
        return Outcome(3, str(stuck))
    except Exception as fault:  # whatever escapes is a fault of the program: the command exits with 70
        return Outcome(70, f"{type(fault).__name__}: {fault}")
    course = case.problem.get("course", {})
    return Outcome(
        int(walkthrough.needs_a_person),
        "",
        in_plain_words(course, told),
        *(plain(course, each) for each in (text, markdown)),
    )


BACK = (  # from the words of some classes to those of the readers
    ("level_words", "level and upright", ((r"\blevel\b", "horizontal"), (r"\bupright\b", "vertical"))),
    ("level_words", "level and upright", ((r"\bLevel\b", "Horizontal"), (r"\bUpright\b", "Vertical"))),
    ("spelling", "American", ((r"\b([Cc])enter", r"\1entre"), (r"meter(s?)\b", r"metre\1"), (r"gray", "grey"))),
    ("decimal", "comma", ((r"(?<=[0-9])\{?,\}?(?=[0-9])", "."),)),
)


def plain(course: dict[str, Any], text: str) -> str:
    """What a class says, in the words of the readers: point, horizontal and vertical, British."""
    for key, value, changes in BACK:
        for old, new in changes if course.get(key) == value else ():
            text = re.sub(old, new, text)
    return text


def in_plain_words(course: dict[str, Any], told: Any) -> Any:
    """The same of every text in what the program told, but for keys."""
    match told:
        case dict():
            return {key: in_plain_words(course, each) for key, each in told.items()}
        case list():
            return [in_plain_words(course, each) for each in told]
        case str():
            return plain(course, told)
    return told


def worked(case: Case) -> Walkthrough:
    if not case.rows:
        return work(toml(case.problem))
    with tempfile.TemporaryDirectory() as folder:
        with (Path(folder) / "own.csv").open("w", newline="") as file:
            csv.writer(file).writerows(
                [["segment", "mass_percent", "com_percent", "source"], *([*row, "a class's own"] for row in case.rows)]
            )
        path = Path(folder) / "problem.toml"
        path.write_text(toml(case.problem))
        return work(path)
