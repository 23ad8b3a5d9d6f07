"""A small book and a small lesson, whole, as they are written: read as they stand here by who wrote them down."""

from __future__ import annotations

import re
from base64 import b64encode
from hashlib import sha256
from importlib.resources import files

from formulas import a, one, q

from explain.document.board import Board, Lesson
from explain.document.passage import (
    Answer,
    Axis,
    Curve,
    Derivation,
    Drawing,
    Line,
    Paragraph,
    Picture,
    Plot,
    Row,
    Text,
)
from explain.document.volume import Entry, Part, Place, Volume
from explain.write.html.board import html_boards
from explain.write.html.book import html_volume
from explain.write.html.book_elements import back, front
from explain.write.markdown.book import markdown_volume


def says(words: str) -> Line:
    return (Text(words),)


FOREARM = Picture(Drawing((0.0, 0.0), "elbow"), "Forces", "A level forearm.")
VOLUME = Volume(
    "Levers & arms",
    "A first book",
    ("Ilva Marsk", "Oke Brandt"),
    "Student edition",
    "A teaching model.",
    "A model.",
    (
        Part("conventions", "conventions", 1, "", "How it is written", (Paragraph(says("Up is positive.")),)),
        Part("chapter", "chapter-1", 1, "1", "Level arms", (Paragraph(says("Arms.")),)),
        Part("prose", body=(Paragraph(says("It begins.")),)),
        Part("problem", "problem-1-1", 2, "1.1", "Jug & palm", (Paragraph(says("How hard?")), FOREARM)),
        Part("problem", "problem-1-2", 2, "1.2", "Rock", ready="<p>Ready.</p>"),
        Part("answers", "answers", 1, "", "Answers"),
        Part("answer", "answer-1-1", 2, "1.1", "Jug", (Answer(says("5 N.")),)),
    ),
    (
        Entry("Joints", "elbow", (Place("1.1", "problem-1-1"), Place("1.2", "problem-1-2"))),
        Entry("Joints", "hip", (Place("1.2", "problem-1-2"),)),
        Entry("Muscles", "biceps & co.", (Place("1.1", "problem-1-1"),)),
    ),
)
BARE = Volume(
    "Bare", "", (), "Second edition", "Care.", "", (Part("prose", body=(Paragraph(says("x")),)),), language="fr"
)
LESSON = Lesson(
    "Jug & palm",
    (
        Board("Jug & all", "Jug", (Paragraph(says("Hold it.")),), chapter="Jug"),
        Board(
            "The balance of all turning moments about the joint E",
            "sum",
            (
                Derivation(
                    (
                        Row(one(a("F_B")), (("=", one(q("5", "N"))),), says("about E"), says("why")),
                        Row((), (("=", one(q("6", "N"))),)),
                    )
                ),
            ),
            FOREARM,
            ("body",),
            True,
            squeeze=0.8,
        ),
        Board(
            "The balance of all turning moments about the joint of elb",
            "x",
            (
                Plot(
                    "lines",
                    "Pull",
                    "It rises.",
                    Axis("distance", "m"),
                    Axis("pull", "N"),
                    (Curve("biceps", ((0.1, 100.0), (0.25, 120.0))),),
                    caption=says("By distance."),
                ),
            ),
        ),
        Board("The balance of all turning moments about the joint of el", "y"),
    ),
    "en-GB",
)


def shown(document: str) -> str:
    """HTML without the insides of style, script, formulas and figures, each tag on a line."""
    bare = re.sub(r"<(style|script)>.*?</\1>", r"<\1/>", document, flags=re.DOTALL)
    bare = re.sub(r"<math.*?</math>", lambda found: f"[{re.sub('<[^>]*>', '', found[0])}]", bare)
    bare = re.sub(r'<svg.*?aria-labelledby="(.*?)".*?</svg>', r"<svg \1/>", bare, flags=re.DOTALL)
    return bare.replace("><", ">\n<")


def styles(*names: str) -> str:
    return "".join((files("explain.write.html") / name).read_text("utf-8") for name in names)


def style(document: str) -> str:
    return document.partition("<style>\n")[2].partition("</style>")[0]


