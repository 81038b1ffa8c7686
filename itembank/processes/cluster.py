"""Work on a cluster of machines, by Dask distributed; what it cannot do is done on this one.

What travels are pieces as data and the name of what is done with them (:mod:`.parcel`), and the
same comes back. A worker takes part only if it has the same code as this machine
(:mod:`.same_code`). A worker that is ended loses nothing: others do its pieces. Where there is no
scheduler, no worker, or none any more, all that is left is done here, and that is said.

An address of ``tls://`` is reached by the certificates that Dask's own settings name.
"""

from __future__ import annotations

import contextlib
import logging
import re
import threading
import warnings
from collections.abc import Callable, Iterator, Sequence
from types import TracebackType
from typing import Any, Self, TypeVar

from itembank.errors import ItembankError
from itembank.processes.answer import Faults
from itembank.processes.cluster_run import Run
from itembank.processes.cluster_workers import Workers, in_a_line
from itembank.processes.lost import Results
from itembank.processes.process_kinds import best_kind
from itembank.processes.work_place import ThisMachine

P = TypeVar("P")
R = TypeVar("R")

CONNECT = 10.0
"""Seconds in which a scheduler has to answer."""
_ADDRESS = re.compile(r"(?:tcp|tls)://(?:\[[0-9A-Fa-f:.%]+\]|[^\s/:\[\]]+):(\d{1,5})/?")


def check_address(address: str) -> str:
    """Return the address of a scheduler as it was given.

    >>> check_address("tcp://10.0.0.5:8786")
    'tcp://10.0.0.5:8786'

    Raises:
        ItembankError: it is none.
    """
    found = _ADDRESS.fullmatch(address)
    if found is None or not 0 < int(found[1]) < 65536:
        raise ItembankError(
            f"‘{address}’ is no address of a cluster's scheduler. Write it as "
            "tcp://HOST:PORT, or tls://HOST:PORT."
        )
    return address


class Cluster:
    """The workers that a scheduler knows, as a place where pieces of work are done.

    Use it as a context manager, so that it is left when the work is over. `remark` is called
    with what somebody should know, a sentence each. What the cluster does not do is done on
    `processes` of this machine.

    Raises
    ------
    ItembankError
        The address is none, or Dask distributed is not installed.
    """

    def __init__(
        self, address: str, remark: Callable[[str], None], processes: int | None = None
    ) -> None:
        self.address = check_address(address)
        self._remark, self._processes = remark, processes
        self._client: Any = None
        self._tried = False
        try:
            import distributed  # noqa: F401
        except ImportError:
            raise ItembankError(
                "Work on a cluster needs Dask distributed, which is not installed here. "
                "To install it: pip install 'itembank[cluster]'."
            ) from None

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._leave()

    def each(
        self,
        how: Callable[[P], R],
        pieces: Sequence[P],
        *,
        longest: float | None = None,
        few: int = 1,
        loads: Sequence[str] = (),
    ) -> Results[R]:
        """Yield the place and the result of every piece, as they come; see :func:`.pool.each`.

        `how` has to be a function of the tool's own, and the pieces data.
        """
        left: Sequence[int] = range(len(pieces))
        faults = Faults()
        if len(pieces) > few and self._connected():
            run = Run(self._client, self._workers, how, pieces, longest)
            try:
                yield from run.work()
            finally:
                run.cancel()
            left, faults = run.left, run.faults
            if run.gave_up:
                self._remark(f"{self._workers.why_none()} What is left is done on this machine.")
                self._leave()
            elif said := self._workers.new_others():
                self._remark(said)
            if run.trouble:
                self._remark(
                    f"The cluster could not do all of it, so this machine does ({run.trouble})."
                )
        rest = [pieces[place] for place in left]
        here = self._here().each(how, rest, longest=longest, few=few, loads=loads)
        try:
            for place, result in here:
                yield left[place], result
        finally:
            here.close()
        faults.tell()

    def _here(self) -> ThisMachine:
        if threading.active_count() == 1:
            return ThisMachine(self._processes, best_kind())
        from itembank.processes.spawned import Spawned

        return ThisMachine(self._processes, Spawned)  # a copy of a process with threads may hang

    def _connected(self) -> bool:
        """Tell whether the scheduler can be used; it is asked for once."""
        if self._tried:
            return self._client is not None
        self._tried = True
        from distributed import Client

        # What goes wrong is said by us, once and plainly.
        for name in ("distributed", "tornado", "asyncio"):
            logging.getLogger(name).setLevel(logging.CRITICAL + 1)
        try:
            if self.address.startswith("tls://") and not _has_certificates():
                self._remark(
                    "tls:// needs certificates, and Dask's settings on this machine name none "
                    "(distributed.comm.tls). The work is done on this machine."
                )
                return False
            with _no_warnings():
                connect: Any = Client
                self._client = connect(self.address, timeout=CONNECT, set_as_default=False)
        except Exception as error:
            why = "" if isinstance(error, OSError) else f" ({in_a_line(error)})"
            self._remark(
                f"No scheduler answers at {self.address}{why}. The work is done on this machine."
            )
        else:
            self._workers = Workers(self._client, self.address)
        return self._client is not None

    def _leave(self) -> None:
        if self._client is not None:
            self._workers.cancel()
            with contextlib.suppress(Exception), _no_warnings():
                self._client.close(timeout=5)
            self._client = None


def _has_certificates() -> bool:
    """Tell whether Dask's settings name certificates.

    Raises:
        Exception: they name what is not there.
    """
    from distributed import Security

    security: Any = Security
    return security().get_connection_args("client").get("ssl_context") is not None


@contextlib.contextmanager
def _no_warnings() -> Iterator[None]:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield
