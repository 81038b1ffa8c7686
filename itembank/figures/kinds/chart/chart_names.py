"""The names on a chart or table: what may be one, and how a question about them is read.

>>> shown = Shown(("Monday", "Tuesday"), (), "Number of crates", "Crates sold", "Day")
>>> asked(shown, "how many more crates were sold on Monday than on Tuesday").readings
(('a', Reading(name='value', of=('Monday',))), ('b', Reading(name='value', of=('Tuesday',))))
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from itembank.figures.figure import Asked, Figure, FigureError, Reading, read
from itembank.figures.kinds.chart.chart_held import held_to
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.text.in_words import DAYS, MONTHS, in_full

MOST_NAMES, LONGEST_NAME, LONGEST_TITLE = 8, 14, 30

_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9 :–’'-]*")

BINDING = frozenset(
    re.findall(
        r"\w+",
        "a an and the this of on in at for by did do does was were is are has have had there "
        "people pupils children number value frequency show shows shown chose choose chosen like "
        "lent borrowed mended repaired picked planted served visited "
        "liked sold sell came come travel travelled made counted used said "
        "which how many what find work out it chart table graph pictogram they",
    )
)
"""Words that may stand in a question about counts and change nothing in it."""

_MORE = frozenset(("more", "fewer", "less"))
_LARGEST = frozenset(["most", "largest", "greatest", "highest", "tallest", "longest", "biggest"])
_SMALLEST = frozenset(["fewest", "smallest", "lowest", "least", "shortest"])
_TOTAL = re.compile(r"\b(?:altogether|in total|in all|total|together)\b")
_COUNTED = re.compile(
    r"\b(?:how many (?:more |fewer |less )?|(?:number|fraction) )(?:of )?(?:all )?(?:the )?"
    r"(?!more|fewer|less)([a-z]+)"
)
_RESERVED = _MORE | _LARGEST | _SMALLEST | {"total", "altogether", "than", "difference", "not"}


class Shown(NamedTuple):
    """What a chart names: categories, series, what is counted, its title, the sort of category."""

    names: tuple[str, ...]
    series: tuple[str, ...]
    counted: str
    title: str = ""
    sort: str = ""


def folded(name: str) -> str:
    """Return a name as it is compared: capitals count for nothing, nor does a day cut short.

    >>> folded("Tue") == folded("tuesday"), folded("Tulips")
    (True, 'tulips')
    """
    return in_full(name).casefold()


def names_fault(names: Sequence[str], what: str = "category", least: int = 2) -> str:
    """Return what is wrong with a row of names, as a clause, or ``""``."""
    if not least <= len(names) <= MOST_NAMES:
        kinds = {"category": "categories"}.get(what, f"{what}s")
        return f"it may have {least} to {MOST_NAMES} {kinds}, not {len(names)}"
    seen = set()
    for name in names:
        if len(name) > LONGEST_NAME or not _NAME.fullmatch(name) or name != name.strip():
            return (
                f"a {what}’s name is letters and figures, at most {LONGEST_NAME} signs: "
                f"not ‘{name[:30]}’"
            )
        if name.casefold() in _RESERVED or name.casefold() in BINDING:
            return f"a {what} cannot be called ‘{name}’: questions use that word"
        if folded(name) in seen:
            return f"two of its names are ‘{name}’"
        seen.add(folded(name))
    return ""


def titles_fault(*titles: str) -> str:
    """Return what is wrong with titles, as a clause, or ``""``."""
    for title in titles:
        if len(title) > LONGEST_TITLE:
            return f"a title has at most {LONGEST_TITLE} signs: ‘{title[:30]}…’ is longer"
        if title and not re.fullmatch(r"[A-Za-z0-9 ,:()£°%–’'-]*", title):
            return f"a title is plain words: not ‘{title}’"
    return ""


def with_sizes(figure: Figure, what: Asked, question: str) -> Asked:
    """Return what is asked, with a difference taken the way that it is there.

    Raises
    ------
    FigureError
        If it asks how many more there are where there are not.
    """
    if not isinstance(what.target, t.Sum) or [sign for sign, _ in what.target.rest] != ["-"]:
        return what
    first, second = (reading for _, reading in what.readings)
    apart = exact(read(figure, first)) - exact(read(figure, second))
    if apart < 0 and "difference" in question.casefold():
        return Asked(what.target, (("a", second), ("b", first)))
    if apart <= 0:
        raise FigureError(f"‘{question}’ asks for a difference that is not there")
    return what


def asked(shown: Shown, question: str) -> Asked:
    """Return what a question asks of categories.

    All of its words are to be the figure's own, or bind others, or say what is asked.

    Raises
    ------
    FigureError
        If a word is none of these, or it does not name what is asked for.
    """
    text, mentioned = _mentions(shown, question.casefold())
    held_to(shown.counted, shown.title, text)
    if any(_is_time(mentioned[int(place)]) for place in re.findall(r"\bby <(\d+)>", text)):
        raise FigureError("‘by’ a day or a time may take in what came before it")
    names = [name for name in mentioned if name in shown.names]
    series = [name for name in mentioned if name in shown.series]
    bare = re.sub(r"<\d+>|,", " ", text)
    asked_words = _TOTAL.sub(" ", bare).split()
    counted = words_of(shown.counted)
    own = counted | words_of(shown.title)
    if "which" in asked_words:
        own |= words_of(shown.sort) - _other_sorts(shown.names)
    elif (thing := _COUNTED.search(text)) and thing[1] not in counted | BINDING:
        # *How many days* is another question than *how many crates*.
        raise FigureError(f"it does not count ‘{thing[1]}’")
    special = [word for word in asked_words if word not in own and word not in BINDING]
    total = bool(_TOTAL.search(bare))
    if not special and total and "which" not in asked_words:
        return _summed(shown, text, names, series)
    plain = not special and asked_words[0] in ("how", "what", "find", "work")
    if plain and len(names) == 1 and len(series) == bool(shown.series):
        return _one(Reading("value", (*names, *series)))
    if total:
        special.append("total")
    if special in (
        ["difference", "between"],
        ["more", "than"],
        ["fewer", "than"],
        ["less", "than"],
    ):
        return _gap(shown, text, mentioned, special[0])
    superlative = len(special) == 1 and special[0] in _LARGEST | _SMALLEST
    if superlative and not names and "which" in asked_words and len(series) == bool(shown.series):
        which = "largest" if special[0] in _LARGEST else "smallest"
        return _one(Reading(which, tuple(series)))
    if special == ["fraction"] and len(names) == 1 and not shown.series:
        parts = (("a", Reading("value", (names[0],))), ("b", Reading("total")))
        return Asked(t.Frac(t.Sym("a"), t.Sym("b")), parts)
    raise FigureError(f"‘{question}’ is not understood as a question about its categories")


_SPANS = {"day", "week", "month", "year"}


def _other_sorts(names: Sequence[str]) -> set[str]:
    """Return what names of days or of months are none of: *in which week* asks for no Tuesday."""
    for span, known in (("day", DAYS), ("month", MONTHS)):
        if all(in_full(name) in known for name in names):
            return {form for sort in _SPANS - {span} for form in (sort, f"{sort}s")}
    return set()


def _is_time(name: str) -> bool:
    """Tell whether a name is a day, a month, a time or a number, and none a way to go."""
    return in_full(name) in (*DAYS, *MONTHS) or re.search(r"\d", name) is not None


def _mentions(shown: Shown, text: str) -> tuple[str, list[str]]:
    """Return a text with each name replaced by a number in angles, and the names in order."""
    own = (*shown.names, *shown.series)
    known = {form: name for name in own for form in (folded(name), name.casefold())}
    found: list[str] = []
    if not known:  # no name would be met at every place where no word stands
        return text, found

    def keep(match: re.Match[str]) -> str:
        found.append(known[match["name"]])
        return f"<{len(found) - 1}>"

    # The longest first: one name may begin as another does (red, red oak).
    among = "|".join(re.escape(name) for name in sorted(known, key=len, reverse=True))
    return re.sub(rf"(?<![\w-])[{{‘]?(?P<name>{among})[}}’]?(?![\w-])", keep, text), found


def _one(reading: Reading) -> Asked:
    return Asked(t.Sym("r"), (("r", reading),))


def _summed(shown: Shown, text: str, names: list[str], series: list[str]) -> Asked:
    if not names and len(series) < 2:
        return _one(Reading("total", tuple(series)))
    cells = _cells(names, series, shown)
    if len({*cells}) != len(cells) or not 2 <= len(cells) <= 3 or not _joined(text):
        raise FigureError(f"‘{text}’ does not say plainly what is added")
    letters = "abc"[: len(cells)]
    terms: list[t.Node] = [t.Sym(letter) for letter in letters]
    readings = tuple(
        (letter, Reading("value", cell)) for letter, cell in zip(letters, cells, strict=True)
    )
    return Asked(t.add(*terms), readings)


def _joined(text: str) -> bool:
    """Tell whether each name but the first follows another by *and* or a comma."""
    middles = re.findall(r"<\d+>(?=(.*?)<\d+>)", text)
    return all(re.search(r"\band\b|,", middle) for middle in middles)


def _cells(names: list[str], series: list[str], shown: Shown) -> list[tuple[str, ...]]:
    if not shown.series:
        return [(name,) for name in names]
    if len(names) == 1:
        return [(names[0], text) for text in series or shown.series]
    return [(name, series[0]) for name in names] if len(series) == 1 else []


def _gap(shown: Shown, text: str, mentioned: list[str], word: str) -> Asked:
    names = [name for name in mentioned if name in shown.names]
    series = [name for name in mentioned if name in shown.series]
    cells = _cells(names, series, shown)
    if len(cells) != 2 or cells[0] == cells[1] or len(names) + len(series) < 2:
        raise FigureError("a difference is to be between two things that it names")
    if word != "difference":
        before, _, after = text.partition(" than ")
        two = names if len(names) == 2 else series
        sides = [
            [n for n, name in enumerate(mentioned) if name in two and f"<{n}>" in part]
            for part in (before, after)
        ]
        if [len(side) for side in sides] != [1, 1] or word not in before:
            raise FigureError("the two things are to stand on either side of ‘than’")
    if word in ("fewer", "less"):
        cells.reverse()
    readings = (("a", Reading("value", cells[0])), ("b", Reading("value", cells[1])))
    return Asked(t.sub(t.Sym("a"), t.Sym("b")), readings)


def words_of(phrase: str) -> set[str]:
    """Return the words of a phrase, each as one and as several."""
    words = {*re.findall(r"[a-z0-9]+", phrase.casefold())} - _RESERVED
    return words | {word.removesuffix("s") for word in words} | {f"{word}s" for word in words}
