"""The topics of each year group in the conversation: pasted, ready to begin from, or one by one."""

from __future__ import annotations

import re
from collections.abc import Mapping

from itembank.cli.department.answering import Keep, answer_rows, show, tell_wrong, yes
from itembank.cli.words.ask import note
from itembank.cli.words.wrapped import say
from itembank.work.department.answered import Answers, SchemeAnswer, TopicAnswer
from itembank.work.department.joined_answers import with_scheme
from itembank.work.department.looked_at import known_topics, look_at
from itembank.work.department.outlook import outlook_on
from itembank.work.department.pasted.pasted_topics import read_pasted_topics, topic_named
from itembank.work.department.ready import ready_scheme, topics_by_strand


def ask_topics(
    answers: Answers, keep: Keep, own_titles: Mapping[str, str] | None = None
) -> Answers:
    """Ask for the topics of each year group, in order; `own_titles` are those that may be named."""
    titles = own_titles or known_topics()[0]
    for year in answers.years:
        answers = _topics_of(answers, year, keep, titles)
    return answers


def _topics_of(answers: Answers, year: int, keep: Keep, titles: Mapping[str, str]) -> Answers:
    group = next(group for group in answers.classes if group.year == year)
    say(
        f"Topics of year {year}, in order: paste them with their weeks or dates, then press Enter "
        "twice; or name a file; or type ‘ready’ for an order to begin from, ‘list’ to see the "
        "topics there are, a topic and its week (‘ratio.share 12’), or ‘drop ratio.share’."
    )
    while True:
        scheme = answers.scheme_for(group)
        show(_scheme_lines(answers, scheme, titles))
        typed = answer_rows(
            f"Topics of year {year}{'; Enter when they are right' if scheme else ''}"
        )
        if not typed and scheme is not None:
            wrong = look_at(answers).of_part("topics")
            mine = [fault for fault in wrong if _of_scheme(answers, scheme, fault.field)]
            if not mine:
                return answers
            tell_wrong(mine)
        elif typed.casefold() == "ready":
            answers = with_scheme(answers, group, ready_scheme(year, answers.calendar).topics)
            keep(answers)
        elif typed.casefold() == "list":
            _list_topics()
        elif typed:
            topics = _typed_topics(answers, year, scheme, typed, titles)
            if topics is not None:
                answers = with_scheme(answers, group, topics)
                keep(answers)


def _of_scheme(answers: Answers, scheme: SchemeAnswer, field: tuple[str | int, ...]) -> bool:
    if field[:1] == ("schemes",) and len(field) > 1 and isinstance(field[1], int):
        return answers.schemes[field[1]] == scheme
    return False


def _typed_topics(
    answers: Answers,
    year: int,
    scheme: SchemeAnswer | None,
    typed: str,
    titles: Mapping[str, str],
) -> tuple[TopicAnswer, ...] | None:
    """Return the topics as pasted, or as one of them was changed; None where that failed."""
    there = scheme.topics if scheme else ()
    single = re.fullmatch(r"(drop\s+)?(\S+\.\S+)(?:\s+(?:week\s+)?(\S.*))?", typed, re.I)
    if single and topic_named(single[2], titles)[0]:
        left = tuple(topic for topic in there if topic.topic != single[2].casefold())
        if single[1]:
            return left
        typed = f"{single[2]}\t{single[3] or ''}"
    pasted = read_pasted_topics(typed, answers.calendar, titles)
    if pasted.wrong and pasted.found.unknown and pasted.found.topics:
        tell_wrong(pasted.wrong)
        again = read_pasted_topics(typed, answers.calendar, titles, leave_out=True)
        if not again.wrong and yes("Leave those out, and take the others?"):
            pasted = again
    elif pasted.wrong:
        tell_wrong(pasted.wrong)
    if pasted.wrong:
        return None
    show(pasted.remarks)
    by_year = pasted.found.by_year
    found = by_year.get(year, pasted.found.topics)
    return (*left, *found) if single and topic_named(single[2], titles)[0] else found


def _scheme_lines(
    answers: Answers, scheme: SchemeAnswer | None, titles: Mapping[str, str]
) -> list[str]:
    if scheme is None:
        return []
    told = next(row for row in outlook_on(answers, titles).schemes if row.name == scheme.name)
    return [f"{topic.when}: {topic.title}" for topic in told.topics]


def _list_topics() -> None:
    for strand, rows in topics_by_strand().items():
        say(f"{strand.capitalize()}:")
        for facts in rows:
            note(f"{facts.topic}: {facts.title} (from year {facts.year})")
