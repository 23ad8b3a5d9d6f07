"""Reports in every format, several in one file. Knows the writers, and decides nothing."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from ...write.formats import written as written
from ..slips.verdict import Marking

if TYPE_CHECKING:
    from .page import Worked


def json_lines(walkthrough: Worked, markings: Sequence[Marking], audience: str, hints: int) -> bytes:
    """One object a line; without an audience, or for a tutor, everything that is known."""
    from ..marks.award import awarded
    from ..marks.scheme import scheme_of
    from .as_json import mark_json, student_json

    outcome = walkthrough.outcome
    if audience == "student":
        return b"".join(student_json(each, outcome, hints).encode() + b"\n" for each in markings)
    scheme = scheme_of(outcome)
    return b"".join(mark_json(each, awarded(scheme, each), outcome).encode() + b"\n" for each in markings)
