"""ReportLab document objects that it lacks: ready syntax, a tagged page, dateless information.

Importing this module imports ReportLab.
"""

from __future__ import annotations

import zlib
from collections.abc import Callable
from typing import Any

from reportlab.pdfbase import pdfdoc

_LEAST_WINDOW = 9
"""The smallest window that zlib writes, as a power of 2 in bytes."""


class Raw(pdfdoc.PDFObject):  # type: ignore[misc]
    """An object whose PDF syntax is written by a function when the file is put together."""

    # ReportLab writes it as an object of its own, and a reference wherever it is used.
    __RefOnly__ = 1

    def __init__(self, write: Callable[[Any], str | bytes]) -> None:
        self._write = write

    def format(self, document: Any) -> bytes:
        """Return the object's syntax."""
        made = self._write(document)
        return made if isinstance(made, bytes) else made.encode("latin-1")


class Outline(Raw):
    """The root of an outline, in place of the one that ReportLab gets ready from a canvas."""

    ready = 1

    def prepare(self, _document: Any, _canvas: Any) -> None:
        """Do nothing: the outline is ready."""


class TaggedPage(pdfdoc.PDFPage):  # type: ignore[misc]
    """A page with the keys that tagging needs."""

    __NoDefault__ = [*pdfdoc.PDFPage.__NoDefault__, "StructParents", "Tabs"]  # noqa: RUF012
    ExtGState = None
    _shadingUsed: dict[str, Any] = {}  # noqa: RUF012 - ReportLab reads it, nothing writes it
    _colorsUsed: dict[str, Any] = {}  # noqa: RUF012


class Info(pdfdoc.PDFInfo):  # type: ignore[misc]
    """Document information without dates, which would tell nothing and change every file."""

    def format(self, document: Any) -> bytes:
        """Return the information dictionary."""
        entries = {
            "Title": pdfdoc.PDFString(self.title),
            "Producer": pdfdoc.PDFString(self.producer),
        }
        return bytes(pdfdoc.PDFDictionary(entries).format(document))


def stream(dictionary: str, content: bytes, compress: bool = True) -> Raw:
    """Return a stream object with the given dictionary entries."""
    made = stream_syntax(dictionary, content, compress)
    return Raw(lambda _doc: made)


def compressed(content: bytes) -> bytes:
    """Return content as FlateDecode unpacks it (RFC 1950).

    A formula is a hundred bytes, and most of the time zlib takes over it goes into a window for
    32 KB: one as large as the content finds all the same repetitions.

    >>> zlib.decompress(compressed(b"<mn>2</mn>" * 40)) == b"<mn>2</mn>" * 40
    True
    """
    window = min(max(len(content).bit_length(), _LEAST_WINDOW), zlib.MAX_WBITS)
    pack = zlib.compressobj(6, zlib.DEFLATED, window, min(window - 5, zlib.DEF_MEM_LEVEL))
    return pack.compress(content) + pack.flush()


def stream_syntax(dictionary: str, content: bytes, compress: bool = True) -> bytes:
    """Return the syntax of a stream object with the given dictionary entries."""
    if compress:
        content = compressed(content)
        dictionary += " /Filter /FlateDecode"
    head = f"<<{dictionary} /Length {len(content)}>>\nstream\n".encode("latin-1")
    return head + content + b"\nendstream\n"
