"""Reading what students type: one line of working to a bounded tree, shown back, never run as code. Judges nothing."""

from .evaluate import Result, Undefined, evaluate
from .numbers import comma_in
from .piece import Chain, Piece, Reading, Relation, Remark, Unread, Words
from .read import Habits, read_line, read_lines
from .readback import read_back, written
from .tree import (
    Call,
    Expr,
    Measured,
    Name,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Sigma,
    Sum,
    UnknownName,
    parts,
    within,
)
from .vocabulary import Vocabulary, vocabulary_of
from .working import WorkingLine, read_working

__all__ = (
    "Call",
    "Chain",
    "Expr",
    "Habits",
    "Measured",
    "Name",
    "Negative",
    "Number",
    "Piece",
    "Power",
    "Product",
    "Quotient",
    "Reading",
    "Relation",
    "Remark",
    "Result",
    "Sigma",
    "Sum",
    "Undefined",
    "UnknownName",
    "Unread",
    "Vocabulary",
    "Words",
    "WorkingLine",
    "comma_in",
    "evaluate",
    "parts",
    "read_back",
    "read_line",
    "read_lines",
    "read_working",
    "vocabulary_of",
    "within",
    "written",
)
