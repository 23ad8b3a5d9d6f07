"""The tutor's addresses: who may come in, what each does, what is refused, and that no text becomes markup."""

from __future__ import annotations

import errno
import json
import os
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from desk_client import HOST, ORIGIN, SAMPLES, desk_of, words
from lxml import html as reader
from starlette.testclient import TestClient
from test_hostile import TEXTS

from explain.cli.main import main
from explain.desk import saving
from explain.desk.form_fields import MANY, NEW
from explain.problem.new_files import LIKE

KEY = "a-key-that-nobody-guesses"
LANTERN = "25-lantern"
OPS = ("redraw", "put", "turn", "add", "cut", "save")
Kept = tuple[TestClient, Path]


FILES = ("25-lantern.toml", "02-treacle-tin-again.toml", "harbour-school.toml")


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Kept]:
    folder = tmp_path_factory.mktemp("around") / "desk"
    folder.mkdir()
    with desk_of(folder, edit=KEY) as (client, _):
        assert 200 == client.get(f"/edit?key={KEY}").status_code
        yield client, folder


@pytest.fixture
def kept(desk: Kept) -> Kept:
    """A tutor's client with the cookie, and a folder of two problems and a course as they were."""
    client, folder = desk
    for path in folder.iterdir():
        path.unlink()
    for name in FILES:
        (folder / name).write_bytes((SAMPLES / name).read_bytes())
    return client, folder


def loaded(client: TestClient, name: str = LANTERN) -> tuple[str, str]:
    """The text on the page of a problem, and its digest."""
    page = reader.fromstring(client.get(f"/edit/{name}").text)
    return page.get_element_by_id("text").text.removeprefix("\n"), page.get_element_by_id("digest").get("value")


def asked(client: TestClient, op: str, text: str, name: str = LANTERN, **more: Any) -> dict[str, Any]:
    answer: dict[str, Any] = client.post(f"/edit/{name}/{op}", json={"text": text, **more}).json()
    return answer


# ---------------------------------------------------------------------- the key
def test_the_key_becomes_a_cookie_and_leaves_the_address(tmp_path: Path) -> None:
    with desk_of(tmp_path, edit=KEY) as (client, written):
        answer = client.get(f"/edit?key={KEY}", follow_redirects=False)
        assert (303, "/edit") == (answer.status_code, answer.headers["location"])
        flags = {each.strip() for each in answer.headers["set-cookie"].lower().split(";")[1:]}
        assert {"httponly", "samesite=strict", "path=/edit"} <= flags
        assert 200 == client.get("/edit").status_code
        assert KEY not in client.get("/edit").text + "".join(written)


def test_without_the_key_no_address_is_there(tmp_path: Path) -> None:
    (tmp_path / "tin.toml").write_bytes((SAMPLES / "02-treacle-tin-again.toml").read_bytes())
    with desk_of(tmp_path, edit=KEY) as (client, _):
        there = [("get", "/edit"), ("get", "/edit/tin"), ("post", "/edit"), ("post", "/edit/tin")]
        for cookie in ({}, {"desk-8000": ""}, {"desk-8000": "another"}, {"desk-8000": KEY[:-1]}, {"desk-8000": "ü"}):
            head = {"cookie": "; ".join(f"{key}={value}" for key, value in cookie.items()).encode("latin-1")}
            for method, address in (*there, *(("post", f"/edit/tin/{op}") for op in OPS)):
                answer = client.request(method, address, headers=head)
                assert 404 == answer.status_code, (method, address, cookie)
        for wrong in ("", "x", KEY + "x", "ü"):
            answer = client.get("/edit", params={"key": wrong}, follow_redirects=False)
            assert (404, None) == (answer.status_code, answer.headers.get("set-cookie"))


