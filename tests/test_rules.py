"""One conformance test for all moves: what a rule must have, what its examples promise, what it may not import."""

from __future__ import annotations

import ast
import importlib
import json
import string
from collections.abc import Mapping
from copy import copy
from dataclasses import replace
from functools import cache
from pathlib import Path
from types import ModuleType

import numpy as np
import pytest
from worked import CONTRACT, EXTRA, HERE, SAMPLES, extra, replayed, worked

import rules
from explain import work
from explain.solve.board import Board
from explain.check.checker import Certified, Checker, Refused
from explain.check.claim import (
    Arm,
    AtRest,
    Balance,
    Claim,
    Converted,
    Divided,
    Follows,
    Inverted,
    Moment,
    Put,
    Pythagoras,
    Rooted,
    Rounded,
    Scaled,
    Stress,
    Tangent,
    Turning,
)
from explain.equation.terms import Equation, Factor, Inverse, Letter, Quantity, Quotient, Root, Term, leaves, term
from explain.problem.course import Course
from explain.solve.goal import Goal, Moments
from explain.solve.rule import Say, Shows, Step, seen
from explain.mechanics.truth import Truth
from explain.formula.plain import plain
from rules.example_boards import level_elbow

RULES = HERE.parent / "rules"
MOVES = tuple(
    sorted(
        path
        for kind in ("setup", "algebra", "units", "numbers")
        for path in (RULES / kind).glob("*.py")
        if path.stem != "__init__"
    )
)
ALL = tuple(sorted(RULES.rglob("*.py")))
# Who multiplies out first has nothing to gather in front of a bracket.
LEFT_OUT = {"multiply first": {"gather"}, "divide first": set(), "letters first": set()}


def _name(path: Path) -> str:
    return ".".join(path.relative_to(RULES.parent).with_suffix("").parts)


def _module(path: Path) -> ModuleType:
    return importlib.import_module(_name(path))


def _imports(path: Path) -> set[str]:
    """The modules a file imports, in full."""
    found: set[str] = set()
    package = _name(path).split(".") if path.stem == "__init__" else _name(path).split(".")[:-1]
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            found |= {each.name for each in node.names}
        if isinstance(node, ast.ImportFrom):
            start = package[: len(package) - node.level + 1] if node.level else []
            base = ".".join([*start, *([node.module] if node.module else [])])
            found |= {base} | {f"{base}.{each.name}" for each in node.names}
    return found


SHOWS = [(path, number) for path in MOVES for number in range(len(_module(path).shows))]
LEAVES = [(path, number) for path in MOVES for number in range(len(_module(path).leaves))]


def _id(value: object) -> str:
    return value.stem if isinstance(value, Path) else str(value)


@pytest.mark.parametrize("order", LEFT_OUT)
def test_every_move_is_listed_for_each_order_once(order: str) -> None:
    listed = [each.__name__ for each in rules.MOVES[order]]
    assert sorted(listed) == sorted(_name(path) for path in MOVES if path.stem not in LEFT_OUT[order])


def test_the_orders_are_those_of_a_course() -> None:
    assert set(rules.MOVES) == set(LEFT_OUT)


def test_the_docstring_begins_with_a_sentence() -> None:
    said = {path: ast.get_docstring(ast.parse(path.read_text("utf-8"))) or "" for path in ALL}
    first = {_name(path): " ".join(text.partition("\n\n")[0].split()) for path, text in said.items()}
    assert len(first) > 100
    assert {} == {
        name: text
        for name, text in first.items()
        if not (text[:1].isupper() and text.endswith(".") and len(text.split()) > 2)
    }


@pytest.mark.parametrize("path", MOVES, ids=_id)
def test_a_move_has_all_its_parts(path: Path) -> None:
    rule = _module(path)
    assert [each for each in ("on", "when", "do", "say", "shows", "leaves", "Sight") if not hasattr(rule, each)] == []
    assert isinstance(rule.say, Say) and len(rule.shows) > 0 and len(rule.leaves) > 0
    assert all(isinstance(each, Shows) for each in rule.shows) and all(isinstance(each, Board) for each in rule.leaves)
    assert (rule.when.__doc__ or "").rstrip().endswith(".")


