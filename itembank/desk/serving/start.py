"""Starts the desk: finds its place and a port, and answers until somebody stops it."""

from __future__ import annotations

import contextlib
import importlib
import os
import socket
import threading
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.errors import ItembankError

if TYPE_CHECKING:
    from itembank.desk.replying.desk import Desk
    from itembank.desk.serving.visitors import Password

LOOPBACK = "127.0.0.1"
USUAL_PORT = 8417
MOST_PORTS = 20
"""The port of the desk, and how many after it are tried before any that is free."""


LOADS = (
    "itembank.proof.sympy.sympy_road",
    "itembank.packs.build",
    "itembank.pages.draw",
    "itembank.work.week.week_run",
    "itembank.planning.choosing.topic_programme",
)
"""What proofs need: loaded once the first page is shown, before anybody asks for a proof."""


def desk_at(home: Path, packs: Path | None = None) -> Desk:
    """Return the desk of a department's folder; packs go where the terminal would put them."""
    from itembank.desk.replying.desk import Desk
    from itembank.work.places import packs_place

    home = home.absolute()
    return Desk(home, (packs or packs_place(home)).absolute())


def listening(port: int | None, on_network: bool = False) -> socket.socket:
    """Return a socket at `port`, or at the first free one from the usual.

    It is on the loopback address, which only this computer reaches, unless it is `on_network`.

    Raises:
        ItembankError: the port is taken or not ours to use, or there is none free.
    """
    ports = [port] if port is not None else [*range(USUAL_PORT, USUAL_PORT + MOST_PORTS), 0]
    for number in ports:
        found = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
        if os.name == "posix":  # on Windows it would let two programs listen at one port
            found.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            found.bind(("" if on_network else LOOPBACK, number))
            found.listen(128)
        except (OSError, OverflowError) as error:
            found.close()
            if port is not None:
                why = getattr(error, "strerror", "") or "there is no such port"
                raise ItembankError(
                    f"The desk cannot listen at port {port}: {why}. Name another port, or none.",
                    field="port",
                ) from None
        else:
            return found
    raise ItembankError("The desk found no free port on this computer.")


def serve(
    desk: Desk,
    socket_: socket.socket,
    ready: Callable[[str], object],
    password: Password | None = None,
) -> None:
    """Answer at a socket until somebody stops it; `ready` is told the address to open.

    With a `password` the desk answers the network that its socket is open to.
    """
    import uvicorn

    from itembank.desk.serving.application import Network, application
    from itembank.processes.machine import keep_to_this_process

    keep_to_this_process()
    port = socket_.getsockname()[1]
    names = {f"{LOOPBACK}:{port}", f"localhost:{port}"}
    names |= {LOOPBACK, "localhost"} if port == 80 else set()
    network = None
    if password is not None:
        network = Network(port, password)
        names.add(f"{socket.gethostname().lower()}:{port}")
    config = uvicorn.Config(
        application(desk, names, lambda: _load_beside(desk), network),
        http="h11",
        loop="asyncio",
        ws="none",
        lifespan="off",
        access_log=False,
        log_level="warning",
        server_header=False,
        timeout_graceful_shutdown=2,
    )
    ready(f"http://{LOOPBACK}:{port}/")
    with contextlib.suppress(KeyboardInterrupt):
        uvicorn.Server(config).run(sockets=[socket_])


def _load_beside(desk: Desk) -> None:
    threading.Thread(target=_load, args=(desk,), daemon=True).start()


def _load(desk: Desk) -> None:
    for name in LOADS:
        importlib.import_module(name)
    _read_banks(desk)


def _read_banks(desk: Desk) -> None:
    """Read the department's own banks, so that their first page is not waited for."""
    from itembank.desk.pages.questions import banks_of_desk
    from itembank.errors import ItembankError
    from itembank.work.bank.bank_facts import bank_facts

    for bank in banks_of_desk(desk):
        if bank.own:
            with contextlib.suppress(ItembankError, OSError):  # its own page tells what is wrong
                bank_facts(bank.folder)
