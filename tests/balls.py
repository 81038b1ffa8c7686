"""Ball arithmetic for third engines: `arb`, at one precision for the whole run.

The precision is python-flint's own and holds for all who reckon in one process. Where each test
file set its own, the last one read decided for every other.
"""

from __future__ import annotations

from flint import arb, ctx

__all__ = ["arb"]

ctx.prec = 300
