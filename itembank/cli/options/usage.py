"""Words for what was mistyped on the command line: an option, a value, a command.

A teacher gets one plain sentence, and another that says what to type instead.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from itembank.errors import ItembankError
from itembank.files.faults import join_words, nearest

DASHES = "‐‑‒–—―−"
"""Dashes that a word processor makes of the minus of an option."""
MEANT_FOR = {"itembank pack": "--topic", "itembank topics": "--strand"}
"""Commands that take no words of their own, and the option such a word was likely meant for."""


def no_option(typed: str, path: str, spellings: Iterable[str]) -> ItembankError:
    """Return the fault that a command has no such option; `spellings` are those it has."""
    if typed[1:].isdigit() and path == "itembank band":
        return ItembankError(f"‘{typed}’ is not a score. Write a whole number, 0 or more.")
    near = near_options(typed, spellings)
    advice = f"Did you mean {join_words(near, 'or')}?" if near else _more(path)
    return ItembankError(f"There is no option {typed}. {advice}")


def near_options(typed: str, spellings: Iterable[str]) -> list[str]:
    """Return the options most like what was typed, by their names and not by their dashes.

    >>> near_options("--large-prnt", ["--large-print", "--help"])
    ['--large-print']
    >>> near_options("--slips", ["--help", "--step"]), near_options("-st", ["--help", "--step"])
    ([], ['--step'])
    """
    names = {spelling.lstrip("-"): spelling for spelling in spellings if spelling.startswith("--")}
    word = typed.lstrip(f"-{DASHES}")
    begun = [command for name, command in names.items() if word and name.startswith(word)]
    if word in names or 0 < len(begun) <= 3:
        return [names[word]] if word in names else begun
    return [names[near] for near in nearest(word, names)] if len(word) > 1 else []


def no_value(name: str, path: str) -> ItembankError:
    """Return the fault that an option stands without its value."""
    return ItembankError(f"{name} needs a value after it. ‘{path} --help’ shows which.")


def blank(label: str, needed: bool) -> ItembankError:
    """Return the fault that an argument holds nothing; one that is not needed may be left out."""
    return ItembankError(f"{label} is blank. Write it" + ("." if needed else ", or leave it out."))


def takes_no_value(name: str) -> ItembankError:
    """Return the fault that an option that is a switch was given a value."""
    return ItembankError(f"{name} takes no value. Write it alone.")


def no_number(label: str) -> ItembankError:
    """Return the fault that a whole number is wanted, and this is none."""
    return ItembankError(f"{label} needs a whole number, such as {label} 3.")


def missing(label: str, path: str) -> ItembankError:
    """Return the fault that something a command cannot do without was not typed."""
    return ItembankError(f"{label} is missing. {_more(path)}")


def not_expected(words: Sequence[str], path: str) -> ItembankError:
    """Return the fault that words stand where a command has no room for them."""
    option = MEANT_FOR.get(path)
    advice = f"Did you mean {option} {words[0]}?" if option else _more(path)
    return ItembankError(f"‘{' '.join(words)}’ is not expected there. {advice}")


def no_command(typed: str, commands: Sequence[str]) -> ItembankError:
    """Return the fault that there is no such command; `commands` are those there are."""
    near = nearest(typed, commands)
    advice = (
        f"Did you mean {join_words(near, 'or')}?"
        if near
        else f"The commands are {join_words(commands)}."
    )
    return ItembankError(f"There is no command ‘{typed}’. {advice}")


def _more(path: str) -> str:
    return f"‘{path} --help’ shows what there is."
