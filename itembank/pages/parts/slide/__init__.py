"""The questions of a starter on slides: ways to set them, and where they stand.

``slide_ways`` comes first, then ``strips``, ``least_heights`` and ``slide_places``, then
``slide_board``; ``board`` is what both slides draw.
"""
