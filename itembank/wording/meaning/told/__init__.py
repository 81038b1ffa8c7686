"""What a story tells: its words and numbers, and how its sentences relate amounts.

``tale`` and ``relation_wordings`` come first; ``relations_told`` stands on both.
"""
