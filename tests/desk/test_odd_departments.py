"""What departments may hold and requests may ask: each is a plain page, never a fault of ours."""

import html
import itertools
import json
import re
import shutil
import threading
from urllib.parse import quote

import pytest

from itembank.desk.replying.replies import url
from tests.depth import cases, each, left, only_whole
from tests.depth import whole as in_whole
from tests.desk.conftest import fresh_home, visitor

PAGE = "/class/8K/lesson/2026-11-30/1"
PACK = "8K-2026-11-30/pack.json"
LINK = re.compile(r'(?:href|action)="(/[^"#]*)')
OWN_FAULT = "The desk has a fault of its own"


def links(text):
    """Return the addresses that a page leads to, forms among them."""
    return [html.unescape(found) for found in LINK.findall(text)]


def whole(answer):
    """Return a page's text; it must be a whole page that does not speak of a fault of ours."""
    assert answer.status_code < 500, answer.text
    assert OWN_FAULT not in answer.text
    assert "Traceback" not in answer.text
    if answer.headers["content-type"].startswith("text/html"):
        assert answer.text.rstrip().endswith("</html>")
    return answer.text


def renamed(home, name):
    """Give the class 8K another name; packs and plans of the old one stay."""
    path = home / "department.toml"
    written = json.dumps(name, ensure_ascii=False)
    path.write_text(path.read_text().replace('"8K"', written))


NAMES = ["8K/2", "10 Set 1", "8 K & M", "8ä", "8K#1", "8K?x", "8K+", "Jahr '8'"]


@pytest.mark.parametrize("name", each(NAMES, 3))
def test_all_links_of_a_class_work_whatever_it_is_called(tmp_path, name):
    home = fresh_home(tmp_path)
    renamed(home, name)
    desk = visitor(home)
    answer = desk.get("/")
    text = whole(answer)
    if answer.status_code == 400:  # a name that no department may have is told with its line
        assert "department.toml" in text
        return
    assert html.escape(name) in text.replace("&#39;", "&#x27;")
    week = desk.get(url("class", name, "week", "2026-11-30"))
    assert week.status_code == 200, week.text
    for link in {*links(whole(week)), *links(text)}:
        assert desk.get(link).status_code in (200, 405), link  # 405: where a form goes


def test_html_in_a_departments_names_is_text(home):
    path = home / "department.toml"
    bad = "<script>alert(1)</script>"
    text = path.read_text().replace("Larkhythe School", bad).replace("Sharing in a ratio", bad)
    path.write_text(text)
    desk = visitor(home)
    for where in ("/", "/class/8K/week/2026-11-30", PAGE, f"{PAGE}/board", f"{PAGE}/record"):
        assert bad not in whole(desk.get(where))


DAMAGED = (
    b"",
    b"{",
    b"\xff\xfe",
    b"[]",
    b"null",
    b"{}",
    b'{"version": 1}',
    b'{"version": 99, "versions": []}',
    b'{"made_by": "elsewhere", "questions": [1, 2, 3]}',
    b'{"versions": [{"items": [{}]}]}',
    b'{"versions": [{"letter": "A", "items": [null]}], "bands": [], "lesson": {}}',
    b'{"versions": {"A": 1}, "bands": 3}',
)


@pytest.mark.parametrize("content", each(DAMAGED, 4))
def test_a_pack_that_is_damaged_or_from_elsewhere_is_told(home, content):
    (home / PACK).write_bytes(content)
    desk = visitor(home)
    for more in ("", "/board", "/count", "/record"):
        whole(desk.get(PAGE + more))
    whole(desk.get("/"))
    whole(desk.get("/class/8K/week/2026-11-30"))
    whole(desk.post(f"{PAGE}/record", data={"how": "bands", "band-0": "1"}))
    whole(desk.post(f"{PAGE}/change", data={"do": "length", "questions": "6"}))


PARTS = ["versions", "bands", "lesson", "versions.0.items", "versions.0.letter", "bands.0.task"]
PARTS += [f"versions.0.items.0.{name}" for name in ("prompt", "key", "steps", "source", "address")]
PARTS += ["versions.0.items.0.misconceptions", "bands.0.shape", "bands.0.lowest", "school"]


