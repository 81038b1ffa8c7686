"""The wordings of kinds of question that ask for something else than to work out.

``kinds_said`` comes before the answers and statements that are judged, ``giving`` before
``given_property``.
"""
