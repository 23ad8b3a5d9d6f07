"""The conventions of a course in words: all of them once for a book, and at a problem those that differ. Knows no
problem.
"""

from __future__ import annotations

from collections.abc import Iterator

from ..problem.course import Course
from ..document.english import sentence, the
from ..equation.terms import term
from ..document.spelling import Spelling
from ..document.passage import Bullets, Line, Maths, Paragraph, Strong, Text

_ORDERS = {
    "multiply first": "products are multiplied out first, then the unknown is set free",
    "divide first": "what stands beside the unknown is divided away first",
    "letters first": "letters are kept to the end, and numbers put in last",
}
_METHODS = {
    "perpendicular distance": "each force times its perpendicular distance from the pivot",
    "turning component": "the part of each force across its distance from the pivot, times that distance",
}


def conventions(course: Course) -> Bullets:
    """Every convention as one item."""
    items = tuple((Strong(f"{sentence(name).rstrip('.')}. "), *said) for name, said in _said(course))
    return Bullets(tuple(Spelling(course.spelling, (), course.level_words, course.decimal).lines(items)))


def differing(course: Course, book: Course) -> tuple[Paragraph, ...]:
    """One paragraph that says what a problem counts differently from its book; none where nothing differs."""
    usual = dict(_said(book))
    items = [(name, said) for name, said in _said(course) if usual.get(name) != said]
    if not items:
        return ()
    line: list[Text | Strong | Maths] = [Strong("In this problem. ")]
    for place, (name, said) in enumerate(items):
        lead = f"{sentence(name).rstrip('.')}: " if not place else f" {sentence(name).rstrip('.')}: "
        line += [Text(lead), *(each for each in said if isinstance(each, Text | Maths))]
    return (Paragraph(tuple(line)),)


def _said(course: Course) -> Iterator[tuple[str, Line]]:
    word = course.word
    yield "turning", _text(f"We speak of {word}s ({_letter(course.letter)}), and take {_METHODS[course.method]}.")
    if course.positive == "up":
        yield "signs", _text(f"Up is positive, for forces and {word}s alike.")
    else:
        yield (
            "signs",
            _text(f"{sentence(course.positive).rstrip('.')} {word}s, and forces to the right and up, are positive."),
        )
    yield "balances", _text(_balances(course))
    yield "weight", (Text("The weight of a mass is the mass times g = "), Maths((term(course.g),)), Text("."))
    yield "units", _text(f"Lengths {_lengths(course.lengths)}; forces {_forces(course.forces)}.")
    yield "order of algebra", _text(sentence(_ORDERS[course.order]))
    yield "figures", _text(_figures(course))
    yield "joint force", _text(_joint(course))


def _balances(course: Course) -> str:
    word = course.word
    if course.balance == "two sides":
        said = (
            "What turns clockwise is set equal to what turns counter-clockwise, what pushes up to what pushes down, "
            "and what pushes right to what pushes left; every term has plus"
        )
    else:
        said = "What acts on a body at rest adds to zero"
    if course.letters_have_signs:
        said += "; each force's letter has its sign in it, and the sign comes in with the number"
    elif course.signs == "with the numbers":
        said += f"; the sign of a {word} comes in with its product"
    if course.first == "moments" or course.signs == "with the numbers" and not course.letters_have_signs:
        said += f"; the letters of the {word}s are written first, then their products"
    return f"{said}."


def _letter(letter: str) -> str:
    return "τ" if letter == "tau" else letter


def _lengths(lengths: str) -> str:
    return "stay in the unit they are given in" if lengths == "as given" else f"are worked in {lengths}"


def _forces(forces: str) -> str:
    return {"": "are worked in newtons, or in pounds where all are given in pounds", "lbf": "are worked in pounds"}.get(
        forces, f"are worked in {forces}"
    )


def _figures(course: Course) -> str:
    ties = "a lone 5 rounds up" if course.ties == "up" else "a lone 5 rounds to the even figure"
    carried = (
        "each line goes on with unrounded values"
        if course.carry == "unrounded"
        else "each line goes on with the values as shown"
    )
    return f"Answers have {course.figures} figures and workings {course.working_figures}; {ties}; {carried}."


def _joint(course: Course) -> str:
    wanted = " and ".join("its parts" if each == "parts" else "its size and direction" for each in course.resultant)
    axes = (
        f" Parts are taken along {the(course.axes)} and across it."
        if course.axes
        else " Parts are horizontal and vertical."
    )
    return (
        f"Of the force at a joint we find {wanted}, as it acts on "
        f"{course.reaction_on}.{axes if 'parts' in course.resultant or course.axes else ''}"
    )


def _text(words: str) -> Line:
    return (Text(words),)
