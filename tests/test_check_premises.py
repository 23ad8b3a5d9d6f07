"""Where a line may start: every premise stands as it is, and none can be cheated."""

from __future__ import annotations

from fractions import Fraction

import pytest
from worked import replayed
from cheating import (
    Cheat,
    at,
    both,
    factors,
    flipped,
    ground,
    left,
    letter,
    one,
    only,
    problem,
    right,
    source,
    times,
    twice,
    without,
)

from explain.mechanics.body import RIGHT, UP, Bearing
from explain.check.checker import Checker, Refused
from explain.check.claim import Arm, AtRest, Balance, Between, Converted, Follows, Moment, Pythagoras, Stress, Turning
from explain.equation.terms import Equation, Group, Inverse, Letter, Power, Quantity, Quotient, Root, Term, Trig
from explain.problem.reader import read_problem
from explain.mechanics.free_body import cut_free
from explain.mechanics.truth import Truth

Q = Quantity.of
TOTAL, JX, JY = letter("total", "ΣM"), letter("reaction.right", "J_x"), letter("reaction.up", "J_y")
ALONG, ACROSS, BETA, J = (
    letter("reaction.along", "J_along"),
    letter("reaction.across", "J_across"),
    letter("*angle reaction", "beta"),
    letter("reaction", "J"),
)
ARCCOS = Group(one(Inverse("cos", one(Q("0")))))  # a right angle; its sine is a root
ELBOW, OBLIQUE, LEG, HANGING = "jug-level", "rock-oblique", "leg-raise", "two-links"
SLANTED, TILLER, LANTERN, TUBA, FLAG, SHELF = (
    "dancer",
    "03-tiller",
    "25-lantern",
    "30-brass-band",
    "10-regatta-flag",
    "11-top-shelf",
)
STRESS, TORQUE, LIFTED = "a turning part", "moments alone", "two ropes"


def bearing(degrees: int) -> Bearing:
    return Bearing(Fraction(degrees))


def over(top: Letter, bottom: Letter, sign: int = 1) -> Quotient:
    return Quotient((Term(sign, (top,)),), one(bottom))


