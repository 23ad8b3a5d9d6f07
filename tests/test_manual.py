"""A manual from its files: numbers, cross references, editions, index, errata, and what is worked anew."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from books import book, chapter, fenced, problem
from click.testing import CliRunner, Result
from markdown_it import MarkdownIt

from explain import work
from explain.cli.main import main
from explain.problem.course import Course
from explain.problem.reader import course_keys
from explain.manual.build import Built, Order, build, remember
from explain.document.passage import Maths
from explain.formula.plain import plain
from explain.manual.conventions import conventions
from explain.jobs import progress_bar
from explain.manual.errata import Known, errata
from explain.walkthrough.answer_sentences import pretty

SAMPLE = Path(__file__).parent.parent / "samples" / "book" / "book.toml"


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def made(path: Path, out: Path, *words: str) -> Result:
    return CliRunner().invoke(main, ["manual", str(path), "-o", str(out), "--jobs", "1", *words])


def markdown(path: Path, *words: str) -> str:
    out = path.parent / "out.md"
    result = made(path, out, *words)
    assert result.exit_code == 0, result.output
    return out.read_text("utf-8")


def headings(text: str) -> list[str]:
    return re.findall(r"^#+ (.*)$", text, re.MULTILINE)


# --- numbers and references


def test_problems_are_numbered_within_their_chapters(tmp_path: Path) -> None:
    text = markdown(book(tmp_path, [problem(place) for place in range(4)], chapters=2), "--edition", "student")
    assert ["Problem 1.1 Jug 0", "Problem 1.2 Jug 1", "Problem 2.1 Jug 2", "Problem 2.2 Jug 3"] == [
        each for each in headings(text) if "Jug" in each
    ]


def test_problems_are_numbered_through_the_book_if_it_says_so(tmp_path: Path) -> None:
    text = markdown(
        book(tmp_path, [problem(place) for place in range(3)], 3, 'numbering = "book"'), "--edition", "student"
    )
    assert ["Problem 1 Jug 0", "Problem 2 Jug 1", "Problem 3 Jug 2"] == [
        each for each in headings(text) if "Jug" in each
    ]


def test_a_problem_may_have_a_number_of_its_own(tmp_path: Path) -> None:
    text = markdown(
        chapter(tmp_path, "# One\n\n" + fenced(problem(1), 'label=jug number="A.7"')), "--edition", "student"
    )
    assert "Problem A.7 Jug 1" in headings(text)


def test_a_cross_reference_names_the_problem_and_leads_to_it(tmp_path: Path) -> None:
    prose = "# One\n\nSee [](#jug) and [that jug](#jug), and [](#chapter).\n\n"
    text = markdown(chapter(tmp_path, prose + fenced(problem(1), "label=jug")), "--edition", "student")
    assert "See [Problem 1.1](#jug) and [that jug (Problem 1.1)](#jug), and [Chapter 1](#chapter)." in text
    assert '<a id="jug"></a>' in text


def test_every_link_of_a_book_leads_to_an_anchor_of_it(tmp_path: Path) -> None:
    made(SAMPLE, tmp_path / "book.md", "--edition", "student")
    text = (tmp_path / "book.md").read_text("utf-8")
    links = {
        str(child.attrs["href"])
        for token in MarkdownIt().parse(text)
        for child in token.children or ()
        if child.type == "link_open"
    }
    assert {each for each in links if each.startswith("#")} == {
        f"#{each}" for each in re.findall('<a id="([^"]+)">', text)
    }


def test_a_reference_to_what_an_edition_leaves_out_is_plain_text(tmp_path: Path) -> None:
    text = "# One\n\n" + fenced(problem(1), "label=one") + "\nSee [](#two).\n\n" + fenced(problem(2), "label=two")
    assert "See Problem 1.2." in markdown(chapter(tmp_path, text), "--edition", "student", "--only", "odd")


# --- editions


def sample_answers() -> dict[str, set[str]]:
    names = {
        "treacle-tin": "01",
        "treacle-tin-again": "02",
        "helmet": "04",
        "regatta-flag": "10",
        "gangway": "12",
        "tuba": "13",
        "lantern": "25",
        "crate-at-the-mark": "22",
        "hazelnut": "19",
        "sea-boot": "14",
        "stretcher": "23",
    }
    course = SAMPLE.parent.parent / "harbour-school.toml"
    found = {}
    for label, start in names.items():
        (file,) = SAMPLE.parent.parent.glob(f"{start}-*.toml")
        worked = work(file, course={key: value for key, value in course_keys(course).items() if key != "axes"})
        found[label] = {pretty(each).lstrip("−") for each in worked.answers.values() if each.value}
    return found


def sections(text: str) -> dict[str, str]:
    """What stands behind the anchor of each problem, up to the next anchor; and before the first one ("")."""
    pieces = re.split(r'(?:<a|<h\d) id="([a-z0-9-]+)"', text)
    return {"": pieces[0], **dict(zip(pieces[1::2], pieces[2::2], strict=True))}


def stands_in(answer: str, text: str) -> bool:
    return bool(re.search(rf"(?<![\d.]){re.escape(answer)}(?![\d.])", text))


@pytest.mark.parametrize("form", ("md", "html"))
def test_no_answer_stands_in_the_student_edition(form: str, tmp_path: Path) -> None:
    assert made(SAMPLE, tmp_path / f"book.{form}", "--edition", "student").exit_code == 0
    assert [] == list(tmp_path.glob("*/*.svg"))
    found = sections((tmp_path / f"book.{form}").read_text("utf-8").replace("\u00a0", " "))
    assert {} == {
        label: told
        for label, said in sample_answers().items()
        if (
            told := {
                each
                for each in said
                for place in ("", "conventions", label, "index-of-the-book")
                if stands_in(each, found[place])
            }
        )
    }


def test_every_answer_stands_in_the_instructors_edition(tmp_path: Path) -> None:
    made(SAMPLE, tmp_path / "book.md", "--edition", "answers")
    text = (tmp_path / "book.md").read_text("utf-8")
    assert ({"173 N"}, {"5.29 cm"}) == (sample_answers()["treacle-tin"], sample_answers()["hazelnut"])
    assert {} == {label: said for label, said in sample_answers().items() if not any(each in text for each in said)}


def test_the_odd_edition_has_the_answers_of_the_odd_ones_only(tmp_path: Path) -> None:
    text = markdown(book(tmp_path, [problem(place) for place in range(5)]), "--edition", "odd")
    assert ["Jug 0", "Jug 2", "Jug 4"] == re.findall(r"^### 1\.[135] (Jug \d)$", text, re.MULTILINE)
    assert [] == re.findall(r"^### 1\.[24] ", text, re.MULTILINE)


def test_only_odd_keeps_the_odd_problems(tmp_path: Path) -> None:
    text = markdown(book(tmp_path, [problem(place) for place in range(4)]), "--edition", "instructor", "--only", "odd")
    assert ["Problem 1.1 Jug 0", "Problem 1.3 Jug 2"] == [each for each in headings(text) if each.startswith("Problem")]


def test_answers_alone_have_no_prose_and_no_statement(tmp_path: Path) -> None:
    text = markdown(book(tmp_path, [problem(1)]), "--edition", "answers")
    assert ("Prose of chapter" in text, "Given" in text, "1.1 Jug 1" in text) == (False, False, True)


def test_the_sheet_names_the_forces_of_the_diagram_and_shows_none(tmp_path: Path) -> None:
    text = markdown(book(tmp_path, [problem(1)]), "--edition", "student")
    assert [
        "the forearm, cut free at the elbow",
        "the pull of the biceps",
        "the weight of the forearm, at the centre of mass",
        "the weight of the jug",
        "the force of the humerus on it, at the elbow",
        "each distance that you use, both its ends marked",
        "which way counts as positive for moments",
    ] == re.findall(r"^- \[ \] (.*)$", text, re.MULTILINE)
    assert [] == re.findall(r"!\[", text)


def test_a_slanting_pull_asks_for_its_angle_on_the_diagram(tmp_path: Path) -> None:
    assert "- [ ] each angle, between two named lines" in markdown(
        book(tmp_path, [problem(1, direction="70 deg from back toward up")]), "--edition", "student"
    )


# --- conventions, index


@pytest.mark.parametrize(
    ("course", "said"),
    [
        ({}, "What acts on a body at rest adds to zero."),
        ({"balance": "two sides"}, "what pushes up to what pushes down, and what pushes right to what pushes left"),
        ({"first": "moments"}, "adds to zero; the letters of the moments are written first, then their products."),
        ({"signs": "with the numbers"}, "the sign of a moment comes in with its product; the letters of the moments"),
        ({"positive": "up", "signs": "with the numbers"}, "each force's letter has its sign in it"),
    ],
)
def test_the_conventions_tell_how_a_balance_is_written(course: dict[str, str], said: str) -> None:
    bar = {"segment": [{"name": "bar"}], "load": [{"name": "jug", "mass": "1 kg", "at": "9 cm"}]}
    cord = {"name": "cord", "at": "3 cm", "direction": "up", "force": "?"}
    stated = {"title": "x", "pivot": {"name": "hinge"}, **bar, "force": [cord], "course": course}
    items = conventions(work(stated).outcome.body.problem.course).items
    (balances,) = [item[1].text for item in items if getattr(item[0], "text", "") == "Balances. "]
    assert said in balances


def test_the_conventions_stand_once(tmp_path: Path) -> None:
    text = markdown(book(tmp_path, [problem(1), problem(2)]), "--edition", "instructor")
    assert 1 == text.count("Counter-clockwise moments, and forces to the right and up, are positive.")


def test_the_caution_stands_in_every_edition(tmp_path: Path) -> None:
    path = book(tmp_path, [problem(1)])
    assert [True] * 4 == [
        "Not for treatment, training load" in markdown(path, "--edition", each)
        for each in ("student", "odd", "answers", "instructor")
    ]


@pytest.mark.parametrize(
    ("course", "said"),
    (
        (Course(word="torque", letter="tau"), "We speak of torques (τ)"),
        (Course(positive="up"), "Up is positive, for forces and moments alike"),
        (Course(lengths="m"), "are worked in m"),
        (Course(figures=4), "Answers have 4 figures"),
        (Course(carry="as shown"), "with the values as shown"),
        (Course(reaction_on="the other bone"), "as it acts on the other bone"),
        (Course(axes="shank"), "along the shank and across it"),
    ),
)
def test_a_convention_is_said_as_the_course_has_it(course: Course, said: str) -> None:
    pieces = [each for line in conventions(course).items for each in line]
    assert said in "".join(plain(each.of) if isinstance(each, Maths) else each.text for each in pieces)


def test_the_books_course_goes_before_the_file_a_problem_names(tmp_path: Path) -> None:
    (tmp_path / "a.toml").write_text('word = "torque"\n')
    (tmp_path / "b.toml").write_text('word = "moment"\nfigures = 2\n')
    path = chapter(tmp_path, "# One\n\n" + fenced('course = "b.toml"\n' + problem(1), "label=jug"), 'course = "a.toml"')
    text = markdown(path)
    assert ("Σ \\tau" in text.replace("\\Sigma", "Σ"), "In this problem." in text) == (True, True)


def test_what_a_problem_says_of_itself_goes_before_the_books_course_and_is_told(tmp_path: Path) -> None:
    (tmp_path / "a.toml").write_text('word = "torque"\nfigures = 3\n')
    path = chapter(
        tmp_path, "# One\n\n" + fenced(problem(1) + "[course]\nfigures = 4\n", "label=jug"), 'course = "a.toml"'
    )
    assert "**In this problem.** Figures: Answers have 4 figures and workings 5" in markdown(path)


def test_the_index_has_joints_muscles_methods_and_the_authors_own_words(tmp_path: Path) -> None:
    slanting = problem(2, direction="70 deg from back toward up")
    text = markdown(
        chapter(
            tmp_path,
            "# One\n\n" + fenced(problem(1), 'label=one index="jugs; milk"') + "\n" + fenced(slanting, "label=two"),
        )
    )
    index = text.partition("# Index")[2]
    assert ("- elbow: [1.1](#one), [1.2](#two)", "- oblique force: [1.2](#two)", "- milk: [1.1](#one)") == tuple(
        each for each in index.split("\n") if each.startswith(("- elbow", "- oblique", "- milk"))
    )


def test_a_book_can_do_without_an_index(tmp_path: Path) -> None:
    assert "Index" not in markdown(book(tmp_path, [problem(1)], more="index = false"))


# --- the second build


def built(path: Path, form: str = "markdown") -> Built:
    (path.parent / "kept").mkdir(exist_ok=True)
    order = Order(path, form, "student", jobs=1, folder=str(path.parent / "kept"))
    found = build(order)
    remember(order, found)
    return found


def test_nothing_is_worked_twice(tmp_path: Path) -> None:
    path = book(tmp_path, [problem(place) for place in range(3)])
    first, second = built(path), built(path)
    assert ((3, 0), (0, 3)) == ((first.fresh, first.kept), (second.fresh, second.kept))
    assert first.volume == second.volume


def test_only_what_changed_is_worked_again(tmp_path: Path) -> None:
    built(book(tmp_path, [problem(place) for place in range(3)]))
    assert 1 == built(book(tmp_path, [problem(0), problem(1, mass="3.5"), problem(2)])).fresh


def test_another_course_works_everything_again(tmp_path: Path) -> None:
    path = book(tmp_path, [problem(place) for place in range(2)])
    built(path)
    (tmp_path / "c.toml").write_text('g = "10 m/s^2"\n')
    path.write_text(path.read_text() + 'course = "c.toml"\n')
    assert 2 == built(path).fresh


def test_a_changed_file_that_a_problem_names_works_it_again(tmp_path: Path) -> None:
    (tmp_path / "c.toml").write_text('g = "9.81 m/s^2"\n')
    path = chapter(tmp_path, "# One\n\n" + fenced('course = "c.toml"\n' + problem(1), "label=jug"))
    built(path)
    (tmp_path / "c.toml").write_text('g = "10 m/s^2"\n')
    again = built(path)
    assert (1, 1) == (again.fresh, len(again.errata or ()))


def test_the_errata_name_the_problem_and_both_answers(tmp_path: Path) -> None:
    assert built(book(tmp_path, [problem(0), problem(1)])).errata is None
    (line,) = built(book(tmp_path, [problem(0), problem(1, mass="3.5")])).errata or ()
    assert re.fullmatch(
        r"1\.2 Jug 1 \(jug-1\): the problem has changed; biceps is (\d+) N, straight up, was (\d+) N, straight up(; "
        r"reaction.*)?\.",
        line,
    )


def test_moving_a_problem_changes_its_number_and_no_page(tmp_path: Path) -> None:
    one, two = fenced(problem(1), "label=one"), fenced(problem(2), "label=two")
    built(chapter(tmp_path, f"# One\n\n{one}\n{two}"))
    again = built(chapter(tmp_path, f"# One\n\n{two}\nWords between.\n\n{one}"))
    assert (0, ("1.1 Jug 2 (two): was 1.2.", "1.2 Jug 1 (one): was 1.1.")) == (again.fresh, again.errata)


def test_new_and_lost_problems_are_errata() -> None:
    old = {"a": Known("1", "A", "x", {"F": "1 N", "H": "5 N"}), "b": Known("2", "B", "x", {})}
    new = {"a": Known("1", "A", "x", {"F": "2 N", "G": "3 N"}), "c": Known("2", "C", "x", {})}
    assert [
        "1 A (a): F is 2 N, was 1 N; G is asked now: 3 N; H is not asked any more.",
        "2 C (c): new.",
        "2 B (b): left out.",
    ] == list(errata(old, new))


def test_a_problem_that_is_what_it_was_is_no_erratum_and_another_title_is() -> None:
    old = {"a": Known("1", "A", "x", {"F": "1 N"}), "b": Known("2", "B", "x", {})}
    new = {"a": Known("1", "A", "x", {"F": "1 N"}), "b": Known("2", "Bee", "y", {})}
    assert ["2 Bee (b): was called B; the problem has changed."] == list(errata(old, new))


def test_the_errata_are_printed(tmp_path: Path) -> None:
    made(book(tmp_path, [problem(1)]), tmp_path / "out.html")
    assert (
        "- 1.1 Jug 1 (jug-0): the problem has changed; biceps is "
        in made(book(tmp_path, [problem(1, mass="9.0")]), tmp_path / "out.html").stdout
    )


def test_errata_are_those_of_one_edition_in_one_format(tmp_path: Path) -> None:
    first, later = [problem(1)], [problem(1, mass="9.0")]
    made(book(tmp_path, first), tmp_path / "out.html", "--edition", "student")
    assert "Errata" not in made(book(tmp_path, later), tmp_path / "out.html", "--edition", "instructor").stdout
    assert "Errata" not in made(book(tmp_path, later), tmp_path / "out.md", "--edition", "student").stdout
    again = made(book(tmp_path, later), tmp_path / "out.html", "--edition", "student").stdout
    assert "the problem has changed" in again


def test_a_log_is_told_how_far_it_has_come_once_a_minute(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    clock = iter(range(0, 1000, 25))  # seconds, one look at it for each item and one before
    monkeypatch.setattr(progress_bar, "monotonic", lambda: next(clock))
    assert list("abcdefgh") == list(progress_bar.watched("abcdefgh", 8, "Working problems"))
    told = capsys.readouterr().err.splitlines()
    assert [
        "Working problems: 3 of 8, about 2 min left",
        "Working problems: 6 of 8, about 1 min left",
    ] == told


def test_no_cache_keeps_nothing(tmp_path: Path) -> None:
    path = book(tmp_path, [problem(1)])
    made(path, tmp_path / "out.md", "--no-cache")
    assert "1 worked, 0 kept" in made(path, tmp_path / "out.md", "--no-cache").stderr
    assert not (tmp_path / "cache").exists()


# --- one bad problem


def test_one_bad_problem_does_not_stop_the_rest(tmp_path: Path) -> None:
    path = book(tmp_path, [problem(0), 'title = "Broken"\nmuscel = 3\n', problem(2)])
    result = made(path, tmp_path / "out.md")
    assert (1, True, True) == (
        result.exit_code,
        "Not worked: jug-1" in result.stderr,
        "chapter-0.md, line " in result.stderr,
    )
    found = headings((tmp_path / "out.md").read_text("utf-8"))
    assert ["Problem 1.1 Jug 0", "Problem 1.2 jug-1", "Problem 1.3 Jug 2"] == [
        each for each in found if "Problem" in each
    ]


def test_a_bad_problem_names_its_line_of_the_chapter(tmp_path: Path) -> None:
    path = chapter(tmp_path, "# One\n\nWords.\n\n" + fenced(problem(1).replace('"2.5 kg"', '"2.5 stone"'), "label=jug"))
    wanted = next(
        place for place, line in enumerate((tmp_path / "chapter.md").read_text().split("\n"), 1) if "stone" in line
    )
    assert f"chapter.md, line {wanted}: load[1].mass" in made(path, tmp_path / "out.md").stderr


def test_a_failing_check_asks_for_a_person(tmp_path: Path) -> None:
    path = chapter(tmp_path, "# One\n\n" + fenced(problem(1, direction="down"), "label=jug"))
    result = made(path, tmp_path / "out.md")
    assert (1, True) == (result.exit_code, "A check fails in jug." in result.stderr)


# --- what authors write is text


def test_prose_is_no_markup(tmp_path: Path) -> None:
    prose = "# One <b>\n\n<script>alert(1)</script> ![x](http://example.invalid/x.png) [y](javascript:alert(1))\n\n"
    path = chapter(tmp_path, prose + fenced(problem(1), "label=jug"))
    assert made(path, tmp_path / "out.html", "--edition", "student").exit_code == 0
    text = (tmp_path / "out.html").read_text("utf-8")
    assert [] == re.findall(r"<script|<img|javascript:alert\(1\)\"|<b>", text)


def test_the_record_of_a_build_is_json(tmp_path: Path) -> None:
    built(book(tmp_path, [problem(1)]))
    (record,) = (tmp_path / "kept").glob("last-build-*.json")
    assert ["jug-0"] == list(json.loads(record.read_text("utf-8"))["problems"])


# --- what only an instructor sees


def test_slips_and_marks_stand_in_the_instructors_edition_alone(tmp_path: Path) -> None:
    path = book(tmp_path, [problem(1)])
    assert [(False, False), (False, False), (False, False), (True, True)] == [
        ("Slips to expect" in text, "Marks: " in text)
        for text in (markdown(path, "--edition", each) for each in ("student", "odd", "answers", "instructor"))
    ]


def test_a_slip_is_told_with_the_wrong_answer_that_it_leads_to(tmp_path: Path) -> None:
    """The forearm left out: (2.5 kg)(9.81 m/s²)(31 cm) / (4.0 cm) = 190 N, worked by hand."""
    text = markdown(book(tmp_path, [problem(1)]), "--edition", "instructor").replace("\u00a0", " ")
    assert re.search(r"^\| .*left out.* \| biceps: 190 N in place of 231 N \|$", text, re.MULTILINE)


def test_the_marks_add_up(tmp_path: Path) -> None:
    text = markdown(book(tmp_path, [problem(1)]), "--edition", "instructor")
    (total,) = re.findall(r"^### Marks: (\d+) in all$", text, re.MULTILINE)
    assert int(total) == sum(
        map(
            int, re.findall(r"^\| (?:Method|Accuracy|Independent|Communication) \| .* \| (\d+) \|$", text, re.MULTILINE)
        )
    )
