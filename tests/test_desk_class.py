"""A desk for a class: variants under codes, what is kept and what never is, the page that only a key opens, and
many at once.
"""

from __future__ import annotations

import csv
import re
import sqlite3
import threading
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from desk_client import HOST, ORIGIN, SAMPLES, desk_of, told, words
from lxml import html as reader
from starlette.testclient import TestClient

from explain import vary
from explain.cli.main import main
from explain.desk.kept import Attempt, Kept, kept_lines
from explain.desk.variants import CODE, variants_of

TIN = "02-treacle-tin-again"
WRONG = "W = 1.8 × 9.81 = 17.66 N\nF × 4.4 = 24.525 × 31\nF = 172.8 N"
RIGHT = """W = 1.8 × 9.81 = 17.66 N
F × 4.4 = 17.66 × 16.5 + 24.525 × 31
F = 239 N
R = 239 - 17.66 - 24.53 = 197 N down"""
KEY = "a-key-that-was-drawn"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A problem, and variants of another for three students."""
    made = tmp_path_factory.mktemp("class")
    for name in (f"{TIN}.toml", "harbour-school.toml"):
        (made / name).write_bytes((SAMPLES / name).read_bytes())
    handed(made, ["Ada Quill", "Birk Tallow", "=Cy Rope"])
    return made


def handed(folder: Path, students: list[str]) -> None:
    mussels = SAMPLES / "class-variants" / "bucket-of-mussels.toml"
    vary(mussels, folder / "Mussels", names=students, jobs=1)


def codes(folder: Path) -> dict[str, str]:
    variants_of(folder)  # writes those that are not there yet
    with (folder / "Mussels" / "codes.csv").open(encoding="utf-8-sig", newline="") as file:
        return {row["student"]: row["code"] for row in csv.DictReader(file)}


@contextmanager
def keeping(folder: Path, file: Path, **more: Any) -> Iterator[tuple[TestClient, list[str]]]:
    kept = Kept(file, **more)
    with desk_of(folder, variants=True, kept=kept, key=KEY) as both:
        yield both


# ---------------------------------------------------------------------- variants
def test_each_code_opens_one_students_numbers(folder: Path) -> None:
    with desk_of(folder, variants=True) as (client, _):
        seen = set()
        for student, code in codes(folder).items():
            page = client.get(f"/p/mussels/{code}")
            file = next((folder / "Mussels" / "variants").glob(f"*{student.split()[-1].lower()}*"))
            masses = re.findall(r"[\d.]+ kg", words(page.text))
            assert (200, True) == (page.status_code, bool(masses) and masses[0] in file.read_text("utf-8"))
            seen.add(tuple(masses))
        assert len(seen) == 3
        assert client.get("/p/mussels/aaaaaaaa").status_code == 404
        assert client.get("/p/mussels").text.count("Your code") >= 1


def test_the_page_that_asks_for_a_code_leads_to_the_problem(folder: Path) -> None:
    with desk_of(folder, variants=True) as (client, _):
        code = codes(folder)["Ada Quill"]
        moved = client.get("/p/mussels", params={"code": f" {code.upper()} "}, follow_redirects=False)
        assert (303, f"/p/mussels/{code}") == (moved.status_code, moved.headers["location"])
        assert "no such code" in words(client.get("/p/mussels", params={"code": "zzzzzzzz"}).text)
        assert "/p/mussels" in reader.fromstring(client.get("/").text).xpath("//ul[@class='problems']//a/@href")


def balance(file: Path) -> str:
    """The balance of moments of a variant in its own numbers, from the words of its file."""
    text = file.read_text("utf-8")
    masses = [float(each) for each in re.findall(r'^mass = "([\d.]+) kg"', text, re.M)]
    com = float(re.findall(r'^com = "([\d.]+) cm"', text, re.M)[0])
    arms = [float(each) for each in re.findall(r'^at = "([\d.]+) cm"', text, re.M)]
    angle = re.findall(r'^direction = "(\d+) deg', text, re.M)[-1]
    forearm, bucket = masses
    return f"B × {arms[1]} × sin {angle}° = {forearm} × 9.81 × {com} + {bucket} × 9.81 × {arms[0]}"


def test_a_working_is_judged_by_its_own_numbers(folder: Path) -> None:
    own = [
        (f"mussels/{code}", balance(next((folder / "Mussels" / "variants").glob(f"*{name.split()[-1].lower()}*"))))
        for name, code in codes(folder).items()
    ]
    with desk_of(folder, variants=True) as (client, _):
        for address, line in own:
            assert ["going"] == [told(client, address, line)["state"]], line
            others = {told(client, address, other)["state"] for _, other in own if other != line}
            assert others and "going" not in others


def test_codes_stay_while_a_class_grows_and_are_hard_to_guess(tmp_path: Path) -> None:
    handed(tmp_path, ["Ada Quill", "Birk Tallow"])
    first = codes(tmp_path)
    handed(tmp_path, ["Birk Tallow", "Dorit Mast", "Ada Quill"])
    again = codes(tmp_path)
    assert first == {name: again[name] for name in first} and len(again) == 3
    assert all(map(CODE.fullmatch, again.values())) and len({*again.values()}) == 3


def test_without_the_option_there_are_no_variants(folder: Path) -> None:
    with desk_of(folder) as (client, _):
        assert 404 == client.get(f"/p/mussels/{codes(folder)['Ada Quill']}").status_code
        assert 404 == client.get("/p/mussels").status_code


# ---------------------------------------------------------------------- what is kept
def test_nothing_is_kept_unless_it_was_asked_for(folder: Path, tmp_path: Path) -> None:
    with desk_of(folder) as (client, _):
        assert "kept" not in told(client, TIN, WRONG) and 404 == client.get("/class").status_code
        assert 404 == client.post(f"/p/{TIN}/working/forget", json={"code": "x"}).status_code


def test_a_working_that_grows_is_one_row_without_a_name_or_a_line(folder: Path, tmp_path: Path) -> None:
    file = tmp_path / "kept.sqlite"
    with keeping(folder, file) as (client, _):
        for upto in (1, 2, 3):
            told(client, TIN, "\n".join(WRONG.splitlines()[:upto]), visit="one")
        told(client, TIN, WRONG, visit="one", hints=2, **{"for": 2})
        told(client, TIN, RIGHT, visit="two")
    with sqlite3.connect(file) as rows:
        found = rows.execute("select day, problem, variant, lines, first_wrong, hints, done from attempt").fetchall()
        dump = "\n".join(rows.iterdump())
    today = date.today().isoformat()
    assert found == [(today, TIN, "", 3, 2, 2, 0), (today, TIN, "", 4, 0, 0, 1)]
    assert not [each for each in ("24.525", "172.8", HOST, "testclient", "one'", "two'") if each in dump]


def test_a_student_is_told_no_slip_of_the_lecturers(folder: Path, tmp_path: Path) -> None:
    with keeping(folder, tmp_path / "kept.sqlite") as (client, _):
        assert "slip" not in told(client, TIN, WRONG, visit="one")
        assert "without any name" in words(client.get(f"/p/{TIN}").text) or "No name" in words(
            client.get(f"/p/{TIN}").text
        )


def test_lines_are_kept_under_a_code_that_deletes_them(folder: Path, tmp_path: Path) -> None:
    file = tmp_path / "kept.sqlite"
    with keeping(folder, file, lines=True) as (client, _):
        code = told(client, TIN, WRONG, visit="one")["kept"]
        assert code == told(client, TIN, RIGHT, visit="one")["kept"]
        assert {code: RIGHT} == kept_lines(file, TIN)
        assert {"forgotten": True} == client.post(f"/p/{TIN}/working/forget", json={"code": code}).json()
        assert {"forgotten": False} == client.post(f"/p/{TIN}/working/forget", json={"code": code}).json()
    assert 0 == sqlite3.connect(file).execute("select count(*) from typed").fetchone()[0]


def test_what_is_older_than_it_may_be_goes(tmp_path: Path) -> None:
    file = tmp_path / "kept.sqlite"
    Kept(file).close()
    old = (date.today() - timedelta(days=31)).isoformat()
    with sqlite3.connect(file) as rows:
        rows.execute("insert into attempt values (1, ?, 'p', '', 3, 2, '', 0, 0)", (old,))
        rows.execute("insert into typed values ('code', 1, 'F = 3 N')")
    kept = Kept(file)
    kept.note("p", "", "", Attempt(1, 0, "", 0, False))
    assert [(1, 0)] == [(each.tried, len(each.lines)) for each in kept.counts()]
    assert 0 == sqlite3.connect(file).execute("select count(*) from typed").fetchone()[0]


def test_a_disk_that_is_full_stops_no_student(folder: Path, tmp_path: Path) -> None:
    kept = Kept(tmp_path / "kept.sqlite")
    with desk_of(folder, kept=kept, key=KEY) as (client, written):
        kept.close()  # every write fails from now on
        assert "wrong" == told(client, TIN, WRONG)["state"]
        client.get(f"/class?key={KEY}", follow_redirects=False)
        assert 503 == client.get("/class", headers={"cookie": f"class-key={KEY}"}).status_code
    assert any("not kept" in each for each in written)


def test_a_file_that_is_none_of_ours_is_refused(tmp_path: Path) -> None:
    file = tmp_path / "notes.sqlite"
    file.write_text("these are notes, and no table " * 20)
    result = CliRunner().invoke(main, ["desk", str(tmp_path), "--keep", str(file), "--no-browser"])
    assert (2, True) == (result.exit_code, "cannot be kept in" in result.output)
    assert file.read_text().startswith("these are notes")


def test_tally_reads_what_was_kept(folder: Path, tmp_path: Path) -> None:
    file = tmp_path / "kept.sqlite"
    with keeping(folder, file, lines=True) as (client, _):
        for place, each in enumerate((WRONG, RIGHT, WRONG)):
            told(client, TIN, each, visit=str(place))
    result = CliRunner().invoke(main, ["tally", str(folder / f"{TIN}.toml"), str(file), "--jobs", "1"])
    assert result.exit_code == 1 and re.search(r"\b3\b", result.output), result.output
    with keeping(folder, tmp_path / "counts.sqlite") as (client, _):
        told(client, TIN, WRONG, visit="1")
    refused = CliRunner().invoke(main, ["tally", str(folder / f"{TIN}.toml"), str(tmp_path / "counts.sqlite")])
    assert (2, True) == (refused.exit_code, "--keep-lines" in refused.output)


# ---------------------------------------------------------------------- the page about the class
def test_only_the_key_opens_the_page_about_the_class(folder: Path, tmp_path: Path) -> None:
    with keeping(folder, tmp_path / "kept.sqlite") as (client, _):
        for wrong in ("/class", "/class?key=", "/class?key=other", f"/class?key={KEY}x", "/class?key=%ff"):
            assert 403 == client.get(wrong, follow_redirects=False).status_code, wrong
        moved = client.get(f"/class?key={KEY}", follow_redirects=False)
        cookie = moved.headers["set-cookie"]
        assert (303, "/class") == (moved.status_code, moved.headers["location"])
        assert all(each in cookie for each in ("HttpOnly", "SameSite=strict", "Path=/class"))
        assert 200 == client.get("/class").status_code


def test_the_class_is_told_by_number(folder: Path, tmp_path: Path) -> None:
    with keeping(folder, tmp_path / "kept.sqlite") as (client, _):
        for place, each in enumerate((WRONG, WRONG, RIGHT)):
            told(client, TIN, each, visit=str(place))
        client.get(f"/class?key={KEY}")
        said = words(client.get("/class").text)
    assert "3 tried, 1 is done, 2 not yet." in said and "Line How many Of all 2 2" in said
    assert "segment" in said.lower() and not [each for each in codes(folder) if each in said]


# ---------------------------------------------------------------------- behind a proxy
@pytest.mark.parametrize(
    ("options", "found"),
    (
        (("--bind", "0.0.0.0"), "--bind without --behind"),
        (("--behind", "http://desk.example"), "as the address of a proxy"),
        (("--behind", "https://desk.example/path"), "as the address of a proxy"),
        (("--behind", "https://u:p@desk.example"), "as the address of a proxy"),
        (("--keep-lines",), "--keep-lines without --keep"),
    ),
)
def test_options_that_do_not_go_together_are_refused(tmp_path: Path, options: tuple[str, ...], found: str) -> None:
    result = CliRunner().invoke(main, ["desk", str(tmp_path), "--no-browser", *options])
    assert (2, True) == (result.exit_code, found in result.output)


def test_behind_a_proxy_its_host_and_origin_alone_are_let_in(folder: Path) -> None:
    hosts, origins = frozenset({"desk.example"}), frozenset({"https://desk.example"})
    with desk_of(folder, hosts=hosts, origins=origins) as (client, _):
        way, sent = f"/p/{TIN}/working/judge", {"text": WRONG}
        good = {"host": "desk.example", "origin": "https://desk.example"}
        assert 200 == client.post(way, json=sent, headers=good).status_code
        assert 421 == client.post(way, json=sent).status_code
        assert 403 == client.post(way, json=sent, headers={**good, "origin": ORIGIN}).status_code


# ---------------------------------------------------------------------- many at once
def test_two_hundred_at_once_all_get_their_verdict(folder: Path) -> None:
    """More than may wait: who is refused is told when to try again, does so, and nothing is lost."""
    refused, lock = [0], threading.Lock()

    def student(number: int, client: TestClient) -> str:
        for _ in range(200):
            text = f"W = 1.8 × 9.81 = 17.66 N\n{number} × 2 = {number * 2}"
            answer = client.post(f"/p/{TIN}/working/judge", json={"text": text})
            if answer.status_code != 503:
                return str(answer.json()["state"])
            assert ("busy", True) == (answer.json()["stopped"], answer.headers["retry-after"].isdigit())
            with lock:
                refused[0] += 1
            threading.Event().wait(0.05)
        return "lost"

    with desk_of(folder, most=16) as (client, _), ThreadPoolExecutor(60) as crowd:
        states = list(crowd.map(lambda number: student(number, client), range(200)))
    assert "lost" not in states and len(states) == 200 and refused[0] > 0
