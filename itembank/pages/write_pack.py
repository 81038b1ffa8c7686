"""Writes a started pack: pages are drawn while its keys are proved, then all of it or nothing."""

from __future__ import annotations

from pathlib import Path

from itembank.packs.build import Started
from itembank.packs.data.pack_files import pack_json, refuse_folder, write_folder
from itembank.packs.data.pack_place import PACK_FILE


def drawn(started: Started) -> dict[str, bytes]:
    """Return every file of a pack that is being proved, by name: `pack.json` and all its pages."""
    # Imported here so that the proof, in its own process, never waits for it.
    from itembank.pages.draw import draw_pack
    from itembank.selfmark.html_page import NAME, self_mark_page

    stored = pack_json(started.pack)
    page = self_mark_page(started.pack, stored, started.items, started.self_mark)
    return {**draw_pack(started.pack), PACK_FILE: stored, NAME: page}


def write_pack(started: Started, folder: Path, replace: bool = False) -> None:
    """Draw a pack and write its folder, once both roads agree on every key.

    Raises:
        ItembankError: the folder exists or cannot be written, or something is too long to print.
        CheckFailed: a key is wrong; nothing is written.
    """
    with started.proof:
        refuse_folder(folder, {}, replace)
        files = drawn(started)
        started.proof.result()
        write_folder(files, folder, replace)