CHEATS = (
    Cheat(ELBOW, AtRest, 1, "another sum than the one named", ground(AtRest("level"))),
    Cheat(ELBOW, AtRest, 1, "a force that is no sum", left(only(letter("biceps.force", "F_B")))),
    Cheat(ELBOW, AtRest, 1, "something on the right", right(only(TOTAL))),
    Cheat(ELBOW, AtRest, 1, "nothing on the left", left(without(0))),
    *(
        Cheat(
            ELBOW,
            AtRest,
            1,
            f"{each.text} called a sum that vanishes",
            both(left(only(each)), ground(AtRest(each.name))),
        )
        for each in (
            letter("biceps.force", "F_B"),
            letter("g", "g"),
            letter("jug.at", "d_J"),
            JX,
            J,
            letter("jug.weight", "W_J"),
            letter("*moment jug", "M_J"),
            letter("*arm jug", "d_J⊥"),
        )
    ),
    *(
        Cheat(
            ELBOW,
            AtRest,
            1,
            f"a sum {key} an axis that the class does not have",
            both(left(only(letter(key, f"ΣF_{key}"))), ground(AtRest(key))),
        )
        for key in ("along", "across")
    ),
    Cheat(
        LIFTED,
        AtRest,
        0,
        "the moment of a joint force where there is none",
        both(left(only(letter("*moment reaction", "M_joint"))), ground(AtRest("*moment reaction"))),
    ),
    Cheat(
        TORQUE,
        Balance,
        0,
        "at rest where nothing has to be",
        lambda line, claim: (Equation(line.right, ()), AtRest("total")),
    ),
    Cheat(ELBOW, Balance, 0, "a wrong sign", left(flipped(1))),
    Cheat(
        ELBOW,
        Balance,
        0,
        "a wrong sign behind a root",
        left(lambda terms: flipped(1)(times(Root(one(Q("1"))), place=1)(terms))),
    ),
    Cheat(
        ELBOW,
        Balance,
        0,
        "a wrong sign behind an angle",
        left(lambda terms: flipped(1)(times(Trig("sin", ARCCOS), place=1)(terms))),
    ),
    Cheat(ELBOW, Balance, 0, "a force left out", left(without(1))),
    Cheat(ELBOW, Balance, 0, "a force counted twice", left(twice(1))),
    Cheat(ELBOW, Balance, 0, "a term said to come from another force", left(source("jug", 1))),
    Cheat(ELBOW, Balance, 0, "a term of no force", left(source("", 1))),
    Cheat(ELBOW, Balance, 0, "a term of a force that is not there", left(source("triceps", 1))),
    Cheat(
        ELBOW,
        Balance,
        0,
        "two forces that change names",
        left(lambda terms: source("jug", 1)(source("forearm and hand", 2)(terms))),
    ),
    Cheat(ELBOW, Balance, 0, "the other sense, said", ground(Balance(None, sense=-1))),
    Cheat(
        ELBOW,
        Balance,
        0,
        "the other sense, said and written",
        both(left(lambda terms: tuple(each.flipped() for each in terms)), ground(Balance(None, sense=-1))),
    ),
    Cheat(ELBOW, Balance, 0, "a sense that is none", ground(Balance(None, sense=2))),
    Cheat(ELBOW, Balance, 0, "moments about another point", ground(Balance(None, about="biceps"))),
    Cheat(ELBOW, Balance, 0, "moments for a sum of forces", ground(Balance(UP))),
    Cheat(ELBOW, Balance, 0, "a sum where there is rest", right(only(TOTAL))),
    Cheat(ELBOW, Balance, 0, "a size without its arm", left(factors(lambda each: each[:1], 0))),
    Cheat(TORQUE, Balance, 0, "no sum where nothing rests", right(without(0))),
    Cheat(
        TORQUE,
        Balance,
        0,
        "rest, said and written, where nothing rests",
        both(right(without(0)), ground(Balance(None, sense=-1))),
    ),
    Cheat(
        TORQUE,
        Balance,
        0,
        "the sum with the sense the class does not use",
        lambda line, claim: (
            Equation(tuple(each.flipped() for each in line.left), line.right),
            Balance(None, sense=1, total="total"),
        ),
    ),
    Cheat(
        TORQUE,
        Balance,
        0,
        "the sum about another point",
        lambda line, claim: (
            Equation(
                line.left,
                tuple(
                    Term(-1, (letter("left.force", "F_L"), far, Trig("sin", Q("50", "deg"))), "left")
                    for far in (letter("left.at", "d_L"), letter("right.at", "d_R"))
                ),
            ),
            Balance(None, "right", -1, "total"),
        ),
    ),
    Cheat(TORQUE, Balance, 0, "another name for the sum", ground(Balance(None, sense=-1, total="*moment left"))),
    Cheat(TORQUE, Balance, 0, "another letter for the sum", right(only(letter("*moment left", "M_L")))),
    Cheat(
        OBLIQUE,
        Balance,
        1,
        "the sine for the cosine",
        left(factors(lambda each: (*each[:-1], Trig("sin", Q("70", "deg"))), 1)),
    ),
    Cheat(OBLIQUE, Balance, 1, "the joint force left out", left(without(0))),
    Cheat(OBLIQUE, Balance, 1, "the joint force the other way", left(flipped(0))),
    Cheat(OBLIQUE, Balance, 1, "level called upright", ground(Balance(UP))),
    Cheat(OBLIQUE, Balance, 1, "an axis that is none", ground(Balance(bearing(20)))),
    Cheat(OBLIQUE, Balance, 1, "positive to the left", ground(Balance(RIGHT, sense=-1))),
    Cheat(
        LEG,
        Balance,
        2,
        "the part across the bone, upright",
        lambda line, claim: (
            Equation(
                (
                    line.left[0],
                    Term(1, (line.left[1].factors[0], Trig("sin", Q("72", "deg"))), "quadriceps"),
                    *(Term(-1, each.factors[:1], each.source) for each in line.left[2:]),
                ),
                (),
            ),
            Balance(UP),
        ),
    ),
    Cheat(LEG, Balance, 1, "along called across", left(factors(lambda each: (ACROSS,), 0))),
    Cheat(ELBOW, Follows, 0, "a weight that is a mass", right(factors(lambda each: each[:1]))),
    Cheat(ELBOW, Follows, 0, "a weight the wrong way", right(flipped(0))),
    Cheat(
        ELBOW,
        Follows,
        0,
        "a weight the wrong way behind a root",
        right(lambda terms: flipped(0)(times(Root(one(Q("1"))))(terms))),
    ),
    Cheat(ELBOW, Follows, 0, "the weight of something else", ground(Follows("jug.weight"))),
    Cheat(ELBOW, Follows, 0, "another letter", left(only(letter("jug.weight", "W_J")))),
    Cheat(ELBOW, Follows, 0, "a letter doubled on the left", left(twice(0))),
    Cheat(ELBOW, Follows, 0, "what nothing says", ground(Follows("nobody.weight"))),
    Cheat(TUBA, Follows, 4, "a line that is one side less the other", right(flipped(1))),
    Cheat(
        TUBA,
        Follows,
        4,
        "a line without its square",
        left(lambda terms: one(*(each.base for each in terms[0].factors if isinstance(each, Power)))),
    ),
    Cheat(TUBA, Follows, 3, "a height with the wrong sign", right(flipped(1))),
    Cheat(TUBA, Follows, 3, "cosine for sine", right(factors(lambda each: (each[0], Trig("cos", Q("20", "deg"))), 1))),
    Cheat(
        OBLIQUE,
        Converted,
        0,
        "a wrong factor",
        right(only(Q("16", "cm"), Quotient(one(Q("1", "m")), one(Q("10", "cm"))))),
    ),
    Cheat(
        OBLIQUE,
        Converted,
        0,
        "a factor upside down",
        right(only(Q("16", "cm"), Quotient(one(Q("100", "m")), one(Q("1", "cm"))))),
    ),
    Cheat(
        OBLIQUE,
        Converted,
        0,
        "a factor with one unit",
        right(only(Q("16", "cm"), Quotient(one(Q("1")), one(Q("100"))))),
    ),
    Cheat(
        OBLIQUE,
        Converted,
        0,
        "another value",
        right(only(Q("17", "cm"), Quotient(one(Q("1", "m")), one(Q("100", "cm"))))),
    ),
    Cheat(OBLIQUE, Converted, 0, "another quantity", ground(Converted("rock.at"))),
    Cheat(OBLIQUE, Converted, 0, "another letter", left(only(letter("rock.at", "d_R")))),
    Cheat(OBLIQUE, Converted, 0, "a quantity without a value", ground(Converted("biceps.force"))),
    Cheat(SLANTED, Arm, 0, "the cosine", right(factors(lambda each: (each[0], Trig("cos", Q("71", "deg")))))),
    Cheat(SLANTED, Arm, 0, "the whole distance", right(factors(lambda each: each[:1]))),
    Cheat(SLANTED, Arm, 0, "the other turning", ground(Arm("hip abductors", -1))),
    Cheat(
        SLANTED,
        Arm,
        0,
        "the other turning and a negative arm",
        both(right(flipped(0)), ground(Arm("hip abductors", -1))),
    ),
    Cheat(SLANTED, Arm, 0, "another force", ground(Arm("body above the hip", 1))),
    Cheat(SLANTED, Arm, 0, "no arm", right(lambda terms: ())),
    Cheat(SLANTED, Arm, 0, "a sense that is none", ground(Arm("hip abductors", 2))),
    Cheat(
        SLANTED,
        Arm,
        0,
        "a sense that is none, with half the arm",
        both(right(times(Q("0.5"))), ground(Arm("hip abductors", 2))),
    ),
    Cheat(SLANTED, Arm, 0, "a force that is not there", ground(Arm("nobody", 1))),
    Cheat(SLANTED, Arm, 0, "a negative letter", left(flipped(0))),
    Cheat(SLANTED, Arm, 0, "two arms for one", left(twice(0))),
    Cheat(SLANTED, Arm, 0, "no letter", left(without(0))),
    Cheat(SLANTED, Arm, 0, "the size of a force for its arm", left(only(letter("hip abductors.force", "F_H")))),
    Cheat(HANGING, Arm, 1, "a segment left out on the way", right(without(0))),
    Cheat(HANGING, Arm, 1, "a segment walked backwards", right(flipped(0))),
    Cheat(
        TUBA,
        Arm,
        0,
        "a sum for a difference of sides",
        right(factors(lambda each: (Quotient(flipped(1)(each[0].top), each[0].bottom),))),
    ),  # type: ignore[union-attr]
    Cheat(
        SHELF,
        Turning,
        0,
        "the part along the bone",
        right(factors(lambda each: (each[0], Trig("sin", Q("35", "deg"))))),
    ),
    Cheat(SHELF, Turning, 0, "the whole force", right(factors(lambda each: each[:1]))),
    Cheat(SHELF, Turning, 0, "the other turning", ground(Turning("floor", -1))),
    Cheat(
        SHELF,
        Turning,
        0,
        "the other turning, with the part against its force",
        both(right(flipped(0)), ground(Turning("floor", -1))),
    ),
    Cheat(SHELF, Turning, 0, "another letter", left(only(letter("*turning calf", "P_C⊥")))),
    Cheat(SHELF, Turning, 0, "two for one", left(twice(0))),
    Cheat(SHELF, Turning, 0, "times its distance", right(times(letter("floor.at", "r_Fl")))),
    Cheat(HANGING, Arm, 1, "a turning part of a force two bones away", ground(Turning("forearm", -1))),
    Cheat(TILLER, Moment, 0, "the other sense", ground(Moment("hand", -1))),
    Cheat(TILLER, Moment, 0, "the other sense, said and written", both(right(flipped(0)), ground(Moment("hand", -1)))),
    Cheat(TILLER, Moment, 0, "no sense, and so no moment", both(right(lambda terms: ()), ground(Moment("hand", 0)))),
    Cheat(TILLER, Moment, 0, "twice the moment", both(right(times(Q("2"))), ground(Moment("hand", 2)))),
    Cheat(TILLER, Moment, 0, "the moment of another force", ground(Moment("stream", 1))),
    Cheat(TILLER, Moment, 0, "a force without an arm", right(factors(lambda each: each[:1]))),
    Cheat(TILLER, Moment, 0, "a letter with a minus", left(flipped(0))),
    Cheat(
        LANTERN,
        Between,
        0,
        "the supplement",
        right(lambda terms: (Term(1, (Q("180", "deg"),)), *(each.flipped() for each in terms))),
    ),
    Cheat(LANTERN, Between, 0, "the angle the other way", right(lambda terms: tuple(each.flipped() for each in terms))),
    *(
        Cheat(
            LANTERN,
            Between,
            0,
            f"{degrees}° to a line that the pull is not measured against",
            lambda line, claim, first=one_, second=two, size=degrees: (
                Equation(line.left, one(Q(str(size), "deg"))),
                Between("deltoid", first, second),
            ),
        )
        for degrees, one_, two in ((0, RIGHT, RIGHT), (90, RIGHT, UP), (0, UP, UP))
    ),
    Cheat(LANTERN, Between, 0, "another sum", right(flipped(1))),
    Cheat(LANTERN, Between, 0, "another angle of the same sine", right(only(Q("125", "deg")))),
    Cheat(LANTERN, Between, 0, "a whole turn more", right(lambda terms: (*terms, Term(1, (Q("360", "deg"),))))),
    Cheat(
        LANTERN,
        Between,
        0,
        "lines that are not there",
        lambda line, claim: (Equation(line.left, one(Q("10", "deg"))), Between("deltoid", bearing(10), bearing(0))),
    ),
    Cheat(
        LANTERN,
        Between,
        0,
        "the angle of another force",
        lambda line, claim: (line, Between("lantern", claim.first, claim.second)),
    ),  # type: ignore[union-attr]
    Cheat(LANTERN, Between, 0, "a negative letter", left(flipped(0))),
    Cheat(LANTERN, Between, 0, "no letter", left(without(0))),
    Cheat(OBLIQUE, Pythagoras, 0, "one side less the other", right(flipped(1))),
    Cheat(OBLIQUE, Pythagoras, 0, "one side alone", right(without(1))),
    Cheat(
        OBLIQUE,
        Pythagoras,
        0,
        "sides that are not at right angles",
        ground(Pythagoras(("reaction.right", "reaction.across"))),
    ),
    Cheat(OBLIQUE, Pythagoras, 0, "sides without squares", right(lambda terms: (*one(JX), *one(JY)))),
    Cheat(OBLIQUE, Pythagoras, 0, "a size without its square", left(only(J))),
    Cheat(OBLIQUE, Pythagoras, 1, "the tangent upside down", right(only(over(JX, JY, -1)))),
    Cheat(
        OBLIQUE,
        Pythagoras,
        1,
        "the tangent upside down with the parts the other way round",
        both(right(only(over(JX, JY, -1))), ground(Pythagoras(("reaction.up", "reaction.right")))),
    ),
    Cheat(OBLIQUE, Pythagoras, 1, "a negative tangent", right(only(over(JY, JX)))),
    Cheat(OBLIQUE, Pythagoras, 1, "the sine for the tangent", left(only(Trig("sin", BETA)))),
    Cheat("scale-push", Pythagoras, 0, "a negative size", right(flipped(0))),
    Cheat("scale-push", Pythagoras, 0, "the part that vanishes", right(only(JX))),
    Cheat("scale-push", Pythagoras, 0, "another letter", left(only(JX))),
    Cheat(
        OBLIQUE,
        Pythagoras,
        0,
        "one part for the size where there are two",
        lambda line, claim: (Equation(one(J), one(JX)), claim),
    ),
    Cheat(STRESS, Stress, 0, "area over force", right(factors(lambda each: (Quotient(each[0].bottom, each[0].top),)))),  # type: ignore[union-attr]
    Cheat(
        STRESS,
        Stress,
        0,
        "force times area",
        right(lambda terms: one(letter("biceps.force", "F_B"), letter("biceps.area", "A_B"))),
    ),
    Cheat(STRESS, Stress, 0, "another force", ground(Stress("jug"))),
    Cheat(STRESS, Stress, 0, "a negative letter", left(flipped(0))),
)
HONEST = sorted({(cheat.problem, cheat.ground, cheat.number) for cheat in CHEATS}, key=str)


