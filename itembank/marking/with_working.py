"""The verdict on an answer with its working: what the lines come to, and whether they are true."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.items.item import Item
from itembank.marking.answer_alone import verdict_alone
from itembank.marking.form.policy import Policy, policy
from itembank.marking.form.rounded_answer import rounds_to, unrounded
from itembank.marking.typing.answer_setting import Setting
from itembank.marking.typing.filled import filled
from itembank.marking.typing.parsed_answer import Unreadable
from itembank.marking.typing.read_answer import read_answer
from itembank.marking.typing.working.rivals import another_result, rival
from itembank.marking.typing.working.sides_agree import flat
from itembank.marking.typing.working.working_lines import lines_of, says_what_was_done
from itembank.marking.typing.working.working_links import Link, links
from itembank.marking.typing.working.working_results import comes_to, results
from itembank.marking.verdict import Marked, Verdict
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.marking.worth.same_worth import unknowns
from itembank.marking.worth.typed_maths import tidy
from itembank.notation import tree as t
from itembank.text.late_pattern import late

_DECIMALS = late(r"(?<![\d,])\d+,\d+(?![\d,])")

TWO_ANSWERS = "More than one answer is given, and they differ: decide on one."


def verdict_with_working(
    item: Item, answer: str, asked: Setting, typed: t.Node | None
) -> Marked | None:
    """Return the verdict on an answer with its working, or None where none is shown."""
    if isinstance(item.key, t.Label):
        return None
    if found := _on_the_last_line(item, answer, asked):
        return found
    lines = lines_of(answer)
    if not lines:
        return None
    # An answer alone, marked already; the comma of x = 5,5 parts no lines.
    alone = len(lines) == 1 or ("," in answer and "," not in _DECIMALS.sub("", answer))
    alone = alone and len(lines_of(answer.replace(",", "."))) == 1
    if alone and typed is not None and _plain(item, typed):
        return None
    read: list[t.Node | None] = []
    for text in lines:
        try:
            read.append(read_answer(text, asked))
        except Unreadable as error:
            if not says_what_was_done(text):
                return Marked(Verdict.UNREADABLE, str(error)) if typed is None else None
            read.append(None)
    if isinstance(item.key, t.Relation) and isinstance(item.key.first, t.Sym):
        letter = item.key.first
        ends = [comes_to(node) for node in read if node is not None]
        if any(isinstance(end, t.Relation) and end.first == letter for end in ends):
            _drop_checks(item, read)
    if not read or read[-1] is None:
        return None
    shown = [node for node in read if node is not None]
    most = len(item.key.parts) if isinstance(item.key, t.Either | t.Listing) else 1
    solved, others = _solved(item, shown)
    if solved is not None:
        marked = verdict_alone(item, solved, answer)
        # One letter on each line, in any order, is read first: as lines of one letter they would
        # look like several answers that differ.
        if marked.verdict is Verdict.RIGHT:
            if flat(shown[-1]):  # x = 2, y = 8, 5
                return Marked(Verdict.WRONG, TWO_ANSWERS)
            return _with_working(item, others, [solved], marked)
    best: tuple[Marked, int] | None = None
    # As many lines as the key has parts, then fewer: of x = 2 and x = 5 each is half of it.
    for count in range(min(most, len(shown)), 0, -1):
        for given in _answers(item, shown[-count:]):
            marked = verdict_alone(item, given, answer)
            if marked.verdict is Verdict.RIGHT:
                return _with_working(item, shown[:-count], shown[-count:], marked)
            if best is None or (
                best[0].verdict is Verdict.WRONG and marked.verdict is not Verdict.WRONG
            ):
                best = marked, count
    if best is None:
        return None
    return _with_working(item, shown[: -best[1]], shown[-best[1] :], best[0])


def _on_the_last_line(item: Item, answer: str, asked: Setting) -> Marked | None:
    """Return the verdict where the last line by itself gives every part of an answer, rightly.

    Its commas part *x = 3, y = 6 or x = -1, y = -2*, and are no breaks between steps.
    """
    rows = lines_of(answer, commas=False)
    if not isinstance(item.key, t.Either | t.Listing) or len(rows) < 2:
        return None
    try:
        last = read_answer(rows[-1], asked)
        before = [
            read_answer(text, asked)
            for text in lines_of("\n".join(rows[:-1]))
            if not says_what_was_done(text)
        ]
    except Unreadable:
        return None
    marked = verdict_alone(item, last, answer)
    return _with_working(item, before, [last], marked) if marked.verdict is Verdict.RIGHT else None


def _solved(item: Item, shown: list[t.Node]) -> tuple[t.Node | None, list[t.Node]]:
    """Return the values found for the letters of simultaneous equations, line by line.

    With them come the other lines. Where a letter has two values the first stays with these.
    """
    names = unknowns(item.key)
    found: dict[str, t.Node] = {}
    others: list[t.Node] = []
    for node in shown:
        given = comes_to(node)
        match given:
            case t.Relation(t.Sym(name), (("=", value),)) if name in names and not t.symbols(value):
                if name in found:
                    others.append(found[name])
                found[name] = given
            case _:
                others.append(node)
    if not names or set(found) != set(names):
        return None, shown
    return t.Listing(tuple(found[name] for name in names)), others


def _plain(item: Item, typed: t.Node) -> bool:
    """Tell whether an answer is one side, or one relation of the kind that is asked for."""
    match typed:
        case t.Relation(first, rest):
            return len(rest) == 1 and (
                marking_of(item.ask).sign
                or isinstance(first, t.Sym)
                or isinstance(rest[0][1], t.Sym)
                or rest[0][0] != "="
            )
        case t.Listing(parts) | t.Either(parts):
            return all(_plain(item, part) for part in parts)
    return True


def _drop_checks(item: Item, read: list[t.Node | None]) -> None:
    """Take true lines without letters off the end: checks after a solution, 2 × 7 + 3 = 17."""
    while len(read) > 1:
        last = read[-1]
        if not isinstance(last, t.Relation) or t.symbols(last):
            return
        if not all(link.holds for link in links(item, last)):
            return
        read.pop()


def _answers(item: Item, lines: list[t.Node]) -> list[t.Node]:
    """Return what the last lines may come to, the likeliest first."""
    if len(lines) > 1:
        ends = [next(iter(results(item, node)), None) for node in lines]
        return [] if None in ends else [t.Listing(tuple(end for end in ends if end is not None))]
    (only,) = lines
    if isinstance(only, t.Listing | t.Either):
        # -x = 4 or x = 7 says of x no more than 2x = 14 does.
        ends = [next(iter(results(item, part)), None) for part in only.parts]
        found = [end for end in ends if end is not None]
        return [type(only)(tuple(found))] if len(found) == len(ends) else []
    sides = list(results(item, only))
    if marking_of(item.ask).sign:
        sides = [only, *sides]  # 3/4 = 6/8 is the answer itself, and 6/8 is not
    box = filled(item, only)
    return sides if box is None else [*sides, box]


def _used(node: t.Node, later: Sequence[t.Node]) -> bool:
    """Tell whether a later line calculates with a number: 41 in *41, 16, 41 - 16 = 25*."""
    sides = (
        side
        for line in later
        if isinstance(line, t.Relation)
        for side in (line.first, *(side for _, side in line.rest[:-1]))
    )
    return flat(node) and any(
        part == node for side in sides if not flat(side) for part in t.walk(side)
    )


def _two_numbers(how: Policy, link: Link) -> bool:
    """Tell whether a link says that one number is another that it does not round to."""
    left = tidy(link.left)
    return link.flat and not (unrounded(how, left, link.right) or rounds_to(how, left, link.right))


def _with_working(item: Item, before: list[t.Node], last: list[t.Node], marked: Marked) -> Marked:
    """Return a verdict with what must be said of the lines that lead to the answer."""
    every = [link for node in (*before, *last) for link in links(item, node)]
    rounds = marking_of(item.ask).rounded(item.ask) is not None
    asked, how = getattr(item.ask, "target", None), policy(item)
    # 2.499 = 2.50 says that it was rounded; 7 = 2.50 does not.
    if rounds and every and (every[-1].holds is not False or not _two_numbers(how, every[-1])):
        every = every[:-1]
    false = next((line for line in every if line.holds is False and not line.answers), None)
    ends = _answers(item, last)
    rivals = [
        node
        for place, node in enumerate(before)
        if node != asked
        and not _used(node, (*before[place + 1 :], *last))
        and not (rounds and ends and unrounded(how, tidy(node), ends[0]))
    ]
    if ends and any(rival(node, ends[0]) or another_result(item, tidy(node)) for node in rivals):
        return Marked(Verdict.WRONG, TWO_ANSWERS)
    if marked.verdict is Verdict.RIGHT and false is not None:
        # One finished number said to be another is an answer of its own, and no slip on the way.
        if false.flat:
            message = f"{false.text} is not true: the two sides are not worth the same."
            return Marked(Verdict.WRONG, message)
        return Marked(Verdict.RIGHT, f"The answer is right; {false.text} on the way is not true.")
    if marked.verdict is Verdict.WRONG and false is not None:
        return Marked(Verdict.WRONG, f"Look again at {false.text}: it is not true.")
    return marked
