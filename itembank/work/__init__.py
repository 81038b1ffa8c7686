"""What a person can do, without a screen: plain values in, plain values out.

Nothing here prints, asks or ends the program, and no message names an option: the commands read
what was typed, call this, and tell what came back.
"""
