"""Graphs: points, straight lines, equations and graphs of real life."""
