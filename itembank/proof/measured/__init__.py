"""The second road to what a figure shows: its drawing is measured, and its data not looked at.

A file for each kind of figure, at the same place as the kind's own in
:mod:`itembank.figures.kinds`. Importing one imports sympy.
"""
