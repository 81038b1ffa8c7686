"""Some pieces of work on a cluster: handed out in batches, and asked back for."""

from __future__ import annotations

import contextlib
import itertools
import time
import uuid
from asyncio import CancelledError
from collections.abc import Callable, Sequence
from queue import Empty, SimpleQueue
from typing import Any

from itembank.processes import on_worker
from itembank.processes.answer import DONE, Faults
from itembank.processes.cluster_workers import LOOK_EVERY, Client, Future, Workers, in_a_line
from itembank.processes.lost import Lost, Results
from itembank.processes.parcel import Refused, packed, unpacked

PATIENCE = 20.0
"""Seconds without a worker that can be used, after which the work is done here."""
ANSWER = 5.0
"""Seconds in which what a worker has done mostly arrives; else workers are looked at again."""
BATCH_SECONDS = 1.0
"""How long one batch should take: handing it over and back takes some thousandths of that."""
FIRST_BATCH = 4
MOST_IN_BATCH = 1000
AHEAD = 3
"""Batches on their way for each thread of a worker, so that none waits for the next."""


class Run:
    """Some pieces of work on a cluster."""

    def __init__(
        self,
        client: Client,
        workers: Workers,
        how: Callable[[Any], Any],
        pieces: Sequence[Any],
        longest: float | None,
    ) -> None:
        self._client, self._workers = client, workers
        self._how, self._pieces, self._longest = how, pieces, longest
        # The next one stands last, from where it is taken without moving the others.
        self._waiting = list(range(len(pieces)))[::-1]
        self._stay: list[int] = []  # pieces that are to be done here
        self._out: dict[Future, tuple[list[int], frozenset[str]]] = {}
        self._over: SimpleQueue[Future] = SimpleQueue()
        self.faults = Faults()
        self._batch = float(FIRST_BATCH)
        self._number = itertools.count()
        self._name = f"itembank-{uuid.uuid4().hex}"
        self.gave_up = False
        self.trouble = ""
        """Why the workers could not do what is left, where that is why it is."""

    @property
    def left(self) -> list[int]:
        """The pieces that the cluster has not done, in order."""
        out = [place for places, _ in self._out.values() for place in places]
        return sorted({*self.faults.still_wanted([*self._waiting, *out]), *self._stay})

    def work(self) -> Results[Any]:
        """Yield the place and the result of every piece that the cluster does, as they come."""
        useful = time.monotonic()
        while self._waiting or self._out:
            looked = self._workers.look()
            if self._workers.threads:
                useful = time.monotonic()
                if looked:
                    self._take_back_lost()
            elif time.monotonic() - useful > PATIENCE:
                self.gave_up = True
                return
            self._hand_out()
            yield from self._hear()

    def cancel(self) -> None:
        """Take back what is still on its way."""
        if self._out:
            with contextlib.suppress(Exception):
                self._client.cancel(list(self._out))

    def _take_back_lost(self) -> None:
        """Give to others what only workers that are gone could do."""
        for future, (places, names) in list(self._out.items()):
            if names.isdisjoint(self._workers.there):
                del self._out[future]
                with contextlib.suppress(Exception):
                    self._client.cancel([future])
                self._put_back(places)

    def _hand_out(self) -> None:
        threads = sum(self._workers.threads.values())
        names = frozenset(self._workers.threads)
        while self._waiting and len(self._out) < AHEAD * threads:
            # Never more than half of a fair share, so that none has all the rest to do in the end.
            fair = -(-len(self._waiting) // (2 * threads))
            size = max(1, min(int(self._batch), MOST_IN_BATCH, fair))
            places = [self._waiting.pop() for _ in range(min(size, len(self._waiting)))]
            try:
                pieces = [self._pieces[place] for place in places]
                parcel = packed((self._how, pieces, self._longest))
            except Exception as error:  # pickle has many words for what cannot travel
                self._keep(places, in_a_line(error))
                continue
            try:
                future = self._client.submit(
                    on_worker.run,
                    self._workers.code,
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
            done.append(self._over.get(timeout=0.1 if not self._workers.threads else LOOK_EVERY))
            while True:
                done.append(self._over.get_nowait())
        for future in done:
            if future not in self._out:
                continue  # taken back meanwhile
            yield from self._answers(future, *self._out.pop(future))

    def _answers(self, future: Future, places: list[int], names: frozenset[str]) -> Results[Any]:
        try:
            answer = unpacked(future.result(timeout=ANSWER))
        except TimeoutError:  # its worker is gone, and others do it again
            self._out[future] = (places, names)
            self._over.put(future)
            return
        except Refused as error:
            self._keep(places, str(error))
            return
        except (Exception, CancelledError) as error:
            if future.status == "error":  # several workers ended at it, or they cannot do it
                self._keep(places, in_a_line(error))
            else:  # the scheduler is gone
                self._put_back(places)
            return
        if answer is None:
            self._keep(places, "a worker has other code than it had")
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
                self.faults.note(place, result)
                self._waiting = self.faults.still_wanted(self._waiting)

    def _keep(self, places: Sequence[int], why: str) -> None:
        """Leave some pieces to this machine."""
        self._stay += places
        self.trouble = self.trouble or why

    def _put_back(self, places: Sequence[int]) -> None:
        self._waiting = self.faults.still_wanted([*self._waiting, *reversed(places)])