def test_without_edit_the_key_opens_nothing(tmp_path: Path) -> None:
    (tmp_path / "tin.toml").write_bytes((SAMPLES / "02-treacle-tin-again.toml").read_bytes())
    with desk_of(tmp_path) as (client, _):
        for address in ("/edit", "/edit?key=", f"/edit?key={KEY}", "/edit/tin"):
            assert 404 == client.get(address).status_code
        for op in OPS:
            assert 404 == client.post(f"/edit/tin/{op}", json={"text": ""}).status_code


def test_what_comes_from_another_page_changes_nothing(kept: Kept) -> None:
    client, folder = kept
    text, digest = loaded(client)
    for op in OPS:
        for origin in ("null", "http://evil.invalid", f"{ORIGIN}0"):
            sent = {"text": text, "digest": digest}
            assert 403 == client.post(f"/edit/{LANTERN}/{op}", json=sent, headers={"origin": origin}).status_code
    assert 421 == client.get("/edit", headers={"host": "evil.invalid"}).status_code


@pytest.mark.parametrize("more", ("--class", "--behind=https://desk.school.example"))
def test_files_are_never_changed_from_outside(tmp_path: Path, more: str) -> None:
    result = CliRunner().invoke(main, ["desk", str(tmp_path), "--edit", more])
    assert (2, True) == (result.exit_code, "--edit with" in result.output)


# ---------------------------------------------------------------------- pages without script
def test_every_sample_has_its_page() -> None:
    with desk_of(SAMPLES, edit=KEY) as (client, _):
        client.get(f"/edit?key={KEY}")
        links = reader.fromstring(client.get("/edit").text).xpath("//ul[@class='problems']//a/@href")
        assert len(links) > 30
        for link in links:
            page = reader.fromstring(client.get(link).text)
            name = link.rpartition("/")[2]
            written = (SAMPLES / f"{name}.toml").read_text("utf-8")
            assert written == page.get_element_by_id("text").text.removeprefix("\n")
            assert page.xpath("//div[@id='figure']/svg") and page.xpath("//section[@id='worked']//math")
            assert [] == page.xpath("//*[@style] | //script[not(@src)]")


def test_the_form_redraws_and_saves_without_script(kept: Kept) -> None:
    client, folder = kept
    text, digest = loaded(client)
    new = text.replace("20 deg from back", "25 deg from back")
    form = {"text": new.replace("\n", "\r\n"), "digest": digest}
    drawn = client.post(f"/edit/{LANTERN}", data={**form, "do": "redraw"})
    assert (200, text) == (drawn.status_code, (folder / f"{LANTERN}.toml").read_text("utf-8"))
    assert new == reader.fromstring(drawn.text).get_element_by_id("text").text.removeprefix("\n")
    saved = client.post(f"/edit/{LANTERN}", data={**form, "do": "save"})
    assert (200, new) == (saved.status_code, (folder / f"{LANTERN}.toml").read_text("utf-8"))
    assert "Saved." == reader.fromstring(saved.text).get_element_by_id("state").text
    again = client.post(f"/edit/{LANTERN}", data={**form, "do": "save"})  # with the digest of long ago
    page = reader.fromstring(again.text)
    assert (409, new) == (again.status_code, page.get_element_by_id("their-text").text.removeprefix("\n"))
    over = {**form, "do": "over", "theirs": page.get_element_by_id("their-digest").get("value"), "text": text}
    assert 200 == client.post(f"/edit/{LANTERN}", data=over).status_code
    assert text == (folder / f"{LANTERN}.toml").read_text("utf-8")


def test_a_file_at_fault_is_shown_with_its_fault(kept: Kept) -> None:
    client, folder = kept
    (folder / "bad.toml").write_text('title = "Bad"\n[pivot]\nname = "elbow"\nbone = 3\n')
    page = client.get("/edit/bad")
    assert (200, True) == (page.status_code, "Line 4: pivot.bone: found 3" in words(page.text))
    assert str(folder) not in page.text


