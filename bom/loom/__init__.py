"""Laying out the loom: points, wires, places and what bears on what."""
