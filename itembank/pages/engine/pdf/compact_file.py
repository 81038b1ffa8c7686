"""A PDF file whose small objects stand together, compressed (ISO 32000-1, 7.5.7 and 7.5.8).

A tagged page has hundreds of structure elements; written one by one they are most of its file.

Importing this module imports ReportLab.
"""

from __future__ import annotations

from itertools import count
from typing import Any

from reportlab.pdfbase import pdfdoc

from itembank.pages.engine.pdf.pdf_objects import compressed

TOGETHER = 200
"""Most objects of one compressed stream: a reader unpacks them all to find one."""
_TO_FILE, _IN_STREAM = 1, 2


class CompactDocument(pdfdoc.PDFDocument):  # type: ignore[misc]
    """A document written with object streams and a cross-reference stream.

    Most of its objects are the elements of the structure tree. They are added as ready syntax
    (:meth:`add`), and cost nothing of what ReportLab does for an object of its own.
    """

    def __init__(self, **settings: Any) -> None:
        super().__init__(**settings)
        self._ready: dict[int, bytes] = {}

    @property
    def next_number(self) -> int:
        """Return the number of the object that is added next."""
        return int(self.objectcounter) + 1

    def add(self, syntax: str | bytes) -> int:
        """Add an object by its syntax, which ends with a line end where it is a stream.

        Return its number.
        """
        made = syntax if isinstance(syntax, bytes) else syntax.encode("latin-1")
        self.objectcounter = self.next_number
        self._ready[self.objectcounter] = made
        return self.objectcounter

    def format(self) -> bytes:
        """Return the whole file.

        New objects may be made while others are written, so they are taken as they come.
        """
        self.encrypt.prepare(self)
        root, info = self.Reference(self.Catalog), self.Reference(self.info)
        # Four bytes above 127 tell whoever copies the file that it is no text (7.5.2).
        file = bytearray(b"%%PDF-%d.%d\n%%\xe2\xe3\xcf\xd3\n" % self._pdfVersion)
        # Object 0 heads the list of objects that are free, and is in every file (7.5.4).
        rows: dict[int, tuple[int, int, int]] = {0: (0, 0, 65535)}
        small: list[tuple[int, bytes]] = []
        number = 0
        for number in count(1):
            made = self._ready.get(number)
            if made is None:
                if number not in self.numberToId:
                    break
                made = pdfdoc.pdfdocEnc(self.idToObject[self.numberToId[number]].format(self))
            # A stream cannot stand within another one (7.5.7).
            if made.rstrip().endswith(b"endstream"):
                rows[number] = (_TO_FILE, len(file), 0)
                file += b"%d 0 obj\n%b\nendobj\n" % (number, made.rstrip(b"\n"))
            else:
                small.append((number, made))
        for start in range(0, len(small), TOGETHER):
            group = small[start : start + TOGETHER]
            rows |= {own: (_IN_STREAM, number, place) for place, (own, _) in enumerate(group)}
            # The table is an object too, the last, and lists itself.
            rows[number] = (_TO_FILE, len(file), 0)
            file += _object_stream(number, group)
            number += 1
        rows[number] = (_TO_FILE, len(file), 0)
        # Both halves of the name are equal in a file that was not changed since it was made (14.4).
        twice = b"<%b>" % self.signature.hexdigest().encode("ascii") * 2
        ends = b"/Root %b /Info %b /ID [%b]" % (root.format(self), info.format(self), twice)
        start = len(file)
        file += _cross_references(number, rows, ends)
        file += b"startxref\n%d\n%%%%EOF\n" % start
        return bytes(file)


def _object_stream(number: int, group: list[tuple[int, bytes]]) -> bytes:
    heads, body = [], bytearray()
    for own, made in group:
        heads.append(b"%d %d" % (own, len(body)))
        body += made.strip() + b"\n"
    head = b" ".join(heads) + b"\n"
    entries = b"/Type /ObjStm /N %d /First %d" % (len(group), len(head))
    return _stream(number, entries, head + bytes(body))


def _cross_references(number: int, rows: dict[int, tuple[int, int, int]], ends: bytes) -> bytes:
    table = b"".join(
        # As /W says: one byte for the kind, four for the place, two for the place in a stream.
        kind.to_bytes(1, "big") + place.to_bytes(4, "big") + more.to_bytes(2, "big")
        for kind, place, more in (rows[n] for n in range(number + 1))
    )
    entries = b"/Type /XRef /Size %d /W [1 4 2] %b" % (number + 1, ends)
    return _stream(number, entries, table)


def _stream(number: int, entries: bytes, content: bytes) -> bytes:
    packed = compressed(content)
    return b"%d 0 obj\n<<%b /Filter /FlateDecode /Length %d>>\nstream\n%b\nendstream\nendobj\n" % (
        number,
        entries,
        len(packed),
        packed,
    )
