"""Which bank and which questions are meant, and how these look on a terminal.

``bank_screen`` comes before ``question_text``.
"""
