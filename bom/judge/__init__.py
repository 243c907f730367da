"""Verdicts, comparisons and the one way to state a rule."""
