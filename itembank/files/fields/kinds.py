"""The kinds of value a field may hold. Each reads a value, or refuses it in words.

What a kind reads goes into the value of a field as it is; where it refuses one, it also gives
what can be gone on with (:meth:`Kind.blank`), so that everything else in a file is still told.
"""

from __future__ import annotations

import datetime
import unicodedata
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from itembank.files.faults import join_words, nearest
from itembank.files.fields.wrong import HEADER, Refused, Wrong
from itembank.text.characters import shown, shown_value

Definitions = dict[str, dict[str, Any]]
MOST_TEXT = 2_000


class Kind:
    """A kind of value: what it is called, how it is read, and its JSON Schema."""

    wanted = "something else"
    example = "…"
    """What stands after the = in the line that a missing key is told to be given."""

    def takes(self, value: Any) -> bool:
        """Tell whether a value is of the type of this kind, be it right or wrong."""
        raise NotImplementedError

    def read(self, value: Any) -> Any:
        """Return what a value of data says.

        Raises:
            Refused: it is not what this kind holds.
        """
        raise NotImplementedError

    def blank(self) -> Any:
        """Return what stands for a value that was refused."""
        return None

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        """Return the kind as JSON Schema; records go into `definitions`."""
        raise NotImplementedError

    def refuse(self, value: Any) -> Refused:
        """Return the refusal of a value that is of another type."""
        return self.wrong(f"must be {self.wanted}, not {shown_value(value)}")

    def wrong(self, says: str, value: Any = None) -> Refused:
        """Return a refusal; `says` is the rest of a sentence that begins with the key."""
        return Refused([Wrong((), says)], self.blank() if value is None else value)


def text_fault(text: str, most: int = MOST_TEXT) -> str:
    """Return what keeps `text` from being one line that prints as it is typed, or ``""``.

    >>> text_fault("Work out {1/2}.")
    ''
    >>> text_fault(chr(0x202E) + "12")
    'holds a character that cannot be seen (U+202E); take it out'
    """
    if fault := _line_fault(text, most):
        return fault
    if text.isascii() and text.isprintable():
        return ""
    for char in text:
        # Controls, and marks that turn the direction of reading, would print something else.
        if unicodedata.category(char) in ("Cc", "Cf", "Cs", "Co", "Zl", "Zp") and char != "\u00ad":
            return f"holds a character that cannot be seen (U+{ord(char):04X}); take it out"
    return ""


def _line_fault(text: str, most: int) -> str:
    if not text.strip():
        return "is empty; write something between the quotation marks"
    if "\n" in text:
        return "must be one line; take out the line break"
    return "" if len(text) <= most else f"is too long; write at most {most:,} characters"


@dataclass(frozen=True, slots=True)
class AnyText(Kind):
    """Text of any sort and length, such as a program writes."""

    wanted = "text in quotation marks"

    def takes(self, value: Any) -> bool:
        return isinstance(value, str)

    def read(self, value: Any) -> str:
        if isinstance(value, str):
            return value
        raise self.refuse(value)

    def blank(self) -> str:
        return ""

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        return {"type": "string"}


@dataclass(frozen=True, slots=True)
class Line(AnyText):
    """One line of text that prints as it is typed, of at most `most` characters.

    It may be `open`: said to be nothing by an empty one.
    """

    most: int = MOST_TEXT
    bare: bool = False
    """Whether spaces before and after it are dropped, and only a line break is looked for.

    A file of a department is read without characters that nobody sees; a sign that a person's
    own typeface has may stand in it.
    """
    open: bool = False

    def read(self, value: Any) -> str:
        if not isinstance(value, str):
            raise self.refuse(value)
        if self.open and not value:
            return value
        if fault := _line_fault(value, self.most) if self.bare else text_fault(value, self.most):
            raise self.wrong(fault)
        return value.strip() if self.bare else value

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        least = {} if self.open else {"minLength": 1}
        most = {} if self.most == MOST_TEXT else {"maxLength": self.most}
        return {"type": "string", **least, **most}


@dataclass(frozen=True, slots=True)
class Whole(Kind):
    """A whole number, perhaps from `low` or up to `high`."""

    low: int | None = None
    high: int | None = None

    @property
    def wanted(self) -> str:  # type: ignore[override]
        """Say which numbers there may be."""
        if self.low is not None and self.high is not None:
            return f"a whole number from {self.low} to {self.high}"
        return "a whole number"

    def takes(self, value: Any) -> bool:
        return isinstance(value, int) and not isinstance(value, bool)

    def read(self, value: Any) -> int:
        if isinstance(value, bool) or not isinstance(value, int):
            raise self.refuse(value)
        low, high = self.low, self.high
        if (low is not None and value < low) or (high is not None and value > high):
            raise self.wrong(f"must be {self._bounds()}, not {value}")
        return value

    def _bounds(self) -> str:
        if self.low is None:
            return f"at most {self.high}"
        return f"at least {self.low}" if self.high is None else f"from {self.low} to {self.high}"

    def blank(self) -> int:
        return self.low or 0

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        low = {} if self.low is None else {"minimum": self.low}
        high = {} if self.high is None else {"maximum": self.high}
        return {"type": "integer", **low, **high}