@pytest.mark.parametrize("path", MOVES, ids=_id)
def test_the_wording_speaks_only_of_what_was_seen(path: Path) -> None:
    rule = _module(path)
    texts = (rule.say.what, rule.say.why, rule.say.watch)
    slots = {
        slot.split(".")[0].split("[")[0]
        for text in texts
        for _, slot, _, _ in string.Formatter().parse(text)
        if slot is not None
    }
    assert slots - set(rule.Sight._fields) == set()


@pytest.mark.parametrize(("path", "number"), SHOWS, ids=_id)
def test_an_example_is_made_as_it_is_shown(path: Path, number: int) -> None:
    rule = _module(path)
    shown: Shows = rule.shows[number]
    sight = seen(rule, shown.before)
    assert isinstance(sight, rule.Sight)
    step = rule.do(shown.before, sight)
    assert isinstance(step, Step)
    assert plain(step.after) == shown.after


@pytest.mark.parametrize(("path", "number"), SHOWS, ids=_id)
def test_looking_changes_nothing_and_sees_the_same_again(path: Path, number: int) -> None:
    rule = _module(path)
    before: Board = rule.shows[number].before
    line = before.equation
    assert seen(rule, before) == seen(rule, before)
    assert before.equation is line


@pytest.mark.parametrize(("path", "number"), LEAVES, ids=_id)
def test_what_a_move_leaves_alone_it_does_not_see(path: Path, number: int) -> None:
    assert seen(_module(path), _module(path).leaves[number]) is None


def test_no_rule_imports_the_checker_or_a_writer() -> None:
    barred = (
        "explain.check.checker",
        "explain.check.premise",
        "explain.write",
        "explain.walkthrough.page",
        "explain.cli.main",
        "explain.solve.engine",
    )
    read = {path: _imports(path) for path in ALL if path != RULES / "example_boards.py"}
    assert any(each.startswith("explain.solve") for found in read.values() for each in found)
    assert [] == [(path, each) for path, found in read.items() for each in found if each.startswith(barred)]


# ---------------------------------------------------------------------- examples, certified
class Supposing(Checker):
    """A checker that takes the line of an example's board for granted, and nothing else."""

    def suppose(self, line: Equation) -> Certified:
        self.granted = line
        return self.certify(line, Scaled())

    def _hold(self, after: Equation, claim: Claim, before: Certified | None) -> None:
        if after is not getattr(self, "granted", None):
            super()._hold(after, claim, before)


def standing(board: Board, step: Step) -> tuple[Checker, Certified | None]:
    """A checker that knows what a board knows, and the lines that the board has in hand and beside it, supposed."""
    body = board.body or level_elbow(Moments).free
    lines = (board.equation, step.after, board.beside)
    known = {
        leaf.name: leaf
        for line in lines
        if line
        for leaf in (*leaves(line.left), *leaves(line.right))
        if isinstance(leaf, Letter)
    }
    letters = copy(body.letters)
    letters.known = {**body.letters.known, **known} if board.body is None else body.letters.known
    checker = Supposing(
        Truth(replace(body, letters=letters, problem=replace(body.problem, course=board.course))),
        angles=board.settled,
    )
    checker.ledger.update(board.values)
    if board.beside is not None:
        checker.suppose(board.beside)
    return checker, None if board.equation is None else checker.suppose(board.equation)


def example(path: Path, number: int) -> tuple[Step, Checker, Certified | None]:
    """What a rule makes of one of its examples, and a checker that stands before that line."""
    rule = _module(path)
    board: Board = rule.shows[number].before
    step = rule.do(board, seen(rule, board))
    return step, *standing(board, step)


