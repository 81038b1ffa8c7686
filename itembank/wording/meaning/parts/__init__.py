"""Parts of things: fractions, percentages, shares, and what is left.

``parts_of`` comes first; ``states`` stands on it.
"""
