"""The kinds of numbers: what each counts or measures, carried from a story to its answer."""
