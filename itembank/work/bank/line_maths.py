"""Lines of one question's mathematics as a web page shows them: MathML, with the words for it."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from itembank.notation.parse import Reading

Piece = dict[str, str]
"""What prints in one place: ``kind`` is *text* or *math*, as in the file of a pack."""


def line_maths(lines: Iterable[str]) -> list[Piece]:
    """Return what prints of each line; one that cannot be read stays the text it is.

    All lines are those of one question, since one may tell how another is read: p is pence or a
    letter.

    >>> line_maths(["3/4", "<b>"])[0]["words"]
    '3 quarters'
    >>> line_maths(["<b>"])
    [{'kind': 'text', 'text': '<b>'}]
    """
    from itembank.notation.parse import reading

    texts = list(lines)
    how = reading(texts)
    return [dict(_piece(text, how)) for text in texts]


def prompt_runs(prompt: str, others: Iterable[str] = ()) -> list[Piece]:
    """Return what prints of a prompt with its mathematics in braces.

    `others` are further lines of the same question.

    Raises:
        UnreadableMaths: a brace is not closed, not opened, or holds nothing.

    >>> [run["kind"] for run in prompt_runs("Double {7}.")]
    ['text', 'math', 'text']
    """
    from itembank.bank.question.given.maths import split_prompt

    pieces = [[text] if maths else text for text, maths, _ in split_prompt(prompt)]
    return runs_of(pieces, others)[0]


def runs_of(
    pieces: Iterable[str | Iterable[str]], others: Iterable[str] = ()
) -> tuple[list[Piece], list[Piece]]:
    """Return what prints of a prompt in pieces, and of further lines of the same question.

    >>> runs, (key,) = runs_of(["Work out ", ["4p + 2p"], "."], ["6p"])
    >>> runs[0]["text"], key["words"]
    ('Work out ', '6 pence')
    """
    parts = [part if isinstance(part, str) else list(part) for part in pieces]
    lines = [part[0] for part in parts if not isinstance(part, str)]
    more = list(others)
    shown = line_maths([*lines, *more])
    maths = iter(shown)
    runs = [
        {"kind": "text", "text": part} if isinstance(part, str) else next(maths) for part in parts
    ]
    return runs, shown[len(lines) :]


@lru_cache(maxsize=1 << 14)
def _piece(text: str, how: Reading) -> tuple[tuple[str, str], ...]:
    from itembank.notation.mathml import mathml
    from itembank.notation.parse import ParseError, parse
    from itembank.notation.tree import NotationError
    from itembank.notation.words import words

    try:
        node = parse(text, pence=how.pence, letters=how.letters, times=how.times)
        found = {"kind": "math", "mathml": mathml(node), "line": text, "words": words(node)}
    except (ParseError, NotationError):
        found = {"kind": "text", "text": text}
    return tuple(found.items())
