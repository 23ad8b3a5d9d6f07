"""What the desk is made of, without a desk: its pages word for word, fields beside a file, names, counts, refusals."""

from __future__ import annotations

import asyncio
import tomllib
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from books import problem
from desk_client import words
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import PlainTextResponse
from starlette.routing import Route
from starlette.testclient import TestClient

from explain import Fault
from explain.desk import pages
from explain.desk.form_fields import begun, form_of, meant, typed
from explain.desk.guard import HEADERS, MOST_BODY, Guard
from explain.desk.incoming import form_of as asked_form, json_of, text_of
from explain.desk.kept import Attempt, Count, Kept, kept_lines
from explain.desk.refused import Refused
from explain.desk.shelf import Shelf, name_of, read_text, title_of


# ---------------------------------------------------------------------- pages
def body(page: str) -> str:
    """What stands between the beginning and the end of a page's main part."""
    return page.split('tabindex="-1">\n')[1].rsplit("\n</main>")[0]


def test_a_page_has_a_head_a_way_back_and_one_main_part() -> None:
    style, script = pages.ASSETS["desk.css"].address, pages.ASSETS["working.mjs"].address
    assert pages.page("A & B", "<p>x</p>", "working.mjs", "<All>", "/a?b&c") == (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        '<meta name="color-scheme" content="light dark">\n'
        '<title>A &amp; B</title>\n<link rel="icon" href="data:,">\n'
        f'<link rel="stylesheet" href="{style}">\n<script type="module" src="{script}"></script>\n</head>\n'
        '<body class="desk">\n<a class="skip" href="#main">Skip to the page</a>\n'
        '<nav aria-label="The desk"><a href="/a?b&amp;c">&lt;All&gt;</a></nav>\n'
        '<main id="main" tabindex="-1">\n<p>x</p>\n</main>\n</body>\n</html>\n'
    )
    plain = pages.page("A", "x")
    assert "<script" not in plain and "<nav" not in plain


def test_what_a_page_fetches_is_named_by_what_it_holds() -> None:
    for name, asset in pages.ASSETS.items():
        assert asset.address.startswith("/asset/") and asset.address.endswith(f"/{name}")
        assert len(asset.address.split("/")[2]) == 16 and pages.BY_ADDRESS[asset.address] is asset
    kinds = {each.kind for name, each in pages.ASSETS.items() if name.endswith(".mjs")}
    assert kinds == {"text/javascript; charset=utf-8"}
    assert pages.ASSETS["desk.css"].kind == "text/css; charset=utf-8"


FAULT = {
    "line": 4,
    "key": "pivot.bone",
    "found": "3",
    "expected": "a name",
    "advice": "So <it> is.",
    "example": "a & b",
}


def test_the_list_names_problems_and_faults() -> None:
    entries = [
        pages.Entry("/p/a?b", "A <jug>", "about & all"),
        pages.Entry("/p/c", "Plain"),
        pages.Entry("/p/d", "Broken", fault=FAULT),
    ]
    listed = (
        '<h1>Problems</h1>\n<ul class="problems"><li><a href="/p/a?b">A &lt;jug&gt;</a><p>about &amp; all</p></li>'
        '<li><a href="/p/c">Plain</a></li><li>{}<div class="fault"><p>Line 4: pivot.bone: found 3.</p>'
        "<p>Expected a name.</p><p>So &lt;it&gt; is.</p><p>Write, for example: <code>a &amp; b</code></p></div></li>"
        "</ul>"
    )
    assert body(pages.problems(entries)) == listed.format("<span>Broken</span>")
    assert body(pages.problems(entries, edit=True)) == listed.format('<a href="/p/d">Broken</a>')
    assert words(body(pages.problems([]))) == (
        "Problems There is no problem in this folder yet. explain new NAME writes a small one that works at once; put "
        "it, or a problem file of your own (a name that ends in .toml), into the folder, and load this page again."
    )


@pytest.mark.parametrize(
    ("fault", "html"),
    [
        ({}, "<p>Found .</p>"),
        ({"found": "x"}, "<p>Found x.</p>"),
        ({"line": 2, "found": "x"}, "<p>Line 2: found x.</p>"),
        ({"key": "g", "found": "x", "expected": "y"}, "<p>g: found x.</p><p>Expected y.</p>"),
    ],
)
def test_a_fault_tells_what_is_known_of_it(fault: dict[str, Any], html: str) -> None:
    assert html == pages.fault(fault)