@pytest.mark.parametrize(("path", "number"), SHOWS, ids=_id)
def test_an_example_stands_on_the_ground_that_its_rule_claims(path: Path, number: int) -> None:
    step, checker, before = example(path, number)
    assert checker.certify(step.after, step.claim, before).equation == step.after


@pytest.mark.parametrize(("path", "number"), SHOWS, ids=_id)
def test_a_line_that_is_not_so_does_not_stand_on_that_ground(path: Path, number: int) -> None:
    step, checker, before = example(path, number)
    lie = Equation((step.after.left[0], *step.after.left), step.after.right, step.after.rounded)
    with pytest.raises(Refused):
        checker.certify(lie, step.claim, before)


LYING = (
    AtRest("level"),
    Balance(None, sense=-1),
    Follows("jug.mass"),
    Arm("jug", 1),
    Turning("jug", 1),
    Moment("jug", 1),
    Pythagoras(("reaction.up", "reaction.right")),
    Stress("jug"),
    Scaled(Term(1, (Quantity.of("2"),))),
    Scaled(Term(-1, (Quantity.of("1", "m"),))),
    Put(("nobody.force",)),
    Rooted(),
    Inverted(),
    Tangent(Term(1, (Quantity.of("1"),))),
    Converted("nobody.at"),
    Rounded(),
    Divided(Equation((), ())),
)


@pytest.mark.parametrize(("path", "number"), SHOWS, ids=_id)
def test_an_example_stands_on_no_ground_of_another_kind(path: Path, number: int) -> None:
    """A rule with a lying claim is found out by its examples: not one of these claims bears the line of another."""
    step, _, _ = example(path, number)
    stands = []
    for claim in LYING:
        _, checker, before = example(path, number)
        try:
            checker.certify(step.after, claim, before)
            stands.append(claim)
        except Refused:
            pass
    assert [claim for claim in stands if type(claim) is not type(step.claim)] == []
    assert [claim for claim in stands if claim != step.claim] == []


# ---------------------------------------------------------------------- rules in real problems
@cache
def fired() -> Mapping[str, str]:
    """Each rule that made a line of a sample, of the contract or of the problems in `worked`, with the first problem
    in which it did.
    """
    found: dict[str, str] = {}
    named = [(path.stem, worked(path)) for path in (*SAMPLES, *CONTRACT)] + [(name, extra(name)) for name in EXTRA]
    for name, working in named:
        for move in working.moves:
            found.setdefault(move.rule.__name__, name)
    return found


@pytest.mark.parametrize("path", MOVES, ids=_id)
def test_each_rule_makes_a_line_of_a_real_problem(path: Path) -> None:
    assert _name(path) in fired()


@pytest.mark.parametrize("order", LEFT_OUT)
@pytest.mark.parametrize(("name", "more"), (("a cord aslant", 0.0), ("a cord aslant and a muscle", 12.0)))
def test_where_the_sine_of_a_sum_is_written_out_the_angle_is_that_of_a_fine_scan(
    name: str, more: float, order: str
) -> None:
    """The moments in N m as they are, at a million slopes below the horizontal: 60 N at 40° above it, 90 N straight "
    "down,
    and the muscle.
    """
    walkthrough = work(EXTRA[name], course={"order": order})
    slopes = np.linspace(0, 180, 1_000_001)
    turn = 0.25 * 60 * np.sin(np.radians(slopes + 40)) - 0.30 * 90 * np.cos(np.radians(slopes)) + more
    crossing = slopes[1:][np.sign(turn[1:]) != np.sign(turn[:-1])]
    assert any(move.rule.__name__ == "rules.algebra.unfold" for move in walkthrough.moves)
    assert [walkthrough.answers["forearm.direction"].value] == pytest.approx(list(crossing[:1]), abs=2e-4)


