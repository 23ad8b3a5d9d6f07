"""What follows from a line: every step stands as it is, and none can be cheated."""

from __future__ import annotations

import random
from dataclasses import replace

import numpy as np
import pytest
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
    times,
    twice,
    value,
    without,
)
from worked import HERE, replayed

from explain import work
from explain.check.angle_branch import is_angle
from explain.check.checker import Certified, Checker, Refused
from explain.check.claim import (
    Arm,
    Claim,
    Converted,
    Divided,
    Follows,
    Inverted,
    Moment,
    Put,
    Rooted,
    Rounded,
    Scaled,
    Tangent,
)
from explain.check.comparison import alike, gap, only_worked_out
from explain.check.trials import Trials
from explain.equation.terms import (
    Equation,
    Factor,
    Group,
    Inverse,
    Letter,
    Power,
    Quantity,
    Quotient,
    Root,
    Shown,
    Term,
    Terms,
    Trig,
    leaves,
    letters,
    lone,
    term,
)
from explain.exact.prime_field import Field, Redraw
from explain.exact.interval import Sizes, fraction
from explain.solve.engine import line_text
from explain.equation.substitution import put
from explain.equation.terms import settled

Q = Quantity.of
F, W, DB, DJ = (
    letter("biceps.force", "F_B"),
    letter("jug.weight", "W_J"),
    letter("biceps.at", "d_B"),
    letter("jug.at", "d_J"),
)
JX, J, THETA = letter("reaction.right", "J_x"), letter("reaction", "J"), letter("*angle shank", "theta")
THETA_B = letter("*angle biceps", "theta")
ELBOW, OBLIQUE, STEEP, MAST, HALF, EVEN, DANCER, TAKEN = (
    "jug-level",
    "rock-oblique",
    "how-steep",
    "sine and cosine together",
    "a sine of one half",
    "three and four",
    "dancer",
    "an angle taken away",
)


def by(*new: object, sign: int = 1) -> Term:
    return Term(sign, new)  # type: ignore[arg-type]


def hidden(letter_is: str = "17") -> Terms:
    """Nothing where the root of one is −1, and nothing where the letter is as large as this."""
    return one(Group((term(F), Term(-1, (Q(letter_is, "N"),)))), Group((term(Q("1")), term(Root(one(Q("1")))))))


