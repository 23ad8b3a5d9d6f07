"""Workings written by independent hands with the verdict of each line, and what is counted of a marking of them."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

from explain import work
from explain.api import Walkthrough
from explain.marking.slips.verdict import LineVerdict

HERE = Path(__file__).parent / "workings" / "batches"
ROOT = Path(__file__).parents[1]
WITH_SLIPS = 35  # workings with one slip, in each of the corpora A and B
Restyle = Callable[[str], str]


def workings(corpus: str) -> list[dict[str, Any]]:
    """The workings of a corpus as written."""
    found: list[dict[str, Any]] = json.loads((HERE / corpus / "workings.json").read_text("utf-8"))["workings"]
    return found


@cache
def problem_of(path: Path) -> Walkthrough:
    return work(path)


@cache
def _as_written(corpus: str) -> dict[str, list[LineVerdict]]:
    """The verdicts on all workings of a corpus as they stand, by name."""
    return {each["id"]: _marked(each, corpus, str) for each in workings(corpus)}


def marked(working: dict[str, Any], corpus: str, restyle: Restyle = str) -> list[LineVerdict]:
    """The verdicts on the lines of a working, each line with numbers reworded."""
    return _as_written(corpus)[working["id"]] if restyle is str else _marked(working, corpus, restyle)


def _marked(working: dict[str, Any], corpus: str, restyle: Restyle) -> list[LineVerdict]:
    home = (ROOT if working["problem"].startswith("samples/") else HERE / corpus) / working["problem"]
    text = "\n".join(each["text"] if each["verdict"] == "words" else restyle(each["text"]) for each in working["lines"])
    return list(problem_of(home).mark(text).lines)


def counted(corpus: str, restyle: Restyle = str) -> Counter[str]:
    """What became of the lines: right ones called wrong, wrong ones found, named and affirmed, wrong workings
    without a word.
    """
    count: Counter[str] = Counter()
    for working in workings(corpus):
        found = marked(working, corpus, restyle)
        for line, said in zip(working["lines"], found, strict=True):
            count["right lines"] += line["verdict"] == "ok"
            count["right called wrong"] += line["verdict"] in ("ok", "words") and said.verdict == "slips"
            wrong = line["verdict"] in ("first-wrong", "second-wrong")
            count["wrong lines"] += wrong
            count["affirmed"] += wrong and said.verdict == "holds"
            count["unclear"] += line["verdict"] != "words" and said.verdict == "unclear"
            count["lines"] += line["verdict"] != "words"
        if working["kind"] == "right":
            continue
        count["without a word"] += all(each.verdict not in ("slips", "unclear") for each in found)
        first = next((each for each in found if each.verdict == "slips"), None)
        if working["kind"] == "slip" and first is not None:
            hit = first.number in (working["first_wrong_line"], *(working.get("also_accept_lines") or ()))
            count["found"] += hit
            names = {each.slip for each in first.slips[:3]}
            count["named"] += hit and bool(names & {working["slip"], *(working.get("also_accept_slips") or ())})
    return count
