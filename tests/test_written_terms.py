"""Written sums: what is found in them, what is put into them letter for letter, and how people spell units."""

from __future__ import annotations

from decimal import Decimal

import pytest
from formulas import a, one, over, q

from explain.equation import key as keys
from explain.equation.key import Key
from explain.equation.substitution import in_brackets, put
from explain.equation.terms import (
    Equation,
    Factor,
    Group,
    Inverse,
    Power,
    Quantity,
    Quotient,
    Root,
    Shown,
    Term,
    Terms,
    Trig,
    changed,
    flipped,
    leaves,
    letters,
    lone,
    number,
    parted,
    settled,
    term,
)
from explain.equation.unit_spellings import OFFERED, kinds_of, plainly, spellings, unit_of
from explain.formula.plain import plain

X, Y, Z = a("x"), a("y"), a("z")
SHOWN = Shown(q("5.3", "N"), term(Z))

# ---------------------------------------------------------------------- looking through a sum


@pytest.mark.parametrize(
    ("factor", "inner"),
    [
        (X, []),
        (q("2"), []),
        (SHOWN, []),
        (Trig("sin", X), [X]),
        (Power(X, 2), [X]),
        (Group((term(X), term(Y, q("2"), sign=-1))), [X, Y, q("2")]),
        (Root(one(X)), [X]),
        (Inverse("tan", one(over(Y, X))), [over(Y, X), Y, X]),
        (Quotient(one(X, Y), one(Root(one(Z)))), [X, Y, Root(one(Z)), Z]),
    ],
)
def test_what_stands_in_a_factor_is_told_in_written_order(factor: Factor, inner: list[Factor]) -> None:
    assert (inner, [factor, *inner]) == (list(factor.leaves), leaves(one(factor)))


def test_letters_are_told_by_name_and_a_rounded_number_is_not_looked_into() -> None:
    side = (term(X, SHOWN), term(Power(Y, 2), sign=-1))
    assert ({"x", "y"}, {"x"}, set()) == (letters(side), set(X.letters), set(letters(())))
    assert {"x", "y"} == Equation(one(X), one(Y)).letters
    assert [X, Y] == list(Equation(one(X), one(Y)).leaves)


def test_a_sum_is_parted_by_a_letter() -> None:
    side = (term(X, Y), term(Y, sign=-1), term(Group(one(X))))
    assert ((side[0], side[2]), (side[1],)) == parted(side, "x")
    assert ((), side) == parted(side, "z")
    assert (side[:2], ()) == parted(side[:2], "y")


def test_turning_a_sum_round_keeps_factors_and_sources() -> None:
    assert (Term(-1, (X,), "biceps"), Term(1, (Y,))) == flipped((Term(1, (X,), "biceps"), Term(-1, (Y,))))
    assert Term(1, (X, Y), "jug") == term(X, Y, source="jug")


@pytest.mark.parametrize(
    ("side", "factor", "value"),
    [
        (one(X), X, None),
        (one(q("2", "m")), q("2", "m"), (1, q("2", "m"))),
        ((term(q("2", "m"), sign=-1),), None, (-1, q("2", "m"))),
        (one(SHOWN), SHOWN, (1, q("5.3", "N"))),
        (one(q("2"), X), None, None),
        ((term(q("2")), term(q("3"))), None, None),
        ((), None, None),
        (one(), None, None),
    ],
)
def test_a_side_that_is_one_factor_or_one_number(
    side: Terms, factor: Factor | None, value: tuple[int, Quantity] | None
) -> None:
    assert (factor, value) == (lone(side), number(side))


def test_a_quantity_is_read_from_its_number_and_unit() -> None:
    assert Quantity(Decimal("9.81"), (("m", 1), ("s", -2))) == Quantity.of("9.81", "m s^-2")
    assert Quantity(Decimal("2"), ()) == Quantity.of("2")


def test_what_is_carried_as_shown_stands_for_itself_however_deep_it_stands() -> None:
    deep = Quotient(one(Group(one(SHOWN, X))), one(Trig("sin", SHOWN)))
    line = Equation(one(deep), (Term(-1, (SHOWN,), "jug"), term(Y)), rounded=True)
    shown = q("5.3", "N")
    expected = Equation(
        one(Quotient(one(Group(one(shown, X))), one(Trig("sin", shown)))),
        (Term(-1, (shown,), "jug"), term(Y)),
        rounded=True,
    )
    assert expected == line.as_shown
    assert (one(Power(Group(one(shown)), 2)),) == (settled(one(Power(Group(one(SHOWN)), 2))),)


@pytest.mark.parametrize(
    ("factor", "expected"),
    [
        (Trig("sin", X), Trig("sin", Y)),
        (Power(X, 3), Power(Y, 3)),
        (over(X, Z), Quotient(one(Z), one(Z))),
        (Group(one(X)), Group(one(Z))),
        (Root(one(X)), Root(one(Z))),
        (Inverse("cos", one(X)), Inverse("cos", one(Z))),
        (X, X),
        (q("2"), q("2")),
    ],
)
def test_sums_and_single_factors_in_a_factor_are_changed_by_their_own_functions(
    factor: Factor, expected: Factor
) -> None:
    assert expected == changed(factor, lambda _: one(Z), lambda _: Y)