# ---------------------------------------------------------------------- what each address does
def test_a_text_is_drawn_or_its_fault_is_told(kept: Kept) -> None:
    client, folder = kept
    text, _ = loaded(client)
    drawn = asked(client, "redraw", text)
    assert {"title", "figure", "handles", "html", "fields", "values", "said"} <= drawn.keys() and "text" not in drawn
    assert drawn["figure"].startswith("<svg") and 'data-name="deltoid"' in drawn["figure"]
    line = 1 + text.split("\n").index('direction = "20 deg from back toward up"')
    bad = asked(client, "redraw", text.replace('"20 deg from back toward up"', '"20 dg from back toward up"'))
    assert ("muscle[1].direction", line, True) == (bad["fault"]["key"], bad["fault"]["line"], "figure" not in bad)
    assert {"found", "expected", "example"} <= bad["fault"].keys() and bad["said"] == f"Line {line} has a fault."
    broken = asked(client, "redraw", text.replace("[pivot]", "[pivot"))
    assert "fault" in broken and "fields" not in broken
    for short in ("", "x", "/etc/passwd", "25-lantern.toml", "a" * 50):
        assert "fault" in asked(client, "redraw", short)  # a text, never the name of a file


def test_a_text_opens_files_of_the_folder_alone(kept: Kept) -> None:
    client, folder = kept
    text, _ = loaded(client)
    (folder.parent / "outside.toml").write_text('word = "torque"\n')
    (folder / "link.toml").symlink_to(folder.parent / "outside.toml")
    for name in ("../outside.toml", str(folder.parent / "outside.toml"), "link.toml", "/etc/passwd"):
        told = asked(client, "redraw", text.replace("harbour-school.toml", name))
        assert "fault" in told and "word" not in json.dumps(told["fault"]), name
    assert "figure" in asked(client, "redraw", text)


def test_a_fault_in_a_course_is_told_with_its_name_and_no_path(kept: Kept) -> None:
    client, folder = kept
    text, _ = loaded(client)
    (folder / "harbour-school.toml").write_text('word = "turning"\n')
    told = asked(client, "redraw", text)
    assert "harbour-school.toml, line 1" in told["fault"]["key"] and "line" not in told["fault"]
    assert str(folder) not in json.dumps(told)


@pytest.mark.parametrize(
    ("path", "value", "line"),
    (
        (["muscle", 0, "at"], "13 cm", 'at = "13 cm"'),
        (["person", "height"], "1.60 m", 'height = "1.60 m"'),
        (["title"], 'She said "up"', 'title = "She said \\"up\\""'),
        (["ask"], "deltoid\n reaction \n\n", 'ask = ["deltoid", "reaction"]'),
        (["balanced"], "true", "balanced = true"),
        (["muscle", 0, "count"], "2", "count = 2"),
        (["muscle", 0, "count"], "two", 'count = "two"'),
        (["load", 0, "on"], "hand  \n", 'on = "hand"'),
    ),
)
def test_a_field_changes_its_line_and_no_other(kept: Kept, path: list[str | int], value: str, line: str) -> None:
    client, _ = kept
    text, _ = loaded(client)
    new = asked(client, "put", text, path=path, value=value)["text"]
    changed = [each for each in new.split("\n") if each not in text.split("\n")]
    assert ([line] if line not in text else []) == changed


def test_an_emptied_field_takes_its_key_out(kept: Kept) -> None:
    client, _ = kept
    text, _ = loaded(client)
    new = asked(client, "put", text, path=["load", 0, "on"], value="  ")["text"]
    assert text.replace('on = "hand"\n', "") == new


def test_the_statement_keeps_its_lines(kept: Kept) -> None:
    client, _ = kept
    text, _ = loaded(client)
    new = asked(client, "put", text, path=["statement"], value='One.\r\n\r\nTwo "three".')["text"]
    assert 'One.\n\nTwo "three".\n' == tomllib.loads(new)["statement"]
    assert "\nOne.\n\nTwo" in new and new.endswith(text.partition("[pivot]")[2])


