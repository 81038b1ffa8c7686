"""The typefaces as they go into a file, and what the mathematics face says of its glyphs.

``fonts``, then ``maths_face``, then ``maths_metrics``.
"""