@pytest.mark.parametrize(("name", "kind", "number"), HONEST, ids=lambda value: getattr(value, "__name__", str(value)))
def test_the_honest_line_stands(name: str, kind: type, number: int) -> None:
    checker, line, claim, before = at(name, kind, number)
    assert checker.certify(line, claim, before).equation == line


@pytest.mark.parametrize("cheat", CHEATS, ids=lambda cheat: f"{cheat.ground.__name__}: {cheat.what}")
def test_a_cheat_is_refused(cheat: Cheat) -> None:
    checker, line, claim, before = at(cheat.problem, cheat.ground, cheat.number)
    spoilt, other = cheat.change(line, claim)
    assert (spoilt, other) != (line, claim)
    with pytest.raises(Refused):
        checker.certify(spoilt, other, before)


def test_moments_are_counted_as_the_class_counts_them() -> None:
    assert [problem(name).body.problem.course.positive for name in (ELBOW, TORQUE)] == [
        "counter-clockwise",
        "clockwise",
    ]


def test_a_force_is_left_out_of_the_moments_only_after_its_arm_was_said_to_be_nothing() -> None:
    working = problem("a cord in line with the elbow")
    place = next(index for index, move in enumerate(working.moves) if isinstance(move.line.claim, Balance))
    line, claim = working.moves[place].line.equation, working.moves[place].line.claim
    checker, _ = replayed(working, place)
    assert checker.certify(line, claim).equation == line
    without_cord = Equation(tuple(each for each in line.left if each.source != "cord"), ())
    assert checker.certify(without_cord, claim).equation == without_cord != line
    for early in (line, without_cord):
        with pytest.raises(Refused):
            Checker(working.truth).certify(early, claim)


