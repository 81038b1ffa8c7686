"""Venn diagrams of two sets: one set, either, neither, and a region that is missing.

England's programme of study for key stage 3 (2013) asks pupils to "enumerate sets and unions or
intersections of sets systematically, using tables, grids and Venn diagrams" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any, NamedTuple

from generators._scatter import unlike
from generators.probability import _misconceptions as m
from generators.probability._venn_in_brief import BRIEF
from generators.probability.single import SIMPLEST
from itembank.figures.kinds.sets.venn_diagram import VennDiagram
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Step, Tier
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

# The two sets, who is counted, and what they do; one of them, and what that one does.
_STORIES = (
    ("tennis", "chess", "pupils", "play", "pupil", "plays"),
    ("French", "Spanish", "pupils", "study", "pupil", "studies"),
    ("apples", "pears", "children", "like", "child", "likes"),
    ("cats", "dogs", "families", "own", "family", "owns"),
    ("roses", "tulips", "visitors", "like", "visitor", "likes"),
)

SET, EITHER, NOT, HIDDEN, HIDDEN_SET, CHANCE, CHANCE_EITHER = range(7)
"""What is asked of a diagram."""


class _Regions(NamedTuple):
    """How many are in the first set alone, in both, in the second alone, and in neither."""

    first: int
    both: int
    second: int
    neither: int

    @property
    def all_of_them(self) -> int:
        return sum(self)


def _regions(story: int, seed: int) -> _Regions:
    return _Regions(*unlike(story + len(_STORIES) * seed, 4, 2, 16))


class _Answer(NamedTuple):
    """The question's last words, the key, the working and the likely mistakes."""

    asks: str
    key: int | Fraction
    steps: tuple[tuple[str, tuple[int, ...], str], ...]
    wrongs: tuple[tuple[Any, int | Fraction], ...]


def _answer(kind: int, story: int, of: _Regions) -> _Answer:
    """Return what is asked; a step is its words, its numbers and the sign between them."""
    a, b, who, do, single, does = _STORIES[story]
    many = f"How many {who} {do}"
    whole = of.all_of_them
    first = of.first + of.both
    if kind == SET:
        return _Answer(
            f"{many} {a}?",
            first,
            (("Add the two regions of the circle.", (of.first, of.both), "+"),),
            ((m.ONLY_REGION, of.first), (m.OTHER_CIRCLE, of.both + of.second)),
        )
    if kind in (CHANCE, CHANCE_EITHER):
        event = f"{does} {a}" if kind == CHANCE else f"{does} {a} or {b}, or both"
        fits = (of.first, of.both) if kind == CHANCE else (of.first, of.both, of.second)
        circles = "circle" if kind == CHANCE else "circles"
        either = whole - of.neither
        return _Answer(
            f"A {single} is chosen at random. What is the probability that the {single} {event}?"
            + SIMPLEST,
            Fraction(sum(fits), whole),
            (
                (f"Add the regions of the {circles}.", fits, "+"),
                ("Add all regions.", tuple(of), "+"),
                ("Write the part over the whole.", (sum(fits), whole), "/"),
            ),
            (
                (
                    (m.ONLY_REGION, Fraction(of.first, whole)),
                    (m.LEAVES_OUTSIDE, Fraction(first, either)),
                    (m.PART_TO_PART, Fraction(first, whole - first)),
                )
                if kind == CHANCE
                else (
                    (m.LEAVES_OVERLAP, Fraction(of.first + of.second, whole)),
                    (m.OVERLAP_TWICE, Fraction(either + of.both, whole)),
                    (m.PART_TO_PART, Fraction(either, of.neither)),
                )
            ),
        )
    if kind == EITHER:
        return _Answer(
            f"{many} {a} or {b}, or both?",
            of.first + of.both + of.second,
            (("Add the three regions of the circles.", (of.first, of.both, of.second), "+"),),
            (
                (m.OVERLAP_TWICE, first + of.both + of.second),
                (m.LEAVES_OVERLAP, of.first + of.second),
                (m.EVERYTHING, whole),
            ),
        )
    if kind == NOT:
        return _Answer(
            f"How many {who} do not {do} {a}?",
            of.second + of.neither,
            (("Add the regions outside the circle.", (of.second, of.neither), "+"),),
            (
                (m.LEAVES_OUTSIDE, of.second),
                (m.ONLY_REGION, of.neither),
                (m.OTHER_CIRCLE, first),
            ),
        )
    shown = whole - of.both
    hidden = (
        "Subtract the numbers that are shown from the total.",
        (whole, of.first, of.second, of.neither),
        "-",
    )
    if kind == HIDDEN:
        return _Answer(
            f"{many} both {a} and {b}?",
            of.both,
            (hidden,),
            ((m.ADDS_SHOWN, shown), (m.LEAVES_OUTSIDE, whole - of.first - of.second)),
        )
    return _Answer(
        f"{many} {a}?",
        first,
        (hidden, ("Add the two regions of the circle.", (of.first, of.both), "+")),
        ((m.IGNORES_MISSING, of.first), (m.MISSING_ALONE, of.both), (m.ADDS_SHOWN, shown)),
    )


