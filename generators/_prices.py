"""Things that are bought and sold in the stories, with what they may plausibly cost.

Prices are common ones of British shops, without a source.
"""

from __future__ import annotations

from generators._turns import by_turns

_THINGS = (
    ("a pair of swimming goggles", 8, 24),
    ("a bicycle bell", 6, 18),
    ("a hand trowel", 6, 20),
    ("a lunch box", 6, 18),
    ("a watering can", 12, 40),
    ("a swim towel", 10, 32),
    ("a desk lamp", 15, 60),
    ("a bike helmet", 20, 75),
    ("a rucksack", 24, 90),
    ("a pair of trainers", 30, 120),
    ("a waterproof coat", 36, 150),
    ("a wheelbarrow", 45, 140),
    ("a water pump", 60, 240),
    ("a tent", 70, 320),
    ("a garden bench", 90, 320),
    ("a keyboard", 90, 360),
    ("a greenhouse heater", 100, 300),
    ("a lawn mower", 130, 480),
    ("a bicycle", 150, 900),
    ("a garden shed", 280, 1200),
    ("a second-hand motor scooter", 900, 2800),
)


def thing(pounds: int, turn: int) -> str:
    """Return something that may cost so many pounds, another for the next turn.

    >>> thing(7, 0), thing(7, 1)
    ('a bicycle bell', 'a hand trowel')
    """
    return by_turns([name for name, low, high in _THINGS if low <= pounds <= high], turn)


def the(name: str) -> str:
    """Return a thing that was named before.

    >>> the("a tent")
    'the tent'
    """
    return "the " + name.partition(" ")[2]


def capital(name: str) -> str:
    """Return the name of a thing at the start of a sentence.

    >>> capital("a tent")
    'A tent'
    """
    return name[:1].upper() + name[1:]
