"""The second road to a key: sympy, from the printed tree by its symbolic face."""
