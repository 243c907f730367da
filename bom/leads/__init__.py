"""Control leads: which lead of which device joins which, and what stays unused."""