CHEATS = (
    Cheat(ELBOW, Scaled, 4, "a term carried across with its sign", both(right(flipped(0)), ground(Scaled()))),
    Cheat(ELBOW, Scaled, 4, "a term left behind", right(without(0))),
    Cheat(ELBOW, Scaled, 4, "a factor on one side", right(times(Q("2")))),
    Cheat(
        ELBOW,
        Scaled,
        4,
        "a factor on one side, said to be on both",
        both(right(times(Q("2"))), ground(Scaled(by(Q("2"))))),
    ),
    Cheat(ELBOW, Scaled, 4, "times nothing", lambda line, claim: (Equation((), ()), Scaled(by(Q("0"))))),
    Cheat(
        ELBOW,
        Scaled,
        4,
        "times a difference that vanishes",
        lambda line, claim: (Equation((), ()), Scaled(by(Group((term(Q("1")), Term(-1, (Q("1"),))))))),
    ),
    Cheat(ELBOW, Scaled, 4, "times an unknown", both(both(left(times(F)), right(times(F))), ground(Scaled(by(F))))),
    Cheat(
        ELBOW,
        Scaled,
        4,
        "times a letter that is not there",
        both(both(left(times(THETA)), right(times(THETA))), ground(Scaled(by(THETA)))),
    ),
    Cheat(ELBOW, Scaled, 4, "over a unit", both(right(only(Q("1206.63", "N"))), left(only(F, Q("4.0"))))),
    Cheat(
        ELBOW, Scaled, 5, "the divisor on top", right(factors(lambda each: (Quotient(each[0].bottom, each[0].top),)))
    ),  # type: ignore[union-attr]
    Cheat(
        ELBOW, Scaled, 5, "divided by something else", ground(Scaled(by(Quotient(one(Q("1")), one(Q("5.0", "cm"))))))
    ),
    Cheat(ELBOW, Scaled, 5, "divided, without saying by what", ground(Scaled())),
    Cheat(ELBOW, Scaled, 6, "a number one off in its last place", right(value("301.67", "N"))),
    Cheat(ELBOW, Scaled, 6, "a number cut, not rounded", right(value("301.65", "N"))),
    Cheat(ELBOW, Scaled, 6, "a number in another unit", right(value("301.66", "lbf"))),
    Cheat(ELBOW, Scaled, 6, "a number in a unit of another kind", right(value("301.66", "kg"))),
    Cheat(ELBOW, Scaled, 6, "a number without its unit", right(value("301.66"))),
    Cheat(ELBOW, Scaled, 6, "a number with its sign lost", right(flipped(0))),
    Cheat(ELBOW, Scaled, 6, "a rounded number taken for the number", right(lambda terms: one(Q("301.66", "N")))),
    Cheat(
        ELBOW,
        Scaled,
        6,
        "a number that stands for something else",
        right(lambda terms: one(Shown(Q("301.66", "N"), term(Q("301.66", "N"))))),
    ),
    Cheat(
        ELBOW,
        Scaled,
        6,
        "a number that stands for itself, unknown",
        right(lambda terms: one(Shown(Q("301.66", "N"), term(F)))),
    ),
    Cheat(ELBOW, Scaled, 6, "twice the letter", left(twice(0))),
    Cheat(ELBOW, Scaled, 6, "another letter", left(only(letter("*moment jug", "M_J")))),
    Cheat(ELBOW, Put, 2, "a value that is not there", right(only(Q("7", "N cm")))),
    Cheat(ELBOW, Put, 2, "another value", left(factors(lambda each: (each[0], Q("34", "cm")), 2))),
    Cheat(ELBOW, Put, 2, "the value of another letter", left(factors(lambda each: (each[0], Q("4.0", "cm")), 2))),
    Cheat(ELBOW, Put, 2, "the number with another unit", left(factors(lambda each: (each[0], Q("33", "m")), 2))),
    Cheat(ELBOW, Put, 2, "the number without its unit", left(factors(lambda each: (each[0], Q("33")), 2))),
    Cheat(
        ELBOW,
        Put,
        2,
        "the same length in a unit nobody wrote",
        left(factors(lambda each: (each[0], Q("0.33", "m")), 2)),
    ),
    Cheat(ELBOW, Put, 2, "a value for the unknown", left(factors(lambda each: (Q("301.66", "N"), each[1]), 0))),
    Cheat(
        ELBOW,
        Put,
        2,
        "a value for the unknown, said",
        lambda line, claim: (
            Equation(put(line.left, {F.name: one(Q("301.66", "N"))}), ()),
            Put((*claim.names, F.name)),
        ),
    ),  # type: ignore[union-attr]
    Cheat(ELBOW, Put, 2, "a letter put and still there", left(factors(lambda each: (each[0], DJ), 2))),
    Cheat(ELBOW, Put, 2, "values, and nothing said of them", ground(Put(()))),
    Cheat(ELBOW, Put, 2, "one value not said", lambda line, claim: (line, Put(claim.names[:-1]))),  # type: ignore[union-attr]
    Cheat(ELBOW, Put, 2, "a sign lost on the way", left(flipped(1))),
    Cheat(ELBOW, Put, 2, "on the ground of a mere rewriting", ground(Scaled())),
    Cheat(ELBOW, Rounded, 0, "one off in the last place", right(value("303", "N"))),
    Cheat(ELBOW, Rounded, 0, "one off the other way", right(value("301", "N"))),
    Cheat(ELBOW, Rounded, 0, "cut, not rounded", right(value("301.6", "N"))),
    Cheat(ELBOW, Rounded, 0, "in another unit", right(value("302", "lbf"))),
    Cheat(ELBOW, Rounded, 0, "another sign", right(flipped(0))),
    Cheat(ELBOW, Rounded, 0, "of another letter", left(only(W))),
    Cheat(ELBOW, Rounded, 0, "of a letter not found", left(only(JX))),
    Cheat(ELBOW, Rounded, 0, "as if it were exact", lambda line, claim: (replace(line, rounded=False), claim)),
    Cheat(
        ELBOW,
        Rounded,
        0,
        "of the rounded number",
        right(lambda terms: one(Shown(Q("302", "N"), term(Q("301.66", "N"))))),
    ),
    Cheat(
        STEEP,
        Rounded,
        0,
        "an angle a whole turn too large",
        right(lambda terms: one(Shown(Q("416.3", "deg"), term(Group((*terms, term(Q("360", "deg")))))))),
    ),
    Cheat(STEEP, Rounded, 0, "an angle one off", right(value("56.4", "deg"))),
    Cheat(OBLIQUE, Rooted, 0, "a negative size", right(flipped(0))),
    Cheat(OBLIQUE, Rooted, 0, "the root of the letter left out", left(only(Power(J, 2)))),
    Cheat(OBLIQUE, Rooted, 0, "the root of the number left out", right(lambda terms: terms[0].factors[0].terms)),  # type: ignore[union-attr]
    Cheat(OBLIQUE, Rooted, 0, "the root of another number", right(only(Root(one(Q("230401", "N^2")))))),
    Cheat(OBLIQUE, Rooted, 0, "another letter", left(only(JX))),
    Cheat(ELBOW, Scaled, 5, "a difference hidden behind both roots of one", left(lambda terms: (*terms, *hidden()))),
    *(
        Cheat(
            ELBOW,
            Scaled,
            5,
            f"{size} N hidden behind both roots of one",
            left(
                lambda terms, few=size: (  # type: ignore[misc]
                    *terms,
                    term(Q(few, "N"), Group((term(Q("1")), term(Root(one(Q("1"))))))),
                )
            ),
        )
        for size in ("0.0001", "1E-12", "1E-40")
    ),
    Cheat(EVEN, Scaled, 2, "the other root", right(flipped(0))),
    Cheat(EVEN, Scaled, 2, "half the root", right(only(Q("2.5", "N")))),
    Cheat(STEEP, Inverted, 0, "another function", right(only(Inverse("cos", one(Q("0.83214")))))),
    Cheat(
        STEEP,
        Inverted,
        0,
        "the other angle, not said",
        lambda line, claim: (
            Equation(line.left, (term(Q("180", "deg")), *(each.flipped() for each in line.right))),
            Inverted(),
        ),
    ),
    Cheat(
        STEEP,
        Inverted,
        0,
        "a whole turn more, not said",
        lambda line, claim: (Equation(line.left, (term(Q("360", "deg")), *line.right)), Inverted()),
    ),
    Cheat(
        STEEP,
        Inverted,
        0,
        "half a turn more",
        lambda line, claim: (Equation(line.left, (term(Q("180", "deg")), *line.right)), Inverted()),
    ),
    Cheat(STEEP, Inverted, 0, "a negative angle", right(flipped(0))),
    Cheat(STEEP, Inverted, 0, "a negative letter", left(flipped(0))),
    Cheat(STEEP, Inverted, 0, "twice the letter", left(twice(0))),
    Cheat(STEEP, Inverted, 0, "another letter", left(only(letter("*angle reaction", "beta")))),
    Cheat(STEEP, Inverted, 0, "the sine still there", left(only(Trig("sin", THETA)))),
    Cheat(MAST, Inverted, 0, "a whole turn too little", right(flipped(0))),
    Cheat(MAST, Inverted, 0, "the shift left out", left(without(1))),
    Cheat(
        MAST, Inverted, 0, "the principal angle, where the balance needs the other one", right(lambda terms: terms[-1:])
    ),
    Cheat(STEEP, Scaled, 7, "an angle a whole turn too large", right(lambda terms: (*terms, term(Q("360", "deg"))))),
    Cheat(STEEP, Scaled, 7, "an angle doubled", both(right(twice(0)), ground(Scaled(by(Q("2")))))),
    Cheat(STEEP, Scaled, 7, "a number for an angle", right(value("56.319"))),
    Cheat(
        TAKEN,
        Scaled,
        5,
        "the other way round, and the sides as they were",
        lambda line, claim: (
            Equation((term(Q("60", "deg")), term(THETA_B, sign=-1)), one(Inverse("sin", one(Q("0.028846"))))),
            claim,
        ),
    ),
    Cheat(TAKEN, Scaled, 5, "the other way round, and not said", ground(Scaled())),
    Cheat(TAKEN, Scaled, 5, "an angle taken twice", ground(Scaled(by(Q("1"), sign=-1)))),
    Cheat(HALF, Scaled, 4, "the other angle of one half", right(only(Q("150", "deg")))),
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


@pytest.mark.parametrize(
    "what",
    (
        "a wrong multiplier",
        "the tangent upside down",
        "the wrong sign",
        "a multiplier of nothing",
        "another ratio",
        "an unknown",
    ),
)
def test_a_tangent_cannot_be_cheated(what: str) -> None:
    checker, line, claim, before = at("a tangent", Tangent)
    assert isinstance(claim, Tangent)
    ratio = line.right[0].factors[0]
    assert isinstance(ratio, Quotient)
    spoilt, other = {
        "a wrong multiplier": (line, Tangent(Term(claim.by.sign, ratio.top[0].factors))),
        "the tangent upside down": (
            Equation(line.left, (Term(line.right[0].sign, (Quotient(ratio.bottom, ratio.top),)),)),
            claim,
        ),
        "the wrong sign": (Equation(line.left, (line.right[0].flipped(),)), claim),
        "a multiplier of nothing": (line, Tangent(by(Q("0")))),
        "another ratio": (Equation(one(Trig("sin", THETA)), line.right), claim),
        "an unknown": (line, Tangent(by(letter("nobody.force", "F_N")))),
    }[what]
    with pytest.raises(Refused):
        checker.certify(spoilt, other, before)


def test_a_tangent_that_is_one_stands() -> None:
    checker, line, claim, before = at("a tangent", Tangent)
    assert checker.certify(line, claim, before).equation == line


def test_a_root_is_taken_only_of_what_is_never_negative() -> None:
    """From J_x² = 9 N² follows J_x = 3 N or −3 N; only a length or the size of a force may choose."""
    checker, line, claim, before = at(OBLIQUE, Scaled, 12)
    found = checker.certify(line, claim, before)
    square = checker.certify(
        Equation(one(Power(JX, 2)), tuple(replace(each, factors=(*each.factors, JX)) for each in line.right)),
        Scaled(by(JX)),
        found,
    )
    with pytest.raises(Refused):
        checker.certify(Equation(one(JX), one(Root(square.equation.right))), Rooted(), square)


# ---------------------------------------------------------------------- roots, angles and rounded values that an
# attacker made use of
@pytest.mark.parametrize("square", ("a part that may be negative", "a product"))
def test_the_root_of_a_square_is_not_the_number_itself(square: str) -> None:
    """√(J_y²) is J_y only where J_y is not negative, and nothing says so."""
    checker, line, _, before = at(OBLIQUE, Scaled, 12)
    assert before is not None
    inner, outer = (
        (one(Power(JX, 2)), one(JX))
        if square == "a part that may be negative"
        else (one(Power(JX, 2), Power(J, 2)), one(JX, J))
    )
    true = Equation(before.equation.left, before.equation.right)
    spoilt = Equation((*true.left, term(Root(inner))), (*true.right, *outer))
    with pytest.raises(Refused):
        checker.certify(spoilt, Scaled(), before)


def test_the_root_of_a_square_of_what_is_never_negative_may_be_added_on_both_sides() -> None:
    checker, line, _, before = at(OBLIQUE, Scaled, 12)
    assert before is not None
    added = (
        (*before.equation.left, term(Root(one(Power(JX, 2))))),
        (*before.equation.right, term(Root(one(Power(JX, 2))))),
    )
    assert checker.certify(Equation(*added), Scaled(), before).equation == Equation(*added)


@pytest.mark.parametrize(
    "right", (one(Q("360", "deg")), one(Q("0", "deg")), (term(Q("3", "N")), term(Q("360", "deg"))))
)
def test_degrees_do_not_stand_for_a_size(right: Terms) -> None:
    """A level part of nothing is no angle: neither 0° nor a whole turn."""
    working = problem("a sine of minus one")
    checker, lines = replayed(working, len(working.moves))
    nothing = next(each for each in lines if lone(each.equation.left) == JX and not each.equation.right)
    with pytest.raises(Refused):
        checker.certify(Equation(one(JX), right), Scaled(), nothing)


@pytest.mark.parametrize("function", ["sin", "cos"])
def test_an_angle_beyond_the_first_quarter_is_not_its_own_sine_or_cosine_turned_back(function: str) -> None:
    """sin⁻¹(sin 270°) is −90° and cos⁻¹(cos 270°) 90°."""
    working = problem("a sine of minus one")
    checker, lines = replayed(working, len(working.moves))
    found = next(
        each
        for each in lines
        if is_angle(letter := lone(each.equation.left)) and isinstance(letter, Letter) and not each.equation.rounded
    )
    turned = Inverse(function, one(Trig(function, lone(found.equation.left))))
    with pytest.raises(Refused):
        checker.certify(Equation(one(turned), found.equation.right), Scaled(), found)


def test_an_angle_may_be_added_on_both_sides_of_its_line() -> None:
    """What is tried in every quarter also stands in every quarter where it is so."""
    working = problem("a sine of minus one")
    checker, lines = replayed(working, len(working.moves))
    found = next(
        each for each in lines if isinstance(lone(each.equation.left), Letter) and is_angle(lone(each.equation.left))
    )
    angle = term(lone(found.equation.left))
    line = Equation((*found.equation.left, angle), (*found.equation.right, angle))
    assert line == checker.certify(line, Scaled(), found).equation


@pytest.mark.parametrize(("outer", "inner"), [("", ""), ("m", "m"), ("N", ""), ("", "N"), ("kg", "m")])
def test_a_unit_is_not_lost_in_a_number_within_a_number(outer: str, inner: str) -> None:
    checker, line, claim, before = at(ELBOW, Scaled, 6)
    shown = lone(line.right)
    assert isinstance(shown, Shown)
    within = Shown(Quantity(shown.value.number, Q("1", inner).unit), shown.of)
    with pytest.raises(Refused):
        checker.certify(
            Equation(line.left, one(Shown(Quantity(shown.value.number, Q("1", outer).unit), term(within)))),
            claim,
            before,
        )


def test_a_number_within_a_number_is_rightly_rounded_too() -> None:
    checker, line, claim, before = at(ELBOW, Scaled, 6)
    shown = lone(line.right)
    assert isinstance(shown, Shown)
    within = [Shown(Q(number, "N"), shown.of) for number in ("302", "301.7", "30.166")]
    right, *_ = made = [Equation(line.left, one(Shown(shown.value, term(each)))) for each in within]
    assert [right, made[1]] == [checker.certify(each, claim, before).equation for each in made[:2]]
    with pytest.raises(Refused, match="not what it stands for"):
        checker.certify(made[2], claim, before)


def test_a_letter_that_is_no_angle_has_no_place_in_a_line_of_angles() -> None:
    checker, line, claim, before = at(TAKEN, Scaled, 5)
    with pytest.raises(Refused, match="no angle"):
        checker.certify(Equation((*line.left, term(F)), (*line.right, term(F))), claim, before)


FOUR = (Root(one(Q("4"))), Q("0.5"))  # one, and in the field minus one just as well


def opposite(terms: Terms, *more: Factor) -> Terms:
    """A side with its sign changed behind a root."""
    return tuple(Term(-each.sign, (*each.factors, *FOUR, *more), each.source) for each in terms)


def test_the_sign_of_a_tangent_does_not_hide_behind_a_root() -> None:
    checker, line, claim, before = at("a tangent", Tangent)
    same_size = tuple(Term(each.sign, (*each.factors, *FOUR)) for each in line.right)
    assert checker.certify(Equation(line.left, same_size), claim, before).equation.right == same_size
    with pytest.raises(Refused):
        checker.certify(Equation(line.left, opposite(line.right)), claim, before)


def test_a_sign_does_not_hide_behind_a_root_in_a_rounded_number() -> None:
    """Two is written, and stands for the root of four, or in a number within it."""
    two = Shown(Q("2"), term(Root(one(Q("4")))))
    for hidden_in in (two, Shown(Q("2"), term(two))):
        checker, line, _, before = at(ELBOW, Scaled, 6)
        assert before is not None
        spoilt = tuple(
            Term(-each.sign, (*each.factors, hidden_in, Q("0.5")), each.source) for each in before.equation.right
        )
        with pytest.raises(Refused):
            checker.certify(Equation(before.equation.left, spoilt), Scaled(), before)


@pytest.mark.parametrize("tiny", ("1E-20", "1E-30", "1E-60", "1E-100"))
def test_a_sign_does_not_hide_behind_a_root_where_everything_is_small(tiny: str) -> None:
    checker, line, _, before = at(ELBOW, Scaled, 6)
    assert before is not None
    small = tuple(replace(each, factors=(*each.factors, Q(tiny))) for each in before.equation.left)
    with pytest.raises(Refused):
        checker.certify(Equation(small, opposite(before.equation.right, Q(tiny))), Scaled(by(Q(tiny))), before)


def test_a_line_of_small_numbers_with_a_root_stands() -> None:
    checker, line, claim, before = at(OBLIQUE, Scaled, 12)
    assert before is not None
    small = [
        tuple(replace(each, factors=(*each.factors, Q("1E-12"))) for each in side)
        for side in (before.equation.left, before.equation.right)
    ]
    assert checker.certify(Equation(*small), Scaled(by(Q("1E-12"))), before).equation == Equation(*small)


def test_values_that_were_rounded_on_the_way_are_not_put_in_where_every_other_value_is_known() -> None:
    """As shown, 314.9 N squared is no longer the sum of the squares of the parts as they were found."""
    working = problem("10-regatta-flag")
    checker, lines = replayed(working, len(working.moves))
    line = next(each for each in lines if isinstance(lone(each.equation.left), Power))
    values = {name: checker.ledger[name] for name in ("reaction", "reaction.up")}
    with pytest.raises(Refused):
        checker.certify(
            Equation(put(line.equation.left, values), put(line.equation.right, values)), Put(tuple(values)), line
        )


@pytest.mark.parametrize("count", (3, 12))
def test_a_working_with_many_roots_is_certified(count: int) -> None:
    """Each cord brings the root of a sum of squares. The pull comes from numpy's own hypot and from nothing of the
    program.
    """
    cords = [(5 + 3 * place, (7 + place, 20 + place), 10 + place) for place in range(count)]
    stated = {
        "title": "Many cords",
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm", "length": "60 cm"}],
        "load": [{"name": "jug", "weight": "90 N", "at": "30 cm"}],
        "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        "force": [
            {
                "name": f"cord {chr(65 + place)}",
                "at": f"{at_} cm",
                "toward": [f"{x} cm", f"{y} cm"],
                "force": f"{size} N",
            }
            for place, (at_, (x, y), size) in enumerate(cords)
        ],
    }
    turning = sum(size * at_ * y / np.hypot(x - at_, y) for at_, (x, y), size in cords)
    assert work(stated).answers["biceps"].value == pytest.approx((90 * 30 - turning) / 4, rel=1e-9)


@pytest.mark.parametrize("what", ("another number", "the number in another unit", "a number with its sign lost"))
def test_a_number_taken_as_a_letter_is_still_that_number(what: str) -> None:
    """Where no prime has every root, numbers that stand on both sides are taken as letters; the lines must agree all
    the same.
    """
    checker, lines = replayed(problem("25-lantern"), len(problem("25-lantern").moves))
    before = next(
        each
        for each in lines
        if len(each.equation.left) > 1 and any(isinstance(leaf, Shown) for leaf in leaves(each.equation.left))
    )
    first, *rest = before.equation.left
    spoilt = {
        "another number": (replace(first, factors=(*first.factors, Q("1.0001"))), *rest),
        "the number in another unit": (replace(first, factors=(*first.factors, Q("1", "m"))), *rest),
        "a number with its sign lost": (first.flipped(), *rest),
    }[what]
    checker.field = Numberless()
    with pytest.raises(Refused):
        checker.certify(Equation(spoilt, before.equation.right), Scaled(), before)
    checker.field = Numberless()
    assert checker.certify(Equation(before.equation.left, before.equation.right), Scaled(), before)


def test_an_exact_number_does_not_depend_on_which_roots_a_prime_has() -> None:
    """110.39 cm² stands for 110.3884 cm²; with 1.3716 cm² that is just 111.76 cm², which a letter would not show."""
    working = work(HERE / "cases" / "engine" / "exact-after-rounding.toml").outcome.working
    place = next(place for place, move in enumerate(working.moves) if "= 111.76 cm² /" in repr(move.line))
    checker, lines = replayed(working, place)
    checker.field = Numberless()
    line = working.moves[place].line
    assert checker.certify(line.equation, line.claim, lines[-1]).equation == line.equation


