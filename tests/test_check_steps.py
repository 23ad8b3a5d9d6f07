"""What follows from a line: every step stands as it is, and none can be cheated."""
from __future__ import annotations

from dataclasses import replace

import pytest
from cheating import Cheat, at, both, factors, flipped, ground, left, letter, one, only, right, times, twice, value, without

from explain.check import Refused
from explain.claim import Inverted, Put, Rooted, Rounded, Scaled, Tangent
from explain.equation import Equation, Group, Inverse, Power, Quantity, Quotient, Root, Shown, Term, Terms, Trig, term
from explain.replace import put

Q = Quantity.of
F, W, DB, DJ = letter("biceps.force", "F_B"), letter("jug.weight", "W_J"), letter("biceps.at", "d_B"), letter("jug.at", "d_J")
JX, J, THETA = letter("reaction.right", "J_x"), letter("reaction", "J"), letter("*angle shank", "theta")
ELBOW, OBLIQUE, STEEP, MAST, HALF, EVEN, DANCER = (
    "jug-level", "rock-oblique", "how-steep", "sine and cosine together", "a sine of one half", "three and four", "dancer")


def by(*new: object, sign: int = 1) -> Term:
    return Term(sign, new)  # type: ignore[arg-type]


def hidden(letter_is: str = "17") -> Terms:
    """Nothing where the root of one is −1, and nothing where the letter is as large as this."""
    return one(Group((term(F), Term(-1, (Q(letter_is, "N"),)))), Group((term(Q("1")), term(Root(one(Q("1")))))))


