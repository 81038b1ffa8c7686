"""Coverage-guided fuzzing of the line parser: any text is read, or refused with ParseError.

Run it so::

    pip install -e '.[fuzz]'
    python fuzz/fuzz_line.py -max_total_time=600 -max_len=300

What is read must also be written, and read back to the same tree. A crash is written to a file
by libFuzzer; give that file as the argument to see it again.
"""

from __future__ import annotations

import contextlib
import sys

import atheris

with atheris.instrument_imports(include=["itembank"]):
    from itembank.notation import ParseError, line, mathml, parse, words
    from itembank.notation.algebra import algebra
    from itembank.notation.tree import NotationError
    from itembank.notation.value import exact

PIECES = [
    "x", "y", "p", "12", "3/4", "1 2/3", "0.1̇6̇", "½", "²", "√", "∛", "(", ")", "+", "-", "−",
    "×", "÷", "*", "of", "or", "=", "<=", "≠", ":", ",", "£", "p", "%", " kg", " m/s", "°", "^",
    "_", "?", '"Pack B"', "“", " ", "٣", "３", "\u202e", "\u2064", "9^9", "π",
]  # fmt: skip


def text_from(data: bytes) -> str:
    """Return a text made of pieces of notation and of any characters."""
    provider = atheris.FuzzedDataProvider(data)
    parts = []
    while provider.remaining_bytes() and len(parts) < 60:
        if provider.ConsumeBool():
            parts.append(PIECES[provider.ConsumeIntInRange(0, len(PIECES) - 1)])
        else:
            parts.append(provider.ConsumeUnicode(2))
    return "".join(parts)


def check(data: bytes) -> None:
    """Read a text in both ways; what is read must come back the same."""
    text = text_from(data)
    for pence in (True, False):
        try:
            tree = parse(text, pence=pence)
        except ParseError as error:
            if not (1 <= error.position <= len(text) + 1 and str(error)):
                raise RuntimeError(f"no place for {text!r}: {error.position}") from error
            continue
        written = line(tree, pence=pence)
        if parse(written, pence=pence) != tree:
            raise RuntimeError(f"{text!r} was written as {written!r}")
        mathml(tree)
        words(tree)
        for worth in (exact, algebra):
            with contextlib.suppress(NotationError):
                worth(tree)


if __name__ == "__main__":
    atheris.Setup(sys.argv, check)
    atheris.Fuzz()
