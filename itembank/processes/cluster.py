"""Work on a cluster of machines, by Dask distributed; what it cannot do is done on this one.

What travels are pieces as data and the name of what is done with them (:mod:`.parcel`), and the
same comes back. A worker takes part only if it has the same code as this machine
(:mod:`.same_code`). A worker that is ended loses nothing: others do its pieces. Where there is no
scheduler, no worker, or none any more, all that is left is done here, and that is said.

An address of ``tls://`` is reached by the certificates that Dask's own settings name.
"""

from __future__ import annotations

import contextlib
import itertools
import logging
import re
import threading
import time
import uuid
import warnings
from collections.abc import Callable, Iterator, Sequence
from queue import Empty, SimpleQueue
from types import TracebackType
from typing import Any, Self, TypeAlias, TypeVar

from itembank.errors import ItembankError
from itembank.processes import on_worker, same_code
from itembank.processes.answer import DONE, Faults
from itembank.processes.kinds import best_kind
from itembank.processes.parcel import Refused, packed, unpacked
from itembank.processes.place import ThisMachine
from itembank.processes.pool import Lost, Results

Client: TypeAlias = Any
Future: TypeAlias = Any
"""Those of Dask distributed, which tells little of its types."""

P = TypeVar("P")
R = TypeVar("R")

CONNECT = 10.0
"""Seconds in which a scheduler has to answer."""
PATIENCE = 20.0
"""Seconds without a worker that can be used, after which the work is done here."""
LOOK_EVERY = 2.0
"""Seconds between two looks at which workers there are."""
ANSWER = 60.0
"""Seconds in which what a worker has done has to arrive."""
BATCH_SECONDS = 1.0
"""How long one batch should take: handing it over and back takes some thousandths of that."""
FIRST_BATCH = 4
MOST_IN_BATCH = 1000
AHEAD = 3
"""Batches on their way for each thread of a worker, so that none waits for the next."""

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
        self._client: Client | None = None
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
        if len(pieces) > few and self._connected():
            assert self._client is not None
            run = _Run(self._client, self.address, how, pieces, longest)
            try:
                yield from run.work()
            finally:
                run.cancel()
            left = run.left
            for said in run.remarks:
                self._remark(said)
            if run.gave_up:
                self._leave()
        if not left:
            return
        rest = [pieces[place] for place in left]
        here = self._here().each(how, rest, longest=longest, few=few, loads=loads)
        try:
            for place, result in here:
                yield left[place], result
        finally:
            here.close()

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
            with _no_warnings():
                connect: Any = Client
                self._client = connect(self.address, timeout=CONNECT, set_as_default=False)
        except Exception as error:
            why = "" if isinstance(error, OSError) else f" ({_in_a_line(error)})"
            self._remark(
                f"No scheduler answers at {self.address}{why}. The work is done on this machine."
            )
        return self._client is not None

    def _leave(self) -> None:
        if self._client is not None:
            with contextlib.suppress(Exception), _no_warnings():
                self._client.close(timeout=5)
            self._client = None


@contextlib.contextmanager
def _no_warnings() -> Iterator[None]:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        yield


def _in_a_line(error: BaseException) -> str:
    return " ".join(str(error).split())[:200] or type(error).__name__


