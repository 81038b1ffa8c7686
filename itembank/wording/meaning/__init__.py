"""Second readings: stories of well-known shapes, worked out from their words alone.

Each file reads one kind of story (a price after a rise, a scale, a sequence). Where it knows the
shape whole, it works out what the question asks without looking at the model; a model that comes
to something else is not proved. Where it does not know the shape, it says nothing.
``second_reading`` asks them all.
"""
