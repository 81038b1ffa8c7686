"""How flat figures are measured.

``measured_equations`` says what labels settle, ``polygon_outline`` what an outline shows; the
kinds stand on both.
"""