@pytest.mark.parametrize(
    ("part", "value"), each(itertools.product(PARTS, (None, 7, "x", [], ["x"], {})), 13)
)
def test_a_pack_with_a_part_of_another_kind_is_told(home_of_packs, part, value):
    home, data = home_of_packs
    changed = json.loads(data)
    *steps, last = [int(step) if step.isdigit() else step for step in part.split(".")]
    at = changed
    for step in steps:
        at = at[step]
    at[last] = value
    (home / PACK).write_text(json.dumps(changed))
    desk = visitor(home)
    for more in ("", "/board", "/count", "/record"):
        whole(desk.get(PAGE + more))


@pytest.fixture(scope="module")
def home_of_packs(planned_home, tmp_path_factory):
    home = tmp_path_factory.mktemp("packs") / "larkhythe"
    shutil.copytree(planned_home, home)
    return home, (home / PACK).read_text()


def test_a_plan_that_goes_is_a_week_that_is_not_planned(desk, home):
    desk.get(PAGE)
    shutil.rmtree(home / "plans")
    assert "Plan this week" in whole(desk.get("/class/8K/week/2026-11-30"))
    whole(desk.get(PAGE))
    for form in ({"do": "length", "questions": "6"}, {"do": "never", "address": "x/y/1"}):
        answer = desk.post(f"{PAGE}/change", data=form)
        assert answer.status_code in (400, 404)
        assert "plan" in whole(answer)


@pytest.mark.parametrize(
    "where",
    [
        "/class/8K/week/2026-12-28",  # holidays
        left("/class/8K/week/2027-08-09"),  # after the year
        left("/class/8K/week/2020-01-06"),  # before it
        "/class/8K/week/0001-01-01",
        "/class/8K/week/9999-12-31",
    ],
)
def test_a_week_without_lessons_is_a_page(desk, where):
    text = whole(desk.get(where))
    assert "no lessons in this week" in text or "is no day" in text or "No lesson" in text
    for link in links(text):
        whole(desk.get(link))
    whole(desk.post(f"{where}/plan"))


@pytest.mark.parametrize("day", ["2027-07-30", "2026-08-01", "2030-01-01"])
def test_the_first_page_stands_at_either_end_of_the_year(desk, monkeypatch, day):
    monkeypatch.setenv("ITEMBANK_TODAY", day)
    for where in ("/", "/class/8K", "/class/7M"):
        whole(desk.get(where))


def test_a_class_without_scheme_or_lessons_hides_no_other(home):
    path = home / "department.toml"
    text = path.read_text()
    more = '\n[[classes]]\nname = "10X"\nyear = 10\ntitle = "No scheme"\n'
    more += 'topics = ["ratio.share"]\n'
    path.write_text(text + more)
    desk = visitor(home)
    first = whole(desk.get("/"))
    assert "8K" in first
    for where in ("/class/10X", "/class/10X/week/2026-11-30", "/class/10X/lesson/2026-11-30/1"):
        whole(desk.get(where))
    whole(desk.post("/class/10X/week/2026-11-30/plan"))


@only_whole
def test_two_lessons_on_one_day_keep_apart(home, monkeypatch):
    path = home / "department.toml"
    path.write_text(path.read_text().replace('"Mon 1", "Tue 3"', '"Mon 1", "Mon 5", "Tue 3"'))
    desk = visitor(home)
    assert desk.post("/class/8K/week/2026-12-07/plan").status_code == 200
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-12-07")
    pages = [f"/class/8K/lesson/2026-12-07/{period}" for period in (1, 5)]
    for number, page in enumerate(pages):
        assert whole(desk.get(page)).count('class="card"') == 8
        answer = desk.post(f"{page}/record", data={"how": "bands", "band-0": str(9 + number)})
        assert "Recorded" in whole(answer)
    for number, page in enumerate(pages):
        assert f"{9 + number} pupils" in whole(desk.get(page))


