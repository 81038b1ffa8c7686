"""A tree diagram: outcomes of one event after another, with probabilities on the branches."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.figures.figure import (
    Figure,
    FigureKind,
    Reading,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.chance.taken_from import taken_otherwise
from itembank.figures.kinds.chance.tree_asked import TREE_WORDINGS
from itembank.figures.kinds.chance.tree_drawn import tree_drawing
from itembank.figures.label_room import room
from itembank.figures.written_as import written_as
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.value import exact
from itembank.notation.words import words as said

MOST_BRANCHES = 3
LONGEST = 10


@dataclass(frozen=True, slots=True)
class Branch:
    """A branch: its outcome, and its probability, `None` where it is left to be found.

    `then` are the branches that follow it.
    """

    outcome: str
    chance: t.Node | None = None
    then: tuple[Twig, ...] = ()


@dataclass(frozen=True, slots=True)
class Twig:
    """A branch of the second event, after which nothing follows."""

    outcome: str
    chance: t.Node | None = None


@dataclass(frozen=True, slots=True)
class TreeDiagram(Figure):
    """Branches from one place, each followed by others or by none.

    Of each set of branches the probabilities come to 1; one of a set may be left out.

    >>> half = t.frac(1, 2)
    >>> twigs = (Twig("red", t.frac(1, 3)), Twig("blue"))
    >>> figure = TreeDiagram((Branch("red", half, twigs), Branch("blue", half, twigs)))
    >>> shown_line(_read(figure, Reading("probability", ("red", "blue"))))
    '1/3'
    """

    branches: tuple[Branch, ...]

    @property
    def sets(self) -> list[tuple[str, tuple[Branch | Twig, ...]]]:
        """Each set of branches with what it comes after, ``""`` for the first."""
        after = [(branch.outcome, branch.then) for branch in self.branches if branch.then]
        return [("", self.branches), *after]


def _fault(figure: TreeDiagram) -> str:
    for after, branches in figure.sets:
        where = f"the branches after {after}" if after else "the first branches"
        if not 2 <= len(branches) <= MOST_BRANCHES:
            return f"{where} are {len(branches)}: there may be 2 to {MOST_BRANCHES}"
        names = [twig.outcome for twig in branches]
        if any(not re.fullmatch(r"[A-Za-z0-9][A-Za-z0-9 ]*", name) for name in names):
            return "an outcome is a word or a number"
        if any(len(name) > LONGEST for name in names):
            return f"the name of an outcome has at most {LONGEST} letters"
        if len({name.casefold() for name in names}) < len(names):
            return f"{where} have two with one name"
        given = [twig.chance for twig in branches if twig.chance is not None]
        try:
            values = [exact(chance) for chance in given]
        except t.NotationError:
            return "probabilities are to be numbers"
        if any(not isinstance(chance, t.Int | t.Dec | t.Frac) for chance in given):
            return "probabilities are fractions or decimals"
        if any(room(chance).width > Fraction(5, 2) for chance in given):
            return "a probability is too long for its branch"
        total = sum(values, Fraction(0))
        if any(not 0 <= value <= 1 for value in values):
            return "probabilities stand between 0 and 1"
        if len(given) < len(branches) - 1:
            return f"{where} leave out more than one probability"
        if len(given) == len(branches) and total != 1:
            return f"{where} come to {_plain(total)}, not to 1"
        if len(given) < len(branches) and total >= 1:
            return f"{where} leave nothing for the probability that is left out"
    if {bool(branch.then) for branch in figure.branches} == {True, False}:
        return "some branches are followed by others and some are not"
    return ""


def _plain(value: Fraction) -> str:
    whole = value.denominator == 1
    return shown_line(t.num(int(value)) if whole else t.frac(value.numerator, value.denominator))


def _words(figure: TreeDiagram) -> str:
    deep = bool(figure.branches[0].then)
    out = ["A tree diagram shows two events, one after the other." if deep else ""]
    for after, branches in figure.sets:
        first = "First" if deep else "A tree diagram shows one event"
        told = [
            f"{twig.outcome} has a branch with no probability"
            if twig.chance is None
            else f"{twig.outcome} has the probability {said(twig.chance)}"
            for twig in branches
        ]
        out.append(f"{f'After {after}' if after else first}: {'; '.join(told)}.")
    return " ".join(part for part in out if part)


def _chance(branches: tuple[Branch | Twig, ...], outcome: str) -> Fraction | None:
    """Return the probability of an outcome among a set of branches."""
    known = {
        twig.outcome.casefold(): None if twig.chance is None else exact(twig.chance)
        for twig in branches
    }
    if outcome.casefold() not in known:
        return None
    value = known[outcome.casefold()]
    if value is None:
        return 1 - sum((value for value in known.values() if value is not None), Fraction(0))
    return value


def _read(figure: TreeDiagram, reading: Reading) -> t.Node:
    value: Fraction | None = None
    match reading:
        case Reading("missing", ()):
            lacking = [
                (branches, twig.outcome)
                for _, branches in figure.sets
                for twig in branches
                if twig.chance is None
            ]
            # Which is meant is not said, so that there may be one alone.
            found = {_chance(*place) for place in lacking}
            value = found.pop() if len(lacking) == 1 else None
        case Reading("probability", (first, *rest)) if len(rest) < 2:
            value = _chance(figure.branches, first)
            for second in rest:
                branch = _after(figure, first)
                then = _chance(branch, second) if branch else None
                value = None if value is None or then is None else value * then
    if value is None:
        raise not_shown(reading)
    return written_as(value, *_printed(figure))


def _after(figure: TreeDiagram, outcome: str) -> tuple[Twig, ...]:
    return next(
        (
            branch.then
            for branch in figure.branches
            if branch.outcome.casefold() == outcome.casefold()
        ),
        (),
    )


def _denies(figure: TreeDiagram, sentence: str) -> bool:
    after = [
        {twig.outcome: _chance(branch.then, twig.outcome) for twig in branch.then}
        for branch in figure.branches
        if branch.then
    ]
    same = [
        (_chance(figure.branches, branch.outcome), _chance(branch.then, branch.outcome))
        for branch in figure.branches
    ]
    return taken_otherwise(sentence, same, any(chances != after[0] for chances in after))


def _readings(figure: TreeDiagram) -> tuple[Reading, ...]:
    out = [Reading("probability", (branch.outcome,)) for branch in figure.branches]
    for branch in figure.branches:
        out += [Reading("probability", (branch.outcome, twig.outcome)) for twig in branch.then]
    lacking = [twig for _, branches in figure.sets for twig in branches if twig.chance is None]
    return (*out, *((Reading("missing"),) if len(lacking) == 1 else ()))


def _printed(figure: TreeDiagram) -> tuple[t.Node, ...]:
    return tuple(
        twig.chance for _, branches in figure.sets for twig in branches if twig.chance is not None
    )


TREE_DIAGRAM = register_figure(
    FigureKind(
        "tree diagram",
        TreeDiagram,
        fault=_fault,
        drawing=tree_drawing,
        words=_words,
        printed=_printed,
        readings=_readings,
        read=_read,
        denies=_denies,
        wordings=TREE_WORDINGS,
    )
)
