"""The tutor's page as a person meets it: typing, fields, handles, a fault, saving, two at one file; and axe-core."""

from __future__ import annotations

import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.base import AXE_SCRIPT
from playwright.sync_api import Browser, Locator, Page, expect
from test_desk_browser import RUN, WIDTHS, browser

__all__ = ("browser",)

SAMPLES = Path(__file__).parents[1] / "samples"
FILES = "25-lantern.toml", "29-anchor-line.toml", "harbour-school.toml", "evening-class.toml"
DELTOID = 'direction = "{} deg from back toward up"'
# A row's head that is a formula alone: axe counts only text of HTML as visible, and it is named in words.
HEARD = re.compile(r'empty-table-header: .*<th scope="row" aria-label="\w[^"]*"><math')
SMALL = """() => [...document.querySelectorAll(
    "button, nav a, .problems a, .view, .handle, summary, select, input[type=text], textarea")].filter(each => {
    const box = each.getBoundingClientRect();
    return box.height && (box.height < 43.9 || box.width < 43.9);
}).map(each => each.outerHTML.slice(0, 120))"""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("desk")


@pytest.fixture(scope="module")
def key(folder: Path) -> Iterator[str]:
    """The address that is printed, with its key."""
    code = "from explain.cli.main import main; main()"
    command = [sys.executable, "-c", code, "desk", str(folder), "--edit", "--no-browser", "--jobs", "1"]
    with subprocess.Popen(command, stderr=subprocess.PIPE, text=True) as desk:
        assert desk.stderr is not None
        found = next(each for line in desk.stderr if (each := re.search(r"http://\S+/edit\?key=\S+", line)))
        yield found[0]
        desk.terminate()


@pytest.fixture
def page(browser: Browser, key: str, folder: Path) -> Iterator[Page]:
    """A tutor's window at the lantern, its files as they were; nothing may be said to the console."""
    for name in FILES:
        (folder / name).write_bytes((SAMPLES / name).read_bytes())
    context = browser.new_context(viewport={"width": 1200, "height": 900})
    page, said = context.new_page(), list[str]()
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    opened(page, key)
    yield page
    context.close()
    assert [each for each in said if not re.search("ERR_INTERNET_DISCONNECTED|409|503|507", each)] == []


def opened(page: Page, key: str, name: str = "25-lantern") -> None:
    page.goto(key)
    page.goto(f"{key.partition('/edit')[0]}/edit/{name}")
    expect(page.locator("#edit.live")).to_be_visible()


def file_of(page: Page) -> Locator:
    return page.get_by_role("textbox", name="The file", exact=True)


def written(page: Page, old: str, new: str) -> None:
    """A piece of the file typed anew with the keyboard."""
    box = file_of(page)
    text = box.input_value()
    start = text.index(old)
    box.evaluate(
        "(box, [start, end]) => { box.focus(); box.setSelectionRange(start, end); }", [start, start + len(old)]
    )
    page.keyboard.type(new)


def test_typing_in_the_file_changes_the_figure_and_the_walkthrough(page: Page) -> None:
    before = page.locator("#figure svg").inner_html()
    written(page, "20 deg from back", "40 deg from back")
    expect(page.locator("#said")).to_have_text(re.compile("deltoid 16"))
    assert before != page.locator("#figure svg").inner_html()
    expect(page.get_by_role("slider", name="Direction of deltoid")).to_have_attribute("aria-valuenow", "40")
    expect(page.locator("#state")).to_have_text("Not saved yet.")


def test_a_field_is_written_into_the_file_and_the_file_into_the_field(page: Page) -> None:
    page.get_by_text("Muscle: deltoid").click()
    field = page.get_by_role("group", name="Muscle: deltoid").get_by_role("textbox", name="at", exact=True)
    text = file_of(page).input_value()
    field.fill("14 cm")
    field.press("Enter")
    expect(file_of(page)).to_have_value(text.replace('at = "12 cm"', 'at = "14 cm"'))
    expect(page.locator("#said")).to_have_text(re.compile("^Drawn as the file stands: deltoid 26"))
    expect(field).to_be_focused()
    written(page, '"14 cm"', '"15 cm"')
    expect(field).to_have_value("15 cm")
    expect(page.locator("#part-muscle-0 .gist")).to_have_text(re.compile("15 cm"))