def test_what_went_wrong_has_a_page_with_the_way_on() -> None:
    said = pages.sorry("No & no", "It is <gone>.", "/home")
    assert body(said) == "<h1>No &amp; no</h1>\n<p>It is &lt;gone&gt;.</p>"
    assert '<a href="/home">All problems</a>' in said and '<a href="/">' in pages.sorry("x", "y")


def test_the_page_of_a_problem_has_its_form_and_what_was_typed() -> None:
    working = pages.Working("F < 3\n", "Line 2 <b>", "wrong", 2, 1, "<p>judged</p>")
    assert (
        body(pages.problem("/p/a&b", "A & B", "<p>the problem</p>", "Careful.", working, "Kept & counted."))
        == """<h1>A &amp; B</h1>
<section class="statement" aria-label="The problem">
<p>the problem</p>
</section>
<form id="working" method="post" action="/p/a&amp;b/working" autocomplete="off">
<h2><label for="lines">Your working</label></h2>
<p id="how">One step a line, as you would write it on paper: <code>W = m g</code>, then its numbers on the next line. A
line is judged when you go on to the next. Other ways to the same end are just as right.</p>
<div class="beside">
<textarea id="lines" name="working" rows="9" spellcheck="false" autocapitalize="off" autocorrect="off"
 aria-describedby="how">
F &lt; 3
</textarea>
<section class="echo" aria-labelledby="echo-head"><h3 id="echo-head">How it is read</h3><ol id="echo"></ol></section>
</div>
<p class="buttons"><button name="hints" value="0" id="judge">Judge my lines</button>
<button name="hints" value="2" id="hint">One hint more</button>
<label class="keep" hidden><input type="checkbox" id="keep"> Keep on this device</label></p>
<input type="hidden" name="for" id="for" value="2">
<p id="said" role="status" data-state="wrong">Line 2 &lt;b&gt;</p>
<p id="state" role="status"></p>
</form>
<p class="caution">Kept &amp; counted.</p>
<p id="kept" hidden>Your lines are kept under the code <code id="kept-code"></code>. <button type="button" \
class="second" id="forget">Delete them</button></p>
<section id="judged" aria-label="Your lines, judged"><p>judged</p></section>
<p class="caution">Careful.</p>"""
    )


@pytest.mark.parametrize(
    ("state", "hints", "button"),
    [
        ("", 0, '<button name="hints" value="1" id="hint" hidden>A hint</button>'),
        ("done", 1, '<button name="hints" value="2" id="hint" hidden>One hint more</button>'),
        ("wrong", 0, '<button name="hints" value="1" id="hint">A hint</button>'),
        ("wrong", 2, '<button name="hints" value="3" id="hint">One hint more</button>'),
        ("wrong", 3, '<button name="hints" value="4" id="hint" hidden>One hint more</button>'),
    ],
)
def test_a_hint_is_offered_where_a_line_is_wrong_and_one_is_left(state: str, hints: int, button: str) -> None:
    said = pages.problem("/p/a", "A", "", "", pages.Working(state=state, hints=hints))
    assert button in said and 'id="kept"' not in said


@pytest.mark.parametrize(
    ("unknown", "said"), [(True, "There is no such code here: are all its letters right?"), (False, "")]
)
def test_a_code_is_asked_for(unknown: bool, said: str) -> None:
    assert (
        body(pages.code_wanted("/p/a&b", "A <b>", unknown))
        == f"""<h1>A &lt;b&gt;</h1>
<p>Everyone has numbers of their own for this problem. Your code opens yours.</p>
<form method="get" action="/p/a&amp;b" class="code">
<p><label for="code">Your code</label><br>
<input type="text" id="code" name="code" required maxlength="16" autocomplete="off" autocapitalize="off"
 spellcheck="false"></p>
<p role="status">{said}</p>
<p class="buttons"><button>Open my problem</button></p>
</form>"""
    )


# ---------------------------------------------------------------------- what is typed into fields
@pytest.mark.parametrize(
    ("value", "words"),
    [(True, "true"), (False, "false"), (["a", 3], "a\n3"), (3, "3"), ("4 cm", "4 cm"), (2.5, "2.5")],
)
def test_a_value_is_typed_as_it_is_written(value: object, words: str) -> None:
    assert words == typed(value)