@dataclass(frozen=True, slots=True)
class Number(Kind):
    """A number, whole or not."""

    wanted = "a number"

    def takes(self, value: Any) -> bool:
        return isinstance(value, int | float) and not isinstance(value, bool)

    def read(self, value: Any) -> float:
        if self.takes(value):
            return float(value)
        raise self.refuse(value)

    def blank(self) -> float:
        return 0.0

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        return {"type": "number"}


@dataclass(frozen=True, slots=True)
class Flag(Kind):
    """True or false."""

    wanted = "true or false"

    def takes(self, value: Any) -> bool:
        return isinstance(value, bool)

    def read(self, value: Any) -> bool:
        if isinstance(value, bool):
            return value
        raise self.refuse(value)

    def blank(self) -> bool:
        return False

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        return {"type": "boolean"}


@dataclass(frozen=True, slots=True)
class Date(Kind):
    """A day, as TOML's own 2026-11-30 or in quotation marks."""

    wanted = "a day such as 2026-11-30"
    example = "2026-11-30, with your day"

    def takes(self, value: Any) -> bool:
        return isinstance(value, datetime.date | str)

    def read(self, value: Any) -> datetime.date:
        found = value
        if isinstance(value, str):
            try:
                found = datetime.date.fromisoformat(value)
            except ValueError:
                raise self.refuse(value) from None
            if found.isoformat() != value:  # 20261130 and 2026-W49-1 are read as well
                raise self.refuse(value)
        if isinstance(found, datetime.date) and not isinstance(found, datetime.datetime):
            return found
        raise self.refuse(value)

    def blank(self) -> datetime.date:
        return datetime.date.min

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        return {"type": "string", "format": "date"}


@dataclass(frozen=True, slots=True)
class Choice(Kind):
    """One of a few words; `what` is what a word names, where there are too many to list."""

    words: Sequence[Any]
    what: str = ""

    @property
    def wanted(self) -> str:  # type: ignore[override]
        """Say which words there may be."""
        return join_words([str(word) for word in self.words], "or")

    def takes(self, value: Any) -> bool:
        return isinstance(value, type(self.words[0])) and not isinstance(value, bool)

    def read(self, value: Any) -> Any:
        if not self.takes(value):
            raise self.refuse(value)
        if value in self.words:
            return value
        if not self.what:
            raise self.wrong(f"must be {self.wanted}, not ‘{shown(str(value))}’")
        near = nearest(str(value).lower(), [str(word) for word in self.words], 1)
        advice = f"Did you mean ‘{near[0]}’?" if near else f"It may be {self.wanted}."
        says = f"There is no {self.what} ‘{value}’. {advice}"
        raise Refused([Wrong((), says, whole=True)], self.blank())

    def blank(self) -> Any:
        return self.words[0]

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        return {"enum": list(self.words), "type": _json_type(self.words[0])}


def _json_type(value: Any) -> str:
    return "string" if isinstance(value, str) else "integer"


@dataclass(frozen=True, slots=True)
class Many(Kind):
    """A list of values of one kind, read as a tuple unless as a `list`."""

    of: Kind
    most: int | None = None
    least: int = 0
    into: Callable[[Iterable[Any]], Any] = tuple

    @property
    def wanted(self) -> str:  # type: ignore[override]
        """Say how the values are written."""
        return "a list in square brackets" if not self.of_tables else self._headed

    @property
    def of_tables(self) -> bool:
        """Whether its values are tables, each with a header of its own."""
        return getattr(self.of, "is_table", False)

    @property
    def _headed(self) -> str:
        return f"tables, each headed [[{HEADER}]]"

    def takes(self, value: Any) -> bool:
        return isinstance(value, list | tuple)

    def read(self, value: Any) -> Any:
        if not isinstance(value, list | tuple):
            raise self.refuse(value)
        wrongs: list[Wrong] = []
        found = []
        read = self.of.read
        for place, part in enumerate(value):
            try:
                found.append(read(part))
            except Refused as refused:
                found.append(refused.value)
                told = refused.wrongs
                if self.of_tables and not self.of.takes(part):
                    told = [Wrong((), f"must be {self._headed}, not {shown_value(part)}")]
                wrongs += [wrong.below(place) for wrong in told]
        if self.most is not None and len(found) > self.most:
            wrongs.append(Wrong((), f"may hold at most {self.most} entries"))
        if len(found) < self.least:
            wrongs.append(Wrong((), f"must hold at least {self.least}"))
        if wrongs:
            raise Refused(wrongs, self.into(found))
        return self.into(found)

    def blank(self) -> Any:
        return self.into(())

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        most = {} if self.most is None else {"maxItems": self.most}
        least = {"minItems": self.least} if self.least else {}
        return {"type": "array", "items": self.of.schema(definitions), **most, **least}


