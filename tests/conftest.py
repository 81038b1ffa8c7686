"""What holds for every test: none fails because the machine is slow, or by the day's luck.

The README's test command draws the same random cases on every run, so that a commit passes or
fails for what it changed. `make explore` draws new ones: run it to look for what nobody met yet.
How much of all there is a test looks at in each of them is told by `tests/depth.py`.
"""

import gc
import os
import shutil
import signal
import tempfile
from functools import cache, partial
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

from tests.browser import browser as browser
from tests.outlined import outlined

always = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow], print_blob=True)
# The same cases find nothing new when they are drawn again, so there are fewer of them, and
# fewest where they are drawn most often.
settings.register_profile("same", always, derandomize=True, max_examples=25)
settings.register_profile("whole", always, derandomize=True, max_examples=50)
settings.register_profile("new", always, derandomize=False, max_examples=100)
settings.load_profile("same")

# A shell keeps Ctrl-C from what it runs in the background, and so from the commands begun here.
if signal.getsignal(signal.SIGINT) is signal.SIG_IGN:
    signal.signal(signal.SIGINT, signal.default_int_handler)

# As the command line does, which says why.
gc.set_threshold(100_000)

# Stores wait for the disk at each record, thousands of times. The tests end processes, and no
# machine loses its power, so that a folder in memory serves as well where there is room.
MEMORY = "/dev/shm"
if os.access(MEMORY, os.W_OK) and shutil.disk_usage(MEMORY).free > 4 << 30:
    os.environ.setdefault("PYTEST_DEBUG_TEMPROOT", MEMORY)

# The person's own settings are not the tests' business: theirs stand in a folder of their own, and
# so does the index of banks, which waits for the disk as well.
_own = tempfile.TemporaryDirectory(
    prefix="itembank-own-", dir=os.environ.get("PYTEST_DEBUG_TEMPROOT")
)
os.environ["XDG_CONFIG_HOME"] = _own.name
os.environ["ITEMBANK_INDEX"] = os.path.join(_own.name, "banks")
os.environ["ITEMBANK_INITIALS"] = ""


def pytest_configure(config: pytest.Config) -> None:
    """Name the marks, which are told by `tests/depth.py`."""
    config.addinivalue_line("markers", "whole: looks at a part in `make test`, at all in its whole")
    config.addinivalue_line("markers", "only_whole: run by `make whole` alone")


MARKING = ("tests.depth", "MEASURED")
"""What a file imports whose tests are marked; a number of cases is no mark."""


@cache
def _marks(path: Path) -> bool:
    """Tell whether a file has something for `make whole`; only such files are read there."""
    text = path.read_text("utf-8").replace("from tests.depth import cases\n", "")
    return any(name in text for name in MARKING)


def pytest_ignore_collect(collection_path: Path, config: pytest.Config) -> bool | None:
    """Read no file for `make whole` that has nothing for it; none can have it otherwise."""
    if config.option.markexpr != "whole" or collection_path.suffix != ".py":
        return None
    return not _marks(collection_path) or None


def pytest_itemcollected(item: pytest.Item) -> None:
    """Let one mark choose what `make whole` runs."""
    if item.get_closest_marker("only_whole"):
        item.add_marker("whole")
    if item.get_closest_marker("whole") and not _marks(item.path):
        raise pytest.UsageError(f"{item.path} has marks that `make whole` would not look for.")


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Leave out of `make test` what only `make whole` runs."""
    from tests.depth import WHOLE

    left = [] if WHOLE else [item for item in items if item.get_closest_marker("only_whole")]
    if left:
        config.hook.pytest_deselected(items=left)
        items[:] = [item for item in items if not item.get_closest_marker("only_whole")]


def pytest_collection_finish() -> None:
    """Leave what was collected, which stays to the end, out of every later look for garbage."""
    _draw_no_constants()
    gc.collect()
    gc.freeze()


def _draw_no_constants() -> None:
    """Draw the same cases whatever else is tested in this process, except where they are new.

    Hypothesis draws numbers and words that stand in the code, too: in that of all modules which
    happen to be loaded, and it parses each of them for it. There is no setting for that, so what
    older and later versions lack of this is left alone.
    """
    from tests.depth import NEW

    try:
        from hypothesis.internal.conjecture import providers
    except ImportError:  # the lowest version that is allowed draws no such constants
        return
    if not NEW and hasattr(providers, "_get_local_constants"):
        providers._get_local_constants = lambda: providers._local_constants


@pytest.fixture(scope="module")
def one_core():
    """Be a machine with one core: what would be done in other processes is done in this one.

    There it finds what earlier tests have loaded and worked out. What other processes do
    differently is held by the tests of processes, and by those that ask for `two_cores`.
    """
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(os, "sched_getaffinity", lambda _: {0}, raising=False)
        yield


DRAWN = 64
"""How many packs' pages are kept: more than the tests of one file ask for."""
_drawn: dict[str, dict[str, bytes]] = {}


@pytest.fixture(scope="module")
def drawn_once():
    """Draw each pack once, however many commands ask for its pages.

    The pages are a function of the pack's data, which tests of the pages hold: the same pack
    gives the same bytes, and what is read from `pack.json` draws as what was made.
    """
    from itembank.pages import draw

    def drawers(pack):
        data = pack.model_dump_json()
        files = _drawn.pop(data, {})
        _drawn[data] = files  # the last asked for stands last
        while len(_drawn) > DRAWN:
            del _drawn[next(iter(_drawn))]
        return {name: partial(once, files, name, drawer) for name, drawer in _really(pack).items()}

    def once(files, name, drawer, pack):
        if name not in files:
            files[name] = drawer(pack)
        return files[name]

    _really = draw.drawers
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(draw, "drawers", drawers)
        yield


@pytest.fixture(scope="module")
def pages_outlined(drawn_once):
    """Draw no pages of packs, for tests that look at packs, plans and results and open no PDF.

    On all cases (`make cover`, `make explore`) these draw, too.
    """
    with outlined():
        yield


_proved: dict[object, list[str]] = {}
"""What the proofs of packs' questions found, by what proved which question."""


@pytest.fixture(scope="module")
def proved_once():
    """Prove each question of a pack once, however many packs ask it.

    A proof is a function of the question alone, which tests of the roads hold; that no pack is
    made without one is held by `tests/packs`, where each is made anew.
    """
    from itembank.packs import pack_proof

    def faults(items, prove):
        # Whoever puts another road in place of one of these has it asked.
        roads = prove, pack_proof.prove_fast, pack_proof.prove_symbolic, pack_proof._prove_anew
        found = []
        for item in items:
            if (roads, item) not in _proved:
                _proved[roads, item] = _really((item,), prove)
            found += _proved[roads, item]
        return found

    _really = pack_proof._faults
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(pack_proof, "_faults", faults)
        yield


@pytest.fixture
def two_cores(monkeypatch):
    """Be a machine with two cores, whatever this one has."""
    monkeypatch.setattr(os, "sched_getaffinity", lambda _: {0, 1}, raising=False)
