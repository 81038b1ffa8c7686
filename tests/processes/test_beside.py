"""Work beside: its result, its faults and its end, and nothing of it left over."""

import os
import signal
import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.errors import CheckFailed, ItembankError
from itembank.files.faults import Fault, FileFaults
from itembank.processes import machine
from itembank.processes.beside import Beside
from tests.depth import cases

ANYTHING = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text() | st.binary(max_size=50),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
)


@given(value=ANYTHING)
@settings(max_examples=cases(8, 25))
def test_what_comes_of_it_comes_back(value):
    with Beside(lambda: (os.getpid(), value)) as work:
        process, found = work.result()
    assert found == value
    assert process != os.getpid()


def test_much_comes_back_too():
    with Beside(lambda: b"x" * 5_000_000) as work:
        assert len(work.result()) == 5_000_000


@pytest.mark.parametrize(
    ("error", "kind", "words"),
    [
        (ItembankError("no such seat"), ItembankError, "no such seat"),
        (CheckFailed("it comes to 3"), CheckFailed, "it comes to 3"),
        (FileFaults([Fault("s.csv", 3, "no seat")]), FileFaults, "s.csv, line 3: no seat"),
        (KeyError("x"), RuntimeError, "KeyError: 'x'"),
        (SystemExit(0), RuntimeError, "SystemExit"),
    ],
)
def test_what_it_raises_is_raised_here(error, kind, words):
    def work():
        raise error

    with Beside(work) as beside, pytest.raises(kind, match=words) as raised:
        beside.result()
    assert type(raised.value) is kind
    assert raised.value.args == (str(raised.value),)


@pytest.mark.parametrize("end", [lambda: os._exit(0), lambda: os.kill(os.getpid(), signal.SIGKILL)])
def test_a_sudden_end_is_no_result(end):
    with Beside(end) as work, pytest.raises(RuntimeError, match="sudden end"):
        work.result()


def test_what_cannot_be_sent_is_no_result():
    with Beside(lambda: lambda: 1) as work, pytest.raises(RuntimeError):
        work.result()


def test_it_never_outlives_its_owner():
    with Beside(lambda: time.sleep(600)) as work:
        child = work._child.pid
    with pytest.raises(ChildProcessError):
        os.waitpid(child, 0)
    with pytest.raises(ProcessLookupError):
        os.kill(child, 0)


def test_on_one_processor_it_is_done_here_when_asked_for(monkeypatch):
    monkeypatch.setattr(machine, "cores", lambda: 1)
    done = []
    with Beside(lambda: done.append(os.getpid())) as work:
        assert done == []
        work.result()
    assert done == [os.getpid()]
