"""What is said of a value that may not stand in a file: the one place for those sentences.

Two readers take files apart: :class:`~itembank.files.toml_table.Table`, which is light, for a
department, its plans and its calendar, and pydantic's models, for banks and packs
(:mod:`itembank.files.model_words`). The commands of a lesson in progress, such as ``record``,
read a department and have no time for pydantic: to load it takes a third as long as all that
``record`` does (measured: 0.13 s beside 0.36 s of a busy core). A person who mistypes must not
meet the difference, so both speak from here.
"""

from __future__ import annotations

from collections.abc import Iterable

from itembank.files.faults import join_words, nearest
from itembank.text.characters import shown_value

TEXT = "text in quotation marks"
LIST = "a list in square brackets"
KEYS = "a table of keys"
FLAG = "true or false"
DAY = "a day such as 2026-09-14"
BARE = ", without quotation marks"
"""What is added for a day in TOML, which has days of its own."""
_MOST_WORDS = 9
"""The most words that are listed where one of them is near to what was written."""


def whole_number(low: int | None = None, high: int | None = None) -> str:
    """Return what a whole number between two bounds is called, where there are any.

    >>> whole_number(1, 20), whole_number(0), whole_number()
    ('a whole number from 1 to 20', 'a whole number of at least 0', 'a whole number')
    """
    if low is not None and high is not None:
        return f"a whole number from {low} to {high}"
    if low is not None:
        return f"a whole number of at least {low}"
    return "a whole number" if high is None else f"a whole number of at most {high}"


def tables_headed(heading: str) -> str:
    """Return what a list of tables is called.

    >>> tables_headed("classes")
    'tables, each headed [[classes]]'
    """
    return f"tables, each headed [[{heading}]]"


def must_be(key: str, wanted: str, value: object) -> str:
    """Say that a value is not of the kind that is wanted.

    >>> must_be("year", whole_number(1, 13), "8")
    "‘year’ must be a whole number from 1 to 13, not '8'."
    """
    return f"‘{key}’ must be {wanted}, not {shown_value(value)}."


def out_of_range(key: str, low: int | None, high: int | None, value: object) -> str:
    """Say that a number is too small or too large.

    >>> out_of_range("year", 1, 13, 14), out_of_range("seed", 0, None, -1)
    ('‘year’ must be from 1 to 13, not 14.', '‘seed’ must be at least 0, not -1.')
    """
    if low is not None and high is not None:
        bounds = f"from {low} to {high}"
    else:
        bounds = f"at least {low}" if low is not None else f"at most {high}"
    return f"‘{key}’ must be {bounds}, not {shown_value(value)}."


def not_one_of(key: str, words: Iterable[str], value: str) -> str:
    """Say that a word is none of those it may be, and which it is most like.

    >>> not_one_of("tier", ["support", "core", "challenge"], "cor")
    '‘tier’ must be support, core or challenge, not ‘cor’. Did you mean ‘core’?'
    >>> not_one_of("form", [f"form-{n}" for n in range(20)], "from-1")
    '‘form’ must be one of 20 words, not ‘from-1’. Did you mean ‘form-1’?'
    """
    known = list(words)
    near = nearest(value.lower(), known, 1)
    listed = len(known) <= _MOST_WORDS or not near
    wanted = join_words(known, "or") if listed else f"one of {len(known)} words"
    advice = f" Did you mean ‘{near[0]}’?" if near else ""
    return f"‘{key}’ must be {wanted}, not ‘{value}’.{advice}"


def missing(key: str, written: bool = True) -> str:
    """Say that a key has to be there; `written` says that a person may write it there as TOML.

    >>> missing("year")
    '‘year’ is missing here. Add a line year = …'
    """
    return f"‘{key}’ is missing here." + (f" Add a line {key} = …" if written else "")


def unknown_key(key: str, known: Iterable[str]) -> str:
    """Say that a key means nothing there, and which it is most like.

    >>> unknown_key("yaer", ["name", "year"]), unknown_key("x", ["name", "year"])
    ('There is no key ‘yaer’ here. Did you mean ‘year’?', \
'There is no key ‘x’ here. The keys here are name and year.')
    """
    names = sorted(known)
    near = nearest(key, names, 1)
    listed = f" The keys here are {join_words(names)}." if names else ""
    advice = f" Did you mean ‘{near[0]}’?" if near else listed
    return f"There is no key ‘{key}’ here.{advice}"


EMPTY = "is empty; write something between the quotation marks"
"""What is said of a text that holds nothing; the key comes before it."""


def too_long(most: int) -> str:
    """Return what is said of a text that is too long; the key comes before it.

    >>> too_long(2_000)
    'is too long; write one line of at most 2,000 characters'
    """
    return f"is too long; write one line of at most {most:,} characters"


def too_many(key: str, most: int) -> str:
    """Say that a list holds too much.

    >>> too_many("addresses", 500)
    '‘addresses’ may hold at most 500 entries.'
    """
    return f"‘{key}’ may hold at most {most} entries."
