"""Speeds and other rates, scales, times of day, lengths and areas of shapes.

``journeys`` comes before ``rates``; the others know nothing of one another.
"""