def _kept(kind: int, story: int, seed: int) -> bool:
    of = _regions(story, seed)
    answer = _answer(kind, story, of)
    wrong = [value for _, value in answer.wrongs]
    return len({*of}) == 4 and answer.key not in wrong and len({*wrong}) == len(wrong)


@register
class Venn(Topic):
    """One set; either set, not in it, or a region that is missing; and how likely one is in it."""

    id = "probability.venn"
    title = "Venn diagrams"
    statements = ("probability.sets",)
    misconceptions = (
        *(m.ONLY_REGION, m.OTHER_CIRCLE, m.OVERLAP_TWICE, m.LEAVES_OVERLAP, m.EVERYTHING),
        *(m.LEAVES_OUTSIDE, m.MISSING_ALONE, m.ADDS_SHOWN, m.IGNORES_MISSING),
        m.PART_TO_PART,
    )
    spaces = {
        Tier.SUPPORT: Space(_kept, kind=(SET,), story=range(len(_STORIES)), seed=range(1, 75)),
        Tier.CORE: Space(
            _kept, kind=(EITHER, NOT, HIDDEN), story=range(len(_STORIES)), seed=range(75, 130)
        ),
        Tier.CHALLENGE: Space(
            _kept,
            kind=(HIDDEN_SET, CHANCE, CHANCE_EITHER),
            story=range(len(_STORIES)),
            seed=range(130, 190),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "probability.venn",
        kinds.working_goes_wrong(
            {m.LEAVES_OUTSIDE: (e.left_out,), m.LEAVES_OVERLAP: (e.left_out,)}
        ),
    )
    spaces = with_brief(spaces, BRIEF)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, story, seed = values
        of = _regions(story, seed)
        answer = _answer(kind, story, of)
        a, b, who, do, *_ = _STORIES[story]
        hidden = kind in (HIDDEN, HIDDEN_SET)
        figure = VennDiagram(
            a,
            b,
            (of.first,),
            () if hidden else (of.both,),
            (of.second,),
            (of.neither,),
            total=of.all_of_them if hidden else None,
        )
        text = (f"The Venn diagram shows the {who} who {do} {a} and {b}. {answer.asks}",)
        key = number_node(answer.key)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "lowest-terms" if isinstance(answer.key, Fraction) else "integer",
            tuple(_step(*step) for step in answer.steps),
            slips(*answer.wrongs, write=number_node, key=key),
            (kind, story, *of),
            figure=figure,
        )


def _step(words: str, numbers: tuple[int, ...], sign: str) -> Step:
    first, *rest = map(t.Int, numbers)
    if sign == "/":
        written = t.frac(*numbers)
        key = number_node(Fraction(*numbers))
        return Step(words, written if written == key else t.equals(written, key))
    if sign == "+":
        return Step(words, t.equals(t.add(first, *rest), t.Int(sum(numbers))))
    return Step(words, t.equals(t.sub(first, *rest), t.Int(2 * numbers[0] - sum(numbers))))