def test_a_turn_stays_in_the_words_of_the_file(kept: Kept) -> None:
    client, _ = kept
    text, _ = loaded(client)
    told = asked(client, "turn", text, path=["muscle", 0, "direction"], degrees=62)
    assert text.replace("20 deg from back", "62 deg from back") == told["text"]
    handle = next(each for each in told["handles"] if each["name"] == "deltoid")
    assert (62, 90, "from back toward up") == (handle["degrees"], handle["most"], handle["words"])
    assert "90 deg from back" in asked(client, "turn", text, path=["muscle", 0, "direction"], degrees=400)["text"]
    nowhere: list[tuple[list[str | int], object]] = [(["load", 0, "mass"], 3), (["pivot", "name"], 3), (["no"], 3)]
    for path, degrees in (*nowhere, (["muscle", 0, "direction"], "x")):
        assert "kept" in asked(client, "turn", text, path=path, degrees=degrees)


def test_parts_come_and_go(kept: Kept) -> None:
    client, _ = kept
    text, _ = loaded(client)
    for kind in MANY:
        more = asked(client, "add", text, kind=kind)
        assert more["text"].startswith(text) and f"part-{kind}-" in more["fields"]
        place = len(tomllib.loads(more["text"])[kind]) - 1
        assert text == asked(client, "cut", more["text"], path=[kind, place])["text"]
    assert "kept" in asked(client, "add", text, kind="person") and "kept" in asked(client, "add", text, kind="mark")


@pytest.mark.parametrize("like", LIKE)
def test_a_part_that_is_begun_can_be_worked(kept: Kept, like: str) -> None:
    client, _ = kept
    client.post("/edit", data={"name": f"new-{like}", "like": like})
    text, _ = loaded(client, f"new-{like}")
    for kind in NEW:
        told = asked(client, "add", text, f"new-{like}", kind=kind)
        unhung = kind == "segment" and told.get("fault", {}).get("key") == "segment[1].length"  # nowhere to begin
        assert "figure" in told or "kept" in told or unhung, (kind, told.get("fault"))


def test_every_field_that_can_be_added_is_one_that_the_file_may_have(kept: Kept) -> None:
    client, _ = kept
    text, _ = loaded(client)
    page = reader.fromstring(f"<div>{asked(client, 'redraw', text)['fields']}</div>")
    looked = 0
    for option in page.xpath("//select[starts-with(@id, 'more')]/option"):
        told = asked(client, "put", text, path=json.loads(option.get("value")), value=option.get("data-value"))
        assert "is not known here" not in told.get("fault", {}).get("found", ""), option.get("value")
        looked += tomllib.loads(told["text"]) != tomllib.loads(text)
    assert looked > 25


def test_labels_and_help_belong_to_their_fields(kept: Kept) -> None:
    client, _ = kept
    text, _ = loaded(client)
    told = asked(client, "redraw", text)
    page = reader.fromstring(f"<div>{told['fields']}</div>")
    boxes = page.xpath("//*[@data-path]")
    assert list(told["values"]) == [each.get("id") for each in boxes]
    for box in boxes:
        assert page.xpath(f"//label[@for='{box.get('id')}']")
        assert page.get_element_by_id(box.get("aria-describedby")).text


# ---------------------------------------------------------------------- what is refused
@pytest.mark.parametrize(
    "more",
    (
        {"path": None},
        {"path": []},
        {"path": "title"},
        {"path": [["title"]]},
        {"path": [True]},
        {"path": [1.5]},
        {"path": [{}]},
        {"path": ["title"] * 20},
        {"path": ["nowhere", 3, "x"]},
        {"path": ["muscle", -1, "at"]},
        {"path": ["muscle", 99, "at"]},
        {"path": ["__class__"]},
        {},
    ),
)
def test_a_path_that_leads_nowhere_changes_nothing(kept: Kept, more: dict[str, Any]) -> None:
    client, _ = kept
    text, _ = loaded(client)
    for op in ("put", "turn", "cut"):
        answer = client.post(f"/edit/{LANTERN}/{op}", json={"text": text, "value": "x", "degrees": 3, **more})
        plain = op == "put" and more.get("path") in (["__class__"],)
        assert (409 if not plain else 200) == answer.status_code, (op, answer.text[:200])
        assert "stopped" not in answer.json()


