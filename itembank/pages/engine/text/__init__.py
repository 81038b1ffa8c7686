"""Running text with formulas and figures in it: cut, measured, broken into lines, drawn.

``breaks`` and ``flow`` come first, then ``text_block``; ``line_breaking`` and ``text_drawn`` stand
on these, ``paragraph`` on all.
"""
