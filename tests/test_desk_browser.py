"""The desk as a person meets it: a keyboard, a narrow window, a cut line, no script; and the rules of axe-core."""

from __future__ import annotations

import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from shutil import which
from typing import Any

import pytest
from axe_playwright_python.base import AXE_SCRIPT
from playwright.sync_api import Browser, Page, expect, sync_playwright

SAMPLES = Path(__file__).parents[1] / "samples"
TIN = "p/02-treacle-tin-again"
WIDTHS = 1200, 390, 320
LINES = ("W = 1.8 × 9.81 = 17.66 N", "F × 4.4 = 24.525 × 31", "F = 172.8 N")
RIGHT = ("W = 1.8 × 9.81 = 17.66 N", "F × 4.4 = 17.66 × 16.5 + 24.525 × 31", "F = 239 N", "R = 239 - 42.2 = 197 N down")
RUN = """() => axe.run(document, {resultTypes: ["violations"], runOnly: {type: "tag", values:
    ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}}).then(found => found.violations.flatMap(
    each => each.nodes.map(node => each.id + ": " + node.target + " " + node.html.slice(0, 160))))"""
SMALL = """() => [...document.querySelectorAll("button, nav a, .problems a, input[type=checkbox]")].filter(each => {
    const box = (each.closest("label") ?? each).getBoundingClientRect();
    return box.height && (box.height < 44 || box.width < 44);
}).map(each => each.outerHTML.slice(0, 120))"""