def test_a_key_and_a_part_are_added_and_taken_away(page: Page) -> None:
    text = file_of(page).input_value()
    page.get_by_role("button", name="Load", exact=True).click()
    expect(file_of(page)).to_have_value(re.compile(r'\[\[load\]\]\nname = "load 1"'))
    added = page.get_by_role("group", name="Load: load 1")
    expect(added).to_be_visible()
    added.get_by_role("button", name="Remove this load").click()
    expect(file_of(page)).to_have_value(text)
    page.get_by_text("Muscle: deltoid").click()
    muscle = page.get_by_role("group", name="Muscle: deltoid")
    muscle.get_by_role("combobox", name="more").select_option("count")
    muscle.get_by_role("button", name="Add").click()
    expect(muscle.get_by_role("textbox", name="count")).to_be_focused()
    page.get_by_role("button", name="Take back").click()
    expect(file_of(page)).to_have_value(text)


@pytest.mark.parametrize(
    ("keys", "degrees"),
    (
        (("ArrowUp",), "21"),
        (("ArrowDown", "ArrowLeft"), "18"),
        (("Shift+ArrowRight", "Shift+ArrowRight"), "20.2"),
        (("PageUp", "PageUp"), "40"),
        (("End", "ArrowUp"), "90"),
        (("ArrowUp",) * 12, "32"),
    ),
)
def test_an_arrow_key_on_a_handle_turns_the_force_in_the_file(page: Page, keys: tuple[str, ...], degrees: str) -> None:
    slider = page.get_by_role("slider", name="Direction of deltoid")
    expect(slider).to_have_attribute("aria-valuetext", "20 degrees from back toward up")
    slider.focus()
    for each in keys:
        page.keyboard.press(each)
    expect(slider).to_have_attribute("aria-valuetext", f"{degrees} degrees from back toward up")
    expect(file_of(page)).to_have_value(re.compile(re.escape(DELTOID.format(degrees))))
    expect(page.get_by_role("textbox", name="deltoid")).to_have_value(degrees)
    expect(slider).to_be_focused()


def test_a_number_turns_as_well_and_stops_at_the_end_of_its_words(page: Page) -> None:
    number = page.get_by_role("region", name="Angles").get_by_role("textbox", name="forearm")
    number.fill("95")
    number.press("Enter")
    expect(number).to_have_value("90")
    expect(file_of(page)).to_have_value(re.compile('"90 deg above right"'))
    page.get_by_role("button", name="Take back").click()
    expect(number).to_have_value("30")


def test_a_handle_is_dragged_and_the_newest_angle_is_what_stays(page: Page) -> None:
    slider = page.get_by_role("slider", name="Direction of upper arm")
    box = slider.bounding_box()
    assert box is not None
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    for step in range(1, 16):
        page.mouse.move(x, y + 4 * step)
    turned = slider.get_attribute("aria-valuenow")
    page.mouse.up()
    assert turned is not None and turned.isdigit() and 20 < int(turned) < 60
    expect(file_of(page)).to_have_value(re.compile(f'"{turned} deg below right"'))
    expect(page.locator("#figure g[transform*=rotate]")).to_have_count(0)
    page.get_by_role("button", name="Take back").click()
    expect(file_of(page)).to_have_value(re.compile('"15 deg below right"'))