class Numberless(Field):
    """A field that has no root at first, so that numbers are taken as letters."""

    def root(self, square: int) -> int:
        raise Redraw("no root here")


def test_values_that_were_rounded_on_the_way_are_not_put_back_where_they_came_from() -> None:
    """As shown, the pull times its arm is no longer just the moment that it came from."""
    working = problem("as shown, in inches")
    checker, lines = replayed(working, len(working.moves))
    stands = {True: 0, False: 0}
    for line in lines:
        names = tuple(sorted(letters(line.equation.left) | letters(line.equation.right)))
        if line.equation.rounded or not all(name in checker.ledger for name in names) or not names:
            continue
        values = {name: checker.ledger[name] for name in names}
        carried = Equation(settled(line.equation.left), settled(line.equation.right))
        bare = Equation(put(carried.left, values), put(carried.right, values))
        apart = fraction(gap(bare, checker.sizes))
        try:
            checker.certify(bare, Put(names), line)
            assert apart == 0
            stands[True] += 1
        except Refused:
            stands[False] += 1
    assert stands[True] > 0 and stands[False] > 0


@pytest.mark.parametrize(
    ("name", "claim", "key"),
    (
        ("22-crate-at-the-mark", Arm("erector spinae", 1), "*arm erector spinae"),
        ("a turning part", Moment("spring", 1), "*moment spring"),
        ("jug-level", Moment("jug", 1), "*moment jug"),
        ("jug-level", Follows("nobody.force"), "nobody.force"),
    ),
)
def test_a_refused_line_makes_no_letter(name: str, claim: Claim, key: str) -> None:
    working = problem(name)
    checker, _ = replayed(working, 1)
    known = dict(working.body.letters.known)
    with pytest.raises(Refused):
        checker.certify(Equation(one(letter(key, "X_nobody")), ()), claim)
    assert working.body.letters.known == known


