"""The desk: a local web page over all that a person can do, built on :mod:`itembank.work`.

A page is one module in :mod:`itembank.desk.pages` and one template of the same name. Pages are
made on the server; every action is a form that works without script.
"""
