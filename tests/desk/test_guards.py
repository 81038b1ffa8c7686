"""Who may ask the desk for what: forged names, forms from elsewhere, too much, paths that climb."""

import pytest

from tests.desk.conftest import BASE, HOST

PLAN = "/class/7M/week/2026-11-30/plan"


@pytest.mark.parametrize("host", ["evil.example", "evil.example:8417", "127.0.0.1:80", ""])
def test_a_forged_name_reads_nothing(looking, host):
    answer = looking.get("/", headers={"host": host})
    assert answer.status_code == 421
    assert "Larkhythe" not in answer.text


@pytest.mark.parametrize(
    "headers",
    [
        {"origin": "http://evil.example"},
        {"origin": "null"},
        {"origin": "http://127.0.0.1:9999"},
        {"origin": "http://[not-an-address"},
        {"origin": f"http://{HOST}.evil.example"},
        {"origin": BASE, "sec-fetch-site": "cross-site"},
        {"origin": BASE, "sec-fetch-site": "same-site"},
    ],
)
def test_a_form_from_elsewhere_changes_nothing(desk, home, headers):
    answer = desk.post(PLAN, headers=headers)
    assert answer.status_code == 403
    assert not (home / "plans" / "week-7M-2026-11-30.toml").exists()


def test_a_form_that_does_not_say_where_it_comes_from_changes_nothing(desk, home):
    del desk.headers["origin"]
    assert desk.post(PLAN).status_code == 403
    assert not (home / "plans" / "week-7M-2026-11-30.toml").exists()


@pytest.mark.parametrize("method", ["PUT", "DELETE", "PATCH", "OPTIONS", "TRACE"])
def test_nothing_but_pages_and_forms(desk, method):
    assert desk.request(method, "/").status_code == 405


def test_looking_changes_nothing(desk, home):
    before = {path: path.read_bytes() for path in home.rglob("*") if path.is_file()}
    for path in ("/", "/class/8K", PLAN, "/class/8K/lesson/2026-11-30/1"):
        desk.get(path)
    after = {path: path.read_bytes() for path in home.rglob("*") if path.is_file()}
    assert after == before


def test_a_gigabyte_is_refused_before_it_is_read(desk):
    answer = desk.post(PLAN, headers={"content-length": str(10**9)}, content=b"x")
    assert answer.status_code == 413


def test_what_says_nothing_of_its_length_is_read_no_further_than_the_limit(desk):
    sent = 0

    def endless():
        nonlocal sent
        while sent < 10**8:
            sent += 65_536
            yield b"a=" + b"b" * 65_534

    headers = {"content-type": "application/x-www-form-urlencoded"}
    answer = desk.post(PLAN, content=endless(), headers=headers)
    assert answer.status_code == 413


@pytest.mark.parametrize(
    "path",
    [
        "/packs/..%2F..%2Fetc/passwd",
        "/packs/%2e%2e/department.toml",
        "/packs/8K-2026-11-30/..%2Fdepartment.toml",
        "/packs/8K-2026-11-30/pack.json",
        "/packs/8K-2026-11-30/%00.pdf",
        "/overview/..%2Fdepartment.toml",
        "/static/..%2F..%2Fplace.py",
        "/typefaces/..%2Fdraw.py",
    ],
)
def test_no_path_leads_out_of_the_packs(looking, path):
    answer = looking.get(path)
    assert answer.status_code in (400, 404)
    assert "[[classes]]" not in answer.text


def test_every_page_says_that_nothing_from_elsewhere_may_run(looking):
    for path in ("/", "/class/8K/lesson/2026-11-30/1", "/nope"):
        policy = looking.get(path).headers["content-security-policy"]
        assert "default-src 'none'" in policy
        assert "unsafe" not in policy
        assert "frame-ancestors 'none'" in policy
