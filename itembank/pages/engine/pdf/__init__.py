"""A tagged PDF file as bytes: objects, structure tree, outline, metadata, what is attached.

``pdf_objects`` comes first, then ``compact_file``; the others stand on these.
"""
