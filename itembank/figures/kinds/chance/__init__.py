"""Chance: tree diagrams, sample spaces and tables of probabilities.

A kind each; ``taken_from`` is what a sentence beside a tree says.
"""
