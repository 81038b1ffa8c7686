"""The words face: what a teacher would say aloud, for alternative text.

Digits stay digits, as screen readers say them. Whatever brackets, bars and raised exponents
show the eye is said, so that no two readings fit: a fraction of more than single numbers
and letters is "the fraction … over …, end of fraction", and one of letters says where it ends
if anything follows. The phrasing is common classroom practice, no source.

>>> from itembank.notation.tree import Int, Sym, add, equals, frac, juxt
>>> words(equals(add(juxt(Int(3), Sym("x")), frac(3, 4)), Int(7)))
'3 x plus 3 quarters equals 7'
"""

from itembank.notation.tree.spoken import words as words
