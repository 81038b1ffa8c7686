"""Forgetting: a pupil, a class or old results, for good."""