@pytest.mark.parametrize(
    ("content", "status"),
    (
        (b"", 400),
        (b"{", 400),
        (b"[]", 400),
        (b'{"text": 3}', 400),
        (b"\xff\xfe", 400),
        (b"[" * 90_000, 400),
        (b'{"text": "' + b"x" * 100_001 + b'"}', 413),
        (b"x" * 200_000, 413),
    ),
)
def test_a_body_that_is_broken_or_too_long_is_refused(kept: Kept, content: bytes, status: int) -> None:
    client, folder = kept
    for op in OPS:
        assert status == client.post(f"/edit/{LANTERN}/{op}", content=content).status_code


def test_a_text_that_takes_too_long_is_stopped_and_the_next_is_drawn(tmp_path: Path) -> None:
    from explain.desk.pool import Limits

    problem = (SAMPLES / "02-treacle-tin-again.toml").read_text("utf-8").replace('course = "harbour-school.toml"\n', "")
    (tmp_path / "tin.toml").write_text(problem)
    loads = "".join(f'[[load]]\nname = "s{n}"\nmass = "1.{n} kg"\nat = "{n % 37}.{n} cm"\n' for n in range(1, 90))
    with desk_of(tmp_path, edit=KEY, limits=Limits(processor=0.3)) as (client, _):
        client.get(f"/edit?key={KEY}")
        answer = client.post("/edit/tin/redraw", json={"text": problem + loads})
        assert (503, "time") == (answer.status_code, answer.json()["stopped"]) and "too long" in answer.json()["said"]
        assert "fault" in asked(client, "redraw", "title = 3", "tin")


# ---------------------------------------------------------------------- saving
def saved(client: TestClient, text: str, digest: str, name: str = LANTERN) -> Any:
    return client.post(f"/edit/{name}/save", json={"text": text, "digest": digest})


def test_what_is_saved_is_on_disk_and_its_digest_is_the_next(kept: Kept) -> None:
    client, folder = kept
    text, digest = loaded(client)
    first = saved(client, text + "# one\n", digest)
    assert (200, text + "# one\n") == (first.status_code, (folder / f"{LANTERN}.toml").read_text("utf-8"))
    second = saved(client, text + "# two\n", first.json()["digest"])
    assert (200, (text + "# two\n", second.json()["digest"])) == (second.status_code, loaded(client))
    assert sorted(path.name for path in folder.iterdir()) == sorted(FILES)


def test_a_file_that_somebody_else_wrote_is_not_overwritten(kept: Kept) -> None:
    client, folder = kept
    text, digest = loaded(client)
    (folder / f"{LANTERN}.toml").write_text("# theirs\n")
    answer = saved(client, text, digest)
    assert (409, "# theirs\n") == (answer.status_code, answer.json()["there"]["text"])
    assert "# theirs\n" == (folder / f"{LANTERN}.toml").read_text("utf-8")
    assert 200 == saved(client, text, answer.json()["there"]["digest"]).status_code
    (folder / f"{LANTERN}.toml").unlink()
    gone = saved(client, text, answer.json()["there"]["digest"])
    assert (409, {"text": "", "digest": ""}) == (gone.status_code, gone.json()["there"])
    assert (200, text) == (saved(client, text, "").status_code, (folder / f"{LANTERN}.toml").read_text("utf-8"))


def test_a_text_that_is_no_problem_any_more_can_be_saved_and_mended(kept: Kept) -> None:
    client, _ = kept
    text, digest = loaded(client)
    empty = saved(client, "", digest)
    assert 200 == empty.status_code
    assert 200 == saved(client, text, empty.json()["digest"]).status_code


