"""Tasks as the questions they make of the mathematics that is given.

``task_named`` finds the task that a kind of question names; the other files hold tasks.
"""
