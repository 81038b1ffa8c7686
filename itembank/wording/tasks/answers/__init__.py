"""What words say of the answer: its order, its rounding, its form, its unit.

``answer_phrases`` comes before ``phrases_after``.
"""
