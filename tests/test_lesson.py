"""Lessons: the pages for a board, what is said on them, captions, and how they look in a browser and on paper.

The grammar of captions is that of the W3C's WebVTT (candidate recommendation of 2019, sections 4.1 and 6), read by a
parser of this file's own. Type a thirtieth of the height or more: common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Any, NamedTuple

import pikepdf
import pytest
import webvtt
from click.testing import CliRunner, Result
from lxml import html as reader
from markdown_it import MarkdownIt
from playwright.sync_api import Browser
from test_accessible import browser as browser
from test_accessible import faults
from test_hostile import TEXTS

from explain import work
from explain.cli.main import main
from explain.document.board import Board
from explain.document.figure_parts import ARMS, BODY, JOINT, SIGNS, force_part, parts
from explain.document.passage import Derivation
from explain.errors import Fault
from explain.formula.speech import speech
from explain.lesson.api import WorkedLesson, lesson
from explain.lesson.captions import words
from explain.lesson.marks import read_marks
from explain.lesson.spoken import spoken_text
from explain.write.figure.board_figure import BOARD, grown
from explain.write.figure.free_body import layout

SAMPLES = Path(__file__).parents[1] / "samples"
TIN, POT, BAND = (SAMPLES / f"{name}.toml" for name in ("02-treacle-tin-again", "05-crab-pot", "30-brass-band"))
STRETCH = SAMPLES / "16-slipway-stretch.toml"
SERIES = SAMPLES / "series" / "treacle-tin.toml"
KINDS = {"tin": TIN, "crab pot": POT, "band": BAND, "series": SERIES}
HOSTILE = (*TEXTS[:12], "--> x", "&amp;", "$\\input{/etc/passwd}$", "a\x1b[31mred", "a\u2028b", "\u202egpj.exe")
LOOK = """() => { document.documentElement.classList.remove("turned");
    return [...document.querySelectorAll(".face")].flatMap((face, place) => {
        const at = face.getBoundingClientRect(), least = at.height / 30 - 0.05, wrong = [];
        for (const each of face.querySelectorAll("*")) {
            const box = each.getBoundingClientRect();
            if (each.closest(".heard") || !box.width) continue;
            if (box.right > at.right + 1 || box.bottom > at.bottom + 1)
                wrong.push(`${place + 1}: over the edge: ${each.outerHTML.slice(0, 90)}`);
            const size = parseFloat(getComputedStyle(each).fontSize);
            const lone = [...each.childNodes].some(node => node.nodeType == 3 && node.data.trim());
            const small = each.closest("math") || each.closest("svg") || each.closest("[style*=font-size]");
            if (lone && !small && size < least)
                wrong.push(`${place + 1}: ${size} of ${at.height}: ${each.outerHTML.slice(0, 90)}`);
        }
        return wrong;
    }); }"""


class Cue(NamedTuple):
    start: int
    end: int
    text: str


def cues_of(text: str) -> list[Cue]:
    """The cues of a WebVTT file. Raises ValueError where it is none."""
    if not re.match(r"WEBVTT(?:[ \t][^\n]*)?\n\n", text) or "\0" in text or "\r" in text:
        raise ValueError("no header")
    blocks = [block for block in re.split(r"\n{2,}", text.partition("\n\n")[2].strip("\n")) if block]
    return [_cue(block) for block in blocks]


def _cue(block: str) -> Cue:
    lines = block.split("\n")
    if "-->" not in lines[0]:
        lines = lines[1:]
    time = r"(\d{2,}):([0-5]\d):([0-5]\d)\.(\d{3})"
    found = re.fullmatch(rf"{time} --> {time}", lines[0]) if lines else None
    if found is None or len(lines) < 2 or any("-->" in line for line in lines[1:]):
        raise ValueError(f"no cue: {block!r}")
    numbers = [int(each) for each in found.groups()]
    start, end = (
        ((hours * 60 + minutes) * 60 + seconds) * 1000 + rest
        for hours, minutes, seconds, rest in (numbers[:4], numbers[4:])
    )
    words = "\n".join(lines[1:])
    if end <= start or re.search(r"<|&(?!(?:amp|lt|gt|lrm|rlm|nbsp);)", words):
        raise ValueError(f"times or text that cannot be: {block!r}")
    return Cue(start, end, words.replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&"))


@pytest.fixture(scope="module")
def made() -> dict[str, WorkedLesson]:
    return {kind: lesson(path) for kind, path in KINDS.items()}


def ran(*words: object) -> Result:
    return CliRunner().invoke(main, ["lesson", *map(str, words)])


# ---------------------------------------------------------------------- pages
@pytest.mark.parametrize("path", (TIN, POT, BAND))
def test_every_line_of_the_page_comes_on_a_board_as_its_newest(path: Path, made: dict[str, WorkedLesson]) -> None:
    told = next(each for kind, each in made.items() if KINDS[kind] == path)
    rows = [
        (row.left, row.right)
        for passage in work(path).page.passages
        if isinstance(passage, Derivation)
        for row in passage.rows
    ]
    newest = [
        (each.rows[-1].left, each.rows[-1].right)
        for board in told.boards
        for each in board.passages
        if isinstance(each, Derivation)
    ]
    assert [row for place, row in enumerate(newest) if not place or newest[place - 1] != row] == rows


def test_the_figure_grows_and_stays_in_its_place(made: dict[str, WorkedLesson]) -> None:
    boards = [board for board in made["tin"].boards if board.shown is not None]
    assert [board.shown[-1] for board in boards if board.shown] == [
        BODY,
        *(force_part(name) for name in ("elbow flexors", "forearm and hand", "tin")),
        JOINT,
        ARMS,
        SIGNS,
    ]
    before: set[object] = set()
    for board in boards:
        assert board.picture
        laid = grown(board.picture, board.shown).layout
        now = {*laid.shapes, *laid.labels}
        assert before < now and laid.view == layout(board.picture.drawing, BOARD).view
        before = now
    whole = layout(boards[0].picture.drawing, BOARD) if boards[0].picture else None
    assert whole and before == {*whole.shapes, *whole.labels}


@pytest.mark.parametrize("path", sorted(SAMPLES.glob("[0-9]*.toml")), ids=lambda path: path.stem[:2])
def test_every_shape_of_a_figure_belongs_to_a_part_and_its_letters_are_large_enough(path: Path) -> None:
    drawing = work(path).picture().drawing
    laid = layout(drawing, BOARD)
    assert len(laid.drawn) == len(laid.shapes) and len(laid.lettered) == len(laid.labels)
    assert set(parts(drawing)) >= {*laid.drawn, *laid.lettered}
    scale = min(20.4 / laid.view.width, 19.6 / laid.view.height)  # em of a 24th of the height for a pixel
    assert 16.0 * scale > 24 / 30 * 0.9  # where very many things are drawn at most a tenth smaller


def test_a_series_shows_only_what_is_new(made: dict[str, WorkedLesson]) -> None:
    boards = made["series"].boards
    starts = [place for place, board in enumerate(boards) if board.chapter]
    assert [boards[place].chapter.partition(":")[0] for place in starts[1:-1]] == [
        "Start",
        *(f"Step {number}" for number in range(1, 11)),
    ]
    step = boards[starts[2] : starts[3]]
    assert [board.shown for board in step if board.shown][0] == (
        BODY,
        force_part("elbow flexors"),
        force_part("tin"),
        JOINT,
        SIGNS,
    )
    assert "W sub T equals m sub T" not in "\n".join(said for board in step for said in board.said)
    assert any("W sub F equals m sub F" in said for board in step for said in board.said)
    assert sum(board.part == "A teaching model" for board in boards) == 1
    assert all("not for treatment" in told.script.casefold() for told in made.values())


def test_a_step_tells_what_came_and_what_fell_away(made: dict[str, WorkedLesson], tmp_path: Path) -> None:
    told = [board.said[0] for board in made["series"].boards if board.part == "The same body"]
    more = "Everything that was there before is there still, and something more."
    same = "The same forces act on it as before."
    assert told == [more, more, same, same, same, more, same, same, same]  # buns and a helper come, numbers change
    (tmp_path / "tin.toml").write_bytes((SAMPLES / "01-treacle-tin.toml").read_bytes())
    (tmp_path / "harbour-school.toml").write_bytes((SAMPLES / "harbour-school.toml").read_bytes())
    (tmp_path / "two.toml").write_text(
        """title = "A helper comes and goes"
