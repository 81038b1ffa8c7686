"""Reads one line of mathematics back to the tree it was written from.

``parse(line(t)) == t`` for every well-formed tree (see :mod:`.line`). What a pupil might
type instead is read too: ``*`` or ``·`` for ×, any dash for a minus, ``<=``, ``x²``, ``½``,
``sqrt(2)``, ``?`` or ``_`` for an empty box, spaces left out or put in. What could be read
in two ways is refused: ``3/4x``, ``a/b/c``, ``2^3^2``. A comma always parts a list.

A person's line may name units (*20 litres*) and is refused where it holds a word (*60 sweets*,
:mod:`.unknown_words`); :func:`parse_written` reads what :func:`~.line.line` wrote, as it stands.

lark is imported, and the parser built, when the first line is read; it is kept after that.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from typing import TYPE_CHECKING, Any, NamedTuple, cast

from itembank.notation.clock_text import A_TIME, CLOSE_UP, holds_time, no_time_of_day
from itembank.notation.line import line
from itembank.notation.normalise import normalise
from itembank.notation.pence import p_is_letter
from itembank.notation.plain_lines import plain_line
from itembank.notation.short_ways import ShortWays
from itembank.notation.tree import Node, NotationError
from itembank.notation.tree.face import Part, kept_until_registered
from itembank.notation.tree.grammar import builder, grammar
from itembank.notation.tree.line_signs import check_limits
from itembank.notation.tree.parsed import RefusedError
from itembank.notation.unit_names import with_signs
from itembank.notation.unknown_words import letters_alone, letters_used, unknown_word
from itembank.text.characters import told
from itembank.text.late_pattern import late

if TYPE_CHECKING:
    from lark import Lark


# A dot at mid-height is a decimal point in much handwriting and older print, and times elsewhere.
# Beside a decimal point, or before a power as in 3·10⁴, it can only be times.
_HIGH_DOT = late(r"(?<![\d.])(\d+)[·⋅∙](\d+)(?![\d.]|\s*[\^⁰¹²³⁴⁵⁶⁷⁸⁹⁻])")


class ParseError(NotationError):
    """Text that cannot be read as mathematics.

    Attributes:
        position: the column at which reading stopped, counted from 1.
    """

    def __init__(self, message: str, position: int) -> None:
        super().__init__(message)
        self.position = position


def parse(
    text: str,
    *,
    pence: bool = True,
    letters: frozenset[str] = frozenset(),
    times: bool | None = None,
) -> Node:
    """Return the tree that `text`, as a person typed it, writes.

    With `pence` false, p is a letter wherever it stands. `letters` are known to stand for
    numbers, so that a run of them is a product. With `times` true, 14:35 is a time of day and
    no ratio; with None that is so where the line leaves nothing else (:func:`holds_time`).
    :func:`reading` finds all three out for the lines of one question.

    Raises:
        ParseError: `text` is not mathematics, may be read in two ways, holds a word, or goes
            past the limits of :mod:`.tree.line_signs`. The message is one sentence that says
            what to do.

    >>> from itembank.notation.tree import Int, Neg, Power, Sym
    >>> parse("3/4")
    Frac(num=Int(n=3), den=Int(n=4))
    >>> parse("-x²") == parse("−x^2") == Neg(Power(Sym("x"), Int(2)))
    True
    >>> parse("20 litres") == parse("20 l"), parse("2h35min") == parse("2 h 35 min")
    (True, True)
    >>> parse("3/4x")
    Traceback (most recent call last):
    ...
    itembank.notation.parse.ParseError: 3/4x can be read in two ways: write (3/4)x or 3/(4x).
    """
    return _read(text, pence, letters, times)


def parse_written(text: str, *, pence: bool = True) -> Node:
    """Return the tree that :func:`~.line.line` wrote as `text`.

    Letters side by side are a product, whatever they spell, and 14:35 close up is a time of
    day, since a ratio is written 14 : 35.

    Raises:
        ParseError: as :func:`parse`.

    >>> from itembank.notation.tree import ClockTime
    >>> parse_written("14:35") == ClockTime(14, 35), type(parse_written("14 : 35")).__name__
    (True, 'Ratio')
    """
    found = plain_line(text)
    return _read(text, pence, None, True) if found is None else found


def _read(text: str, pence: bool, letters: frozenset[str] | None, times: bool | None) -> Node:
    """Return the tree of a line; letters are None in a line that was written by :func:`line`."""
    # Of the text as typed, before any pattern is run over it.
    fault = check_limits(text)
    if fault:
        raise ParseError(fault[1], fault[0] + 1)
    if found := _HIGH_DOT.search(text):
        raise ParseError(
            f"{found[0]} can be read in two ways: write {found[1]}.{found[2]} or "
            f"{found[1]} × {found[2]}.",
            found.start() + 1,
        )
    plain, origins = normalise(text)

    def column(offset: int) -> int:
        return (origins[offset] if offset < len(origins) else len(text)) + 1

    if not plain:
        raise ParseError("There is nothing to read: type a number or an expression.", 1)
    if plain.count('"') % 2:
        left_open = column(plain.rindex('"'))
        raise ParseError(
            f"The quotation mark at column {left_open} is not closed: close it or take it out.",
            left_open,
        )
    if letters is not None:
        plain, origins = with_signs(plain, origins, letters)
        if times is None:
            times = holds_time([plain])
        for clock in CLOSE_UP.finditer(plain):
            if (times or clock["half"]) and not A_TIME.fullmatch(clock[0]):
                raise ParseError(no_time_of_day(clock), column(clock.start()))
        # Before the grammar, to which 60 sweets is a product with six letters.
        if told := unknown_word(plain, letters):
            raise ParseError(told.message, column(told.offset))
    # And once more: one character may have become several, as ½ does.
    fault = check_limits(plain)
    if fault:
        raise ParseError(fault[1], column(fault[0]))
    from lark.exceptions import UnexpectedInput

    try:
        node = cast(Part, _quick_parser(pence, bool(times)).parse(plain)).node
        # What cannot be written back was not understood: the line face knows what is well formed.
        line(node, pence=pence)
    except RefusedError as refused:
        raise ParseError(str(refused), column(refused.offset)) from None
    except NotationError as error:
        raise ParseError(str(error), 1) from None
    except UnexpectedInput as error:
        at = error.pos_in_stream
        # At the end lark gives an empty token with the place of the last one.
        offset = len(plain) if at is None or getattr(error, "token", None) == "" else at
        raise ParseError(_explain(plain, offset, column(offset)), column(offset)) from None
    return node


def _explain(plain: str, offset: int, column: int) -> str:
    """Return a sentence that says where reading stopped and what to do about it."""
    before, after = plain[:offset].rstrip(), plain[offset : offset + 1]
    # Brackets in a name open nothing.
    outside = re.sub(r'"[^"]*"', "", before)
    if not after:
        if outside.count("(") > outside.count(")"):
            return "A bracket is left open at the end: close it."
        return f"The line stops too early: write what comes after {before[-1:]}."
    if after == ")" and outside.count("(") <= outside.count(")"):
        return f"The bracket closed at column {column} was never opened: open it or take it out."
    if after == '"':
        return (
            f"A name in quotation marks (column {column}) stands alone: put a comma or = beside it."
        )
    if not before:
        return (
            f"A line of mathematics cannot begin with {told(after)}: begin with a number or a "
            "letter."
        )
    return f"Reading stopped at {told(after)} (column {column}): check what stands there."


class Reading(NamedTuple):
    """How the lines of one question are read: the arguments of :func:`parse`."""

    pence: bool
    letters: frozenset[str]
    times: bool


def reading(texts: Iterable[str]) -> Reading:
    """Return how the lines of one question are read, all of them alike.

    p straight after a number is pence, unless p can only be a letter (:mod:`.pence`).

    >>> reading(["4p - 12 = p"]).pence, reading(["14:35 + 50 min", "15:25"]).times
    (False, True)
    >>> sorted(reading(["2c × 3a × 4t", "24cat"]).letters)
    ['a', 'c', 't']
    """
    lines = list(texts)
    # In two rounds. A letter that stands alone in any line shows that a run of such letters in
    # another is a product; and the products so found make more letters known.
    seen = _NONE.union(*(letters_alone(_signed(text, _NONE)) for text in lines))
    signed = [_signed(text, seen) for text in lines]
    letters = _NONE.union(*(letters_used(node, seen) for node in signed))
    times = holds_time(signed)
    return Reading(not _letter_p(lines, letters, times), letters, times)


def reading_of_written(texts: Iterable[str]) -> Reading:
    """Return how lines of one question that :func:`~.line.line` wrote are read."""
    return Reading(not _letter_p(list(texts), None, True), _NONE, True)


_NONE = frozenset[str]()


@lru_cache(maxsize=1 << 14)
def _signed(text: str, letters: frozenset[str]) -> str:
    plain, origins = normalise(text)
    return with_signs(plain, origins, letters)[0]


def _letter_p(lines: list[str], letters: frozenset[str] | None, times: bool) -> bool:
    nodes = []
    for text in lines:
        # Nothing in such a line can tell what p is, and to read it costs time.
        if "p" not in text and "£" not in text:
            continue
        for pence in (True, False):
            # 5(2p - 3) can be no sum of money: with p for a letter it may be read after all.
            try:
                nodes.append(_read(text, pence, letters, times))
            except ParseError:
                continue
            break
    return p_is_letter(nodes)


def parse_together(texts: Iterable[str]) -> list[Node]:
    """Return the trees of the lines of one question, all read alike (:func:`reading`).

    Raises:
        ParseError: as :func:`parse`, for the first line that cannot be read.

    >>> parse_together(["4p - 12 = p", "p = 4"])[1] == parse("p = 4")
    True
    >>> parse_together(["4p + 12p"])[0] == parse("4p + 12p")
    True
    """
    lines = list(texts)
    how = reading(lines)
    return [parse(text, pence=how.pence, letters=how.letters, times=how.times) for text in lines]


@kept_until_registered
def _parser(pence: bool, times: bool) -> Lark:
    """Return the parser, built once in a process, for what p and 14:35 are read as."""
    from lark import Lark

    rules = grammar(pence, times)
    # LALR takes time in proportion to the line, and refuses a grammar with two readings when it
    # is built. An Earley parser would take any grammar, and pick a reading by itself.
    return Lark(rules, parser="lalr", lexer="contextual", transformer=cast(Any, builder()))


@kept_until_registered
def _quick_parser(pence: bool, times: bool) -> Lark | ShortWays:
    """Return what reads as the parser does, in fewer steps."""
    lark = _parser(pence, times)
    try:
        return ShortWays(lark)
    except AttributeError:  # another lark, which keeps its table otherwise
        return lark
