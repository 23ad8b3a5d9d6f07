"""A small reader of LaTeX for the tests: groups and environments that close, dollars in pairs, commands that plain
LaTeX and amsmath have. Shares no code with the program.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

# The LaTeX Companion and the user's guide of amsmath; those of the program that neither has would be found here.
KNOWN = frozenset(
    r"""
    \section \subsection \subsubsection \paragraph \begin \end \item \textbf \textit \texttt \textrm \bfseries
    \footnotesize \raggedright \noindent \parbox \fbox \rule \linewidth \hline \vspace \clearpage \medskip \par \quad
    \strut \hangindent \displaystyle \text \textbackslash \textasciicircum \textasciitilde \textless \textgreater
    \textbar \textasciigrave \textendash \textemdash \textquoteleft \textquoteright \textquotedblleft
    \textquotedblright \ldots \frac \sqrt \left \right \mathrm \sin \cos \tan \Sigma \Delta \approx \le \ge \ne \to
    \cdot \times \circ \perp \parallel \surd \hat \sim \vert \lbrace \rbrace \backslash \tfrac \ss \ae \AE \o \O \oe
    \OE \l \L \i \r \H \v \c \u \d \alpha \beta \gamma \delta \epsilon \zeta \eta \theta \iota \kappa \lambda \mu \nu
    \xi \pi \rho \sigma \tau \upsilon \phi \chi \psi \omega \Gamma \Theta \Lambda \Xi \Pi \Upsilon \Phi \Psi \Omega
    """.split()
)
SIGNS = frozenset("\\" + sign for sign in "\\,;: $&#%_{}`'^~=.\"")
ENVIRONMENTS = frozenset(("center", "itemize", "description", "tabular", "align*"))
_TOKEN = re.compile(r"\\[A-Za-z]+\*?|\\.|[{}$%&\n]|[^\\{}$%&\n]+", re.DOTALL)
_NAME = re.compile(r"\{([a-z]+\*?)\}")


def faults(source: str) -> Iterator[str]:
    """What is wrong with a body, in words; nothing for a good one."""
    if not source.isascii():
        yield "a character that is not ASCII"
    groups: list[str] = []
    environments: list[str] = []
    place = 0
    while place < len(source):
        token = _TOKEN.match(source, place)
        if token is None:
            yield f"a lone backslash at {place}"
            return
        text, place = token[0], token.end()
        if text == "%":
            place = source.find("\n", place) if "\n" in source[place:] else len(source)
        elif text in ("\\begin", "\\end"):
            name = _NAME.match(source, place)
            yield from _environment(text, name[1] if name else "", environments)
        elif text.startswith("\\"):
            if text.rstrip("*") not in KNOWN and text not in SIGNS and text != "\\\n":
                yield f"the command {text}"
        elif text in "{":
            groups.append("{")
        elif text == "}":
            if not groups or groups.pop() != "{":
                yield f"a brace that closes nothing at {place}"
        elif text == "$":
            if groups and groups[-1] == "$":
                groups.pop()
            else:
                groups.append("$")
        elif text == "\n" and source[place : place + 1] == "\n" and "$" in groups:
            yield f"a paragraph that ends within a formula at {place}"
    yield from (f"{each} is left open" for each in (*groups, *environments))


def _environment(mark: str, name: str, open_ones: list[str]) -> Iterator[str]:
    if name not in ENVIRONMENTS:
        yield f"the environment {name}"
    if mark == "\\begin":
        open_ones.append(name)
    elif not open_ones or open_ones.pop() != name:
        yield f"an end of {name} that nothing began"
