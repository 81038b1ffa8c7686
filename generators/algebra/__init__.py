"""Expressions in letters: collected, expanded, factorised, rearranged and formed."""
