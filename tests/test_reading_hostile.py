"""Workings that mean harm or are merely broken: each line is read in well under a second with bounded memory, says
what is wrong, and harms no other line.
"""

from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path
from time import process_time

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from explain.input import text_of
from explain.marking.reading import (
    Chain,
    Expr,
    Measured,
    Number,
    Undefined,
    Unread,
    evaluate,
    parts,
    read_back,
    read_line,
    read_lines,
    vocabulary_of,
    within,
)
from explain.marking.reading.limits import DEPTH, FIGURES, LINE, LINES, OTHERWISE, TOKENS, WORKING

ROOT = Path(__file__).parents[1]
VOCABULARY = vocabulary_of(
    {
        "flexors.force": ("F_m", "F", "flexors"),
        "can.weight": ("W_c", "can"),
        "g": ("g",),
        "reaction": ("R",),
        "*arm can": ("d_c",),
    }
)
GOOD = "F x 4.0 = 29.43 x 33"
# seconds of the processor for a line, whatever else the machine does; a usual one takes a ten-thousandth of that
SLOW = 0.5

HOSTILE = {
    "a line of 100,000 characters": "F = " + "1+" * 50_000 + "1",
    "one word of 100,000 letters": "F" * 100_000,
    "a number of 100,000 figures": "F = " + "9" * 100_000,
    "spaces without end": "F =" + " " * 100_000 + "3",
    "10,000 brackets": "(" * 10_000 + "1" + ")" * 10_000,
    "brackets in a line that is just short enough": "F = " + "(" * 900 + "1" + ")" * 900,
    "brackets that never close": "F = " + "(" * 1_900,
    "square brackets in braces": "F = " + "[{(" * 600,
    "signs in a row": "F = " + "-" * 1_900 + "1",
    "divisions in a row": "F = " + "1/" * 900 + "1",
    "roots of roots": "F = " + "√" * 1_900 + "2",
    "sines of sines": "F = " + "sin " * 450 + "2",
    "powers of powers": "F = 9**9**9",
    "powers of powers with a hat": "F = 9^9^9^9^9^9",
    "a large power": "F = 9^99",
    "a large power of ten": "F = 10^999999999",
    "a large power of a sum": "F = (1+1)^99999",
    "an exponent without end": "F = 1e999999999",
    "an exponent below everything": "F = 1e-999999999",
    "a product that overflows": "F = " + "*".join(["9e99"] * 60),
    "a factorial": "F = 99999999!",
    "look-alike letters": "Ѕ = 3.0 × 9.81; сos 30 = 0.87; ԝ = 1",
    "figures of another script": "F = ٣ × ९.८١",
    "wide figures": "F = ３.０ × ９.８１",
    "an old s": "F = 3 ſin 30",
    "control characters": "F\x00 = 3\x07 × \x1b[31m4\x7f",
    "marks that turn the line round": "F = \u202e3.0 × 9.81\u202c = 29.43\u200f",
    "marks upon marks": "F = 3" + "\u0301" * 1_000 + " × 4",
    "half a pair": "F = \ud800 3",
    "no width at all": "F\u200b=\u200c3\u200d×\ufeff4",
    "code": "__import__('os').system('touch harm')",
    "a lambda": "F = (lambda: 1)()",
    "an attribute": "F = ().__class__.__bases__[0].__subclasses__()",
    "a format": "F = {0.__class__} %(x)s %n%n%n",
    "a symbol of algebra": "F = Symbol('x').subs(x, 1)",
    "LaTeX that calls itself": "\\def\\a{\\a\\a}\\a " + "\\frac{" * 300,
    "LaTeX that reads a file": "\\input{/etc/passwd} \\write18{rm}",
    "dollars": "$" * 1_900,
    "bars and hats": "|^|_" * 480,
    "stars and strokes": "*/" * 950,
    "crossed-out marks": "~~" * 950,
    "headings": "#" * 1_900,
    "commas": "F = 1" + ",1" * 900,
    "points": "F = 1" + ".1" * 900,
    "equals": "=" * 1_900,
    "equals with numbers": "1=" * 950,
    "names side by side": "F " * 950,
    "units side by side": "F = 3 " + "N m " * 470,
    "quotes": "'\"" * 950,
    "a path": "../../../../etc/passwd = 3",
    "markup": "<script>alert(1)</script> F = 3",
}
AT_ONCE = """
import resource, sys
resource.setrlimit(resource.RLIMIT_AS, (600 * 2**20, 600 * 2**20))
resource.setrlimit(resource.RLIMIT_CPU, (60, 60))
from explain.input import text_of
from explain.marking.reading import read_lines, vocabulary_of
read = read_lines(text_of(sys.stdin.buffer.read()), vocabulary_of({"flexors.force": ("F",)}))
print(len(read), sum(len(each.pieces) for each in read), resource.getrusage(resource.RUSAGE_SELF).ru_utime)
"""
FILES = {
    "1 MB of equations": b"F = 3.0 * 9.81 * 33 / 4.0 = 242.8 N\n" * 28_000,
    "1 MB in one line": b"1+" * 500_000,
    "1 MB of brackets": b"(" * 1_000_000,
    "3 MB of figures": b"9" * 3_000_000,
    "1 MB of line ends": b"\n" * 1_000_000,
    "2,000 lines, each as long as is read": (b"F = " + b"((1+1)*" * 280 + b"\n") * 400,
    "binary": bytes(range(256)) * 4_000,
    "noughts": b"\x00" * 1_000_000,
    "a mark of UTF-16 and no text": b"\xff\xfe" + b"\xd8" * 99_999,
    "broken UTF-8": b"F = 3 \xc3\x28 \xf0\x9f N\n" * 1_000,
    "nothing": b"",
    "a lone mark": b"\xef\xbb\xbf",
}


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_line_is_read_at_once_and_leaves_the_others_alone(name: str) -> None:
    text = HOSTILE[name]
    began = process_time()
    alone = read_line(text, VOCABULARY)
    assert process_time() - began < SLOW
    assert len(alone.text) <= LINE
    before, after = (each for each in read_lines(f"{GOOD}\n{text}\n{GOOD}\n", VOCABULARY) if each.text == GOOD)
    assert (
        [read_back(piece) for piece in before.pieces]
        == [read_back(piece) for piece in after.pieces]
        == ["F × 4.0 = 29.43 × 33"]
    )


