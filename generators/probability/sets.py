"""Sets in symbols: members of intersections, unions and complements, how many, and how likely.

England's programme of study for key stage 3 (2013) asks pupils to "enumerate sets and unions or
intersections of sets systematically, using tables, grids and Venn diagrams" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._scatter import scattered, unlike
from generators.probability import _misconceptions as m
from generators.probability._sets_by_rule import BY_RULE, MISTAKES_BY_RULE
from generators.probability._sets_in_brief import BRIEF, MISTAKES
from generators.probability._sets_shaded import shade
from generators.probability._sets_told import (
    ADDS_MEMBERS,
    BOTH_FOR_UNION,
    DASH_IGNORED,
    LETTERS,
    SETS,
    UNION_FOR_BOTH,
    WHOLE_CIRCLE,
    Regions,
    SetTold,
)
from generators.probability.single import SIMPLEST
from itembank.figures.kinds.sets.venn_diagram import VennDiagram
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Misconception, Step, Tier, prompt
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

LIST, COUNT, CHANCE = range(3)
"""What is asked of a set."""


def _held(seed: int) -> tuple[tuple[int, ...], ...]:
    """Return the members of each region: one to three of the numbers from 1 to 20."""
    counts = unlike(seed, 4, 1, 3)
    order = sorted(zip(scattered(seed, 20, 0, 10_000), range(1, 21), strict=True))
    left = [number for _, number in order]
    found = []
    for count in counts:
        found.append(tuple(sorted(left[:count])))
        left = left[count:]
    return tuple(found)


def _of(seed: int, regions: Regions) -> tuple[int, ...]:
    held = _held(seed)
    return tuple(sorted(number for place in regions for number in held[place]))


def _value(kind: int, seed: int, regions: Regions) -> t.Node:
    """Return the answer for some regions: their members, how many, or how likely one is."""
    members = _of(seed, regions)
    if kind == LIST:
        numbers = tuple(map(t.Int, members))
        return t.Listing(numbers) if len(numbers) > 1 else numbers[0]
    if kind == COUNT:
        return t.Int(len(members))
    return number_node(Fraction(len(members), len(_of(seed, (0, 1, 2, 3)))))


def _wrongs(kind: int, sets: int, seed: int) -> list[tuple[Misconception, t.Node | None]]:
    told = SETS[sets]
    found: list[tuple[Misconception, t.Node | None]] = [
        (mistake, _value(kind, seed, regions)) for mistake, regions in told.wrongs
    ]
    members, whole = _of(seed, told.regions), len(_of(seed, (0, 1, 2, 3)))
    if kind == COUNT:
        found.append((ADDS_MEMBERS, t.Int(sum(members))))
    if kind == CHANCE:
        found.append((m.PART_TO_PART, number_node(Fraction(len(members), whole - len(members)))))
    return found


def _kept(kind: int, sets: int, letters: int, seed: int) -> bool:
    if (seed + 7 * letters + 3 * sets + kind) % 5:
        return False
    # Most of the parts of circles are asked for with a chance.
    if sets >= 6 and kind != CHANCE and seed % 4:
        return False
    # Members are listed first, and counted half as often: to count them is a step more.
    if sets < 3 and kind == COUNT and seed // 5 % 2:
        return False
    if kind == LIST and len(_of(seed, SETS[sets].regions)) < 2:
        return False
    key = _value(kind, seed, SETS[sets].regions)
    wrong = [value for _, value in _wrongs(kind, sets, seed) if value != key]
    return len({*wrong}) == len(wrong) > 1


@register
class SetNotation(Topic):
    """One circle and the overlap; both circles, and outside one; then parts of these."""

    id = "probability.sets"
    title = "Sets in symbols"
    statements = ("probability.sets",)
    prerequisites = ("probability.venn",)
    misconceptions = (
        *MISTAKES,
        *MISTAKES_BY_RULE,
        *(UNION_FOR_BOTH, BOTH_FOR_UNION, DASH_IGNORED, WHOLE_CIRCLE, ADDS_MEMBERS),
        *(m.ONLY_REGION, m.OTHER_CIRCLE, m.LEAVES_OVERLAP, m.LEAVES_OUTSIDE, m.PART_TO_PART),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _kept,
            kind=(LIST, COUNT),
            sets=range(3),
            letters=range(len(LETTERS)),
            seed=range(1, 82),
        ),
        Tier.CORE: Space(
            _kept,
            kind=(LIST, COUNT),
            sets=range(3, 6),
            letters=range(len(LETTERS)),
            seed=range(1, 82),
        ),
        Tier.CHALLENGE: Space(
            _kept,
            kind=(LIST, COUNT, CHANCE),
            sets=range(6, len(SETS)),
            letters=range(len(LETTERS)),
            seed=range(1, 60),
        ),
    }
    spaces[Tier.SUPPORT] = spaces[Tier.SUPPORT].also(
        shade, which=range(3), letters=range(len(LETTERS))
    )
    spaces[Tier.CORE] = spaces[Tier.CORE].also(
        shade, which=range(3, 6), letters=range(len(LETTERS))
    )
    spaces[Tier.CHALLENGE] = spaces[Tier.CHALLENGE].also(
        shade, which=range(6, len(SETS)), letters=range(len(LETTERS))
    )
    spaces = with_brief(spaces, BRIEF)
    spaces = with_brief(spaces, BY_RULE)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, sets, letters, seed = values
        a, b = LETTERS[letters]
        told = SETS[sets]
        shown = t.Label(told.shown.format(a=a, b=b))
        first, both, second, neither = _held(seed)
        figure = VennDiagram(a, b, first, both, second, neither, members=True)
        asks = {
            LIST: "List the members of {s}.",
            COUNT: "What is n({s})?",
            CHANCE: f"A number in the diagram is chosen at random. What is P({{s}})?{SIMPLEST}",
        }[kind]
        text = prompt(f"The Venn diagram shows sets {a} and {b}. {asks}", s=shown)
        key = _value(kind, seed, told.regions)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            {LIST: "amounts", COUNT: "integer", CHANCE: "lowest-terms"}[kind],
            tuple(_steps(kind, told, (a, b), seed)),
            slips(*_wrongs(kind, sets, seed), key=key),
            (kind, sets, seed),
            figure=figure,
            accept=("any-order",) if kind == LIST else (),
        )


def _named(look: str, names: tuple[str, str]) -> str:
    """Return where to look, as the beginning of a sentence."""
    told = look.format(a=names[0], b=names[1])
    return told[0].upper() + told[1:]


def _steps(kind: int, told: SetTold, names: tuple[str, str], seed: int) -> list[Step]:
    """Return the working: which regions, how many, and out of how many."""
    members = _of(seed, told.regions)
    steps = []
    if told.before[0]:
        listed = ", ".join(map(str, _of(seed, told.before[1])))
        steps.append(Step(f"{_named(told.before[0], names)}: {listed}."))
    if kind == LIST:
        key = _value(kind, seed, told.regions)
        steps.append(Step(f"List what is {told.look.format(a=names[0], b=names[1])}.", key))
    else:
        steps.append(Step(f"{_named(told.look, names)}: {', '.join(map(str, members))}."))
    if kind == COUNT:
        steps.append(Step("n( ) asks how many there are. Count them.", t.Int(len(members))))
    if kind == CHANCE:
        whole = len(_of(seed, (0, 1, 2, 3)))
        written, key = t.frac(len(members), whole), _value(kind, seed, told.regions)
        steps.append(
            Step(
                f"That is {len(members)} out of {whole}.",
                written if written == key else t.equals(written, key),
            )
        )
    return steps
