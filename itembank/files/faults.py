"""Faults in a file that a person wrote: each with its line, all of them told at once."""

from __future__ import annotations

import codecs
import difflib
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path

from itembank.data_class import dataclass
from itembank.errors import ItembankError

MOST_SHOWN = 20


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing to put right in a file.

    `line` and `column` count from 1; line 0 stands for the whole file, column 0 for the line.
    `matter` names what is the matter, where more can be said to whoever sees it, as that of an
    :class:`~itembank.errors.ItembankError`. `path` is where in the file's data it stands, for
    a form whose fields are not lines.

    >>> str(Fault("bank.toml", 3, "There is no = here.", 5))
    'bank.toml, line 3, column 5: There is no = here.'
    """

    file: str
    line: int
    message: str
    column: int = 0
    matter: str = ""
    path: tuple[str | int, ...] = ()

    def __str__(self) -> str:
        """Return the fault as ``file, line 3, column 5: message``."""
        where = f"{self.file}, line {self.line}" if self.line else self.file
        if self.column:
            where += f", column {self.column}"
        return f"{where}: {self.message}"


class FileFaults(ItembankError):
    """One or more faults in files; the message lists them in the order of their lines.

    Where `most` is given only so many are listed, and the rest are counted.
    """

    def __init__(self, faults: Iterable[Fault], *, most: int | None = MOST_SHOWN) -> None:
        self.faults = tuple(sorted(faults, key=lambda f: (f.file, f.line, f.column)))
        self.most = most
        super().__init__(self.listed(str))

    @property
    def matters(self) -> frozenset[str]:
        """The names of all that is the matter in any of them."""
        return frozenset(fault.matter for fault in self.faults)

    def listed(self, say: Callable[[Fault], str]) -> str:
        """Return a line for each fault, as `say` puts it; what is beyond `most` is counted."""
        lines = [say(fault) for fault in self.faults[: self.most]]
        if self.most is not None and len(self.faults) > self.most:
            lines.append(f"… and {len(self.faults) - self.most} more.")
        return "\n".join(lines)


def nearest(word: str, known: Iterable[str], most: int = 3) -> list[str]:
    """Return the names in `known` most like `word`, the best first; perhaps none.

    >>> nearest("titel", ["title", "topics", "year"])
    ['title']
    """
    return difflib.get_close_matches(word, list(known), n=most, cutoff=0.6)


def join_words(words: Sequence[str], last: str = "and") -> str:
    """Return the words as a list in a sentence.

    >>> join_words(["7M", "8K", "9S"]), join_words(["7M", "8K"], "or")
    ('7M, 8K and 9S', '7M or 8K')
    """
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def decode_text(path: Path) -> str:
    """Return the text of a file a person wrote; a UTF-8 byte order mark is dropped.

    Raises:
        FileFaults: there is no such file, it cannot be read, or it is not UTF-8.
    """
    try:
        raw = path.read_bytes()
    except FileNotFoundError:
        raise FileFaults([Fault(str(path), 0, "There is no such file.")]) from None
    except IsADirectoryError:
        raise FileFaults([Fault(str(path), 0, "This is a folder, not a file.")]) from None
    except OSError as error:
        raise FileFaults([Fault(str(path), 0, f"This cannot be read: {error.strerror}.")]) from None
    return decode_bytes(raw, path)


def decode_bytes(raw: bytes, path: Path) -> str:
    """Return the text of a file that was read; raises as :func:`decode_text` where it is not text.

    >>> decode_bytes(b"topic = 1", Path("a.toml"))
    'topic = 1'
    """
    if raw.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        raise FileFaults(
            [Fault(str(path), 0, "This file is saved as UTF-16. Save it again as UTF-8.")]
        )
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        raise FileFaults(
            [Fault(str(path), line, "A character here is not UTF-8. Save the file as UTF-8.")]
        ) from None