CHEATS = (
    Cheat(ELBOW, Scaled, 4, "a term carried across with its sign", both(right(flipped(0)), ground(Scaled()))),
    Cheat(ELBOW, Scaled, 4, "a term left behind", right(without(0))),
    Cheat(ELBOW, Scaled, 4, "a factor on one side", right(times(Q("2")))),
    Cheat(ELBOW, Scaled, 4, "a factor on one side, said to be on both", both(right(times(Q("2"))), ground(Scaled(by(Q("2")))))),
    Cheat(ELBOW, Scaled, 4, "times nothing", lambda line, claim: (Equation((), ()), Scaled(by(Q("0"))))),
    Cheat(ELBOW, Scaled, 4, "times a difference that vanishes", lambda line, claim: (
        Equation((), ()), Scaled(by(Group((term(Q("1")), Term(-1, (Q("1"),)))))))),
    Cheat(ELBOW, Scaled, 4, "times an unknown", both(both(left(times(F)), right(times(F))), ground(Scaled(by(F))))),
    Cheat(ELBOW, Scaled, 4, "times a letter that is not there", both(both(left(times(THETA)), right(times(THETA))), ground(Scaled(by(THETA))))),
    Cheat(ELBOW, Scaled, 4, "over a unit", both(right(only(Q("1206.63", "N"))), left(only(F, Q("4.0"))))),
    Cheat(ELBOW, Scaled, 5, "the divisor on top", right(factors(lambda each: (Quotient(each[0].bottom, each[0].top),)))),  # type: ignore[union-attr]
    Cheat(ELBOW, Scaled, 5, "divided by something else", ground(Scaled(by(Quotient(one(Q("1")), one(Q("5.0", "cm"))))))),
    Cheat(ELBOW, Scaled, 5, "divided, without saying by what", ground(Scaled())),
    Cheat(ELBOW, Scaled, 6, "a number one off in its last place", right(value("301.67", "N"))),
    Cheat(ELBOW, Scaled, 6, "a number cut, not rounded", right(value("301.65", "N"))),
    Cheat(ELBOW, Scaled, 6, "a number in another unit", right(value("301.66", "lbf"))),
    Cheat(ELBOW, Scaled, 6, "a number in a unit of another kind", right(value("301.66", "kg"))),
    Cheat(ELBOW, Scaled, 6, "a number without its unit", right(value("301.66"))),
    Cheat(ELBOW, Scaled, 6, "a number with its sign lost", right(flipped(0))),
    Cheat(ELBOW, Scaled, 6, "a rounded number taken for the number", right(lambda terms: one(Q("301.66", "N")))),
    Cheat(ELBOW, Scaled, 6, "a number that stands for something else", right(lambda terms: one(Shown(Q("301.66", "N"), term(Q("301.66", "N")))))),
    Cheat(ELBOW, Scaled, 6, "a number that stands for itself, unknown", right(lambda terms: one(Shown(Q("301.66", "N"), term(F))))),
    Cheat(ELBOW, Scaled, 6, "twice the letter", left(twice(0))),
    Cheat(ELBOW, Scaled, 6, "another letter", left(only(letter("*moment jug", "M_J")))),

    Cheat(ELBOW, Put, 2, "a value that is not there", right(only(Q("7", "N cm")))),
    Cheat(ELBOW, Put, 2, "another value", left(factors(lambda each: (each[0], Q("34", "cm")), 2))),
    Cheat(ELBOW, Put, 2, "the value of another letter", left(factors(lambda each: (each[0], Q("4.0", "cm")), 2))),
    Cheat(ELBOW, Put, 2, "the number with another unit", left(factors(lambda each: (each[0], Q("33", "m")), 2))),
    Cheat(ELBOW, Put, 2, "the number without its unit", left(factors(lambda each: (each[0], Q("33")), 2))),
    Cheat(ELBOW, Put, 2, "the same length in a unit nobody wrote", left(factors(lambda each: (each[0], Q("0.33", "m")), 2))),
    Cheat(ELBOW, Put, 2, "a value for the unknown", left(factors(lambda each: (Q("301.66", "N"), each[1]), 0))),
    Cheat(ELBOW, Put, 2, "a value for the unknown, said", lambda line, claim: (
        Equation(put(line.left, {F.name: one(Q("301.66", "N"))}), ()), Put((*claim.names, F.name)))),  # type: ignore[union-attr]
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
    Cheat(ELBOW, Rounded, 0, "of the rounded number", right(lambda terms: one(Shown(Q("302", "N"), term(Q("301.66", "N")))))),
    Cheat(STEEP, Rounded, 0, "an angle a whole turn too large", right(lambda terms: one(
        Shown(Q("416.3", "deg"), term(Group((*terms, term(Q("360", "deg"))))))))),
    Cheat(STEEP, Rounded, 0, "an angle one off", right(value("56.4", "deg"))),

    Cheat(OBLIQUE, Rooted, 0, "a negative size", right(flipped(0))),
    Cheat(OBLIQUE, Rooted, 0, "the root of the letter left out", left(only(Power(J, 2)))),
    Cheat(OBLIQUE, Rooted, 0, "the root of the number left out", right(lambda terms: terms[0].factors[0].terms)),  # type: ignore[union-attr]
    Cheat(OBLIQUE, Rooted, 0, "the root of another number", right(only(Root(one(Q("230401", "N^2")))))),
    Cheat(OBLIQUE, Rooted, 0, "another letter", left(only(JX))),
    Cheat(ELBOW, Scaled, 5, "a difference hidden behind both roots of one", left(lambda terms: (*terms, *hidden()))),
    Cheat(EVEN, Scaled, 2, "the other root", right(flipped(0))),
    Cheat(EVEN, Scaled, 2, "half the root", right(only(Q("2.5", "N")))),

    Cheat(STEEP, Inverted, 0, "another function", right(only(Inverse("cos", one(Q("0.83214")))))),
    Cheat(STEEP, Inverted, 0, "the other angle, not said", lambda line, claim: (
        Equation(line.left, (term(Q("180", "deg")), *(each.flipped() for each in line.right))), Inverted())),
    Cheat(STEEP, Inverted, 0, "a whole turn more, not said", lambda line, claim: (
        Equation(line.left, (term(Q("360", "deg")), *line.right)), Inverted())),
    Cheat(STEEP, Inverted, 0, "half a turn more", lambda line, claim: (
        Equation(line.left, (term(Q("180", "deg")), *line.right)), Inverted())),
    Cheat(STEEP, Inverted, 0, "a negative angle", right(flipped(0))),
    Cheat(STEEP, Inverted, 0, "a negative letter", left(flipped(0))),
    Cheat(STEEP, Inverted, 0, "twice the letter", left(twice(0))),
    Cheat(STEEP, Inverted, 0, "another letter", left(only(letter("*angle reaction", "beta")))),
    Cheat(STEEP, Inverted, 0, "the sine still there", left(only(Trig("sin", THETA)))),
    Cheat(MAST, Inverted, 0, "a whole turn too little", right(flipped(0))),
    Cheat(MAST, Inverted, 0, "the shift left out", left(without(1))),
    Cheat(MAST, Inverted, 0, "the principal angle, where the balance needs the other one", right(lambda terms: terms[-1:])),
    Cheat(STEEP, Scaled, 7, "an angle a whole turn too large", right(lambda terms: (*terms, term(Q("360", "deg"))))),
    Cheat(STEEP, Scaled, 7, "an angle doubled", both(right(twice(0)), ground(Scaled(by(Q("2")))))),
    Cheat(STEEP, Scaled, 7, "a number for an angle", right(value("56.319"))),
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


@pytest.mark.parametrize("what", ("a wrong multiplier", "the tangent upside down", "the wrong sign", "a multiplier of nothing", "another ratio", "an unknown"))
def test_a_tangent_cannot_be_cheated(what: str) -> None:
    checker, line, claim, before = at("a tangent", Tangent)
    assert isinstance(claim, Tangent)
    ratio = line.right[0].factors[0]
    assert isinstance(ratio, Quotient)
    spoilt, other = {
        "a wrong multiplier": (line, Tangent(Term(claim.by.sign, ratio.top[0].factors))),
        "the tangent upside down": (Equation(line.left, (Term(line.right[0].sign, (Quotient(ratio.bottom, ratio.top),)),)), claim),
        "the wrong sign": (Equation(line.left, (line.right[0].flipped(),)), claim),
        "a multiplier of nothing": (line, Tangent(by(Q("0")))),
        "another ratio": (Equation(one(Trig("sin", THETA)), line.right), claim),
        "an unknown": (line, Tangent(by(letter("nobody.force", "F_N"))))}[what]
    with pytest.raises(Refused):
        checker.certify(spoilt, other, before)


def test_a_tangent_that_is_one_stands() -> None:
    checker, line, claim, before = at("a tangent", Tangent)
    assert checker.certify(line, claim, before).equation == line


def test_a_root_is_taken_only_of_what_is_never_negative() -> None:
    """From J_x² = 9 N² follows J_x = 3 N or −3 N; only a length or the size of a force may choose."""
    checker, line, claim, before = at(OBLIQUE, Scaled, 12)
    found = checker.certify(line, claim, before)
    square = checker.certify(Equation(one(Power(JX, 2)), tuple(replace(each, factors=(*each.factors, JX)) for each in line.right)), Scaled(by(JX)), found)
    with pytest.raises(Refused):
        checker.certify(Equation(one(JX), one(Root(square.equation.right))), Rooted(), square)