@pytest.mark.parametrize(("second", "degrees"), ((UP, "0"), (RIGHT, "90")))
def test_the_least_and_the_greatest_acute_angle_stand(second: Bearing, degrees: str) -> None:
    body = problem(LANTERN).body
    line = Equation(one(body.letters("*fold lantern")), one(Q(degrees, "deg")))
    assert Checker(problem(LANTERN).truth).certify(line, Between("lantern", bearing(270), second)).equation == line


UPWARD = {
    "title": "Up is positive",
    "course": {"positive": "up"},
    "pivot": {"name": "hinge"},
    "segment": [{"name": "board", "direction": "left"}],
    "load": [{"name": "jar", "weight": "10 N", "at": "30 cm"}],
    "force": [{"name": "rope", "at": "20 cm", "direction": "up", "force": "?"}],
}


@pytest.mark.parametrize(("direction", "sense"), (("left", -1), ("right", 1)))
def test_where_up_is_positive_the_side_of_the_forces_tells_the_sense(direction: str, sense: int) -> None:
    """To the left of the hinge an upward pull turns clockwise."""
    body = cut_free(read_problem({**UPWARD, "segment": [{"name": "board", "direction": direction}]}))
    letters = body.letters
    line = Equation(
        (
            Term(1, (letters("rope.force"), letters("rope.at")), "rope"),
            Term(-1, (letters("jar.weight"), letters("jar.at")), "jar"),
        ),
        (),
    )
    assert Checker(Truth(body)).certify(line, Balance(None, sense=sense)).equation == line
    with pytest.raises(Refused):
        Checker(Truth(body)).certify(
            Equation(tuple(each.flipped() for each in line.left), ()), Balance(None, sense=-sense)
        )


