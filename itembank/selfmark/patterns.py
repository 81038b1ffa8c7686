"""Patterns of Python as patterns of JavaScript, meaning the same.

They are made from the tree that Python's own compiler reads a pattern into, so that nothing
rests on how a pattern happens to be spelt. What a digit, a letter and a space are is Unicode's
in Python; JavaScript's short forms know ASCII only, so classes are written out.
"""

from __future__ import annotations

import re
from re import _constants as c
from re import _parser
from typing import Any

_WORD = r"\p{L}\p{N}_"
_SPACE = r"\t-\r\x1c-\x20\x85\xa0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000"
_CATEGORY = {
    c.CATEGORY_DIGIT: r"\p{Nd}",
    c.CATEGORY_WORD: _WORD,
    c.CATEGORY_SPACE: _SPACE,
}
_BOUNDARY = f"(?:(?<=[{_WORD}])(?![{_WORD}])|(?<![{_WORD}])(?=[{_WORD}]))"
_NO_BOUNDARY = f"(?:(?<=[{_WORD}])(?=[{_WORD}])|(?<![{_WORD}])(?![{_WORD}]))"
_SYNTAX = frozenset("^$\\.*+?()[]{}|/")
# Python takes these for the letter as well, whatever the case.
_ALSO = {"k": "\u212a", "s": "\u017f"}


class NoSuchPattern(ValueError):
    """A pattern uses what has no counterpart."""


def in_javascript(pattern: str, flags: int = 0) -> list[str]:
    r"""Return a pattern's source and flags, for ``new RegExp(source, flags)``.

    Groups keep their names and numbers. The ``u`` flag is always set. The dotless and the dotted
    i of Turkish, which Python takes for an i where case does not matter, are not taken for one:
    the page shows such a pattern an i in their place.

    >>> in_javascript(r"(?P<n>\d+) ?(?:x|y)\b", re.I)[1]
    'iu'
    >>> in_javascript(r"a.b")
    ['a[^\\n]b', 'u']

    Raises:
        NoSuchPattern: it uses something that has not been needed so far.
    """
    tree = _parser.parse(pattern, flags)
    ignore = bool(tree.state.flags & re.I)
    folded = ignore and "(?-i:" in pattern  # JavaScript cannot heed the case in one part alone
    names = {number: name for name, number in tree.state.groupdict.items()}
    writer = _Writer(names, fold=folded, dot_all=bool(tree.state.flags & re.S))
    source = writer.sequence(tree)
    return [source, "iu" if ignore and not folded else "u"]


class _Writer:
    def __init__(self, names: dict[int, str], fold: bool, dot_all: bool) -> None:
        self.names, self.fold, self.dot_all = names, fold, dot_all

    def sequence(self, items: Any) -> str:
        return "".join(self.item(op, of) for op, of in items)

    def item(self, op: Any, of: Any) -> str:
        if op is c.LITERAL:
            return self._literal(of)
        if op is c.NOT_LITERAL:
            return f"[^{_in_class(of)}]"
        if op is c.ANY:
            return r"[\s\S]" if self.dot_all else r"[^\n]"
        if op is c.IN:
            return self._class(of)
        if op is c.BRANCH:
            return f"(?:{'|'.join(self.sequence(branch) for branch in of[1])})"
        if op is c.SUBPATTERN:
            return self._group(*of)
        if op in (c.MAX_REPEAT, c.MIN_REPEAT):
            return self._repeat(*of) + ("?" if op is c.MIN_REPEAT else "")
        if op in (c.ASSERT, c.ASSERT_NOT):
            direction, inside = of
            sign = "=" if op is c.ASSERT else "!"
            return f"(?{'<' if direction < 0 else ''}{sign}{self.sequence(inside)})"
        if op is c.AT:
            return {
                c.AT_BEGINNING: "^",
                c.AT_BEGINNING_STRING: "^",
                c.AT_END: r"(?=\n?$)",
                c.AT_END_STRING: "$",
                c.AT_BOUNDARY: _BOUNDARY,
                c.AT_NON_BOUNDARY: _NO_BOUNDARY,
            }[of]
        raise NoSuchPattern(f"{op} is not written in JavaScript yet")

    def _literal(self, code: int) -> str:
        char = chr(code)
        if self.fold and char.isalpha() and char.isascii():
            return f"[{char.lower()}{char.upper()}{_ALSO.get(char.lower(), '')}]"
        return f"\\{char}" if char in _SYNTAX else _shown(code)

    def _class(self, of: Any) -> str:
        inside, start = "", "["
        for op, what in of:
            if op is c.NEGATE:
                start = "[^"
            elif op is c.LITERAL:
                inside += _in_class(what)
                if self.fold and chr(what).isalpha():
                    inside += _in_class(ord(chr(what).swapcase()))
            elif op is c.RANGE:
                low, high = what
                inside += f"{_in_class(low)}-{_in_class(high)}"
                if self.fold and chr(low).isalpha() and chr(low).isascii():
                    inside += f"{chr(low).swapcase()}-{chr(high).swapcase()}\u017f\u212a"
            elif op is c.CATEGORY:
                if what is c.CATEGORY_NOT_SPACE:
                    return f"[^{_SPACE}]"
                if what is c.CATEGORY_NOT_WORD:
                    return f"[^{_WORD}]"
                if what is c.CATEGORY_NOT_DIGIT:
                    return r"\P{Nd}"
                inside += _CATEGORY[what]
            else:
                raise NoSuchPattern(f"{op} is not written in JavaScript yet")
        return f"{start}{inside}]"

    def _group(self, number: int | None, add: int, drop: int, inside: Any) -> str:
        fold, self.fold = self.fold, self.fold and not drop & re.I
        text = self.sequence(inside)
        self.fold = fold
        if number is None:
            return f"(?:{text})"
        name = self.names.get(number)
        return f"(?<{name}>{text})" if name else f"({text})"

    def _repeat(self, least: int, most: int, inside: Any) -> str:
        text = self.sequence(inside)
        if len(inside) > 1 or inside[0][0] not in (c.LITERAL, c.IN, c.ANY, c.SUBPATTERN, c.BRANCH):
            text = f"(?:{text})"
        unlimited = most is c.MAXREPEAT
        if (least, unlimited) in ((0, True), (1, True)):
            return text + ("+" if least else "*")
        if (least, most) == (0, 1):
            return text + "?"
        return (
            f"{text}{{{least},{'' if unlimited else most}}}"
            if least != most
            else (f"{text}{{{least}}}")
        )


def _in_class(code: int) -> str:
    char = chr(code)
    return f"\\{char}" if char in "\\]^-[/" else _shown(code)


def _shown(code: int) -> str:
    """Return a character as it stands, or by its number where nobody would see it."""
    if code > 0x7E or code < 0x20:
        return f"\\u{{{code:x}}}" if code > 0xFFFF else f"\\u{code:04x}"
    return chr(code)