def test_one_text_does_not_stand_for_two_quantities() -> None:
    """Not even where the body's own table of letters says so."""
    checker, line, claim, before = at(ELBOW, Scaled, 4)
    known = checker.truth.body.letters.known
    kept = known["g"]
    known["g"] = letter("g", "F_B")
    try:
        with pytest.raises(Refused):
            checker.certify(Equation((*line.left, term(known["g"])), (*line.right, term(known["g"]))), claim, before)
    finally:
        known["g"] = kept


# ---------------------------------------------------------------------- one line over another
RING, MIRROR, STAY = "two ropes at a ring", "a ring between mirror images", "a stay at a sloping plank"


def divided(name: str) -> tuple[Checker, Equation, Divided, Certified]:
    """A line over another one in a problem, its ground, the line that was divided, and a checker that knows both."""
    checker, line, claim, before = at(name, Divided)
    assert isinstance(claim, Divided) and before is not None
    return checker, line, claim, before


@pytest.mark.parametrize("name", (RING, MIRROR, STAY))
def test_one_line_over_another_stands(name: str) -> None:
    checker, line, claim, before = divided(name)
    assert checker.certify(line, claim, before).equation == line


@pytest.mark.parametrize(
    "what",
    (
        "upside down",
        "the wrong sign",
        "another function",
        "the force still there",
        "another number",
        "the right side alone",
        "the left side alone",
        "a sign behind a root",
        "nothing",
        "an unknown on the right",
        "both sides swapped",
    ),
)
def test_the_line_of_two_that_are_divided_cannot_be_cheated(what: str) -> None:
    checker, line, claim, before = divided(RING)
    (ratio,) = line.right[0].factors
    assert isinstance(ratio, Quotient)
    rope = letter("right rope.force", "F_R")
    spoilt = {
        "upside down": Equation(line.left, one(Quotient(ratio.bottom, ratio.top))),
        "the wrong sign": Equation(line.left, (line.right[0].flipped(),)),
        "another function": Equation(one(Trig("sin", letter("*angle right rope", "theta"))), line.right),
        "the force still there": Equation(one(rope, *line.left[0].factors), line.right),
        "another number": Equation(line.left, one(Q("1.2351"))),
        "the right side alone": Equation(before.equation.left, line.right),
        "the left side alone": Equation(line.left, before.equation.right),
        "a sign behind a root": Equation(line.left, opposite(line.right)),
        "nothing": Equation(line.left, ()),
        "an unknown on the right": Equation((*line.left, term(rope)), (*line.right, term(rope))),
        "both sides swapped": Equation(line.right, line.left),
    }[what]
    with pytest.raises(Refused):
        checker.certify(spoilt, claim, before)


