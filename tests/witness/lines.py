"""Knows whether a printed equation is true: each side worked out from its printed numbers and the true letters."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from typing import Any

from .answers import Expected
from .courses import letters_have_signs
from .equations import Amount, Reading, Unread, letters_in, value_of
from .problems import Case
from .quantities import si
from .run_one import Outcome

Finding = tuple[str, str]
PARTS = (
    ("moment arm of", ".moment_arm"),
    ("mass at the other end of", ".hung"),
    ("mass of", ".mass"),
    ("weight of", ".weight"),
    ("distance from", ".at"),
    ("centre of mass", ".com"),
    ("stress", ".stress"),
    ("angle of", ".direction"),
)
RELATION = re.compile(r" (=|≈|≤) ")
MOMENT_LETTERS = re.compile(r"−?[A-Za-zτ]+_\w+(?: [=+−] [A-Za-zτ]+_\w+)*(?: = 0)?")


def figures_of(number: str) -> int:
    return len(number.replace("\u202f", "").replace(".", "").lstrip("0"))


def half_unit(number: str, figures: int) -> float:
    """Half a unit of the last figure; where a number ends in zeros before the point, of so many figures."""
    bare = number.replace("\u202f", "")
    if "." in bare:
        return 0.5 * 10.0 ** -len(bare.partition(".")[2])
    value = float(bare)
    if value == 0:
        return 0.5e-12
    return 0.5 * max(1.0, 10.0 ** (math.floor(math.log10(value)) + 1 - figures)) if bare.endswith("0") else 0.5


class Board:
    """The letters of one page with their true values, or as they were last shown where the class carries those on."""

    def __init__(self, case: Case, expected: Expected, outcome: Outcome) -> None:
        course = case.problem["course"]
        self.figures, self.working = int(course.get("figures", 3)), int(course.get("working_figures", 5))
        self.shown = course.get("carry", "unrounded") == "as shown"
        self.case, self.expected = case, expected
        self.true: dict[str, Amount] = {}
        self.doubles: list[str] = []  # letters that were given two values
        self.given: set[tuple[str, str]] = set()  # quantities as they were given: exact
        self.read_given(outcome.text)
        self.given_letters = set(self.true)
        self.read_sought(outcome.text)

    def read_given(self, text: str) -> None:
        """The table of given values: letter, meaning, as given (and as used)."""
        table = text.partition("\nGiven\n")[2].partition("\nFind ")[0]
        for row in table.splitlines():
            cells = re.split(r" {2,}", row.strip())
            if len(cells) >= 3 and re.match(r"[0-9−]", cells[2]):
                mass = cells[0].startswith("m_")
                self.true[cells[0]] = value_of(cells[2], Reading(lambda *_: 0.0, {}), mass)
                number, _, unit = cells[2].lstrip("−").partition(" ")
                self.given.add((number.rstrip("°"), "°" if "°" in number else unit))
        for letter, amount in self.true.items():
            self.true[letter] = Amount(amount.value, abs(amount.value) * 1e-12)

    def read_sought(self, text: str) -> None:
        """Which letter stands for which answer."""
        self.sought: dict[str, str] = {}
        values = self.expected.root.values
        g = si(self.case.problem["course"].get("g", "9.81 m/s^2"), "acceleration")
        sought = re.search(r"^Find (.*)\.$", text, re.M)
        for part in sought[1].split("; ") if sought else []:
            letter, _, meaning = part.partition(", ")
            name = self.answer_of(meaning)
            if name:
                self.sought[letter] = name
                self.true[letter] = Amount(self.sign(name) * self.expected.value(name)[0])
                if name.endswith(".hung"):
                    force = self.case.problem["course"].get("force_letter", "F") + letter[1:]
                    owner = name.removesuffix(".hung")
                    self.true[force] = Amount(self.sign(owner) * self.expected.root.sizes[owner])
                if name.endswith(".mass"):
                    weight = -g if letters_have_signs(self.case.problem) else g
                    self.true["W" + letter[1:]] = Amount(self.expected.value(name)[0] * weight)
        if "reaction.right" in values:
            axes = self.case.problem["course"].get("axes", "level and upright")
            parts = (
                {"J_x": "reaction.right", "J_y": "reaction.up", "J": "reaction"}
                if axes == "level and upright"
                else {"J_along": "reaction.along", "J_across": "reaction.across", "J": "reaction"}
            )
            self.true |= {letter: Amount(self.expected.value(name)[0]) for letter, name in parts.items()}

    def sign(self, name: str) -> int:
        """-1 where the letter of a force down stands for its part upwards."""
        owner = name.removesuffix(".weight")
        down = name.endswith(".weight") or name in self.expected.pulls and (self.expected.direction(owner) or 0) > 180
        return -1 if down and letters_have_signs(self.case.problem) else 1

    def answer_of(self, meaning: str) -> str:
        solution = self.case.solution
        names = sorted(self.expected.tables, key=len, reverse=True)
        name = next((name for name in names if re.search(rf"\b{re.escape(name)}\b", meaning)), "")
        short = name or next(
            (n for n in names if n.endswith("s") and re.search(rf"\b{re.escape(n[:-1])}\b", meaning)), ""
        )
        for words, part in PARTS:
            if words in meaning:
                found = [
                    n
                    for n in names
                    if n + part in (*solution.forced, solution.bent) and re.search(rf"\b{re.escape(n)}\b", meaning)
                ]
                if found:
                    return found[0] + part
        if (
            name in self.expected.tables
            and self.expected.tables[name][0] == "couple"
            and re.match(r"the (moment|torque) of", meaning)
        ):
            return name
        if (
            re.match(r"the (?:(?:pull|force) of|friction|[a-z]+ (?:force|pull)\b)", meaning)
            and short in self.expected.root.sizes
            and "the joint" not in meaning
        ):
            return short
        return ""

    def reading(self, letters: dict[str, Amount], figures: int = 0, given: bool = True) -> Reading:
        """How numbers are read; `given`: one that is written as a given one is that, and exact."""

        def off(number: str, unit: str) -> float:
            if not figures and (given and (number, unit) in self.given or figures_of(number) < self.working):
                return 1e-12 * float(number.replace("\u202f", "") or 0)
            return half_unit(number, figures or self.working)

        return Reading(off, letters, 0.5 * 10.0 ** (1 - self.working) if self.shown else 1e-12)

    def judge(self, equation: str) -> Iterator[Finding]:
        """Whether each relation of a printed chain holds; letters met for the first time are learnt."""
        parts = RELATION.split(equation)
        mass = (
            "kg" in equation
            and not re.search(r"lb / [0-9.]+ (m|ft)/s²", equation)
            or (equation.startswith("m_") and "/s²" not in equation)
        )
        self.learn(parts[0], parts[2], mass)
        letters = dict(self.true)
        for at in range(0, len(parts) - 2, 2):
            left, relation, right = parts[at], parts[at + 1], parts[at + 2]
            a = value_of(left, self.reading(letters), mass)
            rounded = relation == "=" and left in self.given_letters  # in another unit, as a given number by chance
            b = value_of(right, self.reading(letters, self.figures if relation == "≈" else 0, not rounded), mass)
            rounds = 4 if self.shown and letters_in(f"{left} {right}") else 1
            slack = rounds * (a.off + b.off) + 1e-9 * max(abs(a.value), abs(b.value)) + 1e-12 * self.expected.largest
            if abs(a.value - b.value) > slack:
                yield "a false line", f"{equation}   ({a.value:.8g} against {b.value:.8g}, within {slack:.2g}, SI)"

    def carry(self, lines: list[str]) -> None:
        """Where the class goes on from what is written, a letter is worth what was last written for it."""
        last: dict[str, tuple[str, Amount]] = {}
        for line in lines if self.shown else []:
            letter, _, number = line.partition(" = ")
            if (
                re.fullmatch(r"−?[0-9][0-9\u202f.]*(°| [^ ]+)?", number)
                and letters_in(letter) == {letter}
                and not letters_in(number)
            ):
                amount = value_of(number, self.reading({}), letter.startswith("m_"))
                before = last.get(letter, (number, amount))
                if before[0].split(" ")[-1] == number.split(" ")[-1] and abs(before[1].value - amount.value) > 2 * (
                    before[1].off + amount.off
                ):
                    self.doubles.append(f"{letter} = {before[0]} and {number}")
                last[letter] = (number, amount)
        self.true |= {letter: amount for letter, (_, amount) in last.items()}

    def forget(self, lines: list[str]) -> None:
        """A quantity that is also the result of a line may be rounded, though it reads like a given one."""
        results = {
            tuple(re.split(r"(?=°)| ", right, maxsplit=1))
            for left, _, right in (line.partition(" = ") for line in lines)
            if left not in self.given_letters
        }
        self.given -= {(pair[0].lstrip("−"), pair[1]) for pair in results if len(pair) == 2}

    def learn(self, left: str, right: str, mass: bool) -> None:
        if left in self.true or left.startswith("Σ") and "0" == right:
            self.true.setdefault(left, Amount(0.0))
            return
        if angle := re.fullmatch(r"tan ([α-ω])", left):
            if angle[1] not in self.true:
                ratio = value_of(right, self.reading(self.true), mass)
                self.true[angle[1]] = Amount(math.degrees(math.atan(ratio.value)), math.degrees(ratio.off))
            return
        if letters_in(left) != {left}:
            if re.fullmatch(r"[A-Za-zΔ_]+[′⊥]*²", left) and left[:-1] not in self.true:
                squared = value_of(right, self.reading(self.true), mass)
                self.true[left[:-1]] = Amount(math.sqrt(squared.value), squared.off / math.sqrt(squared.value))
            return
        self.true[left] = value_of(right, self.reading(self.true), mass)


def page_lines(text: str) -> list[str]:
    """The equations of a text page, without the remarks beside them."""
    rows = (re.split(r" {3,}", row.strip())[0] for row in text.splitlines() if row.startswith("    "))
    return [row for row in rows if RELATION.search(row)]


def steps_of(chain: str) -> list[str]:
    """a = b = c as a = b, a = c."""
    left, *rights = re.split(r" = ", chain.partition(" ≈ ")[0])
    return [f"{left} = {right}" for right in rights]


def can_be_read(step: str) -> bool:
    """Whether the reader knows every sign of both sides; where it does not, the judge says so of the whole line."""
    try:
        return all(letters_in(side) is not None for side in step.split(" = "))
    except Unread:
        return False


def ready_board(case: Case, expected: Expected, outcome: Outcome, lines: list[str]) -> Board:
    """The board of a page after all its lines have been looked through."""
    board = Board(case, expected, outcome)
    steps = [step for line in lines for step in steps_of(line) if can_be_read(step)]
    board.carry(steps)
    board.forget(steps)
    return board


def false_lines(case: Case, expected: Expected, outcome: Outcome, read: Any) -> Iterator[Finding]:
    """All lines of the JSON and of the page that are not true."""
    for source, lines in (
        ("JSON", [(line["equation"], line["move"]) for line in outcome.json["lines"]]),
        ("page", [(line, "") for line in page_lines(outcome.text)]),
    ):
        board = ready_board(case, expected, outcome, [equation for equation, _ in lines])
        yield from (("a letter has two values", says) for says in board.doubles)
        for equation, move in lines:
            read[f"lines of the {source}"] += 1
            try:
                yield from ((f"{sort}: {move}" if move else sort, says) for sort, says in board.judge(equation))
            except Unread as unread:
                if MOMENT_LETTERS.fullmatch(equation):  # what they are worth is read in the products after it
                    read[f"balances of the {source} in letters of moments alone, not judged"] += 1
                    continue
                read[f"lines of the {source} not understood"] += 1
                yield "a line that cannot be read", f"{equation}: {unread}"
