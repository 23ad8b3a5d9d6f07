"""What the program knows about working a problem.

The order is the table below: the first rule that sees something makes the next line.
"""

from .algebra import (
    add,
    carry,
    divide,
    expand,
    gather,
    invert,
    multiply_out,
    no_part,
    one_sine,
    put,
    put_share,
    ratio,
    split,
    take_root,
    tangent,
    unfold,
)
from .numbers import round_answer, work_out
from .setup import arm, at_rest, fold_angle, forces, moment, moments, pivot, relation, resultant, stress, turning
from .units import convert

SETUP = (at_rest, pivot, convert, relation, fold_angle, arm, turning, moments, forces, moment, stress, resultant)
MULTIPLY_FIRST = (
    put_share,
    put,
    expand,
    multiply_out,
    add,
    unfold,
    tangent,
    ratio,
    no_part,
    carry,
    one_sine,
    divide,
    split,
    take_root,
    work_out,
    invert,
    round_answer,
)
DIVIDE_FIRST = (
    put_share,
    put,
    expand,
    tangent,
    ratio,
    no_part,
    gather,
    carry,
    divide,
    take_root,
    multiply_out,
    add,
    unfold,
    one_sine,
    split,
    work_out,
    invert,
    round_answer,
)
LETTERS_FIRST = (
    put_share,
    expand,
    tangent,
    ratio,
    no_part,
    gather,
    carry,
    divide,
    take_root,
    put,
    multiply_out,
    add,
    unfold,
    one_sine,
    split,
    work_out,
    invert,
    round_answer,
)
MOVES = {
    "multiply first": SETUP + MULTIPLY_FIRST,
    "divide first": SETUP + DIVIDE_FIRST,
    "letters first": SETUP + LETTERS_FIRST,
}