@pytest.mark.parametrize(
    "where",
    [
        "/" + "a" * 8_000,
        "/class/" + quote("ä" * 2_000),
        "/class/8K%0d%0aset-cookie:%20a=b",
        "/class/8K%00",
        "/class/%ff%fe",
        "/class/8K/week/2026-11-30%0d%0ax: y",
        "/class/8K/lesson/2026-11-30/" + "1" * 5_000,
        f"{PAGE}/others?address=" + "a" * 8_000,
        f"{PAGE}/others?address=%ff",
        f"{PAGE}/board?version=%ff&stage=%00&minutes=" + "9" * 5_000,
        "/?said=" + "x" * 8_000,
        "/packs/" + "a" * 5_000 + "/starter.pdf",
        "/overview/" + "a" * 5_000 + ".pdf",
        "/static/" + "a" * 5_000,
    ],
)
def test_an_address_that_makes_no_sense_is_a_plain_page(looking, where):
    answer = looking.get(where, follow_redirects=False)
    assert answer.status_code < 500, answer.text
    assert "set-cookie" not in answer.headers
    assert "x" not in answer.headers


@pytest.mark.parametrize(
    ("kind", "content"),
    [
        ("application/x-www-form-urlencoded", b"%ff%fe=%zz&do&&=&do=%00"),
        ("application/x-www-form-urlencoded", b"&".join(b"a%d=1" % n for n in range(5_000))),
        ("multipart/form-data; boundary=x", b"--x\r\n"),
        ("multipart/form-data; boundary=x", b"--y--"),
        ("multipart/form-data", b"--x--"),
        (
            "multipart/form-data; boundary=x",
            b"--x\r\ncontent-disposition: form-data\r\n\r\nv\r\n--x--",
        ),
        (
            "multipart/form-data; boundary=x",
            b'--x\r\ncontent-disposition: form-data; name="do"; filename="a"\r\n\r\nv\r\n--x--\r\n',
        ),
        ("application/json", b'{"do": "never"}'),
        ("text/plain", b"do=never"),
    ],
)
def test_a_form_that_makes_no_sense_is_a_plain_page(looking, kind, content):
    answer = looking.post(f"{PAGE}/change", content=content, headers={"content-type": kind})
    assert answer.status_code in (400, 413)
    assert OWN_FAULT not in answer.text


def test_a_form_in_pieces_is_read_whole(desk, home):
    pieces = iter([b"do=len", b"gth&quest", b"ions=6"])
    headers = {"content-type": "application/x-www-form-urlencoded"}
    answer = desk.post(f"{PAGE}/change", content=pieces, headers=headers)
    assert answer.status_code == 200
    assert whole(answer).count('class="card"') == 6


READERS = cases(12, 200, 200)
ROUNDS = 1


@in_whole
def test_many_readers_and_one_writer(home):
    """Many read while one changes the plan again and again: every page is whole."""
    desk = visitor(home)
    wrong = []
    gate = threading.Barrier(READERS + 1)
    pages = (PAGE, "/", "/class/8K/week/2026-11-30", f"{PAGE}/board")

    def read(number):
        gate.wait(60)
        for turn in range(ROUNDS):
            try:
                answer = desk.get(pages[(number + turn) % len(pages)])
                if answer.status_code != 200 or not answer.text.rstrip().endswith("</html>"):
                    wrong.append((answer.status_code, answer.text[-300:]))
                elif "That could not be done" in answer.text:
                    wrong.append(answer.text)
            except Exception as error:
                wrong.append(error)

    with desk:  # one loop for all, as at the real desk
        readers = [threading.Thread(target=read, args=(n,), daemon=True) for n in range(READERS)]
        for reader in readers:
            reader.start()
        gate.wait(60)
        for length in (6, 7, 8):
            form = {"do": "length", "questions": str(length)}
            assert desk.post(f"{PAGE}/change", data=form).status_code == 200
        for reader in readers:
            reader.join(120)
    assert not any(reader.is_alive() for reader in readers)
    assert not wrong, wrong[:3]
    assert not list(home.rglob("*.lock"))
    assert len(json.loads((home / PACK).read_text())["versions"][0]["items"]) == 8
