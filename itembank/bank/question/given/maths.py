"""The mathematics of a hand-written item: every line of it read, all faults at once.

>>> from itembank.bank.model.fields import BankItem
>>> item = BankItem(id="garden-1", tier="core", prompt="Work out {3/4 + 1/6}.", key="11/12")
>>> read_maths(item).key
Frac(num=Int(n=11), den=Int(n=12))
"""

from __future__ import annotations

import re
from functools import lru_cache

from itembank.bank.model.fields import BankItem
from itembank.data_class import dataclass
from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.parse import ParseError, Reading, parse, reading
from itembank.proof.claim import finding
from itembank.text.characters import shown
from itembank.wording.tasks.answers.written_how import says_times
from itembank.wording.tasks.other_kinds.rows_of_cards import in_rows

Field = tuple[str | int, ...]
"""Where a line stands in its item: ``("key",)``, ``("working", 2, 1)``."""


@dataclass(frozen=True, slots=True)
class Maths:
    """An item's lines as trees; `wrong` and `working` run beside the item's own lists."""

    runs: tuple[Run, ...]
    key: t.Node
    model: tuple[t.Node, ...]
    find: t.Node | None
    options: tuple[tuple[str, t.Node], ...]
    wrong: tuple[t.Node, ...]
    working: tuple[t.Node | None, ...]


@dataclass(frozen=True, slots=True)
class FieldFault:
    """What is wrong in one field of an item."""

    field: Field
    message: str


class UnreadableMaths(t.NotationError):
    """One or more lines of an item cannot be read."""

    def __init__(self, faults: list[FieldFault]) -> None:
        self.faults = tuple(faults)
        super().__init__(" ".join(fault.message for fault in faults))


_THOUSANDS = re.compile(r"(?<![\d.,])\d{1,3}(?:[,  ]\d{3})+(?![\d,/]| ?/)")


@lru_cache(maxsize=1 << 16)
def _parsed(text: str, how: Reading) -> t.Node | ParseError:
    """Return a line's tree, or why it has none."""
    try:
        if grouped := _THOUSANDS.search(text):
            # 45,000 would be a list of 45 and 0: nobody means that.
            plain = re.sub(r"\D", "", grouped[0])
            raise ParseError(
                f"{grouped[0]} can be read in two ways: write {plain}, which prints with a gap "
                "where it is long, or put a space after the comma of a list.",
                grouped.start() + 1,
            )
        return parse(text, pence=how.pence, letters=how.letters, times=how.times)
    except ParseError as error:
        return error


def split_prompt(prompt: str) -> list[tuple[str, bool, int]]:
    """Return a prompt's pieces in order: the text, whether it is mathematics, and its column.

    Cards and numbered lines stand in rows
    (:func:`~itembank.wording.tasks.other_kinds.rows_of_cards.in_rows`).

    Raises:
        UnreadableMaths: a brace is not closed, not opened, or holds nothing.

    >>> split_prompt("Double {7}.")
    [('Double ', False, 1), ('7', True, 9), ('.', False, 11)]
    """
    pieces: list[tuple[str, bool, int]] = []
    faults: list[FieldFault] = []

    def fault(column: int, what: str) -> None:
        faults.append(FieldFault(("prompt",), f"‘prompt’, column {column} of it: {what}"))

    at = 0
    while at < len(prompt):
        start = prompt.find("{", at)
        words = prompt[at:] if start < 0 else prompt[at:start]
        if "}" in words:
            fault(at + words.index("}") + 1, "This } closes nothing: put { before the mathematics.")
        if words:
            pieces.append((words, False, at + 1))
        if start < 0:
            break
        end = prompt.find("}", start)
        if end < 0:
            fault(start + 1, "This { is not closed: put } after the mathematics.")
            break
        inside = prompt[start + 1 : end]
        if not inside.strip():
            fault(start + 1, "There is nothing between { and }: write the mathematics there.")
        elif "{" in inside:
            fault(start + 1, "This { is not closed before the next one: put } in between.")
        else:
            pieces.append((inside, True, start + 2))
        at = end + 1
    if faults:
        raise UnreadableMaths(faults)
    rows = in_rows([(text, maths) for text, maths, _ in pieces])
    return [(text, maths, column) for text, (_, maths, column) in zip(rows, pieces, strict=True)]


