"""The pictures of the desk in samples/pages: `python tests/pages_of_desk.py`. It wants Debian's chromium.

Three pages, each light and dark, on a desk and on a phone: a student's working that goes wrong, a tutor's problem, and
a class of thirty whose workings, made up here, stop in several places.
"""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from shutil import which

from playwright.sync_api import Browser, FloatRect, Page, ViewportSize, expect, sync_playwright

ROOT = Path(__file__).parents[1]
PICTURES = ROOT / "samples" / "pages"
CODE = "from explain.cli.main import main; main()"
LOOKS = {
    "": (1180, 900, "light"),
    "-dark": (1180, 900, "dark"),
    "-phone": (390, 844, "light"),
    "-phone-dark": (390, 844, "dark"),
}
TIN = "02-treacle-tin-again"
LINES = ("W = 1.8 × 9.81 = 17.66 N", "F × 4.4 = 24.525 × 31", "F = 172.8 N")
PULL = ("W = 1.8 × 9.81 = 17.66 N", "F × 4.4 = 17.66 × 16.5 + 24.525 × 31", "F = 239 N")
CLASS = (  # a working, and how many hand it in
    (LINES, 7),
    ((*PULL, "R = 239 + 17.66 + 24.53 = 281 N"), 5),
    (("F × 4.4 = 1.8 × 16.5 + 2.5 × 31", "F = 24.4 N"), 3),
    ((*PULL, "R = 239 - 17.66 - 24.53 = 197 N down"), 15),
)


def main() -> None:
    """Take the pictures."""
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=which("chromium"))
        with desk("samples") as address:
            for name, page in looks(browser, "desk"):
                page.goto(f"{address}p/{TIN}")
                typed(page)
                taken(page, name)
        with tempfile.TemporaryDirectory() as folder:
            for each in ("25-lantern.toml", "harbour-school.toml"):
                shutil.copy(ROOT / "samples" / each, folder)
            with desk(folder, "--edit") as address:
                for name, page in looks(browser, "desk-edit"):
                    page.goto(address)
                    page.goto(f"{address.partition('edit')[0]}edit/25-lantern")
                    expect(page.locator("#edit.live")).to_be_visible()
                    expect(page.locator(".handle")).to_have_count(4)
                    taken(page, name, upto=".bench")
        with (
            tempfile.TemporaryDirectory() as folder,
            desk("samples", "--keep", f"{folder}/class.sqlite") as address,
        ):
            handed_in(browser, address.partition("class")[0])
            for name, page in looks(browser, "desk-class"):
                page.goto(address)
                taken(page, name)
        browser.close()


@contextmanager
def desk(folder: str, *options: str) -> Iterator[str]:
    """A desk at work, and the last address that it prints: that with a key, where there is one."""
    command = [sys.executable, "-c", CODE, "desk", folder, *options, "--no-browser"]
    wanted = {"--edit": r"http://\S+/edit\?key=\S+", "--keep": r"http://\S+/class\?key=\S+"}
    pattern = wanted[options[0]] if options else r"http://\S+"
    with subprocess.Popen(command, stderr=subprocess.PIPE, text=True, cwd=ROOT) as process:
        assert process.stderr is not None
        yield next(each[0] for line in process.stderr if (each := re.search(pattern, line)))
        process.terminate()


def looks(browser: Browser, name: str) -> Iterator[tuple[str, Page]]:
    """A window for each look, and the name of its picture."""
    for look, (width, height, scheme) in LOOKS.items():
        viewport: ViewportSize = {"width": width, "height": height}
        page = browser.new_page(viewport=viewport, color_scheme="dark" if scheme == "dark" else "light")
        yield name + look, page
        page.close()


def typed(page: Page) -> None:
    """A working that goes wrong, and its first hint."""
    page.get_by_role("textbox", name="Your working").click()
    for each in LINES:
        page.keyboard.type(each)
        page.keyboard.press("Enter")
    expect(page.locator("#said")).to_have_text(re.compile("Line 2"))
    page.get_by_role("button", name="A hint").click()
    expect(page.get_by_text("Hint 1.")).to_be_visible()
    page.evaluate("document.activeElement.blur()")


def handed_in(browser: Browser, address: str) -> None:
    """The workings of a class, each from a page of its own."""
    page = browser.new_page()
    for visit, lines in enumerate(lines for lines, times in CLASS for _ in range(times)):
        answer = page.request.post(
            f"{address}p/{TIN}/working/judge",
            data={"text": "\n".join(lines), "visit": f"visit-{visit}"},
            headers={"origin": address.rstrip("/")},
        )
        assert answer.ok, answer.text()
    page.close()


def taken(page: Page, name: str, upto: str = "html") -> None:
    """The picture of the page, down to the end of one of its parts."""
    page.evaluate("window.scrollTo(0, 0)")
    box, size = page.locator(upto).bounding_box(), page.viewport_size
    assert box and size
    height = max(box["y"] + box["height"] + 40, size["height"])
    clip: FloatRect = {"x": 0, "y": 0, "width": size["width"], "height": height}
    page.screenshot(path=PICTURES / f"{name}.png", full_page=True, clip=clip)


if __name__ == "__main__":
    main()
