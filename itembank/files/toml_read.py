"""TOML text read so that every fault can be told with its line and column.

``tomllib`` gives values without their places, so :class:`Locator` finds the line of a key
again from the text; :func:`read_toml` reads on after a part that cannot be read.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from itembank.data_class import dataclass
from itembank.files.faults import Fault
from itembank.files.toml_unseen import escaped_faults, seen, written_faults
from itembank.text.characters import without_hidden

KeyPath = tuple[str | int, ...]

_HEADER = re.compile(r"\s*(\[\[?)([^\[\]]+)\]\]?\s*(?:#.*)?$")
_KEY = re.compile(r"""\s*((?:[\w-]+|"[^"]*"|'[^']*')(?:\s*\.\s*(?:[\w-]+|"[^"]*"|'[^']*'))*)\s*=""")
_AT = re.compile(r"\s*\(at (?:line (\d+), column (\d+)|end of document)\)$")
_NOT_BRACKETS = re.compile(r"""\"(?:[^"\\]|\\.)*(?:\"|$)|'[^']*(?:'|$)|#.*""")


_OPENED = re.compile(
    r"""\"{3}|'{3}|\"(?:[^"\\]|\\.)*(?:\"|$)|'[^']*(?:'|$)|#""",
)
# TOML lets one or two quotation marks stand right before the three that close a text.
_CLOSED_BY = re.compile(r"""(?:[^"\\]|\\.|\"{1,2}(?!\"))*?\"{3,5}""")
_CLOSED_RAW_BY = re.compile(r"""(?:[^']|'{1,2}(?!'))*?'{3,5}""")


class Locator:
    r"""Finds the line of a key path in TOML text.

    Where a key stands inside an inline table, or is missing, the line is that of the nearest
    table or key that holds it.

    >>> text = 'school = "Larkhythe School"\n\n[[classes]]\nname = "8K"\nyear = 8\n'
    >>> Locator(text).line(("classes", 0, "year"))
    5
    """

    def __init__(self, text: str) -> None:
        self._lines = text.split("\n")
        self._found: dict[KeyPath, int] = {(): 0}
        self.left_open: list[tuple[int, int]] = []
        """Lists and inline tables that a header or the end cut off: their line, and where cut."""
        self.starts: list[int] = []
        """The lines of the headers of tables that stand in no other table."""
        self._scan()

    def _scan(self) -> None:
        table: KeyPath = ()
        counts: dict[KeyPath, int] = {}
        fence = ""
        depth = opened = 0
        for number, line in enumerate(self._lines, 1):
            if fence:  # inside a string of several lines, nothing is a key
                fence = _fence_after(line, fence)
                continue
            # Most lines are a key and its value, and no header.
            header = _HEADER.match(line) if "[" in line else None
            # A bare word is no value of a list, so a name in two brackets ends one that was left
            # open.
            if depth and not (header and header[1] == "[[" and _is_plain(header[2])):
                depth = max(depth + _brackets(line), 0)
            elif header:
                if depth:
                    self.left_open.append((opened, number))
                    depth = 0
                table = self._enter(header, counts, number)
            elif match := _KEY.match(line):
                key = match[1]
                path = table
                for name in (key,) if key.isidentifier() else _split(key):
                    path = (*path, name)
                    self._found.setdefault(path, number)
                if "[" in line or "{" in line:
                    depth, opened = max(_brackets(line[match.end() :]), 0), number
            if '"""' in line or "'''" in line:
                fence = _fence_after(line, "")
        if depth:
            self.left_open.append((opened, len(self._lines) + 1))

    def _enter(self, header: re.Match[str], counts: dict[KeyPath, int], number: int) -> KeyPath:
        names = _split(header[2])
        if len(names) == 1:
            self.starts.append(number)
        table: KeyPath = ()
        for depth, name in enumerate(names):
            table = (*table, name)
            if depth == len(names) - 1 and header[1] == "[[":
                counts[table] = counts.get(table, -1) + 1
                self._found.setdefault(table, number)
            if table in counts:
                table = (*table, counts[table])
        self._found[table] = number
        return table

    def line(self, path: KeyPath) -> int:
        """Return the line of `path`, counted from 1, or 0 where only the file is known."""
        while path not in self._found:
            path = path[:-1]
        return self._found[path]

    def line_of_word(self, path: KeyPath, word: str) -> int:
        """Return the line at or after `path` where `word` stands in quotation marks."""
        start = self.line(path)
        for number in range(max(start, 1), len(self._lines) + 1):
            if f'"{word}"' in self._lines[number - 1] or f"'{word}'" in self._lines[number - 1]:
                return number
        return start


def _fence_after(line: str, fence: str) -> str:
    """Return the marks that a string of several lines is still open with at the end of a line.

    `fence` is what it was open with at the start; "" is none. Marks inside another string, or in
    a comment, are none.
    """
    at = 0
    while True:
        if fence:
            end = (_CLOSED_BY if fence == '"""' else _CLOSED_RAW_BY).match(line, at)
            if end is None:
                return fence
            at, fence = end.end(), ""
        found = _OPENED.search(line, at)
        if found is None or found[0] == "#":
            return ""
        at = found.end()
        if found[0] in ('"""', "'''"):
            fence = found[0]


def _brackets(line: str) -> int:
    """Return how many more brackets a line of values opens than it closes."""
    bare = _NOT_BRACKETS.sub("", line)
    return sum(bare.count(c) for c in "[{") - sum(bare.count(c) for c in "]}")


def _is_plain(name: str) -> bool:
    """Whether a name in double square brackets is that of a table, not of a value."""
    return re.fullmatch(r"[A-Za-z_][\w-]*(?:\s*\.\s*[A-Za-z_][\w-]*)*", name.strip()) is not None


def _split(dotted: str) -> list[str]:
    parts = re.findall(r"""[\w-]+|"[^"]*"|'[^']*'""", dotted)
    return [part.strip("\"'") for part in parts]


_EXPECTED = (
    ("Invalid statement", "a line begins with a key, [ or #, and this one does not"),
    ("Expected newline or end of document", "nothing more may stand on this line after the value"),
    ("Expected '=' after a key", "an = is expected after the key"),
    ("Invalid initial character for a key", "a key of letters, digits, - or _ is expected here"),
    ("Cannot overwrite a value", "this key is given twice; take one of them out"),
    ("Duplicate inline table key", "this key is given twice; take one of them out"),
    ("Cannot declare", "this table is given twice; put both parts together, or use [[ ]]"),
    ("Cannot mutate", "this table is already closed; put its keys where it begins"),
    ("Expected ']]'", "]] is expected at the end of the name of a table"),
    ("Expected ']'", "] is expected at the end of the name of a table"),
    ("Unclosed array", "a list is left open; a ] or a comma is expected"),
    ("Unclosed inline table", "a table in one line is left open; a } or a comma is expected"),
    ("Unterminated string", "a quotation mark is expected at the end of the text"),
    ("Illegal character '\\n'", "a quotation mark is expected before the end of the line"),
    ("Illegal character", "a character here may not stand in a text; take it out"),
    ("Found invalid character", "a character here may not stand in a comment; take it out"),
    ("Unescaped", "a \\ is written \\\\ in double quotation marks, or use single ones"),
    ("Invalid hex value", "a \\u in double quotation marks takes four hexadecimal digits"),
    ("Invalid date", "there is no such day; write a date as 2026-09-14"),
    (
        "Invalid value",
        "a value is expected: text in quotation marks, a number, a date, true, false or a list",
    ),
)
"""How the reader's messages are said to a teacher; the first that fits is used."""


def syntax_fault(path: Path | str, text: str, error: str) -> Fault:
    """Return the fault that a message of ``tomllib`` stands for, in plain words.

    >>> str(syntax_fault("a.toml", "x = ", "Invalid value (at line 1, column 5)"))[:56]
    'a.toml, line 1, column 5: This line cannot be read as TO'
    """
    match = _AT.search(error)
    line, column = (int(match[1]), int(match[2])) if match and match[1] else (0, 0)
    what = _AT.sub("", error)
    said = next((plain for start, plain in _EXPECTED if what.startswith(start)), "")
    left_open = [at for at, cut in Locator(text).left_open if at <= line <= cut or not line]
    if left_open and "string" not in what and "Illegal" not in what:
        said = "the list that begins here is left open; put a ] after its last value"
        line, column = left_open[0], 0
    if not line:
        line = text.rstrip("\n").count("\n") + 1
    if not said:
        said = f"{what[:1].lower()}{what[1:]}; look at the quotation marks, commas and brackets"
    return Fault(str(path), line, f"This line cannot be read as TOML: {said}.", column)


@dataclass(frozen=True, slots=True)
class TomlText:
    """TOML text as data, as far as it can be read, with a fault for each part that cannot.

    `text` is what was read: the lines of parts that cannot be read are empty in it.
    """

    data: dict[str, Any] | None
    locator: Locator
    text: str
    faults: tuple[Fault, ...] = ()
    head_damaged: bool = False
    """Whether a line before the first block was left out."""


LEAST_REPAIRS = 20
REPAIR_CHARS = 5_000_000
"""Parts of a file that are left out before the rest is given up: so many in any file, and as
many more as keep within so many characters read."""
MOST_DOTS = 100
_DOTTED = re.compile(r"[\s\[]*[\w.\s-]*")


def read_toml(text: str, path: Path | str, blocks: Sequence[str] = ()) -> TomlText:
    r"""Return TOML text as data. A block that cannot be read is left out and the rest is read.

    `blocks` names the arrays of tables a file is made of: a fault inside one of them spoils
    that entry alone, so that what is wrong further down is told in the same run.

    >>> text = 'a = 1\n[[items]]\nb = \n[[items]]\nb = 2\n'
    >>> read = read_toml(text, "a.toml", ["items"])
    >>> read.data, [fault.line for fault in read.faults]
    ({'a': 1, 'items': [{'b': 2}]}, [3])
    """
    faults = written_faults(path, text)
    lines = (without_hidden(text) if faults else text).split("\n")
    head_damaged = False
    for number, text_line in enumerate(lines, 1):
        # A name in very many parts takes the reader a time that grows with their square.
        if text_line.count(".") > MOST_DOTS:
            name = _DOTTED.match(text_line)
            if name is not None and name.group().count(".") > MOST_DOTS:
                what = f"A name here has more than {MOST_DOTS} parts. Look for a missing mark."
                return TomlText(None, Locator(""), "", (Fault(str(path), number, what),), True)
    most = max(LEAST_REPAIRS, REPAIR_CHARS // (len(text) + 1)) + len(faults)
    while len(faults) < most:
        now = "\n".join(lines)
        try:
            data = tomllib.loads(now)
        except tomllib.TOMLDecodeError as error:
            fault = syntax_fault(path, now, str(error))
        except (ValueError, RecursionError):  # a number or a nesting beyond all measure
            faults.append(Fault(str(path), 0, "This cannot be read as TOML."))
            break
        else:
            if escaped := escaped_faults(path, now, data):
                faults += escaped
                data = seen(data)  # and is not told again of each value
            return TomlText(data, Locator(now), now, tuple(faults), head_damaged)
        faults.append(fault)
        start, end = _block(lines, fault.line, blocks)
        head_damaged = head_damaged or start == end
        if not any(lines[start - 1 : end]):
            break
        lines[start - 1 : end] = [""] * (end - start + 1)
    else:
        what = "There is more after this that cannot be read as TOML. Put the rest right first."
        faults.append(Fault(str(path), faults[-1].line, what, faults[-1].column))
    return TomlText(None, Locator(""), "", tuple(faults), head_damaged)


def _block(lines: list[str], line: int, blocks: Sequence[str]) -> tuple[int, int]:
    """Return the first and the last line of the block that holds `line`, or that line twice."""
    starts = [
        number
        for number, text in enumerate(lines, 1)
        if text.lstrip().startswith("[[")
        and (match := _HEADER.match(text))
        and match[2].strip() in blocks
    ]
    before = [start for start in starts if start <= line]
    if not before:
        return line, line
    after = [start for start in starts if start > line]
    return before[-1], after[0] - 1 if after else len(lines)
