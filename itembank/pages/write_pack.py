"""Writes a started pack: pages are drawn while its keys are proved, then all of it or nothing."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial
from pathlib import Path

from itembank.packs.build import Started
from itembank.packs.data.pack_files import pack_json, refuse_folder, write_folder
from itembank.packs.data.pack_place import PACK_FILE

Draw = Callable[[], bytes]

APART = frozenset({"follow-up-answers.pdf", "teacher-notes.pdf"})
"""What a copy of this process draws: what the teacher alone reads, near half of all the work."""


def drawn(started: Started, by_two: bool = False) -> dict[str, bytes]:
    """Return every file of a pack that is being proved, by name: `pack.json` and all its pages.

    `by_two` has a copy of this process draw some of them, where there is a core for it. The files
    are the same.
    """
    # Imported here so that the proof, in its own process, never waits for it.
    from itembank.pages.draw import drawers
    from itembank.selfmark.html_page import NAME

    pack = started.pack
    stored = pack_json(pack)
    draws: dict[str, Draw] = {name: partial(draw, pack) for name, draw in drawers(pack).items()}
    draws[NAME] = partial(self_marking, started, stored)
    return {**(_by_two(draws) if by_two else _all(draws)), PACK_FILE: stored}


def self_marking(started: Started, stored: bytes) -> bytes:
    """Return the page on which pupils mark their own answers, with the bands' signs as printed."""
    from itembank.pages.engine.page.sign_svg import sign_svg
    from itembank.selfmark.html_page import self_mark_page

    bands = started.pack.bands
    signs = {band.letter: sign_svg(band.shape, band.letter, band.colour) for band in bands}
    return self_mark_page(started.pack, stored, started.items, signs)


def _all(draws: Mapping[str, Draw]) -> dict[str, bytes]:
    return {name: draw() for name, draw in draws.items()}


def _by_two(draws: Mapping[str, Draw]) -> dict[str, bytes]:
    from itembank.pages.draw import load_all
    from itembank.processes.beside import Beside
    from itembank.processes.process_kinds import best_kind

    # A new interpreter would load for longer than it would draw.
    if not best_kind().inherits:
        return _all(draws)
    load_all()
    apart = {name: draw for name, draw in draws.items() if name in APART}
    with Beside(partial(_all, apart)) as helper:
        own = _all({name: draw for name, draw in draws.items() if name not in apart})
        try:
            theirs = helper.result()
        except RuntimeError:  # it was killed
            theirs = _all(apart)
    return {name: (own | theirs)[name] for name in draws}


def write_pack(started: Started, folder: Path, replace: bool = False) -> None:
    """Draw a pack and write its folder, once both roads agree on every key.

    Raises:
        ItembankError: the folder exists or cannot be written, or something is too long to print.
        CheckFailed: a key is wrong; nothing is written.
    """
    with started.proof:
        refuse_folder(folder, {}, replace)
        files = drawn(started, by_two=True)
        started.proof.result()
        write_folder(files, folder, replace)
