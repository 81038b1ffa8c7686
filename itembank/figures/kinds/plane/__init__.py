"""Flat figures by themselves: angles, polygons, triangles, circles.

``polygon`` is the data. Its shape, its facts, its drawing and its faults follow, each from those
before it; angles and two triangles borrow of these.
"""
