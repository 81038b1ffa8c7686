"""Reads the words typed after a command: which option each belongs to, and its value.

What options a command has is declared to typer, which writes its help. The words themselves are
read here. Typer's own reader loads a validator for them, which took a fifth of the time of a
short command, and what it says of a mistyped word speaks of integers and arguments.

The rules are the usual ones of a command line (POSIX, "Utility Syntax Guidelines"; long options
as GNU has them): ``--name value`` and ``--name=value``, ``-n value`` and ``-nvalue``, ``-ab`` for
two switches, and everything after ``--`` as it stands.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable, Collection, Iterable, Sequence
from pathlib import Path
from types import NoneType
from typing import Any, get_args, get_origin, get_type_hints

from itembank.cli.options import usage
from itembank.data_class import dataclass

KINDS: tuple[Callable[[str], Any], ...] = (str, int, Path)
"""What a value may be: a word as it comes, a whole number, or a path."""


@dataclass(frozen=True, slots=True)
class Slot:
    """What typed words may fill: an option, or an argument, which has no spellings.

    `read` makes a value of a word; a `switch` takes none, and `off` are the spellings that say
    no to it. `default` is its value where it is left out.
    """

    name: str
    spellings: tuple[str, ...]
    label: str
    read: Callable[[str], Any] = str
    several: bool = False
    switch: bool = False
    off: tuple[str, ...] = ()
    needed: bool = False
    default: Any = None

    def value(self, words: Sequence[Any]) -> Any:
        """Return the value of what was typed; of several words for one value the last counts.

        >>> Slot("seed", ("--seed",), "N", int).value(["3", "4"])
        4

        Raises:
            ItembankError: a whole number is wanted, and this is none.
        """
        if self.switch:
            return words[-1]
        try:
            return [self.read(word) for word in words] if self.several else self.read(words[-1])
        except ValueError:
            # Words and paths are taken as they come: only numbers can be of the wrong kind.
            raise usage.no_number(self.label) from None


def slots_of(command: Any) -> list[Slot]:
    """Return what may be typed after a command that was declared to typer."""
    function = inspect.unwrap(command.callback)
    kinds = get_type_hints(function)
    parameters = inspect.signature(function).parameters
    return [
        _slot(declared, kinds[declared.name], parameters[declared.name].default)
        if declared.name in parameters
        # Typer's own, such as --show-completion.
        else Slot(declared.name, tuple(declared.opts), declared.opts[0], switch=declared.is_flag)
        for declared in command.params
    ]


def _slot(declared: Any, kind: Any, default: Any) -> Slot:
    option = declared.param_type_name == "option"
    read, several = _kind(kind)
    needed = default is inspect.Parameter.empty
    return Slot(
        name=declared.name,
        spellings=tuple(declared.opts) if option else (),
        label=declared.opts[0] if option else declared.metavar or declared.name,
        read=read,
        several=several,
        switch=read is bool,
        off=tuple(declared.secondary_opts),
        needed=needed,
        default=None if needed else default,
    )


def _kind(annotation: Any) -> tuple[Any, bool]:
    """Return what reads one value of a kind, and whether there may be several values.

    >>> _kind(int | None), _kind(list[Path]), _kind(bool)
    ((<class 'int'>, False), (<class 'pathlib.Path'>, True), (<class 'bool'>, False))
    """
    inner = [arg for arg in get_args(annotation) if arg is not NoneType]
    if get_origin(annotation) is list:
        return inner[0], True
    if inner:
        return _kind(inner[0])
    if annotation is not bool and annotation not in KINDS:
        raise TypeError(f"no command reads {annotation} from its words")
    return annotation, False


class Reader:
    """Reads the words after one command; `path` is the command as it was typed.

    No option and no argument may be blank but for those named in `may_be_blank`.

    >>> class_ = Slot("class_", ("--class", "-c"), "--class")
    >>> reader = Reader("itembank pack", [class_, Slot("new", ("--new",), "--new", switch=True)])
    >>> reader.values(["--new", "-c", "8K"])
    {'class_': '8K', 'new': True}
    """

    def __init__(
        self,
        path: str,
        slots: Iterable[Slot],
        help_words: Sequence[str] = ("--help",),
        may_be_blank: Collection[str] = (),
    ) -> None:
        self.path, self.slots, self.help_words = path, list(slots), tuple(help_words)
        self._may_be_blank = may_be_blank
        self._meant = {word: (slot, True) for slot in self.slots for word in slot.spellings}
        self._meant |= {word: (slot, False) for slot in self.slots for word in slot.off}
        self.spellings = [*self._meant, *self.help_words]

    def values(self, words: Sequence[str]) -> dict[str, Any] | None:
        """Return each slot's value by name, or None where the help is asked for.

        Raises:
            ItembankError: says what was mistyped, and what may be meant.
        """
        sorted_ = self.sort(words)
        if sorted_ is None:
            return None
        found, rest = sorted_
        found.update(self._arguments(rest))
        for slot in self.slots:
            if slot.needed and not found.get(slot.name):
                raise usage.missing(slot.label, self.path)
        return {
            slot.name: slot.value(found[slot.name]) if found.get(slot.name) else slot.default
            for slot in self.slots
        }

    def sort(
        self, words: Sequence[str], leading: bool = False
    ) -> tuple[dict[str, list[Any]], list[str]] | None:
        """Return what was typed for each option, and the words that belong to none.

        It is None where the help is asked for. With `leading`, only options before the first
        other word are read.

        Raises:
            ItembankError: an option there is not, or one without its value.
        """
        found: dict[str, list[Any]] = {}
        left = list(words)
        rest: list[str] = []
        while left:
            word = left.pop(0)
            if word == "--":
                return found, rest + left
            if not self._is_option(word):
                rest.append(word)
                if leading:
                    return found, rest + left
            elif word in self.help_words:
                return None
            else:
                for slot, value in self._options(word, left):
                    found.setdefault(slot.name, []).append(value)
        return found, rest

    def _is_option(self, word: str) -> bool:
        if word and word[0] in usage.DASHES:
            meant = f"--{word.lstrip(usage.DASHES + '-')}"
            if meant.partition("=")[0] in self.spellings:
                raise usage.no_option(word, self.path, [meant.partition("=")[0]])
        return word[:1] == "-" and word != "-"

    def _options(self, word: str, left: list[str]) -> list[tuple[Slot, Any]]:
        """Return the options that a word is, with their values; take those from what is left."""
        name, equals, value = word.partition("=")
        if name in self._meant:
            slot, on = self._meant[name]
            if slot.switch and equals:
                raise usage.takes_no_value(name)
            if slot.switch:
                return [(slot, on)]
            return [(slot, self._filled(name, value if equals else self._next(name, left)))]
        if name.startswith("--") or f"-{name}" in self.spellings:
            raise usage.no_option(name, self.path, self.spellings)
        return self._letters(word, left)

    def _letters(self, word: str, left: list[str]) -> list[tuple[Slot, Any]]:
        """Return the options of one letter each that a word such as ``-ab`` or ``-n3`` is."""
        found: list[tuple[Slot, Any]] = []
        for place, letter in enumerate(word[1:], 1):
            name = f"-{letter}"
            if name not in self._meant:
                raise usage.no_option(word if place == 1 else name, self.path, self.spellings)
            slot, on = self._meant[name]
            if not slot.switch:
                value = word[place + 1 :] or self._next(name, left)
                return [*found, (slot, self._filled(name, value))]
            found.append((slot, on))
        return found

    def _next(self, name: str, left: list[str]) -> str:
        """Take the value of an option from the words that are left."""
        # Another option of this command is no value: the value was forgotten.
        if not left or (left[0][:2] == "--" and left[0].partition("=")[0] in self.spellings):
            raise usage.no_value(name, self.path)
        return left.pop(0)

    def _filled(self, name: str, value: str) -> str:
        """Return an option's value, which has to hold something.

        An empty one is a slip, or a variable of a script that was never set. Nobody means it:
        an option is left out by leaving it out.
        """
        if not value.strip():
            raise usage.no_value(name, self.path)
        return value

    def _arguments(self, rest: Sequence[str]) -> dict[str, list[str]]:
        """Return the words for each argument; one of several values takes what others leave."""
        left, found = list(rest), {}
        arguments = [slot for slot in self.slots if not slot.spellings]
        for place, slot in enumerate(arguments):
            after = len(arguments) - place - 1
            count = max(len(left) - after, 0) if slot.several else 1
            found[slot.name], left = left[:count], left[count:]
            if slot.name not in self._may_be_blank and not all(map(str.strip, found[slot.name])):
                raise usage.blank(slot.label, slot.needed)
        if left:
            raise usage.not_expected(left, self.path)
        return found
