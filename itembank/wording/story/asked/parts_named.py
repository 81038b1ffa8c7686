"""The names that stand for the parts of a ratio, and which of them a question asks about."""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.notation.tree import Frac, Int, Node, Product, Ratio, Relation, Sum, Sym, walk
from itembank.text.late_pattern import late
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.prompt import SLOT, index_of, slotted

_NAME = r"[\w'-]+(?: [\w'-]+){0,2}?"
_NAMES = rf"(?P<a>{_NAME})(?:, (?P<b1>{_NAME}))?,? (?:and|to) (?P<b>{_NAME})"
_NAMED_IN_RATIO = tuple(
    late(pattern, re.I)
    for pattern in (
        rf"ratio of (?P<a>{_NAME}) to (?P<b>{_NAME})(?: to (?P<c>{_NAME}))? (?:is|are|was|in|at|on|=)\b",
        rf"\bbetween {_NAMES} in the ratio\b",
        rf"\b(?:made (?:up )?(?:from|of|with)|mixture of|mixes|blend of) {_NAMES},? in the ratio\b",
        rf"\b{_NAMES},? (?:share|shared|split|divide|are|is|were|in the ratio)\b[^.?!]*\bratio\b",
    )
)
_FOR_EVERY = late(
    rf"(?P<x>{SLOT}) (?P<a>{_NAME}) (?:for|to) (?:every|each) (?P<y>{SLOT}) (?P<b>[\w'-]+)", re.I
)
_ORDINALS = ("first", "second", "third", "fourth")


