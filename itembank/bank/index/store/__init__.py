"""The file of an index: where it is, whether it is sound and of this program, what it tells.

``index_store`` stands on the others.
"""
