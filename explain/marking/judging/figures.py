"""What a number that stands alone may be, by its figures, its unit and its words. Notes nothing."""

from __future__ import annotations

import numpy as np

from .kinds import kind_of
from .state import State
from .tokens import Token
from .values import Meaning, Value


class Figures:
    """The numbers alone of one pass."""

    def __init__(self, state: State) -> None:
        self.state, self.trace = state, state.trace

    def best(self, token: Token, meaning: Meaning) -> Value | None:
        """The value that fits best; None where nothing does."""
        found = self.trace.candidates(token, "angle" in meaning.kinds or token.unit == "deg", True)
        if found[0].free and (meaning.role or meaning.items) and meaning.kinds:
            for source in self.trace.sources.near(token.share, 0.004 * token.share):
                if (
                    source.kind in meaning.kinds
                    and not (token.unit and source.unit and source.unit != token.unit)
                    and self._fits(source.key, meaning)
                ):
                    sign = 1.0 if source.number >= 0 else -1.0
                    return Value(
                        source.row * sign,
                        source.row * sign,
                        token.share,
                        token.step,
                        source=source.key,
                        deps=frozenset({self.state.line}),
                    )
        rates = [self._rate(each, token, meaning) - 0.1 * place for place, each in enumerate(found)]
        best = int(np.argmax(rates))
        if rates[best] <= -8:
            row = np.full(self.state.known.n, token.share)
            return Value(row, row, token.share, source="number", free=True)
        return found[best]

    def _fits(self, key: str, meaning: Meaning) -> bool:
        return (
            self.state.hints.is_answer(key, meaning)
            if meaning.role
            else bool(self.state.hints.item_of(key) & meaning.items)
        )

    def _rate(self, value: Value, token: Token, meaning: Meaning) -> float:
        keys = [each.key for each in self.state.known.true_of(value.f, token.unit)]
        rate = 1.5 * (value.source == "earlier") + 2 * bool(value.source == "earlier" and value.blames)
        if not keys:
            return rate
        speaks = any(self.state.hints.speaks(key, meaning) for key in keys)
        if (
            meaning.role
            and not speaks
            and value.source not in ("earlier", "in the head")
            and value.source not in self.state.known.data
        ):
            return -9.0
        own = any(self.state.hints.item_of(key) & meaning.items for key in keys)
        if meaning.items and not own and token.figures < 3 and not value.exact and value.source != "earlier":
            return -9.0  # two figures that happen to be near what another thing has
        if meaning.role:
            rate += 2 if speaks else -1
        if meaning.kinds:
            rate += 1 if any(kind_of(key) in meaning.kinds for key in keys) else -1
        if meaning.items:
            rate += 2 if own else -1
        return rate
