"""Formulas: MathML set as plain numbers, once for the whole pack.

``formula_layout`` and ``formula_parts`` come first, then signs and characters, then
``formula_setter``, ``setting`` and ``formula``.
"""
