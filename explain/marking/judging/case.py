"""A traced value on its way to a verdict, with what its line says of it. Decides nothing."""

from __future__ import annotations

from dataclasses import dataclass

from .formula import Expr
from .values import Meaning, Value
from .ways import Way


@dataclass(slots=True, eq=False)
class Case:
    """A value on its way to a verdict, with what the line says of it."""

    value: Value
    meaning: Meaning
    words: str
    name: str
    unit: str
    expr: Expr | None = None
    way: Way | None = None
    shown: bool = True

    @property
    def free(self) -> bool:
        return self.value.free or (self.way.free if self.way else False)
