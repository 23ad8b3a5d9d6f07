"""A page as Markdown that GitHub reads as it is meant. Knows GitHub's rules for formulas and tables, and no
mechanics.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from urllib.parse import quote

from ...document.passage import (
    Answer,
    Blanks,
    Bullets,
    Caution,
    Derivation,
    Emphasis,
    Heading,
    Judged,
    Line,
    Page,
    Paragraph,
    Passage,
    Picture,
    Plot,
    Prose,
    Row,
    Space,
    Strong,
    Table,
    Text,
)
from ..marked_lines import HEADER, code
from ...formula.latex import latex_rows
from .line import markdown_line
from ..figure.plot import rows as plot_rows
from ...document.author_markdown import prose

_RULE = 24  # of an empty line
Figure = Callable[[Picture | Plot], str]


def markdown(page: Page, strokes: bool = True, figure: Figure | None = None) -> str:
    """A page as GitHub Markdown, ending in a line end.

    `strokes` strikes out units that cancel. `figure` gives the address of a picture; without it, or where it gives "",
    the
    picture's description stands in its place. The page's title heads it unless the page begins with a heading of level
    1.
    """
    blocks = [block for passage in page.passages for block in _blocks(passage, strokes, figure)]
    if not _has_title(page):
        blocks.insert(0, _heading(1, (Text(page.title),), strokes))
    return "\n\n".join(block for block in blocks if block) + "\n"


def passages_markdown(passages: Sequence[Passage], figure: Figure | None = None, strokes: bool = True) -> str:
    """Passages as Markdown blocks, without a title and without a line end behind."""
    blocks = (block for passage in passages for block in _blocks(passage, strokes, figure))
    return "\n\n".join(block for block in blocks if block)


def _has_title(page: Page) -> bool:
    first = page.passages[0] if page.passages else None
    return isinstance(first, Heading) and first.level == 1


def _blocks(passage: Passage, strokes: bool, figure: Figure | None) -> Iterator[str]:
    line = partial(markdown_line, strokes=strokes)
    match passage:
        case Heading(level, words):
            yield _heading(level, words, strokes)
        case Paragraph(words):
            yield line(words)
        case Prose(source):
            for inner in prose(source):
                yield from _blocks(inner, strokes, figure)
        case Derivation(rows):
            yield _derivation(rows, strokes) if rows else ""
        case Blanks(reasons):
            yield _grid(["", ""], [":--", ":--"], [["\\_" * _RULE, line(each)] for each in reasons])
        case Answer(words):
            yield "> " + line(_restyled(words, Strong))
        case Bullets(items):
            yield "\n".join("- " + line(item) for item in items)
        case Table():
            yield from _table(passage, strokes)
        case Caution(words):
            yield line(_restyled(words, Emphasis))
        case Picture():
            yield from _picture(passage, strokes, figure)
        case Plot():
            yield from _picture(passage, strokes, figure)
            if not passage.tabled:
                first, *others = [[markdown_line((Text(cell),)) for cell in row] for row in plot_rows(passage)]
                yield _grid(first, [":--", *["--:"] * (len(first) - 1)], others)
        case Judged():
            yield from _judged(passage, strokes)
        case Space(title, _, checklist):
            yield line((Strong(title),))
            yield "\n".join("- [ ] " + line(item) for item in checklist)


def _heading(level: int, words: Line, strokes: bool) -> str:
    return "#" * min(max(level, 1), 6) + " " + markdown_line(words, strokes=strokes)


def _restyled(words: Line, style: type[Strong] | type[Emphasis]) -> Line:
    """The plain words of a line marked; a lone full stop behind a formula stays as it is."""
    return tuple(
        style(piece.text) if isinstance(piece, Text) and any(map(str.isalnum, piece.text)) else piece for piece in words
    )


def _picture(picture: Picture | Plot, strokes: bool, figure: Figure | None) -> Iterator[str]:
    address = figure(picture) if figure else ""
    if address:
        alternative = markdown_line((Text(picture.description),))
        yield f"![{alternative}]({quote(address, safe='/:?#%&=+~,.-_')})"
    else:
        yield markdown_line((Emphasis(picture.description),))
    yield markdown_line(picture.caption, strokes=strokes)


def _derivation(rows: Sequence[Row], strokes: bool) -> str:
    """A display where the formulas stand alone; a table with the formulas in two columns where words stand beside
    them.
    """
    sides = latex_rows(rows, strokes)
    if any(row.label or row.note for row in rows):
        return _worked(rows, sides, strokes)
    if len(sides) == 1:
        return "```math\n" + " ".join(sides[0]).strip() + "\n```"
    body = " \\\\\n".join(f"{left} &{rest}" for left, rest in sides)
    return "```math\n\\begin{aligned}\n" + body + "\n\\end{aligned}\n```"


def _worked(rows: Sequence[Row], sides: Sequence[tuple[str, str]], strokes: bool) -> str:
    cells = [
        (
            markdown_line(row.label, strokes=strokes),
            _cell(left),
            _cell("{} " + rest if rest else ""),
            markdown_line(row.note, strokes=strokes),
        )
        for row, (left, rest) in zip(rows, sides, strict=True)
    ]
    kept = [place for place in range(4) if place in (1, 2) or any(row[place] for row in cells)]
    rules = (":--", "--:", ":--", ":--")
    return _grid([""] * len(kept), [rules[place] for place in kept], [[row[place] for place in kept] for row in cells])


def _cell(formula: str) -> str:
    if not formula:
        return ""
    return rf"$`\displaystyle {formula}`$" if r"\frac" in formula else f"$`{formula}`$"


def _judged(judged: Judged, strokes: bool) -> Iterator[str]:
    """A working as a table, each line as code; the notes stand below it in its cell."""
    rows = []
    for each in judged.lines:
        below = [markdown_line(note, strokes=strokes) for note in each.notes]
        style = Strong if each.marked else Text
        verdict = markdown_line((style(f"{each.sign} {each.word}"),))
        rows.append((markdown_line((style(str(each.number)),)), verdict, "<br>".join((code(each.typed), *below))))
    yield markdown_line((Strong(judged.caption),))
    yield _grid(HEADER, ["--:", ":--", ":--"], rows)


def _table(table: Table, strokes: bool) -> Iterator[str]:
    width = max(map(len, (table.header, *table.rows)))
    if not width:
        return
    cells = [[markdown_line(cell, strokes=strokes) for cell in row] for row in (table.header, *table.rows)]
    header, *rows = [[*row, *[""] * (width - len(row))] for row in cells]
    yield markdown_line((Strong(table.caption),))
    yield _grid(header, ["--:" if place in table.right else ":--" for place in range(width)], rows)


def _grid(header: Sequence[str], rules: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    return "\n".join("| " + " | ".join(row) + " |" for row in (header, rules, *rows))
