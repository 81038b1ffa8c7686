"""Numbers as pictures: lines, bars, shapes in equal parts, balances, machines, patterns.

A kind each, which know nothing of one another; some have a file beside them that draws or reads.
"""
