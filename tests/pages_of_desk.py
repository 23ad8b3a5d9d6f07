"""The pictures of the desk in samples/pages: `python tests/pages_of_desk.py`. It wants Debian's
chromium.
"""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path
from shutil import which

from playwright.sync_api import expect, sync_playwright

ROOT = Path(__file__).parents[1]
COMMAND = [sys.executable, "-c", "from explain.cli.main import main; main()", "desk", "samples", "--no-browser"]
LINES = ("W = 1.8 × 9.81 = 17.66 N", "F × 4.4 = 24.525 × 31", "F = 172.8 N")
LOOKS = {
    "desk": (1180, 900, "light"),
    "desk-dark": (1180, 900, "dark"),
    "desk-phone": (390, 844, "light"),
    "desk-phone-dark": (390, 844, "dark"),
}


def main() -> None:
    """Take the pictures of a problem with a working that goes wrong."""
    with subprocess.Popen(COMMAND, stderr=subprocess.PIPE, text=True, cwd=ROOT) as desk, sync_playwright() as play:
        assert desk.stderr is not None
        found = re.search(r"http://\S+", desk.stderr.readline())
        assert found
        browser = play.chromium.launch(executable_path=which("chromium"))
        for name, (width, height, scheme) in LOOKS.items():
            page = browser.new_page(viewport={"width": width, "height": height}, color_scheme=scheme)  # type: ignore[arg-type]
            page.goto(found[0] + "p/02-treacle-tin-again")
            page.get_by_role("textbox", name="Your working").click()
            for each in LINES:
                page.keyboard.type(each)
                page.keyboard.press("Enter")
            expect(page.locator("#said")).to_have_text(re.compile("Line 2"))
            page.get_by_role("button", name="A hint").click()
            expect(page.get_by_text("Hint 1.")).to_be_visible()
            page.evaluate("document.activeElement.blur()")
            page.screenshot(path=ROOT / "samples" / "pages" / f"{name}.png", full_page=True)
        browser.close()
        desk.terminate()


if __name__ == "__main__":
    main()
