"""The page that marks a pupil's own answers: one file with a starter, its marker and its slip.

Nothing is imported here, so that reading a slip costs nothing of the rest.
"""