def test_a_rule_that_lies_is_found_out() -> None:
    """The examples above hold by the rule's own word; this one shows that the word alone does not do."""
    working = worked(next(path for path in CONTRACT if path.stem == "jug-level"))
    checker, lines = replayed(working, 1)
    lie = working.moves[1].line.equation
    with pytest.raises(Refused):
        checker.certify(type(lie)(lie.left, (lie.right[0].flipped(),)), working.moves[1].line.claim, lines[0])


# ---------------------------------------------------------------------- what is said of a line
FULL_FIRST, FULL_LAST = "the whole distance at 0°, nothing at 90°", "nothing at 0°, the whole distance at 90°"
OF_VERTICAL = "the lever arm of a vertical force is horizontal, here with the"
BY_COSINE = f"{OF_VERTICAL} cosine of the angle from the horizontal: {FULL_FIRST}"
BY_SINE = f"{OF_VERTICAL} sine of the angle from the vertical: {FULL_LAST}"
PERPENDICULAR = "the lever arm is the perpendicular distance to the line of the force, here with the"
ACROSS_BY_COSINE = f"{PERPENDICULAR} cosine: {FULL_FIRST}"
ACROSS_BY_SINE = f"{PERPENDICULAR} sine: {FULL_LAST}"
SQUARE_TO_THE_LINE = (
    "the lever arm is the perpendicular distance to the line of the force: only what is square to that line counts"
)
EACH = "each moment is a force times its perpendicular distance: "
TO_SCALE = "a weight is a force, the mass times g"
OF_LENGTH, OF_MASS, OF_WEIGHT = (
    f"the percentage is taken of the {whole}" for whole in ("whole length", "body mass", "body weight")
)
GRIP = "the line of a pull runs from its grip to the point it pulls towards"
ONE_LEFT = ", so one unknown is left instead of two"
# The rule, a problem in which it makes a line, what is done there, and why.
SAID = (
    ("add", "beam", "add like terms", ""),
    ("arm", "a cord in line with the elbow", "perpendicular distance of the cord", ""),
    ("arm", "one angle twice", "perpendicular distance of the jug", BY_COSINE),
    ("arm", "leg-raise", "perpendicular distance of the cuff", BY_SINE),
    ("arm", "03-tiller", "perpendicular distance of the hand", ACROSS_BY_COSINE),
    ("arm", "31-goal-kick", "perpendicular distance of the band", SQUARE_TO_THE_LINE),
    ("at_rest", "leg-raise", "at rest the forces across the shank add to zero", "nothing starts to move across it"),
    ("at_rest", "leg-raise", "at rest the forces along the shank add to zero", "nothing starts to move along it"),
    ("at_rest", "beam", "at rest the horizontal forces add to zero", "nothing starts to move sideways"),
    ("at_rest", "beam", "at rest the vertical forces add to zero", "nothing starts to move up or down"),
    ("at_rest", "dancer", "at rest the moments about the hip add to zero", "nothing starts to turn"),
    ("carry", "08-dog-on-the-plank", "swap the two sides", ""),
    ("carry", "a stay at a sloping plank", "subtract 20° from both sides", ""),
    ("carry", "24-raising-the-mast", "add θ to both sides", ""),
    ("carry", "17-armrests", "move −P_A⊥ r_A + W_F⊥ r_F to the other side", ""),
    (
        "convert",
        "rock-oblique",
        "convert",
        "the factor is one, written in two units: it changes the number and not the quantity",
    ),
    ("divide", "16-slipway-stretch", "divide by (r_I sin 42° + 0.60 r_O sin 42°)", "it is not zero"),
    ("divide", "a turning part", "divide by (4.5 cm) sin 70°", ""),
    (
        "expand",
        "sine and cosine together",
        "multiply the bracket out",
        "what stands before it multiplies every term inside",
    ),
    (
        "fold_angle",
        "25-lantern",
        "angle between the horizontal and the pull of the deltoid",
        "the angle between the horizontal and the pull of the deltoid follows from the stated ones",
    ),
    ("forces", "36-kelp-on-the-seesaw", "at rest what pushes up equals what pushes down", ""),
    (
        "forces",
        "36-kelp-on-the-seesaw",
        "at rest what pushes to the right equals what pushes to the left",
        "nothing else has a part this way",
    ),
    (
        "forces",
        "leg-raise",
        "forces across the shank, positive a quarter turn counter-clockwise from there",
        "of an oblique force only the part across the shank counts",
    ),
    (
        "forces",
        "leg-raise",
        "forces along the shank, positive away from the knee",
        "of an oblique force only the part along the shank counts",
    ),
    (
        "forces",
        "dancer",
        "horizontal forces, positive to the right",
        "of an oblique force only the horizontal part counts",
    ),
    ("forces", "a level push only", "vertical forces, positive upwards", "nothing else has a part this way"),
    (
        "gather",
        "two ropes",
        "take F_R out in front of a bracket",
        "it stands in more than one term, and is sought once",
    ),
    ("invert", "dancer", "the angle that has this value", ""),
    (
        "invert",
        "how-steep",
        "the angle that has this value",
        "another angle of the turn has it too: see the discussion",
    ),
    *(
        (
            "invert",
            name,
            "the angle that has this value",
            f"of the two angles with this {ratio} it is the one that gives both parts of the force their signs",
        )
        for name, ratio in (("a ring between mirror images", "cosine"), ("two ropes at a ring", "tangent"))
    ),
    (
        "moment",
        "03-tiller",
        "moment of the hand",
        "the force times its perpendicular distance from the pivot, with the sign of its turning",
    ),
    ("moment_letters", "36-kelp-on-the-seesaw", "each moment by its own letter, a size", ""),
    ("moments", "moments alone", EACH + "the left and the right turn counter-clockwise (−)", ""),
    (
        "moments",
        "a cosine",
        EACH + "the quadriceps turns counter-clockwise (−), the cuff clockwise (+)",
        BY_COSINE,
    ),
    (
        "moments",
        "a sine of one half",
        EACH + "the quadriceps turns counter-clockwise (+), the cuff clockwise (−)",
        BY_SINE,
    ),
    ("moments", "a tangent", EACH + "the cord turns counter-clockwise (+), the cuff clockwise (−)", ACROSS_BY_COSINE),
    ("moments", "a cord aslant", EACH + "the cord turns counter-clockwise (+), the jug clockwise (−)", ACROSS_BY_SINE),
    (
        "moments",
        "a cord in line with the elbow",
        EACH + "the biceps turns counter-clockwise (+), the jug clockwise (−); "
        "the line of the cord passes through the elbow, has no lever arm, and drops out",
        "",
    ),
    (
        "moments",
        "a pull found to be upright",
        EACH + "the jug turns clockwise (−); the angle that is sought decides which way the biceps turns, "
        "and at the one found below it is counter-clockwise",
        ACROSS_BY_SINE,
    ),
    ("multiply_out", "beam", "multiply out", "each sign stays with its term"),
    (
        "no_part",
        "a ring between mirror images",
        "F_C is not zero, or F_C sin θ would be zero too; so cos θ is zero",
        "",
    ),
    (
        "one_sine",
        "a cord aslant and a muscle",
        "write both as one sine: 2081.7 N·cm is the hypotenuse over what stands beside sine and cosine, "
        "56.496° the angle between them",
        "the sine of a sum is a sine and a cosine of each",
    ),
    (
        "pivot",
        "dancer",
        "take moments about the hip",
        "the unknown joint force acts there, has no lever arm, and drops out",
    ),
    ("put", "beam", "substitute the numbers", "each with its unit"),
    ("put_share", "two-flexors", "put 0.70 F_Bi in for F_Br", "the share is given" + ONE_LEFT),
    ("put_share", "two ropes", "put 1.1831 F_R in for F_LR", "an earlier balance gives it" + ONE_LEFT),
    (
        "ratio",
        "two ropes at a ring",
        "divide the line for F_R sin θ by the one for F_R cos θ: F_R cancels, and sine over cosine is the tangent",
        "",
    ),
    (
        "relation",
        "two-flexors",
        "the brachialis as so many times the other",
        "the ratio of the pull of the brachialis to that of the biceps is given",
    ),
    ("relation", "09-fish-crate", "distance of the hand as a share", OF_LENGTH),
    ("relation", "10-regatta-flag", "mass of the arm as a share", OF_MASS),
    ("relation", "11-top-shelf", "force of the floor as a share", OF_WEIGHT),
    ("relation", "11-top-shelf", "weight of the body from its mass", TO_SCALE),
    ("relation", "jug-level", "weight of the jug from its mass", TO_SCALE),
    ("relation", "31-goal-kick", "how far to the side the line of the band runs", GRIP),
    ("relation", "31-goal-kick", "how far up or down the line of the band runs", GRIP),
    (
        "relation",
        "31-goal-kick",
        "length of the line of pull of the band",
        "Pythagoras: the two distances are at right angles",
    ),
    (
        "resultant",
        "dancer",
        "angle of the joint force",
        "its tangent is the opposite side over the adjacent one, both without their signs",
    ),
    ("resultant", "dancer", "size of the joint force", "the two parts are at right angles: Pythagoras"),
    (
        "resultant",
        "scale-push",
        "size of the joint force",
        "it has one part only, so its size is that part without its sign",
    ),
    (
        "friction",
        "the least friction of a ladder",
        "least coefficient of friction at the foot of the ladder",
        "friction can be as large as the coefficient times the normal force, the part of the push that is square to "
        "the surface, and no larger",
    ),
    (
        "relation",
        "a ladder about to slip",
        "all the friction there is at the foot of the ladder",
        "where a body is about to slip, friction is as large as it can be, and acts against the slipping: the "
        "coefficient of friction times the normal force, the part of the push that is square to the surface",
    ),
    (
        "relation",
        "a mass over a pulley",
        "pull of the sling from what hangs on it",
        "over a smooth pulley a cable pulls as hard at one end as at the other, and at its other end it holds up a "
        "mass at rest: so it pulls with the weight of that mass",
    ),
    (
        "relation",
        "pulls by cross-sections",
        "cross-section of the brachialis beside the first one",
        "equal pull for each square centimetre: the pulls are to each other as the cross-sections, and together they "
        "are one unknown",
    ),
    (
        "relation",
        "sand spread evenly",
        "place of the sand: the middle between its two ends",
        "an evenly spread load weighs as much before its middle as behind it, so it turns as if all of it stood there",
    ),
    (
        "relation",
        "a drift that grows to one end",
        "place of the snow: two thirds of the way to its heavy end",
        "a load that grows evenly from nothing turns as if all of it stood two thirds of the way from there, nearer to "
        "its heavy end",
    ),
    (
        "relation",
        "a drift that grows to one end",
        "weight of all of the drift",
        "a load that grows evenly from nothing has on the average half the weight per length of its heavy end",
    ),
    ("round_answer", "beam", "rounded to three figures", "only at the end"),
    ("split", "two ropes", "divide each term by 0.76604", "another unknown is still open, so the terms stay apart"),
    ("stress", "a turning part", "stress in the biceps", "force over area: how hard each square centimetre pulls"),
    ("take_root", "dancer", "take the square root", "J is a size, so it is not negative"),
    (
        "tangent",
        "a tangent",
        "divide by cos θ and by what stands beside the sine: sine over cosine is the tangent",
        "the cosine cannot be zero here, or the sine term would stand alone and not balance",
    ),
    (
        "turning",
        "a turning part",
        "turning part of the jug",
        "only the part across the forearm has a moment; the line of the part along it passes through the pivot",
    ),
    (
        "unfold",
        "a cord aslant",
        "write sin(θ + 40°) with the sine and cosine of each angle",
        "the sine of a sum is the sine of the one times the cosine of the other, and the other way round",
    ),
    ("work_out", "dancer", "read off the angle", ""),
    ("work_out", "dancer", "work out the root", ""),
    ("work_out", "08-dog-on-the-plank", "work out the quotient", ""),
)


