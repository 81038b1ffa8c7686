"""What a bank's files hold, kept so that the next command need not read them all again.

The index is a convenience and never a source: everything in it is named by a hash of what it was
made from, so that what has changed is simply not there and is read anew. See :mod:`.opened`.

``store`` is its file, ``rows`` is what that holds; what is asked of an index stands here.
"""
