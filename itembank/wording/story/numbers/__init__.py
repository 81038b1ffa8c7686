"""The numbers of a story, held to its model: what is printed or said and not used, and units.

``story`` is what they all look at; ``story_numbers`` asks the others.
"""
