"""Ways to keep what would go: the job changed, built, judged and priced once more."""