class _Run:
    """Some pieces of work on a cluster."""

    def __init__(
        self,
        client: Client,
        address: str,
        how: Callable[[Any], Any],
        pieces: Sequence[Any],
        longest: float | None,
    ) -> None:
        self._client, self._address = client, address
        self._how, self._pieces, self._longest = how, pieces, longest
        self._code = same_code.code()
        self._waiting = list(range(len(pieces)))[::-1]
        self._stay: list[int] = []  # pieces that are to be done here
        self._out: dict[Future, tuple[list[int], frozenset[str]]] = {}
        self._asked: dict[str, Future] = {}  # workers that were asked for their code
        self._threads: dict[str, int] = {}  # workers that are used
        self._other: dict[str, str] = {}  # workers that are not, and why
        self._over: SimpleQueue[Future] = SimpleQueue()
        self._faults = Faults()
        self._batch = float(FIRST_BATCH)
        self._number = itertools.count()
        self._name = f"itembank-{uuid.uuid4().hex}"
        self.gave_up = False
        self.remarks: list[str] = []

    @property
    def left(self) -> list[int]:
        """The pieces that the cluster has not done, in order."""
        out = [place for places, _ in self._out.values() for place in places]
        return sorted({*self._faults.still_wanted([*self._waiting, *out]), *self._stay})

    def work(self) -> Results[Any]:
        """Yield the place and the result of every piece that the cluster does, as they come."""
        looked, useful = -LOOK_EVERY, time.monotonic()
        while self._waiting or self._out:
            now = time.monotonic()
            if now - looked >= LOOK_EVERY or not self._threads:
                looked = now
                self._look()
            if self._threads:
                useful = now
            elif now - useful > PATIENCE or self._client.status == "closed":
                self._give_up()
                return
            self._hand_out()
            yield from self._hear()
        if self._other:
            self.remarks.append(self._of_others())
        self._faults.tell()

    def cancel(self) -> None:
        """Take back what is still on its way."""
        futures = [*self._out, *self._asked.values()]
        if futures:
            with contextlib.suppress(Exception):
                self._client.cancel(futures)

    def _look(self) -> None:
        """See which workers there are, and ask new ones for their code."""
        try:
            there = dict(self._client.nthreads())
        except Exception:  # the scheduler is gone, or about to be
            there = {}
        for name in set(self._threads) - set(there):
            del self._threads[name]
            self._asked.pop(name, None)
        for name in set(there) - set(self._asked):
            key = f"{self._name}-code-{next(self._number)}"
            with contextlib.suppress(Exception):
                self._asked[name] = self._client.submit(
                    same_code.code, workers=[name], allow_other_workers=False, pure=False, key=key
                )
        for name, asked in self._asked.items():
            if name in there and name not in self._threads and name not in self._other:
                self._judge(name, asked, there[name])
        # What only workers that are gone could do is given to others.
        for future, (places, names) in list(self._out.items()):
            if self._threads and names.isdisjoint(there):
                self._take_back(future, places)

    def _judge(self, name: str, asked: Future, threads: int) -> None:
        if asked.status == "error":
            self._other[name] = f"it has no itembank ({_in_a_line(asked.exception() or OSError())})"
        elif asked.status == "finished":
            with contextlib.suppress(Exception):
                differs = same_code.differences(self._code, asked.result(timeout=ANSWER))
                if differs:
                    self._other[name] = "; ".join(differs)
                else:
                    self._threads[name] = threads

    def _hand_out(self) -> None:
        threads = sum(self._threads.values())
        names = frozenset(self._threads)
        while self._waiting and len(self._out) < AHEAD * threads:
            fair = -(-len(self._waiting) // (2 * threads))
            size = max(1, min(int(self._batch), MOST_IN_BATCH, fair))
            places = [self._waiting.pop() for _ in range(min(size, len(self._waiting)))]
            try:
                pieces = [self._pieces[place] for place in places]
                parcel = packed((self._how, pieces, self._longest))
            except Exception:  # pickle has many words for what cannot travel
                self._stay += places
                continue
            try:
                future = self._client.submit(
                    on_worker.run,
                    self._code,
                    parcel,
                    workers=list(names),
                    allow_other_workers=False,
                    pure=False,
                    key=f"{self._name}-{next(self._number)}",
                )
            except Exception:  # the scheduler is gone
                self._put_back(places)
                return
            self._out[future] = (places, names)
            future.add_done_callback(self._over.put)

    def _hear(self) -> Results[Any]:
        """Take what is done by now; wait a little where nothing is."""
        done: list[Future] = []
        with contextlib.suppress(Empty):
            done.append(self._over.get(timeout=0.1 if not self._threads else LOOK_EVERY))
            while True:
                done.append(self._over.get_nowait())
        for future in done:
            if future not in self._out:
                continue  # taken back meanwhile
            places, _ = self._out.pop(future)
            yield from self._answers(future, places)

    def _answers(self, future: Future, places: list[int]) -> Results[Any]:
        try:
            answer = unpacked(future.result(timeout=ANSWER))
        except Refused:
            answer = None
        except Exception:  # its worker is gone or ended several times; or the scheduler is
            if future.status == "error":
                self._stay += places
            else:
                self._put_back(places)
            return
        if answer is None:  # it has changed since it was asked
            self._stay += places
            return
        seconds, found = answer
        if found and seconds > 0:
            fitting = len(found) * BATCH_SECONDS / seconds
            self._batch = max(1.0, min(fitting, 4 * self._batch))
        for place, result in zip(places, found, strict=True):
            if isinstance(result, Lost):
                yield place, result
            elif result[0] == DONE:
                yield place, result[1]
            else:
                self._faults.note(place, result)
                self._waiting = self._faults.still_wanted(self._waiting)

    def _take_back(self, future: Future, places: list[int]) -> None:
        del self._out[future]
        with contextlib.suppress(Exception):
            self._client.cancel([future])
        self._put_back(places)

    def _put_back(self, places: Sequence[int]) -> None:
        self._waiting = self._faults.still_wanted([*self._waiting, *reversed(places)])

    def _give_up(self) -> None:
        self.gave_up = True
        if self._client.status != "running":
            why = f"The scheduler at {self._address} does not answer any more."
        elif self._other:
            why = self._of_others()
        else:
            why = f"The cluster at {self._address} has no worker that is free."
        self.remarks.append(f"{why} What is left is done on this machine.")

    def _of_others(self) -> str:
        named = [f"{name}: {why}" for name, why in sorted(self._other.items())]
        more = f"; and {len(named) - 3} more" if len(named) > 3 else ""
        return (
            "Some workers of the cluster were not used, since they would not come to the same "
            f"results ({'; '.join(named[:3])}{more})."
        )
