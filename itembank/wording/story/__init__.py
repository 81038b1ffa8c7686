"""Stories held to their models: every number, condition and name that is printed.

``asked`` holds the question to the model, ``numbers`` the numbers; what both may need, and stories
without a model, stand here.
"""