@pytest.mark.parametrize("name", HOSTILE)
def test_what_cannot_be_read_says_where_and_what_to_ask(name: str) -> None:
    for piece in read_line(HOSTILE[name], VOCABULARY).pieces:
        if isinstance(piece, Unread):
            assert (
                piece.why
                and len(piece.why) < 200
                and piece.ask.endswith("?")
                and 0 <= piece.start <= piece.position <= piece.end <= LINE
            )


@pytest.mark.parametrize(
    "name",
    (
        "10,000 brackets",
        "brackets in a line that is just short enough",
        "brackets that never close",
        "powers of powers",
        "a large power",
        "a large power of ten",
        "an exponent without end",
        "an exponent below everything",
        "a number of 100,000 figures",
        "look-alike letters",
        "figures of another script",
        "an old s",
        "roots of roots",
        "signs in a row",
        "divisions in a row",
        "marks that turn the line round",
        "LaTeX that reads a file",
    ),
)
def test_what_is_beyond_the_limits_or_no_letter_is_refused(name: str) -> None:
    assert any(isinstance(piece, Unread) for piece in read_line(HOSTILE[name], VOCABULARY).pieces)


@pytest.mark.parametrize("name", FILES)
def test_a_hostile_file_is_read_in_bounded_time_and_memory(name: str) -> None:
    done = subprocess.run(
        [sys.executable, "-c", AT_ONCE], input=FILES[name], capture_output=True, timeout=120, cwd=ROOT, check=False
    )
    assert done.returncode == 0, done.stderr.decode()[-400:]
    lines, pieces, seconds = done.stdout.split()
    assert int(lines) <= LINES + 1
    assert int(pieces) <= (LINES + 1) * (TOKENS + 1)
    assert float(seconds) < 1 + int(lines) * 0.05


