"""Parts that several documents share: on slides, on sheets, and for the teacher alone.

All of these stand on ``questions``.
"""
