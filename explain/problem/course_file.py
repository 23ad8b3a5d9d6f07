"""The keys of a course file and what each may say. Knows no problem, so no name that `axes` or `symbols` speak of."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from .course import Course
from .toml_table import Fields, Origin

COURSE_KEYS = (
    "word",
    "letter",
    "positive",
    "g",
    "lengths",
    "forces",
    "method",
    "order",
    "figures",
    "working_figures",
    "ties",
    "carry",
    "force_letter",
    "distance_letter",
    "symbols",
    "resultant",
    "axes",
    "reaction_on",
    "detail",
    "person",
    "balance",
    "first",
    "signs",
    "level_words",
    "spelling",
    "decimal",
    "paper",
)
TURNS: Mapping[str, str] = {
    "counter-clockwise": "counter-clockwise",
    "clockwise": "clockwise",
    "counterclockwise": "counter-clockwise",
    "anticlockwise": "counter-clockwise",
    "anti-clockwise": "counter-clockwise",
}
_LETTER_OF: Mapping[str, str] = {"moment": "M", "torque": "tau"}
_LETTERS: Mapping[str, str] = {"M": "M", "tau": "tau", "T": "T", "τ": "tau"}
_LENGTHS: Mapping[str, str] = {
    "as given": "as given",
    "metres": "m",
    "centimetres": "cm",
    "millimetres": "mm",
    "inches": "in",
    "feet": "ft",
    "m": "m",
    "cm": "cm",
    "mm": "mm",
    "in": "in",
    "ft": "ft",
    "meters": "m",
    "centimeters": "cm",
    "millimeters": "mm",
}
_FORCES: Mapping[str, str] = {"N": "N", "lb": "lbf", "lbf": "lbf", "newtons": "N", "pounds": "lbf"}
_WORDS: Mapping[str, tuple[str, ...]] = {
    "word": ("moment", "torque"),
    "method": ("perpendicular distance", "turning component"),
    "order": ("multiply first", "divide first", "letters first"),
    "ties": ("up", "even"),
    "carry": ("unrounded", "as shown"),
    "reaction_on": ("the body cut free", "the other bone"),
    "detail": ("full", "brief"),
    "person": ("we", "you"),
    "balance": ("sum is zero", "two sides"),
    "first": ("products", "moments"),
    "signs": ("in the equation", "with the numbers"),
    "level_words": ("horizontal and vertical", "level and upright"),
    "spelling": ("British", "American"),
    "decimal": ("point", "comma"),
    "paper": ("A4", "letter"),
}
_MEANINGS: Mapping[str, Mapping[str, str]] = {
    **{key: {word: word for word in words} for key, words in _WORDS.items()},
    "letter": _LETTERS,
    "positive": {**TURNS, "up": "up"},
    "lengths": _LENGTHS,
    "forces": _FORCES,
}
_RESULTANTS: Mapping[str, tuple[str, ...]] = {
    "size and direction": ("size and direction",),
    "parts": ("parts",),
    "both": ("size and direction", "parts"),
}
_AXES = re.compile(r"along and across (?:the )?(.+)")
_SYMBOL = re.compile(r"[A-Za-z]{1,10}(?:_[A-Za-z0-9]{1,12})?")
MOST_FIGURES = 12


def course_from(mapping: Mapping[str, object], base: Course | None = None, file: str = "", text: str = "") -> Course:
    """The course that `base` becomes with the keys of `mapping`, which are those of a course file. Raises Fault."""
    return course_of(Fields(mapping, Origin(file, text)), base or Course())


def course_of(fields: Fields, base: Course) -> Course:
    """The course that `base` becomes with the keys of one table. Raises Fault."""
    fields.only(COURSE_KEYS)
    words = {key: said for key, meanings in _MEANINGS.items() if (said := fields.choice(key, meanings)) is not None}
    if "word" in words and "letter" not in words:
        words["letter"] = _LETTER_OF[words["word"]]
    figures, working = _figures(fields, base)
    symbols = _symbols(fields)
    course = replace(
        base,
        **words,
        g=fields.quantity("g", "acceleration") or base.g,
        figures=figures,
        working_figures=working,
        force_letter=_letter(fields, "force_letter", "F") or base.force_letter,
        distance_letter=_letter(fields, "distance_letter", "d") or base.distance_letter,
        symbols=base.symbols if symbols is None else symbols,
        resultant=_resultant(fields) or base.resultant,
        axes=base.axes if (axes := _axes(fields)) is None else axes,
    )
    if course.signs == "with the numbers":
        if course.balance == "two sides":
            raise fields.wrong(
                "signs",
                "signs in the equation, since on two sides every term has plus",
                'signs = "in the equation"',
            )
        if course.positive != "up":
            course = replace(course, first="moments")
    return course


def _figures(fields: Fields, base: Course) -> tuple[int, int]:
    """Figures of answers and of working; the working keeps two more where only the answer's are given and it would
    have fewer.
    """
    figures = fields.whole("figures", 1, MOST_FIGURES) or base.figures
    working = fields.whole("working_figures", 1, MOST_FIGURES + 2)
    if working is None:
        return figures, base.working_figures if base.working_figures >= figures else figures + 2
    if working < figures:
        raise fields.wrong(
            "working_figures",
            f"at least as many as the answer's figures ({figures})",
            f"working_figures = {figures + 2}",
        )
    return figures, working


def _letter(fields: Fields, key: str, example: str) -> str | None:
    letter = fields.text(key, example)
    if letter is None or re.fullmatch("[A-Za-z]{1,10}", letter):
        return letter
    raise fields.wrong(key, "a letter, or the name of a Greek one", f'{key} = "{example}"')


def _symbols(fields: Fields) -> dict[str, str] | None:
    table = fields.table("symbols")
    if table is None:
        return None
    for name, symbol in table.values.items():
        if not isinstance(symbol, str) or not _SYMBOL.fullmatch(symbol):
            raise table.wrong(
                name,
                "a letter, with what follows the first _ as its subscript; Greek letters by name",
                'symbols = { biceps = "F_B" }',
            )
    return {name.strip(): str(symbol) for name, symbol in table.values.items()}


def _resultant(fields: Fields) -> tuple[str, ...] | None:
    if not isinstance(fields.values.get("resultant"), list | tuple):
        return fields.choice("resultant", _RESULTANTS)
    listed = fields.texts("resultant", "parts") or ()
    if not listed or set(listed) - {"size and direction", "parts"} or len(set(listed)) < len(listed):
        raise fields.wrong(
            "resultant",
            '"size and direction", "parts", or a list of both',
            'resultant = ["parts", "size and direction"]',
        )
    return listed


def _axes(fields: Fields) -> str | None:
    said = fields.text("axes", "level and upright")
    if said is None or said == "level and upright":
        return None if said is None else ""
    found = _AXES.fullmatch(said)
    if found:
        return found[1].strip()
    raise fields.wrong(
        "axes",
        '"level and upright", or "along and across the" and the name of a segment',
        'axes = "along and across the forearm"',
    )
