"""A progress bar for work that takes a while."""

from __future__ import annotations

import sys


class Bar:
    """A progress bar on the error stream, drawn only where that is a terminal."""

    def __init__(self) -> None:
        self._shown = -1
        self._draws = sys.stderr.isatty()

    def __call__(self, done: int, total: int) -> None:
        """Show that `done` of `total` items are done."""
        share = done * 100 // max(total, 1)
        if self._draws and share != self._shown:
            self._shown = share
            filled = share * 40 // 100
            sys.stderr.write(f"\r[{'#' * filled:<40}] {share:3}%  {done:,} of {total:,} items")
            sys.stderr.flush()

    def clear(self) -> None:
        """Take the bar away."""
        if self._shown >= 0:
            sys.stderr.write(f"\r{' ' * 79}\r")
            sys.stderr.flush()
            self._shown = -1
