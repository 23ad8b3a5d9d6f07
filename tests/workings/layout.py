"""Statements put on lines: list marks, headings, parts, several equations on one line, chains that go on, words
between. Knows no mechanics.
"""

from __future__ import annotations

from itertools import groupby

from .style import Style
from .working import Line, Side, Statement

_HEADINGS = {
    "shares": "Masses",
    "weights": "Weights",
    "arms": "Moment arms",
    "moments": "Moments",
    "balance": "Equilibrium",
    "reaction": "Joint force",
}


def lines(statements: list[Statement], style: Style, way: int) -> tuple[Line, ...]:
    """The lines of a working."""
    drawn: list[Line] = []
    for group, each in groupby(statements, key=lambda it: it.group):
        drawn += _group(group, list(each), style, way)
    return tuple(_marked(drawn, style, way))


def _group(group: str, statements: list[Statement], style: Style, way: int) -> list[Line]:
    out: list[Line] = []
    if style.layout == "markdown" and group in _HEADINGS and way % 2:
        out.append(Line(f"{('## ', '**', '### ')[way % 3]}{_HEADINGS[group]}{'**' if way % 3 == 1 else ''}"))
    joined = {
        "shares": style.weights,
        "weights": style.weights,
        "arms": style.arms,
        "moments": style.moments,
        "sines": "one line",
    }.get(group, "") == "one line"
    if (
        (joined or style.join and group in ("sines", "parts"))
        and len(statements) > 1
        and style.layout not in ("latex", "dollars")
    ):
        sign = style.join.strip(" ") and style.join or ("; " if style.comma else ", ")
        sides = [side for each in statements for side in each.sides]
        return [
            *out,
            Line(
                sign.join(_text(each, style) for each in statements),
                tuple(claim for side in sides for claim in side.claims),
            ),
        ]
    for place, each in enumerate(statements):
        out += _one(each, style, way + place, first=place == 0)
    return out


def _text(statement: Statement, style: Style) -> str:
    remark = statement.remark if statement.remark[:1] in (" ", ",", "\\") else ""
    sides = [each.text for each in statement.sides]
    text = style.equals.join(sides)
    if style.approx and len(sides) > 1 and statement.group == "answer":
        sign = " \\approx " if style.layout in ("latex", "dollars") else " ≈ "
        text = style.equals.join(sides[:-1]) + sign + sides[-1]
    return text + remark


def _one(statement: Statement, style: Style, way: int, first: bool) -> list[Line]:
    if statement.kind != "equation":
        return [Line(statement.sides[0].text, statement.sides[0].claims)]
    claims = tuple(claim for side in statement.sides for claim in side.claims)
    lead = style.lead if statement.remark == "lead" and style.layout not in ("latex", "dollars") else ""
    if lead.endswith("= ") and statement.sides[-1].text != "0":
        lead = "ΣM = 0: "
    if lead == "ΣM = " and len(statement.sides[-1].text) > 1:
        lead = ""
    glue = (
        style.glue
        if statement.group in ("answer", "solving") and style.layout not in ("latex", "dollars", "markdown") and way % 2
        else ""
    )
    text = _text(statement, style)
    if style.split and len(statement.sides) > 2 and not glue:
        return _split(statement, lead, style)
    return [Line(f"{lead}{glue}{text}", claims)]


def _split(statement: Statement, lead: str, style: Style) -> list[Line]:
    """A chain whose last side stands in the next line."""
    first, last = statement.sides[:-1], statement.sides[-1]
    remark = statement.remark if statement.remark[:1] in (" ", ",", "\\") else ""
    head = Line(
        lead + style.equals.join(each.text for each in first), tuple(claim for side in first for claim in side.claims)
    )
    indent = "" if style.layout in ("latex", "dollars") else "  "
    return [head, Line(f"{indent}= {last.text}{remark}", last.claims)]


def _marked(lines: list[Line], style: Style, way: int) -> list[Line]:
    out: list[Line] = []
    number = 0
    for each in lines:
        if (
            len(lines) == 1
            or each.text.startswith(("#", "**", "(a)", "(b)", "a)", "b)", "Part", "Step"))
            or not each.text.strip()
        ):
            out.append(each)
            continue
        number += 1
        continues = each.text.lstrip().startswith("=")
        mark = (
            ""
            if continues
            else {
                "bullets": "- ",
                "stars": "* ",
                "dashes": "– ",
                "numbered": f"{number}. ",
                "steps": f"Step {number}: ",
                "quoted": "> ",
            }.get(style.layout, "")
        )
        if style.layout == "numbered" and way % 2 and mark:
            mark = f"{number}) "
        text = f"${each.text}$" if style.layout == "dollars" and "\\" in each.text else each.text
        out.append(Line(mark + text, each.claims))
        if way % 5 == 0 and style.layout == "plain" and number % 3 == 0:
            out.append(Line(""))
    return out


def words(text: str) -> Statement:
    return Statement([Side(text)], kind="words")
