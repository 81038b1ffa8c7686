"""Changes what a TOML file says, and leaves all else of it as a person wrote it.

The text is cut into the tables it is made of. A table that says what it is to say stays as it
is to the letter; in one that changes, tomlkit changes the values that differ. A table that is
new is written in the style of :mod:`itembank.files.toml_document`. What comes of it is read
again: where it would not say exactly what it is to say, the file is written anew, with the
comments of the old one.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping, Sequence
from difflib import SequenceMatcher
from typing import Any

from itembank.data_class import dataclass
from itembank.files.toml_comments import with_comments
from itembank.files.toml_document import is_tables, toml_block, toml_document
from itembank.files.toml_read import Locator


def with_data(text: str, data: Mapping[str, Any]) -> str:
    r"""Return the text of a TOML file changed so that it says `data`.

    Of a list of tables, one that goes takes the comments inside it and right above it along;
    all other comments stay.

    Raises:
        tomllib.TOMLDecodeError: `text` is not TOML.

    >>> text = '# Ours.\n[[classes]]\nname = "8K"  # top set\nyear = 8\n'
    >>> print(with_data(text, {"classes": [{"name": "8K", "year": 9}]}), end="")
    # Ours.
    [[classes]]
    name = "8K"  # top set
    year = 9
    """
    was = tomllib.loads(text)
    if was == data:
        return text
    try:
        edited = _edited(text, was, data)
        # The proof of it: whatever was missed above, no wrong file is ever handed on.
        if tomllib.loads(edited) == data:
            return edited
    except (ValueError, KeyError, TypeError, IndexError):  # laid out in a way not foreseen
        pass
    return with_comments(toml_document(data), text, lambda _comment: False)


@dataclass(frozen=True, slots=True)
class _Block:
    """The lines of one table and of those within it, with what stands above it."""

    above: list[str]
    lines: list[str]
    name: str = ""

    @property
    def kept_above(self) -> list[str]:
        """What stays where the table goes: all but the comments that touch it."""
        kept = list(self.above)
        while kept and kept[-1].strip():
            kept.pop()
        while kept and not kept[-1].strip():
            kept.pop()
        return kept if any(line.strip() for line in kept) else []


def _blocks(text: str) -> tuple[list[str], list[_Block], list[str]]:
    """Return the lines before the first table, the tables that stand in no other, and the end."""
    lines = text.rstrip("\n").split("\n")
    # Comments at the very end belong to no table, and stay whatever becomes of the last one.
    end = len(lines)
    while end and (not lines[end - 1].strip() or lines[end - 1].lstrip()[0] == "#"):
        end -= 1
    lines, tail = lines[:end], lines[end:]
    starts = [number - 1 for number in Locator(text).starts]
    begins = []
    for start in starts:
        begin = start
        # What stands right above a table's heading is about that table.
        while begin and (not lines[begin - 1].strip() or lines[begin - 1].lstrip()[0] == "#"):
            begin -= 1
        begins.append(max(begin, _earliest(starts, start)))
    found = []
    for place, start in enumerate(starts):
        end = begins[place + 1] if place + 1 < len(starts) else len(lines)
        name = next(iter(tomllib.loads("\n".join(lines[start:end]))))
        found.append(_Block(lines[begins[place] : start], lines[start:end], name))
    return lines[: begins[0]] if begins else lines, found, tail


def _earliest(starts: Sequence[int], start: int) -> int:
    """Return the first line that can belong to the table that starts on a line."""
    return max((place + 1 for place in starts if place < start), default=0)


def _edited(text: str, was: Mapping[str, Any], data: Mapping[str, Any]) -> str:
    head, blocks, tail = _blocks(text)
    names = {block.name for block in blocks}
    in_head = {name: value for name, value in was.items() if name not in names}
    plain = {
        name: value
        for name, value in data.items()
        if name not in names
        and (name in in_head or not (isinstance(value, Mapping) or is_tables(value)))
    }
    lines = _changed(head, in_head, plain)
    done: set[str] = set()
    for block in blocks:
        if block.name in done:
            continue
        done.add(block.name)
        same = [namesake for namesake in blocks if namesake.name == block.name]
        if isinstance(was[block.name], list):
            rows = data.get(block.name, [])
            if not isinstance(rows, list):
                raise ValueError(block.name)
            lines += _rows(same, was[block.name], rows)
        elif block.name in data:
            now = {block.name: data[block.name]}
            lines += block.above
            lines += _changed(block.lines, {block.name: was[block.name]}, now)
        else:
            lines += block.kept_above
    for name, value in data.items():
        if name not in done and name not in plain:
            lines += ["", *_written(name, value)]
    return "\n".join([*lines, *tail]).strip("\n") + "\n"


def _rows(
    blocks: Sequence[_Block], was: Sequence[Any], rows: Sequence[Mapping[str, Any]]
) -> list[str]:
    """Return the lines of a list of tables as it is to be, from the blocks of what it was."""
    # Such as one list that is written in a line, or under a dotted name.
    if len(blocks) != len(was):
        raise ValueError("a table of the list is written elsewhere")
    lines: list[str] = []
    pairs = _paired(was, rows)
    kept = {old for old, _ in pairs if old is not None}
    name = blocks[0].name
    above_gone = {old: block.kept_above for old, block in enumerate(blocks) if old not in kept}
    for old, new in pairs:
        for gone in [place for place in above_gone if old is not None and place < old]:
            lines += above_gone.pop(gone)
        if old is None:
            lines += ["", *_written(name, [rows[new]])]
        else:
            block = blocks[old]
            lines += block.above
            lines += _changed(block.lines, {name: [was[old]]}, {name: [rows[new]]})
    for above in above_gone.values():
        lines += above
    return lines


def _paired(
    was: Sequence[Mapping[str, Any]], rows: Sequence[Mapping[str, Any]]
) -> list[tuple[int | None, int]]:
    """Return each new row with the old one it comes from, or None, in the new order."""
    old_keys, new_keys = [repr(row) for row in was], [repr(row) for row in rows]
    found: dict[int, int] = {}
    for kind, a, b, c, d in SequenceMatcher(None, old_keys, new_keys, False).get_opcodes():
        if kind == "equal":
            found |= dict(zip(range(c, d), range(a, b), strict=True))
    left = [place for place in range(len(was)) if place not in found.values()]
    for new in range(len(rows)):
        if new in found or not left:
            continue
        best = max(left, key=lambda old: _likeness(was[old], rows[new]))
        if _likeness(was[best], rows[new]) > 0:
            found[new] = best
            left.remove(best)
    return [(found.get(new), new) for new in range(len(rows))]


def _likeness(row: Mapping[str, Any], other: Mapping[str, Any]) -> float:
    """Return how likely two rows are one that was changed: 0 not at all, 2 the very same.

    Rows that begin alike, as with one name, are one; others are where more than half is equal.
    """
    same = sum(name in other and other[name] == value for name, value in row.items())
    share = same / max(len(row), len(other), 1)
    alike = next(iter(row.items()), None) == next(iter(other.items()), ())
    return 1 + share if alike else share if share > 0.5 else 0


def _written(name: str, value: Any) -> list[str]:
    return toml_block(name, value).rstrip("\n").split("\n")


def _changed(lines: list[str], was: Mapping[str, Any], now: Mapping[str, Any]) -> list[str]:
    """Return the lines of a table, or of a head, with the values that differ changed."""
    if was == now:
        return lines
    import tomlkit

    document: Any = tomlkit.parse("\n".join(lines) + "\n")
    _change(document, was, now)
    return tomlkit.dumps(document).rstrip("\n").split("\n")


def _change(there: Any, was: Mapping[str, Any], now: Mapping[str, Any]) -> None:
    for name in was:
        if name not in now:
            there.remove(name)
    for name, value in now.items():
        if name not in was:
            there[name] = _as_item(value)
        elif was[name] == value:
            continue
        elif isinstance(value, Mapping) and isinstance(was[name], Mapping):
            _change(there[name], was[name], value)
        elif is_tables(value):
            _change_rows(there[name], was[name], value)
        else:
            there[name] = _as_item(value)


def _change_rows(there: Any, was: Any, rows: Sequence[Mapping[str, Any]]) -> None:
    """Change a list of tables within a table.

    Raises:
        ValueError: it cannot be done where it stands.
    """
    import tomlkit

    if not isinstance(there, tomlkit.items.AoT):
        raise ValueError("written in one line")
    pairs = _paired(was, rows)
    kept = [old for old, _ in pairs if old is not None]
    if kept != sorted(kept) or [old for old, _ in pairs[: len(kept)]] != kept:
        raise ValueError("in another order")
    for old, new in pairs[: len(kept)]:
        assert old is not None
        _change(there[old], was[old], rows[new])
    for old in reversed(range(len(was))):
        if old not in kept:
            del there[old]
    for _, new in pairs[len(kept) :]:
        there.append(_as_item(rows[new]))


def _as_item(value: Any) -> Any:
    """Return a value as tomlkit holds it, written in our style."""
    import tomlkit

    return tomlkit.parse(toml_document({"x": value}))["x"]