def test_a_held_handle_stays_where_it_is_as_the_figure_is_drawn_again(page: Page) -> None:
    slider = page.get_by_role("slider", name="Direction of upper arm")
    box = slider.bounding_box()
    assert box is not None
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x, y + 40)
    turned = slider.get_attribute("aria-valuenow")
    assert turned is not None and int(turned) > 20
    expect(file_of(page)).to_have_value(re.compile(f'"{turned} deg below right"'))
    expect(page.locator("#figure g[transform*=rotate]")).to_have_count(0)  # the figure has the angle, in another size
    page.mouse.move(x, y + 41)
    after = slider.get_attribute("aria-valuenow")
    page.mouse.up()
    assert after is not None and abs(int(after) - int(turned)) <= 1


def test_only_what_is_a_plain_number_has_a_handle(page: Page) -> None:
    expect(page.get_by_role("slider")).to_have_count(4)
    written(page, "15 deg below right", "right")
    expect(page.get_by_role("slider")).to_have_count(3)


def test_a_fault_keeps_the_last_good_figure_and_says_so(page: Page) -> None:
    figure = page.locator("#figure svg")
    before = figure.inner_html()
    written(page, "20 deg from back", "20 dg from back")
    expect(page.locator("#said")).to_have_text(re.compile(r"^Line \d+ has a fault\.$"))
    expect(page.get_by_text("This is the last good figure")).to_be_visible()
    assert before == figure.inner_html()
    for words in ("muscle[1].direction", "Expected", "Write, for example"):
        expect(page.locator("#fault")).to_contain_text(words)
    page.get_by_role("button", name=re.compile("^Show line")).click()
    chosen = file_of(page).evaluate("box => box.value.slice(box.selectionStart, box.selectionEnd)")
    assert 'direction = "20 dg from back toward up"' == chosen
    written(page, "20 dg from back", "20 deg from back")
    expect(page.locator("#fault")).to_be_hidden()
    expect(page.get_by_text("This is the last good figure")).to_be_hidden()


def test_what_is_saved_is_on_disk(page: Page, folder: Path) -> None:
    written(page, "Grandmother Bettine's lantern", "The lantern")
    expect(page.get_by_role("heading", name="The lantern", level=1)).to_be_visible()
    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.locator("#state")).to_have_text("Saved.")
    assert 'title = "The lantern"' in (folder / FILES[0]).read_text("utf-8")
    written(page, "The lantern", "Her lantern")
    page.keyboard.press("Control+s")
    expect(page.locator("#state")).to_have_text("Saved.")
    assert 'title = "Her lantern"' in (folder / FILES[0]).read_text("utf-8")


def test_a_file_that_changed_meanwhile_is_shown_and_nothing_is_overwritten(page: Page, folder: Path) -> None:
    written(page, "20 deg from back", "25 deg from back")
    theirs = (SAMPLES / FILES[0]).read_text("utf-8").replace("12 cm", "13 cm")
    (folder / FILES[0]).write_text(theirs, "utf-8")
    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.get_by_role("heading", name="The file has changed on disk")).to_be_visible()
    expect(page.get_by_role("textbox", name="The file on disk")).to_have_value(theirs)
    assert theirs == (folder / FILES[0]).read_text("utf-8")
    mine = file_of(page).input_value()
    assert "25 deg from back" in mine
    page.get_by_role("button", name="Go on with theirs").click()
    expect(file_of(page)).to_have_value(theirs)
    page.get_by_role("button", name="Take back").click()
    expect(file_of(page)).to_have_value(mine)
    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.locator("#state")).to_have_text("Saved.")
    assert mine == (folder / FILES[0]).read_text("utf-8")


def test_unsaved_text_survives_a_reload_and_a_cut_line(page: Page) -> None:
    page.context.set_offline(True)
    written(page, "20 deg from back", "30 deg from back")
    expect(page.locator("#said")).to_have_text(re.compile("^No line to the desk"))
    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.locator("#state")).to_have_text(re.compile("nothing was saved"))
    page.context.set_offline(False)
    expect(page.locator("#said")).to_have_text(re.compile("^Drawn"), timeout=15_000)
    page.reload()
    expect(file_of(page)).to_have_value(re.compile("30 deg from back"))
    expect(page.get_by_role("slider", name="Direction of deltoid")).to_have_attribute("aria-valuenow", "30")


