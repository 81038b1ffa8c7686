"""Constructions with ruler and compasses.

``construction`` is the data; what follows from it, how it is drawn, said and asked about are
beside it.
"""
