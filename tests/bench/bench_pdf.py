"""Time and memory of a book of walkthroughs: with formulas and figures, with formulas as plain text, and bare, side by
side.

    python tests/bench/bench_pdf.py [walkthroughs]

Prints ratios; each book is made in a fresh process, three times in turn, and the least time of the three counts. A
walkthrough is
two to three pages with some thirty formulas as images, numbers different in each, and a figure.
"""

from __future__ import annotations

import json
import random
import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from resource import RUSAGE_SELF, getrusage

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from explain.equation.terms import Letter, Power, Quantity, Quotient, Root, Trig, term
from explain.document.passage import (
    Answer,
    Arrow,
    Bone,
    Bullets,
    Derivation,
    Drawing,
    Heading,
    Inline,
    Line,
    Maths,
    Page,
    Paragraph,
    Passage,
    Picture,
    Row,
    Table,
    Text,
)
from explain.formula.plain import plain

WORDS = (
    "the",
    "forearm",
    "lies",
    "level",
    "at",
    "rest",
    "so",
    "the",
    "turning",
    "effects",
    "about",
    "the",
    "elbow",
    "add",
    "to",
    "zero",
)
PULL, JOINT_X, JOINT_Y, JOINT = (Letter(name, name) for name in ("F_B", "J_x", "J_y", "J"))
ARM, WEIGHT, LOAD, REACH, CENTRE = (Letter(name, name) for name in ("d_B", "W_F", "W_R", "d_R", "d_F"))


def walkthrough(seed: int) -> Page:
    """A made-up walkthrough; its sums are not meant to come out."""
    chance = random.Random(seed)

    def q(unit: str) -> Quantity:
        return Quantity.of(f"{chance.uniform(1, 99):.3f}", unit)

    def words(length: int) -> Text:
        return Text(" ".join(chance.choice(WORDS) for _ in range(length)) + ". ")

    def sentence(length: int) -> Paragraph:
        letter, number = Maths((term(chance.choice((PULL, JOINT, WEIGHT))),)), Maths((term(q("N")),))
        return Paragraph((words(length), letter, Text(" and "), number, words(8)))

    angle = Quantity.of(f"{chance.uniform(20, 160):.1f}", "deg")
    sine, cosine = Trig("sin", angle), Trig("cos", angle)
    note: Line = (words(6),)
    rows = (
        Row((term(PULL, ARM, sine), term(WEIGHT, CENTRE, sign=-1), term(LOAD, REACH, sign=-1)), (("=", ()),)),
        Row((term(PULL, q("m"), sine), term(q("N"), q("m"), sign=-1), term(q("N"), q("m"), sign=-1)), (("=", ()),)),
        Row((term(PULL, q("m")), term(q("N m"), sign=-1), term(q("N m"), sign=-1)), (("=", ()),), (), note),
        Row((term(PULL, q("m")), term(q("N m"), sign=-1)), (("=", ()),), (), note),
        Row((term(PULL, q("m")),), (("=", (term(q("N m")),)),), (), note),
        Row((term(PULL),), (("=", (term(Quotient((term(q("N m")),), (term(q("m")),))),)),), (), note),
        Row((term(PULL),), (("=", (term(q("N")),)), ("≈", (term(q("N")),))), (), note),
    )
    joint = (
        Row((term(JOINT_X), term(PULL, cosine, sign=-1)), (("=", ()),), (Text("Level"),)),
        Row((term(JOINT_X),), (("=", (term(PULL, cosine),)), ("=", (term(q("N"), cosine),)), ("=", (term(q("N")),)))),
        Row(
            (term(JOINT_Y),),
            (("=", (term(WEIGHT), term(LOAD), term(PULL, sine, sign=-1))), ("=", (term(q("N"), sign=-1),))),
        ),
        Row(
            (term(JOINT),),
            (("=", (term(Root((term(Power(q("N"), 2)), term(Power(q("N"), 2))))),)), ("≈", (term(q("N")),))),
        ),
    )
    given = Table(
        "Given",
        ((Text("letter"),), (Text("meaning"),), (Text("value"),)),
        tuple(
            ((Maths((term(each),)),), (words(4),), (Maths((term(q("m")),)),))
            for each in (ARM, WEIGHT, LOAD, REACH, CENTRE)
        ),
        frozenset({2}),
    )
    weights = Derivation(
        tuple(
            Row((term(each),), (("=", (term(q("kg"), q("m s^-2")),)), ("=", (term(q("N")),))))
            for each in (WEIGHT, LOAD)
        )
    )
    part = (sentence(40), Derivation(rows), Answer((words(8), Maths((term(q("N")),)))))
    return Page(
        f"Walkthrough {seed}",
        (
            sentence(60),
            given,
            _figure(chance),
            Heading(2, (Text("Weights"),)),
            sentence(20),
            weights,
            Heading(2, (Text("Condition"),)),
            *part,
            Heading(2, (Text("Joint"),)),
            sentence(30),
            Derivation(joint),
            Heading(2, (Text("Checks"),)),
            Bullets(tuple((words(25), Maths((term(q("N")), term(q("N"))))) for _ in range(5))),
            Paragraph((words(20),)),
        ),
    )