def test_a_file_that_is_too_long_is_read_as_far_as_the_limit_and_says_so() -> None:
    read = read_lines(f"{GOOD}\n" * 60_000, VOCABULARY)
    assert len(read) == LINES + 1 and isinstance(read[-1].pieces[0], Unread)
    assert f"{LINES:,} lines" in read[-1].pieces[0].why
    assert isinstance(read[0].pieces[0], Chain)
    long = read_lines(GOOD + " " * WORKING, VOCABULARY)
    assert isinstance(long[-1].pieces[0], Unread) and f"{WORKING:,} characters" in long[-1].pieces[0].why


def test_text_of_any_bytes_is_text() -> None:
    for data in FILES.values():
        assert isinstance(text_of(data[:10_000]), str)


def _depth(expr: Expr) -> int:
    """How deep a tree is; told without recursion, since it might be deep."""
    deepest, waiting = 0, [(expr, 1)]
    while waiting:
        each, depth = waiting.pop()
        deepest = max(deepest, depth)
        waiting += [(inner, depth + 1) for inner in parts(each)]
    return deepest


SIGNS = st.sampled_from(
    (
        "F",
        "F_m",
        "W_c",
        "d_c",
        "g",
        "R",
        "can",
        "V",
        "3",
        "4.0",
        ".5",
        "1,5",
        "9.81",
        "1e9",
        "(",
        ")",
        "[",
        "]",
        "{",
        "}",
        "=",
        "≈",
        "+",
        "-",
        "−",
        "*",
        "x",
        "×",
        "·",
        "/",
        "÷",
        "^",
        "**",
        "²",
        "√",
        "sin",
        "cos",
        "tan⁻¹",
        "°",
        "deg",
        " N",
        " cm",
        "N·m",
        "%",
        ",",
        ";",
        ":",
        ".",
        "Σ",
        "→",
        "=>",
        "so ",
        "and ",
        "up",
        " of ",
        "~~",
        "|",
        "$",
        "\\frac{",
        "\\text{",
        "\\",
        "_",
        "'",
        '"',
        "#",
        "(a)",
        "\u202e",
        "\x00",
        "е",
        " ",
        "  ",
    )
)


@settings(max_examples=1500, deadline=None)
@given(
    st.one_of(
        st.text(max_size=200), st.lists(SIGNS, max_size=60).map("".join), st.lists(SIGNS, max_size=40).map(" ".join)
    )
)
@example("F = " + "9" * FIGURES + "e99 * 9e99 * 9e99 * 9e99")
def test_any_line_is_read_within_bounds(text: str) -> None:
    """Never an exception; places within the line; trees no deeper than the limits allow; every number bounded; every
    tree worked out or refused.
    """
    line = text.replace("\n", " ").replace("\r", " ")
    read = read_line(line, VOCABULARY)
    assert len(read.pieces) <= TOKENS + 1
    for piece in read.pieces:
        assert 0 <= piece.start <= piece.end <= len(line)
        if not isinstance(piece, Chain):
            continue
        assert read_back(piece)
        assert len(piece.otherwise) <= OTHERWISE
        for side in piece.sides:
            assert _depth(side) < 12 * (DEPTH + 2)
            numbers = [each for each in within(side) if isinstance(each, Number)]
            assert all(
                len(each.value.as_tuple().digits) <= FIGURES and abs(each.value.adjusted()) < 2 * FIGURES + 100
                for each in numbers
            )
            _worked_out(side)


def _worked_out(side: Expr) -> None:
    """Works a side out with every letter as one: a value or a plain refusal."""
    try:
        evaluate(side, dict.fromkeys(("flexors.force", "can.weight", "g", "reaction", "*arm can"), 1.0))  # type: ignore[arg-type]
    except Undefined as refusal:
        assert str(refusal)


