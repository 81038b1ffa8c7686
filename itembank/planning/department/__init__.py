"""A department's folder: its classes, their lessons and the plan of a lesson."""
