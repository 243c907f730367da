"""Formulas from published sources: units in the names, ranges kept, unknown in gives unknown out."""
