"""The kinds of figure, one file a kind; :mod:`itembank.figures.figure` says what a kind is.

A kind stands in the table when its file is imported: name a new one here.
"""

from itembank.figures.kinds import angles as angles
from itembank.figures.kinds import balance as balance
from itembank.figures.kinds import bar_chart as bar_chart
from itembank.figures.kinds import bar_model as bar_model
from itembank.figures.kinds import circle as circle
from itembank.figures.kinds import coordinate_grid as coordinate_grid
from itembank.figures.kinds import cut_polygon as cut_polygon
from itembank.figures.kinds import double_number_line as double_number_line
from itembank.figures.kinds import frequency_table as frequency_table
from itembank.figures.kinds import function_machine as function_machine
from itembank.figures.kinds import growing_pattern as growing_pattern
from itembank.figures.kinds import line_graph as line_graph
from itembank.figures.kinds import number_line as number_line
from itembank.figures.kinds import pictogram as pictogram
from itembank.figures.kinds import pie_chart as pie_chart
from itembank.figures.kinds import polygon as polygon
from itembank.figures.kinds import prism as prism
from itembank.figures.kinds import probability_table as probability_table
from itembank.figures.kinds import sample_space as sample_space
from itembank.figures.kinds import shaded_shape as shaded_shape
from itembank.figures.kinds import shaded_squares as shaded_squares
from itembank.figures.kinds import tree_diagram as tree_diagram
from itembank.figures.kinds import two_way_table as two_way_table
from itembank.figures.kinds import venn_diagram as venn_diagram
