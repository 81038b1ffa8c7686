"""What a person can do with a bank of questions.

`report` is called with how far long work has come. What did not go as it should with an index,
and stops nothing, is told to whoever listens (:mod:`itembank.bank.index.store.index_remark`).
"""
