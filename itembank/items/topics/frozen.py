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
import re
import sys
from base64 import urlsafe_b64encode
from collections.abc import Iterable, Iterator, Mapping, Sequence
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

from itembank.errors import CheckFailed, ItembankError
from itembank.figures.figure import Figure
from itembank.figures.figure_data import to_data
from itembank.files.together import write_whole
from itembank.items.item import Draft, Tier
from itembank.items.topics import listing
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
_LINE = re.compile(
    rf"(?P<name>[a-z0-9.-]+/(?:{'|'.join(Tier)}))/(?P<start>[0-9]+)"
    r" (?P<digest>[\w-]{22}) (?P<each>[\w-]+)",
    re.ASCII,
)
_HEAD = """\
# What the addresses of this strand ask, as fingerprints. Lines are added, never changed:
# python -m itembank.items.topics.frozen
"""


class Stretch(NamedTuple):
    """The fingerprint of some questions of a tier that follow one another."""

    start: int
    digest: str
    each: str
    """One character a question, from the 64 of base64url."""

    @property
    def stop(self) -> int:
        """Return the index after the last."""
        return self.start + len(self.each)


Frozen = Mapping[str, tuple[Stretch, ...]]
"""The stretches of each tier in order, by ``topic/tier``; none is missing before the last."""


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


def read(folder: Path) -> Frozen:
    """Return the fingerprints that the files of a folder hold; none where there is no folder.

    Raises
    ------
    ItembankError
        If a line is not one of a file that this module wrote, or lines are missing before it.
    """
    found: dict[str, tuple[Stretch, ...]] = {}
    for path in sorted(folder.glob("*.txt")):
        for number, text in enumerate(
            path.read_text("utf-8", errors="replace").splitlines(), start=1
        ):
            if text.startswith("#"):
                continue
            match = _LINE.fullmatch(text)
            name = match["name"] if match else ""
            before = found.get(name, ())
            if match is None or int(match["start"]) != (before[-1].stop if before else 0):
                raise ItembankError(
                    f"{path}, line {number}: this is not the next stretch of a tier. "
                    "Take the file as it was last committed."
                )
            found[name] = (*before, Stretch(int(match["start"]), match["digest"], match["each"]))
    return found


def write(folder: Path, frozen: Frozen) -> None:
    """Write the fingerprints, a file a strand, topics and tiers in order."""
    folder.mkdir(parents=True, exist_ok=True)
    order = {str(tier): place for place, tier in enumerate(Tier)}
    files: dict[str, list[str]] = {}
    for name in sorted(frozen, key=lambda name: (name.split("/")[0], order[name.split("/")[1]])):
        lines = files.setdefault(name.partition(".")[0], [])
        lines += [f"{name}/{held.start} {held.digest} {held.each}\n" for held in frozen[name]]
    for strand, lines in files.items():
        write_whole(folder / f"{strand}.txt", (_HEAD + "".join(lines)).encode("ascii"))


def own_topics(package: str = "generators") -> tuple[Topic, ...]:
    """Return the topics that a package defines; others may be installed beside them."""
    return tuple(topic for topic in topics() if type(topic).__module__.partition(".")[0] == package)


def freeze(folder: Path, package: str = "generators") -> str:
    """Freeze what has grown, and return a sentence that says how much it was.

    Raises
    ------
    CheckFailed
        If a question that is frozen has changed or is gone; nothing is written then.
    """
    before = read(folder)
    after = grown(own_topics(package), before)
    new = sum(
        held.stop - held.start
        for name, stretches in after.items()
        for held in stretches[len(before.get(name, ())) :]
    )
    if new:
        write(folder, after)
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
    asked = parser.parse_args(arguments)
    if asked.folder is None and not FOLDER.is_dir():
        raise ItembankError(
            f"There is no folder {FOLDER} here. Run this in the project's folder, or name a "
            "folder for the fingerprints."
        )
    print(freeze(asked.folder or FOLDER, asked.package))
    if asked.folder is None and LISTED.is_dir():
        listing.write(own_topics(), LISTED)


if __name__ == "__main__":
    try:
        main()
    except ItembankError as error:
        print(error, file=sys.stderr)
        sys.exit(1 if isinstance(error, CheckFailed) else 2)
