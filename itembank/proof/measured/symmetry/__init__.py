"""How drawings are measured for their symmetry: ``symmetry_measured``, and the kinds that use it."""
