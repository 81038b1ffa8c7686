r"""The MathML face: presentation MathML as W3C MathML Core has it, set as a printer would.

Printer's rules held by the nodes, and where they come from:

* a minus is U+2212, and a prefix minus says ``form="prefix"`` so that it closes up;
* ×, ÷ and the ratio colon get their spaces said outright, because typesetters differ in
  their operator dictionaries (some set × tight);
* thin spaces part thousands from five digits up, and a number from its unit
  (BIPM, *The International System of Units*, 9th ed., 2019, 5.4.3 and 5.4.4; from memory);
* ``%``, ``°`` and ``p`` close up after the number, ``£`` before it (common British practice);
* letters are italic, units and names upright;
* a recurring block has a dot over its first and last digit. The dots are accents, since
  a combining dot inside ``<mn>`` may be set beside the digit rather than over it.

Factors side by side are parted by U+2062 and the parts of a mixed number by U+2064, which
are invisible and tell a screen reader how to speak; they leave no glyph and no gap.

>>> from itembank.notation.tree import Int, Neg, Sym, frac, juxt, equals
>>> body(equals(juxt(Int(3), Sym("x")), Neg(Int(6))))
'<mn>3</mn><mo>\u2062</mo><mi>x</mi><mo>=</mo><mo form="prefix">−</mo><mn>6</mn>'
"""

from __future__ import annotations

from itembank.notation.tree import Node
from itembank.notation.tree.marked_up import body as body

_OPEN = '<math xmlns="http://www.w3.org/1998/Math/MathML" displaystyle="true">'


def mathml(node: Node) -> str:
    r"""Return `node` as a ``<math>`` element, without line breaks.

    The tree is drawn as it stands: brackets are printed where there is a ``Bracket`` and
    nowhere else. Whether a tree is well formed is for :func:`itembank.notation.line.line`.

    Raises:
        NotationError: something in the tree is not a node, or a sign or unit is unknown.

    >>> from itembank.notation.tree import Int
    >>> mathml(Int(12345))[-28:]
    'true"><mn>12\u2009345</mn></math>'
    """
    return f"{_OPEN}{body(node)}</math>"