def test_no_arm_is_taken_about_a_force_whose_arm_is_given() -> None:
    """Its place is for the drawing; where its line runs, nobody has told."""
    point = {"point": ["2 cm", "2 cm"], "direction": "up"}
    body = cut_free(
        read_problem(
            {
                "title": "A cord",
                "pivot": {"name": "elbow"},
                "load": [{"name": "jug", "mass": "1 kg", "point": ["12 cm", "2 cm"]}],
                "force": [
                    {"name": "cord", "force": "5 N", "moment_arm": "2 cm", "turns": "clockwise", **point},
                    {"name": "wire", "force": "5 N", **point},
                ],
                "muscle": [{"name": "biceps", "force": "?", **point}],
            }
        )
    )
    checker = Checker(Truth(body))
    for about, stands in (("wire", True), ("cord", False)):
        arm, apart = body.letters(f"*arm jug *about {about}"), (body.letters("jug.x"), body.letters(f"{about}.x"))
        line = Equation(one(arm), (Term(1, (apart[0],)), Term(-1, (apart[1],))))
        if stands:
            assert checker.certify(line, Arm("jug", -1, about))
        else:
            with pytest.raises(Refused):
                checker.certify(line, Arm("jug", -1, about))


def test_where_up_is_positive_and_no_upright_force_turns_counter_clockwise_is_positive() -> None:
    """Two level forces on an upright board: the wind turns it clockwise, the rope counter-clockwise."""
    level = [
        {"name": "rope", "at": "20 cm", "direction": "left", "force": "?"},
        {"name": "wind", "at": "30 cm", "direction": "right", "force": "10 N"},
    ]
    body = cut_free(
        read_problem({**UPWARD, "segment": [{"name": "board", "direction": "up"}], "load": [], "force": level})
    )
    checker = Checker(Truth(body))
    terms = tuple(
        Term(sign, (body.letters(f"{name}.force"), body.letters(f"{name}.at")), name)
        for name, sign in (("rope", 1), ("wind", -1))
    )
    assert checker.certify(Equation(terms, ()), Balance(None)).equation.left == terms
    with pytest.raises(Refused):
        checker.certify(Equation(tuple(each.flipped() for each in terms), ()), Balance(None, sense=-1))


