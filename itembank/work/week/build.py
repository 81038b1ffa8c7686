"""Builds the packs of a week beside the rest: in a second process that splits the work in two.

That process is begun first of all. While the week is planned, which loads numpy and HiGHS, it
loads what every pack needs, sympy and the drawing, so that of the two loads only one is waited
for.
"""

from __future__ import annotations

import contextlib
import os
import signal
from collections.abc import Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from multiprocessing.connection import Connection
from types import TracebackType
from typing import TYPE_CHECKING, Any

from itembank.errors import CheckFailed, ItembankError

if TYPE_CHECKING:
    from itembank.packs.build import PackRequest

Files = Mapping[str, bytes]


class Builder:
    """The process that builds packs.

    Use it as a context manager, so that it never outlives its work::

        with Builder() as builder:
            ...                       # plan the week
            builder.start(requests)
            ...                       # draw the overview
            packs = builder.result()

    Where the system cannot fork, or has one processor, the packs are built here when asked for.
    """

    def __init__(self) -> None:
        self._requests: Sequence[PackRequest] = ()
        self._process: Any = None
        if hasattr(os, "fork") and (os.cpu_count() or 1) > 1:
            context = get_context("fork")
            self._ours, theirs = context.Pipe()
            self._process = context.Process(target=_serve, args=(theirs, self._ours))
            self._process.start()
            theirs.close()
            # It leads a group of its own, so that those it begins end with it, and Ctrl-C at the
            # keyboard is for this process alone. Both say so, whichever comes first.
            with contextlib.suppress(OSError):
                os.setpgid(self._process.pid, self._process.pid)

    def start(self, requests: Sequence[PackRequest]) -> None:
        """Have these packs built; each key is proved by both roads, and nothing is written."""
        self._requests = requests
        if self._process is not None:
            self._ours.send(list(requests))

    def result(self) -> list[Files]:
        """Return the files of every pack.

        Raises:
            ItembankError: a pack cannot be made.
            CheckFailed: a key is wrong.
        """
        if self._process is None:
            return [build_one(request) for request in self._requests]
        try:
            kind, found = self._ours.recv()
        except EOFError:
            raise RuntimeError("the process that builds packs came to a sudden end") from None
        if kind != "packs":
            raise {"check": CheckFailed, "fault": ItembankError}.get(kind, RuntimeError)(found)
        return list(found)

    def __enter__(self) -> Builder:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._process is None:
            return
        self._ours.close()
        if kind is not None or not self._requests:
            with contextlib.suppress(ProcessLookupError, PermissionError):
                os.killpg(self._process.pid, signal.SIGKILL)
        self._process.join()


def _serve(line: Connection, ours: Connection) -> None:
    """Load what packs need, then build what is asked for until nobody asks any more."""
    ours.close()
    with contextlib.suppress(OSError):
        os.setpgid(0, 0)

    while True:
        try:
            requests = line.recv()
        except EOFError:
            return
        answer: tuple[str, Any]
        try:
            answer = ("packs", _build_all(requests))
        except CheckFailed as error:
            answer = ("check", str(error))
        except ItembankError as error:
            answer = ("fault", str(error))
        except Exception as error:  # told where a person can see it
            answer = ("broken", f"{type(error).__name__}: {error}")
        with contextlib.suppress(BrokenPipeError):
            line.send(answer)


def _build_all(requests: Sequence[PackRequest]) -> list[Files]:
    processes = min(len(requests), os.cpu_count() or 1)
    if processes < 2:
        return [build_one(request) for request in requests]
    with ProcessPoolExecutor(processes, mp_context=get_context("fork")) as pool:
        made = [pool.submit(build_one, request) for request in requests]
        try:
            return [one.result() for one in made]
        finally:
            pool.shutdown(cancel_futures=True)


def build_one(request: PackRequest) -> Files:
    """Return the files of one pack."""
    from itembank.packs.build import start_pack
    from itembank.packs.data.pack_files import PACK_FILE, pack_json
    from itembank.pages.draw import draw_pack

    started = start_pack(request)
    with started.proof:
        files = {**draw_pack(started.pack), PACK_FILE: pack_json(started.pack)}
        started.proof.result()
    return files
