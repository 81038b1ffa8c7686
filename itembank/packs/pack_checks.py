"""Reads a pack back and trusts nothing in it: every face, key, band and name is checked."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from itembank.errors import CheckFailed, ItembankError
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.packs.build import Started
from itembank.packs.data.pack import Pack
from itembank.packs.data.pack_files import load_pack
from itembank.packs.data.pack_item import PackItem
from itembank.packs.data.read_back import read_item, said_now
from itembank.packs.pack_proof import Proof, prove_by_first_road
from itembank.planning.bands.bands import BandError, check_intervals


def read_pack(path: Path) -> Pack:
    """Return the pack in a `pack.json`, or in a folder that holds one, proved again.

    Raises:
        ItembankError: it cannot be read, is not a pack, or does not agree with itself.
        CheckFailed: a key is not what its stored question comes to.
    """
    started = start_reading(path)
    with started.proof:
        started.proof.result()
    return started.pack


def start_reading(path: Path) -> Started:
    """Return the pack in a `pack.json`, proved by the first road; the second is under way.

    Raises:
        ItembankError: it cannot be read, is not a pack, or does not agree with itself.
        CheckFailed: a key is wrong by the first road.
    """
    pack = _said_now(load_pack(path))
    check_pack(pack, path)
    items = [_item(place, stored, path) for place, stored in stored_items(pack)]
    proof = Proof(items)
    try:
        prove_by_first_road(items)
    except BaseException:
        proof.close()
        raise
    return Started(pack, proof, tuple(items))


def _said_now(pack: Pack) -> Pack:
    """Return a pack of an earlier day with its mathematics said as it is said today."""

    def of(item: PackItem | None) -> PackItem | None:
        return None if item is None else said_now(item)

    versions = [
        version.model_copy(update={"items": [said_now(item) for item in version.items]})
        for version in pack.versions
    ]
    sheets = [
        sheet.model_copy(
            update={
                "worked": of(sheet.worked),
                "part_finished": of(sheet.part_finished),
                "items": [said_now(item) for item in sheet.items],
            }
        )
        for sheet in pack.sheets
    ]
    return pack.model_copy(update={"versions": versions, "sheets": sheets})


def stored_items(pack: Pack) -> Iterator[tuple[str, PackItem]]:
    """Yield every item of a pack with its place in the file."""
    for v, version in enumerate(pack.versions):
        for i, item in enumerate(version.items):
            yield f"versions[{v}].items[{i}]", item
    for s, sheet in enumerate(pack.sheets):
        if sheet.worked is not None:
            yield f"sheets[{s}].worked", sheet.worked
        if sheet.part_finished is not None:
            yield f"sheets[{s}].part_finished", sheet.part_finished
        for i, item in enumerate(sheet.items):
            yield f"sheets[{s}].items[{i}]", item


def check_pack(pack: Pack, path: Path) -> None:
    """Check what the shape of a pack alone does not say.

    Raises:
        ItembankError: names the field that does not agree with the others.
    """
    name = pack.lesson.class_name
    if not name.strip() or len(name) > 12 or name[0] == "." or not _plain(name):
        raise _fault(path, "lesson.class_name", f"‘{name}’ cannot be a class's name")
    _check_bands(pack, path)
    first = [item.marks for item in pack.versions[0].items]
    for v, version in enumerate(pack.versions):
        if [item.marks for item in version.items] != first:
            raise _fault(
                path, f"versions[{v}].items", "the versions differ in their questions or marks"
            )
    for what, values in (
        ("versions", [version.letter for version in pack.versions]),
        ("sheets", [str(sheet.tier) for sheet in pack.sheets]),
        ("topics", [topic.id for topic in pack.topics]),
    ):
        twice = [value for value, times in Counter(values).items() if times > 1]
        if twice:
            raise _fault(path, what, f"‘{twice[0]}’ stands there twice")
    known = {topic.id: topic.title for topic in pack.topics}
    for place, item in stored_items(pack):
        if known.get(item.topic) != item.topic_title:
            raise _fault(path, f"{place}.topic", f"‘{item.topic}’ is not one of the pack's topics")
        _check_source(place, item, path)
    _check_provenance(pack, path)


def _check_source(place: str, item: PackItem, path: Path) -> None:
    """Check that an item's address and what is said of its source agree."""
    source = item.source
    if source is not None and source.kind == "bank":
        if item.address != f"{source.bank}:{source.id}" or not (source.bank and source.id):
            raise _fault(
                path,
                f"{place}.address",
                f"‘{item.address}’ is not of the bank and id of its source",
            )
    elif item.address.rpartition("/")[0] != f"{item.topic}/{item.tier}":
        raise _fault(path, f"{place}.address", f"‘{item.address}’ is not of this topic and tier")
    if source is not None and bool(source.signed) != (source.sign_off in ("signed", "stale")):
        raise _fault(path, f"{place}.source.signed", "this does not agree with sign_off")


def _check_provenance(pack: Pack, path: Path) -> None:
    """Check that every item is one that the pack's own setting lets in."""
    provenance = pack.drawing
    if provenance is None:
        return
    names = {bank.name for bank in provenance.banks}
    for place, item in stored_items(pack):
        source = item.source
        if source is None:
            raise _fault(path, f"{place}.source", "‘source’ is missing here")
        if source.bank and source.bank not in names:
            raise _fault(path, f"{place}.source.bank", f"‘{source.bank}’ is not one of the banks")
        if source.bank and provenance.questions_from == "generated":
            raise _fault(path, f"{place}.source", "a bank’s question in a generated pack")
        if not source.bank and provenance.questions_from == "bank":
            raise _fault(path, f"{place}.source", "a generated question in a pack from banks")
        if provenance.signed_only and source.sign_off != "signed":
            raise _fault(path, f"{place}.source", "an unsigned question among signed ones")


def _plain(name: str) -> bool:
    """Tell whether a name can be part of a folder's name."""
    return name.isprintable() and not any(mark in name for mark in '/\\:*?"<>|')


def _check_bands(pack: Pack, path: Path) -> None:
    try:
        check_intervals([(band.name, band.lowest, band.highest) for band in pack.bands], pack.marks)
    except BandError as error:
        raise _fault(path, "bands", str(error).rstrip(".")) from None


def _item(place: str, stored: PackItem, path: Path) -> Item:
    try:
        return read_item(stored)
    except CheckFailed:
        raise
    except t.NotationError as error:
        raise _fault(path, f"{place} ({stored.address})", str(error).rstrip(".")) from None


def _fault(path: Path, field: str, said: str) -> ItembankError:
    return ItembankError(
        f"{path}, {field}: {said}. The file was changed or damaged: make the pack again, or take "
        "a copy that is whole."
    )
