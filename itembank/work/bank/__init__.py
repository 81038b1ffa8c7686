"""What a person can do with a bank of questions.

Two things may be called back: `report` with how far long work has come, and `remark` with a
sentence about what did not go as it should and does not stop the work.
"""