@pytest.fixture(scope="module")
def address() -> Iterator[str]:
    command = [
        sys.executable,
        "-c",
        "from explain.cli.main import main; main()",
        "desk",
        str(SAMPLES),
        "--no-browser",
        "--jobs",
        "1",
    ]
    with subprocess.Popen(command, stderr=subprocess.PIPE, text=True) as desk:
        assert desk.stderr is not None
        found = re.search(r"http://\S+", desk.stderr.readline())
        assert found
        try:
            yield found[0]
        finally:
            desk.terminate()


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    found = which("chromium") or which("chromium-browser") or which("google-chrome")
    assert found, "no chromium: apt-get install chromium"
    with sync_playwright() as play, play.chromium.launch(executable_path=found) as browser:
        yield browser


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A window in which nothing may be said to the console: no policy of ours stops a thing of ours."""
    context = browser.new_context(viewport={"width": 1200, "height": 900})
    page, said = context.new_page(), list[str]()
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    yield page
    context.close()
    assert [each for each in said if "ERR_INTERNET_DISCONNECTED" not in each and "503" not in each] == []


def typed(page: Page, *lines: str) -> None:
    box = page.get_by_role("textbox", name="Your working")
    box.click()
    for each in lines:
        page.keyboard.type(each)
        page.keyboard.press("Enter")


def test_a_person_with_a_keyboard_finds_the_line_and_asks_for_hints(page: Page, address: str) -> None:
    page.goto(address)
    page.get_by_role("link", name="The same tin, and the arm that holds it").press("Enter")
    said = page.locator("#said")
    typed(page, LINES[0])
    expect(said).to_have_text(re.compile("^Nothing wrong found so far"))
    typed(page, *LINES[1:])
    expect(said).to_have_text("Line 2 is the first that does not hold: look there.")
    expect(page.locator("#echo li")).to_have_count(3)
    assert 0 == page.get_by_text("Hint 1.").count()
    for count, name in enumerate(("A hint", "One hint more", "One hint more"), 1):
        hint = page.get_by_role("button", name=name)
        page.keyboard.press("Tab") if count == 1 else None
        hint.focus()
        page.keyboard.press("Enter")
        expect(page.get_by_text(f"Hint {count}.")).to_be_visible()
    expect(page.get_by_role("button", name="One hint more")).to_be_hidden()
    assert "\n".join(LINES) + "\n" == page.get_by_role("textbox", name="Your working").input_value()


def test_a_line_is_read_while_it_is_typed_and_judged_only_when_it_ends(page: Page, address: str) -> None:
    page.goto(address + TIN)
    box = page.get_by_role("textbox", name="Your working")
    box.click()
    page.keyboard.type(LINES[1])
    expect(page.locator("#echo math")).to_have_count(1)
    expect(page.locator("#said")).to_have_text("")
    page.keyboard.press("Enter")
    expect(page.locator("#said")).to_have_text(re.compile("Line 1"))


def test_a_right_working_is_done(page: Page, address: str) -> None:
    page.goto(address + TIN)
    typed(page, *RIGHT)
    expect(page.locator("#said")).to_have_text("Done: every line holds, and all that is asked for is there.")
    expect(page.get_by_role("button", name="A hint")).to_be_hidden()


def test_what_was_typed_survives_a_reload_and_on_request_the_window(page: Page, address: str) -> None:
    page.goto(address + TIN)
    typed(page, *LINES)
    page.reload()
    expect(page.get_by_role("textbox", name="Your working")).to_have_value("\n".join(LINES) + "\n")
    expect(page.locator("#said")).to_have_text(re.compile("Line 2"))
    other = page.context.new_page()
    other.goto(address + TIN)
    expect(other.get_by_role("textbox", name="Your working")).to_have_value("")
    page.get_by_role("checkbox", name="Keep on this device").check()
    other.reload()
    expect(other.get_by_role("textbox", name="Your working")).to_have_value("\n".join(LINES) + "\n")
    page.get_by_role("checkbox", name="Keep on this device").uncheck()
    assert [] == page.evaluate("Object.keys(localStorage)")


def test_a_cut_line_is_said_and_mended(page: Page, address: str) -> None:
    page.goto(address + TIN)
    page.context.set_offline(True)
    typed(page, LINES[0])
    expect(page.locator("#state")).to_have_text(re.compile("^No line to the desk"))
    page.context.set_offline(False)
    expect(page.locator("#said")).to_have_text(re.compile("^Nothing wrong found so far"), timeout=15_000)
    expect(page.locator("#state")).to_have_text("")


def test_it_works_without_script(browser: Browser, address: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(address + TIN)
    page.get_by_role("textbox", name="Your working").fill("\n".join(LINES))
    page.get_by_role("button", name="Judge my lines").click()
    expect(page.locator("#said")).to_have_text("Line 2 is the first that does not hold: look there.")
    page.get_by_role("button", name="A hint").click()
    expect(page.get_by_text("Hint 1.")).to_be_visible()
    expect(page.get_by_role("textbox", name="Your working")).to_have_value("\n".join(LINES))
    context.close()


@pytest.mark.parametrize("width", WIDTHS)
def test_no_rule_of_axe_is_broken_and_nothing_is_wider_than_the_window(
    browser: Browser, address: str, width: int
) -> None:
    size: Any = {"width": width, "height": 900}
    context = browser.new_context(viewport=size, bypass_csp=True)
    page = context.new_page()
    found: list[str] = []
    for where, lines in (("", ()), (TIN, ()), (TIN, LINES), ("nowhere", ())):
        page.goto(address + where)
        if lines:
            typed(page, *lines)
            page.get_by_role("button", name="A hint").click()
            expect(page.get_by_text("Hint 1.")).to_be_visible()
        for scheme in ("light", "dark"):
            page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
            page.evaluate(AXE_SCRIPT)
            found += [f"{where} {scheme}: {each}" for each in page.evaluate(RUN)]
        found += [f"{where}: too small: {each}" for each in page.evaluate(SMALL)]
        if page.evaluate("document.documentElement.scrollWidth > innerWidth"):
            found.append(f"{where}: wider than the window")
    context.close()
    assert found == []


def test_twice_as_large_and_in_forced_colours_all_is_there(browser: Browser, address: str) -> None:
    size: Any = {"width": 640, "height": 450}  # a window of 1280 px at 200 %
    context = browser.new_context(viewport=size, device_scale_factor=2, forced_colors="active", reduced_motion="reduce")
    page = context.new_page()
    page.goto(address + TIN)
    typed(page, *LINES)
    expect(page.get_by_role("button", name="A hint")).to_be_visible()
    assert not page.evaluate("document.documentElement.scrollWidth > innerWidth")
    context.close()


def test_who_listens_hears_roles_names_and_two_live_regions(page: Page, address: str) -> None:
    page.goto(address + TIN)
    typed(page, *LINES)
    expect(page.locator("#said")).to_have_text(re.compile("Line 2"))
    tree = page.locator("body").aria_snapshot()
    for line in (
        'navigation "The desk"',
        'heading "The same tin, and the arm that holds it" [level=1]',
        'region "The problem"',
        'textbox "Your working"',
        'button "Judge my lines"',
        'checkbox "Keep on this device"',
        'region "Your lines, judged"',
        'rowheader "2"',
    ):
        assert line in tree, line
    live = page.locator("[aria-live], [role=status], [role=alert], [role=log]")
    assert ["said", "state"] == [each.get_attribute("id") for each in live.all()]
