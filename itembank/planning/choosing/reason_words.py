"""The words for why a topic is in a starter: long for a plan, few for a narrow column."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.files.faults import join_words
from itembank.planning.choosing.topic_reason import Again, Cause, Reason
from itembank.text.in_words import counted, short_day, weekday

YEAR_GOES_WITHOUT_SAYING = 300
"""Days after which a day is told with its year."""


def reason_words(reason: Reason | None, pinned: bool = False) -> str:
    """Return a reason in one line that a teacher can check.

    >>> from itembank.planning.choosing.topic_reason import Occasion
    >>> from datetime import date as day
    >>> taught, last = day(2026, 10, 19), Occasion(day(2026, 11, 18), 54, 26)
    >>> reason_words(Reason(day(2026, 11, 30), Cause.PAST, taught, last))
    'taught 19 Oct, last seen 12 days ago, 54 % right then'
    >>> reason_words(Reason(day(2026, 11, 30), Cause.PAST, taught), pinned=True)
    'taught 19 Oct, not brought back yet, pinned by you'
    """
    if reason is None:
        return ""
    return ", ".join([*_past(reason), *_of_its_lesson(reason, pinned)])


def reason_of_its_lesson(reason: Reason | None, pinned: bool = False) -> str:
    """Return what of a reason is not the same in every lesson of a week; perhaps nothing.

    >>> from datetime import date as day
    >>> reason_of_its_lesson(Reason(day(2026, 11, 30), Cause.PAST, day(2026, 10, 19)), True)
    'pinned by you'
    """
    if reason is None:
        return ""
    chosen = reason.cause in (Cause.TEACHER, Cause.OUTSIDE) or reason.own
    return ", ".join([*(_past(reason) if chosen else ()), *_of_its_lesson(reason, pinned)])


def reason_of_week(reason: Reason | None, chosen_on: Sequence[str], short: bool = False) -> str:
    """Return why a topic comes in a week, with the days for which the teacher chose it.

    What it is needed for is left out, since that differs from lesson to lesson.

    >>> from datetime import date as day
    >>> found = Reason(day(2026, 11, 30), Cause.PAST, day(2026, 10, 19))
    >>> reason_of_week(found, ["Mon", "Tue"])
    'taught 19 Oct, not brought back yet, your choice on Mon and Tue'
    >>> reason_of_week(found, ["Mon", "Tue"], short=True)
    '19 Oct, not yet, yours on Mon and Tue'
    """
    said = []
    if reason is not None:
        said = _past(reason, short)
        chosen = not reason.own and reason.cause in (Cause.TEACHER, Cause.OUTSIDE)
        if chosen and (chosen_on or len(said) > 1):
            del said[0]  # the days say it
        said += _again(reason.again)
    if chosen_on:
        said.append(f"{'yours' if short else 'your choice'} on {join_words(list(chosen_on))}")
    return ", ".join(said)


def _past(reason: Reason, short: bool = False) -> list[str]:
    """Return what speaks for a topic whatever the lesson."""
    if reason.own:
        return [reason.own]
    if reason.cause is Cause.PACK:
        return ["as in its pack"]
    said = []
    if reason.cause is not Cause.PAST:
        said.append("yours" if short else "your choice")
    if reason.cause is Cause.OUTSIDE:
        said.append("not in the scheme")
    if reason.taught is not None:
        day = short_day(reason.taught)
        if (reason.lesson - reason.taught).days > YEAR_GOES_WITHOUT_SAYING:
            day += f" {reason.taught.year}"
        said.append(f"{'' if short else 'taught '}{day}")
    if reason.cause is Cause.PAST:
        said += _seen(reason, short)
    return said


def _seen(reason: Reason, short: bool) -> list[str]:
    """Return when the class was last asked a topic, and what came of it."""
    last, told = reason.last, reason.told
    if last is None:
        return ["not yet" if short else "not brought back yet"]
    days = (reason.lesson - last.date).days
    ago = "yesterday" if days == 1 else f"{days} days ago"
    said = [f"{'' if short else 'last seen '}{ago}"]
    if last.right is not None:
        said.append(f"{last.right} %{'' if short else ' right then'}")
    elif last.scored:
        said.append("in a score" if short else "only as part of a score")
    else:
        said.append("?" if short else "not recorded")
    if told is not None:
        said.append(f"{told.right} % right on {short_day(told.date)}")
    return said


def _of_its_lesson(reason: Reason, pinned: bool) -> list[str]:
    said = []
    if not reason.own:
        said = [f"needed today for {title}" for title in reason.needed_for]
        if pinned and reason.cause is Cause.PAST:
            said.append("pinned by you")
    return said + _again(reason.again)


def _again(again: Again | None) -> list[str]:
    if again is None:
        return []
    few = f"it has only {counted(again.questions, 'question')}"
    day = f"{weekday(again.date)[:3]} {short_day(again.date)}"
    return [f"asks again what {day} asked: {few if again.questions else 'no other is left'}"]
