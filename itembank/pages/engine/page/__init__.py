"""The page: its sizes and colours, plain shapes on it, and the one hand that marks it.

``theme``, then ``surface``, then ``page``, then the signs of bands.
"""
