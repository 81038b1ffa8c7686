"""Which units change into one another, and by how many."""

from __future__ import annotations

# Smaller unit, larger unit, how many, and a number that is taken for it by mistake.
NEIGHBOURS = (
    ("mm", "cm", 10, 100),
    ("cm", "m", 100, 1000),
    ("m", "km", 1000, 100),
    ("g", "kg", 1000, 100),
    ("ml", "l", 1000, 100),
    ("kg", "t", 1000, 100),
    ("cl", "l", 100, 10),
    ("mg", "g", 1000, 100),
)


TIMES = (("s", "min", 60, 100), ("min", "h", 60, 100), ("h", "day", 24, 12), ("day", "week", 7, 5))


# Smallest, between, largest.
CHAINS = (
    ("mm", "cm", "m", 10, 100),
    ("cm", "m", "km", 100, 1000),
    ("g", "kg", "t", 1000, 1000),
    ("s", "min", "h", 60, 60),
    ("min", "h", "day", 60, 24),
)
