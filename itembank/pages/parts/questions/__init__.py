"""Questions and answers as pages show them, whatever the page.

``instructions`` comes before ``question_cell``.
"""
