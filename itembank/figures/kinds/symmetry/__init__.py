"""Symmetry: what falls on itself, and the figures that are asked about for nothing else.

``symmetry_found`` and ``symmetry_asked`` come first: shapes on a grid use them too.
"""
