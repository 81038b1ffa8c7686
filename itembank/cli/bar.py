"""A progress bar for work that takes a while."""

from __future__ import annotations

import sys


class Bar:
    """A progress bar on the error stream, drawn only where that is a terminal."""

    def __init__(self) -> None:
        self._shown = -1
        self._draws = sys.stderr.isatty()
        self._out = getattr(sys.stderr, "steered", sys.stderr)  # it moves the cursor

    def __call__(self, done: int, total: int) -> None:
        """Show that `done` of `total` items are done."""
        share = done * 100 // max(total, 1)
        if self._draws and share != self._shown:
            self._shown = share
            filled = share * 40 // 100
            self._out.write(f"\r[{'#' * filled:<40}] {share:3}%  {done:,} of {total:,} items")
            self._out.flush()

    def clear(self) -> None:
        """Take the bar away."""
        if self._shown >= 0:
            self._out.write(f"\r{' ' * 79}\r")
            self._out.flush()
            self._shown = -1