def _figure(chance: random.Random) -> Picture:
    tendon, far = chance.uniform(0.03, 0.06), chance.uniform(0.3, 0.4)
    arrows = tuple(
        Arrow(str(letter), kind, (term(letter),), (at, 0.0), way)
        for letter, kind, at, way in (
            (PULL, "muscle", tendon, 110.0),
            (WEIGHT, "weight", far / 2, 270.0),
            (LOAD, "load", far, 270.0),
        )
    )
    drawing = Drawing((0.0, 0.0), "elbow", (Bone("forearm", (0.0, 0.0), (far, 0.0)),), arrows)
    return Picture(drawing, "Free-body diagram", "The forearm with three forces.", (Text("The forearm."),))


def as_text(page: Page) -> Page:
    """The same page with its formulas as plain text, and without its figure."""
    return replace(page, passages=tuple(_plainly(each) for each in page.passages if not isinstance(each, Picture)))


def bare(page: Page) -> Page:
    """The same page without formulas and figure."""
    kept = (each for each in page.passages if not isinstance(each, Picture | Derivation))
    return replace(page, passages=tuple(_without(each) for each in kept))


def _plainly(passage: Passage) -> Passage:
    match passage:
        case Derivation(rows):
            return Table("", (), tuple(_cells(row) for row in rows))
        case Paragraph(line):
            return Paragraph(tuple(map(_spelled, line)))
        case Bullets(items):
            return Bullets(tuple(tuple(map(_spelled, item)) for item in items))
        case Table():
            return replace(
                passage, rows=tuple(tuple(tuple(map(_spelled, cell)) for cell in row) for row in passage.rows)
            )
    return passage


def _cells(row: Row) -> tuple[Line, ...]:
    rest: Iterator[str] = (f" {relation} {plain(side)}" for relation, side in row.right)
    return (row.label, (Text(plain(row.left)),), (Text("".join(rest)),), row.note)


def _spelled(piece: Inline) -> Inline:
    return Text(plain(piece.of)) if isinstance(piece, Maths) else piece


def _without(passage: Passage) -> Passage:
    def words(line: Line) -> Line:
        return tuple(piece for piece in line if not isinstance(piece, Maths))

    match passage:
        case Paragraph(line):
            return Paragraph(words(line))
        case Bullets(items):
            return Bullets(tuple(map(words, items)))
        case Table():
            return replace(passage, rows=tuple(tuple(map(words, row)) for row in passage.rows))
    return passage


def one_book(kind: str, walkthroughs: int) -> None:
    """Make one book in this process and print what it took, as JSON."""
    change = {"full": lambda page: page, "text": as_text, "bare": bare}[kind]
    pages = [change(walkthrough(seed)) for seed in range(walkthroughs)]
    from explain.write.pdf.pages import pdf, pdf_pages

    pdf(change(walkthrough(-1)))
    start = time.perf_counter()
    book = pdf_pages(pages, "Bench")
    seconds = time.perf_counter() - start
    memory = getrusage(RUSAGE_SELF).ru_maxrss / 1024
    print(json.dumps({"seconds": seconds, "memory": memory, "size": len(book) / 1e6}))


def _measured(kind: str, walkthroughs: int) -> dict[str, float]:
    run = subprocess.run(
        [sys.executable, __file__, kind, str(walkthroughs)], check=True, capture_output=True, text=True
    )
    found: dict[str, float] = json.loads(run.stdout)
    return found


def compare(walkthroughs: int) -> None:
    """Print the three books side by side, and the full book at half its length."""
    wanted = {
        "bare": ("bare", walkthroughs),
        "text": ("text", walkthroughs),
        "full": ("full", walkthroughs),
        "half": ("full", walkthroughs // 2),
    }
    runs: dict[str, list[dict[str, float]]] = {name: [] for name in wanted}
    for _ in range(3):
        for name, (kind, length) in wanted.items():
            runs[name].append(_measured(kind, length))
    best = {name: {key: min(run[key] for run in taken) for key in taken[0]} for name, taken in runs.items()}
    for name, found in best.items():
        print(f"{name:5} {found['seconds']:7.2f} s {found['memory']:7.0f} MB at most {found['size']:6.2f} MB on disk")
    full = best["full"]
    for name in ("text", "bare"):
        print(
            f"full / {name}: time {full['seconds'] / best[name]['seconds']:.2f}, memory "
            f"{full['memory'] / best[name]['memory']:.2f}"
        )
    print(
        f"full / half of it: time {full['seconds'] / best['half']['seconds']:.2f}, memory "
        f"{full['memory'] / best['half']['memory']:.2f}"
    )


if __name__ == "__main__":
    match sys.argv[1:]:
        case [kind, length]:
            one_book(kind, int(length))
        case [length]:
            compare(int(length))
        case _:
            compare(40)
