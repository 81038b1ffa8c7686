"""Tree diagrams: a branch that is missing, two events with and without putting back.

England's programme of study for key stage 3 (2013) asks pupils to "enumerate sets and ...
combinations of sets systematically, using tables, grids and Venn diagrams" and to work with
combined events (from memory); tree diagrams lead on to key stage 4.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any, NamedTuple

from generators._turns import by_turns
from generators.probability import _misconceptions as m
from generators.probability._trees_in_brief import BRIEF
from generators.probability.single import SIMPLEST
from itembank.figures.kinds.chance.tree_diagram import Branch, TreeDiagram, Twig
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import decimal_node, number_node
from itembank.items.item import Draft, Step, Tier
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_COLOURS = (("red", "blue"), ("black", "white"), ("green", "yellow"), ("pink", "purple"))
_THINGS = ("counter", "bead", "ticket", "ball")
_TWO = "A {thing} is taken from a bag, and then another from a box."
_KEPT = "A {thing} is taken from a bag and kept, and then another from the same bag."

BOTH, IN_ORDER, ANY_ORDER = range(3)
"""What is asked of two events."""


def _tenths(first: int, place: int, second: int) -> bool:
    """Keep a tree with a branch left out: the first set, or one after it."""
    known = (first, second, 100 - second)[place]
    return (
        50 not in (first, second) and known not in (55, 60) and first not in (second, 100 - second)
    )


class _Chances(NamedTuple):
    """How likely a is at first, and b; and after a or b the one or the other."""

    a: Fraction
    b: Fraction
    a_after_a: Fraction
    b_after_a: Fraction
    a_after_b: Fraction


def _from_two(first: int, second: int, swapped: bool) -> _Chances:
    """Return the chances where the second event has nothing to do with the first, in tenths."""
    p, q = Fraction(first, 10), Fraction(second, 10)
    if swapped:
        p, q = 1 - p, 1 - q
    return _Chances(p, 1 - p, q, 1 - q, q)


def _from_one(a: int, b: int) -> _Chances:
    """Return the chances where two are taken of a and b things, and kept."""
    n = a + b
    return _Chances(
        *(Fraction(a, n), Fraction(b, n), Fraction(a - 1, n - 1)),
        *(Fraction(b, n - 1), Fraction(a, n - 1)),
    )


def _right(kind: int, of: _Chances) -> Fraction:
    if kind == BOTH:
        return of.a * of.a_after_a
    in_order = of.a * of.b_after_a
    return in_order if kind == IN_ORDER else in_order + of.b * of.a_after_b


def _wrong(kind: int, of: _Chances, kept: bool) -> list[tuple[Any, Fraction]]:
    after = of.a_after_a if kind == BOTH else of.b_after_a
    found = [(m.ADDS_ALONG, of.a + after), (m.STOPS_ON_TREE, after)]
    if kind == ANY_ORDER:
        found = [(m.ONE_ORDER, of.a * of.b_after_a)]
        if not kept:
            found.append((m.BOTH_INSTEAD, of.a * of.a_after_a))
    if kept:
        back = of.a * (of.a if kind == BOTH else of.b)
        found.append((m.PUTS_BACK, 2 * back if kind == ANY_ORDER else back))
    return found


def _independent(kind: int, first: int, second: int, swapped: bool) -> bool:
    if 5 in (first, second) or first == second or (kind == ANY_ORDER and swapped):
        return False
    of = _from_two(first, second, swapped)
    wrong = [value for _, value in _wrong(kind, of, False)]
    return _right(kind, of) not in wrong and len({*wrong}) == len(wrong)


def _dependent(kind: int, a: int, b: int) -> bool:
    """Keep a things of one colour and b of another, of which two are kept."""
    if a == b or a + b > 16:
        return False
    of = _from_one(a, b)
    wrong = [value for _, value in _wrong(kind, of, True)]
    return _right(kind, of) not in wrong and len({*wrong}) == len(wrong)


@register
class Trees(Topic):
    """A branch that is missing; two events with putting back; and without."""

    id = "probability.trees"
    title = "Tree diagrams"
    statements = ("probability.sample-spaces", "probability.sum")
    prerequisites = ("probability.not", "fractions.multiply")
    misconceptions = (
        m.STOPS_AT_SUM,
        *(m.SAME_AGAIN, m.LOSES_TENTH, m.HALF_EACH, m.ADDS_ALONG, m.ONE_ORDER, m.PUTS_BACK),
        *(m.BOTH_INSTEAD, m.STOPS_ON_TREE),
    )
    spare = "Few fractions are short enough for a branch; all pairs of tenths are in."
    spaces = {
        Tier.SUPPORT: Space(
            _tenths,
            first=range(15, 90, 5),
            place=range(3),
            second=range(25, 85, 10),
        ),
        Tier.CORE: Space(
            _independent,
            kind=range(3),
            first=range(1, 10),
            second=range(1, 10),
            swapped=(False, True),
        ),
        Tier.CHALLENGE: Space(_dependent, kind=(BOTH, ANY_ORDER), a=range(2, 13), b=range(2, 13)),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces, "probability.trees", kinds.working_goes_wrong({m.ADDS_ALONG: (e.added,)})
    )
    spaces = with_brief(spaces, BRIEF)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return _missing(*values)
        return _with(*values) if tier is Tier.CORE else _kept(*values)


def _hundredths(number: int) -> t.Node:
    return decimal_node(Fraction(number, 100))


def _tree(
    names: tuple[str, str],
    first: tuple[t.Node | None, t.Node | None],
    after: tuple[tuple[t.Node | None, t.Node | None], tuple[t.Node | None, t.Node | None]],
) -> TreeDiagram:
    return TreeDiagram(
        tuple(
            Branch(name, chance, tuple(Twig(*pair) for pair in zip(names, twigs, strict=True)))
            for name, chance, twigs in zip(names, first, after, strict=True)
        )
    )


def _missing(first: int, place: int, second: int) -> Draft:
    turn = first // 5 + second // 10
    names = by_turns(_COLOURS, turn)
    sets = [
        [_hundredths(first), _hundredths(100 - first)],
        [_hundredths(second), _hundredths(100 - second)],
        [_hundredths(100 - second), _hundredths(second)],
    ]
    given: list[list[t.Node | None]] = [list(pair) for pair in sets]
    given[place][1] = None
    known = first if place == 0 else second if place == 1 else 100 - second
    figure = _tree(names, (given[0][0], given[0][1]), tuple((a, b) for a, b in given[1:]))  # type: ignore[arg-type]
    text = ("What is the missing probability?",)
    key = _hundredths(100 - known)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "decimal",
        (
            Step(
                "The branches from one point add up to 1.",
                t.equals(t.sub(t.Int(1), _hundredths(known)), key),
            ),
        ),
        slips(
            (m.SAME_AGAIN, _hundredths(known)),
            (m.LOSES_TENTH, _hundredths(110 - known)),
            (m.HALF_EACH, _hundredths(50)),
            key=key,
        ),
        ("missing", first, place, second),
        figure=figure,
    )


def _with(kind: int, first: int, second: int, swapped: bool) -> Draft:
    names = by_turns(_COLOURS, first + 2 * second)
    thing = by_turns(_THINGS, first + second + kind)
    pair = (decimal_node(Fraction(first, 10)), decimal_node(Fraction(10 - first, 10)))
    after = (decimal_node(Fraction(second, 10)), decimal_node(Fraction(10 - second, 10)))
    figure = _tree(names, pair, (after, after))
    asked = (names[1], names[0]) if swapped else names
    of = _from_two(first, second, swapped)
    twin = ("two", kind, first, second, swapped)
    return _asked(figure, _TWO.format(thing=thing), kind, asked, of, False, twin)


def _kept(kind: int, a: int, b: int) -> Draft:
    names = by_turns(_COLOURS, a + 2 * b)
    thing = by_turns(_THINGS, a + b + kind)
    n = a + b
    figure = _tree(
        names,
        (t.frac(a, n), t.frac(b, n)),
        (
            (t.frac(a - 1, n - 1), t.frac(b, n - 1)),
            (t.frac(a, n - 1), t.frac(b - 1, n - 1)),
        ),
    )
    twin = ("kept", kind, a, b)
    of = _from_one(a, b)
    return _asked(figure, _KEPT.format(thing=thing), kind, names, of, True, twin, (a, b))


def _asked(
    figure: TreeDiagram,
    lead: str,
    kind: int,
    names: tuple[str, str],
    of: _Chances,
    kept: bool,
    twin: tuple[object, ...],
    counts: tuple[int, int] = (0, 0),
) -> Draft:
    """Return the question about two events; fractions where things are kept."""
    write = number_node if kept else decimal_node
    a, b = names
    what = {
        BOTH: f"that both are {a}",
        IN_ORDER: f"of {a} and then {b}",
        ANY_ORDER: f"of one {a} and one {b}",
    }[kind]
    text = (f"{lead} What is the probability {what}?" + (SIMPLEST if kept else ""),)
    key = write(_right(kind, of))

    def along(first: Fraction, second: Fraction, *ways: str) -> Step:
        line: list[t.Node] = [t.times(write(first), write(second)), write(first * second)]
        if kept:
            # As it stands on the branches, and cancelled afterwards.
            every = sum(counts)
            tops = int(first * every), int(second * (every - 1))
            product = t.frac(tops[0] * tops[1], every * (every - 1))
            line = [t.times(t.frac(tops[0], every), t.frac(tops[1], every - 1)), product]
        return Step(f"{', then '.join(ways)}: multiply along the branches.", t.equals(*line))

    found = key
    if kind == BOTH:
        steps = [along(of.a, of.a_after_a, a.capitalize(), a)]
        if kept:
            every = sum(counts)
            found = t.frac(counts[0] * (counts[0] - 1), every * (every - 1))
    else:
        steps = [along(of.a, of.b_after_a, a.capitalize(), b)]
    if kind == ANY_ORDER:
        ways = [write(of.a * of.b_after_a), write(of.b * of.a_after_b)]
        if kept:
            bottom = sum(counts) * (sum(counts) - 1)
            ways = [t.frac(counts[0] * counts[1], bottom)] * 2
        found = t.frac(2 * counts[0] * counts[1], bottom) if kept else key
        steps += [
            along(of.b, of.a_after_b, b.capitalize(), a),
            Step("Add the two ways.", t.equals(t.add(*ways), found)),
        ]
    if kept and found != key:
        steps.append(Step("Write it in its lowest terms.", t.equals(found, key)))
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "lowest-terms" if kept else "decimal",
        tuple(steps),
        slips(*_wrong(kind, of, kept), write=write, key=key),
        twin,
        figure=figure,
    )
