"""The equations strand: linear equations, formulae and inequalities in one unknown."""
