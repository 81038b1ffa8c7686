"""How pages are drawn: type, lines, tags and paper, whatever a page says.

A file is made by ``pdf``, its typefaces by ``faces``, formulas by ``maths``; ``page`` marks it, and
``text`` is set on that. What stands here fills paper with all of these.
"""