MARKDOWN = r"""# Levers \& arms

*A first book*

*Ilva Marsk, Oke Brandt*

*Student edition*

A teaching model.

# Contents

- [How it is written](#conventions)
- [1 Level arms](#chapter-1)
  - [1.1 Jug \& palm](#problem-1-1)
  - [1.2 Rock](#problem-1-2)
- [Answers](#answers)
- [Index](#index-of-the-book)

<a id="conventions"></a>

# How it is written

Up is positive.

<a id="chapter-1"></a>

# 1 Level arms

Arms.

It begins.

<a id="problem-1-1"></a>

## Problem 1.1 Jug \& palm

How hard?

*A level forearm.*

<a id="problem-1-2"></a>

## Problem 1.2 Rock

<p>Ready.</p>

<a id="answers"></a>

# Answers

<a id="answer-1-1"></a>

## 1.1 Jug

> **5 N.**

<a id="index-of-the-book"></a>

# Index

## Joints

- elbow: [1.1](#problem-1-1), [1.2](#problem-1-2)
- hip: [1.2](#problem-1-2)

## Muscles

- biceps \& co.: [1.1](#problem-1-1)
"""
HTML = r"""<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>Levers &amp; arms</title>
<style/>
</head>
<body>

<header class="cover">
<h1 class="title">Levers &amp; arms</h1>
<p class="subtitle">A first book</p>
<p class="authors">Ilva Marsk, Oke Brandt</p>
<p class="edition">Student edition</p>
<p class="caution" data-foot="A model.">A teaching model.</p>
</header>
<nav class="contents" aria-label="Contents">
<h1>Contents</h1>
<ul role="list">
<li class="level-1">
<a href="#conventions">
<span class="words">How it is written</span>
</a>
</li>
<li class="level-1">
<a href="#chapter-1">
<span class="number">1</span> <span class="words">Level arms</span>
</a>
</li>
<li class="level-2">
<a href="#problem-1-1">
<span class="number">1.1</span> <span class="words">Jug &amp; palm</span>
</a>
</li>
<li class="level-2">
<a href="#problem-1-2">
<span class="number">1.2</span> <span class="words">Rock</span>
</a>
</li>
<li class="level-1">
<a href="#answers">
<span class="words">Answers</span>
</a>
</li>
<li class="level-1">
<a href="#index-of-the-book">
<span class="words">Index</span>
</a>
</li>
</ul>
</nav>
<main>
<section class="in-conventions">
<h1 id="conventions">
<span class="words">How it is written</span>
</h1>
<p>Up is positive.</p>
</section>
<section class="in-chapter">
<h1 id="chapter-1">
<span class="number">1</span> <span class="words">Level arms</span>
</h1>
<p>Arms.</p>
</section>
<section class="in-prose">
<p>It begins.</p>
</section>
<section class="in-problem">
<h2 id="problem-1-1">
<span class="number">Problem 1.1</span> <span class="words">Jug &amp; palm</span>
</h2>
<p>How hard?</p>
<figure>
<div class="sheet">
<svg problem-1-1-1-title problem-1-1-1-desc/>
</div>
</figure>
</section>
<section class="in-problem">
<h2 id="problem-1-2">
<span class="number">Problem 1.2</span> <span class="words">Rock</span>
</h2>
<p>Ready.</p>
</section>
<section class="in-answers">
<h1 id="answers">
<span class="words">Answers</span>
</h1>
</section>
<section class="in-answer">
<h2 id="answer-1-1">
<span class="number">1.1</span> <span class="words">Jug</span>
</h2>
<p class="answer">
<span class="kept">5 N</span>.</p>
</section>
<section class="in-index">
<h1 id="index-of-the-book">Index</h1>
<p>The numbers are those of problems.</p>
<div class="entries">
<h2>Joints</h2>
<ul>
<li>elbow, <a href="#problem-1-1">1.1</a>, <a href="#problem-1-2">1.2</a>
</li>
<li>hip, <a href="#problem-1-2">1.2</a>
</li>
</ul>
<h2>Muscles</h2>
<ul>
<li>biceps &amp; co., <a href="#problem-1-1">1.1</a>
</li>
</ul>
</div>
</section>
</main>
</body>
</html>
"""  # noqa: E501
BARE_HTML = r"""
<header class="cover">
<h1 class="title">Bare</h1>
<p class="edition">Second edition</p>
<p class="caution" data-foot="">Care.</p>
</header>
<nav class="contents" aria-label="Contents">
<h1>Contents</h1>
<ul role="list">
</ul>
</nav>
<main>
<section class="in-prose">
<p>x</p>
</section>
</main>
</body>
</html>
"""
BARE_MARKDOWN = r"""# Bare

*Second edition*

Care.

# Contents

x
"""
BOARDS = r"""<main>
<article class="board" id="page-1" aria-labelledby="head-1" tabindex="-1">
<div class="face">
<h1 id="head-1" class="part">Jug &amp; all</h1>
<div class="words whole">
<p>Hold it.</p>
</div>
<p class="number">
<span class="heard">Page </span>1 / 4</p>
</div>
</article>
<article class="board" id="page-2" aria-labelledby="head-2" tabindex="-1">
<div class="face tight">
<h2 id="head-2" class="part">The balance of all turning moments about the joint E</h2>
<div class="figure">
<div class="sheet">
<svg board-2-title board-2-desc/>
</div>
</div>
<div class="words">
<div class="wide" tabindex="0" role="group" aria-label="Lines of working">
<ol role="list" class="lines" style="font-size:0.800em">
<li>
<div class="label">about E</div>
<div class="left">[FB]</div>
<div class="rest">
<span>[=5N]</span>
</div>
<div class="note">why</div>
</li>
<li class="newest">
<span class="heard">New: </span>
<div class="left">
</div>
<div class="rest">
<span>[=6N]</span>
</div>
</li>
</ol>
</div>
</div>
<p class="number">
<span class="heard">Page </span>2 / 4</p>
</div>
</article>
<article class="board" id="page-3" aria-labelledby="head-3" tabindex="-1">
<div class="face">
<h2 id="head-3" class="part long">The balance of all turning moments about the joint of elb</h2>
<div class="words whole">
<figure>
<div class="sheet">
<svg plot-1-title plot-1-desc/>
</div>
<figcaption>By distance.</figcaption>
</figure>
</div>
<p class="number">
<span class="heard">Page </span>3 / 4</p>
</div>
</article>
<article class="board" id="page-4" aria-labelledby="head-4" tabindex="-1">
<div class="face">
<h2 id="head-4" class="part">The balance of all turning moments about the joint of el</h2>
<div class="words whole">
</div>
<p class="number">
<span class="heard">Page </span>4 / 4</p>
</div>
</article>
</main>
<script/>
</body>
</html>
"""


