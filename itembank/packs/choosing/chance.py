"""All chance in the choice of questions: seeded with text, so that it is the same on every machine.

Every choice is made by a :class:`random.Random` seeded with text, which Python turns into
the same state on every machine and in every run; ``hash`` and the global generator are not
used.
"""

from __future__ import annotations

import random
from collections.abc import Iterator


def generator(seed: int, purpose: str) -> random.Random:
    """Return the source of all chance for one purpose of the pack with this seed.

    One source for each purpose, so that asking for longer sheets leaves the starter as it is.

    >>> generator(7, "starter").randrange(1000) == generator(7, "starter").randrange(1000)
    True
    """
    return random.Random(f"{seed}/{purpose}")


def shuffled(count: int, rng: random.Random) -> Iterator[int]:
    """Yield 0 … count − 1 in random order, without listing them all when few are wanted.

    >>> sorted(shuffled(5, random.Random(1)))
    [0, 1, 2, 3, 4]
    """
    # So short a list is drawn as soon as it is made.
    if count <= 64:
        yield from rng.sample(range(count), count)
        return
    seen: set[int] = set()
    # Beyond a half most draws would fall on what was drawn already.
    while len(seen) < count // 2:
        index = rng.randrange(count)
        if index not in seen:
            seen.add(index)
            yield index
    rest = [index for index in range(count) if index not in seen]
    yield from rng.sample(rest, len(rest))
