"""The addresses of the desk: pages without script, what is refused, and that no address tells a student an answer."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from desk_client import HOST, ORIGIN, SAMPLES, desk_of, told, words
from lxml import html as reader
from starlette.testclient import TestClient
from test_hostile import TEXTS

from explain import work
from explain.desk.shelf import Shelf

TIN = "02-treacle-tin-again"
RIGHT = """W = 1.8 × 9.81 = 17.66 N
F × 4.4 = 17.66 × 16.5 + 24.525 × 31
F = 239 N
R = 239 - 17.66 - 24.53 = 197 N down"""
WRONG = "W = 1.8 × 9.81 = 17.66 N\nF × 4.4 = 24.525 × 31\nF = 172.8 N"


@pytest.fixture(scope="module")
def client() -> Iterator[TestClient]:
    with desk_of(SAMPLES) as (client, _):
        yield client


# ---------------------------------------------------------------------- what is there
def test_the_front_knows_no_algebra() -> None:
    """So it stays small, and the first page does not wait for sympy."""
    heavy = ("sympy", "rules", "numpy", "explain.api")
    code = f"import sys, explain.desk.app; print([each for each in {heavy} if each in sys.modules])"
    assert (
        "[]" == subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout.strip()
    )


def test_the_list_has_every_problem_of_the_folder_and_nothing_else(client: TestClient) -> None:
    links = reader.fromstring(client.get("/").text).xpath("//ul[@class='problems']//a/@href")
    problems = [path.stem for path in sorted(SAMPLES.glob("[0-9]*.toml"))]
    assert [f"/p/{name}" for name in problems] == links and len(links) > 30


def test_every_problem_is_shown_without_script(client: TestClient) -> None:
    for name in Shelf(SAMPLES).items():
        answer = client.get(f"/p/{name}")
        page = reader.fromstring(answer.text)
        assert (200, [f"/p/{name}/working"]) == (answer.status_code, page.xpath("//form/@action")), name
        assert [] == page.xpath("//svg | //*[@style] | //script[not(@src)]"), name


def test_an_empty_folder_says_how_to_fill_it(tmp_path: Path) -> None:
    with desk_of(tmp_path) as (client, _):
        assert "explain new NAME" in words(client.get("/").text)


def test_a_file_at_fault_is_listed_with_its_fault_and_no_path(tmp_path: Path) -> None:
    (tmp_path / "Bad One.toml").write_text('title = "Bad"\n[pivot]\nname = "elbow"\nbone = 3\n')
    (tmp_path / "broken.toml").write_text("title = \n")
    (tmp_path / "linked.toml").symlink_to(SAMPLES / f"{TIN}.toml")
    with desk_of(tmp_path) as (client, _):
        said = words(client.get("/").text)
        assert "Line 4: pivot.bone: found 3" in said and "broken" in said and "linked" not in said
        page = client.get("/p/bad-one")
        assert (503, False) == (page.status_code, str(tmp_path) in said + page.text)


# ---------------------------------------------------------------------- a working
def test_a_right_working_is_done_and_a_wrong_one_stops_at_its_line(client: TestClient) -> None:
    assert ("done", 0) == (told(client, TIN, RIGHT)["state"], told(client, TIN, RIGHT)["line"])
    found = told(client, TIN, WRONG)
    assert ("wrong", 2, 0, "Line 2 is the first that does not hold: look there.") == (
        found["state"],
        found["line"],
        found["hints"],
        found["said"],
    )


def test_an_unfinished_working_has_nothing_wrong_so_far(client: TestClient) -> None:
    found = told(client, TIN, "\n".join(RIGHT.splitlines()[:2]))
    assert ("going", True) == (found["state"], found["said"].startswith("Nothing wrong found so far. Still asked for"))


def test_hints_come_one_at_a_time_and_begin_anew_at_another_line(client: TestClient) -> None:
    counts = [told(client, TIN, WRONG, hints=n, **{"for": 2})["html"].count("<strong>Hint ") for n in range(5)]
    assert [0, 1, 2, 3, 3] == counts
    assert "Look at" not in words(told(client, TIN, WRONG)["html"])
    assert 0 == told(client, TIN, WRONG, hints=3, **{"for": 1})["hints"]


def test_the_form_works_without_script(client: TestClient) -> None:
    page = client.post(f"/p/{TIN}/working", data={"working": WRONG.replace("\n", "\r\n"), "hints": "1", "for": "2"})
    found = reader.fromstring(page.text)
    assert (200, WRONG) == (page.status_code, found.get_element_by_id("lines").text.strip().replace("\r", ""))
    assert "Line 2 is the first that does not hold" in found.get_element_by_id("said").text
    assert ["2"] == found.xpath("//button[@id='hint']/@value") and page.text.count("<strong>Hint ") == 1


def test_how_each_line_is_read_comes_back_as_mathematics(client: TestClient) -> None:
    echo = client.post(
        f"/p/{TIN}/working/read", json={"text": "F_B × 0.04 m = (3 N)(2 m)/sqrt(4)\nhere comes the balance"}
    ).json()
    first, second = (made for _, made in echo["echo"])
    tags = {each.tag for each in reader.fromstring(first).iter()}
    assert {"math", "msub", "mfrac", "msqrt", "mo", "mn"} <= tags and "words" in second


# ---------------------------------------------------------------------- no answer by any way
def test_a_bare_answer_is_no_oracle(client: TestClient) -> None:
    """Right or wrong, alone or dressed up as a sum: the same words come back."""
    answer = work(SAMPLES / f"{TIN}.toml").answers["elbow flexors"].value
    for line in ("F = {:.0f} N", "the flexors pull with {:.1f} N", "F = 100 + {0:.0f} - 100 = {0:.0f} N", "{:.0f} N"):
        said = [told(client, TIN, line.format(value)) for value in (answer, answer * 1.3, answer / 2)]
        shapes = {(each["state"], re.sub(r"[\d.]+", "#", words(each["html"]))) for each in said}
        assert 1 == len(shapes) and {"unclear"} == {state for state, _ in shapes}, line


def numbers_of(text: str) -> set[float]:
    return {float(each.replace(" ", "").replace(" ", "")) for each in re.findall(r"\d+(?:[  ]\d{3})*(?:\.\d+)?", text)}


def test_no_page_of_a_student_holds_an_answer(client: TestClient) -> None:
    looked = 0
    for name, item in Shelf(SAMPLES).items().items():
        walkthrough = work(item.path)
        given = {float(each.value.number) for each in walkthrough.outcome.body.givens}
        told_before = given | numbers_of(walkthrough.problem.statement)
        page = words(client.get(f"/p/{name}").text)
        for answer in walkthrough.answers.values():
            size = abs(answer.value)
            near = {each for each in numbers_of(page) - told_before if size and abs(each - size) <= 0.004 * size}
            looked += 1
            assert set() == near, (name, answer.name)
    assert looked > 60


@pytest.mark.parametrize(
    "address",
    (
        "/p/{}/redraw",
        "/p/{}/edit",
        "/edit/{}",
        "/edit",
        "/p/{}/walkthrough",
        "/p/{}.json",
        "/p/../{}",
        "/p/%2e%2e%2f{}",
        "/class",
        "/p/{}/working/redraw",
        "/asset/0/{}.toml",
        "/{}.toml",
    ),
)
def test_no_other_address_leads_anywhere(client: TestClient, address: str) -> None:
    for method in ("get", "post"):
        answer = client.request(method, address.format(TIN), content="{}" if method == "post" else None)
        assert answer.status_code in (404, 405)


def test_what_a_request_asks_for_is_told_by_its_address_alone(client: TestClient) -> None:
    """No key of what is sent chooses the task, the file or the folder."""
    plain = told(client, TIN, WRONG)
    for more in ({"op": "problem"}, {"path": "/etc/passwd"}, {"root": "/"}, {"op": "redraw", "path": "x"}):
        assert plain == told(client, TIN, WRONG, **more)


# ---------------------------------------------------------------------- what is refused
@pytest.mark.parametrize("host", ("evil.invalid", "127.0.0.1", "127.0.0.1:8001", "localhost:8000.evil.invalid", ""))
def test_another_host_is_refused(client: TestClient, host: str) -> None:
    assert 421 == client.get("/", headers={"host": host}).status_code


@pytest.mark.parametrize(
    "origin", ("null", "http://evil.invalid", "https://127.0.0.1:8000", f"{ORIGIN}.evil.invalid", "")
)
def test_what_comes_from_another_page_is_refused(client: TestClient, origin: str) -> None:
    answer = client.post(f"/p/{TIN}/working/judge", json={"text": RIGHT}, headers={"origin": origin})
    assert 403 == answer.status_code
    cross = client.post(f"/p/{TIN}/working/judge", json={"text": RIGHT}, headers={"sec-fetch-site": "cross-site"})
    assert 403 == cross.status_code


@pytest.mark.parametrize(
    ("content", "status"),
    (
        (b"", 400),
        (b"{", 400),
        (b"[]", 400),
        (b'{"text": 3}', 400),
        (b'{"text": "a", "text": null}', 400),
        (b"\xff\xfe", 400),
        (b"[" * 100_000, 400),
        (b'{"text": "' + b"x" * 20_001 + b'"}', 413),
        (b'{"text": "' + b"a\\n" * 300 + b'"}', 413),
        (b"x" * 200_000, 413),
    ),
)
def test_a_body_that_is_broken_or_too_long_is_refused(client: TestClient, content: bytes, status: int) -> None:
    assert status == client.post(f"/p/{TIN}/working/judge", content=content).status_code
    if status == 413 or b"text" not in content:
        assert client.post(f"/p/{TIN}/working/read", content=content).status_code == status


def test_a_body_of_unknown_length_is_refused(client: TestClient) -> None:
    def pieces() -> Iterator[bytes]:
        yield b'{"text": "F"}'

    assert 413 == client.post(f"/p/{TIN}/working/judge", content=pieces()).status_code


def test_every_answer_has_the_headers_that_shut_others_out(client: TestClient) -> None:
    for answer in (client.get("/"), client.get("/nowhere"), client.get("/", headers={"host": "evil.invalid"})):
        heads = answer.headers
        assert "default-src 'none'" in heads["content-security-policy"] and "nosniff" == heads["x-content-type-options"]
        assert ("no-store", "same-origin") == (heads["cache-control"], heads["referrer-policy"])
        assert "server" not in heads


def test_assets_are_kept_for_ever_under_an_address_that_changes(client: TestClient) -> None:
    page = reader.fromstring(client.get(f"/p/{TIN}").text)
    for address in page.xpath("//link[@rel='stylesheet']/@href | //script/@src"):
        answer = client.get(address)
        assert (200, True) == (answer.status_code, "immutable" in answer.headers["cache-control"])
        assert 404 == client.get(re.sub(r"/asset/\w", "/asset/Z", address)).status_code


# ---------------------------------------------------------------------- hostile text
@pytest.mark.parametrize("text", TEXTS)
def test_what_is_typed_comes_back_as_text(client: TestClient, text: str) -> None:
    """In a line, in words beside a formula, and in a form that is posted."""
    typed = f"{text}\n{text} = 3 N\nF{text} × 2 = 4"
    try:
        sent = json.dumps({"text": typed})
    except UnicodeEncodeError:
        return
    answers = [client.post(f"/p/{TIN}/working/{way}", content=sent.encode()).json() for way in ("judge", "read")]
    page = client.post(f"/p/{TIN}/working", data={"working": typed.encode("utf-8", "replace")}).text
    made = [answers[0]["html"], *(each for _, each in answers[1]["echo"])]
    for each in (*(f"<div>{found}</div>" for found in made), page):
        tree = reader.fromstring(each)
        known = (
            {"form", "textarea", "button", "input", "label", "section", "nav", "a", "link", "script"}
            if each is page
            else set()
        )
        allowed = known | TAGS
        assert set() == {str(node.tag) for node in tree.iter() if isinstance(node.tag, str)} - allowed
        bad = [name for node in tree.iter() for name in node.attrib if name.startswith("on") or name == "style"]
        assert [] == bad


TAGS = set(
    """html head meta title body main div p span strong em code h1 h2 h3 ul ol li table caption thead tbody tr th td
    math mrow mi mn mo mtext mspace mfrac msup msub msqrt wbr""".split()
)


def test_nothing_that_was_typed_is_in_the_log(tmp_path: Path) -> None:
    (tmp_path / "tin.toml").write_bytes(
        (SAMPLES / "01-treacle-tin.toml").read_bytes().replace(b'course = "harbour-school.toml"\n', b"")
    )
    with desk_of(tmp_path) as (client, written):
        told(client, "tin", "SECRET = 3 N\nF = 9 SECRET")
        client.post("/p/tin/working/judge", content=b"SECRET")
        client.get("/SECRET")
    assert written and "SECRET" not in "\n".join(written) and HOST not in "\n".join(written)


def test_a_problem_that_names_files_outside_its_folder_opens_none(tmp_path: Path) -> None:
    (tmp_path / "own.toml").write_text('word = "torque"\n')
    inside = tmp_path / "desk"
    inside.mkdir()
    problem = (SAMPLES / "01-treacle-tin.toml").read_text("utf-8")
    (inside / "tin.toml").write_text(re.sub(r"course = .*\n", 'course = "../own.toml"\n', problem))
    with desk_of(inside) as (client, _):
        assert 503 == client.get("/p/tin").status_code


def test_a_change_of_a_file_is_seen(tmp_path: Path) -> None:
    problem: Any = re.sub(r"course = .*\n", "", (SAMPLES / "01-treacle-tin.toml").read_text("utf-8"))
    file = tmp_path / "tin.toml"
    file.write_text(problem)
    with desk_of(tmp_path) as (client, _):
        assert "Another title" not in client.get("/p/tin").text
        file.write_text(re.sub(r"title = .*", 'title = "Another title"', problem))
        assert "Another title" in client.get("/p/tin").text and "Another title" in client.get("/").text
