"""The kinds of figure, one file a kind; :mod:`itembank.figures.figure` says what a kind is.

A kind stands in the table when its file is imported: name a new one here.
"""

from itembank.figures.kinds import bar_model as bar_model
from itembank.figures.kinds import number_line as number_line
from itembank.figures.kinds import shaded_shape as shaded_shape