def other_part(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return how another part of a ratio is found than the one the question names, or ``""``.

    The parts of a ratio stand in the order of the names before it: *Ann and Ben share … in the
    ratio 2 : 3*, *the ratio of juniors to seniors is 2 : 3*.
    """
    said = slotted(runs)
    text = re.sub(SLOT, "…", said.text)
    names = names_in_ratio(text)
    if fault := _other_of_every(said.text, said.nodes, model, words):
        return fault
    letters = _letters_of_ratio(model.lines, runs)
    if not letters:
        return ""
    places = _named_places(words, names, len(letters))
    if len(names) == len(letters) and (
        fault := _other_amount(said.text, said.nodes, names, letters, model)
    ):
        return fault
    target = model.target
    if isinstance(target, Sum) and set(letters) <= set(walk(target)):
        single = re.search(
            r"\bdoes (?:the )?\w+ (?:get|gets|pay|receive|have|win|take)\b", words, re.I
        )
        if single and not any(op == "-" for op, _ in target.rest):
            return f"‘{single[0]}’ asks for one part, and the model finds them together."
    if not isinstance(target, Sym) or target not in letters:
        return ""
    found = letters.index(target)
    if re.search(r"\b(?:not|n't|other|others|neither|except)\b", words, re.I) and places == [found]:
        return f"The question asks for what is not {_called(names, found)}, and that is what the model finds."
    if len(places) > 1 and not re.search(r"\bthan\b|\bdifference\b", words, re.I):
        return "The question names several parts of the ratio, and the model finds one."
    if len(places) == 1 and places[0] != found:
        return (
            f"The question names {_called(names, places[0])}, whose part of the ratio is "
            f"{letters[places[0]].name}, but the model finds {target.name}."
        )
    return ""


def _called(names: Sequence[str], place: int) -> str:
    return names[place] if place < len(names) else f"the {_ORDINALS[place]}"


def _named_places(words: str, names: Sequence[str], count: int) -> list[int]:
    """Return the parts of a ratio that a question names, by name or as the first, the second."""
    if len(names) == count and (
        named := [i for i, name in enumerate(names) if mentions(_without(words, name, names), name)]
    ):
        return named
    return [i for i in range(min(count, 4)) if re.search(rf"\bthe {_ORDINALS[i]}\b", words, re.I)]


def _without(words: str, name: str, names: Sequence[str]) -> str:
    """Return words without a name that only goes on with another: in *red paint*, no paint.

    Of *red and blue paint* the names are red and paint, so that *red paint* means the first.
    """
    others = "|".join(re.escape(rival) for rival in names if rival != name)
    return re.sub(rf"\b({others}) {re.escape(name)}\b", r"\1", words, flags=re.I)


def _letters_of_ratio(lines: Sequence[Node], runs: Sequence[Run]) -> tuple[Sym, ...]:
    """Return the letters of the one ratio that the prompt prints, in its order."""
    printed = [run for run in runs if isinstance(run, Ratio)]
    for line in lines:
        match line:
            case Relation(Ratio(parts), (("=", Ratio() as other),)) if printed == [other]:
                if all(isinstance(part, Sym) for part in parts):
                    return tuple(part for part in parts if isinstance(part, Sym))
    return ()


def names_in_ratio(text: str) -> tuple[str, ...]:
    """Return the last word of each name of a ratio's parts, in order, or nothing.

    >>> names_in_ratio("In a club the ratio of juniors to seniors is … today.")
    ('juniors', 'seniors')
    >>> names_in_ratio("He splits … between starts, turns and lengths in the ratio ….")
    ('starts', 'turns', 'lengths')
    """
    for pattern in _NAMED_IN_RATIO:
        found = list(pattern.finditer(text))
        if len(found) == 1:
            named = found[0].groupdict()
            parts = (named.get("a"), named.get("b1"), named.get("b"), named.get("c"))
            return _told_apart([part.split() for part in parts if part])
    return ()


def _told_apart(names: list[list[str]]) -> tuple[str, ...]:
    """Return one word for each name, the last in which they differ: buses no, single-deck yes."""
    for place in range(-1, -4, -1):
        words = tuple(name[place] if len(name) >= -place else "" for name in names)
        if len({word.lower() for word in words}) == len(names) and all(words):
            return words
    return ()


def mentions(words: str, name: str) -> bool:
    """Whether words speak of what a name stands for, in the singular or the plural.

    >>> mentions("How many seniors are there?", "senior"), mentions("How many?", "senior")
    (True, False)
    """
    stem = re.escape(name.lower().removesuffix("s"))
    return re.search(rf"\b{stem}(?:s|'s|es)?\b", words.lower()) is not None


def _other_amount(
    text: str, nodes: Sequence[Node], names: Sequence[str], letters: Sequence[Sym], model: Modelled
) -> str:
    """Return which printed amount belongs to another part, or to a difference, in the model."""
    for name, letter in zip(names, letters, strict=True):
        stem = re.escape(name.lower().removesuffix("s"))
        pattern = rf"({SLOT}) (?P<more>more |fewer |less )?(?:\w+ )?{stem}(?:s|es)?\b"
        for match in re.finditer(pattern, text, re.I):
            amount = nodes[index_of(match[1])]
            sides = [
                side
                for line in model.lines
                if isinstance(line, Relation)
                for side in _facing(line, amount)
            ]
            if not sides:
                continue
            wanted = (
                any(_is_difference(side) for side in sides) if match["more"] else letter in sides
            )
            if not wanted:
                what = f"{match['more'].strip()} {name}" if match["more"] else name
                return f"The prompt gives an amount of {what}, which the model takes for something else."
    return ""


def _facing(line: Relation, amount: Node) -> list[Node]:
    sides = [line.first, *(side for _, side in line.rest)]
    return [side for side in sides if side != amount] if amount in sides else []


def _is_difference(side: Node) -> bool:
    return isinstance(side, Sum) and any(op == "-" for op, _ in side.rest)


def _other_of_every(text: str, nodes: Sequence[Node], model: Modelled, words: str) -> str:
    """Return how *{4} juniors for every {3} seniors* is taken the wrong way round, or ``""``."""
    match = _FOR_EVERY.search(text)
    target = model.target
    if not match or target is None or model.inverse:
        return ""
    names = (match["a"].split()[-1], match["b"])
    named = [place for place, name in enumerate(names) if mentions(words, name)]
    shares = [nodes[index_of(match["x"])], nodes[index_of(match["y"])]]
    if len(named) != 1:
        return ""
    for place, name in enumerate(names):
        amount = re.search(rf"({SLOT}) {re.escape(name)}", text[match.end() :], re.I)
        if amount and any(
            isinstance(part, Sum) and set(shares) <= {part.first, *(t for _, t in part.rest)}
            for part in model.parts()
        ):
            return f"The prompt gives an amount of {names[place]}, which the model takes for all."
    op, last = target.rest[-1] if isinstance(target, Product | Sum) else ("", target)
    if op == "÷":
        return ""  # 3000 ÷ 250 for one to every 250: it is shared out, and ends with no part
    if last == shares[1 - named[0]] and last not in shares[named[0] : named[0] + 1]:
        return f"The question asks for {names[named[0]]}, but the model ends with the part of {names[1 - named[0]]}."
    return ""


_RATIO_OF = late(r"\bratio of (?P<a>[^.?,]+?) to (?P<b>[^.?,]+?)(?: in\b|$|[.?,])", re.I)


def ratio_order_fault(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return how a ratio is found the other way round than the question names its parts, or ``""``.

    *There are {7} red pens and {5} black pens. What is the ratio of black pens to red pens?*
    """
    asked = _RATIO_OF.search(words)
    target = model.target
    if not asked or not isinstance(target, Ratio) or len(target.parts) != 2:
        return ""
    said = slotted(runs)
    spoken: list[set[str]] = []
    for part in target.parts:
        nouns = [
            set(match[2].lower().split())
            for match in re.finditer(rf"({SLOT}) ((?:[a-z-]+ ?){{1,2}})", said.text, re.I)
            if said.nodes[index_of(match[1])] == part
        ]
        if len(nouns) != 1:
            return ""
        spoken.append(nouns[0])
    first, second = (spoken[0] - spoken[1], spoken[1] - spoken[0])
    names = (asked["a"], asked["b"])
    turned = any(mentions(names[0], noun) for noun in second) and any(
        mentions(names[1], noun) for noun in first
    )
    straight = any(mentions(names[0], noun) for noun in first) or any(
        mentions(names[1], noun) for noun in second
    )
    if turned and not straight:
        return f"The question asks for the ratio of {names[0]} to {names[1]}, and the model has it the other way round."
    return ""


_PART_OF = late(
    r"\b(?:what|which) (?:fraction|percentage) of\b.*\b(?:is|are|was|were) (?P<what>[a-z]+)$", re.I
)


def part_named_fault(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return how another part of a whole is found than the one the question names, or ``""``.

    *{5} red, {4} blue and {3} green pencils. What percentage of the pencils are red?*
    """
    asked = _PART_OF.search(words)
    match model.target:
        case Frac(Int() as part, whole) | Product(Int() as part, (("÷", whole),)):
            pass
        case _:
            return ""
    if not asked or not any(isinstance(inner, Sum) for inner in walk(whole)):
        return ""
    said = slotted(runs)
    named = {
        match[2].lower(): said.nodes[index_of(match[1])]
        for match in re.finditer(rf"({SLOT}) ([a-z]+)", said.text, re.I)
    }
    own = named.get(asked["what"].lower())
    if own is None or own == part:
        return ""
    return f"The question asks for what is {asked['what']}, and the model takes another part."
