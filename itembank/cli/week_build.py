"""Builds the packs of a week in two processes, and writes a single file whole or not at all."""

from __future__ import annotations

import os
import signal
from collections.abc import Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from itembank.packs.build import PackRequest

Files = Mapping[str, bytes]


def build_all(requests: Sequence[PackRequest]) -> list[Files]:
    """Return the files of every pack, each key proved by both roads; nothing is written.

    Raises:
        ItembankError: a pack cannot be made.
        CheckFailed: a key is wrong.
    """
    # What every pack needs is loaded once, before the processes part.
    import itembank.checking.symbolic
    import itembank.pages.draw  # noqa: F401

    processes = min(len(requests), os.cpu_count() or 1)
    if processes < 2 or not hasattr(os, "fork"):
        return [build_one(request) for request in requests]
    pool = ProcessPoolExecutor(processes, mp_context=get_context("fork"))
    try:
        # Ctrl-C is for this process alone: the others would each print what they were at.
        before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
        try:
            made = [pool.submit(build_one, request) for request in requests]
        finally:
            signal.pthread_sigmask(signal.SIG_SETMASK, before)
        return [one.result() for one in made]
    finally:
        pool.shutdown(cancel_futures=True)


def build_one(request: PackRequest) -> Files:
    """Return the files of one pack."""
    from itembank.packs.build import start_pack
    from itembank.packs.files import PACK_FILE, pack_json
    from itembank.pages.draw import draw_pack

    started = start_pack(request)
    with started.proof:
        files = {**draw_pack(started.pack), PACK_FILE: pack_json(started.pack)}
        started.proof.result()
    return files
