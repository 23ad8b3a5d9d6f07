"""A page with every kind of passage, whole, as each writer writes it: read as it stands here by who wrote it down."""

from __future__ import annotations

import re

from formulas import a, one, over, q

from explain.document.passage import (
    Answer,
    Axis,
    Blanks,
    Bullets,
    Caution,
    Curve,
    Derivation,
    Drawing,
    Emphasis,
    Heading,
    Judged,
    JudgedLine,
    Line,
    Maths,
    Page,
    Paragraph,
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
from explain.equation.terms import Terms, term
from explain.write.html.pages import html
from explain.write.latex.pages import latex_pages
from explain.write.markdown.pages import markdown
from explain.write.text.pages import text


def says(words: str) -> Line:
    return (Text(words),)


def f(of: Terms) -> Maths:
    return Maths(of)


PULL, WEIGHT = a("F_B"), a("W_R")
NOTED = (
    Row((term(PULL, q("0.042", "m")), term(WEIGHT, sign=-1)), (("=", ()),), label=says("about E")),
    Row(
        one(PULL),
        (("=", one(over(q("23.27", "N m"), q("0.042", "m")))),),
        note=(Text("divide by "), f(one(q("0.042", "m")))),
    ),
    Row((), (("=", one(q("554.1", "N"))), ("≈", one(q("554", "N"))))),
)
BARE = (Row(one(PULL), (("=", one(WEIGHT)),)), Row((), (("≈", one(q("554", "N"))),)))
PLOT = Plot(
    "lines",
    "Pull",
    "It rises.",
    Axis("distance", "m"),
    Axis("pull", "N"),
    (Curve("biceps", ((0.1, 100.0), (0.25, None))),),
    caption=says("By distance."),
)
JUDGED = Judged(
    "A working",
    (
        JudgedLine(1, "F*4 = 29*33", "✓", "holds"),
        JudgedLine(2, "F = `9`|", "✗", "does not follow", (says("Read as F = 9."), says("See the sum.")), True),
    ),
)
PAGE = Page(
    "A jug & a palm",
    (
        Prose("A **jug** rests.\n\n- one\n- *two*"),
        Heading(2, (Text("Find "), f(one(PULL)))),
        Heading(9, says("deep")),
        Paragraph(
            (
                Strong("Find"),
                Text(" the pull "),
                f(one(PULL)),
                Text(", "),
                Emphasis("its size"),
                Text(" and "),
                Reference("Problem 2", "p-2"),
                Text("."),
            )
        ),
        Derivation(NOTED),
        Derivation(BARE),
        Derivation(BARE[:1]),
        Blanks((says("divide"), says("round"))),
        Answer((Text("It is "), f(one(q("554", "N"))), Text("."))),
        Bullets((says("up"), says("down"))),
        Table(
            "Given",
            (says("letter"), says("meaning"), says("value")),
            (((f(one(PULL)),), says("pull"), (f(one(q("5", "N"))),)), (says("e"),)),
            frozenset({2}),
        ),
        Table("", (says("h"),), ((says("1"),),)),
        Caution(says("A teaching model.")),
        Picture(Drawing((0.0, 0.0), "elbow"), "Forces", "A level forearm.", says("To scale.")),
        PLOT,
        JUDGED,
        Space("Your diagram", 60, (says("all forces"), says("all arms"))),
    ),
)


TEXT = r"""A jug & a palm
==============

A jug rests.

- one
- two

Find F_B
--------

deep
~~~~

Find the pull F_B, its size and Problem 2.

    about E  F_B (0.042 m) − W_R = 0
             F_B = 23.27 N·m / 0.042 m   divide by 0.042 m
                 = 554.1 N ≈ 554 N

    F_B = W_R
        ≈ 554 N

    F_B = W_R

divide

    ____________________

round

    ____________________


┌──────────────┐
│ It is 554 N. │
└──────────────┘

- up
- down

Given

letter  meaning  value
------  -------  -----
F_B     pull       5 N
e

h
-
1

! A teaching model.

[Forces: A level forearm.]

To scale.

[Pull: It rises.]

distance (m)  biceps (N)
------------  ----------
0.1                  100
0.25                   –

By distance.

A working

Line  Verdict            As typed, and how it was read
----  -----------------  -----------------------------------------------
   1  ✓ holds            F*4 = 29*33
 > 2  ✗ does not follow  F = `9`|
                         Read as F = 9.
                         See the sum.

Your diagram

[ ] all forces
[ ] all arms
"""
MARKDOWN = r"""# A jug \& a palm

A **jug** rests.

- one
- *two*

## Find $`F_{\mathrm{B}}`$

###### deep

**Find** the pull $`F_{\mathrm{B}}`$, *its size* and [Problem 2](#p-2).

|  |  |  |  |
| :-- | --: | :-- | :-- |
| about E | $`F_{\mathrm{B}}\, (0.042\,\mathrm{m}) - W_{\mathrm{R}}`$ | $`{} = 0`$ |  |
|  | $`F_{\mathrm{B}}`$ | $`\displaystyle {} = \frac{23.27\,\mathrm{N{\cdot}\cancel{m}}}{0.042\,\mathrm{\cancel{m}}}`$ | divide by $`0.042\,\mathrm{m}`$ |
|  |  | $`{} = 554.1\,\mathrm{N} \approx 554\,\mathrm{N}`$ |  |

```math
\begin{aligned}
F_{\mathrm{B}} &= W_{\mathrm{R}} \\
 &\approx 554\,\mathrm{N}
\end{aligned}
```

```math
F_{\mathrm{B}} = W_{\mathrm{R}}
```

|  |  |
| :-- | :-- |
| \_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_ | divide |
| \_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_\_ | round |

> **It is** $`554\,\mathrm{N}`$.

- up
- down

**Given**

| letter | meaning | value |
| :-- | :-- | --: |
| $`F_{\mathrm{B}}`$ | pull | $`5\,\mathrm{N}`$ |
| e |  |  |

| h |
| :-- |
| 1 |

*A teaching model.*

*A level forearm.*

To scale.

*It rises.*

By distance.

| distance (m) | biceps (N) |
| :-- | --: |
| 0.1 | 100 |
| 0.25 | – |

**A working**

| Line | Verdict | As typed, and how it was read |
| --: | :-- | :-- |
| 1 | ✓ holds | `F*4 = 29*33` |
| **2** | **✗ does not follow** | ``F = `9`\|``<br>Read as F = 9.<br>See the sum. |

**Your diagram**

- [ ] all forces
- [ ] all arms
"""  # noqa: E501
LATEX = r"""% The body of a document: \input it between \begin{document} and \end{document}; the preamble needs \usepackage{amsmath}.

\section*{A jug \& a palm}

A \textbf{jug} rests.

\begin{itemize}
\item one
\item \textit{two}
\end{itemize}

\subsection*{Find $F_{\mathrm{B}}$}

\paragraph*{deep}

\textbf{Find} the pull $F_{\mathrm{B}}$, \textit{its size} and Problem 2.

\medskip\noindent\begin{tabular}{@{}ll@{}}
\parbox[t]{.57\linewidth}{\raggedright\hangindent=2em $\displaystyle \text{about E}\quad F_{\mathrm{B}}\, (0.042\,\mathrm{m}) - W_{\mathrm{R}} = 0$\strut} \\[.6ex]
\parbox[t]{.57\linewidth}{\raggedright\hangindent=2em $\displaystyle F_{\mathrm{B}} = \frac{23.27\,\mathrm{N{\cdot}m}}{0.042\,\mathrm{m}}$\strut} & \parbox[t]{.36\linewidth}{\raggedright {\footnotesize divide by $0.042\,\mathrm{m}$}\strut} \\[.6ex]
\parbox[t]{.57\linewidth}{\raggedright\hangindent=2em $\displaystyle = 554.1\,\mathrm{N} \approx 554\,\mathrm{N}$\strut} \\[.6ex]
\end{tabular}\par\medskip

\begin{align*}
F_{\mathrm{B}} &= W_{\mathrm{R}} \\
 &\approx 554\,\mathrm{N}
\end{align*}

\begin{align*}
F_{\mathrm{B}} &= W_{\mathrm{R}}
\end{align*}

\noindent {\footnotesize divide}\\[8mm]
\rule{\linewidth}{.4pt}

\noindent {\footnotesize round}\\[8mm]
\rule{\linewidth}{.4pt}

\begin{center}
\fbox{\parbox{.9\linewidth}{\bfseries It is $554\,\mathrm{N}$.}}
\end{center}

\begin{itemize}
\item up
\item down
\end{itemize}

\begin{center}
\textit{Given}\\[1ex]
\begin{tabular}{lp{0.62\linewidth}r}
letter & meaning & value \\
\hline
$F_{\mathrm{B}}$ & pull & $5\,\mathrm{N}$ \\
e &  &  \\
\end{tabular}
\end{center}

\begin{center}
\begin{tabular}{l}
h \\
\hline
1 \\
\end{tabular}
\end{center}

{\footnotesize A teaching model.\par}

\textit{Forces. A level forearm.}

{\footnotesize To scale.}

\textit{Pull. It rises.}

\begin{center}
\begin{tabular}{lr}
distance (m) & biceps (N) \\
\hline
0.1 & 100 \\
0.25 & \textendash{} \\
\end{tabular}
\end{center}

\textbf{A working}

\begin{description}
\item[1] \texttt{F{*}4 = 29{*}33} \textrm{holds}
\item[2] \texttt{F = \textasciigrave{}9\textasciigrave{}\textbar{}} \textbf{does not follow}\\ {\footnotesize Read as F = 9.}\\ {\footnotesize See the sum.}
\end{description}

\noindent\textbf{Your diagram}

\begin{itemize}
\item[\fbox{\rule{0pt}{.6ex}\rule{.6ex}{0pt}}] all forces
\item[\fbox{\rule{0pt}{.6ex}\rule{.6ex}{0pt}}] all arms
\end{itemize}

\vspace*{60mm}

\clearpage

\section*{Two}
"""  # noqa: E501
HTML = r"""<main>
<article id="page-1">
<h1>A jug &amp; a palm</h1>
<p>A <strong>jug</strong> rests.</p>
<ul>
<li>one</li>
<li>
<em>two</em>
</li>
</ul>
<h2>Find [inline: FB]</h2>
<h6>deep</h6>
<p>
<strong>Find</strong> the pull <span class="kept">[inline: FB],</span> <em>its size</em> and <a href="#p-2">Problem 2</a>.</p>
<div class="scroll" tabindex="0" role="group" aria-label="Lines of working">
<ol role="list" class="derivation labelled noted">
<li>
<div class="label">about E</div>
<div class="across">[block: FB(0.042m)−WR=0]</div>
</li>
<li>
<div class="left">[block: FB]</div>
<div class="rest">
<span>[block: =23.27N·m0.042m]</span>
</div>
<div class="note">divide by 0.042 m</div>
</li>
<li>
<div class="left">
</div>
<div class="rest">
<span>[block: =554.1N]</span>
<span>[block: ≈554N]</span>
</div>
</li>
</ol>
</div>
<div class="scroll" tabindex="0" role="group" aria-label="Lines of working">
<ol role="list" class="derivation">
<li>
<div class="left">[block: FB]</div>
<div class="rest">
<span>[block: =WR]</span>
</div>
</li>
<li>
<div class="left">
</div>
<div class="rest">
<span>[block: ≈554N]</span>
</div>
</li>
</ol>
</div>
<div class="scroll" tabindex="0" role="group" aria-label="Lines of working">
<ol role="list" class="derivation">
<li>
<div class="left">[block: FB]</div>
<div class="rest">
<span>[block: =WR]</span>
</div>
</li>
</ol>
</div>
<ol role="list" class="blanks">
<li>
<p>divide</p>
<div class="rule">
</div>
</li>
<li>
<p>round</p>
<div class="rule">
</div>
</li>
</ol>
<p class="answer">It is <span class="kept">554 N.</span>
</p>
<ul>
<li>up</li>
<li>down</li>
</ul>
<div class="wide" tabindex="0" role="group" aria-label="Given">
<table>
<caption>Given</caption>
<thead>
<tr>
<th scope="col">letter</th>
<th scope="col">meaning</th>
<th scope="col" class="right">value</th>
</tr>
</thead>
<tbody>
<tr>
<th scope="row">
<span class="heard">F sub B</span>
<span aria-hidden="true">[inline: FB]</span>
</th>
<td>pull</td>
<td class="right">5 N</td>
</tr>
<tr>
<th scope="row">e</th>
</tr>
</tbody>
</table>
</div>
<div class="wide" tabindex="0" role="group" aria-label="Table">
<table>
<thead>
<tr>
<th scope="col">h</th>
</tr>
</thead>
<tbody>
<tr>
<th scope="row">1</th>
</tr>
</tbody>
</table>
</div>
<p class="caution">A teaching model.</p>
<figure>
<div class="sheet">
<svg/>
</div>
<figcaption>To scale.</figcaption>
</figure>
<figure>
<div class="sheet">
<svg/>
</div>
<figcaption>By distance.</figcaption>
</figure>
<table class="judged">
<caption>A working</caption>
<thead>
<tr>
<th scope="col">Line</th>
<th scope="col">Verdict</th>
<th scope="col">As typed, and how it was read</th>
</tr>
</thead>
<tbody>
<tr>
<th scope="row">1</th>
<td class="verdict">
<span aria-hidden="true">✓</span> holds</td>
<td>
<code>F*4 = 29*33</code>
</td>
</tr>
<tr class="marked">
<th scope="row">2</th>
<td class="verdict">
<span aria-hidden="true">✗</span> does not follow</td>
<td>
<code>F = `9`|</code>
<p class="read">Read as F = 9.</p>
<p class="read">See the sum.</p>
</td>
</tr>
</tbody>
</table>
<div class="space">
<p>Your diagram</p>
<ul class="checklist">
<li>all forces</li>
<li>all arms</li>
</ul>
<div class="blank" style="height:60mm">
</div>
</div>
</article>
</main>
</body>
</html>
"""  # noqa: E501


def shown(document: str) -> str:
    """HTML without the insides of its formulas and figures, which have tests of their own, each tag on a line."""
    bare = re.sub(r"<svg.*?</svg>", "<svg/>", document, flags=re.DOTALL)
    bare = re.sub(r"<mo [^>]*>(.)</mo>", r"\1", bare)
    return re.sub(
        r'<math[^>]*display="(\w+)"[^>]*>(.*?)</math>',
        lambda found: f"[{found[1]}: {re.sub('<[^>]*>', '', found[2])}]",
        bare,
    ).replace("><", ">\n<")


def test_a_whole_page_as_text() -> None:
    assert TEXT == text(PAGE, 72)


def test_a_whole_page_as_markdown() -> None:
    assert MARKDOWN == markdown(PAGE)


def test_a_whole_page_as_latex_and_another_behind_it() -> None:
    assert LATEX == latex_pages((PAGE, Page("Two", ())))


def test_a_whole_page_as_html() -> None:
    document = html(PAGE)
    assert HTML == shown(document[document.index("<main>") :])
