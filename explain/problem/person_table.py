"""A class's own segment table as a problem file names it: found and opened, not yet read."""

from __future__ import annotations

from ..errors import shown
from ..input import TABLE
from ..reference.segment_tables import COLUMNS, PUBLISHED, plain_name
from .toml_table import Fields


def own_table(person: Fields) -> str | None:
    """What the CSV file says that a person's table names; None where none is named. Raises Fault."""
    name = person.text("table", "winter") or ""
    if plain_name(name) in PUBLISHED or not name.lower().endswith(".csv"):
        return None
    example, advice = 'table = "our-table.csv"', f"Its first line is: {','.join(COLUMNS)}"
    try:
        return person.file("table", name, TABLE, example, advice).decode("utf-8-sig")
    except UnicodeDecodeError:
        raise person.fault(
            "table",
            f"{shown(name)}, which is not plain text in UTF-8",
            "a CSV file beside the problem",
            example,
            advice,
        ) from None
