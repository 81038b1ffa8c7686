"""What every address asks, frozen as fingerprints: an address names its question for ever.

Packs, banks and results name generated questions by address, in files nobody can call back. A
changed range, filter, wording or key would quietly give those addresses other questions. So the
fingerprint of every question is kept in files beside the tests, and a test holds the generators
to them: what is frozen may not change, and what is new has to be frozen.

``python -m itembank.items.topics.frozen`` freezes what has grown. It changes no fingerprint
that is there, and refuses where a question has changed.

It writes the list of the topics too (:mod:`itembank.items.topics.listing`).

A file holds the topics of a strand, and each line a stretch of a tier: its first address, the
SHA-256 of its questions, and one character for each of them, which tells *which* has changed.
Prompt and key count, as text. Working and misconceptions do not: they may be bettered.
"""

from __future__ import annotations

import argparse
import json
import sys
from base64 import urlsafe_b64encode
from collections.abc import Collection, Iterable, Iterator, Sequence
from hashlib import sha256
from pathlib import Path

from itembank.errors import CheckFailed, ItembankError
from itembank.figures.figure import Figure
from itembank.figures.figure_data import to_data
from itembank.items.item import Draft, Tier
from itembank.items.topics import listing
from itembank.items.topics.frozen_files import Frozen, Stretch, read, write
from itembank.items.topics.registry import topics
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t
from itembank.notation.line import line

FOLDER = Path("tests/generators/frozen")
"""Where the fingerprints of this project's own generators are kept, from the project's folder."""
LISTED = Path("generators")
"""Where the list of this project's own topics is kept, from the project's folder."""
LONGEST = 200
"""So many questions a stretch has at most; one alone is told apart in 63 cases of 64."""


def question_text(draft: Draft) -> str:
    r"""Return what a pupil is asked and what is right, the mathematics between braces.

    >>> from itembank.items.topics.registry import find_topic
    >>> one_step = find_topic("equations.one-step")
    >>> question_text(one_step.make(Tier.SUPPORT, *one_step.spaces[Tier.SUPPORT][0]))
    'Solve {2 + w = 5}.\n{w = 3}'
    """
    asked = "".join(run if isinstance(run, str) else _maths(run) for run in draft.prompt)
    return "\n".join([asked, *map(_figure, _figures(draft)), _maths(draft.key)])


def _figures(draft: Draft) -> Iterator[Figure]:
    return (figure for figure in (draft.figure, draft.key_figure) if figure is not None)


def _figure(figure: Figure) -> str:
    return json.dumps(to_data(figure), sort_keys=True, ensure_ascii=False)


def _maths(node: t.Node) -> str:
    try:
        return f"{{{line(node)}}}"
    except t.NotationError:  # 3p is three times p here
        return f"{{{line(node, pence=False)}}}"


def stretch(topic: Topic, tier: Tier, start: int, stop: int) -> Stretch:
    """Return the fingerprint of the questions from index `start` to before `stop`."""
    space = topic.spaces[tier]
    digests = [
        sha256(question_text(topic.draft(tier, *space[index])).encode()).digest()
        for index in range(start, stop)
    ]
    each = "".join(urlsafe_b64encode(digest[:3]).decode()[0] for digest in digests)
    return Stretch(start, _short(sha256(b"".join(digests)).digest()), each)


def _short(digest: bytes) -> str:
    """Return half of a SHA-256, which is plenty against chance, as text."""
    return urlsafe_b64encode(digest[:16]).decode().rstrip("=")


def fault(topic: Topic, tier: Tier, frozen: tuple[Stretch, ...]) -> str:
    """Return the sentence on the first question of a tier that is not what it was, or ``""``.

    >>> from itembank.items.topics.registry import find_topic
    >>> one_step = find_topic("equations.one-step")
    >>> held = stretch(one_step, Tier.CORE, 0, 9)
    >>> fault(one_step, Tier.CORE, (held,))
    ''
    >>> print(fault(one_step, Tier.CORE, (held._replace(start=1),)))
    equations.one-step/core/1 asks something else than it was frozen with. It asks now: \
Solve {c/3 = 5}. Key: {c = 15}
    """
    if tier not in topic.spaces:
        return f"{topic.id}/{tier} is frozen, and there is no such tier any more."
    size = len(topic.spaces[tier])
    for held in frozen:
        now = stretch(topic, tier, held.start, min(held.stop, size))
        if now == held:
            continue
        pairs = zip(now.each, held.each, strict=False)
        first = next((n for n, (new, old) in enumerate(pairs, held.start) if new != old), None)
        if first is None and held.stop > size:
            return (
                f"{topic.id}/{tier}/{size} is frozen, and there is no such question any more: "
                f"the tier ends at {size - 1}."
            )
        if first is None:
            return (
                f"A question from {topic.id}/{tier}/{held.start} to {held.stop - 1} asks "
                "something else than it was frozen with."
            )
        asks = question_text(topic.draft(tier, *topic.spaces[tier][first])).partition("\n")
        return (
            f"{topic.id}/{tier}/{first} asks something else than it was frozen with. "
            f"It asks now: {asks[0]} Key: {asks[2]}"
        )
    return ""


