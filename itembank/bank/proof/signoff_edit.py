"""Changes the sign-offs of a few items in a file of very many, without reading the others."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping

from itembank.bank.model.signed import SignOff
from itembank.bank.proof.signoff import added_text, signoff_in

_HEAD = b"[[signoffs]]\n"


def edited_signoffs(
    raw: bytes,
    before: Collection[SignOff],
    wanted: Collection[SignOff],
    renamed: Mapping[str, str],
) -> bytes | None:
    r"""Return a file in which the sign-offs of some items are others.

    Parameters
    ----------
    raw
        What the file holds.
    before
        All sign-offs that it has of these items.
    wanted
        Those that it is to have instead. What stays keeps its place and its comments; what is
        new comes last, by date.
    renamed
        The new ids of items whose entries stay in their places.

    Returns
    -------
    bytes or None
        None where an entry does not stand there as the tool writes it: then the file has to be
        read whole.

    >>> edited_signoffs(b"", (), (), {})
    b''
    """
    spans = _spans(raw, {signoff.item for signoff in before})
    if spans is None:
        return None
    found: set[SignOff] = set()
    kept: set[SignOff] = set()
    parts: list[bytes] = []
    at = 0
    for start, end in spans:
        try:
            block = raw[start:end].decode("utf-8")
        except UnicodeDecodeError:
            return None
        found.add(signoff_in(block))
        for old, new in renamed.items():
            block = block.replace(f'item = "{old}"\n', f'item = "{new}"\n', 1)
        record = signoff_in(block)
        parts.append(raw[at:start])
        if record in wanted and record not in kept:
            kept.add(record)
            parts.append(block.encode("utf-8"))
        at = end
    if found != set(before):
        return None
    parts.append(raw[at:])
    more = set(wanted) - kept
    if not more and len(kept) == len(spans):
        return b"".join(parts)
    text = b"".join(parts).rstrip(b"\n")
    if not more:
        return text + b"\n" if text else b""
    added = added_text(more, before=bool(text)).encode("utf-8")
    return text + b"\n\n" + added if text else added


def _spans(raw: bytes, ids: Collection[str]) -> list[tuple[int, int]] | None:
    """Return where the entries of some items stand, or None where one is not as it is written."""
    if not ids:
        return []
    names = b"|".join(re.escape(id.encode("utf-8")) for id in sorted(ids))
    spans = []
    for match in re.finditer(rb'(?m)^item = "(?:%s)"$' % names, raw):
        start = match.start() - len(_HEAD)
        if (
            start < 0
            or raw[start : match.start()] != _HEAD
            or raw[start - 1 : start]
            not in (
                b"\n",
                b"",
            )
        ):
            return None
        end = raw.find(b"\n" + _HEAD, match.end()) + 1
        spans.append((start, end or len(raw)))
    return spans
