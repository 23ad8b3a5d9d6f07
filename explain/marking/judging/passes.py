"""Runs over a working until nothing more comes out: what a later line confirms or clears is known from the start in
the next pass.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from ...problem.model import Accept
from .answers import Answer, Answers
from .blame import Blame
from .effort import FOR_MORE_PASSES, Effort, EnoughError
from .hints import Hints
from .kept import Kept, Traced, letters_of, settling
from .known import Known
from .limits import GONE_OVER_AGAIN, MOST_STATEMENTS
from .reading import Line
from .senses import Senses
from .settlement import Settlement
from .sources import Sources
from .state import Before, State
from .statements import Statements
from .symbols import bound
from .trace import Trace
from .values import Suspect

MOST_PASSES = 3
_TENS = re.compile(
    r"g\s*(=|is|of|as)\s*10\b(?!\.)|[*x×·⋅∙(]\s*10(\.0*)?\s*(?:\)|=|N/kg|m/s|\*|x|×|·|$)|\b10\s*[*x×·]|(?:times|by) "
    r"(?:10|ten)\b",
    re.M,
)
_LET = re.compile(
    r"(?i)\b(?:let|call)\s+(?:the\s+)?([A-Za-z'’ ]+?)\s+(?:be\s+|=\s*)?([A-Za-z])(?=\s*(?:[,.;]|then|so|and|$))"
)
_FOR = re.compile(
    r"\b([A-Za-z])\s*(?:=|is|for|be)\s*(?:the\s+)?((?:pull|force|tension|mass)\s+(?:of|in|on|from)\s+[A-Za-z ]+)"
)
_PULLS = re.compile(
    r"\b(?:[Ii]f |[Ll]et )?(?:the )?([A-Za-z][a-z ]{2,}?) pulls?(?: with| by)? ([A-Z][a-z]?)(?=\s*(?:[,.;]|$))"
)
_LET_TWO = re.compile(
    r"\b[Ll]et ([A-Z]) and ([A-Z]) be the [a-z]+ (?:of|in|at|on|from) the ([a-z]+) and (?:the )?([a-z]+) ([a-z]+?)s?\b"
)
_PAIR = frozenset(("term-moved-sign-kept", "sign-of-a-term"))
_ONE_HABIT = frozenset(("radian-mode", "grad-mode", "calculator-order"))


@dataclass(slots=True)
class Judged:
    """A working as the last pass left it. `accepted` are the lines that a person accepted."""

    state: State
    answers: list[Answer]
    questions: set[int]
    presumed: int
    all_right: bool
    accepted: dict[int, Accept] = field(default_factory=dict)


class Passes:
    """The passes over the workings of one problem."""

    def __init__(self, known: Known, hints: Hints, sources: dict[bool, Sources]) -> None:
        self.known, self.hints, self.sources = known, hints, sources
        self.kept = Kept()

    def run(self, lines: list[Line]) -> Judged:
        """The working judged."""
        text = "\n".join(each.text for each in lines)
        tens = bool(_TENS.search(text))
        if tens not in self.sources:
            self.sources[tens] = Sources(self.known, tens)
        alias, before, count = aliases(lines), Before(), _count(lines)
        effort, judged = Effort(), None
        for _ in range(MOST_PASSES if count <= GONE_OVER_AGAIN else 1):
            try:
                judged = self._settled(settling(self._traced(lines, tens, alias, before, effort, judged is None)))
            except EnoughError:
                break
            size = before.size
            self._learn(judged.state, before)
            if before.size == size or effort.spent * FOR_MORE_PASSES > effort.most:
                break
        assert judged is not None
        return judged

    def _traced(
        self, lines: list[Line], tens: bool, alias: dict[str, str], before: Before, effort: Effort, first: bool
    ) -> State:
        """One pass, from the first line on that was not traced alike before. Where the first uses up all effort, the
        lines from there on are told as not followed; a later pass raises EnoughError.
        """
        before = before.copy()
        state = State(self.known, self.hints, Trace(self.known, self.sources[tens], effort), lines, before)
        state.tens, state.alias, state.bound = tens, alias, bound(lines)
        statements = Statements(state)
        letters = letters_of(alias, state.bound)
        traced = Traced(lines, state, tens, before, letters)
        other, count = self.kept.longest(lines, tens, before, letters)
        if other is not None and count:
            traced.marks = other.marks[:count]
            state.go_on_from(other.state, traced.marks[-1])
            statements.last_things = traced.marks[-1].things
        for line in lines[count:]:
            state.line = line.number
            state.trace.next_line(line.number)
            try:
                for clause in line.clauses if not line.struck else []:
                    statements.clause(clause)
            except EnoughError:
                if not first:
                    raise
                _tell_the_rest(lines, line.number)
                state.trace.effort = Effort()
                break
            traced.marks.append(state.mark(statements.last_things))
        self.kept.keep(traced)
        return state

    def _settled(self, state: State) -> Judged:
        Settlement(state).settle()
        answers = Answers(state)
        given = answers.all()
        groups = frozenset(
            "reaction" if key.startswith("reaction") else key
            for key in self.hints.asked_order
            if key in self.known.truth
        )
        blame = Blame(state, given, groups)
        blame.all_right = blame.all_right and answers.parts_right()
        blame.judge()
        Senses(state, answers).judge()
        self._units_said(state)
        once_only(state.suspects)
        return Judged(state, given, blame.questions, blame.presumed, blame.all_right)

    @staticmethod
    def _units_said(state: State) -> None:
        """A shifted point beside two units of one kind is a mix of these units."""
        for each in state.guilty():
            if "decimal-shift" in each.slips[:2] and each.line:
                raw = state.lines[each.line - 1].text
                if re.search(r"\d ?g(?:rams?)?\b", raw) and re.search(r"\bkg\b", raw):
                    each.slips.insert(0, "gram-kilogram-slip")
                elif re.search(r"\d ?cm\b", raw) and re.search(r"\d ?m\b", raw):
                    each.slips.insert(0, "mixed-length-units")

    @staticmethod
    def _learn(state: State, before: Before) -> None:
        for each in state.suspects:
            if each.state == "clear" and not each.soft:
                before.cleared.add((each.at, each.key))
            if each.state == "guilty" and each.worlds and (each.soft or each.line < each.at):
                before.blamed.setdefault(each.line, set()).update(each.worlds)
                before.settled |= each.worlds


def _tell_the_rest(lines: list[Line], number: int) -> None:
    for line in lines:
        if line.number >= number and line.clauses and not line.trouble:
            line.clauses, line.trouble = [], "the lines before it took all the work that is put into one working"


def _count(lines: list[Line]) -> int:
    """How many statements a working has; lines beyond the most that are judged are told as such."""
    count = 0
    for line in lines:
        count += sum(bool(each.exprs) for each in line.clauses)
        if count > MOST_STATEMENTS and not line.trouble:
            line.clauses, line.trouble = [], f"a working of more than {MOST_STATEMENTS} statements"
    return min(count, MOST_STATEMENTS)


def aliases(lines: list[Line]) -> dict[str, str]:
    """Letters with the words of what they stand for: "let the biceps be x"."""
    out: dict[str, str] = {}
    for line in lines:
        out.update({found[2]: found[1] for found in _LET.finditer(line.text) if len(found[1]) > 2})
        out.update({found[1]: found[2] for found in _FOR.finditer(line.text)})
        out.update({found[2]: found[1] for found in _PULLS.finditer(line.text)})
        for found in _LET_TWO.finditer(line.text):
            out.update({found[1]: f"{found[3]} {found[5]}", found[2]: f"{found[4]} {found[5]}"})
    return out


def once_only(suspects: list[Suspect]) -> None:
    """The same slip again is no new loss."""
    seen: list[Suspect] = []
    for each in suspects:
        if each.slips and each.slips[0] in _PAIR:
            each.slips[1:1] = [name for name in sorted(_PAIR) if name not in each.slips]
    for each in sorted((each for each in suspects if each.state == "guilty"), key=lambda each: (each.line, each.at)):
        if seen and each.line > min(other.line for other in seen) and any(alike(each, other) for other in seen):
            each.state = "again"
        else:
            seen.append(each)


def alike(one: Suspect, other: Suspect) -> bool:
    """Whether two suspicions are of one slip, made again."""
    if one.worlds & other.worlds or one.why == other.why == "no angle does this":
        return True
    if not one.slips or not other.slips:
        return False
    if one.slips[0] in _ONE_HABIT and one.slips[0] in other.slips[:3] or one.key and one.slips[0] == other.slips[0]:
        return True
    joint = (
        one.key.startswith("reaction") and other.key.startswith("reaction") and one.slips[0] != "reaction-equals-muscle"
    )
    return joint and bool({*one.slips[:6]} & {*other.slips[:6]})