def test_line_ends_and_the_mark_at_the_head_stay(kept: Kept) -> None:
    client, folder = kept
    file = folder / f"{LANTERN}.toml"
    data = b"\xef\xbb\xbf" + file.read_bytes().replace(b"\n", b"\r\n")
    file.write_bytes(data)
    text, digest = loaded(client)
    assert "\r" not in text and not text.startswith("\ufeff")
    answer = saved(client, text.replace("20 deg", "21 deg"), digest)
    assert (200, data.replace(b"20 deg", b"21 deg")) == (answer.status_code, file.read_bytes())
    mixed = b"a = 1\r\nb = 2\nc = 3\r\nd = 4\r\n"
    file.write_bytes(mixed)
    answer = saved(client, "a = 1\nb = 2\nc = 5\nnew = 6\nd = 4\n", saving.load(file).digest)
    assert b"a = 1\r\nb = 2\nc = 5\r\nnew = 6\r\nd = 4\r\n" == file.read_bytes()


def test_nothing_is_written_through_a_link_or_outside_the_folder(kept: Kept) -> None:
    client, folder = kept
    text, digest = loaded(client)
    outside = folder.parent / "outside.toml"
    outside.write_text("# outside\n")
    file = folder / f"{LANTERN}.toml"
    file.unlink()
    file.symlink_to(outside)
    assert 507 == saved(client, text, digest).status_code
    (folder / "new-one.toml").symlink_to(folder.parent / "not-there.toml")
    for name in ("new-one", "..%2foutside", "%2e%2e", "harbour-school", "Bad", "a_b", "a" * 80):
        assert saved(client, text, "", name).status_code in (404, 405), name
    assert "# outside\n" == outside.read_text() and not (folder.parent / "not-there.toml").exists()
    assert (SAMPLES / "harbour-school.toml").read_bytes() == (folder / "harbour-school.toml").read_bytes()


@pytest.mark.parametrize(
    ("number", "said"),
    ((errno.ENOSPC, "the disk is full"), (errno.EROFS, "may only be read"), (errno.EACCES, "may only be read")),
)
def test_a_place_that_cannot_be_written_is_said_and_the_file_stays(
    kept: Kept, monkeypatch: pytest.MonkeyPatch, number: int, said: str
) -> None:
    client, folder = kept
    text, digest = loaded(client)

    def full(*_: Any, **__: Any) -> Any:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr("explain.output._new", full)
    answer = saved(client, text + "# more\n", digest)
    assert (507, True) == (answer.status_code, said in answer.json()["said"])
    assert "Nothing was changed." in answer.json()["said"] and str(folder) not in answer.text
    assert (text, digest) == loaded(client)


def test_a_file_that_may_only_be_read_stays(kept: Kept, monkeypatch: pytest.MonkeyPatch) -> None:
    client, folder = kept
    text, digest = loaded(client)
    monkeypatch.setattr(os, "access", lambda *_: False)  # who runs tests as root may write anything
    answer = saved(client, text + "# more\n", digest)
    assert (507, True) == (answer.status_code, "may only be read" in answer.json()["said"])
    assert text == (folder / f"{LANTERN}.toml").read_text("utf-8")


def test_half_a_character_is_not_saved(kept: Kept) -> None:
    client, folder = kept
    _, digest = loaded(client)
    body = b'{"text": "# \\ud800", "digest": "' + digest.encode() + b'"}'
    assert 507 == client.post(f"/edit/{LANTERN}/save", content=body).status_code
    assert "fault" in client.post(f"/edit/{LANTERN}/redraw", content=body).json()


# ---------------------------------------------------------------------- new problems
@pytest.mark.parametrize("like", LIKE)
def test_a_new_problem_begins_as_one_that_works(kept: Kept, like: str) -> None:
    client, _ = kept
    answer = client.post("/edit", data={"name": f"my-{like}", "like": like}, follow_redirects=False)
    assert (303, f"/edit/my-{like}") == (answer.status_code, answer.headers["location"])
    assert "figure" in asked(client, "redraw", loaded(client, f"my-{like}")[0], f"my-{like}")


