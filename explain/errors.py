"""What is said when the input is at fault or no way through was found: data first, prose last."""

from __future__ import annotations

from collections.abc import Iterable

MISSPELT = 0.75  # how like a known key one is that is that key, misspelt

# Exit codes: what README says of them, from the best to the worst.
DONE, A_PERSON, NO_WAY, AT_FAULT, BROKEN = 0, 1, 3, 2, 70
STOPPED = 130  # 128 and the number of the signal: what shells give for a Ctrl-C
_ORDER = (DONE, A_PERSON, NO_WAY, AT_FAULT, BROKEN)


def code_of(error: BaseException) -> int:
    """The exit code that an exception asks for."""
    return int(getattr(error, "exit_code", BROKEN))


def worst(codes: Iterable[int]) -> int:
    """The exit code of several; one that is not ours is worse than all."""
    return max(codes, key=lambda code: _ORDER.index(code) if code in _ORDER else len(_ORDER), default=DONE)


class Fault(Exception):
    """The input is at fault: where, what was found, what is expected, an example, and what to do next.

    `line` counts from 1 and is None where it is not known; `key` is written "muscle[1].force", the first table being 1.
    """

    exit_code = AT_FAULT

    def __init__(
        self,
        file: str = "",
        line: int | None = None,
        key: str = "",
        found: str = "",
        expected: str = "",
        example: str = "",
        advice: str = "",
    ) -> None:
        super().__init__(file, line, key, found, expected, example, advice)
        self.file = file
        self.line = line
        self.key = key
        self.found = found
        self.expected = expected
        self.example = example
        self.advice = advice

    def placed(self, file: str, line: int | None, key: str, example: str = "") -> Fault:
        """The same fault with the place where it was met; `example` stands in for its own where given."""
        return Fault(file, line, key, self.found, self.expected, example or self.example, self.advice)

    def __str__(self) -> str:
        place = self.file + (f", line {self.line}" if self.line is not None else "")
        head = ": ".join(part for part in (place, self.key, f"found {self.found}.") if part)
        said = [
            head,
            f"Expected {self.expected}." if self.expected else "",
            self.advice,
            f"Write, for example: {self.example}" if self.example else "",
        ]
        return "\n".join(legible(line) for each in said if each for line in each.split("\n"))


class NoWay(Exception):
    """No way through to the answer was found. `last` is the last certified line in plain text, "" where there is
    none.
    """

    exit_code = NO_WAY

    def __init__(self, message: str, last: str = "") -> None:
        super().__init__(message, last)
        self.message = message
        self.last = last

    def __str__(self) -> str:
        said = self.message + (f"\nThe last certified line: {self.last}" if self.last else "")
        return "\n".join(legible(line) for line in said.split("\n"))


def nearest(word: str, known: Iterable[str], least: float = 0.6) -> str:
    """The known word most like this one, "" where none is; `least` says how like it has to be, 1 being the same."""
    import difflib

    folded = {each.casefold(): each for each in known}
    close = difflib.get_close_matches(word[:80].casefold(), folded, 1, least)
    return folded[close[0]] if close else ""


def shown(value: object, limit: int = 60) -> str:
    """A found value fit for one line of a message: text in quotes, control characters escaped, long values cut short.

    >>> shown("4 cm"), shown(True), shown(3.5)
    ('"4 cm"', 'true', '3.5')
    """
    match value:
        case str():
            return f'"{legible(value[:limit])}{"..." if len(value) > limit else ""}"'
        case bool():
            return str(value).lower()
        case list() | tuple():
            return f"a list of {len(value)}"
        case dict():
            return "a table"
        case int() if abs(value) > 10**limit:
            return "a very long number"
    return legible(str(value)[:limit])


def legible(text: str) -> str:
    """The text with control and other unprintable characters escaped."""
    return "".join(each if each.isprintable() else each.encode("unicode_escape").decode("ascii") for each in text)