@pytest.mark.parametrize(
    ("path", "words", "value"),
    [
        (("title",), "  A  jug \r\n at the well ", "A jug at the well"),
        (("title",), " \r ", None),
        (("ask",), " biceps \r\n\r\nreaction", ["biceps", "reaction"]),
        (("statement",), "One.\r\nTwo.\n\n", "One.\nTwo."),
        (("course", "figures"), " 4 ", 4),
        (("course", "figures"), "four", "four"),
        (("pivot", "reaction"), "false", False),
        (("pivot", "reaction"), "true ", True),
        (("pivot", "reaction"), "maybe", "maybe"),
        (("load", 0, "mass"), "3  kg", "3 kg"),
    ],
)
def test_what_is_typed_is_a_value_of_its_kind(path: tuple[Any, ...], words: str, value: object) -> None:
    assert value == meant({}, path, words) and type(value) is type(meant({}, path, words))


def test_a_statement_that_ended_with_a_line_goes_on_to_do_so() -> None:
    assert "One.\n" == meant({"statement": "Old.\n"}, ("statement",), "One.")


def test_a_new_table_has_a_name_that_nothing_has_and_stands_where_it_may() -> None:
    with_length = {"segment": [{"name": "arm", "length": "3 cm"}], "load": [{"name": "load 1"}, {"name": "x"}]}
    assert begun(with_length, "load") == {"name": "load 2", "mass": "1.0 kg", "at": "10 cm"}
    assert begun({}, "load") == {"name": "load 1", "mass": "1.0 kg", "point": ["10 cm", "0 cm"]}
    assert begun({}, "muscle") == {"name": "muscle 1", "point": ["10 cm", "0 cm"], "direction": "up", "force": "20 N"}
    assert begun(with_length, "force") == {"name": "force 1", "at": "10 cm", "direction": "up", "force": "10 N"}
    assert begun({}, "segment") == {"name": "segment 1", "length": "10 cm"}
    assert begun({}, "couple") == {"name": "couple 1", "moment": "1.0 N m", "turns": "clockwise"}
    assert (begun({}, "pivot"), begun({}, "person"), begun({}, "title")) == ({"name": "pivot"}, {"mass": "70 kg"}, None)


# ---------------------------------------------------------------------- what comes in
def guarded() -> TestClient:
    async def there(request: Request) -> PlainTextResponse:
        return PlainTextResponse("here", headers={"cache-control": "own"})

    app = Starlette(routes=[Route("/", there, methods=["GET", "POST"])])
    hosts, origins = frozenset({"desk:8000"}), frozenset({"http://desk:8000"})
    return TestClient(Guard(app, hosts, origins), base_url="http://desk:8000")


@pytest.mark.parametrize(
    ("method", "heads", "status", "said"),
    [
        ("GET", {}, 200, "here"),
        ("GET", {"host": "DESK:8000"}, 200, "here"),
        ("GET", {"host": "other"}, 421, "This is not the address of this desk.\n"),
        ("POST", {"origin": "http://desk:8000"}, 200, "here"),
        ("POST", {"origin": "HTTP://desk:8000", "sec-fetch-site": "same-origin"}, 200, "here"),
        ("POST", {}, 403, "This did not come from a page of this desk.\n"),
        ("POST", {"origin": "http://other"}, 403, "This did not come from a page of this desk.\n"),
        (
            *("POST", {"origin": "http://desk:8000", "sec-fetch-site": "cross-site"}),
            *(403, "This did not come from a page of this desk.\n"),
        ),
        (
            *("POST", {"origin": "http://desk:8000", "content-length": str(MOST_BODY + 1)}),
            *(413, "This is too long for the desk, or does not say how long it is.\n"),
        ),
        (
            *("POST", {"origin": "http://desk:8000", "content-length": "-1"}),
            *(413, "This is too long for the desk, or does not say how long it is.\n"),
        ),
        (
            *("POST", {"origin": "http://desk:8000", "transfer-encoding": "chunked"}),
            *(413, "This is too long for the desk, or does not say how long it is.\n"),
        ),
    ],
)
def test_what_does_not_come_from_a_page_of_the_desk_is_refused(
    method: str, heads: dict[str, str], status: int, said: str
) -> None:
    answer = guarded().request(method, "/", headers={"content-length": "0", **heads})
    assert (status, said) == (answer.status_code, answer.text)
    own = {"cache-control": "own"} if status == 200 else {}
    assert {**HEADERS, **own}.items() <= dict(answer.headers).items()


