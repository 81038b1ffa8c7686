"""A question as it is typed: by options, or in a conversation that looks at each answer.

``item_typed`` reads the parts; ``conversation`` asks for them, ``asked_for`` saves what comes of
it.
"""
