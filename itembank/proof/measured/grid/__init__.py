"""How the coordinate grid is measured: ``grid_places_measured`` first, all else by its places."""
