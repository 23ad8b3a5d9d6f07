"""An answer beside an earlier one: how much it has changed, in words and per cent, why where it has not, and which
lines are the same.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from ..solve.answers import unit_of_answer
from ..document.english import noun_of, sentence, weight_of
from ..equation.terms import Equation
from ..exact.prime_field import scale
from ..solve.outcome import Outcome, number
from ..mechanics.asked import key_of
from ..walkthrough.answer_sentences import pretty
from ..solve.engine import Move
from ..formula.plain import plain
from .balance import Balance, balance_of
from .effects import Effect
from .joint_force import NAMES, joint_force
from .joint_prediction import predict_joint
from .prediction import LESS, MORE, NONE, SAME, Prediction, cancels, predict
from .comparison_words import called, why_same

EQUAL = 1e-9  # of the answer: what differs by less is the same, but for the noise of floats
GoalKey = tuple[str, str, str, str]


@dataclass(frozen=True, slots=True)
class Comparison:
    """`way` is more, less, same or none; `says` tells it, `why` gives the reason for what is the same or not in
    proportion ("" for none).
    """

    name: str
    earlier: str
    prediction: Prediction
    way: str
    says: str = ""
    why: str = ""
    per_cent: float | None = None


def followed(outcome: Outcome, wanted: str = "", before: str = "") -> str:
    """The answer that a step is followed by: the one it names, else the one followed before, else the first asked."""
    for name in (wanted, before):
        if name and name in outcome.answers:
            return name
    return next(iter(outcome.answers), "")


def si(outcome: Outcome, name: str) -> float:
    """An answer in kg, m, s or degrees."""
    unit = unit_of_answer(outcome.working, key_of(outcome.body, name))
    return outcome.answers[name].value * (1.0 if outcome.answers[name].unit == "deg" else float(scale(unit)))


def comparable(old: Outcome, one: str, new: Outcome, other: str) -> bool:
    """Whether two answers are of one kind: the same quantity, or the pulls of two muscles."""
    if not one or not other:
        return False
    first, second = str(key_of(old.body, one)), str(key_of(new.body, other))
    return first == second or (first.endswith(".force") and second.endswith(".force"))


def compare(
    old: Outcome, one: str, new: Outcome, other: str, touched: frozenset[str], question_only: bool
) -> Comparison:
    """The two answers beside each other, the prediction first: that looks at no answer but the earlier one."""
    if not comparable(old, one, new, other):
        return Comparison(other, one, Prediction(NONE, "another quantity"), NONE)
    before, after = (balance_of(each.body, each.working.truth, name) for each, name in ((old, one), (new, other)))
    was, now = si(old, one), si(new, other)
    if one in NAMES:
        joints = [joint_force(each.body, each.working.truth, one) for each in (old, new)]
        prediction = predict_joint(joints[0], joints[1], question_only)
        was, now = _along_its_sense(old, new, was, now)
    else:
        prediction = predict(before, after, was, question_only, touched)
    if abs(now - was) <= EQUAL * max(abs(was), abs(now)):
        return Comparison(
            other, one, prediction, SAME, _unchanged(old, one, new, other), _reason(new, prediction, before, after), 0.0
        )
    way = MORE if now > was else LESS
    share = 100.0 * (now - was) / was if was > 0 < now and new.answers[other].unit != "deg" else None
    return Comparison(
        other,
        one,
        prediction,
        way,
        _told(old, one, new, other, share),
        _proportion(new, other, prediction, was, now),
        share,
    )


def _along_its_sense(old: Outcome, new: Outcome, was: float, now: float) -> tuple[float, float]:
    """Two values of a part of the joint force, positive in the sense that it had: so that "larger" speaks of size."""
    largest = max(old.largest_force, new.largest_force, abs(was), abs(now))
    if abs(was) <= EQUAL * largest:
        return 0.0, abs(now) if abs(now) > EQUAL * largest else 0.0
    return (was, now) if was > 0 else (-was, -now)


def _unchanged(old: Outcome, one: str, new: Outcome, other: str) -> str:
    return sentence(f"{called(new.body, other)} is what it was: {pretty(old.answers[one])}")


def _reason(new: Outcome, prediction: Prediction, before: Balance | None, after: Balance | None) -> str:
    if prediction.way == SAME:
        return sentence(why_same(new.body, prediction))
    if before is not None and after is not None and cancels(before, after):
        return (
            f"The opposite effects are equally large: together the {new.word}s that have changed are what they "
            "were, and so the answer is."
        )
    return ""


def _told(old: Outcome, one: str, new: Outcome, other: str, share: float | None) -> str:
    was, now = pretty(old.answers[one]), pretty(new.answers[other])
    noun = called(new.body, other)
    from_what = "" if one == other else f", where {called(old.body, one)} was"
    if old.answers[one].value * new.answers[other].value < 0 and one in NAMES:
        return sentence(f"{noun} is {now}, after {was}: it acts the other way now")
    if share is None:
        return sentence(f"{noun} is {now}, after {was}" if one == other else f"{noun} is {now}{from_what} {was}")
    more = "more" if share > 0 else "less"
    if new.answers[other].value < 0:
        return sentence(
            f"{noun} is {now}{from_what}{'' if from_what else ', after'} {was}: in size {per_cent(abs(share))} {more}"
        )
    if old.answers[one].unit != new.answers[other].unit:
        return sentence(
            f"{noun} is {now}{from_what}{'' if from_what else ', after'} {was}: in one unit {per_cent(abs(share))} "
            f"{more}"
        )
    if was == now:
        return sentence(f"{noun} changes so little ({per_cent(share)}) that the figures written do not show it: {now}")
    grows = "grows" if share > 0 else "falls"
    said = f"{noun} {grows} from {was} to {now}" if one == other else f"{noun} is {now}{from_what} {was}"
    return sentence(f"{said}: {per_cent(abs(share))} {more}")


def per_cent(share: float) -> str:
    """ "8.5 %", "0.03 %"; from 1000 per cent on as so many times."""
    if abs(share) >= 999.95:
        return f"{number(abs(share) / 100, 3)} times"
    figures = f"{abs(share):.1f}" if abs(share) >= 0.095 else number(abs(share), 1)
    return ("−" if share < 0 else "") + f"{figures} %"


def _proportion(new: Outcome, name: str, prediction: Prediction, was: float, now: float) -> str:
    """That an answer does not grow as much as the one force that was changed, or does."""
    if not prediction.effects or not prediction.effects[0].ratio:
        return ""
    if len(prediction.effects) != 1 or prediction.effects[0].cause not in ("larger", "smaller") or was <= 0 or now <= 0:
        return ""
    effect: Effect = prediction.effects[0]
    ratio, grown, noun = effect.ratio, now / was, called(new.body, name)
    what = called_size(effect)
    if abs(ratio - grown) <= EQUAL * ratio:
        return sentence(f"{noun} changes in proportion: nothing else turns the body")
    if number(ratio, 3) == number(grown, 3):
        return ""
    return sentence(
        f"{what} is {number(ratio, 3)} times what it was, but {noun} only {number(grown, 3)} times: the other "
        f"{new.word}s have not changed"
        if ratio > grown > 1
        else f"{what} is {number(ratio, 3)} times what it was, {noun} {number(grown, 3)} times: the other "
        f"{new.word}s have not changed"
    )


def called_size(effect: Effect) -> str:
    """The size that an effect speaks of: "the weight of the jug"."""
    return (
        weight_of(effect.name)
        if effect.kind in ("weight", "load")
        else noun_of("moment" if effect.kind == "couple" else "force", effect.name)
    )


# ---------------------------------------------------------------------- lines
def lines_of(outcome: Outcome) -> Mapping[GoalKey, tuple[Move, ...]]:
    """The moves of each goal, in order."""
    out: dict[GoalKey, tuple[Move, ...]] = {}
    for _, group in groupby(outcome.working.moves, key=lambda move: id(move.goal)):
        moves = tuple(group)
        out[goal_key(moves[0])] = out.get(goal_key(moves[0]), ()) + moves
    return out


def goal_key(move: Move) -> GoalKey:
    return move.goal.kind, move.goal.key, move.goal.sought, move.goal.about


def unchanged(old: Outcome, new: Outcome) -> frozenset[GoalKey]:
    """The goals whose lines, made by the same rules, are those of the earlier working, every one, to the last
    figure.
    """
    before, after, same = lines_of(old), lines_of(new), _written_alike(old, new)
    return frozenset(key for key, moves in after.items() if _alike(before.get(key, ()), moves, same))


def _alike(one: Sequence[Move], other: Sequence[Move], same: bool) -> bool:
    if len(one) != len(other) or any(
        a.rule is not b.rule or a.line.equation != b.line.equation for a, b in zip(one, other, strict=True)
    ):
        return False
    return same or all(plain(a.line.equation) == plain(b.line.equation) for a, b in zip(one, other, strict=True))


def _written_alike(old: Outcome, new: Outcome) -> bool:
    """Whether equal numbers are written with equal figures: 4.0 and 4.00 are the same number, and not the same line."""
    if old.body.problem.course != new.body.problem.course:
        return False
    figures = {each.letter.name: each.value.number.as_tuple().exponent for each in old.body.givens}
    return all(
        figures.get(each.letter.name, exponent) == exponent
        for each in new.body.givens
        for exponent in (each.value.number.as_tuple().exponent,)
    )


def result(outcome: Outcome, key: GoalKey) -> Equation:
    """The last line of a goal, with its left side as it began."""
    moves = [move for move in outcome.working.moves if goal_key(move) == key]
    return moves[-1].line.equation
