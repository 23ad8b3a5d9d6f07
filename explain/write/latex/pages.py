"""A page as the body of a LaTeX document: headings, align*, tabular and lists of plain LaTeX. Knows no mechanics."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...document.author_markdown import prose
from ...document.passage import (
    Answer,
    Blanks,
    Bullets,
    Caution,
    Derivation,
    Emphasis,
    Heading,
    Inline,
    Judged,
    Line,
    Maths,
    Page,
    Paragraph,
    Passage,
    Picture,
    Plot,
    Prose,
    Reference,
    Row,
    Space,
    Strong,
    Table,
    Text,
)
from ...formula.latex import latex, latex_rows
from ...formula.plain import plain
from ..figure.plot import rows as plot_rows
from .characters import escaped, formula

HEAD = (
    "% The body of a document: \\input it between \\begin{document} and \\end{document}; "
    "the preamble needs \\usepackage{amsmath}."
)
_HEADINGS = ("section", "subsection", "subsubsection", "paragraph")
_LONG = 56  # letters of the longest row that is set without a break
_TOGETHER = 8  # rows that no sheet parts
_BOX = r"\fbox{\rule{0pt}{.6ex}\rule{.6ex}{0pt}}"


def latex_pages(pages: Sequence[Page]) -> str:
    """Pages as one body in ASCII, each but the first on a new sheet, ending in a line end."""
    bodies = ("\n\n".join(block for block in _page(page) if block) for page in pages)
    return f"{HEAD}\n\n" + "\n\n\\clearpage\n\n".join(bodies) + "\n"


def _page(page: Page) -> Iterator[str]:
    first = page.passages[0] if page.passages else None
    if not (isinstance(first, Heading) and first.level == 1):
        yield _heading(1, (Text(page.title),))
    for passage in page.passages:
        yield from _blocks(passage)


def _blocks(passage: Passage) -> Iterator[str]:
    match passage:
        case Heading(level, words):
            yield _heading(level, words)
        case Paragraph(words):
            yield _line(words)
        case Prose(source):
            for inner in prose(source):
                yield from _blocks(inner)
        case Derivation(rows):
            yield _derivation(rows) if rows else ""
        case Blanks(reasons):
            rule = "\\\\[8mm]\n\\rule{\\linewidth}{.4pt}"
            yield "\n\n".join(f"\\noindent {_small(each)}{rule}" for each in reasons)
        case Answer(words):
            yield _in("center", rf"\fbox{{\parbox{{.9\linewidth}}{{\bfseries {_line(words)}}}}}")
        case Bullets(items):
            yield _in("itemize", "\n".join(rf"\item {_line(item)}" for item in items)) if items else ""
        case Table(caption, header, rows, right):
            yield _table(caption, [list(map(_line, each)) for each in (header, *rows)], right)
        case Caution(words):
            yield rf"{{\footnotesize {_line(words)}\par}}"
        case Picture():
            yield rf"\textit{{{escaped(f'{passage.title}. {passage.description}')}}}"
            yield _small(passage.caption) if passage.caption else ""
        case Plot():
            yield rf"\textit{{{escaped(f'{passage.title}. {passage.description}')}}}"
            if not passage.tabled:
                cells = [list(map(escaped, row)) for row in plot_rows(passage)]
                yield _table("", cells, frozenset(range(1, len(cells[0]))))
        case Judged():
            yield from _judged(passage)
        case Space(title, height, checklist):
            yield rf"\noindent\textbf{{{escaped(title)}}}"
            ticks = "\n".join(rf"\item[{_BOX}] {_line(item)}" for item in checklist)
            yield _in("itemize", ticks) if ticks else ""
            yield rf"\vspace*{{{int(height)}mm}}"


def _heading(level: int, words: Line) -> str:
    return rf"\{_HEADINGS[min(max(level, 1), len(_HEADINGS)) - 1]}*{{{_line(words)}}}"


def _in(environment: str, body: str) -> str:
    return f"\\begin{{{environment}}}\n{body}\n\\end{{{environment}}}"


def _small(words: Line) -> str:
    return rf"{{\footnotesize {_line(words)}}}"


def _line(line: Line) -> str:
    return "".join(map(_piece, line)).strip()


def _piece(piece: Inline) -> str:
    match piece:
        case Maths(of):
            return f"${formula(latex(of))}$"
        case Strong(text):
            return rf"\textbf{{{escaped(text)}}}"
        case Emphasis(text):
            return rf"\textit{{{escaped(text)}}}"
        case Text(text) | Reference(text):
            return escaped(text)


# ---------------------------------------------------------------------- formulas
def _derivation(rows: Sequence[Row]) -> str:
    """Aligned at the relations where formulas stand alone and are short; else a line each, its reason beside it."""
    sides = [(formula(left), formula(rest)) for left, rest in latex_rows(rows)]
    if any(row.note for row in rows) or any(_length(row) > _LONG for row in rows):
        pieces = [rows[place : place + _TOGETHER] for place in range(0, len(rows), _TOGETHER)]
        beside = iter(sides)
        return "\n\n".join(_worked([(row, *next(beside)) for row in piece]) for piece in pieces)
    lines = (rf"{_label(row)}{left} &{rest}" for row, (left, rest) in zip(rows, sides, strict=True))
    return _in("align*", " \\\\\n".join(lines))


def _length(row: Row) -> int:
    return sum(len(plain(terms)) + 3 for terms in (row.left, *(terms for _, terms in row.right)))


def _label(row: Row) -> str:
    return rf"\text{{{_line(row.label)}}}\quad " if row.label else ""


def _worked(rows: Sequence[tuple[Row, str, str]]) -> str:
    """Formulas that may break at their signs, and reasons: two columns of boxes, or one where nothing has a reason."""
    wide = ".57" if any(row.note for row, _, _ in rows) else ".92"
    lines = []
    for row, left, rest in rows:
        whole = f"{_label(row)}{left} {rest}".strip()
        cell = rf"\parbox[t]{{{wide}\linewidth}}{{\raggedright\hangindent=2em $\displaystyle {whole}$\strut}}"
        reason = rf" & \parbox[t]{{.36\linewidth}}{{\raggedright {_small(row.note)}\strut}}" if row.note else ""
        lines.append(cell + reason + r" \\[.6ex]")
    body = "\n".join(lines)
    return f"\\medskip\\noindent\\begin{{tabular}}{{@{{}}ll@{{}}}}\n{body}\n\\end{{tabular}}\\par\\medskip"


# ---------------------------------------------------------------------- tables
def _table(caption: str, cells: Sequence[Sequence[str]], right: frozenset[int]) -> str:
    """A table with a rule under its head; columns of words share the width."""
    columns = max(map(len, cells))
    if not columns:
        return ""
    wide = [place for place in range(1, columns) if place not in right]
    share = f"p{{{0.62 / max(len(wide), 1):.2f}\\linewidth}}"
    form = "".join("r" if place in right else share if place in wide else "l" for place in range(columns))
    full = [" & ".join((*row, *[""] * (columns - len(row)))) + r" \\" for row in cells]
    body = "\n".join((full[0], r"\hline", *full[1:]))
    said = rf"\textit{{{escaped(caption)}}}" + "\\\\[1ex]\n" if caption else ""
    return _in("center", f"{said}\\begin{{tabular}}{{{form}}}\n{body}\n\\end{{tabular}}")


def _judged(judged: Judged) -> Iterator[str]:
    yield rf"\textbf{{{escaped(judged.caption)}}}"
    items = []
    for each in judged.lines:
        notes = "".join(rf"\\ {_small(note)}" for note in each.notes)
        typed = rf"\texttt{{{escaped(each.typed)}}}"
        style = r"\textbf" if each.marked else r"\textrm"
        items.append(rf"\item[{each.number}] {typed} {style}{{{escaped(each.word)}}}{notes}")
    yield _in("description", "\n".join(items)) if items else ""
