"""Tables: timetables, and counts by one thing or by two.

``table_cells`` draws them all.
"""
