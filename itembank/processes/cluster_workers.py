"""Which workers of a cluster are used: those that would come to the same results as here."""

from __future__ import annotations

import contextlib
import itertools
import pkgutil
import time
import uuid
from operator import methodcaller
from typing import Any, TypeAlias

from itembank.processes import on_worker, same_code

Client: TypeAlias = Any
Future: TypeAlias = Any
"""Those of Dask distributed, which tells little of its types."""

LOOK_EVERY = 2.0
"""Seconds between two looks at which workers there are."""
TOLD = 5.0
"""Seconds in which what a worker has to tell has to arrive, once it has told it."""
MOST_NAMED = 3
TELL = f"{on_worker.__name__}:{on_worker.tell.__name__}"


class Workers:
    """The workers of a cluster. Each is asked for its code before it is used."""

    def __init__(self, client: Client, address: str) -> None:
        self.code = same_code.code()
        self.threads: dict[str, int] = {}
        """How many pieces each of those that are used does at once."""
        self.there: set[str] = set()
        self._client, self._address = client, address
        self._asked: dict[str, Future] = {}
        self._others: dict[str, str] = {}  # workers that are not used, and why
        self._named = 0
        self._looked = -LOOK_EVERY
        self._counts: dict[str, int] = {}
        self._name = f"itembank-{uuid.uuid4().hex}"
        self._number = itertools.count()

    @property
    def answers(self) -> bool:
        """Whether the scheduler is there."""
        return str(self._client.status) == "running"

    def look(self) -> bool:
        """See which workers there are, if it is time to; tell whether it was."""
        self._judge()
        soon = time.monotonic() - self._looked < LOOK_EVERY
        if soon and self.threads and self.answers:
            return False
        self._looked = time.monotonic()
        counts: dict[str, int] = {}
        if self.answers:
            with contextlib.suppress(Exception):  # it is about to be gone
                counts = dict(self._client.nthreads())
        self.there = set(counts)
        for name in set(self.threads) - self.there:
            del self.threads[name]
        for name in set(self._asked) - self.there:
            del self._asked[name]  # another may come at its address
        for name in self.there - set(self._asked) - set(self.threads):
            if name not in self._others:
                with contextlib.suppress(Exception):
                    self._asked[name] = self._ask(name)
        self._counts = counts
        self._judge()
        return True

    def _ask(self, name: str) -> Future:
        """Ask a worker for its code.

        A message that names what a worker has not breaks its line to the scheduler, whoever else
        it works for. So it is asked in words of the standard library to look for itself.
        """
        only = {"workers": [name], "allow_other_workers": False, "pure": False}
        key = f"{self._name}-code-{next(self._number)}"
        found = self._client.submit(pkgutil.resolve_name, TELL, key=f"{key}-name", **only)
        return self._client.submit(methodcaller("__call__"), found, key=key, **only)

    def _judge(self) -> None:
        for name, asked in list(self._asked.items()):
            if asked.status == "error":
                why = in_a_line(asked.exception(timeout=TOLD) or OSError())
                self._others[name] = f"it has no itembank of this version ({why})"
            elif asked.status == "finished":
                try:
                    theirs = asked.result(timeout=TOLD)
                except Exception:  # it is gone again
                    continue
                if differs := same_code.differences(self.code, theirs):
                    self._others[name] = "; ".join(differs)
                else:
                    self.threads[name] = self._counts.get(name, 1)
            else:
                continue
            del self._asked[name]

    def cancel(self) -> None:
        """Take back every question that is still on its way."""
        if self._asked:
            with contextlib.suppress(Exception):
                self._client.cancel(list(self._asked.values()))

    def why_none(self) -> str:
        """Return why there is no worker that can be used."""
        if not self.answers:
            return f"The scheduler at {self._address} does not answer any more."
        return self.new_others() or f"The cluster at {self._address} has no worker that is free."

    def new_others(self) -> str:
        """Return which workers were not used and why, if it has not been said yet, or ``""``."""
        if len(self._others) == self._named:
            return ""
        self._named = len(self._others)
        named = [f"{name}: {why}" for name, why in sorted(self._others.items())]
        more = f"; and {len(named) - MOST_NAMED} more" if len(named) > MOST_NAMED else ""
        return (
            "Some workers of the cluster are not used, since they might not come to the same "
            f"results ({'; '.join(named[:MOST_NAMED])}{more})."
        )


def in_a_line(error: BaseException) -> str:
    """Return what an error says, in a line that is not too long."""
    return " ".join(str(error).split())[:200] or type(error).__name__
