"""What arrived in place of what was ordered: where it stands, how it is judged, what it changes."""