def asked(content: bytes) -> Request:
    async def receive() -> dict[str, Any]:
        return {"type": "http.request", "body": content, "more_body": False}

    return Request({"type": "http", "method": "POST", "headers": []}, receive)


def test_a_form_and_an_object_are_read_within_bounds() -> None:
    assert asyncio.run(asked_form(asked(b"a=1&b=&c=%3C"))) == {"a": "1", "b": "", "c": "<"}
    assert len(asyncio.run(asked_form(asked(b"&".join(b"a%d=" % n for n in range(8)))))) == 8
    assert asyncio.run(json_of(asked(b'{"text": "x"}'))) == {"text": "x"}
    for reads, content in (
        (asked_form, b"&".join(b"a%d=" % n for n in range(9))),
        (asked_form, b"\xff"),
        (json_of, b"[1]"),
        (json_of, b"{"),
        (json_of, b"[" * 100_000),
    ):
        with pytest.raises(Refused) as refused:
            asyncio.run(reads(asked(content)))  # type: ignore[operator]
        assert (400, "That could not be read.") == (refused.value.status, refused.value.says)


def test_a_text_that_is_none_or_too_long_is_refused() -> None:
    assert "ab" == text_of({"text": "ab"}, lambda text: len(text) > 2, "Too long.")
    told = []
    for given in ({}, {"text": 3}, {"text": "abc"}):
        with pytest.raises(Refused) as refused:
            text_of(given, lambda text: len(text) > 2, "Too long.")
        told.append((refused.value.status, refused.value.says))
    assert [(400, "That could not be read."), (400, "That could not be read."), (413, "Too long.")] == told


# ---------------------------------------------------------------------- the folder
@pytest.mark.parametrize(
    ("text", "title"),
    [
        ('title = "A"\n[pivot]\n', "A"),
        ("[pivot]\n", ""),
        ("title = 3\n[[load]]\n", ""),
        ("[[segment]]\n", ""),
        ("[[muscle]]\n", ""),
        ("title = \n", ""),
        ('title = "A"\n', None),
        ('title = "A"\n[pivot]\n[base]\n', None),
        ('title = "A"\n[pivot]\n[[step]]\n', None),
        ('chapter = "A"\n[pivot]\n', None),
        ('problem = "A"\n[pivot]\n', None),
    ],
)
def test_a_problem_is_told_from_other_files(text: str, title: str | None, tmp_path: Path) -> None:
    (tmp_path / "a.toml").write_text(text)
    assert title == title_of(tmp_path / "a.toml")


@pytest.mark.parametrize(
    ("stem", "name"),
    [("A Jug_3", "a-jug-3"), ("--", "problem"), ("ü", "problem"), ("x" * 80, "x" * 56), ("-a-", "a")],
)
def test_a_name_in_an_address_is_plain(stem: str, name: str) -> None:
    assert name == name_of(stem)


def test_files_of_one_name_are_told_apart_and_what_changed_is_read_again(tmp_path: Path) -> None:
    for name in ("a b", "a-b", "a_b"):
        (tmp_path / f"{name}.toml").write_text(f'title = "{name}"\n[pivot]\n')
    (tmp_path / "c.toml").write_text("[pivot]\n")
    (tmp_path / "d.toml").mkdir()
    shelf = Shelf(tmp_path)
    told = {name: each.title for name, each in shelf.items().items()}
    assert told == {"a-b": "a b", "a-b-2": "a-b", "a-b-3": "a_b", "c": "c"}
    assert shelf.item("none") is None
    (tmp_path / "c.toml").write_text('title = "New title"\n[pivot]\n')
    assert "New title" == getattr(shelf.item("c"), "title", "")
    (tmp_path / "c.toml").unlink()
    assert shelf.item("c") is None


def test_no_more_is_read_than_may_be(tmp_path: Path) -> None:
    (tmp_path / "a").write_bytes(b"\xef\xbb\xbfabc")
    assert "abc" == read_text(tmp_path / "a", 6)
    with pytest.raises(ValueError, match="too large"):
        read_text(tmp_path / "a", 5)
    (tmp_path / "b").symlink_to(tmp_path / "a")
    with pytest.raises(OSError, match="symbolic"):
        read_text(tmp_path / "b")


