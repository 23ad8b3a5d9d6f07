"""A whole book of sixty problems in every edition, each answer that it prints held against a key by numpy, which shares
nothing with the program: three balances of rest as one matrix for each problem.
"""

from __future__ import annotations

import html
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from io import BytesIO
from math import atan2, cos, degrees, hypot, radians, sin
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory

import numpy as np
import pikepdf
import pytest
from books import book
from pdf_words import words

from explain import manual

COUNT, G = 60, 9.81
EDITIONS = ("student", "odd", "answers", "instructor")
FORMS = ("md", "html")
TEXT = """title = "{title}"
ask = ["{holder}", "reaction"]
[pivot]
name = "{pivot}"
bone = "{bone}"
[[segment]]
name = "{body}"
length = "{length} cm"
mass = "{mass} kg"
com = "{com} cm"
direction = "{slope} deg {side} right"
[[load]]
name = "{load}"
mass = "{carried} kg"
at = "{at} cm"
[[muscle]]
name = "{holder}"
at = "{grip} cm"
direction = "{pull} deg from back toward up"
"""
NAMES = (
    ("elbow", "humerus", "forearm", "biceps", "jug"),
    ("knee", "femur", "shank", "quadriceps", "boot"),
    ("shoulder", "scapula", "arm", "deltoid", "lantern"),
)


@dataclass(frozen=True)
class Key:
    """The pull of the muscle, the size of the joint force and where it points, in degrees counter-clockwise."""

    text: str
    pull: float
    force: float
    points: float


def drawn(place: int) -> Key:
    """A limb of a random slope that a muscle holds by a slanting pull, and how that comes out."""
    random = Random(f"book {place}")
    pivot, bone, body, holder, load = NAMES[place % 3]
    said = {
        "length": random.randint(36, 60),
        "mass": random.randint(8, 45) / 10,
        "com": random.randint(12, 25),
        "slope": random.randint(3, 55),
        "carried": random.randint(5, 90) / 10,
        "at": random.randint(20, 36),
        "grip": random.randint(30, 70) / 10,
        "pull": random.randint(25, 85),
    }
    side = random.choice(("above", "below"))
    names = {"title": f"Problem of {place}", "pivot": pivot, "bone": bone, "body": body, "holder": holder, "load": load}
    along = radians(said["slope"] * (1 if side == "above" else -1))
    bone_way = np.array([cos(along), sin(along)])
    # "from back toward up" along the limb: from the way back to the pivot, turned the shorter way towards straight up
    back = along + np.pi
    to_up = (np.pi / 2 - back + np.pi) % (2 * np.pi) - np.pi
    pulls = back + radians(said["pull"]) * np.sign(to_up)
    way = np.array([cos(pulls), sin(pulls)])
    grip = said["grip"] / 100 * bone_way
    weights = [(said["mass"] * G, said["com"] / 100), (said["carried"] * G, said["at"] / 100)]
    matrix = np.array([[way[0], 1, 0], [way[1], 0, 1], [grip[0] * way[1] - grip[1] * way[0], 0, 0]])
    right = np.array([0.0, sum(w for w, _ in weights), sum(w * d * bone_way[0] for w, d in weights)])
    pull, x, y = np.linalg.solve(matrix, right)
    text = TEXT.format(**said, **names, side=side)
    return Key(text, float(pull), hypot(x, y), degrees(atan2(y, x)))


@cache
def keys() -> tuple[Key, ...]:
    return tuple(map(drawn, range(COUNT)))


@cache
def editions() -> Mapping[tuple[str, str], bytes]:
    """Every edition in every format, each problem worked once for all of them."""
    found = {}
    with TemporaryDirectory() as place:
        path = book(Path(place), [key.text for key in keys()], chapters=6)
        for edition in EDITIONS:
            for form in (*FORMS, *(("pdf",) if edition == "answers" else ())):
                out = Path(place) / f"{edition}.{form}"
                built = manual(path, out, edition=edition, jobs=1, cache=Path(place) / "kept")
                assert (built.troubles, built.failing, built.fresh + built.kept) == ((), (), COUNT)
                found[edition, form] = out.read_bytes()
    return found


