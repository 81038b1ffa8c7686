"""A department with a planned week, and a visitor of its desk."""

import os
import shutil
from pathlib import Path

import pytest
from anyio.from_thread import start_blocking_portal
from starlette.testclient import TestClient

from itembank.desk.replying.desk import Desk
from itembank.desk.serving.application import application
from itembank.files.shipped import shipped_folder
from tests.outlined import outlined

USUAL_DAY = "2026-11-28"
HOST = "127.0.0.1:8417"
BASE = f"http://{HOST}"


@pytest.fixture(autouse=True)
def on_day(monkeypatch):
    monkeypatch.setenv("ITEMBANK_TODAY", USUAL_DAY)


@pytest.fixture(autouse=True, scope="module")
def _here(one_core, pages_outlined, proved_once):
    """Let the desk do its work in this process, prove nothing twice, and draw no pack's pages."""


@pytest.fixture(autouse=True, scope="session")
def _loop():
    """Have one loop answer all visitors, as at the real desk; each request would begin its own."""
    with start_blocking_portal() as portal, pytest.MonkeyPatch.context() as patch:
        patch.setattr(TestClient, "portal", portal)
        yield


def fresh_home(at: Path) -> Path:
    """Return a copy of the demo department in a folder of its own."""
    home = at / "larkhythe"
    shutil.copytree(
        shipped_folder() / "larkhythe", home, ignore=shutil.ignore_patterns("plans", "*.sqlite3")
    )
    return home


def visitor(home: Path) -> TestClient:
    """Return a browser at the desk of a department, whose forms come from its own pages."""
    return TestClient(
        application(Desk(home, home), {HOST}),
        base_url=BASE,
        headers={"origin": BASE},
        raise_server_exceptions=False,
    )


@pytest.fixture(scope="session")
def planned_home(tmp_path_factory):
    """Make the demo department with 8K's week of 30 November planned and built; do not change it.

    The fixture is shared: `home` is a copy for a test of its own.
    """
    home = fresh_home(tmp_path_factory.mktemp("planned"))
    with outlined(), pytest.MonkeyPatch.context() as patch:
        patch.setenv("ITEMBANK_TODAY", USUAL_DAY)
        patch.setattr(os, "sched_getaffinity", lambda _: {0}, raising=False)
        answer = visitor(home).post("/class/8K/week/2026-11-30/plan", follow_redirects=False)
    assert answer.status_code == 303, answer.text
    return home


@pytest.fixture
def home(planned_home, tmp_path):
    copy = tmp_path / "larkhythe"
    shutil.copytree(planned_home, copy)
    return copy


@pytest.fixture
def desk(home):
    return visitor(home)


@pytest.fixture
def looking(planned_home):
    """Return a visitor who only looks: the department is shared."""
    return visitor(planned_home)
