"""The first road to a key: exact arithmetic, without sympy."""