base = "tin.toml"
[[step]]
title = "Tilde lends a hand"
idea = "a helper turns the same way as the muscle"
[[step.add.force]]
name = "Tilde's hand"
at = "20 cm"
direction = "up"
force = "15 N"
[[step]]
title = "Alone again"
idea = "who helps no longer, helps no longer"
remove = ["Tilde's hand"]
""",
        "utf-8",
    )
    boards = lesson(tmp_path / "two.toml").boards
    assert "No longer there: Tilde's hand." in [board.said[0] for board in boards if board.part == "The same body"]


def test_what_stands_behind_an_answer_is_told_under_its_own_heading(made: dict[str, WorkedLesson]) -> None:
    after = [board.part for board in made["series"].boards if board.said and board.said[0].startswith("To hold the f")]
    assert after and not {"The moments", "The joint force"} & set(after)


# ---------------------------------------------------------------------- what is said
@pytest.mark.parametrize("path", (TIN, POT, BAND))
def test_the_notes_say_every_move(path: Path, made: dict[str, WorkedLesson]) -> None:
    told = next(each for kind, each in made.items() if KINDS[kind] == path)
    said = " ".join(each for board in told.boards for each in board.said)
    moves = work(path).moves
    # a table has what is used
    used = {move.line.equation.left: move for move in moves if move.goal.kind == "convert"}
    for move in moves:
        if move.goal.kind != "pivot" and used.get(move.line.equation.left, move) is move:
            assert speech(move.line.equation.right) in said, move


def test_the_notes_ask_before_they_show(made: dict[str, WorkedLesson]) -> None:
    script = made["tin"].script
    way = "Which way would the forearm and hand turn about the elbow if only the weight of the tin pulled?"
    assert f"> **Ask, and wait:** {way} *(Clockwise.)*" in script
    assert "will the pull of the elbow flexors be more or less than the weight of the tin? *(More:" in script
    assert "is force gained, or reach and speed?" in script
    assert script.index("more or less than the weight") < script.index("The elbow flexors pull with 239 newtons")
    assert script.index("is force gained") < script.index("third class")
    assert "Larger, smaller or the same as at the start?" in made["series"].script
    torques = lesson(TIN, course={"word": "torque", "spelling": "American"}).script
    assert "torques" in torques and "centimeters" in torques and "centimetres" not in torques


@pytest.mark.parametrize(
    ("written", "spoken"),
    (
        ("31 cm from 2.5 kg", "31 centimetres from 2.5 kilograms"),
        ("1 kg, −6360 N·cm", "1 kilogram, minus 6360 newton centimetres"),
        ("9.81 m/s²", "9.81 metres per second squared"),
        ("30° and 14 %", "30 degrees and 14 per cent"),
        ("balance. ✓", "balance."),
        ("1\u202f300 N", "1300 newtons"),
    ),
)
def test_numbers_are_said_with_their_units(written: str, spoken: str) -> None:
    assert re.sub(" +", " ", spoken_text(written)) == spoken


def test_a_sentence_that_begins_with_a_letter_keeps_it_small(made: dict[str, WorkedLesson]) -> None:
    assert "\n\nm sub F, Mass of the forearm and hand, 1.8 kilograms." in made["tin"].script


def test_a_value_is_said_once_and_another_with_the_head_of_its_column(made: dict[str, WorkedLesson]) -> None:
    lines = lesson(STRETCH).script.splitlines()
    assert "m sub body, Body mass, 70 kilograms." in lines
    assert "r sub D, Knee to deck shoe, 41 centimetres, as used 0.41 metres." in lines


# ---------------------------------------------------------------------- captions
@pytest.mark.parametrize("kind", KINDS)
def test_captions_are_webvtt_in_order_without_overlap(kind: str, made: dict[str, WorkedLesson]) -> None:
    told = made[kind]
    cues = cues_of(told.captions())
    assert all(one.end <= two.start for one, two in zip(cues, cues[1:], strict=False))
    said = [each for board in told.boards for each in _spoken(board)]
    assert [cue.text for cue in cues] == [" ".join(each.split()) for each in said]
    others = webvtt.from_string(told.captions())  # a reader of WebVTT that is not ours
    assert [cue.text for cue in cues] == [" ".join(each.text.split()) for each in others]
    assert [_stamp(cue.start) for cue in cues] == [each.start for each in others]


def _stamp(milliseconds: int) -> str:
    seconds, rest = divmod(milliseconds, 1000)
    return f"{seconds // 3600:02d}:{seconds // 60 % 60:02d}:{seconds % 60:02d}.{rest:03d}"


def _spoken(board: Board) -> Iterator[str]:
    yield from board.said
    for question in board.asks:
        yield from filter(None, (question.ask, question.answer))


def test_a_sentence_lasts_as_long_as_its_words(made: dict[str, WorkedLesson]) -> None:
    cues = cues_of(made["tin"].captions(rate=120.0))
    formula = next(cue for cue in cues if cue.text.startswith("W sub F equals m sub F"))
    # W sub F equals m sub F times g equals 1.8 (3) kilograms times 9.81 (4) metres per second squared equals 17.658 (6)
    # newtons: thirty-one words, half a second each
    assert words(formula.text) == 31 and formula.end - formula.start == 15_500
    twice = cues_of(made["tin"].captions(rate=240.0))
    assert twice[-1].end < cues[-1].end


def test_marks_give_the_times_of_pages(made: dict[str, WorkedLesson], tmp_path: Path) -> None:
    told, file = made["tin"], tmp_path / "marks.csv"
    seconds = [
        place * 4.0 for place in range(len(told.boards))
    ]  # too short for some, so that they are pressed together
    file.write_text("page,seconds\n" + "".join(f"{page},{at}\n" for page, at in enumerate(seconds, 1)))
    cues = cues_of(told.captions(read_marks(file, len(told.boards))))
    assert all(one.end <= two.start for one, two in zip(cues, cues[1:], strict=False))
    place = 0
    for at, board in zip(seconds, told.boards, strict=True):
        count = len(list(_spoken(board)))
        assert not count or cues[place].start == at * 1000
        assert at == seconds[-1] or not count or cues[place + count - 1].end <= (at + 4.0) * 1000
        place += count


@pytest.mark.parametrize(
    ("text", "said"),
    (
        ("", "no first row"),
        ("a,b\n1,2\n", "no first row"),
        ("page,seconds\n1,0\n3,5\n", "page 3 of a lesson of 2 pages"),
        ("page,seconds\n1,0\n1,5\n", "a second time"),
        ("page,seconds\n1,0\n", "no mark for page 2 of 2"),
        ("page,seconds\n1,5\n2,5\n", "which is not after"),
        ("page,seconds\n1,x\n", '"1, x"'),
        ("page,seconds\n1,nan\n", '"1, nan"'),
        ("page,seconds\n1,-1\n", '"1, -1"'),
        ("page,seconds\n1\n", '"1"'),
    ),
)
def test_marks_at_fault_are_told(text: str, said: str, tmp_path: Path) -> None:
    file = tmp_path / "marks.csv"
    file.write_text(text)
    with pytest.raises(Fault, match=re.escape(said)):
        read_marks(file, 2)


@pytest.mark.parametrize(
    "text",
    ("WEBVTT", "WEBVTT\n\n1\n00:01 --> 00:02\nx\n", "WEBVTT\n\n00:00:02.000 --> 00:00:01.000\nx\n",
     "WEBVTT\n\n00:00:01.000 --> 00:00:02.000\n<b>x\n", "WEBVTT\n\n00:00:01.000 --> 00:00:02.000\n"),
)  # fmt: skip
def test_what_is_no_webvtt_is_found_out(text: str) -> None:
    with pytest.raises(ValueError):
        cues_of(text)


# ---------------------------------------------------------------------- on paper
@pytest.mark.parametrize("kind", KINDS)
def test_paper_has_a_page_a_board_of_sixteen_to_nine_tagged_with_an_outline(
    kind: str, made: dict[str, WorkedLesson]
) -> None:
    told = made[kind]
    with pikepdf.open(BytesIO(told.pdf())) as pdf:
        assert len(pdf.pages) == len(told.boards)
        assert pdf.Root.MarkInfo.Marked
        for page in pdf.pages:
            wide, high = (float(each) for each in page.mediabox[2:])
            assert wide / high == pytest.approx(16 / 9)
        with pdf.open_outline() as outline:
            chapters = [str(each.title) for each in outline.root]
            assert sum(1 + len(each.children) for each in outline.root) == len(told.boards)
        assert chapters == [board.chapter for board in told.boards if board.chapter]


def test_a_handout_has_four_pages_a_sheet(made: dict[str, WorkedLesson]) -> None:
    with pikepdf.open(BytesIO(made["tin"].pdf(handout=True))) as pdf:
        assert len(pdf.pages) == -(-len(made["tin"].boards) // 4)
        assert not [each for each in pdf.pages if len(each.Resources.Pattern)]  # of its stripes some are lost on paper
    page = reader.document_fromstring(made["tin"].html(handout=True))
    assert len(page.find_class("notes")) == len(page.find_class("board")) == len(made["tin"].boards)
    assert not page.findall(".//script")


# ---------------------------------------------------------------------- in a browser
def shown(browser: Browser, width: int, height: int, script: bool = True) -> Any:
    """A window that fetches nothing, in which pages keep their own policy."""
    size: Any = {"width": width, "height": height}
    return browser.new_context(viewport=size, offline=True, java_script_enabled=script).new_page()


@pytest.mark.parametrize("kind", KINDS)
def test_nothing_runs_over_a_board_and_all_type_is_large_enough(
    kind: str, made: dict[str, WorkedLesson], browser: Browser, tmp_path: Path
) -> None:
    (tmp_path / "lesson.html").write_text(made[kind].html())
    window = shown(browser, 1280, 720)
    window.goto((tmp_path / "lesson.html").as_uri())
    assert window.evaluate(LOOK) == []
    window.context.close()


def test_keys_turn_the_pages(made: dict[str, WorkedLesson], browser: Browser, tmp_path: Path) -> None:
    (tmp_path / "lesson.html").write_text(made["tin"].html())
    window, last = shown(browser, 1280, 720), len(made["tin"].boards)
    window.goto((tmp_path / "lesson.html").as_uri())
    seen = "() => [...document.querySelectorAll('.board')].filter(each => each.offsetParent).map(each => each.id)"
    for key, page in (
        ("ArrowRight", 2),
        ("ArrowRight", 3),
        ("ArrowLeft", 2),
        ("End", last),
        ("ArrowRight", last),
        ("Home", 1),
        ("ArrowLeft", 1),
    ):
        window.keyboard.press(key)
        assert window.evaluate(seen) == [f"page-{page}"]
        assert window.evaluate("document.activeElement.id") == f"page-{page}"
    window.get_by_role("button", name="Next page").click()
    assert window.evaluate(seen) == ["page-2"]
    window.get_by_role("button", name="All pages").click()
    assert len(window.evaluate(seen)) == last
    window.context.close()


def test_without_script_it_is_one_long_page(made: dict[str, WorkedLesson], browser: Browser, tmp_path: Path) -> None:
    (tmp_path / "lesson.html").write_text(made["tin"].html())
    window = shown(browser, 1280, 720, script=False)
    window.goto((tmp_path / "lesson.html").as_uri())
    count = window.locator(".board:visible").count()
    assert count == len(made["tin"].boards) and window.locator(".turn").count() == 0
    window.context.close()


@pytest.mark.parametrize("width", (1280, 390))
@pytest.mark.parametrize("kind", KINDS)
def test_boards_violate_no_rule(
    kind: str, width: int, made: dict[str, WorkedLesson], browser: Browser, tmp_path: Path
) -> None:
    """One board at a time where the script runs, and all of them on the long page."""
    size: Any = {"width": width, "height": 720}
    window = browser.new_context(viewport=size, bypass_csp=True, offline=True).new_page()
    (tmp_path / "lesson.html").write_text(made[kind].html())
    window.goto((tmp_path / "lesson.html").as_uri())
    assert faults(window) == []
    window.evaluate("document.documentElement.classList.remove('turned')")
    assert faults(window) == []
    window.context.close()


# ---------------------------------------------------------------------- hostile text, and the command
PROBLEM = """title = {title}
[pivot]
name = "elbow"
[[segment]]
name = "forearm"
mass = "1.6 kg"
com = "15 cm"
[[load]]
name = {name}
mass = "3.0 kg"
at = "33 cm"
[[muscle]]
name = "biceps"
at = "4.0 cm"
direction = "up"
"""


def quoted(text: str) -> str:
    return '"' + "".join(each if each.isalnum() else f"\\U{ord(each):08x}" for each in text) + '"'


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_stays_text(text: str, tmp_path: Path) -> None:
    file = tmp_path / "problem.toml"
    file.write_text(PROBLEM.format(title=quoted(text), name='"tin"'))
    name = tmp_path / "named.toml"
    name.write_text(PROBLEM.format(title='"A jug"', name=quoted(text)))
    told = []
    for each in (file, name):
        try:
            told.append(lesson(each))
        except Fault as fault:  # a name may be refused, never half taken
            assert fault.found
    assert told
    for each in told:
        page = reader.document_fromstring(each.html())
        assert [len(page.findall(f".//{tag}")) for tag in ("script", "style", "img", "link", "iframe", "a")] == [
            1,
            1,
            *[0] * 4,
        ]
        assert not [name for node in page.iter() for name in node.attrib if str(name).lower().startswith("on")]
        cues_of(each.captions())
        tokens = MarkdownIt("commonmark").parse(each.script)
        inner = [child for token in tokens for child in token.children or ()]
        assert not {"image", "link_open", "html_inline"} & {child.type for child in inner if child.content != "<span>"
                                                            and child.content != "</span>"}  # fmt: skip
        assert not [token for token in tokens if token.type in ("html_block", "fence", "code_block")]
        with pikepdf.open(BytesIO(each.pdf())) as pdf:
            assert len(pdf.pages) == len(each.boards)


def test_the_command_writes_all_or_nothing(tmp_path: Path) -> None:
    page, notes, captions = tmp_path / "l.html", tmp_path / "l.md", tmp_path / "l.vtt"
    assert ran(TIN, "-o", page, "--script", notes, "--captions", captions).exit_code == 0
    assert page.read_text().startswith("<!DOCTYPE html>") and notes.read_text().startswith("# The same tin")
    assert cues_of(captions.read_text())
    assert ran(TIN, "-o", tmp_path / "l.pdf", "--handout").exit_code == 0
    assert (tmp_path / "l.pdf").read_bytes().startswith(b"%PDF")
    out = ran(TIN)
    assert out.exit_code == 0 and out.output.startswith("<!DOCTYPE html>")


@pytest.mark.parametrize(
    ("words", "said"),
    (
        (("-o", "l.md"), "one of .html, .pdf"),
        (("-o", "l.html", "--rate", "100"), "without --captions"),
        (("--captions", "l.vtt", "--marks", "none.csv"), "none.csv"),
        (("--captions", "l.vtt", "--script", "l.vtt"), "one file for two things"),
        (("--script", "problem.toml"), "a file that is read"),
    ),
)
def test_what_cannot_be_is_told(words: tuple[str, ...], said: str, tmp_path: Path) -> None:
    (tmp_path / "problem.toml").write_text(PROBLEM.format(title='"A jug"', name='"jug"'))
    result = ran(tmp_path / "problem.toml", *(tmp_path / word if "." in word else word for word in words))
    assert result.exit_code == 2 and said in result.output
    assert [each.name for each in tmp_path.iterdir()] == ["problem.toml"]
