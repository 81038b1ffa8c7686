"""How far long work has come, on the error stream: a bar at a terminal, lines where asked."""

from __future__ import annotations

import sys
import time

from itembank.text.in_words import counted

LEAST_SHARE = 0.02
LEAST_SECONDS = 3.0
"""Before so much is done, and so long, nobody can tell how long the rest takes."""
LINE_EVERY = 5
"""Per cent between two lines, where there is no terminal to draw a bar in."""


class Bar:
    """A progress bar on the error stream, drawn where that is a terminal.

    Parameters
    ----------
    asked
        Whether a line is to be written now and then where it is no terminal.
    steady
        Whether the items come in no order that has the quick ones first or last. Only then is
        the time left told: as long for each item to come as for those done.
    """

    def __init__(self, *, asked: bool = False, steady: bool = False) -> None:
        self._shown = -1
        self._steady = steady
        self._begun = time.monotonic()
        self._draws = sys.stderr.isatty()
        self._lines = asked and not self._draws
        self._wide = 0
        self._out = getattr(sys.stderr, "steered", sys.stderr)  # it moves the cursor

    def __call__(self, done: int, total: int) -> None:
        """Show that `done` of `total` items are done."""
        share = done * 100 // max(total, 1)
        if share == self._shown or not (self._draws or self._lines):
            return
        seconds = time.monotonic() - self._begun
        left = time_left(done, total, seconds) if self._steady and done < total else ""
        said = f"{done:,} of {total:,} items{', ' if left else ''}{left}"
        if self._lines:
            if share // LINE_EVERY != self._shown // LINE_EVERY:
                self._out.write(f"{share} %: {said}\n")
                self._out.flush()
                self._shown = share
            return
        self._shown = share
        line = f"[{'#' * (share // 4):<25}] {share:3}%  {said}"
        self._out.write(f"\r{line:<{self._wide}}")
        self._out.flush()
        self._wide = len(line)

    def clear(self) -> None:
        """Take the bar away; lines stay."""
        if self._shown >= 0 and self._draws:
            self._out.write(f"\r{' ' * self._wide}\r")
            self._out.flush()
        self._shown = -1


def time_left(done: int, total: int, seconds: float) -> str:
    """Return how long the rest takes if it goes as what is done did; "" too soon to tell.

    >>> time_left(1000, 4000, 100), time_left(3999, 4000, 500), time_left(10, 4000, 100)
    ('about 5 minutes left', 'less than a minute left', '')
    """
    if done < total * LEAST_SHARE or seconds < LEAST_SECONDS:
        return ""
    minutes = seconds * (total - done) / done / 60
    if minutes < 1:
        return "less than a minute left"
    return f"about {counted(round(minutes), 'minute')} left"
