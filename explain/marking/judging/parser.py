"""Reads the tokens between two equals signs: words, and the expressions among them. What is no mathematics stays
words, and nothing is lost.
"""

from __future__ import annotations

from collections.abc import Sequence

from .formula import Expr, Node
from .letters import END, SYMBOL, is_letter
from .limits import DEEPEST
from .tokens import Token

Element = Expr | str


_AS = frozenset("as farther further longer more larger bigger bodyweight".split())


class _NoExpression(Exception):
    """No expression starts here."""


class Parser:
    """One side. `dirty` afterwards: a sign was passed over, so that what was read may not be what was meant."""

    def __init__(self, tokens: Sequence[Token], names: frozenset[str]) -> None:
        self.tokens, self.names, self.at, self.dirty, self.depth = list(tokens), names, 0, False, 0
        self.leaves: list[Token] = []
        self.letters: list[str] = []
        words = [each for each in self.tokens if each.kind == "word"]
        self.symbols_alone = len(words) > 1 and all(
            each.kind in ("num", "func", "op") or SYMBOL.match(each.text) for each in self.tokens
        )

    def side(self) -> list[Element]:
        """Words and expressions in order."""
        out: list[Element] = []
        words: list[str] = []
        while self.at < len(self.tokens):
            expr = self._expression_here() if self._starts() else None
            if expr is not None:
                out += [" ".join(words)] if words else []
                words = []
                out.append(expr)
                continue
            self._pass_over(words, out)
        return [*out, " ".join(words)] if words else out

    def _expression_here(self) -> Expr | None:
        self.leaves, self.letters, start = [], [], self.at
        try:
            return Expr(self._sum(), self.leaves, self.letters)
        except (_NoExpression, RecursionError):
            self.at = start
            return None

    def _pass_over(self, words: list[str], out: list[Element]) -> None:
        token = self._peek()
        if token.kind == "op" and token.text in "*/" and words and not out and self._peek(1).kind in ("num", "func"):
            minus = [Token("op", "-")] if self.tokens[0].kind == "op" and self.tokens[0].text == "-" else []
            self.tokens = [*minus, Token("word", "§" + " ".join(words)), *self.tokens[self.at :]]
            self.names, self.at = self.names | {self.tokens[len(minus)].text}, 0
            words.clear()
            return
        if token.text == "*" and out and self._so_many_times():
            words.append("times")
            self.at += 1
            return
        if self._named_in_words(token, out):
            name = "§" + " ".join(each.text for each in self.tokens[self.at + 1 :])
            self.tokens = [*self.tokens[: self.at + 1], Token("word", name)]
            self.names, self.at = self.names | {name}, 0
            words.clear()
            out.clear()
            return
        if token.kind == "word":
            words.append(token.text)
        elif token.kind == "op" and token.text in "*/^()" and not (token.text in "()" and self._wordy_bracket()):
            self.dirty = True
        self.at += 1

    def _so_many_times(self) -> bool:
        """Whether a number is how many times something is, in words: "2.3 x body weight", "2.8 x as far out"."""
        rest = [each.text.lower() for each in self.tokens[self.at + 1 : self.at + 3]]
        return bool(rest) and (rest[0] in _AS or rest[:2] == ["body", "weight"])

    def _named_in_words(self, token: Token, out: list[Element]) -> bool:
        """Whether the last factor of a side is named in words: "58.86 x arm of can"."""
        rest = self.tokens[self.at + 1 :]
        return (
            token.kind == "op"
            and token.text == "*"
            and len(out) == 1
            and isinstance(out[0], Expr)
            and 0 < len(rest) <= 4
            and all(each.kind == "word" and each.text[:1] != "§" for each in rest)
            and any(len(each.text) > 2 for each in rest)
        )

    def _wordy_bracket(self) -> bool:
        """Whether a bracket has words in it, a remark."""
        near = self.tokens[max(0, self.at - 3) : self.at + 3]
        return any(each.kind == "word" and len(each.text) > 2 for each in near)

    def _peek(self, ahead: int = 0) -> Token:
        place = self.at + ahead
        return self.tokens[place] if 0 <= place < len(self.tokens) else END

    def _is_letter(self, ahead: int = 0) -> bool:
        return is_letter(self.tokens, self.at + ahead, self.names, self.symbols_alone)

    def _starts(self) -> bool:
        token, after = self._peek(), self._peek(1)
        if token.kind in ("num", "func") or token.kind == "op" and token.text == "(":
            return True
        if token.kind == "op" and token.text in "+-" and after.kind in ("num", "func", "op", "word"):
            return after.kind != "word" or self._is_letter(1)
        return self._is_letter()

    def _sum(self) -> Node:
        self.depth += 1
        if self.depth > DEEPEST * 3:
            raise _NoExpression
        node = self._term()
        while (
            self._peek().kind == "op"
            and self._peek().text in "+-"
            and not (self._peek().gap > 2 and self._peek(1).gap == 0)
        ):
            node, again = self._joined(node, self._term)
            if not again:
                break
        self.depth -= 1
        return node

    def _joined(self, node: Node, read: object) -> tuple[Node, bool]:
        start, leaves, letters = self.at, len(self.leaves), len(self.letters)
        sign = self._peek().text
        self.at += 1
        try:
            minus = sign in "*/" and self._peek().text == "-" and self._peek().kind == "op"
            self.at += minus
            other: Node = read()  # type: ignore[operator]
        except _NoExpression:
            self.at = start
            del self.leaves[leaves:], self.letters[letters:]
            return node, False
        return (sign, node, ("neg", other) if minus else other), True

    def _term(self) -> Node:
        minus = False
        while self._peek().kind == "op" and self._peek().text in "+-":
            minus ^= self._peek().text == "-"
            self.at += 1
        node = self._implied()
        while self._peek().kind == "op" and self._peek().text in "*/":
            node, again = self._joined(node, self._implied)
            if not again:
                break
        return ("neg", node) if minus else node

    def _implied(self) -> Node:
        """Factors with no sign between them."""
        node = self._power()
        while True:
            token, before = self._peek(), self.tokens[self.at - 1]
            wide = token.gap >= 2
            bracket = token.kind == "op" and token.text == "("
            letter = (
                token.kind == "word"
                and not wide
                and self._is_letter()
                and not (before.kind == "num" and before.unit and before.unit != "%")
            )
            if not (
                bracket
                or token.kind == "func"
                and not wide
                or letter
                or token.kind == "num"
                and before.text == ")"
                and token.gap == 0
            ):
                return node
            start, leaves, letters = self.at, len(self.leaves), len(self.letters)
            try:
                node = ("i*", node, self._power())
            except _NoExpression:
                self.at = start
                del self.leaves[leaves:], self.letters[letters:]
                return node

    def _power(self) -> Node:
        node = self._primary()
        if self._peek().kind == "op" and self._peek().text == "^":
            start, leaves, letters = self.at, len(self.leaves), len(self.letters)
            self.at += 1
            minus = self._peek().text == "-" and self._peek().kind == "op"
            self.at += minus
            try:
                exponent = self._primary()
                return ("^", node, ("neg", exponent) if minus else exponent)
            except _NoExpression:
                self.at = start
                del self.leaves[leaves:], self.letters[letters:]
        return node

    def _primary(self) -> Node:
        token = self._peek()
        if token.kind == "num":
            self.at += 1
            self.leaves.append(token)
            return ("n", len(self.leaves) - 1)
        if token.kind == "func":
            return self._function()
        if token.kind == "op" and token.text == "(":
            return self._bracket()
        if self._is_letter():
            self.at += 1
            self.letters.append(token.text)
            return ("v", token.text)
        raise _NoExpression

    def _function(self) -> Node:
        name, start = self._peek().text, self.at
        self.at += 1
        squared = self._peek().text == "^" and self._peek(1).text == "2"
        self.at += 2 * squared
        minus = self._peek().text == "-" and self._peek().kind == "op"
        self.at += minus
        try:
            inner = self._primary()
        except _NoExpression:
            self.at = start
            raise
        node: Node = ("f", name, ("neg", inner) if minus else inner)
        return ("^", node, ("k", 2.0)) if squared else node

    def _bracket(self) -> Node:
        start, leaves, letters = self.at, len(self.leaves), len(self.letters)
        self.at += 1
        try:
            inner = self._sum()
            if self._peek().kind == "op" and self._peek().text == ")":
                self.at += 1
                return ("p", inner)
        except _NoExpression:
            pass
        self.at = start
        del self.leaves[leaves:], self.letters[letters:]
        raise _NoExpression
