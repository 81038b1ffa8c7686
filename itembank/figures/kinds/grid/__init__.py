"""The coordinate grid: points, lines, shapes, moves and journeys on it.

``coordinate_grid`` is the data and the kind. ``grid_places`` makes exact places of it and
``grid_equations`` reads lines; readings stand on these, and ``grid_sheet`` with what is drawn
beside them. Each ``_wordings`` says how its readings are asked for.
"""
