"""The line face: one line of text a pupil would type, which reads back to the same tree.

Round brackets in a line are either printed brackets (:class:`~.tree.Bracket`) or they only
group what a fraction bar, a raised exponent or a root sign groups on paper. They group

* the top or bottom of a fraction that is more than one number, letter or box:
  ``(x + 1)/3``, ``9/(2y)``; a printed bracket there shows as a second pair;
* an exponent, and what stands under a root, in the same way: ``x^(n + 1)``, ``√(x + 1)``;
* a fraction or mixed number that leads a product of letters: ``(3/4)x``.

A tree is **well formed** when paper shows it unambiguously. Each kind of node has a rank
(:class:`~.tree.face.Rank`), and stands without brackets only where its rank may; its own file
under :mod:`.tree` says what it asks of its parts. In short:

* alternatives (*or*) hold lists, relations and expressions; a list holds relations, ratios,
  expressions and names; a relation holds ratios, expressions and names; a ratio holds
  expressions. A name stands nowhere else;
* an expression is a sum of products of signed terms. A ``Sum`` inside a sum or product, a
  ``Product`` inside a product, and either under a ``Neg`` need a ``Bracket``;
* a minus stands outside a fraction, power, product of letters, percentage, sum of money or
  quantity: ``-x^2``, ``-3x``, ``-£4``;
* a unit's letters are not taken for unknowns, nor the other way about: number, space, unit
  is a quantity (``5 m``), a number and one letter close up is a product (``5m``), a number
  and a unit of several letters close up is a quantity (``5kg``), and a number and p close
  up is pence.
"""

from itembank.notation.tree.written import line as line
from itembank.notation.tree.written import shown_line as shown_line