@dataclass(frozen=True, slots=True)
class Pairs(Kind):
    """A table whose keys a person chooses."""

    keys: Kind
    values: Kind
    wanted = "a table of keys"

    def takes(self, value: Any) -> bool:
        return isinstance(value, dict)

    def read(self, value: Any) -> dict[Any, Any]:
        if not isinstance(value, dict):
            raise self.refuse(value)
        wrongs: list[Wrong] = []
        found = {}
        for key, part in value.items():
            try:
                name = self.keys.read(key)
                found[name] = self.values.read(part)
            except Refused as refused:
                wrongs += [wrong.below(key) for wrong in refused.wrongs]
        if wrongs:
            raise Refused(wrongs, found)
        return found

    def blank(self) -> dict[Any, Any]:
        return {}

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        keys = {k: v for k, v in self.keys.schema(definitions).items() if k != "type"}
        values = self.values.schema(definitions)
        if "pattern" in keys:
            return {
                "type": "object",
                "patternProperties": {keys["pattern"]: values},
                "additionalProperties": False,
            }
        return {"type": "object", "additionalProperties": values, "propertyNames": keys}


@dataclass(frozen=True, slots=True)
class Maybe(Kind):
    """A value that may be absent; JSON says null for it, and TOML leaves its key out."""

    of: Kind

    @property
    def wanted(self) -> str:  # type: ignore[override]
        """Say what there may be."""
        return self.of.wanted

    @property
    def example(self) -> str:  # type: ignore[override]
        """Give what the kind itself gives."""
        return self.of.example

    def takes(self, value: Any) -> bool:
        return value is None or self.of.takes(value)

    def read(self, value: Any) -> Any:
        return None if value is None else self.of.read(value)

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        return {"anyOf": [self.of.schema(definitions), {"type": "null"}]}


@dataclass(frozen=True, slots=True)
class Either(Kind):
    """A value of one of several kinds, told apart by their types."""

    kinds: tuple[Kind, ...]

    @property
    def wanted(self) -> str:  # type: ignore[override]
        """Say what there may be."""
        return join_words([kind.wanted for kind in self.kinds], "or")

    def takes(self, value: Any) -> bool:
        return any(kind.takes(value) for kind in self.kinds)

    def read(self, value: Any) -> Any:
        for kind in self.kinds:
            if kind.takes(value):
                return kind.read(value)
        raise self.refuse(value)

    def blank(self) -> Any:
        return self.kinds[0].blank()

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        return {"anyOf": [kind.schema(definitions) for kind in self.kinds]}


@dataclass(frozen=True, slots=True, eq=False)
class Check:
    """In an annotation: what a value has to be beside its kind.

    `test` returns the value, perhaps put in another way, or raises a ValueError that carries
    the rest of a sentence that begins with the key. `first` lets it see the value as written.
    """

    test: Callable[[Any], Any]
    schema: dict[str, Any] = field(default_factory=dict)
    first: bool = False
    wanted: str = ""


@dataclass(frozen=True, slots=True)
class Checked(Kind):
    """A kind with what else a value has to be."""

    of: Kind
    check: Check

    @property
    def wanted(self) -> str:  # type: ignore[override]
        """Say what there may be."""
        return self.check.wanted or self.of.wanted

    @property
    def example(self) -> str:  # type: ignore[override]
        """Give what the kind itself gives."""
        return self.of.example

    def takes(self, value: Any) -> bool:
        return self.check.first or self.of.takes(value)

    def read(self, value: Any) -> Any:
        if self.check.first:
            tested = self._tested(value)
            try:
                return self.of.read(tested)
            except Refused as refused:
                raise (self.refuse(value) if self.check.wanted else refused) from None
        return self._tested(self.of.read(value))

    def _tested(self, value: Any) -> Any:
        try:
            return self.check.test(value)
        except ValueError as error:
            raise self.wrong(str(error)) from None

    def blank(self) -> Any:
        return self.of.blank()

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        whole = self.check.schema
        return (
            whole
            if "type" in whole or "anyOf" in whole
            else {
                **self.of.schema(definitions),
                **whole,
            }
        )


@dataclass(frozen=True, slots=True)
class Limit:
    """In an annotation: how many entries a list may hold."""

    most: int | None = None
    least: int = 0

    def of(self, kind: Kind) -> Kind:
        """Return a kind of list with these limits."""
        assert isinstance(kind, Many)
        return replace(kind, most=self.most, least=self.least)


@dataclass(frozen=True, slots=True)
class Anything(Kind):
    """Any value, taken as it is: whoever reads it looks further."""

    wanted = "anything"

    def takes(self, value: Any) -> bool:
        return True

    def read(self, value: Any) -> Any:
        return value

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        return {}
