"""Working out what each place asks of the part in it."""
