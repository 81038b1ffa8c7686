"""The desk open to a network: a password for everybody, and nothing of it without."""

from functools import partial

import argon2
import pytest
from starlette.testclient import TestClient

from itembank.desk.replying.desk import Desk
from itembank.desk.serving.application import Network, application
from itembank.desk.serving.visitors import MOST_TRIES, Password
from itembank.errors import ItembankError

PORT = 8417
WORDS = "gravel lantern otter"


@pytest.fixture(scope="module")
def password():
    """Have a password that is soon tried: what makes guessing dear makes each visit dear."""
    with pytest.MonkeyPatch.context() as patch:
        quick = partial(argon2.PasswordHasher, time_cost=1, memory_cost=64)
        patch.setattr(argon2, "PasswordHasher", quick)
        return Password(WORDS)


@pytest.fixture
def guest(planned_home, password):
    network = Network(PORT, password)
    app = application(Desk(planned_home, planned_home), {f"localhost:{PORT}"}, network=network)
    base = f"http://192.168.1.20:{PORT}"
    return TestClient(app, base_url=base, headers={"origin": base})


def enter(guest, word):
    return guest.post("/enter", data={"password": word}, follow_redirects=False)


@pytest.mark.parametrize(
    "path", ["/", "/class/8K", "/packs/8K-2026-11-30/starter.pdf", "/class/8K/lesson/2026-11-30/1"]
)
def test_nothing_is_shown_without_the_password(guest, path):
    answer = guest.get(path, follow_redirects=False)
    assert answer.status_code == 303
    assert answer.headers["location"] == "/enter"
    assert guest.get("/enter").status_code == 200
    assert "8K" not in guest.get(path).text


def test_whoever_gives_it_comes_in(guest):
    answer = enter(guest, WORDS)
    cookie = answer.headers["set-cookie"].lower()
    assert "httponly" in cookie
    assert "samesite=strict" in cookie
    assert "Larkhythe" in guest.get("/").text


def test_a_forged_token_opens_nothing(guest):
    for forged in ("", "x", "a=b; itembank-desk=", 'itembank-desk="'):
        answer = guest.get("/", headers={"cookie": forged}, follow_redirects=False)
        assert answer.status_code == 303


def test_guessing_is_slowed(guest, password, monkeypatch):
    clock = [1000.0]
    monkeypatch.setattr("itembank.desk.serving.visitors.time.monotonic", lambda: clock[0])
    for _ in range(MOST_TRIES):
        assert "That is not the password" in enter(guest, "otter lantern").text
    assert "Too many wrong passwords" in enter(guest, WORDS).text
    clock[0] += 31
    assert enter(guest, WORDS).status_code == 303


def test_names_from_elsewhere_are_refused_in_a_network_too(guest):
    for host in ("evil.example", f"evil.example:{PORT}", "192.168.1.20:80", "192.168.1.20"):
        assert guest.get("/enter", headers={"host": host}).status_code == 421


def test_a_short_password_is_refused():
    with pytest.raises(ItembankError, match="at least 10 characters"):
        Password("gravel")


def test_the_password_is_kept_as_a_hash_alone(password):
    assert WORDS not in repr(vars(password))
    assert "$argon2id$" in repr(vars(password))


def test_whoever_knows_a_very_long_password_comes_in():
    long = WORDS * 60
    assert Password(long).token_for(long)
    with pytest.raises(ItembankError, match="not the password"):
        Password(long).token_for(WORDS)