# ---------------------------------------------------------------------- putting values for letters
VALUES: dict[str, Terms] = {
    "x": one(q("2", "m")),
    "y": (term(q("3", "N"), sign=-1),),
    "n": (),
    "s": (term(Z), term(q("1"))),
}
N, S = a("n"), a("s")


@pytest.mark.parametrize(
    ("side", "expected"),
    [
        (one(X, Y), "−(2 m)(3 N)"),
        ((term(Y, sign=-1), term(Y, Y)), "3 N + (3 N)(3 N)"),
        (one(S, Z), "(z + 1) z"),
        ((term(X, N), term(Z)), "z"),
        ((term(X, N), term(N, S)), "0"),
        (one(N, S, X), "0"),
        (one(Power(N, 2), X), "0"),
        (one(Power(N, -1)), "(0)⁻¹"),
        (one(X, Power(X, 2)), "(2 m)(2 m)²"),
        (one(Power(Y, 2), Z), "(−3 N)² z"),
        (one(Trig("sin", X), Z), "sin(2 m) z"),
        (one(over(X, Group((term(Y), term(Z))))), "2 m / (−3 N + z)"),
        (one(Root(one(Power(X, 2)))), "√((2 m)²)"),
        (one(Inverse("tan", one(over(Y, X)))), "tan⁻¹((−3 N) / 2 m)"),
        (one(Z, q("5")), "z (5)"),
    ],
)
def test_values_are_put_for_letters_as_they_are_written(side: Terms, expected: str) -> None:
    assert expected == plain(put(side, VALUES))


def test_a_term_keeps_its_source_when_values_are_put_into_it() -> None:
    assert (Term(-1, (q("2", "m"),), "jug"),) == put((Term(-1, (X,), "jug"),), VALUES)
    kept = (Term(1, (Z,), "jug"),)
    assert kept == put(kept, VALUES)


def test_some_values_keep_their_sign_in_brackets() -> None:
    assert "x: 2 m, y: (−3 N)" == ", ".join(
        f"{name}: {plain(of)}" for name, of in in_brackets({"x": VALUES["x"], "y": VALUES["y"]}, {"y"}).items()
    )


# ---------------------------------------------------------------------- names of quantities
@pytest.mark.parametrize(
    ("text", "what", "owner", "about"),
    [
        ("biceps.force", "force", "biceps", ""),
        ("g", "g", "", ""),
        ("*arm biceps", "*arm", "biceps", ""),
        ("*arm biceps *about cord", "*arm", "biceps", "cord"),
        ("*person.mass", "mass", "*person", ""),
        ("a.b.mass", "mass", "a.b", ""),
    ],
)
def test_a_key_tells_what_of_whom_and_about_whom(text: str, what: str, owner: str, about: str) -> None:
    key = keys.of(text)
    assert (what, owner, about) == (key.what, key.owner, key.about)


def test_the_keys_of_the_joint_force() -> None:
    assert ("reaction.right", "reaction.up", "reaction.along", "reaction.across") == (
        keys.RIGHT,
        keys.UP,
        keys.ALONG,
        keys.ACROSS,
    )
    assert ("*angle reaction", "*moment reaction", "*friction reaction") == (
        keys.JOINT_ANGLE,
        keys.JOINT_MOMENT,
        keys.FRICTION,
    )
    assert [True] * 5 + [False] * 2 == [
        Key(each).is_angle
        for each in (
            "*angle a",
            "*fold a",
            "*inclination a",
            "*angle a *about b",
            keys.JOINT_ANGLE,
            "a.angle",
            "*arm angle",
        )
    ]


