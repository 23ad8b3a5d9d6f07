"""The JSON Schemas that editors complete and check the files of a course with. Knows where they lie, not what
they say.
"""

from __future__ import annotations

from pathlib import Path

from ..errors import Fault, shown

SCHEMAS = ("problem", "course", "series", "book")


def schema(which: str) -> str:
    """The JSON Schema (draft 2020-12) of a "problem", a "course", a "series" or a "book" file, as text. Raises
    Fault for any other name.
    """
    if which not in SCHEMAS:
        raise Fault(
            found=f"a schema called {shown(which)}", expected="one of " + ", ".join(SCHEMAS), example=SCHEMAS[0]
        )
    return (Path(__file__).with_name("schemas") / f"{which}.schema.json").read_text(encoding="utf-8")
