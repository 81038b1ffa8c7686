"""The first road to a key: exact arithmetic, without sympy.

``reckoning`` is the arithmetic. Here are the questions that are answered by it, and the forms of
keys; ``exact_road`` begins.
"""
