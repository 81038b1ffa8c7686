"""The desk starts where it is told to, at a port of its own, and stops when it is told to."""

import socket
import sys

import pytest

from installed.open_desk import first_page
from itembank.desk.serving.start import LOOPBACK, USUAL_PORT, desk_at, listening
from itembank.errors import ItembankError
from tests.desk.conftest import USUAL_DAY


def test_a_port_that_is_taken_is_told_and_another_is_found():
    with listening(None) as first:
        taken = first.getsockname()[1]
        assert first.getsockname()[0] == LOOPBACK
        with pytest.raises(ItembankError, match=f"port {taken}"):
            listening(taken)
        with listening(None) as second:
            assert second.getsockname()[1] != taken


@pytest.mark.parametrize("port", [65_536, 10**9, -1])
def test_a_port_that_cannot_be_is_told(port):
    with pytest.raises(ItembankError, match="cannot listen"):
        listening(port)


def test_the_usual_ports_are_ones_that_anybody_may_use():
    assert 1024 < USUAL_PORT < 49_152  # RFC 6335: below the ports for passing use
    with listening(None) as found:
        assert isinstance(found, socket.socket)


def test_packs_go_where_the_terminal_would_put_them(tmp_path):
    (tmp_path / "output").mkdir()
    assert desk_at(tmp_path).packs == tmp_path / "output"
    assert desk_at(tmp_path, tmp_path / "mine").packs == tmp_path / "mine"


def test_the_command_opens_a_desk_that_can_be_read(home):
    import os

    environment = os.environ | {"ITEMBANK_TODAY": USUAL_DAY}
    command = [sys.executable, "-m", "itembank.cli", "desk", "--department", str(home)]
    assert "Larkhythe School" in first_page(command, home, environment)
