"""Checking the finished build with the same rules."""
