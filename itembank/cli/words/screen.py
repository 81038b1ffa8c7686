"""The one way out to a terminal or a file: nothing that is printed steers it or makes it fail.

What data holds of escapes, control characters and bytes that are no text is shown as numbers.
What the stream's encoding lacks is written in words or signs that mean the same: never as a
question mark, and never so that an answer reads as another.
"""

from __future__ import annotations

import codecs
import contextlib
import sys
from collections.abc import Iterable, Iterator
from typing import Any, TextIO, cast

from itembank.text.characters import visible

ERRORS = "itembank-plain"

_RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻⁼⁽⁾ⁿ"
_PLAIN = {
    **dict.fromkeys("−‐‑‒–﹣", "-"),
    "—": "--",
    "×": " times ",
    "÷": " divided by ",
    "⁄": "/",
    "∶": ":",
    "√": " root ",
    "π": " pi ",
    "°": " degrees",
    "£": "GBP ",
    "€": "EUR ",
    "≤": "<=",
    "≥": ">=",
    "≠": " is not ",
    "≈": " is about ",
    "→": "->",
    "←": "<-",
    **dict.fromkeys("‘’′", "'"),
    **dict.fromkeys("“”″", '"'),
    "…": "...",
    "✓": "(tick)",
    "✔": "(tick)",
    "✗": "(cross)",
    "✘": "(cross)",
    "•": "*",
    "□": "[ ]",
    **dict.fromkeys("\xa0\u2002\u2003\u2007\u2009\u200a\u202f", " "),
    "½": " 1/2",
    "¼": " 1/4",
    "¾": " 3/4",
    "⅓": " 1/3",
    "⅔": " 2/3",
    "⅕": " 1/5",
    "⅛": " 1/8",
}
"""Signs and what stands for them where they cannot be written; the rest go by their numbers."""


def _plain(error: UnicodeError) -> tuple[str, int]:
    if not isinstance(error, UnicodeEncodeError):
        raise error
    said = []
    raised = False
    for char in error.object[error.start : error.end]:
        # Several raised signs are one power: x²⁴ is no x^2^4.
        if char in _RAISED:
            said.append("" if raised else "^(")
            said.append("n" if char == "ⁿ" else "0123456789+-=()"[_RAISED.index(char)])
        else:
            said.append(")" if raised else "")
            said.append(_PLAIN.get(char) or visible(char))
        raised = char in _RAISED
    text = "".join(said) + (")" if raised else "")
    return text.encode("ascii", "backslashreplace").decode(), error.end


codecs.register_error(ERRORS, _plain)


class Screen:
    """A text stream that shows everything and obeys nothing; all else is as its own stream is."""

    def __init__(self, stream: TextIO) -> None:
        self.steered = stream
        """The stream itself, for what the tool draws by moving the cursor."""

    def __getattr__(self, name: str) -> Any:
        """Return what the stream has of this name."""
        return getattr(self.steered, name)

    @property
    def encoding(self) -> str:
        """Return the encoding; the parser of the command line would go around one it pities."""
        encoding = getattr(self.steered, "encoding", None) or "utf-8"
        with contextlib.suppress(LookupError):
            if codecs.lookup(encoding).name == "ascii":
                return "iso8859-1"
        return encoding

    def write(self, text: str) -> int:
        """Write text that steers nothing."""
        self.steered.write(visible(text))
        return len(text)

    def writelines(self, lines: Iterable[str]) -> None:
        """Write each text."""
        for line in lines:
            self.write(line)


@contextlib.contextmanager
def screens() -> Iterator[None]:
    """Have everything that the body prints go through a :class:`Screen`."""
    before = sys.stdout, sys.stderr
    if isinstance(sys.stdout, Screen):
        yield
        return
    for stream in before:
        change = getattr(stream, "reconfigure", None)
        if change is not None and getattr(stream, "errors", ERRORS) != ERRORS:
            change(errors=ERRORS)
    sys.stdout, sys.stderr = (
        cast(TextIO, Screen(stream)) if stream else stream for stream in before
    )
    try:
        yield
    finally:
        sys.stdout, sys.stderr = before
