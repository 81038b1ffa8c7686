"""The same model with one sign turned round: what a slip of its writer would have made of it.

Where the words say which sign is right, the checks refuse the other one. Where every check would let
the turned model through as well, nothing that was read says which of the two the story means, and a
person has to look.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.tree.clock_times import clock_fault
from itembank.notation.value import exact_or_none
from itembank.text.late_pattern import late
from itembank.wording.sentences.prompt import SLOT, Slotted, index_of, slotted
from itembank.wording.story.asked.direction import bare, says_down, says_up

Turned = tuple[tuple[t.Node, ...], t.Node | None, str]

_CLOCK_UNITS = ("h", "min", "s")


def turned_models(
    runs: Sequence[Run], lines: tuple[t.Node, ...], find: t.Node | None
) -> Iterator[Turned]:
    """Yield a model with one of its signs turned, or one difference the other way round.

    A sum that the prompt prints as it stands is no choice of the model's writer, and is left.
    Each comes with what was turned into what, as words for a message.

    >>> from itembank.notation.parse import parse
    >>> [says for _, _, says in turned_models((), (parse("17 - 8 + 4"),), None)]
    ['17 + 8 + 4 for 17 - 8 + 4', '17 - 8 - 4 for 17 - 8 + 4']
    """
    whole = lines if find is None else (*lines, find)
    printed = {part for run in runs if not isinstance(run, str) for part in t.walk(run)}
    said = slotted(runs)
    spans = {
        (exact_or_none(said.nodes[index_of(low)]), exact_or_none(said.nodes[index_of(high)]))
        for low, high in re.findall(rf"\bfrom ({SLOT}) to ({SLOT})", said.text)
    }
    seen = dict.fromkeys(part for node in whole for part in t.walk(node) if isinstance(part, t.Sum))
    for old in seen:
        if old in printed or _is_one_time(old) or _is_span(old, spans):
            continue
        for new in _others(old, said.text):
            if clock_fault(new):
                continue  # two times of day have no sum
            yield _changed(lines, find, old, new)
    for part, other in (*_other_parts(whole, said, spans), *_other_reach(whole, printed, said)):
        yield _changed(lines, find, part, other)


def _changed(lines: tuple[t.Node, ...], find: t.Node | None, old: t.Node, new: t.Node) -> Turned:
    changes: dict[t.Node, t.Node] = {old: new}
    return (
        tuple(t.replaced(node, changes) for node in lines),
        None if find is None else t.replaced(find, changes),
        f"{shown_line(new)} for {shown_line(old)}",
    )


_OF_THINGS = late(
    rf"({SLOT})(?: of (?!(?:a|the|my) (?:number|sum|total)\b)| (?:had|have|has|are|were|is|was|do|did|take|took)\b)"
)


_PART_IN_WORDS = late(
    r"\b(?:half|halves|thirds?|quarters?|fifths?|sixths?|eighths?|tenths?) of (?:them|it|the|these|his|her|their)\b",
    re.I,
)


_OF_EACH = late(
    rf"\b(?:every|each) (?!and\b)[a-z]+[^.?!]*? (?:contains?|has|have|holds?) ({SLOT})", re.I
)


def _other_reach(
    whole: tuple[t.Node, ...], printed: set[t.Node], said: Slotted
) -> Iterator[tuple[t.Node, t.Node]]:
    """Yield a sum with the factor of its first term over all of it, and the other way about.

    15 × 24 - 2 takes two cans away once, 15 × (24 - 2) in each box. It is looked at only for an
    amount that the words say of every box, or of each.
    """
    of_each = {said.nodes[index_of(m[1])] for m in _OF_EACH.finditer(said.text)}
    for part in (part for node in whole for part in t.walk(node)):
        if part in printed:
            continue
        match part:
            case t.Sum(t.Product(first, (("×", second),)), ((op, term),)) if term in of_each:
                yield part, t.Product(first, (("×", t.Bracket(t.Sum(second, ((op, term),)))),))
                yield part, t.Product(second, (("×", t.Bracket(t.Sum(first, ((op, term),)))),))
            case t.Product(first, (("×", t.Bracket(t.Sum(second, ((op, term),)))),)) if (
                term in of_each
            ):
                yield part, t.Sum(t.Product(first, (("×", second),)), ((op, term),))


def _other_parts(
    whole: tuple[t.Node, ...], said: Slotted, spans: set[tuple[Fraction | None, Fraction | None]]
) -> Iterator[tuple[t.Node, t.Node]]:
    """Yield each part of a model with the other part in its place: 3/8 with 1 - 3/8."""
    of_things = {said.nodes[index_of(m[1])] for m in _OF_THINGS.finditer(said.text)}
    in_words = bool(_PART_IN_WORDS.search(said.text))
    taken: set[t.Node] = set()
    for part in (part for node in whole for part in t.walk(node)):
        if isinstance(part, t.Sum):
            taken |= {bare(term) for _, term in part.rest}
    for part in (part for node in whole for part in t.walk(node)):
        match part:
            case t.Bracket(t.Sum(first, (("-", term),)) as less):
                if exact_or_none(first) == 1 and not _is_span(less, spans):
                    yield part, term
            case t.Product() if part not in taken:
                for factor in (part.first, *(f for op, f in part.rest if op != "÷")):
                    value = exact_or_none(factor)
                    small = isinstance(factor, t.Frac | t.Percent)
                    told = factor in of_things or (in_words and isinstance(factor, t.Frac))
                    if small and told and value is not None and 0 < value < 1:
                        unit = t.Percent(t.Int(100)) if isinstance(factor, t.Percent) else t.Int(1)
                        yield factor, t.Bracket(t.Sum(unit, (("-", factor),)))


def _is_one_time(total: t.Sum) -> bool:
    """Whether a sum is one length of time in two units: 1 h + 18 min."""
    terms = [total.first, *(term for _, term in total.rest)]
    units = [term.unit for term in terms if isinstance(term, t.Quantity)]
    return units in [list(_CLOCK_UNITS[i:j]) for i, j in ((0, 2), (1, 3), (0, 3))] and all(
        op == "+" for op, _ in total.rest
    )


def _is_span(total: t.Sum, spans: set[tuple[Fraction | None, Fraction | None]]) -> bool:
    """Whether a difference is how far it is *from 10 % to 100 %*, as the words say."""
    if len(total.rest) != 1 or total.rest[0][0] != "-":
        return False
    ends = (exact_or_none(bare(total.rest[0][1])), exact_or_none(bare(total.first)))
    return None not in ends and (ends in spans or ends[::-1] in spans)


def _others(total: t.Sum, words: str) -> Iterator[t.Sum]:
    ops = [op for op, _ in total.rest]
    if len(ops) > 1 and "-" not in ops:
        return  # 12 + 9 + 15: to take one of many away is no slip
    whole = exact_or_none(total.first)
    for place, (op, term) in enumerate(total.rest):
        if op == "-" and "-" in ops[place + 1 :] and whole is not None and place + 1 < len(ops):
            continue  # 180 - 35 - 80: what is taken away one after the other
        if whole == 1 and (says_up(words) if op == "-" else says_down(words)) == "":
            continue  # nothing grows in these words: 1 + 3/8 is not what is left of a cake
        rest = list(total.rest)
        rest[place] = ("+" if op == "-" else "-", term)
        yield t.Sum(total.first, tuple(rest))
    if ops == ["-"] and t.symbols(total) and t.Sum not in (type(total.first), type(bare(term))):
        yield t.Sum(total.rest[0][1], (("-", total.first),))