def faults(found: Iterable[Topic], frozen: Frozen) -> list[str]:
    """Return a sentence on each tier whose addresses do not ask what they are frozen with."""
    by_id = {topic.id: topic for topic in found}
    sentences = []
    for name, held in frozen.items():
        topic_id, _, tier = name.partition("/")
        topic = by_id.get(topic_id)
        if topic is None:
            sentences.append(f"{topic_id} is frozen, and there is no such topic any more.")
        elif sentence := fault(topic, Tier(tier), held):
            sentences.append(sentence)
    return list(dict.fromkeys(sentences))


def unfrozen(found: Iterable[Topic], frozen: Frozen) -> Iterator[tuple[Topic, Tier, int]]:
    """Yield each tier that holds more than is frozen, with the first index that is not."""
    for topic in found:
        for tier, space in topic.spaces.items():
            held = frozen.get(f"{topic.id}/{tier}", ())
            start = held[-1].stop if held else 0
            if start < len(space):
                yield topic, tier, start


def grown(found: Iterable[Topic], frozen: Frozen) -> Frozen:
    """Return `frozen` with new stretches for all that it does not hold yet.

    Raises
    ------
    CheckFailed
        If a question that is frozen has changed or is gone; says which.
    """
    found = tuple(found)
    if sentences := faults(found, frozen):
        raise CheckFailed(
            " ".join(sentences) + " An address names its question for ever: change it back, "
            "and let the space grow by a part at its end (Space.then)."
        )
    result = dict(frozen)
    for topic, tier, start in unfrozen(found, frozen):
        size, name = len(topic.spaces[tier]), f"{topic.id}/{tier}"
        new = (
            stretch(topic, tier, at, min(at + LONGEST, size)) for at in range(start, size, LONGEST)
        )
        result[name] = (*result.get(name, ()), *new)
    return result


def own_topics(package: str = "generators") -> tuple[Topic, ...]:
    """Return the topics that a package defines; others may be installed beside them."""
    return tuple(topic for topic in topics() if type(topic).__module__.partition(".")[0] == package)


def freeze(folder: Path, package: str = "generators", only: Collection[str] = ()) -> str:
    """Freeze what has grown, and return a sentence that says how much it was.

    All questions are made again, to see that none has changed; with `only`, those of these topics.

    Raises
    ------
    ItembankError
        If there is no topic of a name in `only`.
    CheckFailed
        If a question that is frozen has changed or is gone; nothing is written then.
    """
    found, whole = own_topics(package), read(folder)
    if absent := sorted(set(only) - {topic.id for topic in found}):
        raise ItembankError(f"There is no topic {absent[0]} in {package}.")
    before = whole
    if only:
        found = tuple(topic for topic in found if topic.id in only)
        before = {name: held for name, held in whole.items() if name.partition("/")[0] in only}
    after = grown(found, before)
    new = sum(
        held.stop - held.start
        for name, stretches in after.items()
        for held in stretches[len(before.get(name, ())) :]
    )
    if new:
        write(folder, {**whole, **after})
    kept = sum(held[-1].stop for held in before.values())
    return f"{folder}: {new:,} questions newly frozen; {kept:,} were, and are what they were."


def main(arguments: Sequence[str] | None = None) -> None:
    """Freeze what has grown, as the words after the command ask."""
    parser = argparse.ArgumentParser(
        prog="python -m itembank.items.topics.frozen",
        description="Freezes which question each new address names, and changes none.",
    )
    parser.add_argument("folder", nargs="?", type=Path, help=f"{FOLDER} unless named")
    parser.add_argument("package", nargs="?", default="generators", help="whose topics")
    parser.add_argument("--topic", action="append", default=[], help="only this one's questions")
    asked = parser.parse_args(arguments)
    if asked.folder is None and not FOLDER.is_dir():
        raise ItembankError(
            f"There is no folder {FOLDER} here. Run this in the project's folder, or name a "
            "folder for the fingerprints."
        )
    if not asked.topic:
        print("Making every question again, which takes minutes; --topic names one.", flush=True)
    print(freeze(asked.folder or FOLDER, asked.package, asked.topic))
    if asked.folder is None and LISTED.is_dir():
        listing.write(own_topics(), LISTED)


if __name__ == "__main__":
    try:
        main()
    except ItembankError as error:
        print(error, file=sys.stderr)
        sys.exit(1 if isinstance(error, CheckFailed) else 2)
