"""Answers joined to those that are there: a school year, classes, topics."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from itembank.planning.calendar.calendar import Closed, Term
from itembank.text.folding import same_name
from itembank.work.department.answered import Answers, ClassAnswer, SchemeAnswer, TopicAnswer


def with_classes(answers: Answers, classes: Iterable[ClassAnswer]) -> Answers:
    """Return answers with classes added, or changed where there is one of the name.

    What a class leaves open stays as it was.

    >>> both = with_classes(Answers(classes=(ClassAnswer("8K", 8, "HT"),)), [ClassAnswer("8k", 9)])
    >>> [(group.name, group.year, group.teacher) for group in both.classes]
    [('8K', 9, 'HT')]
    """
    found = list(answers.classes)
    for group in classes:
        at = next((n for n, known in enumerate(found) if same_name(known.name, group.name)), None)
        if at is None:
            found.append(group)
            continue
        was = found[at]
        found[at] = replace(
            was,
            year=group.year if group.year is not None else was.year,
            teacher=group.teacher or was.teacher,
            seats=group.seats or was.seats,
            lessons=group.lessons or was.lessons,
        )
    return replace(answers, classes=tuple(found))


def with_year(answers: Answers, terms: tuple[Term, ...], closed: tuple[Closed, ...]) -> Answers:
    """Return answers with a school year; days off alone are added to those there.

    >>> from datetime import date
    >>> inset = (Closed(date(2027, 1, 4), date(2027, 1, 4), "inset"),)
    >>> [off.why for off in with_year(with_year(Answers(), (), inset), (), inset).closed]
    ['inset']
    """
    if terms:
        return replace(answers, terms=terms, closed=closed)
    both = dict.fromkeys((*answers.closed, *closed))
    return replace(answers, closed=tuple(sorted(both, key=lambda off: (off.first, off.last))))


def with_scheme(answers: Answers, group: ClassAnswer, topics: tuple[TopicAnswer, ...]) -> Answers:
    """Return answers in which the scheme that a class follows has just these topics.

    Without one, it is that of its year, ``year-8``.

    Raises:
        ValueError: the class has no year yet.

    >>> answers = with_scheme(Answers(), ClassAnswer("8K", 8), (TopicAnswer("ratio.share", 3),))
    >>> [(scheme.name, len(scheme.topics)) for scheme in answers.schemes]
    [('year-8', 1)]
    """
    if group.year is None:
        raise ValueError(f"{group.name} has no year")
    scheme = answers.scheme_for(group)
    if scheme is None:
        name = group.scheme or f"year-{group.year}"
        schemes = (*answers.schemes, SchemeAnswer(name, group.year, topics))
    else:
        new = replace(scheme, topics=topics)
        schemes = tuple(new if there == scheme else there for there in answers.schemes)
    return replace(answers, schemes=schemes)
