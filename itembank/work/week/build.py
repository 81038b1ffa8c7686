"""Builds the packs of a week beside the rest: in a second process that splits the work in two.

That process is begun first of all. While the week is planned, which loads numpy and HiGHS, it
loads what every pack needs, sympy and the drawing, so that of the two loads only one is waited
for.
"""

from __future__ import annotations

import contextlib
import os
import pickle
import signal
from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor, as_completed
from multiprocessing import get_context
from multiprocessing.connection import Connection
from types import TracebackType
from typing import TYPE_CHECKING, Any

from itembank.errors import ItembankError
from itembank.processes.beside import packed

if TYPE_CHECKING:
    from itembank.planning.department.pack_request import PackRequest

Files = Mapping[str, bytes]
Progress = Callable[[int, int], None]
"""Told how many packs are done, and of how many."""


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

    def result(self, progress: Progress | None = None) -> list[Files]:
        """Return the files of every pack, and tell of each that is done.

        Raises:
            ItembankError: a pack cannot be made.
            CheckFailed: a key is wrong.
        """
        if self._process is None:
            return _one_by_one(self._requests, progress or _untold)
        while True:
            try:
                kind, found = pickle.loads(self._ours.recv_bytes())
            except EOFError:
                raise RuntimeError("the process that builds packs came to a sudden end") from None
            if kind == "packs":
                return list(found)
            if kind == "fault":
                raise found
            if kind != "done":
                raise RuntimeError(found)
            if progress is not None:
                progress(found, len(self._requests))

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

    def tell(answer: tuple[str, Any]) -> None:
        with contextlib.suppress(BrokenPipeError):
            line.send_bytes(packed(answer))

    while True:
        try:
            requests = line.recv()
        except EOFError:
            return
        answer: tuple[str, Any]
        try:
            answer = ("packs", _build_all(requests, lambda done, _: tell(("done", done))))
        except ItembankError as error:
            answer = ("fault", error)
        except Exception as error:  # told where a person can see it
            answer = ("broken", f"{type(error).__name__}: {error}")
        tell(answer)


def _untold(done: int, total: int) -> None:
    """Tell nobody."""


def _build_all(requests: Sequence[PackRequest], progress: Progress) -> list[Files]:
    processes = min(len(requests), os.cpu_count() or 1)
    if processes < 2:
        return _one_by_one(requests, progress)
    with ProcessPoolExecutor(processes, mp_context=get_context("fork")) as pool:
        made = [pool.submit(build_one, request) for request in requests]
        try:
            for done, future in enumerate(as_completed(made), 1):
                future.result()  # the first that fails ends the others
                progress(done, len(requests))
            return [future.result() for future in made]
        finally:
            pool.shutdown(cancel_futures=True)


def _one_by_one(requests: Sequence[PackRequest], progress: Progress) -> list[Files]:
    made = []
    for request in requests:
        made.append(build_one(request))
        progress(len(made), len(requests))
    return made


def build_one(request: PackRequest) -> Files:
    """Return the files of one pack."""
    from itembank.packs.build import start_pack
    from itembank.packs.data.pack_files import pack_json
    from itembank.packs.data.pack_place import PACK_FILE
    from itembank.pages.draw import draw_pack

    started = start_pack(request)
    with started.proof:
        files = {**draw_pack(started.pack), PACK_FILE: pack_json(started.pack)}
        started.proof.result()
    return files