@pytest.mark.parametrize(
    "what",
    (
        "itself",
        "a line that was never certified",
        "a line of another checker",
        "its first form",
        "a line that is nothing",
    ),
)
def test_a_line_is_not_divided_by_just_any_other(what: str) -> None:
    checker, line, claim, before = divided(RING)
    theirs, _, foreign, _ = divided(MIRROR)
    other = {
        "itself": before.equation,
        "a line that was never certified": Equation(claim.by.left, one(Q("20", "N"))),
        "a line of another checker": foreign.by,
        "its first form": next(
            each.equation for each in checker.lines if not each.equation.right and len(each.equation.left) > 1
        ),
        "a line that is nothing": Equation(claim.by.left, ()),
    }[what]
    with pytest.raises(Refused):
        checker.certify(line, Divided(other), before)


def test_a_line_is_not_divided_by_one_that_is_nothing() -> None:
    """The level forces leave nothing for the cord, so no tangent comes of its upright part over its level part."""
    checker, line, claim, before = divided(MIRROR)
    sine = next(each for each in checker.lines if each.equation == claim.by or settled_as(each.equation) == claim.by)
    with pytest.raises(Refused):
        checker.certify(Equation(one(Trig("tan", letter("*angle cord", "theta"))), ()), Divided(before.equation), sine)


def settled_as(line: Equation) -> Equation:
    return Equation(settled(line.left), settled(line.right))


