"""Text from people in every field, through every writer: it comes through as text or is refused, and never becomes
markup, code or an address.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pikepdf
import pytest
from click.testing import CliRunner
from lxml import etree
from lxml import html as reader
from markdown_it import MarkdownIt
from markdown_it.token import Token

from explain import Fault, Walkthrough, work
from explain.cli.main import main
from explain.document.untrusted_text import clean

TEXTS = (
    "<script>alert(1)</script>",
    '"><img src=x onerror=alert(1)>',
    "</title><script>alert(1)</script>",
    "</svg><a href='http://e.invalid'>x</a>",
    "]]><x/>",
    "<!-- x",
    "<style>@import url(http://e.invalid)</style>",
    "&lt;script&gt;",
    "' onload='alert(1)",
    "![x](http://evil.invalid/x.png)",
    "[a](javascript:alert(1))",
    "[a]: http://e.invalid",
    "http://evil.invalid/a",
    "www.evil.invalid",
    "<http://e.invalid>",
    "mail@e.invalid",
    "# x",
    "- x",
    "> x",
    "1. x",
    "***x***",
    "~~x~~",
    "`",
    "```math",
    "a|b",
    "| a | b |",
    "\\\\",
    "$\\input{/etc/passwd}$",
    "$$\\href{http://e.invalid}{x}$$",
    "\\write18{id}",
    "$`\\def\\x{}`$",
    "#_%^~{}&$",
    "{{7*7}}",
    "%s%n%d",
    "{0.__class__}",
    "__import__('os')",
    "\x00x",
    "a\x1b[31mred",
    "a\x9bx",
    "a\rb",
    "a\nb",
    "\u202egpj.exe",
    "\u2066x\u2069",
    "\u2028x",
    "\ufeffx",
    "\ud800x",
    "e\u0301\u0327\u0489",
    "🦴",
    "👩\u200d🔬 bone",
    "腱の力",
    "ﷺ",
    "عضلة",
    "𝔘",
    "ß",
    "x" * 60,
)
FEW = (
    *TEXTS[:5],
    "![x](http://evil.invalid/x.png)",
    "http://evil.invalid/a",
    "$\\input{/etc/passwd}$",
    "a\x1b[31mred",
    "\u202egpj.exe",
    "腱の力",
)
LONG = "y" * 10_000
KEYLIKE = (
    "person",
    "g",
    "arm",
    "arm and hand",
    "moment bar",
    "moment reaction",
    "angle iron",
    "turning handle",
    "fold of skin",
    "inclination x",
    "reaction force",
    "total load",
    "level",
    "along",
    "limit",
    "table",
    "mass",
    "at",
    "nan",
)
TAGS = set(
    re.findall(
        r"\w+",
        """html head meta title style body main article h1 h2 h3 p strong em ul ol li table caption thead
        tbody tr th td div span wbr figure figcaption math mi mo mn mtext mspace msub msup msubsup mfrac msqrt mrow
        menclose svg desc rect g path line circle polygon""",
    )
)
OURS = {"<span>", "</span>", "<em>", "</em>", "<strong>", "</strong>"}
COMMANDS = set(
    re.findall(
        r"\w+",
        """mathrm sin cos tan frac sqrt times approx perp parallel circ cdot displaystyle left right tau theta
        alpha beta gamma sigma Sigma Delta text cancel begin end prime""",
    )
)
STEERING = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\u2028\u2029\ud800-\udfff]")


def problem(text: str, named: str) -> dict[str, Any]:
    """A problem with the one text wherever a page takes prose, and the other in every name."""
    at = {
        "title": text,
        "statement": text,
        "neglect": [text],
        "pivot": {"name": text, "bone": text},
        "person": {"mass": "70 kg"},
    }
    return at | {
        "segment": [
            {"name": f"{named} s", "length": "30 cm", "mass": "2 %", "com": "15 cm", "direction": "10 deg above right"}
        ],
        "load": [{"name": f"{named} l", "mass": "3.0 kg", "at": "28 cm", "on": f"{named} s"}],
        "muscle": [
            {"name": f"{named} m", "at": "4.0 cm", "direction": "70 deg from back toward up"},
            {"name": f"{named} n", "at": "4.0 cm", "direction": "up", "force": f"0.5 * {named} m"},
        ],
        "force": [{"name": f"{named} f", "at": "10 cm", "direction": "down", "force": "2 N"}],
        "couple": [{"name": f"{named} c", "moment": "1 N m", "turns": "clockwise"}],
        "ask": [f"{named} m", "reaction", f"{named} l.moment"],
        "course": {"axes": f"along and across the {named} s"},
    }


def tried(text: str, named: str) -> Walkthrough | Fault:
    try:
        return work(problem(text, named))
    except Fault as fault:
        return fault


@cache
def worked(text: str) -> Walkthrough:
    """The text in every field that takes it: names too, or else with plain names, or else in title and statement
    alone.
    """
    plain = problem("elbow", "limb")
    for found in (tried(text, text), tried(text, "limb")):
        if isinstance(found, Walkthrough):
            return found
    return work({**plain, "title": text, "statement": text, "neglect": [text]})


@cache
def html(text: str) -> str:
    return worked(text).html()


def tokens(of: list[Token]) -> Iterator[Token]:
    for token in of:
        yield token
        yield from tokens(token.children or [])


def commands(latex: str) -> set[str]:
    return set(re.findall(r"\\([A-Za-z]+)", latex))


def attributes(page: Any) -> Iterator[tuple[str, str]]:
    for element in page.iter():
        yield from ((str(name), str(value)) for name, value in element.attrib.items())


def leads_out(page: Any) -> list[tuple[str, str]]:
    """Attributes that run, fetch or lead somewhere."""
    return [
        (name, value)
        for name, value in attributes(page)
        if name.rpartition("}")[2] in ("href", "src", "data", "action", "srcset", "ping")
        or name.startswith("on")
        or "url(" in value
        or "javascript:" in value
        and name not in ("title", "aria-label", "alt")
    ]


@pytest.mark.parametrize("text", TEXTS)
def test_in_names_a_text_is_taken_or_refused_by_its_key(text: str) -> None:
    found = tried("elbow", text)
    if isinstance(found, Fault):
        assert (True, True) == (found.key.rpartition(".")[2] in ("name", "axes"), bool(found.example))
    else:
        names = [
            each.name
            for each in (*found.problem.segments, *found.problem.loads, *found.problem.pulls, *found.problem.couples)
        ]
        assert [" ".join(f"{text} {end}".split()) for end in "slmnfc"] == names


@pytest.mark.parametrize(
    "name", ["reaction ", "Total", "REACTION", "\u00a0reaction\u2003", "reaction.up", "2 * limb m", "?", "7", " "]
)
def test_a_name_that_is_kept_for_an_answer_or_means_something_else_is_refused(name: str) -> None:
    spoiled = problem("elbow", "limb")
    spoiled["force"][0]["name"] = name
    assert "force[1].name" == pytest.raises(Fault, work, spoiled).value.key


@pytest.mark.parametrize("name", KEYLIKE)
def test_a_name_that_looks_like_a_key_is_a_name_like_any_other(name: str) -> None:
    text = json.dumps(problem("elbow", "limb"))
    plain = [each.value for each in work(json.loads(text)).answers.values()]
    for end in "slmnfc":
        named = work(json.loads(text.replace(f"limb {end}", name)))
        assert (end, pytest.approx(plain)) == (end, [each.value for each in named.answers.values()])


@pytest.mark.parametrize("text", TEXTS)
def test_html_holds_no_element_and_no_address_but_its_own(text: str) -> None:
    page = reader.document_fromstring(html(text))
    assert (set(), []) == ({each.tag for each in page.iter() if isinstance(each.tag, str)} - TAGS, leads_out(page))
    assert [clean(text).strip()] * 2 == [
        each.text_content().strip() for each in page.xpath("//title[not(ancestor::svg)] | //h1")
    ]


@pytest.mark.parametrize("text", (*FEW, "\x00x", "\ud800x"))
def test_html_in_a_notebook_is_one_frame_with_its_page_escaped(text: str) -> None:
    (frame,) = reader.fragments_fromstring(worked(text)._repr_html_())
    assert ("iframe", {"title", "srcdoc", "style"}, html(text)) == (frame.tag, set(frame.keys()), frame.get("srcdoc"))


@pytest.mark.parametrize("text", (*FEW, "e\u0301\u0327\u0489", "\x00x", "\ud800x"))
def test_a_drawing_holds_no_element_and_no_address_but_its_own(text: str) -> None:
    root = etree.fromstring(worked(text).figure().encode())
    assert (set(), []) == (
        {etree.QName(each).localname for each in root.iter() if isinstance(each.tag, str)} - TAGS,
        leads_out(root),
    )


@pytest.mark.parametrize("text", TEXTS)
def test_markdown_holds_no_link_no_image_and_no_tag_but_its_own(text: str) -> None:
    read = list(
        tokens(
            MarkdownIt("commonmark", {"html": True})
            .enable("table")
            .enable("strikethrough")
            .parse(worked(text).markdown())
        )
    )
    kinds = {each.type for each in read}
    assert (set(), set()) == (
        kinds & {"link_open", "image", "html_block", "s_open", "code_block"},
        {each.content for each in read if each.type == "html_inline"} - OURS,
    )
    assert {"math"} >= {each.info for each in read if each.type == "fence"}


@pytest.mark.parametrize("text", TEXTS)
def test_markdown_holds_no_formula_and_no_address_but_its_own(text: str) -> None:
    written = worked(text).markdown()
    formulas = re.findall(r"\$`(.*?)`\$|```math\n(.*?)```", written, re.DOTALL)
    rest = (
        re.sub(r"\$`.*?`\$|```math\n.*?```", "", written, flags=re.DOTALL)
        .replace(r"<span>\$</span>", "")
        .replace(r"<span>\@</span>", "")
    )
    assert (set(), []) == (
        commands(" ".join(map("".join, formulas))) - COMMANDS,
        re.findall(r"\$|@|(?<!\\)://|www\.", rest),
    )


@pytest.mark.parametrize("text", TEXTS)
def test_text_for_a_terminal_holds_nothing_that_steers_it(text: str) -> None:
    written = worked(text).text(4000)
    assert ([], True) == (STEERING.findall(written), " ".join(clean(text).split()) in " ".join(written.split()))


@pytest.mark.parametrize("text", TEXTS)
def test_json_is_one_line_that_reads_back(text: str) -> None:
    written = worked(text).written("json").decode()
    read = json.loads(written)
    assert (1, text.strip().replace("\ud800", "\ufffd")) == (written.count("\n"), read["title"])
    assert set() == set().union(*(commands(each["latex"]) for each in read["lines"])) - COMMANDS


@pytest.mark.parametrize("text", FEW)
def test_pdf_leads_nowhere_and_its_title_is_text(text: str) -> None:
    document = pikepdf.open(BytesIO(worked(text).pdf()))
    keys = set().union(
        *(each.keys() for each in document.objects if isinstance(each, pikepdf.Dictionary | pikepdf.Stream))
    )
    assert set() == keys & {
        "/URI",
        "/Annots",
        "/EmbeddedFiles",
        "/AF",
        "/JS",
        "/JavaScript",
        "/OpenAction",
        "/AA",
        "/Launch",
        "/GoToR",
    }
    assert clean(text).strip() == str(document.docinfo.Title).strip()


@pytest.mark.parametrize("form", ["markdown", "html", "text"])
def test_a_very_long_statement_and_the_longest_title_come_through(form: str) -> None:
    assert 10_300 <= work({**problem("elbow", "limb"), "title": LONG[:300], "statement": LONG}).written(
        form
    ).decode().count("y")


def test_a_title_that_is_no_title_is_refused() -> None:
    fault = pytest.raises(Fault, work, {**problem("elbow", "limb"), "title": LONG[:301]}).value
    assert ("title", True, True) == (fault.key, "300 characters" in str(fault), len(str(fault)) < 500)


@pytest.mark.parametrize(
    "place", ["pivot.name", "pivot.bone", "segment.name", "load.name", "muscle.name", "force.name", "couple.name"]
)
def test_a_name_of_thousands_of_letters_is_refused(place: str) -> None:
    (table, _, key), long = place.partition("."), problem("elbow", "limb")
    (long[table][0] if isinstance(long[table], list) else long[table])[key] = LONG
    fault = pytest.raises(Fault, work, long).value
    assert (True, True) == (fault.key.endswith(key), len(str(fault)) < 500)


@pytest.mark.parametrize("text", [each for each in FEW if each.isprintable()])
def test_the_source_of_a_table_of_the_class_is_text(text: str, tmp_path: Path) -> None:
    quoted = text.replace('"', '""')
    (tmp_path / "own.csv").write_text(
        f'segment,mass_percent,com_percent,source\nforearm,1.7,43,"{quoted}"\n', encoding="utf-8"
    )
    (tmp_path / "own.toml").write_text(
        """title = "Own table"\nperson = {mass = "70 kg", table = "own.csv"}
        segment = [{name = "forearm", length = "26 cm", mass = "table", com = "table"}]
        muscle = [{name = "biceps", at = "4 cm", direction = "up"}]""",
        encoding="utf-8",
    )
    found = work(tmp_path / "own.toml")
    page = reader.document_fromstring(found.html())
    assert (set(), [], True) == (
        {each.tag for each in page.iter() if isinstance(each.tag, str)} - TAGS,
        leads_out(page),
        clean(text) in page.text_content(),
    )
    assert " ".join(text.split()) in " ".join(found.text(4000).split())


ESCAPE = "a\x1b[31m\u202eb"
FAULTY: Mapping[str, dict[str, Any]] = {
    "a key": {ESCAPE: 1},
    "a table's key": {"pivot": {ESCAPE: 1}},
    "a value": {"title": 3, "statement": ESCAPE},
    "what is asked": {"ask": [ESCAPE]},
    "a course": {"course": f"{ESCAPE}.toml"},
    "a key of a course": {"course": {ESCAPE: 1}},
    "a word of a course": {"course": {"word": ESCAPE}},
    "a letter": {"course": {"symbols": {"limb m": ESCAPE}}},
    "a letter's name": {"course": {"symbols": {ESCAPE: "F_B"}}},
    "axes": {"course": {"axes": ESCAPE}},
    "axes of nothing": {"course": {"axes": f"along and across the {ESCAPE}"}},
    "a table": {"person": {"mass": "70 kg", "table": f"{ESCAPE}.csv"}},
    "a sex": {"person": {"sex": ESCAPE}},
    "a quantity": {"person": {"mass": ESCAPE}},
    "a unit": {"person": {"mass": f"70 {ESCAPE}"}},
}


@pytest.mark.parametrize("spoiled", FAULTY.values(), ids=FAULTY)
def test_a_message_holds_nothing_that_steers_a_terminal(spoiled: dict[str, Any]) -> None:
    tables = (
        {"segment": [{"name": "forearm", "length": "9 cm", "mass": "table", "com": "table"}]}
        if "table" in spoiled.get("person", {})
        else {}
    )
    fault = pytest.raises(Fault, work, {**problem("elbow", "limb"), **tables, **spoiled}).value
    assert [] == STEERING.findall(str(fault))


@pytest.mark.parametrize("content", ["title = ", 'title = "x"\n'])
def test_a_file_with_a_steering_name_is_named_legibly(content: str, tmp_path: Path) -> None:
    (tmp_path / "a\x1b[31m.toml").write_text(content, encoding="utf-8")
    result = CliRunner().invoke(main, ["work", *[str(tmp_path / "a\x1b[31m.toml")] * 2], color=True)
    assert (2, [], True) == (result.exit_code, STEERING.findall(result.stderr), "a\\x1b[31m.toml" in result.stderr)
