"""How tables are measured: ``table_grid`` finds the cells, for tables of probabilities too."""
