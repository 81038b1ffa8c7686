"""The command line: thin commands over the parts above.

A command looks for garbage seldom, and from its first import on. Most of what it makes lives until
it ends: looking as often as Python does by default found none, and took a tenth of a pack's time.
"""

import gc

MOST_NEW = 700_000
"""So many things are made, and kept, before Python looks for garbage among them.

What a whole pack makes, and sympy as it loads, stays below this.
"""

gc.set_threshold(MOST_NEW)
