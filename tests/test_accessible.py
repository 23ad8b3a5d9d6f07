"""Every kind of page in a browser, light and dark, wide and narrow, held against the rules of axe-core: no violation.

axe-core (MPL 2.0, inside the package axe-playwright-python) checks what a program can of the Web Content Accessibility
Guidelines 2.2, with the practices of its own authors. The browser is Debian's chromium.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from importlib.resources import files
from pathlib import Path
from shutil import which
from typing import Any

import pytest
from books import book, problem
from axe_playwright_python.base import AXE_SCRIPT
from click.testing import CliRunner
from playwright.sync_api import Browser, Page, sync_playwright

from explain.cli.main import main

SAMPLES = Path(__file__).parents[1] / "samples"
SERIES = Path(__file__).parent / "series"
TIN, CLASS = SAMPLES / "02-treacle-tin-again.toml", SAMPLES / "class"
WIDTHS = 1200, 390
RUN = """only => axe.run(document, {resultTypes: ["violations"], ...only}).then(found => found.violations.flatMap(
    each => each.nodes.map(node => each.id + ": " + node.target + " " + node.html.slice(0, 160))))"""
ALL: Mapping[str, object] = {}
COLOURS: Mapping[str, object] = {"runOnly": {"type": "tag", "values": ["cat.color"]}}
TOO_WIDE = """() => document.documentElement.scrollWidth > document.documentElement.clientWidth
    ? [...document.querySelectorAll("body *")].filter(each => each.getBoundingClientRect().right > innerWidth + 1
        && !each.closest(".scroll, .wide")).slice(0, 5).map(each => each.outerHTML.slice(0, 120)) : []"""
OUT_OF_REACH = """() => [...document.querySelectorAll("body *")].filter(each => {
    const flow = getComputedStyle(each).overflowX;
    return (flow == "auto" || flow == "scroll") && each.scrollWidth > each.clientWidth + 1
        && !(each.tabIndex == 0 && each.getAttribute("role") && each.getAttribute("aria-label"));
}).map(each => each.outerHTML.slice(0, 120))"""
STEPS = """title = "A heavier cuff"
base = "base.toml"
[[step]]
title = "Heavier"
idea = "load"
set = { "cuff.mass" = "3.0 kg" }
"""
PAGES = {
    "walkthrough": ("work", SAMPLES / "32-painters-plank.toml"),
    "series": ("series", "steps.toml"),
    "series with a sweep": ("series", SERIES / "sw.toml"),
    "tally of answers": ("tally", TIN, CLASS / "answers.csv"),
    "tally of workings": ("tally", TIN, CLASS / "workings", "--names", "--jobs", "1"),
    "report to a student": ("mark", TIN, SAMPLES / "workings" / "saoirse-02.txt"),
    "report to a tutor": ("mark", TIN, SAMPLES / "workings" / "leo-02.txt", "--for", "tutor"),
    "sheet": ("sheet", TIN),
    "sheet with lines to write": ("sheet", TIN, "--blank", "last:4"),
    "slip to find": ("sheet", TIN, "--find-the-slip", "any"),
    "manual, student": ("manual", "book.toml", "--edition", "student", "--jobs", "1"),
    "manual, instructor": ("manual", "book.toml", "--edition", "instructor", "--jobs", "1"),
    "manual, answers": ("manual", "book.toml", "--edition", "answers", "--jobs", "1"),
}
HANDED = {
    "variants' key": "key.html",
    "variant's sheet": "sheets/zephyrine-odell.html",
    "variant's walkthrough": "keys/zephyrine-odell.html",
}


def written(folder: Path) -> Iterator[tuple[str, Path]]:
    """A page of each kind, by the command that writes it."""
    (folder / "base.toml").write_bytes((SERIES / "knee-base.toml").read_bytes())
    (folder / "steps.toml").write_text(STEPS)
    book(folder, [problem(0), problem(1, direction="75 deg from back toward up")])
    for place, (kind, words) in enumerate(PAGES.items()):
        path = folder / f"{place}.html"
        more = ("--no-cache",) if words[0] == "manual" else ()
        there = (folder / word if word in ("book.toml", "steps.toml") else word for word in (*words, *more))
        result = CliRunner().invoke(main, [*map(str, there), "-o", str(path)])
        assert result.exit_code in (0, 1), (kind, result.output)
        yield kind, path
    barrow, names = SAMPLES / "class-variants" / "bucket-of-mussels.toml", SAMPLES / "class-variants" / "class-5b.csv"
    words = ("vary", barrow, "--names", names, "-o", folder / "vary", "--as", "html", "--keys", "pages", "--jobs", "1")
    assert CliRunner().invoke(main, [*map(str, words)]).exit_code == 0
    yield from ((kind, folder / "vary" / name) for kind, name in HANDED.items())


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    found = which("chromium") or which("chromium-browser") or which("google-chrome")
    assert found, "no chromium: apt-get install chromium"
    with sync_playwright() as play, play.chromium.launch(executable_path=found) as browser:
        yield browser


def opened(browser: Browser, width: int) -> Page:
    """A window whose pages may not fetch anything, and in which our own script runs in spite of their policy."""
    size: Any = {"width": width, "height": 900}
    return browser.new_context(viewport=size, bypass_csp=True, offline=True).new_page()


def faults(page: Page) -> list[str]:
    """What is wrong in light and in dark, which is nothing but other colours."""
    page.emulate_media(color_scheme="light")
    page.evaluate(AXE_SCRIPT)
    found: list[str] = page.evaluate(RUN, ALL)
    found += [f"wider than the window: {each}" for each in page.evaluate(TOO_WIDE)]
    found += [f"scrolls out of reach: {each}" for each in page.evaluate(OUT_OF_REACH)]
    page.emulate_media(color_scheme="dark")
    return found + [f"dark: {each}" for each in page.evaluate(RUN, COLOURS)]


def test_dark_is_nothing_but_other_colours() -> None:
    for name in ("screen.css", "book-screen.css"):
        style = (files("explain.write.html") / name).read_text(encoding="utf-8")
        for dark in re.findall(r"\(prefers-color-scheme: dark\) \{\s*(.*?)\s*\n\}", style, re.DOTALL):
            assert re.fullmatch(r":root \{ (--\w+: #\w{6}(; | (?=\})))+\}", dark), (name, dark)
    assert "prefers-color-scheme" in style or name == "book-screen.css"


def test_a_page_at_fault_is_found_out(browser: Browser) -> None:
    style = "@media (prefers-color-scheme: dark) { p { color: #999; background: #aaa } }"
    page = (
        f'<!DOCTYPE html><html lang="en"><title>At fault</title><style>{style}</style><main><h1>At fault</h1><p>Words'
        '</p><img src=""><table><tr><th scope="row"><math><mi>m</mi></math></th><td>3</td></tr></table>'
        '<div style="overflow: auto; width: 9em"><div style="width: 50em">Far</div></div>'
        '<div style="width: 500px">Wide</div></main></html>'
    )
    window = opened(browser, 390)
    window.set_content(page)
    found = {
        each.partition(": <")[0].partition(": p")[0].partition(": img")[0].partition(": th")[0]
        for each in faults(window)
    }
    window.context.close()
    assert found >= {"image-alt", "empty-table-header", "scrolls out of reach", "wider than the window",
                     "dark: color-contrast"}  # fmt: skip


def test_no_kind_of_page_violates_a_rule(browser: Browser, tmp_path: Path) -> None:
    pages, found = dict(written(tmp_path)), dict[str, list[str]]()
    assert set(pages) == {*PAGES, *HANDED}
    for width in WIDTHS:
        window = opened(browser, width)
        for kind, path in pages.items():
            window.goto(path.as_uri())
            if wrong := faults(window):
                found[f"{kind}, {width} px"] = wrong
        window.context.close()
    assert found == {}
