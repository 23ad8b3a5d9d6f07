"""A class's own segment table as a problem file names it: found and opened, not yet read."""

from __future__ import annotations

from ..reference.segment_tables import COLUMNS, PUBLISHED, plain_name
from .toml_table import Fields


def own_table(person: Fields) -> str | None:
    """What the CSV file says that a person's table names; None where none is named. Raises Fault."""
    name = person.text("table", "winter") or ""
    if plain_name(name) in PUBLISHED or not name.lower().endswith(".csv"):
        return None
    example, advice = 'table = "our-table.csv"', f"Its first line is: {','.join(COLUMNS)}"
    return person.table_text("table", name, example, advice)
