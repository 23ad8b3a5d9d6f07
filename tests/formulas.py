"""Formulas that several tests write, and how to draw any formula at all."""

from __future__ import annotations

from hypothesis import strategies as st

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
    Term,
    Terms,
    Trig,
    term,
)
from explain.document.passage import Row

HOSTILE = (
    "<script>alert(1)</script>",
    "F_$x$",
    "a|b",
    "`code`",
    "F_`$",
    "![img](http://x)",
    "[a](javascript:alert(1))",
    "F_}\\input{x}",
    "a\nb",
    "\\",
    "&amp;",
    "x''",
    "F_a_b",
    "_",
    "",
    "\u202eevil",
    "--",
    "]]>",
    "%",
    "#1",
    "~~x~~",
    "~~~",
)


def a(text: str) -> Letter:
    return Letter(text, text)


def q(number: str, unit: str = "") -> Quantity:
    return Quantity.of(number, unit)


def one(*factors: Factor) -> Terms:
    return (term(*factors),)


def over(top: Factor, bottom: Factor) -> Quotient:
    return Quotient(one(top), one(bottom))


PULL, WEIGHT, ANGLE = a("F_B"), a("W_R"), a("theta")
BALANCE = Equation(
    (term(PULL, q("0.045", "m"), Trig("sin", q("70", "deg"))), term(q("16.677", "N"), q("0.16", "m"), sign=-1)), ()
)
DIVIDED = over(q("23.269", "N m"), q("0.042286", "m"))

ROWS = (
    Row(BALANCE.left, (("=", ()),)),
    Row(one(PULL), (("=", one(DIVIDED)),)),
    Row((), (("=", one(q("550.28", "N"))), ("≈", one(q("550", "N"))))),
)


QUANTITIES = st.builds(
    q,
    st.decimals(min_value=0, max_value=99999, places=3).map(str),
    st.sampled_from(["", "N", "N m", "m", "m s^-2", "deg", "%"]),
)
LETTERS = st.sampled_from(["F_B", "W_R", "theta", "J_x", "Σtau", "d_upper arm"]).map(a)
LEAVES: st.SearchStrategy[Factor] = st.one_of(QUANTITIES, LETTERS)


def _sums(factors: st.SearchStrategy[Factor]) -> st.SearchStrategy[Terms]:
    terms = st.builds(Term, st.sampled_from([1, -1]), st.lists(factors, min_size=1, max_size=3).map(tuple))
    return st.lists(terms, min_size=1, max_size=3).map(tuple)


def _wider(inner: st.SearchStrategy[Factor]) -> st.SearchStrategy[Factor]:
    names = st.sampled_from(["sin", "cos", "tan"])
    return st.one_of(
        inner,
        st.builds(Trig, names, inner),
        st.builds(Inverse, names, _sums(inner)),
        st.builds(Group, _sums(inner)),
        st.builds(Quotient, _sums(inner), _sums(inner)),
        st.builds(Root, _sums(inner)),
        st.builds(Power, inner, st.integers(2, 3)),
    )


SUMS = _sums(st.recursive(LEAVES, _wider, max_leaves=6))