@settings(max_examples=200, deadline=None)
@given(
    st.lists(
        st.one_of(
            st.text(max_size=60), st.sampled_from((GOOD, "R = 250 N down", "# Part b", "~~3 x 33 = 99~~", "no - F = 3"))
        ),
        max_size=30,
    ).map("\n".join)
)
def test_any_working_is_read_line_by_line(text: str) -> None:
    read = read_lines(text, VOCABULARY)
    assert [each.number for each in read] == list(range(1, len(read) + 1))


@settings(max_examples=200, deadline=None)
@given(st.binary(max_size=400))
def test_any_file_is_read(data: bytes) -> None:
    read_lines(text_of(data), VOCABULARY)


# ---------------------------------------------------------------------- nothing that a student types is ever run
FORBIDDEN = frozenset(
    (
        "eval",
        "exec",
        "compile",
        "__import__",
        "sympify",
        "parse_expr",
        "parse_latex",
        "literal_eval",
        "getattr",
        "globals",
        "Fraction",
        "loads",
    )
)
LIBRARIES = frozenset(("sympy", "pint", "mpmath", "ast", "importlib", "pickle", "subprocess", "os", "fractions"))
TABLES = {
    "explain.equation.terms.Unit",
    "explain.exact.prime_field.UNITS",
    "explain.equation.unit_spellings.spellings",
    "explain.equation.unit_spellings.unit_of",
}  # all that reading takes from without


def _modules() -> dict[str, ast.Module]:
    """Every module of explain/reading, and the table of how units are spelled."""
    paths = {
        f"explain.reading.{each.stem}": each
        for each in (ROOT / "explain" / "reading").glob("*.py")
        if each.stem != "__init__"
    }
    return {
        name: ast.parse(path.read_text())
        for name, path in {**paths, "explain.equation.unit_spellings": ROOT / "explain" / "spellings.py"}.items()
    }


def _imported(module: str, tree: ast.Module) -> list[str]:
    """What a module imports, name by name, in full."""
    out: list[str] = []
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            out += [each.name for each in node.names]
        elif isinstance(node, ast.ImportFrom):
            base = module.split(".")[: -node.level] if node.level else []
            out += [".".join([*base, *([node.module] if node.module else []), each.name]) for each in node.names]
    return out


def test_nothing_that_is_read_reaches_a_reader_of_code() -> None:
    modules = _modules()
    assert {
        "explain.marking.reading.parse",
        "explain.marking.reading.evaluate",
        "explain.marking.reading.tokens",
    } <= set(modules)
    for name, tree in modules.items():
        called = {
            node.func.id for node in ast.walk(tree) if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
        }
        called |= {
            node.func.attr
            for node in ast.walk(tree)
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute)
        } - {"compile"}
        assert not called & FORBIDDEN, name
        imported = _imported(name, tree)
        assert not {each.partition(".")[0] for each in imported} & LIBRARIES, name
        if name.startswith("explain.marking.reading"):
            assert {
                each
                for each in imported
                if each.startswith("explain.") and not each.startswith("explain.marking.reading.")
            } <= TABLES, name


def test_no_pattern_is_made_of_what_was_typed() -> None:
    """`re.compile` stands at the top of modules only, so every pattern is known before anything is read."""
    for name, tree in _modules().items():
        inner = [
            node for function in ast.walk(tree) if isinstance(function, ast.FunctionDef) for node in ast.walk(function)
        ]
        made = [
            node
            for node in inner
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr == "compile"
        ]
        assert not made, name


def test_the_measured_tree_of_a_usual_line_is_small() -> None:
    chain = read_line("F = 3.0 kg * 9.81 m/s^2 = 29.43 N", VOCABULARY).pieces[0]
    assert isinstance(chain, Chain) and isinstance(chain.sides[-1], Measured) and _depth(chain.sides[1]) < 5
