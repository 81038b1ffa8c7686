"""What a story's question asks, held to its model.

``question_fits`` asks all the others; of these ``direction``, ``fractions_of_things``,
``parts_named`` and ``question_rules`` come first.
"""
