"""Stores to test against: a file each, and one PostgreSQL server that these tests start."""

import os
import shutil
import subprocess
import tempfile
from pathlib import Path

import pytest

from itembank.records.store import store_tables as tables
from itembank.records.store.store import open_store


@pytest.fixture
def store(tmp_path):
    with open_store(str(tmp_path / "results.sqlite3")) as one:
        yield one


class Server:
    """A PostgreSQL server in a folder of its own, reached by a socket there and nowhere else."""

    def __init__(self, programs, folder, user):
        self.programs, self.folder, self.user = programs, folder, user
        self._run("initdb", "-D", folder / "data", "-U", "itembank", "--auth=trust", "-E", "UTF8")

    def _run(self, name, *arguments):
        # The server refuses to run as root, so root lends it another user.
        words = [str(self.programs / name), *map(str, arguments)]
        done = subprocess.run(
            words, user=self.user, capture_output=True, text=True, cwd=self.folder, check=False
        )
        assert done.returncode == 0, done.stdout + done.stderr

    def start(self):
        options = f"-k {self.folder} -c listen_addresses='' -c fsync=off"
        log = self.folder / "log"
        self._run("pg_ctl", "-D", self.folder / "data", "-l", log, "-w", "-o", options, "start")

    def stop(self, how="immediate"):
        self._run("pg_ctl", "-D", self.folder / "data", "-w", "-m", how, "stop")

    @property
    def url(self):
        return f"postgresql+psycopg://itembank@/postgres?host={self.folder}"


def _programs():
    found = shutil.which("initdb")
    if found:
        return Path(found).resolve().parent
    there = sorted(Path("/usr/lib/postgresql").glob("*/bin/initdb"))
    return there[-1].parent if there else None


@pytest.fixture(scope="session")
def server():
    """Start a PostgreSQL server for these tests, and stop it after them."""
    programs = _programs()
    if programs is None:
        pytest.skip("no PostgreSQL server is installed (Debian: apt-get install postgresql)")
    user = None
    if os.name == "posix" and os.geteuid() == 0:
        import pwd

        names = {one.pw_name for one in pwd.getpwall()}
        user = next((name for name in ("postgres", "nobody") if name in names), None)
        if user is None:
            pytest.skip("root may not run a PostgreSQL server, and there is no user to lend it")
    # A short path: a socket's is at most 107 bytes long.
    folder = Path(tempfile.mkdtemp(prefix="pg-"))
    if user:
        shutil.chown(folder, user)
    one = Server(programs, folder, user)
    one.start()
    yield one
    one.stop("fast")
    shutil.rmtree(folder, ignore_errors=True)


@pytest.fixture
def shared(server):
    """Give a store on the server, emptied."""
    with open_store(server.url) as one, one.writing() as connection:
        tables.metadata.drop_all(connection)
    with open_store(server.url) as one:
        yield one
