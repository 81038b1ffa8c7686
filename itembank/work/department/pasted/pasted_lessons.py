"""Lessons of the week as people write them: ``Mon 3, Tue 1``, ``Mon P3``, ``A Fri 2``."""

from __future__ import annotations

import re
from dataclasses import replace

from itembank.errors import ItembankError
from itembank.planning.calendar.timetable import WeeklyLesson
from itembank.text.in_words import DAYS

_STARTS = {"m": 0, "mo": 0, "tu": 1, "w": 2, "we": 2, "th": 3, "f": 4, "fr": 4, "sa": 5, "su": 6}
_NAMES = r"mon(?:days?)?|tue(?:s|sdays?)?|wed(?:s|nes|nesdays?)?|thu(?:r|rs|rsdays?)?|fri(?:days?)?"
_TOKEN = re.compile(
    r"(?P<week>(?:week|wk)\s*(?P<letter>[ab12])(?![a-z0-9])\s*:?)"
    rf"|(?P<day>{_NAMES}|sat(?:urdays?)?|sun(?:days?)?|(?:mo|tu|we|th|fr|m|w|f|sa|su))"
    r"(?=$|[^a-z]|p(?:er(?:iod)?)?\s*\d|[ab]\s*p?\d)"
    r"|(?P<only>\(?(?P<bare>[ab])\)?(?:\s*(?:week|wk)(?![a-z]))?)(?![a-z(])"
    rf"|(?P<glued>[ab])(?=(?:{_NAMES})(?![a-z]))"
    r"|(?P<period>(?:periods?|per|lessons?|pd|p|l)?\.?\s*(?P<number>\d{1,2})"
    r"(?:\s*[-–—]\s*(?:p(?:eriod)?\s*)?(?P<last>\d{1,2}))?)(?![a-z0-9])"
    r"|(?P<half>am|pm)(?![a-z])"
    r"|(?P<gap>[,;\n|/]+)"
    r"|(?P<space>[\s.:&+()-]+|and(?![a-z])|then(?![a-z])|every(?![a-z])|both(?![a-z]))"
)  # fmt: skip


def read_pasted_lessons(text: str) -> tuple[WeeklyLesson, ...]:
    """Read the lessons of a class in the week.

    A letter belongs to the lesson it stands with; after ``Week A:`` all that follow are of that
    week, until another is named. A number without a day is another period of the day before it.

    Raises:
        ItembankError: says which part cannot be read.

    >>> " ".join(f"[{lesson}]" for lesson in read_pasted_lessons("Mon 3, Tue P1 & 2; A Fri 2"))
    '[Mon 3] [Tue 1] [Tue 2] [A Fri 2]'
    >>> [str(lesson) for lesson in read_pasted_lessons("Week A: Mon 1, Thu 2 Week B: Wed 4")]
    ['A Mon 1', 'A Thu 2', 'B Wed 4']
    """
    said = text.casefold()
    found: list[WeeklyLesson] = []
    day: int | None = None
    used, gap, waiting = True, True, False
    sticky = ahead = letter = ""
    at = 0
    while at < len(said):
        match = _TOKEN.match(said, at)
        if match is None:
            raise ItembankError(_unread(text, at))
        at = match.end()
        gap, after_gap = bool(match["gap"]) or (gap and bool(match["space"])), gap
        if match["week"]:
            mark = {"1": "A", "2": "B"}.get(match["letter"], match["letter"].upper())
            if not used:  # Monday, week A: 3
                letter = mark
            elif found and not after_gap and not _before_a_day(said, at):
                found[-1] = replace(found[-1], letter=mark)
            else:
                sticky, ahead, waiting = mark, "", True
        elif match["day"]:
            if not used:
                raise ItembankError(_no_period(day))
            day, used = _day_named(match["day"]), False
            letter, ahead, waiting = ahead or sticky, "", False
        elif match["bare"] or match["glued"]:
            mark = (match["bare"] or match["glued"]).upper()
            if not used:
                letter = mark
            elif found and not _before_a_day(said, at):
                found[-1] = replace(found[-1], letter=mark)
            else:
                ahead = mark
        elif match["period"] or match["half"]:
            if day is None:
                raise ItembankError(
                    f"‘{match[0].strip()}’ has no day. Write the day and the period, as in Mon 3."
                )
            first = int(match["number"]) if match["number"] else 0
            last = int(match["last"] or first)
            if not first <= last < first + 6:
                raise ItembankError(f"‘{match[0].strip()}’ are no periods of a day.")
            names = [match["half"]] if match["half"] else map(str, range(first, last + 1))
            found += [WeeklyLesson(day, name, letter) for name in names]
            used = True
    if not used:
        raise ItembankError(_no_period(day))
    if waiting:
        raise ItembankError(f"Week {sticky} has no lesson after it. Write it as in {sticky} Mon 3.")
    if not found:
        raise ItembankError("There is no lesson here. Write a day and a period, as in Mon 3.")
    return tuple(found)


def _before_a_day(said: str, at: int) -> bool:
    """Whether a day comes next, without a comma or its like between."""
    while (match := _TOKEN.match(said, at)) is not None and match["space"]:
        at = match.end()
    return match is not None and bool(match["day"])


def _day_named(word: str) -> int:
    place = _STARTS[word[:2]] if word[:2] in _STARTS else _STARTS[word[:1]]
    if place > 4:
        raise ItembankError(f"There are no lessons on a {DAYS[place]}.")
    return place


def _no_period(day: int | None) -> str:
    name = DAYS[day or 0]
    return f"{name} has no period. Write the day and the period, as in {name[:3]} 3."


def _unread(text: str, at: int) -> str:
    word = re.split(r"[\s,;]", text[at:])[0][:20]
    if re.fullmatch(r"[pP]?\d+[abAB]", word):
        return (
            f"‘{word}’: is that period {word[:-1]} of week {word[-1].upper()}? Write the letter "
            f"before the day, as in {word[-1].upper()} Mon {word[:-1].lstrip('pP')}."
        )
    if word.casefold() in ("t", "t1", "t2", "t3", "t4", "t5", "t6"):
        return f"‘{word}’: is that Tuesday or Thursday? Write Tue or Thu."
    return f"‘{word}’ is not a day or a period. Write lessons as in Mon 3, Tue 1, A Fri 2."
