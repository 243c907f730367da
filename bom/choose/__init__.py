"""Qualifying candidates and choosing one part a place at least cost."""