def read_maths(item: BankItem) -> Maths:
    """Return every line of an item as a tree, all of them read alike (:func:`reading`).

    Raises:
        UnreadableMaths: lines cannot be read; all of them are told.
    """
    faults: list[FieldFault] = []
    names = {*item.options, *_figure_names(item)}
    try:
        pieces = split_prompt(item.prompt)
    except UnreadableMaths as error:
        faults.extend(error.faults)
        pieces = []
    lines: list[tuple[Field, str, str]] = []
    for text, is_maths, _ in pieces:
        if is_maths:
            lines.append((("prompt",), text, "‘prompt’"))
    for index, text in enumerate(item.model):
        lines.append((("model",), text, f"line {index + 1} of ‘model’"))
    if item.find is not None:
        lines.append((("find",), item.find, "‘find’"))
    for name, text in item.options.items():
        lines.append((("options", name), text, f"the option ‘{name}’"))
    if item.key not in names:
        lines.append((("key",), item.key, "‘key’"))
    for index, slip in enumerate(item.misconceptions):
        if slip.wrong not in names:
            lines.append((("misconceptions", index, "wrong"), slip.wrong, "‘wrong’"))
    for index, (_, text) in enumerate(item.working):
        if text.strip():
            lines.append((("working", index, 1), text, f"line {index + 1} of ‘working’"))

    how = reading(text for _, text, _ in lines)
    if not how.times and says_times(item.prompt):
        how = how._replace(times=True)
    read = [_parsed(text, how) for _, text, _ in lines]
    trees: list[t.Node] = []
    for (field, text, name), node in zip(lines, read, strict=True):
        if isinstance(node, ParseError):
            faults.append(FieldFault(field, _unread(name, text, node)))
        else:
            trees.append(node)
    if faults:
        raise UnreadableMaths(faults)

    after = iter(trees)
    runs = tuple(next(after) if is_maths else text for text, is_maths, _ in pieces)
    model = tuple(next(after) for _ in item.model)
    find = next(after) if item.find is not None else None
    options = tuple((name, next(after)) for name in item.options)
    key = t.Label(item.key) if item.key in names else next(after)
    wrong = tuple(
        t.Label(slip.wrong) if slip.wrong in names else next(after) for slip in item.misconceptions
    )
    working = tuple(next(after) if text.strip() else None for _, text in item.working)
    return Maths(runs, key, model, find, options, wrong, working)


def _figure_names(item: BankItem) -> set[str]:
    """Return the names on an item's picture that answer a question: an arrow A, a bar Monday.

    A picture that is faulty has none: it is refused where it is read.
    """
    if item.figure is None or not item.key[:1].isalpha():
        return set()
    from itembank.figures.figure import kind_of, read
    from itembank.figures.figure_data import from_data

    try:
        figure = from_data(item.figure)
    except t.NotationError:
        return set()
    found = (read(figure, reading) for reading in kind_of(figure).readings(figure))
    return {node.text for node in found if isinstance(node, t.Label)}


def words_of(maths: Maths) -> str:
    """Return the whole prompt as text, its mathematics in line notation."""
    return "".join(run if isinstance(run, str) else finding.text(run) for run in maths.runs)


def same_worth(first: t.Node, other: t.Node) -> bool:
    """Tell whether two pieces of mathematics are worth the same, however they are written.

    What has no worth of its own, such as a label, is worth the same as nothing.

    >>> same_worth(t.frac(2, 4), parse("0.5")), same_worth(t.Int(2), t.Label("A"))
    (True, False)
    """
    try:
        return algebra(first) == algebra(other)
    except (t.NotationError, OverflowError):
        return False


def _unread(name: str, text: str, error: ParseError) -> str:
    if name == "‘prompt’" and not {*"∩∪′"}.isdisjoint(text):
        return (
            f"{name} has a set between braces, {shown(text, 60)}: write its letters and signs "
            "without braces."
        )
    where = f"column {error.position} of ‘{shown(text, 60)}’"
    return f"{name} cannot be read as mathematics at {where}: {error}"
