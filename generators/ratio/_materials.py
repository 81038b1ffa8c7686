"""Materials and their densities, in grams in 100 cubic centimetres."""

from __future__ import annotations

# Grams in 100 cubic centimetres: common tables of materials, from memory and rounded.
SOLIDS = (
    ("cork", 24),
    ("pine", 50),
    ("oak", 70),
    ("wax", 95),
    ("brick", 180),
    ("concrete", 240),
    ("glass", 250),
    ("aluminium", 270),
    ("slate", 280),
    ("iron", 780),
    ("copper", 890),
    ("silver", 1050),
    ("lead", 1130),
)


MIXED = ((130, 100), (140, 100), (104, 100), (105, 100), (140, 104), (130, 105), (125, 100))


CM3 = "g/cm^3"