def test_a_whole_book_as_markdown() -> None:
    assert MARKDOWN == markdown_volume(VOLUME)
    assert BARE_MARKDOWN == markdown_volume(BARE)


def test_a_whole_book_as_html() -> None:
    assert HTML == shown(html_volume(VOLUME))
    bare = html_volume(BARE)
    assert BARE_HTML == shown(bare).partition("<body>\n")[2]
    assert '<html lang="fr">' in bare
    assert styles("screen.css", "book-screen.css") == style(html_volume(VOLUME))


def test_contents_and_index_tell_the_pages_that_are_known() -> None:
    contents = "".join(front(VOLUME, {"problem-1-1": 7, "index-of-the-book": 12}))
    assert ['"#problem-1-1" data-page="7"', '"#index-of-the-book" data-page="12"'] == re.findall(
        r'href=("\S+" data-page="\d+")', contents
    )
    index = back(VOLUME.index, {"problem-1-2": 9}, ' data-x="1"')
    assert 2 == index.count('<a href="#problem-1-2" data-page="9">1.2</a>') == index.count("data-page")
    assert index.startswith('<section class="in-index" data-x="1"><h1 id="index-of-the-book">Index</h1>')


def test_a_whole_lesson_as_html() -> None:
    assert BOARDS == shown(html_boards(LESSON)).partition("<body>\n")[2]


def test_a_lesson_has_one_script_which_its_policy_names_by_its_hash() -> None:
    """Content Security Policy Level 3, 2.3.1: sha256- and the hash of the script in base64."""
    document = html_boards(LESSON)
    script = document.partition("<script>")[2].partition("</script>")[0]
    named = b64encode(sha256(script.encode()).digest()).decode()
    assert styles("board.js") == script
    assert f"form-action 'none'; script-src 'sha256-{named}'\">" in document
    assert styles("board.css", "board-screen.css") == style(document)
    assert ('<html lang="en-GB">' in document, "<title>Jug &amp; palm</title>" in document) == (True, True)


def test_a_handout_has_no_script_and_room_for_notes_behind_each_board() -> None:
    document = html_boards(LESSON, handout=True)
    assert styles("board.css", "handout.css") == style(document)
    assert "script" not in document
    notes = '<div class="notes">\n<p>Notes</p>\n</div>\n'
    assert (
        BOARDS.replace("<script/>\n", "").replace("</article>\n", f"</article>\n{notes}")
        == shown(document).partition("<body>\n")[2]
    )
