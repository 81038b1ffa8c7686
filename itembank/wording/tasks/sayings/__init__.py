"""Sums in words: what may be asked of numbers, lists, points, shapes, times and chances.

``arithmetic`` comes first, then ``nested`` and ``whole_numbers``; each file reads its own subject.
"""
