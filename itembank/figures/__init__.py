"""Pictures as data: each is a small immutable value with a drawing, its words and its facts."""
