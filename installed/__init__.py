"""Checks of what a colleague installs: the lowest versions named, and a wheel without a checkout.

`make floors` runs them.
"""
