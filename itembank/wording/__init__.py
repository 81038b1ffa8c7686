"""Reads what the words of a prompt ask: the one reader for proof, marking and conversation.

A prompt is read whole, by a grammar of wordings. What was read says the task, the mathematics it
is about, and what the answer is to look like; what could not be read is named, so that a person
decides. A story with a model is not read word by word: :mod:`.story` holds its model to every
number, unit and word that changes the question.
"""