@pytest.mark.parametrize(
    ("course", "signs", "stands"),
    (
        ({}, {"rope": 1, "jar": 1}, True),
        ({}, {"rope": -1, "jar": -1}, False),
        ({}, {"rope": 1, "jar": -1}, False),
        ({"balance": "two sides"}, {"rope": 1, "jar": -1}, True),
        ({"balance": "two sides"}, {"rope": 1, "jar": 1}, False),
        ({"balance": "two sides"}, {"rope": -1, "jar": 1}, False),
    ),
    ids=str,
)
def test_the_letter_of_a_moment_has_its_sign_in_it_or_is_a_size_as_the_class_has_it(
    course: dict[str, str], signs: dict[str, int], stands: bool
) -> None:
    """To the right of the hinge the rope pulls counter-clockwise, which is positive here, and the jar turns back."""
    right = {**UPWARD, "course": {"first": "moments", **course}, "segment": [{"name": "board"}]}
    body = cut_free(read_problem(right))
    line = Equation(
        tuple(Term(sign, (body.letters(f"*moment {name}"),), name) for name, sign in signs.items()),
        (),
    )
    if stands:
        assert Checker(Truth(body)).certify(line, Balance(None)).equation == line
    else:
        with pytest.raises(Refused):
            Checker(Truth(body)).certify(line, Balance(None))


def test_the_letter_of_a_moment_stands_in_no_balance_about_another_point() -> None:
    """The wire grips straight above the hinge, so the rope and the jar turn about both points with the same moments."""
    stated = {
        **UPWARD,
        "course": {"first": "moments"},
        "pivot": {"name": "hinge", "reaction": False},
        "segment": [{"name": "board"}],
        "force": [*UPWARD["force"], {"name": "wire", "point": ["0 cm", "9 cm"], "direction": "up", "force": "?"}],
    }
    body = cut_free(read_problem(stated))
    line = Equation(tuple(Term(1, (body.letters(f"*moment {name}"),), name) for name in ("rope", "jar")), ())
    assert Checker(Truth(body)).certify(line, Balance(None)).equation == line
    with pytest.raises(Refused, match="about the pivot"):
        Checker(Truth(body)).certify(line, Balance(None, about="wire"))
