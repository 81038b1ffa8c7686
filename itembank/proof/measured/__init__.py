"""The second road to what a figure shows: its drawing is measured, and its data not looked at.

A file for each kind of figure. Importing one imports sympy.
"""
