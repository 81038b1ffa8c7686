"""A hand-written question: what it asks, as an item that is proved and printed like any other.

``given`` comes first, then ``tasks``, then ``stories``; ``asking`` puts what they find together and
``as_item`` makes the item.
"""
