"""What the results of one lesson say, put together: groups, advice, own views, clarity."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import field, replace
from typing import TYPE_CHECKING

from sqlalchemy import Connection

from itembank.data_class import dataclass
from itembank.people.seats import seat_order
from itembank.planning.bands.bands import band_of
from itembank.records.entries.details import (
    answers_of,
    bands_of,
    clarity_of,
    misconceptions_counted,
    own_views_of,
    scores_of,
    tallies_by_question,
)
from itembank.records.entries.entries import LessonFacts, QuestionFacts
from itembank.records.entries.questions_asked import marks_of, unpack_asked
from itembank.records.pupils.homes import ClassSeat
from itembank.records.pupils.moved_rows import seats_now
from itembank.records.reports.advice import Advice, Thresholds, advise
from itembank.records.results.correct import lesson_facts
from itembank.records.results.lessons import LessonResult
from itembank.text.folding import folded

if TYPE_CHECKING:
    from itembank.planning.bands.bands import Band, BandScheme
    from itembank.records.statistics.own_view import Fooled, OwnView


@dataclass(frozen=True, slots=True)
class BandGroup:
    """The pupils of one band; no seats where hands were counted.

    Where pupils were asked different numbers of questions, its scores are out of the most.
    """

    letter: str
    name: str
    lowest: int
    highest: int
    pupils: int
    seats: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class QuestionAdvice:
    """How a question went: advice, who was wrong, and which misconceptions showed how often."""

    question: QuestionFacts
    right: int
    out_of: int
    advice: Advice
    wrong: tuple[str, ...] = ()
    misconceptions: Mapping[str, int] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Decision:
    """One lesson's results and what they suggest; parts that were not recorded are empty.

    `confident` gives for each question how many sure pupils were wrong, and how many answered.
    `not_asked` are the questions of the starter that nobody was asked, `out_of` the marks of
    the others; `unlike` says that some pupils were asked fewer than others. Seats are those of
    now; `moved` says of pupils who have another one since, or are in the class no more, where
    they are. They count all the same: they were there.
    """

    facts: LessonFacts
    kind: str
    pupils: int
    groups: tuple[BandGroup, ...]
    overall: Advice | None
    questions: tuple[QuestionAdvice, ...]
    scores: Mapping[str, int]
    views: OwnView | None
    fooled: tuple[Fooled, ...]
    clarity: tuple[int, int | None, str] | None
    confident: Mapping[int, tuple[int, int]] = field(default_factory=dict)
    not_asked: tuple[int, ...] = ()
    out_of: int = 0
    moved: tuple[str, ...] = ()
    unlike: bool = False

    @property
    def recorded(self) -> bool:
        """Tell whether anything that counts is recorded of the lesson."""
        return bool(self.kind) or self.views is not None or self.clarity is not None


def decide(
    connection: Connection,
    result: LessonResult,
    scheme: BandScheme,
    thresholds: Thresholds | None = None,
) -> Decision:
    """Return what is known of a lesson; the bands share out the marks of what was asked."""
    thresholds = thresholds or Thresholds()
    facts = lesson_facts(connection, result)
    entry = result.entry_id
    counts: dict[int, tuple[int, int]] = {}
    scores: dict[str, int] = {}
    groups: tuple[BandGroup, ...] = ()
    answers: dict[str, dict[int, bool]] = {}
    shown: dict[int, dict[str, int]] = {}
    totals: dict[str, int] = {}
    if entry is not None:
        counts = tallies_by_question(connection, entry)
        scores = scores_of(connection, entry)
        if result.kind == "bands":
            groups = tuple(BandGroup(*row) for row in bands_of(connection, entry))
        if result.kind == "answers":
            answers = answers_of(connection, entry)
            shown = misconceptions_counted(connection, entry)
            # A pupil who came later may have been asked more, or less, than the others.
            totals = {seat: marks_of(facts, row) for seat, row in answers.items()}
        totals = {seat: totals.get(seat) or result.out_of for seat in scores}
        if scores:
            groups = _groups(scores, totals, scheme, result.out_of)
    known = {question.number: question for question in facts.questions}
    questions = tuple(
        QuestionAdvice(
            known.get(number, QuestionFacts(number, "", "", "")),
            right,
            out_of,
            advise(right, out_of, thresholds),
            tuple(
                sorted(
                    (s for s, row in answers.items() if row.get(number) is False), key=seat_order
                )
            ),
            shown.get(number, {}),
        )
        for number, (right, out_of) in counts.items()
        if out_of
    )
    share, pupils = _overall(groups, questions, scores, totals, result.out_of)
    views, hands = own_views_of(connection, result.lesson_id)
    view = None
    confident: Mapping[int, tuple[int, int]] = {}
    fooled: list[Fooled] = []
    if views or hands:
        # Most lessons have no own views, and what is recorded in one go should not wait for them.
        from itembank.records.statistics.own_view import (
            OwnView,
            Pairs,
            compare_views,
            confident_answers,
            fooled_the_confident,
        )

        shares = {seat: marks / totals[seat] for seat, marks in scores.items()}
        # Of one band alone nobody is at an end, so nobody is too sure or too doubtful.
        ends = [groups[0].seats, groups[-1].seats] if len(groups) > 1 else [(), ()]
        view = compare_views(views, shares, *ends)
        if not views:
            view = OwnView(Pairs(0, 0), (), (), hands)
        confident = confident_answers(views, answers)
        fooled = fooled_the_confident(confident, thresholds.confidence)
    found = Decision(
        facts,
        result.kind,
        pupils,
        groups,
        advise(share * pupils, pupils, thresholds) if pupils else None,
        questions,
        scores,
        view,
        tuple(fooled),
        clarity_of(connection, result.lesson_id),
        confident,
        tuple(sorted(set(known) - set(unpack_asked(result.asked, known)))),
        result.out_of,
        unlike=any(total != result.out_of for total in totals.values()),
    )
    return _as_they_sit(found, seats_now(connection, result.class_name, result.date))


def _as_they_sit(found: Decision, now: Mapping[str, ClassSeat | None]) -> Decision:
    """Return a decision with the seats of now: whoever left the class is in no group."""
    seats = {seat for group in found.groups for seat in group.seats} | set(found.scores)
    changed = {seat: now[seat] for seat in sorted(seats & set(now), key=seat_order)}
    if not changed:
        return found
    own = folded(found.facts.class_name)

    def there(old: Iterable[str]) -> tuple[str, ...]:
        kept = []
        for seat in old:
            home = changed.get(seat, ClassSeat(own, seat))
            # Who is in another class now has no seat here; somebody else may sit in it.
            if home is not None and home.class_key == own:
                kept.append(home.seat)
        return tuple(sorted(kept, key=seat_order))

    said = [
        f"{seat} left" if home is None else f"{seat} is now {_name(home, own)}"
        for seat, home in changed.items()
    ]
    views = found.views
    return replace(
        found,
        groups=tuple(replace(group, seats=there(group.seats)) for group in found.groups),
        questions=tuple(
            replace(question, wrong=there(question.wrong)) for question in found.questions
        ),
        scores={new: n for old, n in found.scores.items() for new in there([old])},
        views=views and replace(views, over=there(views.over), under=there(views.under)),
        moved=tuple(said),
    )


def _name(home: ClassSeat, own: str) -> str:
    return home.seat if home.class_key == own else f"{home.class_key.upper()}/{home.seat}"


def seat_band(marks: int, total: int, scheme: BandScheme, out_of: int) -> Band:
    """Return the band of a seat with `marks` out of `total`, of a starter out of `out_of`.

    >>> from itembank.planning.bands.bands import default_scheme
    >>> seat_band(2, 8, default_scheme(), 8).letter
    'R'
    """
    bands = scheme.bands(out_of)
    letter = band_of(marks, scheme.bands(total)).letter
    found = next((band for band in bands if band.letter == letter), None)
    # A band that some of 5 marks reach may have no score out of 6: then by the same share.
    return found or band_of(marks * out_of // total, bands)


def _groups(
    scores: Mapping[str, int], totals: Mapping[str, int], scheme: BandScheme, out_of: int
) -> tuple[BandGroup, ...]:
    """Return the bands with their seats, each seat by the marks that it could have."""
    inside: dict[str, list[str]] = defaultdict(list)
    bands = scheme.bands(out_of)
    for seat, marks in scores.items():
        inside[seat_band(marks, totals[seat], scheme, out_of).letter].append(seat)
    found = []
    for band in bands:
        seats = inside[band.letter]
        found.append(
            BandGroup(
                band.letter,
                band.name,
                band.lowest,
                band.highest,
                len(seats),
                tuple(sorted(seats, key=seat_order)),
            )
        )
    return tuple(found)


def _overall(
    groups: Sequence[BandGroup],
    questions: Sequence[QuestionAdvice],
    scores: Mapping[str, int],
    totals: Mapping[str, int],
    out_of: int,
) -> tuple[float, int]:
    """Return the mean share of marks and the number of pupils it is of, as far as is known.

    A band counts by its middle score, for hands tell no more.
    """
    if scores:
        return sum(n / totals[seat] for seat, n in scores.items()) / len(scores), len(scores)
    if questions:
        # Where questions have different marks each counts by its own.
        marks = sum(question.question.marks * question.out_of for question in questions)
        right = sum(question.question.marks * question.right for question in questions)
        # Who left early or came late answered fewer: the class is no smaller for it.
        return right / marks, max(question.out_of for question in questions)
    pupils = sum(group.pupils for group in groups)
    total = sum((group.lowest + group.highest) / 2 * group.pupils for group in groups)
    return (total / pupils / out_of, pupils) if pupils else (0.0, 0)