# ---------------------------------------------------------------------- units as people spell them
LENGTHS = {
    "m": "m metre metres meter meters",
    "cm": "cm centimetre centimetres centimeter centimeters",
    "mm": "mm millimetre millimetres millimeter millimeters",
    "in": "in in. ins inch inches",
    "ft": "ft ft. foot feet",
}
SPELLED: dict[str, dict[str, str]] = {
    "length": LENGTHS,
    "mass": {
        "kg": "kg kgs kilogram kilograms kilogramme kilogrammes",
        "g": "g gram grams gramme grammes",
        "lb": "lb lb. lbs lbs. lbm pound pounds",
    },
    "force": {
        "N": "N newton newtons",
        "kN": "kN kilonewton kilonewtons",
        "lbf": "lbf lbf. lb lb. lbs lbs. pound pounds pound-force pounds-force",
    },
    "angle": {"deg": "° deg deg. degs degree degrees"},
    "percent": {"%": "% percent"},
    "moment": {
        "N m": "Nm|N m|N·m|N*m|N.m|N-m|m N|m·N|newton metres|newton-meter",
        "N cm": "Ncm|N cm|cm N",
        "N mm": "Nmm|N mm",
        "kN m": "kNm|kN m|kilonewton metres",
        "lbf ft": "ftlb|ft lb|ft-lbs|ft·lbf|lb ft|lbft|footlbs|foot pounds|pound-feet|ftpound|ftlbf",
        "lbf in": "inlb|in lb|in-lbs|inch pounds|lb in|lbin|inchpounds|lbfin",
    },
    "area": {
        "cm^2": "cm^2|cm2|sq cm|sq. cm|square cm|square centimetres",
        "mm^2": "mm^2|square millimeters",
        "m^2": "m^2|square metre",
        "in^2": "in^2|sq in|square inches|sq. inches",
    },
    "acceleration": {
        "m s^-2": "m/s^2|m/s2|m/s/s|m/(s^2)|m/(s2)|m s^-2|m·s^-2|m s-2|m/sec^2|metres per second squared"
        "|metre per second per second",
        "ft s^-2": "ft/s^2|ft/s/s|feet per second squared",
    },
    "force per length": {
        "N cm^-1": "N/cm|N per cm|newtons per centimetre",
        "N m^-1": "N/m|N / m|newtons per metre",
        "N mm^-1": "N/mm",
        "kN m^-1": "kN/m|kilonewtons per metre",
        "lbf ft^-1": "lb/ft|lbs/ft|pounds per foot|lb per ft",
        "lbf in^-1": "lb/in|pounds per inch",
    },
}


@pytest.mark.parametrize("kind", SPELLED)
def test_every_spelling_of_the_trade_means_its_unit(kind: str) -> None:
    for unit, words in SPELLED[kind].items():
        for word in (
            words.split("|") if kind in ("moment", "area", "acceleration", "force per length") else words.split()
        ):
            assert q("1", unit).unit == unit_of(word, kind), word


@pytest.mark.parametrize(
    ("word", "kind"),
    [
        ("m", "mass"),
        ("", "length"),
        ("kg", "force"),
        ("x", "number"),
        ("N", "moment"),
        ("N kg", "moment"),
        ("m m", "moment"),
        ("N in", "moment"),
        ("N m s", "moment"),
        ("kN cm", "moment"),
        ("lb m", "moment"),
        ("sq ft", "area"),
        ("kg^2", "area"),
        ("cm", "area"),
        ("cm/s^2", "acceleration"),
        ("m/s", "acceleration"),
        ("kg/s^2", "acceleration"),
        ("N/in", "force per length"),
        ("lb/m", "force per length"),
        ("kg/m", "force per length"),
        ("N", "force per length"),
        ("kN/cm", "force per length"),
        ("m", "number"),
    ],
)
def test_what_is_no_unit_of_its_kind_is_not_taken_for_one(word: str, kind: str) -> None:
    assert unit_of(word, kind) is None


def test_a_plain_number_has_no_unit() -> None:
    assert () == unit_of("", "number")


@pytest.mark.parametrize(
    ("word", "kinds"),
    [
        ("lb", ("mass", "force")),
        ("m", ("length",)),
        ("N m", ("moment",)),
        ("cm^2", ("area",)),
        ("m/s^2", ("acceleration",)),
        ("N/cm", ("force per length",)),
        ("deg", ("angle",)),
        ("%", ("percent",)),
        ("", ()),
        ("furlong", ()),
    ],
)
def test_the_kinds_that_a_unit_may_be_of(word: str, kinds: tuple[str, ...]) -> None:
    assert kinds == kinds_of(word)


def test_every_unit_that_is_offered_is_taken_and_has_a_kind() -> None:
    offered = {kind: " | ".join(units) for kind, units in OFFERED.items()}
    assert {
        "length": "m | cm | mm | in | ft",
        "mass": "kg | g | lb",
        "force": "N | kN | lb | lbf",
        "angle": "deg",
        "moment": "N m | N cm | N mm | kN m | ft lb | in lb",
        "area": "cm^2 | mm^2 | m^2 | in^2",
        "acceleration": "m/s^2 | ft/s^2",
        "force per length": "N/cm | N/m | N/mm | kN/m | lb/ft | lb/in",
        "percent": "%",
        "number": "",
    } == offered
    assert all(unit_of(unit, kind) for kind, units in OFFERED.items() for unit in units)


def test_the_units_offered_stand_before_other_spellings() -> None:
    assert ("deg", "°", "deg.", "degs", "degree", "degrees") == spellings("angle")
    assert (OFFERED["moment"], ()) == (spellings("moment"), spellings("number"))


@pytest.mark.parametrize(
    ("typed", "plain_text"),
    [
        (" m\u00a0s\u2009a\u202fb\u2007c\td ", "m s a b c d"),
        ("−5", "-5"),
        ("N⋅m", "N·m"),
        ("N∙m", "N·m"),
        ("m/s²", "m/s^2"),
        ("m s⁻²", "m s^-2"),
        ("30º", "30°"),
        ("30˚", "30°"),
        ("\t5\u00a0", "5"),
    ],
)
def test_signs_that_look_alike_are_made_one(typed: str, plain_text: str) -> None:
    assert plain_text == plainly(typed)
