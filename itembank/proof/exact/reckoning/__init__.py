"""Exact numbers, and what is solved with them: the arithmetic of the first road.

``surd`` and ``elimination`` come first, then ``univariate``; ``ranges``, ``equations`` and
``tree_of`` stand on it, ``truth`` on ranges.
"""