@cache
def told(name: str) -> frozenset[tuple[str, str, str]]:
    """Rule, what and why of each line of a problem."""
    path = next((each for each in (*SAMPLES, *CONTRACT) if each.stem == name), None)
    walkthrough = work(path if path is not None else EXTRA[name])
    return frozenset((each["move"], each["what"], each["why"]) for each in json.loads(walkthrough.json())["lines"])


@pytest.mark.parametrize(("move", "name", "what", "why"), SAID)
def test_a_line_says_what_was_done_and_why(move: str, name: str, what: str, why: str) -> None:
    assert (move, what, why) in told(name)


def test_the_words_of_every_move_are_looked_at() -> None:
    assert {move for move, *_ in SAID} == {path.stem for path in MOVES}


@pytest.mark.parametrize(
    ("figures", "words"),
    (
        (1, "one figure"),
        (2, "two figures"),
        (3, "three figures"),
        (4, "four figures"),
        (5, "five figures"),
        (6, "six figures"),
        (7, "7 figures"),
    ),
)
def test_the_figures_of_an_answer_are_counted_in_words(figures: int, words: str) -> None:
    course = Course(figures=figures, working_figures=9)
    line = Equation((term(Letter("F", "F")),), (term(Quantity.of("550.284617", "N")),))
    board = Board(line, "F", course=course, goal=Goal("", "F", asked=True))
    assert seen(rules.round_answer, board).figures == words


