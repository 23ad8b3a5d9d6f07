"""LaTeX: a body that plain LaTeX with amsmath sets, whatever people typed."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pytest
from click.testing import CliRunner
from latex_checker import faults
from pages import WALKTHROUGH, everywhere
from test_hostile import TEXTS, worked

from explain import work
from explain.cli.main import main
from explain.write.latex.characters import escaped, formula
from explain.write.latex.pages import HEAD, latex_pages

SAMPLES = Path(__file__).parents[1] / "samples"
PROBLEMS = sorted(SAMPLES.glob("[0-4]*.toml"))
DOCUMENT = "\\documentclass{article}\n\\usepackage{amsmath}\n\\begin{document}\n\\input{body}\n\\end{document}\n"
LATEX = shutil.which("pdflatex")


def body(*paths: Path) -> str:
    return latex_pages([work(path).page for path in paths])


@pytest.mark.parametrize("path", PROBLEMS, ids=lambda path: path.stem[:2])
def test_a_sample_closes_what_it_opens_and_asks_for_amsmath_alone(path: Path) -> None:
    assert [] == list(faults(body(path)))


def test_every_passage_has_its_place() -> None:
    text = latex_pages((WALKTHROUGH,))
    assert [] == list(faults(text))
    assert all(f"\\begin{{{each}}}" in text for each in ("align*", "tabular", "itemize", "center"))


@pytest.mark.parametrize("text", TEXTS)
def test_hostile_text_in_names_and_titles_comes_through_as_text(text: str) -> None:
    assert ([], []) == (list(faults(latex_pages((worked(text).page,)))), list(faults(latex_pages((everywhere(text),)))))


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("50 % & more_", r"50 \% \& more\_"),
        ("\\input{x}", r"\textbackslash{}input\{x\}"),
        ("[3pt] *", "{[}3pt{]} {*}"),
        ("a--b", "a{-}{-}b"),
        ("café Łódź", r"caf\'{e} \L{}\'{o}d\'{z}"),
        ('"up"', "''up''"),
        ("30° − 5", r"30$^\circ$ $-$ 5"),
        ("腱", "(U+8171)"),
        ("a\nb", "a b"),
    ],
)
def test_what_is_typed_is_escaped(typed: str, said: str) -> None:
    assert said == escaped(typed)


def test_a_formula_has_no_command_of_another_package() -> None:
    assert r"a < b > c'\text{\'{e}}" == formula(r"a \lt b \gt c′é")


def test_the_checker_finds_what_is_wrong() -> None:
    bad = (
        r"\write18{x}",
        r"\begin{center}",
        "{",
        "}",
        "$x",
        "é",
        r"\end{center}",
        r"\begin{figure}\end{figure}",
        "$a\n\nb$",
    )
    assert [] == [each for each in bad if not list(faults(each))]


def test_the_command_writes_a_body_for_input(tmp_path: Path) -> None:
    done = CliRunner().invoke(main, ["work", str(PROBLEMS[0]), str(PROBLEMS[1]), "-o", str(tmp_path / "all.tex")])
    text = (tmp_path / "all.tex").read_text("ascii")
    assert (0, True, 1, False) == (
        done.exit_code,
        text.startswith(HEAD),
        text.count("\\clearpage"),
        "documentclass" in text,
    )


@pytest.mark.skipif(LATEX is None, reason="there is no LaTeX on this machine; the checker reads the pages all the same")
def test_plain_latex_sets_samples_and_hostile_texts(tmp_path: Path) -> None:
    pages = [work(path).page for path in PROBLEMS[::6]] + [everywhere(text) for text in TEXTS] + [WALKTHROUGH]
    (tmp_path / "body.tex").write_text(latex_pages(pages), "ascii")
    (tmp_path / "main.tex").write_text(DOCUMENT, "ascii")
    command = [str(LATEX), "-interaction=nonstopmode", "-halt-on-error", "main.tex"]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, check=False, timeout=120)
    assert (0, True) == (done.returncode, (tmp_path / "main.pdf").exists()), done.stdout[-2000:].decode("latin-1")
