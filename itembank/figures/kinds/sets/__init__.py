"""Sets as circles: with counts in their regions, or with regions shaded.

``set_notation`` reads A ∩ B′; the kinds stand on it.
"""
