"""What an author may write in Markdown, what becomes of it, and what is refused."""

from __future__ import annotations

import pytest
from formulas import HOSTILE
from hypothesis import given, settings
from hypothesis import strategies as st

from explain.document.passage import Bullets, Emphasis, Maths, Paragraph, Passage, Strong, Table, Text
from explain.document.untrusted_text import one_line
from explain.document.author_markdown import prose

TYPED = st.one_of(
    st.text(max_size=30), st.text(alphabet="*_`[]()<>&#x202E;!\n 1.-", max_size=30), st.sampled_from(HOSTILE)
)


@pytest.mark.parametrize(
    ("source", "expected"),
    [
        (
            "A **rock** of *6 kg*\nand `code`",
            (Paragraph((Text("A "), Strong("rock"), Text(" of "), Emphasis("6 kg"), Text(" and code"))),),
        ),
        (
            "How?\n(a) The *pull*.\n**(b)** The\n(cm) force\nof (c) it.",
            (
                Paragraph((Text("How?"),)),
                Paragraph((Text("(a) The "), Emphasis("pull"), Text("."))),
                Paragraph((Strong("(b)"), Text(" The (cm) force of (c) it."))),
            ),
        ),
        ("# Head *x*", (Paragraph((Strong("Head x"),)),)),
        ("- a\n- b\n  - c", (Bullets(((Text("a"),), (Text("b"),), (Text("c"),))),)),
        ("3. a\n4. b", (Paragraph((Text("3. "), Text("a"))), Paragraph((Text("4. "), Text("b"))))),
        ("> said", (Paragraph((Text("said"),)),)),
        ("```\nx = 1\n\ny\n```", (Paragraph((Text("x = 1"),)), Paragraph((Text("y"),)))),
        ("[here](http://x/y)", (Paragraph((Text("here (http://x/y)"),)),)),
        ("<http://x/y>", (Paragraph((Text("http://x/y"),)),)),
        ("[](http://x/y)", (Paragraph((Text("http://x/y"),)),)),
        ("![img](http://x)", (Paragraph((Text("!img (http://x)"),)),)),
        ("a<br><img src=x>", (Paragraph((Text("a<br><img src=x>"),)),)),
        ("<script>\nalert(1)\n</script>", (Paragraph((Text("<script> alert(1) </script>"),)),)),
        ("[x](javascript:alert(1))", (Paragraph((Text("[x](javascript:alert(1))"),)),)),
        ("a &#x202E;b \u202ec", (Paragraph((Text("a \ufffdb \ufffdc"),)),)),
        ("a\n\n---\n\nb", (Paragraph((Text("a"),)), Paragraph((Text("b"),)))),
        (
            "| h | n |\n|---|--:|\n| *x* | 2 |",
            (Table("", ((Text("h"),), (Text("n"),)), (((Emphasis("x"),), (Text("2"),)),), frozenset({1})),),
        ),
        ("", ()),
    ],
)
def test_an_authors_markdown_becomes_passages(source: str, expected: tuple[Passage, ...]) -> None:
    assert expected == prose(source)


@settings(max_examples=300, deadline=None)
@given(st.lists(TYPED, max_size=3))
def test_prose_never_holds_a_control_character(lines: list[str]) -> None:
    texts = [
        piece.text
        for passage in prose("\n\n".join(lines))
        if isinstance(passage, Paragraph)
        for piece in passage.line
        if not isinstance(piece, Maths)
    ]
    assert [one_line(text) for text in texts] == texts