@pytest.mark.parametrize(
    "name", ("", "..", "a/b", "Upper", "a b", "ü", "a.toml", "-a", "x" * 70, "harbour-school", LANTERN)
)
def test_a_name_that_is_taken_or_none_begins_nothing(kept: Kept, name: str) -> None:
    client, folder = kept
    before = {path: path.read_bytes() for path in folder.iterdir()}
    answer = client.post("/edit", data={"name": name, "like": "elbow"})
    assert answer.status_code in (400, 409) and before == {path: path.read_bytes() for path in folder.iterdir()}
    assert 400 == client.post("/edit", data={"name": "fine", "like": "../course"}).status_code


# ---------------------------------------------------------------------- hostile text
TAGS = set(
    """html head meta title link body script nav a main div section h1 h2 h3 h4 p form input label textarea fieldset
    details summary span select option button code strong em ul ol li table caption thead tbody tr th td wbr
    svg desc g rect line circle path math mrow mi mn mo mtext mspace mfrac msup msub msubsup msqrt menclose figure
    figcaption""".split()
)


@pytest.mark.parametrize("hostile", (*TEXTS, "\u202eevil", "a\x00b", "</textarea><script>alert(1)</script>"))
def test_no_text_of_a_problem_becomes_markup(kept: Kept, hostile: str) -> None:
    """In every field of a problem, by the page and by each answer for its script."""
    client, folder = kept
    text, digest = loaded(client)
    keys: list[list[str | int]] = [["title"], ["statement"], ["course"], ["ask"], ["pivot", "name"], ["pivot", "bone"]]
    keys += [["person", "table"], ["segment", 2, "name"], ["load", 0, "name"], ["muscle", 0, "name"], ["nonsense"]]
    keys += [["muscle", 0, "direction"]]
    typed = hostile.encode("utf-8", "replace").decode()
    for path in keys:
        told = asked(client, "put", text, path=path, value=typed)
        if "kept" in told:
            assert "\x00" in typed or path == ["nonsense"]
            continue
        clean(*(told.get(key, "") for key in ("fields", "figure", "html", "told")))
        again = asked(client, "redraw", told["text"])
        clean(*(again.get(key, "") for key in ("fields", "figure", "html", "told")))
        page = client.post(f"/edit/{LANTERN}", data={"text": told["text"], "digest": typed, "do": "redraw"})
        assert 200 == page.status_code
        clean(page.text)


def clean(*made: str) -> None:
    for each in made:
        tree = reader.fromstring(f"<div>{each}</div>") if "<html" not in each else reader.fromstring(each)
        assert set() == {str(node.tag).lower() for node in tree.iter() if isinstance(node.tag, str)} - TAGS
        bad = [name for node in tree.iter() for name in node.attrib if name.startswith("on") or name == "style"]
        assert [] == bad
        assert all(not node.text and (node.get("src") or "").startswith("/asset/") for node in tree.iter("script"))
        links = [node.get("href") or "" for node in tree.iter("a")]
        assert all(link.startswith(("/", "#")) for link in links)


def test_nothing_that_was_typed_is_in_the_log(tmp_path: Path) -> None:
    with desk_of(tmp_path, edit=KEY) as (client, written):
        client.get(f"/edit?key={KEY}")
        client.post("/edit", data={"name": "secret-name", "like": "elbow"})
        asked(client, "redraw", "SECRET = 3", "secret-name")
        saved(client, "# SECRET", "SECRET", "secret-name")
        client.post("/edit/secret-name/redraw", content=b"SECRET")
    log = "\n".join(written).lower()
    assert log and "secret" not in log and KEY not in log and HOST not in log and not re.search(r"/edit", log)


def test_a_figure_is_drawn_again_where_a_number_has_another_figure(kept: Kept) -> None:
    """30 deg and 30.0 deg are one angle, and two labels."""
    client, _ = kept
    text, _ = loaded(client)
    first = asked(client, "redraw", text)["figure"]
    assert first == asked(client, "redraw", text.replace("title = ", "title  = "))["figure"]
    assert first != asked(client, "redraw", text.replace("15 deg below", "15.0 deg below"))["figure"]