@pytest.mark.parametrize("what", ("the other factor", "the sine", "a number beside it", "a sum"))
def test_of_a_product_that_is_nothing_only_the_factor_is_that_is_not_shared(what: str) -> None:
    """F cos θ is nothing and F sin θ is not: so the cosine is, and neither the force nor the sine."""
    checker, line, claim, before = divided(MIRROR)
    cord, angle = letter("cord.force", "F_C"), letter("*angle cord", "theta")
    spoilt = {
        "the other factor": Equation(one(cord), ()),
        "the sine": Equation(one(Trig("sin", angle)), ()),
        "a number beside it": Equation(line.left, one(Q("1"))),
        "a sum": Equation((*line.left, term(Trig("sin", angle))), ()),
    }[what]
    with pytest.raises(Refused):
        checker.certify(spoilt, claim, before)


def test_the_angle_of_a_tangent_is_the_one_that_gives_both_parts_their_signs() -> None:
    """At the sloping plank the level part is to the left and the upright one up: the principal angle would turn both
    round.
    """
    checker, line, claim, before = at(STAY, Inverted)
    with pytest.raises(Refused):
        checker.certify(Equation(line.left, line.right[1:]), claim, before)


def test_nothing_is_divided_by_a_letter_that_is_nothing() -> None:
    """The moment of the joint force about the joint is nothing: over itself it is not one."""
    working = problem("a turning part")
    checker, lines = replayed(working, len(working.moves))
    nothing = one(letter("*moment reaction", working.body.letters("*moment reaction").text))
    assert checker.ledger["*moment reaction"] == ()
    known = next(line for line in lines if isinstance(line.claim, Follows))
    same = Quotient(nothing, nothing)
    for each in (same, Power(nothing[0].factors[0], -1)):
        right = tuple(Term(term.sign, (*term.factors, each)) for term in known.equation.right)
        after = Equation(known.equation.left, right)
        with pytest.raises(Refused, match="divides by what is zero"):
            checker.certify(after, Scaled(Term(1, ())), known)


def test_a_rounded_share_is_not_put_into_a_line_that_says_no_more_than_the_share() -> None:
    """0.99893 is 0.99756 over 0.99863 rounded: put in there, any force would have to be nothing."""
    checker, lines = replayed(problem("two ropes, as shown"), 12)
    share = {"left rope.force": checker.ledger["left rope.force"]}
    refused, stands = [], []
    for line in lines:
        after = Equation(put(line.equation.left, share), put(line.equation.right, share))
        if "left rope.force" not in letters(line.equation.left) or after.right == share["left rope.force"]:
            continue
        try:
            stands.append(line_text(checker.certify(after, Put(tuple(share)), line)))
        except Refused:
            refused.append(line_text(line))
    assert "F_LR = (0.99756 F_R) / 0.99863" in refused
    assert stands == ["0.99893 F_R sin 3° + F_R sin 4° − W_La = 0"], stands


def test_a_huge_factor_does_not_hide_a_sign_behind_a_root() -> None:
    """Times 1e60 nothing is still nothing, and 14.7 N are not −14.7 N, whatever root of four a prime takes."""
    checker, lines = replayed(problem("how-far-out"), 3)
    weight = checker.ledger["forearm and hand.weight"]
    nothing = checker.certify(Equation(weight, weight), Put(("forearm and hand.weight",)), lines[2])
    same = Equation(weight, (Term(-1, (*weight[0].factors, Root((term(Q("4")),)), Q("0.5"))),))
    for _ in range(20):  # a prime takes either root
        with pytest.raises(Refused):
            checker.certify(same, Scaled(term(Q("1E+60"))), nothing)


def test_nothing_is_divided_by_what_is_still_sought() -> None:
    """With nothing at the joint, nothing over its force is no number."""
    checker, lines = replayed(problem("nothing at the joint"), 5)
    line = next(
        each for each in lines if each.equation.left and not each.equation.right and len(each.equation.left) > 1
    )
    odd = Equation(line.equation.left, (Term(1, (Quotient((), one(letter("reaction", "J"))),)),))
    with pytest.raises(Refused, match="nobody knows yet"):
        checker.certify(odd, Scaled(Term(1, ())), line)


def test_a_value_that_is_being_converted_is_not_put_in_and_not_forgotten() -> None:
    """As shown, a line that the old value makes false is not certified because half a conversion hides the value."""
    working = problem("as shown, in inches")
    checker, lines = replayed(working, 0)
    name, text = "jug.at", working.body.letters("jug.at").text
    old, factor = checker.ledger[name], Quotient((term(Q("1", "in")),), (term(Q("2.54", "cm")),))
    half = checker.certify(Equation(one(letter(name, text)), (Term(1, (*old[0].factors, factor)),)), Converted(name))
    assert name not in checker.ledger and checker.converting == {name: old}
    with pytest.raises(Refused):
        checker.certify(Equation(old, half.equation.right), Put((name,)), half)
    checker.certify(Equation(half.equation.left, (checker_number(half),)), Scaled(Term(1, ())), half)
    assert name in checker.ledger and not checker.converting


def checker_number(line: Certified) -> Term:
    """33 cm in inches, to five figures."""
    return Term(1, (Shown(Q("12.992", "in"), line.equation.right[0]),))


def test_what_stands_to_the_power_of_nothing_divides_by_nothing() -> None:
    """F⁰ is one whatever F is, so F need not be known yet; with F⁻¹ it must."""
    checker, line, claim, before = at(ELBOW, Scaled, 4)
    one_more = Equation(line.left, times(Power(F, 0))(line.right))
    with pytest.raises(Refused, match="nobody knows yet"):
        checker.certify(Equation(line.left, times(Power(F, -1), F)(line.right)), claim, before)
    assert checker.certify(one_more, claim, before).equation == one_more


