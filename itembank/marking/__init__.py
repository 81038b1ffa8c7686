"""Reads a typed answer and gives a verdict; marks whole answer sheets.

Nothing is imported here, so that a sheet of ones and noughts is read without the mathematics.
"""
