"""The nodes of the tree, one family a file: each class with all of its faces.

:mod:`.face` says what a node's faces are and holds the table of all nodes. What a tree may hold,
and the short builders, are in :mod:`itembank.notation.tree`, which is what others import.
"""
