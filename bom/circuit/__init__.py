"""The loom as a circuit: solved in every state, shorted at every point, opened at every wire, woken from parked."""