def test_a_line_of_angles_and_a_line_of_forces_do_not_follow_from_each_other() -> None:
    checker, lines = replayed(problem(STEEP), len(problem(STEEP).moves))
    angle = next(each for each in lines if lone(each.equation.left) == THETA and not each.equation.rounded)
    other = next(each for each in lines if each.claim == Follows("cuff.weight"))
    for before, after in ((angle, other.equation), (other, Equation(one(THETA), one(Q("12", "deg"))))):
        with pytest.raises(Refused, match="does not follow"):
            checker.certify(after, Scaled(), before)


# ---------------------------------------------------------------------- two lines side by side
UNCHANGED = Term(1, ())


def equals(left: str, right: str) -> Equation:
    return Equation(one(Q(left, "N")), one(Q(right, "N")))


@pytest.mark.parametrize(("apart", "stands"), (("1E-46", True), ("1E-45", True), ("1.1E-45", False), ("1E-44", False)))
def test_two_lines_are_alike_to_45_digits_of_the_smaller(apart: str, stands: bool) -> None:
    """A line of one newton that is a little off, beside one that is not and beside one of 10⁹ N that is not."""
    exact, off = equals("1", "1"), Equation((*one(Q("1", "N")), *one(Q(apart, "N"))), one(Q("1", "N")))
    huge = Equation(one(Q("1E+9", "N")), one(Q("1E+9", "N")))
    for one_, other in ((exact, off), (off, exact), (huge, off), (off, huge)):
        assert stands is alike(one_, UNCHANGED, other, UNCHANGED, Sizes({}))


@pytest.mark.parametrize("size", ("1", "1E+40"))
def test_what_cancels_is_like_nothing_however_large_it_is(size: str) -> None:
    """√2 · √2 less 2 is nothing; with bounds of 240 bits it is less than one part in 10⁴⁵ of what cancels."""
    two = one(Q(size, "N"), Root(one(Q("2"))), Root(one(Q("2"))))
    cancels = Equation(two, one(Q(size, "N"), Q("2")))
    assert fraction(gap(cancels, Sizes({}))) != 0
    assert alike(Equation((), ()), UNCHANGED, cancels, UNCHANGED, Sizes({}))
    assert alike(cancels, UNCHANGED, Equation((), ()), UNCHANGED, Sizes({}))


@pytest.mark.parametrize(("times_", "stands"), (("2", True), ("3", False), ("-2", False)))
def test_a_line_and_twice_that_line_are_alike_by_their_multipliers(times_: str, stands: bool) -> None:
    before, after = equals("3", "2"), equals("6", "4")
    assert alike(after, UNCHANGED, before, by(Q(times_)), Sizes({})) is stands


THIRD = term(Quotient(one(Q("1", "N")), one(Q("3"))))


@pytest.mark.parametrize(
    ("after", "stands"),
    (
        (Equation(one(F), one(Shown(Q("0.33333", "N"), THIRD))), True),
        (Equation(one(F), one(Shown(Q("-0.33333", "N"), THIRD.flipped()), sign=-1)), True),
        (Equation(one(F), one(Shown(Q("0.33333", "N"), THIRD), sign=-1)), False),
        (Equation(one(F), one(Shown(Q("0.33333", "N"), THIRD), Q("1"))), False),
        (Equation(one(F), one(Shown(Q("0.5", "N"), term(Q("0.5", "N"))))), False),
        (Equation(one(F), one(Q("0.33333", "N"))), False),
        (Equation(one(F), (*one(Shown(Q("0.33333", "N"), THIRD)), *one(Q("1", "N")))), False),
        (Equation(one(W), one(Shown(Q("0.33333", "N"), THIRD))), False),
    ),
)
def test_whether_only_a_number_took_the_place_of_what_it_stands_for(after: Equation, stands: bool) -> None:
    assert only_worked_out(Equation(one(F), (THIRD,)), after) is stands
    other = one(Q("1", "N"))
    assert not only_worked_out(Equation(one(F), (THIRD, *other)), Equation(after.left, (*after.right, *one(W))))


@pytest.mark.parametrize(
    ("right", "figures", "stands"),
    (
        ("1", 6, False),
        ("1.00009", 6, True),
        ("0.99991", 6, True),
        ("1.00011", 6, False),
        ("1.0009", 5, True),
        ("1.0011", 5, False),
        ("1.009", 3, True),
        ("1.011", 3, False),
    ),
)
def test_how_far_apart_roundings_may_put_two_sides(right: str, figures: int, stands: bool) -> None:
    """Of six figures a part in 10,000, and never more than a part in a hundred; sides that are equal are not apart."""
    trials = Trials(Sizes({}), {}, random.Random(1))
    assert trials.apart_by_roundings(equals("1", right), figures) is stands


def test_sides_are_apart_by_roundings_of_their_largest_term() -> None:
    trials, small = Trials(Sizes({}), {}, random.Random(1)), one(Q("0.00009", "N"))
    assert trials.apart_by_roundings(Equation((*one(Q("1", "N")), *small), one(Q("1", "N"))), 6)
    assert not trials.apart_by_roundings(Equation(small, ()), 6)