# ---------------------------------------------------------------------- what is kept
def test_counts_of_a_class_are_told_by_problem(tmp_path: Path) -> None:
    kept = Kept(tmp_path / "class.sqlite")
    for name, visit, attempt in (
        ("b", "v1", Attempt(3, 2, "arms-swapped", 1, False)),
        ("b", "v1", Attempt(4, 0, "", 0, True)),
        ("b", "v2", Attempt(3, 2, "g-twice", 0, False)),
        ("b", "", Attempt(3, 3, "", 0, False)),
        ("b", "", Attempt(3, 2, "arms-swapped", 0, False)),
        ("b", "", Attempt(3, 2, "arms-swapped", 0, False)),
        ("a", "v3", Attempt(1, 0, "", 0, False)),
    ):
        assert "" == kept.note(name, "", visit, attempt)
    assert kept.counts() == [
        Count("a", 1, 0, (), ()),
        Count("b", 5, 1, ((2, 3), (3, 1)), (("arms-swapped", 2), ("g-twice", 1))),
    ]
    kept.close()


def test_lines_are_kept_under_one_code_and_deleted_by_it(tmp_path: Path) -> None:
    path = tmp_path / "class.sqlite"
    kept = Kept(path, lines=True)
    code = kept.note("a", "", "v", Attempt(1, 0, "", 2, False), "F = 3")
    assert code == kept.note("a", "", "v", Attempt(2, 0, "", 1, False), "F = 3\nR = 4") and len(code) == 12
    assert {code: "F = 3\nR = 4"} == kept_lines(path, "a")
    assert [(2, 2)] == kept._file.execute("select lines, hints from attempt").fetchall()
    assert (False, True, False) == (kept.forget("x"), kept.forget(code), kept.forget(code))
    with pytest.raises(Fault) as none:
        kept_lines(path, "a")
    assert ('no lines of "a"', "lines that were kept") == (none.value.found, none.value.expected)
    kept.close()
    (tmp_path / "other").write_text("x" * 200)
    with pytest.raises(Fault, match="no file that a desk has kept in"):
        kept_lines(tmp_path / "other", "a")
    with pytest.raises(Fault, match="which cannot be kept in"):
        Kept(tmp_path / "other")


def test_what_is_older_than_it_may_be_goes(tmp_path: Path) -> None:
    kept = Kept(tmp_path / "class.sqlite", days=30)
    kept.note("a", "", "", Attempt(1, 0, "", 0, False))
    for days, left in ((30, 2), (31, 2)):
        old = (date.today() - timedelta(days=days)).isoformat()
        kept._file.execute("update attempt set day = ? where id = 1", (old,))
        kept._tidied = ""
        kept.note("a", "", "", Attempt(1, 0, "", 0, False))
        assert left == kept.counts()[0].tried
    kept.close()


def fields() -> str:
    """The form of a small problem, an element a line, with what is told of its tables while they are folded."""
    keys = {**tomllib.loads(problem(1)), "statement": "Hold <it>.\n", "course": {"figures": 3}}
    form = form_of(keys)
    heads = "".join(f"{name}: {title} ({gist})\n" for name, (title, gist) in form.heads.items())
    return form.fields.replace("><", ">\n<") + "\n" + heads + "\n".join(f"{k}={v}" for k, v in form.values.items())


def test_the_fields_beside_a_file_are_those_that_were_read() -> None:
    kept = (Path(__file__).with_name("cases") / "desk" / "form.txt").read_text("utf-8")
    assert fields().splitlines() == kept.splitlines()


def test_every_answer_forbids_what_the_desk_does_not_need() -> None:
    """As the standards have it: W3C Content Security Policy 3, Trusted Types, Permissions Policy; RFC 9111."""
    told = guarded().get("/none").headers
    assert told["permissions-policy"] == "camera=(), microphone=(), geolocation=()"
    assert (told["x-content-type-options"], told["cache-control"]) == ("nosniff", "no-store")
    same = ("referrer-policy", "cross-origin-opener-policy", "cross-origin-resource-policy")
    assert {"same-origin"} == {told[name] for name in same}
    assert told["content-security-policy"].split("; ") == [
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self' data:",
        "connect-src 'self'",
        "form-action 'self'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
        "require-trusted-types-for 'script'",
        "trusted-types desk",
    ]