def test_a_new_problem_is_begun_from_the_list(page: Page, key: str, folder: Path) -> None:
    page.goto(key)
    page.get_by_role("textbox", name="Its file").fill("milk-jug")
    page.get_by_role("combobox", name="Like").select_option("knee")
    page.get_by_role("button", name="Begin it").click()
    expect(page.locator("#said")).to_have_text(re.compile("^Drawn as the file stands"))
    assert (folder / "milk-jug.toml").exists() and page.url.endswith("/edit/milk-jug")


def test_it_works_without_script(browser: Browser, key: str, folder: Path) -> None:
    (folder / FILES[0]).write_bytes((SAMPLES / FILES[0]).read_bytes())
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(key)
    page.get_by_role("link", name="Grandmother Bettine's lantern").click()
    text = file_of(page).input_value()
    file_of(page).fill(text.replace("20 deg from back", "40 deg from back"))
    page.get_by_role("button", name="Draw again").click()
    expect(page.locator("#said")).to_have_text(re.compile("deltoid 16"))
    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.locator("#state")).to_have_text("Saved.")
    assert text.replace("20 deg from back", "40 deg from back") == (folder / FILES[0]).read_text("utf-8")
    context.close()


@pytest.mark.parametrize("width", WIDTHS)
def test_no_rule_of_axe_is_broken_and_nothing_is_wider_than_the_window(
    browser: Browser, key: str, folder: Path, width: int
) -> None:
    for name in FILES:
        (folder / name).write_bytes((SAMPLES / name).read_bytes())
    size: Any = {"width": width, "height": 900}
    context = browser.new_context(viewport=size, bypass_csp=True)
    page = context.new_page()
    found: list[str] = []
    for where in ("list", "as drawn", "open", "at fault", "changed on disk"):
        match where:
            case "list":
                page.goto(key)
            case "as drawn":
                opened(page, key)
            case "open":
                for each in page.locator("summary").all():
                    each.click()
            case "at fault":
                written(page, "20 deg from back", "20 dg from back")
                expect(page.locator("#fault")).to_be_visible()
            case "changed on disk":
                (folder / FILES[0]).write_text("# theirs\n")
                page.get_by_role("button", name="Save", exact=True).click()
                expect(page.locator("#conflict")).to_be_visible()
        for scheme in ("light", "dark"):
            page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
            page.evaluate(AXE_SCRIPT)
            found += [f"{where} {scheme}: {each}" for each in page.evaluate(RUN)]
        found += [f"{where}: too small: {each}" for each in page.evaluate(SMALL)]
        if page.evaluate("document.documentElement.scrollWidth > innerWidth"):
            found.append(f"{where}: wider than the window")
    context.close()
    assert [each for each in found if not HEARD.search(each)] == []


def test_twice_as_large_and_in_forced_colours_all_is_there(browser: Browser, key: str) -> None:
    size: Any = {"width": 640, "height": 450}  # a window of 1280 px at 200 %
    context = browser.new_context(viewport=size, device_scale_factor=2, forced_colors="active", reduced_motion="reduce")
    page = context.new_page()
    opened(page, key, "29-anchor-line")
    expect(page.get_by_role("slider", name="Direction of anchor line")).to_be_visible()
    assert not page.evaluate("document.documentElement.scrollWidth > innerWidth")
    context.close()


def test_who_listens_hears_roles_names_and_two_live_regions(page: Page) -> None:
    tree = page.locator("body").aria_snapshot()
    for line in (
        'heading "Grandmother Bettine\'s lantern" [level=1]',
        'region "The figure"',
        'slider "Direction of upper arm"',
        'region "Angles"',
        'region "The parts"',
        'textbox "The file"',
        'button "Save"',
        'region "The walkthrough"',
    ):
        assert line in tree, line
    live = page.locator("[aria-live], [role=status], [role=alert], [role=log]")
    assert ["said", "state"] == [each.get_attribute("id") for each in live.all()]
