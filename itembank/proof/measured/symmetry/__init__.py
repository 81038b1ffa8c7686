"""How drawings are measured for their symmetry: ``symmetry_measured`` does it for both kinds."""
