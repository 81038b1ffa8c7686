"""The verdict on a typed answer: right, right in another form, a known mistake, or wrong.

No text raises, and none costs much: text past the limits of :mod:`.typed` is refused before it
is looked at, and arithmetic is bounded before it begins (:mod:`.worth`).
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from itembank.items.item import Item, Misconception
from itembank.marking.form.missing_form import NOT_ROUNDED, asked_for, completed, form_of, unrounded
from itembank.marking.form.policy import Policy, policy
from itembank.marking.form.units_beside import counted_wrongly, in_another_unit, without_unit
from itembank.marking.telling.hints import hint
from itembank.marking.telling.nearly import wrong_unit
from itembank.marking.typing import typed_working as working
from itembank.marking.typing.filled import embedded, filled
from itembank.marking.typing.read_answer import LONGEST, Setting, Unreadable, read_answer, setting
from itembank.marking.typing.rivals import another_result, rival
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.marking.worth.same import same, unknowns
from itembank.marking.worth.typed_maths import alike, tidy
from itembank.notation import tree as t
from itembank.text.late_pattern import late


class Verdict(StrEnum):
    """What an answer is worth."""

    RIGHT = "right"
    WRONG_FORM = "right value, wrong form"
    KNOWN = "known wrong method"
    WRONG = "wrong"
    UNREADABLE = "unreadable"


@dataclass(frozen=True, slots=True)
class Marked:
    """A verdict, with the sentence that goes with it and the misconception it shows."""

    verdict: Verdict
    says: str = ""
    misconception: Misconception | None = None


TWO_ANSWERS = "More than one answer is given, and they differ: decide on one."
_NOTHING_TO_SOLVE = "The expression is right: leave out = 0, for there is no equation to solve."
_EQUALS_NOTHING = late(r"[^=]*[A-Za-z][^=]*(?P<end>= *0[ .]*)")
_PLAIN_NUMBERS = "That cannot be checked here: give whole numbers, fractions or decimals."
_PER_CENT = "The number is right: give the per cent sign as well."
_NO_VALUE = "That has no value that can be compared with the answer: type the answer alone."


def mark(item: Item, answer: str) -> Marked:
    """Return the verdict on a typed answer. Never raises, whatever was typed.

    Where working is shown with the answer, what it comes to is marked (:mod:`.working`).

    >>> from itembank.items.topics.registry import find_item
    >>> item = find_item("fractions.improper-mixed/core/0")
    >>> from itembank.notation.line import line
    >>> mark(item, line(item.key)).verdict
    <Verdict.RIGHT: 'right'>
    """
    if len(answer) > LONGEST:
        message = f"The answer is longer than {LONGEST} characters: type the answer alone."
        return Marked(Verdict.UNREADABLE, message)
    asked = setting(item)
    if marking_of(item.ask).equals_nothing and (found := _EQUALS_NOTHING.fullmatch(answer)):
        alone = mark(item, answer[: found.start("end")])
        if alone.verdict is Verdict.RIGHT:
            return Marked(Verdict.WRONG_FORM, _NOTHING_TO_SOLVE)
        if alone.verdict is Verdict.KNOWN:
            return alone
    whole, typed = _whole(item, answer, asked)
    if whole.verdict in (Verdict.RIGHT, Verdict.KNOWN) or not working.shows_working(answer):
        return whole
    if typed is not None and isinstance(item.key, t.Listing) and _gives_each(item, typed):
        return whole  # 6 × 8 = 48 gives two numbers, and is no working that leads to 48
    if typed is not None and (letter := embedded(item, typed)):
        return Marked(Verdict.WRONG_FORM, f"Right so far: now write what {letter} is.")
    try:
        return _working(item, answer, asked, typed) or whole
    except (t.NotationError, RecursionError, OverflowError):
        return whole


def _whole(item: Item, answer: str, asked: Setting) -> tuple[Marked, t.Node | None]:
    """Return the verdict on a text as one answer, and the tree it was read as."""
    try:
        typed = read_answer(", ".join(answer.split("\n")), asked)
    except Unreadable as error:
        return Marked(Verdict.UNREADABLE, str(error)), None
    return _safely(item, typed, answer), typed


def _safely(item: Item, typed: t.Node, answer: str) -> Marked:
    try:
        marked = _verdict(item, typed)
    except (t.NotationError, RecursionError, OverflowError):
        # An answer that arithmetic cannot follow is not worth what any key is worth.
        return Marked(Verdict.WRONG, _NO_VALUE)
    if marked.verdict is Verdict.RIGHT and (fault := counted_wrongly(item, answer)):
        return Marked(Verdict.WRONG_FORM, fault)
    return marked


def _verdict(item: Item, typed: t.Node) -> Marked:
    how = policy(item)
    given, unit_fault = without_unit(item, tidy(typed))
    kind = marking_of(item.ask)
    if kind.unmet is not None:
        return _one_of_many(item, how, typed, given)
    if kind.repeated and isinstance(given, t.Listing):
        given = _once(given, item.key)
    right = same(given, item.key, how.within, how.ordered) and not _other_letter(item, given)
    if right and unit_fault:
        return Marked(Verdict.WRONG, unit_fault)
    if right:
        fault = form_of(item, how, typed, given)
        if not fault:
            return Marked(Verdict.RIGHT)
        return _known(item, given, exactly=True) or Marked(
            Verdict.WRONG_FORM, asked_for(item, how, fault)
        )
    if unit := in_another_unit(item, tidy(typed)):
        return Marked(Verdict.WRONG_FORM, f"Right value: give it in {unit}.")
    known = None if unit_fault else _known(item, given, exactly=False)
    if known:
        return known
    if not unit_fault and not wrong_unit(given, item.key) and unrounded(how, given, item.key):
        return Marked(Verdict.WRONG_FORM, asked_for(item, how, NOT_ROUNDED))
    if isinstance(item.key, t.Percent) and isinstance(given, t.Int | t.Dec | t.Mixed):
        if same(given, item.key.of):
            return Marked(Verdict.WRONG_FORM, _PER_CENT)
        given = t.Percent(given)  # a per cent sign is left out more often than not
        if known := _known(item, given, exactly=False):
            return known
    if (box := filled(item, given)) is not None and same(box, item.key):
        return Marked(Verdict.WRONG_FORM, "Right so far: give only what goes in the box.")
    if isinstance(item.key, t.Product | t.Power) and isinstance(given, t.Listing):
        made = _made(given, item.key)
    else:
        made = False
    if made:
        return Marked(
            Verdict.WRONG_FORM, "Right value: now write the numbers as a product, with × between."
        )
    return Marked(Verdict.WRONG, hint(item, given))


def _gives_each(item: Item, typed: t.Node) -> bool:
    """Tell whether an answer to a question with many right ones gives each of its numbers."""
    numbers = marking_of(item.ask).numbers
    return numbers is not None and len(numbers(item.ask, typed)) == len(t.children(item.key))


def _one_of_many(item: Item, how: Policy, typed: t.Node, given: t.Node) -> Marked:
    """Return the verdict where many answers are right: whether it meets what is asked, and why not.

    The sentence says which condition is not met; the key is only an example, and is not told.
    """
    kind = marking_of(item.ask)
    assert kind.unmet is not None
    assert kind.numbers is not None
    try:
        fault = kind.unmet(item.ask, given)
    except t.NotationError:
        return Marked(Verdict.UNREADABLE, _PLAIN_NUMBERS)
    numbers = kind.numbers(item.ask, given)
    if len(numbers) == (len(item.key.parts) if isinstance(item.key, t.Listing) else 1):
        typed = given = t.Listing(numbers) if len(numbers) > 1 else numbers[0]
    if fault:
        known = _known(item, given, exactly=False, ordered=False)
        return known or Marked(Verdict.WRONG, f"{fault[:1].upper()}{fault[1:]}.")
    if missing := form_of(item, how, typed, given):
        return Marked(Verdict.WRONG_FORM, asked_for(item, how, missing))
    return Marked(Verdict.RIGHT)


def _made(given: t.Listing, key: t.Node) -> bool:
    """Tell whether the numbers of a list multiply to the key: 2, 2, 5 for 2² × 5."""
    first, *rest = given.parts
    return same(t.Product(first, tuple(("×", part) for part in rest)), key)


def _once(given: t.Listing, key: t.Node) -> t.Node:
    """Return a repeated root, 3 and 3, as the one solution that it is."""
    if isinstance(key, t.Relation) and all(same(part, key) for part in given.parts):
        return given.parts[0]
    return given


def _other_letter(item: Item, given: t.Node) -> bool:
    """Tell whether an answer names another letter of the question than the one asked for."""
    match marking_of(item.ask).target(item.ask), given:
        case t.Sym(asked), t.Relation(t.Sym(name), (("=", _),)):
            return name != asked and any(
                name in t.symbols(run) for run in item.prompt if not isinstance(run, str)
            )
    return False


def _known(item: Item, given: t.Node, exactly: bool, ordered: bool = True) -> Marked | None:
    """Return the misconception an answer shows: by its value, or `exactly` as it is written.

    A mistake of form alone, such as cancelling too little, is worth the same as the key; only
    what is written tells it from other forms.
    """
    for slip in item.slips:
        wrong = tidy(slip.wrong)
        if (
            alike(completed(given, wrong), wrong)
            if exactly
            else same(given, wrong, ordered=ordered)
        ):
            return Marked(Verdict.KNOWN, slip.misconception.ask, slip.misconception)
    return None


def _working(item: Item, answer: str, asked: Setting, typed: t.Node | None) -> Marked | None:
    """Return the verdict on an answer with its working, or None where none is shown."""
    if isinstance(item.key, t.Label):
        return None
    lines = working.lines_of(answer)
    if not lines:
        return None
    if len(lines) == 1 and typed is not None and _plain(item, typed):
        return None
    read: list[t.Node | None] = []
    for text in lines:
        try:
            read.append(read_answer(text, asked))
        except Unreadable as error:
            if not working.says_what_was_done(text):
                return Marked(Verdict.UNREADABLE, str(error)) if typed is None else None
            read.append(None)
    if isinstance(item.key, t.Relation) and isinstance(item.key.first, t.Sym):
        letter = item.key.first
        ends = [working.comes_to(node) for node in read if node is not None]
        if any(isinstance(end, t.Relation) and end.first == letter for end in ends):
            _drop_checks(item, read)
    if not read or read[-1] is None:
        return None
    shown = [node for node in read if node is not None]
    most = len(item.key.parts) if isinstance(item.key, t.Either | t.Listing) else 1
    solved, others = _solved(item, shown)
    if solved is not None:
        marked = _safely(item, solved, answer)
        if marked.verdict is Verdict.RIGHT:
            return _with_working(item, others, [solved], marked)
    best: tuple[Marked, int] | None = None
    for count in range(min(most, len(shown)), 0, -1):
        for given in _answers(item, shown[-count:]):
            marked = _safely(item, given, answer)
            if marked.verdict is Verdict.RIGHT:
                return _with_working(item, shown[:-count], shown[-count:], marked)
            if best is None or (
                best[0].verdict is Verdict.WRONG and marked.verdict is not Verdict.WRONG
            ):
                best = marked, count
    if best is None:
        return None
    return _with_working(item, shown[: -best[1]], shown[-best[1] :], best[0])


def _solved(item: Item, shown: list[t.Node]) -> tuple[t.Node | None, list[t.Node]]:
    """Return the values found for the letters of simultaneous equations, line by line.

    With them come the other lines. Where a letter has two values the first stays with these.
    """
    names = unknowns(item.key)
    found: dict[str, t.Node] = {}
    others: list[t.Node] = []
    for node in shown:
        given = working.comes_to(node)
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
        if not all(link.holds for link in working.links(item, last)):
            return
        read.pop()


def _answers(item: Item, lines: list[t.Node]) -> list[t.Node]:
    """Return what the last lines may come to, the likeliest first."""
    if len(lines) > 1:
        ends = [next(iter(working.results(item, node)), None) for node in lines]
        return [] if None in ends else [t.Listing(tuple(end for end in ends if end is not None))]
    (only,) = lines
    if isinstance(only, t.Listing | t.Either):
        return [type(only)(tuple(working.comes_to(part) for part in only.parts))]
    found = list(working.results(item, only))
    box = filled(item, only)
    return found if box is None else [*found, box]


def _with_working(item: Item, before: list[t.Node], last: list[t.Node], marked: Marked) -> Marked:
    """Return a verdict with what must be said of the lines that lead to the answer."""
    every = [link for node in (*before, *last) for link in working.links(item, node)]
    if marking_of(item.ask).rounded(item.ask) is not None and every:
        every = every[:-1]  # 2.499 = 2.50 says that it was rounded
    false = next((line for line in every if line.holds is False and not line.answers), None)
    ends = _answers(item, last)
    asked = getattr(item.ask, "target", None)
    if ends and any(
        rival(node, ends[0]) or another_result(item, tidy(node)) for node in before if node != asked
    ):
        return Marked(Verdict.WRONG, TWO_ANSWERS)
    if marked.verdict is Verdict.RIGHT and false is not None:
        if false.flat:
            message = f"{false.text} is not true: the two sides are not worth the same."
            return Marked(Verdict.WRONG, message)
        return Marked(Verdict.RIGHT, f"The answer is right; {false.text} on the way is not true.")
    if marked.verdict is Verdict.WRONG and false is not None:
        return Marked(Verdict.WRONG, f"Look again at {false.text}: it is not true.")
    return marked
