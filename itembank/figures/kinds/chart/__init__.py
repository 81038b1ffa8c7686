"""Charts: bars, lines, pictograms, sectors and scatter graphs.

``chart_names``, ``chart_axis`` and ``chart_wordings`` are for all of them, and for tables of
counts; the kinds stand on these.
"""