def read(edition: str, form: str) -> str:
    """What the edition says, its marks of Markdown or HTML taken away, each anchor on a line of its own."""
    said = editions()[edition, form].decode()
    if form == "html":
        said = said[said.index("<main>") :]
    said = re.sub(r'<[^>]* id="([^"]+)"[^>]*>', r"\n@@\1\n", said)
    said = html.unescape(re.sub(r"<[^>]+>", "", said)).replace("**", "").replace("\u00a0", " ")
    return re.sub(r" +", " ", said)


def section(said: str, anchor: str) -> str:
    """From an anchor to the next anchor of the book."""
    begun = said.partition(f"\n@@{anchor}\n")[2]
    return re.split(r"\n@@(?:jug-\d+\n|answer-|chapter|index-|conventions)", begun)[0]


def agrees(said: str, key: Key, holder: str) -> None:
    """The sentences with the answers tell numpy's values: forces to three figures, directions to the figures told."""
    pull = re.search(rf"The {holder} pulls? with (-?[\d.]+) N", said)
    behind = said[pull.end() :] if pull else ""
    slant = r"([\d.]+)° (above|below) the horizontal, to the (left|right)"
    force = re.search(rf" with ([\d.]+) N, (?:straight (up|down)|{slant})", behind)
    assert pull is not None and force is not None, said
    assert float(pull[1]) == pytest.approx(key.pull, rel=5.1e-3)
    assert float(force[1]) == pytest.approx(key.force, rel=5.1e-3)
    if force[2]:
        points, within = {"up": 90.0, "down": -90.0}[force[2]], 1e-6
    else:
        slope = (1 if force[4] == "above" else -1) * float(force[3])
        points, within = slope if force[5] == "right" else 180 - slope, 0.051 if "." in force[3] else 0.51
    assert abs((points - key.points + 180) % 360 - 180) < within


@pytest.mark.parametrize("form", FORMS)
def test_the_instructors_edition_works_every_problem_out_right(form: str) -> None:
    said = read("instructor", form)
    for place, key in enumerate(keys()):
        agrees(section(said, f"jug-{place}"), key, NAMES[place % 3][3])


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize(("edition", "there"), [("answers", 1), ("instructor", 1), ("odd", 2)])
def test_the_back_of_the_book_has_the_answers_that_are_wanted_and_no_others(
    edition: str, there: int, form: str
) -> None:
    said = read(edition, form)
    for place, key in enumerate(keys()):
        answer = section(said, f"answer-to-jug-{place}")
        if place % there:
            assert answer == ""
        else:
            agrees(answer, key, NAMES[place % 3][3])


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("edition", ["student", "odd"])
def test_the_problems_of_students_tell_no_answer(edition: str, form: str) -> None:
    said = read(edition, form)
    assert edition == "odd" or "answer-to-" not in said
    for place, key in enumerate(keys()):
        problem = section(said, f"jug-{place}")
        assert f"Problem of {place}" in problem and "pulls with" not in problem
        told = [float(each) for each in re.findall(r"([\d.]+) ?(?:N\b|\\,\\mathrm\{N\})", problem)]
        assert not [each for each in told if each == pytest.approx(key.pull, rel=5.1e-3)]


def test_the_answers_on_paper_are_right_too() -> None:
    with pikepdf.open(BytesIO(editions()["answers", "pdf"])) as document:
        said = " ".join(" ".join(words(page).split()) for page in document.pages)
    said = said.replace(" ,", ",")
    for place, key in enumerate(keys()):
        begun = said.rpartition(f" Problem of {place} The ")[2]
        agrees(f"The {begun[:220]}", key, NAMES[place % 3][3])