@pytest.mark.parametrize(
    ("top", "bottom", "says"),
    (
        ("N m", "m", "the metres cancel and newtons remain"),
        ("N cm", "cm", "the centimetres cancel and newtons remain"),
        ("N mm", "mm", "the millimetres cancel and newtons remain"),
        ("lbf in", "in", "the inches cancel and pounds remain"),
        ("lbf ft", "ft", "the feet cancel and pounds remain"),
        ("N m", "N", "the newtons cancel and metres remain"),
        ("lbf", "lbf", "the pounds cancel: a number without a unit remains"),
        ("kg", "kg", "the kilograms cancel: a number without a unit remains"),
        ("N cm", "N cm", "the newtons and centimetres cancel: a number without a unit remains"),
        ("kg N cm", "kg", "the kilograms cancel and newtons and centimetres remain"),
        ("N", "cm", "work out the quotient"),
    ),
)
def test_a_quotient_says_which_units_cancel_and_which_are_left(top: str, bottom: str, says: str) -> None:
    quotient = Quotient((term(Quantity.of("12", top)),), (term(Quantity.of("4", bottom)),))
    board = Board(Equation((term(Letter("F", "F")),), (term(quotient),)), "F")
    assert seen(rules.work_out, board).what == says


@pytest.mark.parametrize(
    ("factor", "says"),
    (
        (Root((term(Quantity.of("9")),)), "work out the root"),
        (Inverse("sin", (term(Quantity.of("0.3")),)), "read off the angle"),
    ),
)
def test_a_root_is_worked_out_and_an_angle_is_read_off(factor: Factor, says: str) -> None:
    board = Board(Equation((term(Letter("F", "F")),), (term(factor),)), "F")
    assert seen(rules.work_out, board).what == says


def test_nothing_over_something_leaves_no_term() -> None:
    quotient = Quotient((), (term(Quantity.of("4", "cm")),))
    board = Board(Equation((term(Letter("F", "F")),), (term(quotient),)), "F")
    assert rules.work_out.do(board, seen(rules.work_out, board)).after.right == ()
