"""Solids: in parallel projection, as nets, and as plans of cubes.

Beside its kind stands what only that needs: ``net_folding``, ``solid_model``.
"""
